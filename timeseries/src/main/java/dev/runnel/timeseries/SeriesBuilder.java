package dev.runnel.timeseries;

import java.time.Instant;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * Collects readings in order of time into a {@link Series}. Not thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SeriesBuilder {
    private static final int INITIAL_CAPACITY = 64;

    private long[] times = new long[INITIAL_CAPACITY];
    private double[] values = new double[INITIAL_CAPACITY];
    private byte[] qualities = new byte[INITIAL_CAPACITY];
    private int size;

    SeriesBuilder() {}

    /**
     * Adds a reading, unchecked, or missing if the value is NaN.
     *
     * @param time after the time of the reading before
     * @param value the value, or NaN for none
     * @return this builder
     * @throws IllegalArgumentException if the time does not increase or the value is infinite
     */
    public SeriesBuilder add(Instant time, double value) {
        return add(EpochNanos.of(time), value, Double.isNaN(value) ? Quality.MISSING : Quality.UNCHECKED);
    }

    /**
     * Adds a reading.
     *
     * @param reading at a time after that of the reading before
     * @return this builder
     * @throws IllegalArgumentException if the time does not increase
     */
    public SeriesBuilder add(Reading reading) {
        return add(EpochNanos.of(reading.time()), reading.value(), reading.quality());
    }

    /**
     * Adds a reading without making objects.
     *
     * @param epochNanos ns since 1970-01-01T00:00:00Z, after the reading before
     * @param value the value, NaN if and only if the quality is MISSING
     * @param quality the quality
     * @return this builder
     * @throws IllegalArgumentException if the time does not increase, or value and quality do not agree
     */
    public SeriesBuilder add(long epochNanos, double value, Quality quality) {
        if (size > 0 && epochNanos <= times[size - 1]) {
            throw new IllegalArgumentException("time must be after " + EpochNanos.toInstant(times[size - 1]) + ", was "
                    + EpochNanos.toInstant(epochNanos));
        }
        Reading.check(value, quality);
        if (size == times.length) {
            int capacity = size + (size >> 1);
            times = Arrays.copyOf(times, capacity);
            values = Arrays.copyOf(values, capacity);
            qualities = Arrays.copyOf(qualities, capacity);
        }
        times[size] = epochNanos;
        values[size] = value;
        qualities[size] = quality.toCode();
        size++;
        return this;
    }

    /**
     * Returns the series of what was added so far; the builder may be used on.
     *
     * @return the series
     */
    public Series build() {
        return Series.trusted(Arrays.copyOf(times, size), Arrays.copyOf(values, size), Arrays.copyOf(qualities, size));
    }

    @Override
    public String toString() {
        return "SeriesBuilder[" + size + " readings]";
    }
}
