package dev.runnel.timeseries.balance;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.BetweenReadings;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.internal.TimeIntegral;
import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What a rate adds up to over an interval, V = ∫ q dt, as far as the record covers it. Immutable and thread-safe.
 *
 * @param interval the interval
 * @param measured integral over the covered part; of a flow in m³/s, the volume in m³
 * @param coverage fraction of the interval that the record speaks for, in [0, 1]
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record MeasuredVolume(Interval interval, double measured, double coverage) {
    /**
     * Checks that nothing is missing.
     *
     * @param interval the interval
     * @param measured integral over the covered part; of a flow in m³/s, the volume in m³
     * @param coverage fraction of the interval that the record speaks for, in [0, 1]
     */
    public MeasuredVolume {
        Objects.requireNonNull(interval, "interval");
    }

    /**
     * Integrates a rate; readings no further apart than 1.5 times the record's usual spacing are joined by a line.
     *
     * @param rate readings of a rate per second
     * @param interval when; not empty
     * @return the volume and how much of the interval is covered
     * @throws IllegalArgumentException if the interval is empty
     */
    public static MeasuredVolume of(Series rate, Interval interval) {
        Objects.requireNonNull(rate, "rate");
        return of(rate, interval, TimeIntegral.usualGap(rate));
    }

    /**
     * Integrates a rate.
     *
     * @param rate readings of a rate per second
     * @param interval when; not empty
     * @param maximumGap longest time between two readings that a line joins; greater than 0
     * @return the volume and how much of the interval is covered
     * @throws IllegalArgumentException if the interval is empty or the gap not greater than 0
     */
    public static MeasuredVolume of(Series rate, Interval interval, Duration maximumGap) {
        return of(rate, interval, EpochNanos.positive("maximumGap", maximumGap));
    }

    private static MeasuredVolume of(Series rate, Interval interval, long gap) {
        if (interval.isEmpty()) {
            throw new IllegalArgumentException("interval must not be empty, was " + interval);
        }
        long[] edges = {EpochNanos.of(interval.start()), EpochNanos.of(interval.end())};
        TimeIntegral integral = TimeIntegral.of(near(rate, interval), BetweenReadings.LINEAR, gap, edges);
        return new MeasuredVolume(interval, integral.integral(0), integral.coverage(0));
    }

    /** The readings inside, and on either side the usable one next to them: a record of years must not be walked for a storm. */
    private static Series near(Series rate, Interval interval) {
        int from = rate.firstIndexAtOrAfter(interval.start()) - 1;
        while (from > 0 && !rate.quality(from).isUsable()) {
            from--;
        }
        int to = rate.firstIndexAtOrAfter(interval.end());
        while (to < rate.size() && !rate.quality(to).isUsable()) {
            to++;
        }
        if (rate.isEmpty() || from <= 0 && to >= rate.size() - 1) {
            return rate;
        }
        int first = Math.max(0, from);
        int last = Math.min(to, rate.size() - 1);
        return last < first
                ? Series.empty()
                : rate.slice(Interval.of(rate.time(first), rate.time(last).plusNanos(1)));
    }

    @Override
    public String toString() {
        return "MeasuredVolume[" + interval + ", " + Text.significant(measured, 6) + " over "
                + Text.significant(100 * coverage, 4) + " %]";
    }
}
