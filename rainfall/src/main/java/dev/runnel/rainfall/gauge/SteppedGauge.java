package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.apiguardian.api.API;

/**
 * A gauge whose logger writes the rain of each step rather than tips: a depth, or a mean intensity I with
 * P [mm] = I [mm/h] · Δt [h].
 *
 * <p>Three things must be known of such a record, and none can be seen in it: what a value is, whether its time is the
 * beginning or the end of its step, and what it means when there is no reading. Here they are arguments.
 *
 * <p>The steps lie where most readings lie: a record at 00:02, 00:07, 00:12 has steps that begin 2 min after the full five.
 * A reading whose time fits no step is set aside and counted, with its rain. So the depths of all steps and what was
 * set aside add up to what was read.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SteppedGauge {
    private final long step;
    private final boolean isIntensity;
    private final boolean isStampAtEnd;
    private final boolean isDryWithoutReading;

    private SteppedGauge(long step, boolean isIntensity, boolean isStampAtEnd, boolean isDryWithoutReading) {
        this.step = step;
        this.isIntensity = isIntensity;
        this.isStampAtEnd = isStampAtEnd;
        this.isDryWithoutReading = isDryWithoutReading;
    }

    /**
     * Returns a gauge whose readings are depths, mm, at the beginnings of their steps; no reading means not known.
     *
     * @param step length of a step; greater than 0
     * @return the gauge
     * @throws IllegalArgumentException if the step is not greater than 0
     */
    public static SteppedGauge ofDepth(Duration step) {
        return new SteppedGauge(EpochNanos.positive("step", step), false, false, false);
    }

    /**
     * Returns a gauge whose readings are mean intensities, mm/h, at the beginnings of their steps; no reading means not
     * known.
     *
     * @param step length of a step; greater than 0
     * @return the gauge
     * @throws IllegalArgumentException if the step is not greater than 0
     */
    public static SteppedGauge ofIntensity(Duration step) {
        return new SteppedGauge(EpochNanos.positive("step", step), true, false, false);
    }

    /**
     * Returns the same gauge with readings at the ends of their steps.
     *
     * @return the new gauge
     */
    public SteppedGauge withStampAtEnd() {
        return new SteppedGauge(step, isIntensity, true, isDryWithoutReading);
    }

    /**
     * Returns the same gauge with a logger that writes wet steps only: a step without a reading was dry. Then an outage
     * looks like a dry spell; only the check against another gauge tells them apart.
     *
     * @return the new gauge
     */
    public SteppedGauge withDryWithoutReading() {
        return new SteppedGauge(step, isIntensity, isStampAtEnd, true);
    }

    /**
     * Returns the rain from the first reading to the last.
     *
     * @param readings depths, mm, or intensities, mm/h, as the gauge has them; 0 or greater; one that is suspect or missing
     *     counts as not known
     * @return the rain in each step
     * @throws IllegalArgumentException if there is no reading, or one that is usable is negative
     */
    public StepRecord record(Series readings) {
        if (readings.isEmpty()) {
            throw new IllegalArgumentException("readings must hold at least one reading, was empty");
        }
        long phase = phase(readings);
        long first = floor(begin(readings.epochNanos(0)), phase);
        long last = floor(begin(readings.epochNanos(readings.size() - 1)), phase);
        return record(
                readings,
                first,
                Apportionment.stepCount(first, last - first + step, step),
                Long.MIN_VALUE,
                Long.MAX_VALUE);
    }

    /**
     * Returns the rain of a given time: the steps that lie wholly within it. Readings before and after it play no part.
     *
     * @param readings depths, mm, or intensities, mm/h, as the gauge has them; 0 or greater; may be empty, then the steps
     *     begin with the interval
     * @param interval the time, at least a step long
     * @return the rain in each step
     * @throws IllegalArgumentException if a usable reading is negative or no step lies within the interval
     */
    public StepRecord record(Series readings, Interval interval) {
        long start = EpochNanos.of(interval.start());
        long phase = readings.isEmpty() ? Math.floorMod(start, step) : phase(readings);
        long first = floor(start, phase) == start ? start : floor(start, phase) + step;
        long size = Math.floorDiv(EpochNanos.of(interval.end()) - first, step);
        if (size < 1) {
            throw new IllegalArgumentException(
                    "interval must hold a step of " + Text.exactDuration(Duration.ofNanos(step)) + ", was " + interval);
        }
        return record(readings, first, Apportionment.stepCount(first, size * step, step), first, first + size * step);
    }

    private StepRecord record(Series readings, long first, int size, long from, long to) {
        double[] depths = new double[size];
        boolean[] isRead = new boolean[size];
        Arrays.fill(depths, isDryWithoutReading ? 0 : Double.NaN);
        int aside = 0;
        double asideMm = 0;
        for (int i = 0; i < readings.size(); i++) {
            long begin = begin(readings.epochNanos(i));
            if (begin < from || begin >= to) {
                continue;
            }
            double depth = depth(readings, i);
            if (Math.floorMod(begin - first, step) == 0) {
                int at = Math.toIntExact((begin - first) / step);
                depths[at] = depth;
                isRead[at] = true;
            } else {
                aside++;
                asideMm += Double.isNaN(depth) ? 0 : depth;
            }
        }
        int read = 0;
        for (boolean each : isRead) {
            read += each ? 1 : 0;
        }
        RegularSeries rain = RegularSeries.of(EpochNanos.toInstant(first), Duration.ofNanos(step), depths);
        return new StepRecord(rain, rain.missing(), isDryWithoutReading ? size - read : 0, aside, asideMm);
    }

    private double depth(Series readings, int index) {
        if (!readings.quality(index).isUsable()) {
            return Double.NaN;
        }
        double value = readings.value(index);
        if (value < 0) {
            throw Rain.negative("readings", unit(), value, index, readings.time(index));
        }
        return isIntensity ? value * Rain.hours(Duration.ofNanos(step)) : value;
    }

    private String unit() {
        return isIntensity ? "mm/h" : "mm";
    }

    /** The rest of most times over the step: where the steps begin. Of equals, the earliest in the record. */
    private long phase(Series readings) {
        Map<Long, Integer> counts = new HashMap<>();
        long best = Math.floorMod(begin(readings.epochNanos(0)), step);
        for (int i = 0; i < readings.size(); i++) {
            counts.merge(Math.floorMod(begin(readings.epochNanos(i)), step), 1, Integer::sum);
        }
        for (int i = 0; i < readings.size(); i++) {
            long phase = Math.floorMod(begin(readings.epochNanos(i)), step);
            if (counts.getOrDefault(phase, 0) > counts.getOrDefault(best, 0)) {
                best = phase;
            }
        }
        return best;
    }

    private long begin(long stamp) {
        return isStampAtEnd ? stamp - step : stamp;
    }

    private long floor(long time, long phase) {
        return Math.floorDiv(time - phase, step) * step + phase;
    }

    @Override
    public String toString() {
        return "SteppedGauge[" + unit() + " in steps of " + Text.duration(Duration.ofNanos(step))
                + ", stamped at the " + (isStampAtEnd ? "end" : "beginning") + ", without a reading "
                + (isDryWithoutReading ? "dry" : "not known") + "]";
    }
}
