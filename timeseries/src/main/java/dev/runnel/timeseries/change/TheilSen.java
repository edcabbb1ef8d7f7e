package dev.runnel.timeseries.change;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.math3.special.Erf;
import org.apiguardian.api.API;

/**
 * The Theil-Sen slope: the median of the slopes between all pairs of values. Immutable and thread-safe. Takes memory in
 * proportion to n², so at most {@value #MOST} values: make daily values of a longer record first.
 *
 * <p>Confidence limits (Sen 1968; Gilbert 1987, section 16.5): with N pairs and C = z √Var S of {@link MannKendall}, z being
 * the quantile of the normal distribution for (1 + confidence)/2, they are the slopes of rank (N − C)/2 and
 * (N + C)/2 + 1, interpolated linearly between ranks. Where C exceeds N they are the smallest and the largest slope, and
 * the interval is narrower than it should be.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class TheilSen {
    private static final int MOST = 5000;
    private static final double NANOS_PER_DAY = 86_400e9;

    private final int count;
    private final double confidence;
    private final double slope;
    private final double intercept;
    private final double lower;
    private final double upper;

    private TheilSen(double[] times, double[] values, double confidence) {
        this.count = values.length;
        this.confidence = confidence;
        double[] slopes = new double[count * (count - 1) / 2];
        int pair = 0;
        for (int i = 0; i < count; i++) {
            for (int j = i + 1; j < count; j++) {
                slopes[pair++] = (values[j] - values[i]) / (times[j] - times[i]);
            }
        }
        slope = Statistics.of(slopes).median();
        intercept =
                Statistics.of(values).median() - slope * Statistics.of(times).median();
        Arrays.sort(slopes);
        double spread = Math.sqrt(2)
                * Erf.erfInv(confidence)
                * Math.sqrt(MannKendall.of(values).variance());
        lower = ranked(slopes, (slopes.length - spread) / 2);
        upper = ranked(slopes, (slopes.length + spread) / 2 + 1);
    }

    /**
     * Fits a line to values.
     *
     * @param times times in any unit, finite, strictly increasing; not modified
     * @param values finite values, 3 to 5000; same length; not modified
     * @param confidence of the limits, in (0, 1), for example 0.95
     * @return the fit, its slope in the unit of the values over that of the times
     * @throws IllegalArgumentException if the lengths differ, the number of values or the confidence is out of range, a
     *     time does not increase, or a number is not finite
     */
    public static TheilSen of(double[] times, double[] values, double confidence) {
        Require.inRange("number of values", values.length, 3, MOST, "");
        Require.sameLength("values", times.length, values.length);
        Require.inRange("confidence", confidence, Double.MIN_VALUE, Math.nextDown(1.0), "");
        for (int i = 0; i < values.length; i++) {
            Require.finite("value", values[i], "");
            Require.finite("time", times[i], "");
            if (i > 0 && times[i] <= times[i - 1]) {
                throw new IllegalArgumentException("times must increase strictly, was " + Text.number(times[i])
                        + " at index " + i + " after " + Text.number(times[i - 1]));
            }
        }
        return new TheilSen(times, values, confidence);
    }

    /**
     * Fits a line to the usable readings of a series, with limits of 95 % confidence.
     *
     * @param series readings, 3 to 5000 of them usable
     * @return the fit, its slope in the unit of the readings per day and its intercept at the first usable reading
     * @throws IllegalArgumentException if the number of usable readings is out of range
     */
    public static TheilSen of(Series series) {
        int[] usable = IntStream.range(0, series.size())
                .filter(i -> series.quality(i).isUsable())
                .toArray();
        Require.inRange("number of usable readings", usable.length, 3, MOST, "");
        double[] days = new double[usable.length];
        double[] values = new double[usable.length];
        for (int i = 0; i < usable.length; i++) {
            days[i] = (series.epochNanos(usable[i]) - series.epochNanos(usable[0])) / NANOS_PER_DAY;
            values[i] = series.value(usable[i]);
        }
        return of(days, values, 0.95);
    }

    /** The value of a rank counted from 1, between two ranks by linear interpolation, within the ranks there are. */
    private static double ranked(double[] sorted, double rank) {
        double position = Math.max(0, Math.min(sorted.length - 1, rank - 1));
        int below = (int) position;
        if (below == sorted.length - 1) {
            return sorted[below];
        }
        return sorted[below] + (position - below) * (sorted[below + 1] - sorted[below]);
    }

    /**
     * Returns the number of values.
     *
     * @return n
     */
    public int count() {
        return count;
    }

    /**
     * Returns the slope.
     *
     * @return median of the slopes between all pairs
     */
    public double slope() {
        return slope;
    }

    /**
     * Returns the value of the line at time 0, so that it runs through the median of times and values.
     *
     * @return intercept, in the unit of the values
     */
    public double intercept() {
        return intercept;
    }

    /**
     * Returns the lower confidence limit of the slope.
     *
     * @return lower limit
     */
    public double lower() {
        return lower;
    }

    /**
     * Returns the upper confidence limit of the slope.
     *
     * @return upper limit
     */
    public double upper() {
        return upper;
    }

    /**
     * Returns the confidence of the limits.
     *
     * @return in (0, 1)
     */
    public double confidence() {
        return confidence;
    }

    @Override
    public String toString() {
        return "TheilSen[n " + count + ", slope " + Text.significant(slope, 4) + ", "
                + Text.significant(100 * confidence, 4) + " % limits " + Text.significant(lower, 4) + " to "
                + Text.significant(upper, 4) + ", intercept " + Text.significant(intercept, 4) + "]";
    }
}
