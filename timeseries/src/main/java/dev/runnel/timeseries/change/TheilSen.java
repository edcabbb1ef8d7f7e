package dev.runnel.timeseries.change;

import dev.runnel.internal.Interpolation;
import dev.runnel.internal.Require;
import dev.runnel.internal.Selection;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.special.Erf;
import org.apiguardian.api.API;

/**
 * The Theil-Sen slope: the median of the slopes between all pairs of values. Immutable and thread-safe. Up to
 * {@value #MOST_ALL_PAIRS} values all pairs are taken; of more, {@value #PAIRS_DRAWN} pairs are drawn, always the same ones, and
 * {@link #isSampled} says so. The rank of a median of so many has a standard error of 0.00035 of all pairs, where the limits of
 * 5000 to 100,000 values lie 0.009 to 0.002 of all pairs from it.
 *
 * <p>Confidence limits (Sen 1968; Gilbert 1987, section 16.5): with N pairs and C = z √Var S of {@link MannKendall}, z being
 * the quantile of the normal distribution for (1 + confidence)/2, they are the slopes of rank (N − C)/2 and
 * (N + C)/2 + 1, interpolated linearly between ranks. Where C exceeds N they are the smallest and the largest slope, and
 * the interval is narrower than it should be.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class TheilSen {
    private static final int MOST_ALL_PAIRS = 5000;

    /** Chosen here. */
    private static final int PAIRS_DRAWN = 2_000_000;

    private static final int MOST = 10_000_000;
    private static final long SEED = 1;
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
        double[] slopes = count <= MOST_ALL_PAIRS ? allSlopes(times, values) : drawnSlopes(times, values);
        slope = ranked(slopes, 0.5 * (slopes.length - 1.0) + 1);
        intercept =
                Statistics.of(values).median() - slope * Statistics.of(times).median();
        double spread = Math.sqrt(2) * Erf.erfInv(confidence) * Math.sqrt(MannKendall.variance(values));
        // As a share of all pairs, of which these may be a part.
        double pairs = 0.5 * count * (count - 1.0);
        double share = slopes.length / pairs;
        lower = ranked(slopes, (pairs - spread) / 2 * share);
        upper = ranked(slopes, ((pairs + spread) / 2 + 1) * share);
    }

    private static double[] allSlopes(double[] times, double[] values) {
        double[] slopes = new double[values.length * (values.length - 1) / 2];
        int pair = 0;
        for (int i = 0; i < values.length; i++) {
            for (int j = i + 1; j < values.length; j++) {
                slopes[pair++] = (values[j] - values[i]) / (times[j] - times[i]);
            }
        }
        return slopes;
    }

    private static double[] drawnSlopes(double[] times, double[] values) {
        SplittableRandom random = new SplittableRandom(SEED);
        double[] slopes = new double[PAIRS_DRAWN];
        for (int pair = 0; pair < slopes.length; pair++) {
            int i = random.nextInt(values.length);
            int j = random.nextInt(values.length - 1);
            j += j >= i ? 1 : 0;
            slopes[pair] = (values[j] - values[i]) / (times[j] - times[i]);
        }
        return slopes;
    }

    /**
     * Fits a line to values.
     *
     * @param times times in any unit, finite, strictly increasing; not modified
     * @param values finite values, 3 to 10,000,000; same length; not modified
     * @param confidence of the limits, in (0, 1), for example 0.95
     * @return the fit, its slope in the unit of the values over that of the times
     * @throws IllegalArgumentException if the lengths differ, the number of values or the confidence is out of range, a
     *     time does not increase, or a number is not finite
     */
    public static TheilSen of(double[] times, double[] values, double confidence) {
        LineInput.check(times, values, MOST);
        Require.inRange("confidence", confidence, Double.MIN_VALUE, Math.nextDown(1.0), "");
        return new TheilSen(times, values, confidence);
    }

    /**
     * Fits a line to the usable readings of a series, with limits of 95 % confidence.
     *
     * @param series readings, 3 to 10,000,000 of them usable
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

    /**
     * The value of a rank counted from 1, between two ranks by linear interpolation, within the ranks there are; the values
     * are parted, since sorting all of them for two limits takes most of the time.
     */
    private static double ranked(double[] values, double rank) {
        double position = Math.max(0, Math.min(values.length - 1, rank - 1));
        int below = (int) position;
        double least = Selection.part(values, below);
        double next = below == position ? least : Selection.least(values, below + 1);
        // Sorting tells -0.0 from 0.0, comparing does not: the sum is 0.0 of either.
        return (below == position ? least : Interpolation.between(position, below, least, below + 1, next)) + 0.0;
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
     * Tells whether pairs were drawn because there are too many.
     *
     * @return true for more than 5000 values
     */
    public boolean isSampled() {
        return count > MOST_ALL_PAIRS;
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
                + Text.significant(upper, 4) + ", intercept " + Text.significant(intercept, 4)
                + (isSampled() ? ", pairs drawn]" : "]");
    }
}
