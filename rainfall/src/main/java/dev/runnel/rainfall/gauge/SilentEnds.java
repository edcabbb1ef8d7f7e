package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Finds the times at the beginning and at the end of a record in which a gauge that writes tips may have been dead: longer
 * without a tip than ever between two of its tips. Immutable and thread-safe.
 *
 * <p>Between tips a gauge shows that it works; before the first and after the last it shows nothing. Such a time is taken as
 * not known where it is longer than twice the longest time between two tips, and longer than seven days (both chosen here).
 * Half a day after the last tip, and before the first, still counts as known: that is no rain.
 *
 * <p>What this is not: a proof that the gauge was dead. A drought looks the same; a gauge nearby tells.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SilentEnds {
    private static final int TIMES_LONGER = 2;
    private static final Duration STILL_KNOWN = Duration.ofHours(12);

    private final Duration least;

    private SilentEnds(Duration least) {
        this.least = least;
    }

    /**
     * Returns the usual test, of times longer than seven days.
     *
     * @return the test
     */
    public static SilentEnds standard() {
        return new SilentEnds(Duration.ofDays(7));
    }

    /**
     * Returns the test of times longer than another one.
     *
     * @param least a shorter time is never doubted; a day or longer
     * @return the test
     * @throws IllegalArgumentException if it is shorter than a day
     */
    public SilentEnds withLeast(Duration least) {
        if (least.compareTo(Duration.ofDays(1)) < 0) {
            throw new IllegalArgumentException("least must be a day or longer, was " + Text.exactDuration(least));
        }
        return new SilentEnds(least);
    }

    /**
     * Returns the times that tell nothing.
     *
     * @param tips tips of the gauge; those outside the record do not count
     * @param record time of the record
     * @return at most two intervals, to be taken as outages; none for a gauge without any tip, of which nothing is known
     *     either way
     */
    public List<Interval> of(Tips tips, Interval record) {
        Objects.requireNonNull(record, "record");
        Tips inside = tips.slice(record);
        if (inside.isEmpty()) {
            return List.of();
        }
        long longest = 0;
        for (int i = 1; i < inside.size(); i++) {
            longest = Math.max(longest, inside.epochNanos(i) - inside.epochNanos(i - 1));
        }
        Duration limit = Duration.ofNanos(longest).multipliedBy(TIMES_LONGER);
        limit = limit.compareTo(least) > 0 ? limit : least;
        List<Interval> silent = new ArrayList<>();
        Instant first = EpochNanos.toInstant(inside.epochNanos(0));
        Instant last = EpochNanos.toInstant(inside.epochNanos(inside.size() - 1));
        if (Duration.between(record.start(), first).compareTo(limit) > 0) {
            silent.add(Interval.of(record.start(), first.minus(STILL_KNOWN)));
        }
        if (Duration.between(last, record.end()).compareTo(limit) > 0) {
            silent.add(Interval.of(last.plus(STILL_KNOWN), record.end()));
        }
        return List.copyOf(silent);
    }

    @Override
    public String toString() {
        return "SilentEnds[longer than " + least.toDays() + " d]";
    }
}
