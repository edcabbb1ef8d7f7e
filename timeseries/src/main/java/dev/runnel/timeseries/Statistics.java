package dev.runnel.timeseries;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Interpolation;
import dev.runnel.internal.Moments;
import dev.runnel.internal.Require;
import dev.runnel.internal.Selection;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Objects;
import org.apiguardian.api.API;
import org.jspecify.annotations.Nullable;

/**
 * Summary statistics of the values that are not missing. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Statistics {
    /** Below this many values all are sorted; chosen, not measured. */
    private static final int FEW = 100;

    /** From here on values are counted before they are parted. */
    private static final int MANY = 1000;

    /** Ranks after which sorting was the cheaper way. */
    private static final int SEVERAL = 3;

    private static final int SEVERAL_OF_MANY = 20;

    /** Without the missing ones, in the order in which they came. */
    private final double[] known;

    private final int missing;

    /** Made on first need; NaN before that, and where it is none. */
    private volatile double sum = Double.NaN;

    /** As the sum; it is the rank that is asked for most. */
    private volatile double median = Double.NaN;

    /** Made on first need, as sorting takes most of the time; two threads make the same. */
    private volatile double @Nullable [] sorted;

    /** How often a rank was asked for; two threads may miscount, which costs time and changes nothing. */
    private int asked;

    private Statistics(double[] known, int missing) {
        this.known = known;
        this.missing = missing;
    }

    /**
     * Returns the statistics of an array.
     *
     * @param values values, NaN for missing; not modified
     * @return the statistics
     */
    public static Statistics of(double[] values) {
        Objects.requireNonNull(values, "values");
        double[] known = new double[values.length];
        int count = 0;
        for (double value : values) {
            known[count] = value;
            count += Double.isNaN(value) ? 0 : 1;
        }
        double[] kept = count == values.length ? known : Arrays.copyOf(known, count);
        return new Statistics(kept, values.length - kept.length);
    }

    /** Of many values one or two ranks are found sooner than all of them are sorted. */
    private double ranked(double position) {
        int below = (int) position;
        boolean isMany = known.length >= MANY;
        if (sorted != null || known.length < FEW || asked++ >= (isMany ? SEVERAL_OF_MANY : SEVERAL)) {
            return Interpolation.ranked(sorted(), position);
        }
        double least;
        double next;
        if (isMany && below + 1 < known.length) {
            double[] pair = Selection.pair(known, below);
            least = pair[0];
            next = pair[1];
        } else {
            double[] parted = known.clone();
            least = Selection.part(parted, below);
            next = below == position ? least : Selection.least(parted, below + 1);
        }
        return below == position ? least : Interpolation.between(position, below, least, below + 1, next);
    }

    private double[] sorted() {
        double[] ready = sorted;
        if (ready == null) {
            ready = known.clone();
            Arrays.sort(ready);
            sorted = ready;
        }
        return ready;
    }

    /**
     * Returns the number of values.
     *
     * @return count, without the missing ones
     */
    public int count() {
        return known.length;
    }

    /**
     * Returns the number of missing values.
     *
     * @return count of NaN
     */
    public int missing() {
        return missing;
    }

    /**
     * Returns the compensated sum.
     *
     * @return the sum; 0 if there is no value
     */
    public double sum() {
        double ready = sum;
        if (Double.isNaN(ready)) {
            ready = CompensatedSum.of(known, 0, known.length);
            sum = ready;
        }
        return ready;
    }

    /**
     * Returns the arithmetic mean.
     *
     * @return the mean; NaN if there is no value
     */
    public double mean() {
        return sum() / known.length;
    }

    /**
     * Returns the sample standard deviation, divisor n - 1.
     *
     * @return the standard deviation; NaN if there are fewer than two values
     */
    public double standardDeviation() {
        return known.length < 2 ? Double.NaN : Moments.deviation(sorted());
    }

    /**
     * Returns the smallest value.
     *
     * @return the minimum; NaN if there is no value
     */
    public double minimum() {
        if (known.length == 0) {
            return Double.NaN;
        }
        double least = known[0];
        for (double value : known) {
            least = Math.min(least, value);
        }
        return least;
    }

    /**
     * Returns the largest value.
     *
     * @return the maximum; NaN if there is no value
     */
    public double maximum() {
        if (known.length == 0) {
            return Double.NaN;
        }
        double most = known[0];
        for (double value : known) {
            most = Math.max(most, value);
        }
        return most;
    }

    /**
     * Returns the median.
     *
     * @return the value that half of them do not exceed; NaN if there is no value
     */
    public double median() {
        double ready = median;
        if (Double.isNaN(ready)) {
            ready = quantile(0.5);
            median = ready;
        }
        return ready;
    }

    /**
     * Returns a quantile by linear interpolation between order statistics at position p (n - 1), counted from 0.
     * Source: Hyndman and Fan (1996), Sample quantiles in statistical packages, The American Statistician 50(4), type 7.
     *
     * @param probability p, in [0, 1]
     * @return the quantile; NaN if there is no value
     * @throws IllegalArgumentException if {@code probability} is outside [0, 1] or NaN
     */
    public double quantile(double probability) {
        Require.inRange("probability", probability, 0, 1, "");
        if (known.length == 0) {
            return Double.NaN;
        }
        // Sorting tells -0.0 from 0.0, comparing does not: the sum is 0.0 of either.
        return ranked(probability * (known.length - 1)) + 0.0;
    }

    @Override
    public String toString() {
        return "Statistics[" + count() + " values, " + missing + " missing, mean " + Text.significant(mean(), 6)
                + ", min " + Text.significant(minimum(), 6) + ", median " + Text.significant(median(), 6) + ", max "
                + Text.significant(maximum(), 6) + ", sd " + Text.significant(standardDeviation(), 6) + "]";
    }
}
