package dev.runnel.timeseries.change;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Series;
import java.util.Arrays;
import org.apache.commons.math3.special.Erf;
import org.apiguardian.api.API;

/**
 * The Mann-Kendall test for a monotonic trend. Immutable and thread-safe. Takes time in proportion to n log n: falling
 * pairs are counted while sorting by merging. Source: W. R. Knight (1966), A computer method for calculating Kendall's tau with
 * ungrouped data, J. Am. Stat. Assoc. 61, 436-439 (from memory).
 *
 * <p>Up to {@value #MOST_EXACT} values without ties the two-sided p-value is exact, P(|S| ≥ |s|) over all orders of the
 * values; else it is from the normal distribution with z = (S − sgn S) / √Var S, the step of 1 being the correction for
 * continuity, and 0 for S = 0.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class MannKendall {
    /** Up to so many values the distribution is counted, not approximated; chosen here. */
    private static final int MOST_EXACT = 50;

    private final int count;
    private final long s;
    private final double variance;
    private final double tau;
    private final double tauDivisor;
    private final boolean isExact;
    private final double pValue;

    private MannKendall(double[] values) {
        count = values.length;
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double n = count;
        double tiedPairs = 0;
        for (int from = 0; from < count; ) {
            int to = from;
            while (to < count && sorted[to] == sorted[from]) {
                to++;
            }
            double t = to - from;
            tiedPairs += t * (t - 1) / 2;
            from = to;
        }
        s = statistic(values, (long) count * (count - 1) / 2 - (long) tiedPairs);
        variance = variance(values);
        double pairs = n * (n - 1) / 2;
        tauDivisor = Math.sqrt(pairs * (pairs - tiedPairs));
        tau = tiedPairs == pairs ? 0 : s / tauDivisor;
        isExact = count <= MOST_EXACT && tiedPairs == 0;
        pValue = isExact ? exactPValue() : Erf.erfc(Math.abs(z()) / Math.sqrt(2));
    }

    /** The variance of S alone, which needs no p-value: n values and their ties. */
    static double variance(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double correction = 0;
        for (int from = 0; from < sorted.length; ) {
            int to = from;
            while (to < sorted.length && sorted[to] == sorted[from]) {
                to++;
            }
            double t = to - from;
            correction += t * (t - 1) * (2 * t + 5);
            from = to;
        }
        double n = sorted.length;
        return (n * (n - 1) * (2 * n + 5) - correction) / 18;
    }

    /**
     * Tests values in order of time.
     *
     * @param values finite values, at least 3; not modified
     * @return the test
     * @throws IllegalArgumentException if there are fewer or a value is not finite
     */
    public static MannKendall of(double... values) {
        Require.atLeast("number of values", values.length, 3);
        for (double value : values) {
            Require.finite("value", value, "");
        }
        return new MannKendall(values);
    }

    /**
     * Tests the usable readings of a series; how far apart they are does not matter.
     *
     * @param series readings, at least 3 of them usable
     * @return the test
     * @throws IllegalArgumentException if there are fewer
     */
    public static MannKendall of(Series series) {
        return of(Arrays.stream(series.toUsableValues())
                .filter(value -> !Double.isNaN(value))
                .toArray());
    }

    /** Counts the falling pairs while it sorts by merging: what is left of the pairs that are not tied rises. */
    private static long statistic(double[] values, long untiedPairs) {
        return untiedPairs - 2 * fallingPairs(values.clone(), new double[values.length], 0, values.length);
    }

    /** Sorts values from (included) to (excluded) and returns how many pairs stood in falling order. */
    private static long fallingPairs(double[] values, double[] spare, int from, int to) {
        if (to - from < 2) {
            return 0;
        }
        int middle = (from + to) >>> 1;
        long falling = fallingPairs(values, spare, from, middle) + fallingPairs(values, spare, middle, to);
        System.arraycopy(values, from, spare, from, to - from);
        int left = from;
        int right = middle;
        for (int at = from; at < to; at++) {
            if (right == to || left < middle && spare[left] <= spare[right]) {
                values[at] = spare[left++];
            } else {
                falling += middle - left;
                values[at] = spare[right++];
            }
        }
        return falling;
    }

    /**
     * P(|S| ≥ |s|) from the number of inversions of random orders: the k-th value adds 0 to k - 1 of them, each as
     * likely, and S = pairs - 2 inversions.
     */
    private double exactPValue() {
        int pairs = count * (count - 1) / 2;
        double[] probability = new double[pairs + 1];
        probability[0] = 1;
        for (int k = 2; k <= count; k++) {
            double[] next = new double[probability.length];
            for (int inversions = 0; inversions <= pairs; inversions++) {
                for (int added = 0; added < k && added <= inversions; added++) {
                    next[inversions] += probability[inversions - added] / k;
                }
            }
            probability = next;
        }
        int most = (int) ((pairs - Math.abs(s)) / 2);
        double tail = 0;
        for (int inversions = 0; inversions <= most; inversions++) {
            tail += probability[inversions];
        }
        return Math.min(1, 2 * tail);
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
     * Returns the test statistic: rising pairs minus falling pairs.
     *
     * @return S
     */
    public long s() {
        return s;
    }

    /**
     * Returns the variance of S without trend, ties allowed for.
     *
     * @return Var S
     */
    public double variance() {
        return variance;
    }

    /**
     * Returns the standardised statistic, corrected for continuity.
     *
     * @return z; 0 if S is 0
     */
    public double z() {
        return s == 0 ? 0 : (s - Long.signum(s)) / Math.sqrt(variance);
    }

    /**
     * Returns the rank correlation with time, Kendall's τ<sub>b</sub>.
     *
     * @return in [-1, 1]; 0 if all values are equal
     */
    public double tau() {
        return tau;
    }

    /**
     * Returns the standard error of τ<sub>b</sub> if there is no trend: that of S, with ties, over the pairs that τ<sub>b</sub>
     * divides by.
     *
     * @return √Var S/√(N (N − N<sub>tied</sub>)), N = n(n−1)/2; 0 if all values are equal
     */
    public double tauStandardError() {
        return variance == 0 ? 0 : Math.sqrt(variance) / tauDivisor;
    }

    /**
     * Returns the probability of an S at least as far from 0 if there is no trend, two-sided.
     *
     * @return p, in [0, 1]
     */
    public double pValue() {
        return pValue;
    }

    /**
     * Tells how the p-value was found.
     *
     * @return true if it is exact, false if from the normal distribution
     */
    public boolean isExact() {
        return isExact;
    }

    @Override
    public String toString() {
        return "MannKendall[n " + count + ", S " + s + ", tau " + Text.significant(tau, 4) + ", z "
                + Text.significant(z(), 4) + ", p " + Text.significant(pValue, 4) + (isExact ? " exact" : " normal")
                + "]";
    }
}
