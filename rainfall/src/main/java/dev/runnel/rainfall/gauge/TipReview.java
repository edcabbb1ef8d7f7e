package dev.runnel.rainfall.gauge;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import org.apiguardian.api.API;

/**
 * The tips of a record with their flags. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class TipReview {
    private final Tips tips;
    private final List<Set<TipFlag>> flags;

    TipReview(Tips tips, List<Set<TipFlag>> flags) {
        this.tips = tips;
        this.flags = flags;
    }

    /**
     * Returns the tips that were looked at.
     *
     * @return all of them
     */
    public Tips tips() {
        return tips;
    }

    /**
     * Returns the flags of one tip.
     *
     * @param index position, 0 to size - 1
     * @return its flags, possibly none; cannot be changed
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public Set<TipFlag> flags(int index) {
        return Collections.unmodifiableSet(flags.get(index));
    }

    /**
     * Returns how many tips have a flag.
     *
     * @param flag the flag
     * @return count
     */
    public int count(TipFlag flag) {
        Objects.requireNonNull(flag, "flag");
        return (int) flags.stream().filter(each -> each.contains(flag)).count();
    }

    /**
     * Returns the tips that have a flag; {@link Tips#toInstants} lists their times.
     *
     * @param flag the flag
     * @return those tips
     */
    public Tips flagged(TipFlag flag) {
        Objects.requireNonNull(flag, "flag");
        return select(each -> each.contains(flag));
    }

    /**
     * Returns the tips that have none of the given flags. What was taken away is {@link #flagged still here}.
     *
     * <p>The time of a tip that was taken away passes for dry weather. Where it is not known whether it rained, as during a visit,
     * name the outage instead: {@link TippingBucket#record}.
     *
     * @param unwanted flags
     * @return the other tips
     */
    public Tips without(TipFlag... unwanted) {
        Set<TipFlag> set =
                unwanted.length == 0 ? EnumSet.noneOf(TipFlag.class) : EnumSet.copyOf(Arrays.asList(unwanted));
        return select(each -> Collections.disjoint(each, set));
    }

    private Tips select(Predicate<Set<TipFlag>> wanted) {
        long[] kept = new long[tips.size()];
        int size = 0;
        for (int i = 0; i < kept.length; i++) {
            if (wanted.test(flags.get(i))) {
                kept[size++] = tips.epochNanos(i);
            }
        }
        return Tips.ofEpochNanos(Arrays.copyOf(kept, size));
    }

    @Override
    public String toString() {
        Map<TipFlag, Integer> counts = new EnumMap<>(TipFlag.class);
        for (TipFlag flag : TipFlag.values()) {
            if (count(flag) > 0) {
                counts.put(flag, count(flag));
            }
        }
        return "TipReview[" + tips.size() + " tips, " + (counts.isEmpty() ? "no flags" : counts.toString()) + "]";
    }
}
