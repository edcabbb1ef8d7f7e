package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Finds the times at the beginning and at the end of a record in which a gauge may have been dead: longer without rain than
 * ever between two signs of it, tips or wet steps. Immutable and thread-safe.
 *
 * <p>Between tips a gauge shows that it works; before the first and after the last it shows nothing. Such a time is taken as
 * not known where it is longer than twice the longest time between two tips, and longer than seven days (both chosen here).
 * Half a day after the last tip, and before the first, still counts as known: that is no rain. A logger that writes zeros by
 * the step shows that it is at work itself, not that water reaches the bucket: its wet steps count as tips do.
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
        Instant first = EpochNanos.toInstant(inside.epochNanos(0));
        Instant last = EpochNanos.toInstant(inside.epochNanos(inside.size() - 1));
        return ends(
                record,
                first,
                last,
                Duration.between(record.start(), first),
                Duration.ofNanos(longest),
                Duration.between(last, record.end()));
    }

    /**
     * Returns the times that tell nothing of a record by the step. Steps that are missing are no part of a time without rain.
     *
     * @param rain depth in each step, NaN for missing
     * @return at most two intervals, to be taken as outages; none for a gauge without any wet step, of which nothing is known
     *     either way
     */
    public List<Interval> of(RegularSeries rain) {
        int first = -1;
        int last = -1;
        long dry = 0;
        long before = 0;
        long longest = 0;
        for (int i = 0; i < rain.size(); i++) {
            double depth = rain.value(i);
            if (depth > 0) {
                if (first < 0) {
                    first = i;
                    before = dry;
                } else {
                    longest = Math.max(longest, dry);
                }
                last = i;
                dry = 0;
            } else if (!Double.isNaN(depth)) {
                dry++;
            }
        }
        return first < 0
                ? List.of()
                : ends(
                        rain.interval(),
                        rain.time(first),
                        rain.interval(last).end(),
                        rain.step().multipliedBy(before),
                        rain.step().multipliedBy(longest),
                        rain.step().multipliedBy(dry));
    }

    /** The ends that are longer without rain than the longest time within. */
    private List<Interval> ends(
            Interval record, Instant first, Instant last, Duration before, Duration longest, Duration after) {
        Duration twice = longest.multipliedBy(TIMES_LONGER);
        Duration limit = twice.compareTo(least) > 0 ? twice : least;
        List<Interval> silent = new ArrayList<>();
        if (before.compareTo(limit) > 0) {
            silent.add(Interval.of(record.start(), first.minus(STILL_KNOWN)));
        }
        if (after.compareTo(limit) > 0) {
            silent.add(Interval.of(last.plus(STILL_KNOWN), record.end()));
        }
        return List.copyOf(silent);
    }

    @Override
    public String toString() {
        return "SilentEnds[longer than " + least.toDays() + " d]";
    }
}
