package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Storms in a row that a gauge shows later, or earlier, than the others: what a clock that was set wrong looks like.
 *
 * @param shift how much later; negative if earlier; the middle one of the shifted storms
 * @param interval from the begin of the first shifted storm to the end of the last
 * @param shifted storms in it that are shifted this way
 * @param others storms in it that are not
 * @param before compared storms before it
 * @param after compared storms after it; none if the gauge has not come back
 * @see GaugeClocks#shiftedStorms
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ShiftedStorms(Duration shift, Interval interval, int shifted, int others, int before, int after) {
    /**
     * Chosen here: this many more shifted storms than others. Moving showers shift one storm or two by half an hour; four of them the
     * same way, in a row, are rare.
     */
    private static final int LEAST_MORE = 4;

    /** Chosen here: so many of the shifted storms, of four, must agree on the shift. */
    private static final int AGREE_OF_FOUR = 3;

    /**
     * Checks that nothing is missing.
     *
     * @param shift how much later; negative if earlier; the middle one of the shifted storms
     * @param interval from the begin of the first shifted storm to the end of the last
     * @param shifted storms in it that are shifted this way
     * @param others storms in it that are not
     * @param before compared storms before it
     * @param after compared storms after it; none if the gauge has not come back
     */
    public ShiftedStorms {
        Objects.requireNonNull(shift, "shift");
        Objects.requireNonNull(interval, "interval");
    }

    /** The row of storms in which those shifted one way outnumber the others most, if it is enough to speak of. */
    static Optional<ShiftedStorms> in(List<StormShift> storms, Duration tolerance) {
        return Optional.of(more(storms, tolerance, 1))
                .filter(later -> later.more() >= more(storms, tolerance, -1).more())
                .or(() -> Optional.of(more(storms, tolerance, -1)))
                .filter(row -> row.more() >= LEAST_MORE)
                .map(row -> of(storms, row, tolerance))
                .filter(found -> agree(storms, found, tolerance));
    }

    /** Storms from one to another, the end left out, and how many more are shifted than not. */
    private record Row(int from, int to, int way, int more) {}

    /** The part of a row with the greatest sum, if each shifted storm counts 1 and each other one -1; of equals the shortest of those that end first. */
    private static Row more(List<StormShift> storms, Duration tolerance, int way) {
        Row best = new Row(0, 0, way, 0);
        int from = 0;
        int sum = 0;
        for (int i = 0; i < storms.size(); i++) {
            if (sum <= 0) {
                from = i;
                sum = 0;
            }
            sum += isShifted(storms.get(i), tolerance, way) ? 1 : -1;
            if (sum > best.more()) {
                best = new Row(from, i + 1, way, sum);
            }
        }
        return best;
    }

    private static boolean isShifted(StormShift storm, Duration tolerance, int way) {
        return storm.shift().multipliedBy(way).compareTo(tolerance) >= 0;
    }

    private static ShiftedStorms of(List<StormShift> storms, Row row, Duration tolerance) {
        List<StormShift> within = storms.subList(row.from(), row.to());
        long[] nanos = within.stream()
                .filter(storm -> isShifted(storm, tolerance, row.way()))
                .mapToLong(storm -> storm.shift().toNanos())
                .sorted()
                .toArray();
        return new ShiftedStorms(
                Duration.ofNanos(nanos[nanos.length / 2]),
                Interval.of(
                        within.get(0).storm().start(),
                        within.get(within.size() - 1).storm().end()),
                nanos.length,
                within.size() - nanos.length,
                row.from(),
                storms.size() - row.to());
    }

    /** A clock shifts all storms alike; storms that come from anywhere do not. */
    private static boolean agree(List<StormShift> storms, ShiftedStorms found, Duration tolerance) {
        long[] off = storms.subList(found.before, storms.size() - found.after).stream()
                .mapToLong(storm -> storm.shift().minus(found.shift).abs().toNanos())
                .toArray();
        long agreeing =
                Arrays.stream(off).filter(nanos -> nanos <= tolerance.toNanos()).count();
        return 4 * agreeing >= AGREE_OF_FOUR * (long) found.shifted;
    }

    @Override
    public String toString() {
        return Text.duration(shift.abs()) + (shift.isNegative() ? " earlier" : " later") + " in " + shifted + " of "
                + (shifted + others) + " storms, " + interval + "; " + before + " before, " + after + " after";
    }
}
