package dev.runnel.timeseries.internal;

import dev.runnel.internal.SeriesArrays;
import dev.runnel.internal.UsualStep;
import dev.runnel.timeseries.BetweenReadings;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import org.apiguardian.api.API;

/**
 * Integral over time of the usable readings of a series, and the time they speak for, in adjoining steps of any
 * length. The one place where the gap rule is written down as code.
 *
 * <p>A reading holds until the next usable one, at most for the maximum gap; or two usable readings no further apart
 * than the maximum gap are joined by a line. The rest of the time is not covered.
 */
@API(status = API.Status.INTERNAL)
public final class TimeIntegral {
    private static final double NANOS = 1e9;
    private static final byte SUSPECT = Quality.SUSPECT.toCode();

    private final long[] edges;
    private final double[] integral;
    private final long[] covered;
    private int step;
    private long lastLength;
    private double lastSeconds;

    private TimeIntegral(long[] edges) {
        this.edges = edges;
        this.integral = new double[edges.length - 1];
        this.covered = new long[edges.length - 1];
    }

    /**
     * Integrates.
     *
     * @param series the readings; those that are not usable are left out
     * @param between what is known between two readings
     * @param maximumGap longest time a reading holds, or a line spans, ns
     * @param edges edges of the steps, ns since 1970, strictly increasing, at least two; not copied
     * @return integral and covered time of each step
     */
    public static TimeIntegral of(Series series, BetweenReadings between, long maximumGap, long[] edges) {
        TimeIntegral result = new TimeIntegral(edges);
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        long[] times = keeper.times(series);
        double[] values = keeper.values(series);
        byte[] qualities = keeper.qualities(series);
        boolean holds = between == BetweenReadings.HOLD;
        int previous = -1;
        for (int i = 0; i < times.length; i++) {
            if (previous >= 0 && previous == i - 1) {
                i = result.addRun(i, times, values, qualities, holds, maximumGap);
                previous = i - 1;
            }
            if (i == times.length || qualities[i] >= SUSPECT) {
                continue;
            }
            if (previous >= 0) {
                long from = times[previous];
                long to = times[i];
                // Unsigned: two readings centuries apart overflow a long, and are apart all the same.
                boolean near = Long.compareUnsigned(to - from, maximumGap) <= 0;
                if (holds) {
                    result.add(from, near ? to : from + maximumGap, values[previous], 0);
                } else if (near) {
                    double slope = (values[i] - values[previous]) / (to - from);
                    result.add(from, to, values[previous], slope);
                }
            }
            previous = i;
        }
        if (previous >= 0 && holds) {
            long from = times[previous];
            result.add(from, Math.max(from, from + maximumGap), values[previous], 0);
        }
        return result;
    }

    /**
     * Returns the maximum gap to use where none is given: 1.5 times the median time between readings, so that a single
     * lost reading shows.
     *
     * @param series the readings
     * @return the gap, ns; 0 if there are fewer than two readings
     */
    public static long usualGap(Series series) {
        if (series.size() < 2) {
            return 0;
        }
        long median = UsualStep.upperMedian(SeriesArrays.keeper().times(series));
        return median + median / 2;
    }

    /**
     * Adds the pieces before readings that follow each other within the step and are near: nearly all are, and their sums need
     * not go through memory for each.
     *
     * @param first the reading behind the first piece; the one before it is usable
     * @return the first reading whose piece is not added
     */
    private int addRun(int first, long[] times, double[] values, byte[] qualities, boolean holds, long maximumGap) {
        while (step < covered.length && edges[step + 1] <= times[first - 1]) {
            step++;
        }
        if (step == covered.length || times[first - 1] < edges[step]) {
            return first;
        }
        long end = edges[step + 1];
        double sum = integral[step];
        long sumLength = covered[step];
        long length = lastLength;
        double seconds = lastSeconds;
        int i = first;
        for (; i < times.length && qualities[i] < SUSPECT && times[i] <= end; i++) {
            long next = times[i] - times[i - 1];
            if (next != length) {
                if (Long.compareUnsigned(next, maximumGap) > 0) {
                    break;
                }
                length = next;
                seconds = (double) length / NANOS;
            }
            double value = values[i - 1];
            double slope = holds ? 0 : (values[i] - value) / length;
            sum += (value + slope * (0.5 * length)) * seconds;
            sumLength += length;
        }
        integral[step] = sum;
        covered[step] = sumLength;
        lastLength = length;
        lastSeconds = seconds;
        return i;
    }

    /** Adds a piece that starts at {@code value} and changes by {@code slope} each ns; pieces come in order. */
    private void add(long from, long to, double value, double slope) {
        while (step < covered.length && edges[step + 1] <= from) {
            step++;
        }
        if (step < covered.length && from >= edges[step] && to <= edges[step + 1]) {
            // Nearly every piece lies within one step.
            piece(step, from, from, to, value, slope);
            return;
        }
        for (int i = step; i < covered.length && edges[i] < to; i++) {
            piece(i, from, Math.max(from, edges[i]), Math.min(to, edges[i + 1]), value, slope);
        }
    }

    private void piece(int index, long from, long start, long end, double value, double slope) {
        long length = end - start;
        if (length != lastLength) {
            // Nearly all pieces are as long as the one before, and a division is slow.
            lastLength = length;
            lastSeconds = (double) length / NANOS;
        }
        double middle = value + slope * ((start - from) + 0.5 * length);
        integral[index] += middle * lastSeconds;
        covered[index] += length;
    }

    /**
     * Returns the integral over the covered part of a step.
     *
     * @param index position of the step
     * @return value times seconds
     */
    public double integral(int index) {
        return integral[index];
    }

    /**
     * Returns the mean over the covered part of a step.
     *
     * @param index position of the step
     * @return integral over covered time; NaN if none is covered
     */
    public double mean(int index) {
        return covered[index] == 0 ? Double.NaN : integral[index] / (covered[index] / NANOS);
    }

    /**
     * Returns how much of a step is covered.
     *
     * @param index position of the step
     * @return fraction of the step, in [0, 1]
     */
    public double coverage(int index) {
        return (double) covered[index] / (edges[index + 1] - edges[index]);
    }
}
