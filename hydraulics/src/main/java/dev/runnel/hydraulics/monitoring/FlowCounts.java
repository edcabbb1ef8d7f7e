package dev.runnel.hydraulics.monitoring;

import java.util.Arrays;
import java.util.Objects;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * How many pairs of readings had which conditions. Every pair is counted once, so the counts add up to the number of
 * pairs. Immutable and thread-safe; counts of the pieces of a record {@linkplain #plus add up} to those of the whole.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class FlowCounts {
    private static final int VELOCITIES = VelocityCondition.count();

    private final int[] byCode;

    private FlowCounts(int[] byCode) {
        this.byCode = byCode;
    }

    /** Counts of no pairs, to be filled by {@link #code}. */
    static int[] none() {
        return new int[DepthCondition.count() * VELOCITIES];
    }

    /** Takes over the counts by {@link #code}. */
    static FlowCounts ofCounts(int[] byCode) {
        return new FlowCounts(byCode);
    }

    static byte code(DepthCondition depth, VelocityCondition velocity) {
        return (byte) (depth.ordinal() * VELOCITIES + velocity.ordinal());
    }

    /** For each {@link #code} whether its depth has a condition of some kind. */
    static boolean[] where(Predicate<DepthCondition> kind) {
        boolean[] is = new boolean[none().length];
        for (byte code = 0; code < is.length; code++) {
            is[code] = kind.test(depthCondition(code));
        }
        return is;
    }

    static DepthCondition depthCondition(byte code) {
        return DepthCondition.ofCode(code / VELOCITIES);
    }

    static VelocityCondition velocityCondition(byte code) {
        return VelocityCondition.ofCode(code % VELOCITIES);
    }

    /**
     * Returns the number of pairs.
     *
     * @return count
     */
    public int total() {
        return Arrays.stream(byCode).sum();
    }

    /**
     * Returns the number of pairs with a depth condition, whatever the velocity.
     *
     * @param condition what the depth reading says
     * @return count
     */
    public int of(DepthCondition condition) {
        Objects.requireNonNull(condition, "condition");
        int count = 0;
        for (VelocityCondition velocity : VelocityCondition.values()) {
            count += of(condition, velocity);
        }
        return count;
    }

    /**
     * Returns the number of pairs with a velocity condition, whatever the depth.
     *
     * @param condition what the velocity reading says
     * @return count
     */
    public int of(VelocityCondition condition) {
        Objects.requireNonNull(condition, "condition");
        int count = 0;
        for (DepthCondition depth : DepthCondition.values()) {
            count += of(depth, condition);
        }
        return count;
    }

    /**
     * Returns the number of pairs with both conditions.
     *
     * @param depth what the depth reading says
     * @param velocity what the velocity reading says
     * @return count
     */
    public int of(DepthCondition depth, VelocityCondition velocity) {
        return byCode[code(depth, velocity)];
    }

    /**
     * Returns the counts of two records together.
     *
     * @param other counts of another record, or of another piece of the same
     * @return the sums
     */
    public FlowCounts plus(FlowCounts other) {
        int[] sums = byCode.clone();
        for (int i = 0; i < sums.length; i++) {
            sums[i] += other.byCode[i];
        }
        return new FlowCounts(sums);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FlowCounts that && Arrays.equals(byCode, that.byCode);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(byCode);
    }

    @Override
    public String toString() {
        String depths = text(DepthCondition.values(), this::of);
        String velocities = text(VelocityCondition.values(), this::of);
        return "FlowCounts[" + total() + " pairs" + (depths.isEmpty() ? "" : ": " + depths + "; " + velocities) + "]";
    }

    private static <C extends Enum<C>> String text(C[] conditions, ToIntFunction<C> count) {
        return Arrays.stream(conditions)
                .filter(condition -> count.applyAsInt(condition) > 0)
                .map(condition -> count.applyAsInt(condition) + " " + condition)
                .collect(Collectors.joining(", "));
    }
}
