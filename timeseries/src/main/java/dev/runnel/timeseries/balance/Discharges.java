package dev.runnel.timeseries.balance;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What has to be done to lists of discharges before they can be counted: join, cut, widen. Nothing here is done unasked.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Discharges {
    private Discharges() {}

    /**
     * Joins intervals that overlap, touch, or are no further apart than a gap: records that are cut at midnight, several
     * sensors of one overflow, a sensor that chatters. The gap counts as discharge.
     *
     * @param discharges intervals in any order, none empty
     * @param gap longest time between the end of one and the start of the next that joins them; 0 or longer
     * @return intervals in order of time, none overlapping
     * @throws IllegalArgumentException if the gap is negative or an interval is empty
     */
    public static List<Interval> joined(List<Interval> discharges, Duration gap) {
        Objects.requireNonNull(discharges, "discharges");
        EpochNanos.nonNegative("gap", gap);
        List<Interval> sorted = new ArrayList<>(discharges);
        sorted.sort(Comparator.comparing(Interval::start));
        List<Interval> joined = new ArrayList<>();
        for (Interval each : sorted) {
            if (each.isEmpty()) {
                throw new IllegalArgumentException("discharge must not be empty, was " + each);
            }
            int last = joined.size() - 1;
            if (last >= 0 && !each.start().isAfter(joined.get(last).end().plus(gap))) {
                Interval before = joined.get(last);
                Instant end = each.end().isAfter(before.end()) ? each.end() : before.end();
                joined.set(last, Interval.of(before.start(), end));
            } else {
                joined.add(each);
            }
        }
        return List.copyOf(joined);
    }

    /**
     * Cuts discharges to a period: what lies outside is left away, what runs over an end is cut there.
     *
     * @param discharges intervals
     * @param period the period
     * @return the parts inside, in the same order
     */
    public static List<Interval> within(List<Interval> discharges, Interval period) {
        Objects.requireNonNull(period, "period");
        List<Interval> parts = new ArrayList<>();
        for (Interval each : discharges) {
            each.intersection(period).filter(part -> !part.isEmpty()).ifPresent(parts::add);
        }
        return List.copyOf(parts);
    }

    /**
     * Gives a length to discharges that only one reading has seen: each lasts one logging interval, but never into the next
     * discharge. Between the reading before and the one after nothing is known; one interval is what a reading speaks for.
     *
     * @param seen when the overflow was seen discharging, from its first reading to its last, in order of time
     * @param loggingInterval usual time between readings; greater than 0
     * @return intervals that are not empty; equal to those given where they were not
     * @throws IllegalArgumentException if the logging interval is not greater than 0, or a discharge starts before the one
     *     before it ends
     */
    public static List<Interval> widened(List<Interval> seen, Duration loggingInterval) {
        EpochNanos.positive("loggingInterval", loggingInterval);
        List<Interval> widened = new ArrayList<>();
        for (int i = 0; i < seen.size(); i++) {
            Interval each = seen.get(i);
            Instant next = i + 1 < seen.size() ? seen.get(i + 1).start() : Instant.MAX;
            if (next.isBefore(each.end()) || each.isEmpty() && next.equals(each.start())) {
                throw new IllegalArgumentException(
                        "discharges must be in order of time and not overlap, was one from " + next + " after " + each);
            }
            Instant end = each.isEmpty() ? each.start().plus(loggingInterval) : each.end();
            widened.add(Interval.of(each.start(), end.isBefore(next) ? end : next));
        }
        return List.copyOf(widened);
    }
}
