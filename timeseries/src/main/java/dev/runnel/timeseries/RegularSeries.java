package dev.runnel.timeseries;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import org.apiguardian.api.API;

/**
 * One value for each of equal, adjoining steps of time. Immutable and thread-safe.
 *
 * <p>Value {@code i} belongs to the half-open step that starts at {@code start + i * step}: the rain that fell in it,
 * the mean flow over it. A missing value is NaN.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class RegularSeries {
    private final long start;
    private final long step;
    private final double[] values;

    private RegularSeries(long start, long step, double[] values) {
        this.start = start;
        this.step = step;
        this.values = values;
    }

    /**
     * Returns the series with the given start, step and values.
     *
     * @param start start of the first step
     * @param step length of every step; greater than 0
     * @param values one value a step, NaN for missing; copied
     * @return the series
     * @throws IllegalArgumentException if the step is not greater than 0, a value is infinite, or the end lies beyond
     *     2262-04-11
     */
    public static RegularSeries of(Instant start, Duration step, double... values) {
        Objects.requireNonNull(start, "start");
        return checked(start, step, Arrays.copyOf(values, values.length));
    }

    /**
     * Returns a series whose values are written into place, so that a long one is not copied.
     *
     * @param start start of the first step
     * @param step length of every step; greater than 0
     * @param size number of steps; 0 or more
     * @param filler writes the values into the array it is given, which holds zeros, and does not keep it
     * @return the series
     * @throws IllegalArgumentException as for {@link #of}, or if the size is negative
     */
    @API(status = API.Status.INTERNAL)
    public static RegularSeries filled(Instant start, Duration step, int size, Consumer<double[]> filler) {
        Objects.requireNonNull(start, "start");
        double[] values = new double[Require.atLeast("size", size, 0)];
        filler.accept(values);
        return checked(start, step, values);
    }

    /** A series of an array that nobody else has. */
    static RegularSeries checked(Instant start, Duration step, double[] values) {
        long stepNanos = EpochNanos.positive("step", step);
        long startNanos = EpochNanos.of(start);
        // The largest of many is found several at a time; it is NaN where one is missing, and then each is looked at.
        if (!(largest(values) <= Double.MAX_VALUE)) {
            requireNoneInfinite(values);
        }
        try {
            Math.addExact(startNanos, Math.multiplyExact(stepNanos, (long) values.length));
        } catch (ArithmeticException e) {
            throw new IllegalArgumentException(
                    "values must end before 2262-04-11, were " + values.length + " steps of "
                            + Text.exactDuration(step),
                    e);
        }
        return new RegularSeries(startNanos, stepNanos, values);
    }

    private static double largest(double[] values) {
        double largest = 0;
        for (double value : values) {
            largest = Math.max(largest, Math.abs(value));
        }
        return largest;
    }

    private static void requireNoneInfinite(double[] values) {
        for (int i = 0; i < values.length; i++) {
            if (Double.isInfinite(values[i])) {
                throw new IllegalArgumentException(
                        "values must be finite, or NaN for missing, was " + Text.number(values[i]) + " at index " + i);
            }
        }
    }

    /**
     * Returns the start of the first step.
     *
     * @return the instant
     */
    public Instant start() {
        return EpochNanos.toInstant(start);
    }

    /**
     * Returns the end of the last step, which no longer belongs to the series.
     *
     * @return the instant; the start if there is no step
     */
    public Instant end() {
        return EpochNanos.toInstant(start + step * values.length);
    }

    /**
     * Returns the length of a step.
     *
     * @return the duration
     */
    public Duration step() {
        return Duration.ofNanos(step);
    }

    /**
     * Returns the time from the start of the first step to the end of the last.
     *
     * @return the interval
     */
    public Interval interval() {
        return Interval.of(start(), end());
    }

    /**
     * Returns the time of one step.
     *
     * @param index position, 0 to size - 1
     * @return the interval
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public Interval interval(int index) {
        return Interval.of(time(index), EpochNanos.toInstant(start + step * (index + 1)));
    }

    /**
     * Tells whether there is no step.
     *
     * @return true if the size is 0
     */
    public boolean isEmpty() {
        return values.length == 0;
    }

    /**
     * Returns the number of steps, missing values included.
     *
     * @return count
     */
    public int size() {
        return values.length;
    }

    /**
     * Returns the start of one step.
     *
     * @param index position, 0 to size - 1
     * @return the instant
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public Instant time(int index) {
        return EpochNanos.toInstant(start + step * java.util.Objects.checkIndex(index, values.length));
    }

    /**
     * Returns the value of one step.
     *
     * @param index position, 0 to size - 1
     * @return the value, NaN if missing
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public double value(int index) {
        return values[index];
    }

    /**
     * Returns all values.
     *
     * @return values, NaN for missing; a copy
     */
    public double[] toValues() {
        return Arrays.copyOf(values, values.length);
    }

    /**
     * Returns the position of the next value that differs from a given one: where a run of it ends.
     *
     * @param value the value; NaN for missing, and 0 is not -0
     * @param from first position to look at; 0 or greater
     * @return the position; the size of the series if there is none
     * @throws IndexOutOfBoundsException if {@code from} is negative
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public int indexOfOtherThan(double value, int from) {
        // A short run costs less than a comparison of blocks takes to begin.
        int near = Math.min(values.length, from + 8);
        for (int i = from; i < near; i++) {
            if (Double.doubleToLongBits(values[i]) != Double.doubleToLongBits(value)) {
                return i;
            }
        }
        if (near >= values.length) {
            return values.length;
        }
        // A run is equal to itself one place further on.
        int same = Arrays.mismatch(values, near, values.length - 1, values, near + 1, values.length);
        if (Double.doubleToLongBits(values[near]) != Double.doubleToLongBits(value)) {
            return near;
        }
        return same < 0 ? values.length : near + same + 1;
    }

    /**
     * Returns the number of missing values.
     *
     * @return count of NaN
     */
    public int missing() {
        int missing = 0;
        for (double value : values) {
            if (Double.isNaN(value)) {
                missing++;
            }
        }
        return missing;
    }

    /**
     * Returns the sum of the values that are not missing, with compensation so that a long record loses nothing.
     *
     * @return the sum; 0 if there is no value
     */
    public double sum() {
        return CompensatedSum.of(values, 0, values.length);
    }

    /**
     * Returns the steps that start inside an interval.
     *
     * @param interval half-open: a step that starts at its end is left out
     * @return the slice; without steps, it starts where the interval starts, rounded up to a step
     */
    public RegularSeries slice(Interval interval) {
        int from = firstIndexAtOrAfter(interval.start());
        int to = firstIndexAtOrAfter(interval.end());
        return new RegularSeries(start + step * from, step, Arrays.copyOfRange(values, from, to));
    }

    private int firstIndexAtOrAfter(Instant time) {
        if (!time.isAfter(start())) {
            return 0;
        }
        if (!time.isBefore(end())) {
            return values.length;
        }
        return Math.toIntExact(-Math.floorDiv(start - EpochNanos.of(time), step));
    }

    /**
     * Returns the series with a function applied to each value; missing values stay missing.
     *
     * @param function from old value to new; NaN makes it missing
     * @return the new series
     * @throws IllegalArgumentException if the function returns an infinity
     */
    public RegularSeries map(DoubleUnaryOperator function) {
        Objects.requireNonNull(function, "function");
        double[] mapped = new double[values.length];
        for (int i = 0; i < mapped.length; i++) {
            mapped[i] = Double.isNaN(values[i]) ? Double.NaN : function.applyAsDouble(values[i]);
        }
        return checked(start(), step(), mapped);
    }

    /**
     * Returns the series with every step missing that shares time with one of some intervals: an outage, or a visit.
     *
     * @param intervals times of which the record is not to tell; those outside it and empty ones change nothing
     * @return the new series
     */
    public RegularSeries withMissing(Interval... intervals) {
        Objects.requireNonNull(intervals, "intervals");
        double[] kept = Arrays.copyOf(values, values.length);
        for (Interval interval : intervals) {
            interval.intersection(interval())
                    .filter(shared -> !shared.isEmpty())
                    .ifPresent(shared -> {
                        long from = EpochNanos.of(shared.start()) - start;
                        long to = EpochNanos.of(shared.end()) - start;
                        Arrays.fill(kept, (int) (from / step), (int) ((to + step - 1) / step), Double.NaN);
                    });
        }
        return new RegularSeries(start, step, kept);
    }

    /**
     * Combines two series step by step over the time that both have, such as the difference of two gauges.
     *
     * @param other a series whose steps lie where those of this one lie
     * @param function from a value of this and a value of the other to the new value; NaN makes it missing
     * @return the steps that both have, none if there are none; missing where either value is
     * @throws IllegalArgumentException if the steps have another length or lie elsewhere, or the function returns an infinity
     */
    public RegularSeries combine(RegularSeries other, DoubleBinaryOperator function) {
        Objects.requireNonNull(function, "function");
        if (step != other.step || Math.floorMod(other.start - start, step) != 0) {
            throw new IllegalArgumentException(
                    "other must have steps of " + Text.exactDuration(step()) + " that lie as from " + start()
                            + ", had steps of " + Text.exactDuration(other.step()) + " from " + other.start());
        }
        RegularSeries mine = slice(other.interval());
        RegularSeries theirs = other.slice(interval());
        return checked(mine.start(), step(), combined(mine.values, theirs.values, function));
    }

    private static double[] combined(double[] mine, double[] theirs, DoubleBinaryOperator function) {
        double[] combined = new double[mine.length];
        for (int i = 0; i < combined.length; i++) {
            double a = mine[i];
            double b = theirs[i];
            combined[i] = Double.isNaN(a) || Double.isNaN(b) ? Double.NaN : function.applyAsDouble(a, b);
        }
        return combined;
    }

    /**
     * Returns the same values as readings at the start of each step, {@link Quality#UNCHECKED} or
     * {@link Quality#MISSING}.
     *
     * @return the series
     */
    public Series toSeries() {
        long[] times = new long[values.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = start + step * i;
        }
        return Series.of(times, values);
    }

    /**
     * Returns summary statistics of the values that are not missing.
     *
     * @return the statistics
     */
    public Statistics statistics() {
        return Statistics.of(values);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RegularSeries that
                && start == that.start
                && step == that.step
                && Arrays.equals(values, that.values);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * Long.hashCode(start) + Long.hashCode(step)) + Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return "RegularSeries[" + size() + " steps of " + Text.duration(step()) + " from " + start() + ", sum "
                + Text.significant(sum(), 6) + ", " + missing() + " missing]";
    }
}
