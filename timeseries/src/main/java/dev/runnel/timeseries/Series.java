package dev.runnel.timeseries;

import dev.runnel.internal.QualityCodes;
import dev.runnel.internal.Require;
import dev.runnel.internal.SeriesArrays;
import dev.runnel.internal.Text;
import dev.runnel.internal.UsualStep;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apiguardian.api.API;

/**
 * Readings at strictly increasing instants, each with a {@link Quality}. Immutable and thread-safe; held in primitive
 * arrays of 16 bytes a reading, or 17 where not all readings with a value have the same quality.
 *
 * <p>A reading with no value is NaN and {@link Quality#MISSING}, and neither occurs without the other. The unit is the
 * caller's: the series does not know it.
 *
 * <p>What this is not: evenly spaced (see {@link RegularSeries}), or a list of events that may coincide.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Series implements Iterable<Reading> {
    private static final Series EMPTY = trusted(new long[0], new double[0], new byte[0]);

    static {
        SeriesArrays.keptBy(new SeriesArrays.Keeper() {
            @Override
            public double[] values(Object series) {
                return ((Series) series).values;
            }

            @Override
            public long[] times(Object series) {
                return ((Series) series).times;
            }

            @Override
            public double[] usableValues(Object series) {
                return ((Series) series).usable(false);
            }

            @Override
            public byte[] qualities(Object series) {
                return ((Series) series).qualities.all();
            }

            @Override
            public QualityCodes codes(Object series) {
                return ((Series) series).qualities;
            }

            @Override
            public Object withReadings(Object clock, double[] newValues, byte[] newQualities) {
                return ((Series) clock).keeping(newValues, newQualities);
            }

            @Override
            public Object withRightReadings(Object clock, double[] newValues, QualityCodes newQualities) {
                return ((Series) clock).sharing(newValues, newQualities);
            }

            @Override
            public Object ofRightReadings(long[] newTimes, double[] newValues, byte[] newQualities) {
                return trusted(newTimes, newValues, newQualities);
            }
        });
    }

    private final long[] times;

    /** From each reading to the next, ns; 0 if that is not always the same, or there is no next. */
    private final long evenStep;

    private final double[] values;
    private final QualityCodes qualities;

    private Series(long[] times, double[] values, QualityCodes qualities) {
        this(times, evenStep(times), values, qualities);
    }

    private Series(long[] times, long evenStep, double[] values, QualityCodes qualities) {
        this.times = times;
        this.evenStep = evenStep;
        this.values = values;
        this.qualities = qualities;
    }

    /** Other readings at the same instants; takes over arrays that the caller has checked and will not touch again. */
    Series sharing(double[] newValues, byte[] newQualities) {
        return sharing(newValues, QualityCodes.of(newQualities, newValues));
    }

    private Series sharing(double[] newValues, QualityCodes newQualities) {
        return new Series(times, evenStep, newValues, newQualities);
    }

    private static long evenStep(long[] times) {
        // Of two instants 292 years apart the difference would be negative, and is no step.
        long step = times.length < 2 ? 0 : Math.max(times[1] - times[0], 0);
        for (int i = 2; i < times.length; i++) {
            if (times[i] - times[i - 1] != step) {
                return 0;
            }
        }
        return step;
    }

    /**
     * Returns the series without readings.
     *
     * @return the empty series
     */
    public static Series empty() {
        return EMPTY;
    }

    /**
     * Returns the series of the given readings, {@link Quality#UNCHECKED} where there is a value and
     * {@link Quality#MISSING} where it is NaN.
     *
     * @param epochNanos instants, ns since 1970-01-01T00:00:00Z, strictly increasing; copied
     * @param values values, NaN for missing; same length; copied
     * @return the series
     * @throws IllegalArgumentException if the lengths differ, a time does not increase or a value is infinite
     */
    public static Series of(long[] epochNanos, double[] values) {
        Require.sameLength("values", epochNanos.length, values.length);
        checkTimes(epochNanos);
        for (double value : values) {
            // The check proper words the refusal.
            if (Math.abs(value) > Double.MAX_VALUE) {
                Reading.check(value, Quality.UNCHECKED);
            }
        }
        double[] kept = values.clone();
        return new Series(epochNanos.clone(), kept, QualityCodes.same(Quality.UNCHECKED.toCode(), kept));
    }

    /**
     * Returns the series of the given readings.
     *
     * @param epochNanos instants, ns since 1970-01-01T00:00:00Z, strictly increasing; copied
     * @param values values, NaN for missing; same length; copied
     * @param qualities {@linkplain Quality#toCode codes}; same length; copied
     * @return the series
     * @throws IllegalArgumentException if the lengths differ, a time does not increase, a value is infinite, or NaN and
     *     MISSING do not go together
     */
    public static Series of(long[] epochNanos, double[] values, byte[] qualities) {
        Require.sameLength("values", epochNanos.length, values.length);
        Require.sameLength("qualities", epochNanos.length, qualities.length);
        checkTimes(epochNanos);
        checkReadings(values, qualities);
        return trusted(epochNanos.clone(), values.clone(), qualities.clone());
    }

    private static void checkTimes(long[] epochNanos) {
        for (int i = 1; i < epochNanos.length; i++) {
            if (epochNanos[i] <= epochNanos[i - 1]) {
                throw new IllegalArgumentException("epochNanos must increase strictly, was "
                        + EpochNanos.toInstant(epochNanos[i]) + " at index " + i + " after "
                        + EpochNanos.toInstant(epochNanos[i - 1]));
            }
        }
    }

    @SuppressWarnings("ShortCircuitBoolean") // one jump instead of five
    private static void checkReadings(double[] values, byte[] qualities) {
        byte missing = Quality.MISSING.toCode();
        for (int i = 0; i < values.length; i++) {
            byte code = qualities[i];
            double value = values[i];
            // What is right needs no more than this, without a jump on the value; the check proper words the refusal.
            boolean there = Math.abs(value) <= Double.MAX_VALUE & code >= 0 & code < missing;
            boolean absent = Double.isNaN(value) & code == missing;
            if (!(there | absent)) {
                Reading.check(values[i], Quality.ofCode(code));
            }
        }
    }

    /**
     * Returns the series of the given readings.
     *
     * @param readings readings at strictly increasing times
     * @return the series
     * @throws IllegalArgumentException if a time does not increase
     */
    public static Series of(Iterable<Reading> readings) {
        SeriesBuilder builder = builder();
        readings.forEach(builder::add);
        return builder.build();
    }

    /**
     * Returns a builder without readings.
     *
     * @return a new builder
     */
    public static SeriesBuilder builder() {
        return new SeriesBuilder();
    }

    /** Takes over arrays that the caller has checked and will not touch again. */
    static Series trusted(long[] times, double[] values, byte[] qualities) {
        return new Series(times, values, QualityCodes.of(qualities, values));
    }

    /**
     * Returns the number of readings, missing ones included.
     *
     * @return count
     */
    public int size() {
        return values.length;
    }

    /**
     * Tells whether there is no reading.
     *
     * @return true if the size is 0
     */
    public boolean isEmpty() {
        return values.length == 0;
    }

    /**
     * Returns the usual time from one reading to the next: the median, so that no gap and no stray reading moves it.
     *
     * @return the median; of an even count of steps the mean of the middle two
     * @throws IllegalStateException if there are fewer than two readings
     */
    public Duration usualStep() {
        if (size() < 2) {
            throw new IllegalStateException("series must have at least two readings for a step, had " + size());
        }
        return Duration.ofNanos(Math.round(UsualStep.median(times)));
    }

    /**
     * Tells whether another series has the same instants.
     *
     * @param other the other series
     * @return true if it has as many readings, each at the instant of this one's
     */
    public boolean hasTimesOf(Series other) {
        if (times == other.times) {
            return true;
        }
        // Most loggers take readings at even steps, and millions of instants need not be compared then.
        return evenStep > 0 && other.evenStep > 0
                ? times.length == other.times.length && evenStep == other.evenStep && times[0] == other.times[0]
                : Arrays.equals(times, other.times);
    }

    /**
     * Returns other readings at the same instants, which both series then share.
     *
     * @param newValues values, NaN for missing; as many as this series has; copied
     * @param newQualities {@linkplain Quality#toCode codes}; as many; copied
     * @return the series
     * @throws IllegalArgumentException if the lengths differ, a value is infinite, or NaN and MISSING do not go together
     */
    public Series withReadings(double[] newValues, byte[] newQualities) {
        return keeping(newValues.clone(), newQualities.clone());
    }

    private Series keeping(double[] newValues, byte[] newQualities) {
        Require.sameLength("newValues", times.length, newValues.length);
        Require.sameLength("newQualities", times.length, newQualities.length);
        checkReadings(newValues, newQualities);
        return sharing(newValues, newQualities);
    }

    /**
     * Returns one reading.
     *
     * @param index position, 0 to size - 1
     * @return the reading
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public Reading get(int index) {
        return new Reading(time(index), values[index], quality(index));
    }

    /**
     * Returns the time of one reading.
     *
     * @param index position, 0 to size - 1
     * @return the instant
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public Instant time(int index) {
        return EpochNanos.toInstant(times[index]);
    }

    /**
     * Returns the time of one reading without making an object.
     *
     * @param index position, 0 to size - 1
     * @return ns since 1970-01-01T00:00:00Z
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public long epochNanos(int index) {
        return times[index];
    }

    /**
     * Returns the value of one reading.
     *
     * @param index position, 0 to size - 1
     * @return the value, NaN if missing
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public double value(int index) {
        return values[index];
    }

    /**
     * Returns the quality of one reading.
     *
     * @param index position, 0 to size - 1
     * @return the quality
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public Quality quality(int index) {
        return Quality.ofCode(qualities.at(index));
    }

    /**
     * Returns all times.
     *
     * @return ns since 1970-01-01T00:00:00Z; a copy
     */
    public long[] toEpochNanos() {
        return Arrays.copyOf(times, times.length);
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
     * Returns the values a calculation should use: NaN where the reading is missing or suspect.
     *
     * @return values; a copy
     * @see Quality#isUsable()
     */
    public double[] toUsableValues() {
        return usable(true);
    }

    /** The missing ones are NaN already: only a suspect reading makes another array of the values. */
    private double[] usable(boolean always) {
        byte suspect = Quality.SUSPECT.toCode();
        double[] usable = always ? Arrays.copyOf(values, values.length) : values;
        if (!qualities.mayHold(suspect)) {
            return usable;
        }
        byte[] codes = qualities.all();
        for (int i = 0; i < codes.length; i++) {
            if (codes[i] == suspect) {
                usable = usable == values ? Arrays.copyOf(values, values.length) : usable;
                usable[i] = Double.NaN;
            }
        }
        return usable;
    }

    /**
     * Returns all qualities.
     *
     * @return {@linkplain Quality#toCode codes}; a copy
     */
    public byte[] toQualityCodes() {
        byte[] codes = qualities.all();
        return Arrays.copyOf(codes, codes.length);
    }

    /**
     * Returns the readings one by one.
     *
     * @return readings in order of time
     */
    public Stream<Reading> stream() {
        return IntStream.range(0, size()).mapToObj(this::get);
    }

    /**
     * Returns the readings one by one, as {@link Rule#over} takes them.
     *
     * @return readings in order of time
     */
    @Override
    public Iterator<Reading> iterator() {
        return new Iterator<>() {
            private int next;

            @Override
            public boolean hasNext() {
                return next < values.length;
            }

            @Override
            public Reading next() {
                if (next >= values.length) {
                    throw new NoSuchElementException("series has no more readings");
                }
                return get(next++);
            }
        };
    }

    /**
     * Returns how many readings have the given quality.
     *
     * @param quality the quality
     * @return count
     */
    public int count(Quality quality) {
        Objects.requireNonNull(quality, "quality");
        return qualities.count(quality.toCode());
    }

    /**
     * Returns the readings inside an interval.
     *
     * @param interval half-open: a reading at its end is left out
     * @return the slice, possibly empty
     */
    public Series slice(Interval interval) {
        int from = firstIndexAtOrAfter(interval.start());
        int to = firstIndexAtOrAfter(interval.end());
        double[] some = Arrays.copyOfRange(values, from, to);
        return new Series(Arrays.copyOfRange(times, from, to), some, qualities.between(from, to, some));
    }

    /**
     * Returns the position of the first reading at or after an instant.
     *
     * @param time the instant
     * @return position, or {@link #size()} if all readings are before it
     */
    public int firstIndexAtOrAfter(Instant time) {
        Objects.requireNonNull(time, "time");
        if (isEmpty() || time.isAfter(time(size() - 1))) {
            return size();
        }
        if (!time.isAfter(time(0))) {
            return 0;
        }
        int found = Arrays.binarySearch(times, EpochNanos.of(time));
        return found >= 0 ? found : -found - 1;
    }

    /**
     * Returns the series with a function applied to each value; missing readings stay missing, qualities are kept.
     *
     * @param function from old value to new; NaN makes the reading missing
     * @return the new series
     * @throws IllegalArgumentException if the function returns an infinity
     */
    public Series map(DoubleUnaryOperator function) {
        Objects.requireNonNull(function, "function");
        double[] mapped = new double[values.length];
        for (int i = 0; i < mapped.length; i++) {
            mapped[i] = Double.isNaN(values[i]) ? Double.NaN : function.applyAsDouble(values[i]);
            if (Double.isInfinite(mapped[i])) {
                throw new IllegalArgumentException(
                        "function must return finite values or NaN, was " + Text.number(mapped[i]) + " at " + time(i));
            }
        }
        return sharing(mapped, qualities.withValues(mapped));
    }

    /**
     * Returns the series with each reading's quality joined with another: the worse of both. Missing readings stay
     * missing; no value is changed.
     *
     * @param flags {@linkplain Quality#toCode codes}, none of them MISSING for a reading that has a value; same length
     * @return the new series
     * @throws IllegalArgumentException if the length differs or a value would be called missing
     */
    public Series withFlags(byte[] flags) {
        Require.sameLength("flags", size(), flags.length);
        byte missing = Quality.MISSING.toCode();
        byte[] own = qualities.all();
        byte[] joined = new byte[flags.length];
        for (int i = 0; i < flags.length; i++) {
            byte flag = flags[i];
            byte worst = flag > own[i] ? flag : own[i];
            // What is right needs no more than this; the check proper words the refusal.
            if (flag < 0 || worst >= missing) {
                Reading.check(values[i], quality(i).worst(Quality.ofCode(flag)));
            }
            joined[i] = worst;
        }
        return sharing(values, joined);
    }

    /**
     * Returns summary statistics of the readings a calculation should use: suspect ones count as missing, so that no spike that
     * failed a test becomes the maximum.
     *
     * @return the statistics; of all values with {@code Statistics.of(series.toValues())}
     * @see Quality#isUsable()
     */
    public Statistics statistics() {
        return Statistics.of(usable(false));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Series that
                && hasTimesOf(that)
                && Arrays.equals(values, that.values)
                && qualities.agreesWith(that.qualities);
    }

    @Override
    public int hashCode() {
        return Objects.hash(Arrays.hashCode(times), Arrays.hashCode(values), Arrays.hashCode(qualities.all()));
    }

    @Override
    public String toString() {
        if (isEmpty()) {
            return "Series[no readings]";
        }
        return "Series[" + size() + " readings, " + time(0) + " to " + time(size() - 1) + ", " + count(Quality.MISSING)
                + " missing, " + count(Quality.SUSPECT) + " suspect]";
    }
}
