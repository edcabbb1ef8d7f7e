package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * The equation of a current meter, v = a + b n in one or several ranges: n revolutions per second (1/s), b the pitch (m), a the
 * start-up velocity (m/s), as the rating sheet prints them. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CurrentMeter {
    private static final double FASTEST = 1000;

    private final List<Range> ranges;

    private record Range(double from, double constant, double pitch) {}

    private CurrentMeter(List<Range> ranges) {
        this.ranges = List.copyOf(ranges);
    }

    /**
     * Returns a meter with one range.
     *
     * @param pitch b, m per revolution; greater than 0, at most 10
     * @return the meter with a start-up velocity of 0
     * @throws IllegalArgumentException if {@code pitch} is outside its range
     */
    public static CurrentMeter ofPitch(double pitch) {
        return new CurrentMeter(List.of(new Range(0, 0, checkedPitch(pitch))));
    }

    /**
     * Returns a copy with a start-up velocity in its first range.
     *
     * @param velocity a, m/s; in [-1, 1]
     * @return the copy
     * @throws IllegalArgumentException if {@code velocity} is outside its range
     */
    public CurrentMeter withStartUp(double velocity) {
        List<Range> copy = new ArrayList<>(ranges);
        Range first = copy.get(0);
        copy.set(0, new Range(first.from(), checkedStart(velocity), first.pitch()));
        return new CurrentMeter(copy);
    }

    /**
     * Returns a copy with a further range.
     *
     * @param revolutionsPerSecond n from which the range holds, 1/s; above the start of the last range
     * @param meter the equation that holds from there, with one range
     * @return the copy
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public CurrentMeter from(double revolutionsPerSecond, CurrentMeter meter) {
        double last = ranges.get(ranges.size() - 1).from();
        if (!(revolutionsPerSecond > last && revolutionsPerSecond <= FASTEST)) {
            throw new IllegalArgumentException("revolutionsPerSecond must be above " + Text.number(last)
                    + " and at most " + Text.number(FASTEST) + " 1/s, was " + Text.number(revolutionsPerSecond));
        }
        if (meter.ranges.size() != 1) {
            throw new IllegalArgumentException("meter must have one range, was " + meter);
        }
        Range added = meter.ranges.get(0);
        List<Range> copy = new ArrayList<>(ranges);
        copy.add(new Range(revolutionsPerSecond, added.constant(), added.pitch()));
        return new CurrentMeter(copy);
    }

    private static double checkedPitch(double pitch) {
        if (!(pitch > 0 && pitch <= 10)) {
            throw new IllegalArgumentException(
                    "pitch must be greater than 0 and at most 10 m, was " + Text.number(pitch));
        }
        return pitch;
    }

    private static double checkedStart(double velocity) {
        return Require.inRange("velocity", velocity, -1, 1, "m/s");
    }

    /**
     * Returns the velocity at a speed of revolution.
     *
     * @param revolutionsPerSecond n, 1/s; in [0, 1000]
     * @return velocity, m/s; 0 for a propeller that stands still
     * @throws IllegalArgumentException if {@code revolutionsPerSecond} is outside its range
     */
    public double velocity(double revolutionsPerSecond) {
        Require.inRange("revolutionsPerSecond", revolutionsPerSecond, 0, FASTEST, "1/s");
        if (revolutionsPerSecond == 0) {
            return 0;
        }
        Range range = ranges.get(0);
        for (Range each : ranges) {
            range = each.from() <= revolutionsPerSecond ? each : range;
        }
        return range.constant() + range.pitch() * revolutionsPerSecond;
    }

    /**
     * Returns the velocity from a count and its time.
     *
     * @param revolutions counted revolutions; 0 or more
     * @param seconds time of the count, s; greater than 0, at most 3600
     * @return velocity, m/s
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public double velocityOfRevolutionsAndSeconds(double revolutions, double seconds) {
        Require.nonNegative("revolutions", revolutions, "");
        if (!(seconds > 0 && seconds <= 3600)) {
            throw new IllegalArgumentException(
                    "seconds must be greater than 0 and at most 3600 s, was " + Text.number(seconds));
        }
        return velocity(revolutions / seconds);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CurrentMeter that && ranges.equals(that.ranges);
    }

    @Override
    public int hashCode() {
        return ranges.hashCode();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("CurrentMeter[");
        for (int i = 0; i < ranges.size(); i++) {
            Range range = ranges.get(i);
            text.append(i == 0 ? "" : "; from n = " + Text.significant(range.from(), 6) + " ")
                    .append("v = ")
                    .append(Text.significant(range.constant(), 6))
                    .append(" + ")
                    .append(Text.significant(range.pitch(), 6))
                    .append(" n");
        }
        return text.append("]").toString();
    }
}
