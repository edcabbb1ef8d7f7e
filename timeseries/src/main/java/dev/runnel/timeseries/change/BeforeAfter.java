package dev.runnel.timeseries.change;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.util.Arrays;
import java.util.Objects;
import java.util.stream.IntStream;
import org.apache.commons.math3.special.Erf;
import org.apiguardian.api.API;

/**
 * Two groups of values, before and after something was done: whether the second lies higher, by the rank sum test, and by how
 * much, by the median of all differences (Hodges and Lehmann). Immutable and thread-safe. Takes time in proportion to n log n.
 *
 * <pre>
 * U = Σᵢ Σⱼ [xᵢ &lt; yⱼ] + ½[xᵢ = yⱼ],   N = m n,   Var U = N/12 (m + n + 1 − Σ(t³ − t)/((m + n)(m + n − 1)))
 * </pre>
 *
 * <p>x the m values before, y the n values after, t the sizes of groups of ties. Up to {@value #MOST_EXACT} values on each
 * side without ties the two-sided p-value is exact and so is the confidence of the limits, which are the differences of rank k
 * and N + 1 − k, k the smallest number with P(U ≤ k) ≥ (1 − confidence)/2, at least 1. Else both are from the normal
 * distribution: z with a correction of ½ for continuity, and the differences of rank (N − C)/2 and (N + C)/2 + 1, C = 2 z √Var U,
 * interpolated between ranks and held within those there are.
 *
 * <p>What this is not: proof that what was done is the cause. Values must be independent but for the change; what else changed
 * between the two times (season, groundwater, size of the storms) shows as well.
 *
 * <p>Sources: H. B. Mann and D. R. Whitney (1947), Annals of Mathematical Statistics 18, 50-60; J. L. Hodges and E. L. Lehmann
 * (1963), Annals of Mathematical Statistics 34, 598-611; M. Hollander and D. A. Wolfe, Nonparametric statistical methods,
 * chapter 4 (all from memory).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class BeforeAfter {
    /** Up to so many values on each side the distribution is counted, not approximated; chosen here. */
    private static final int MOST_EXACT = 50;

    /** Most values on one side, so that the pairs can be counted. */
    private static final int MOST = 10_000_000;

    /** Greatest size of a value, so that no difference overflows; chosen here. */
    private static final double GREATEST = 1e300;

    private final double[] before;
    private final double[] after;
    private final double confidence;
    private final double statistic;
    private final double variance;
    private final boolean isExact;
    private final double pValue;
    private final double shift;
    private final double lower;
    private final double upper;

    private BeforeAfter(double[] before, double[] after, double confidence) {
        this.before = before;
        this.after = after;
        this.confidence = confidence;
        long pairs = pairs();
        // Twice U is whole.
        long below = atMost(0);
        long strictlyBelow = atMost(Math.nextDown(0.0));
        statistic = (pairs - below) + (below - strictlyBelow) / 2.0;
        double tied = tied();
        double n = before.length + after.length;
        variance = pairs / 12.0 * (n + 1 - tied / (n * (n - 1)));
        isExact = tied == 0 && Math.max(before.length, after.length) <= MOST_EXACT;
        shift = (difference((pairs + 1) / 2) + difference(pairs / 2 + 1)) / 2;
        if (isExact) {
            double[] chance = RankSumChances.of(before.length, after.length);
            pValue = Math.min(1, 2 * below(chance, (int) Math.min(statistic, pairs - statistic)));
            long rank = Math.max(1, first(chance, (1 - confidence) / 2));
            lower = difference(rank);
            upper = difference(pairs + 1 - rank);
        } else {
            pValue = Erf.erfc(Math.abs(z()) / Math.sqrt(2));
            double spread = 2 * Math.sqrt(2) * Erf.erfInv(confidence) * Math.sqrt(variance);
            lower = ranked((pairs - spread) / 2);
            upper = ranked((pairs + spread) / 2 + 1);
        }
    }

    /**
     * Compares two groups.
     *
     * @param before values before, from 2 to 10,000,000, in [-1e300, 1e300]; not modified
     * @param after values after, the same; not modified
     * @param confidence of the limits, in (0, 1), for example 0.95
     * @return the comparison
     * @throws IllegalArgumentException if there are fewer or more values, or one of them or the confidence is out of range
     */
    public static BeforeAfter of(double[] before, double[] after, double confidence) {
        Objects.requireNonNull(before, "before");
        Objects.requireNonNull(after, "after");
        Require.inRange("confidence", confidence, Double.MIN_VALUE, Math.nextDown(1.0), "");
        return new BeforeAfter(sorted("before", before), sorted("after", after), confidence);
    }

    /**
     * Compares the usable readings of a series before a time with those from it on, with limits of 95 % confidence.
     *
     * @param series readings, at least 2 of them usable on each side
     * @param time when the change was made; a reading at it counts as after
     * @return the comparison
     * @throws IllegalArgumentException if there are fewer
     */
    public static BeforeAfter of(Series series, Instant time) {
        int at = series.firstIndexAtOrAfter(Objects.requireNonNull(time, "time"));
        return of(usable(series, 0, at), usable(series, at, series.size()), 0.95);
    }

    private static double[] usable(Series series, int from, int to) {
        return IntStream.range(from, to)
                .filter(i -> series.quality(i).isUsable())
                .mapToDouble(series::value)
                .toArray();
    }

    private static double[] sorted(String name, double[] values) {
        Require.inRange("number of values " + name, values.length, 2, MOST, "");
        double[] sorted = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            // Adding 0 makes -0 a 0, which sorting and counting would tell apart.
            sorted[i] = Require.inRange(name + "[" + i + "]", values[i], -GREATEST, GREATEST, "") + 0.0;
        }
        Arrays.sort(sorted);
        return sorted;
    }

    private long pairs() {
        return (long) before.length * after.length;
    }

    /** Σ(t³ − t) over the groups of equal values in both. */
    private double tied() {
        double[] all = Arrays.copyOf(before, before.length + after.length);
        System.arraycopy(after, 0, all, before.length, after.length);
        Arrays.sort(all);
        double sum = 0;
        for (int from = 0; from < all.length; ) {
            int to = from;
            while (to < all.length && all[to] == all[from]) {
                to++;
            }
            double t = to - from;
            sum += t * t * t - t;
            from = to;
        }
        return sum;
    }

    /** Counts the pairs whose difference, after less before, is at most d. */
    private long atMost(double d) {
        long count = 0;
        int j = 0;
        for (double x : before) {
            while (j < after.length && after[j] - x <= d) {
                j++;
            }
            count += j;
        }
        return count;
    }

    /** The difference of a rank from 1: the smallest number that so many do not exceed, found by halving the bit patterns. */
    private double difference(long rank) {
        long low = ordered(after[0] - before[before.length - 1]);
        long high = ordered(after[after.length - 1] - before[0]);
        while (low < high) {
            long middle = low + ((high - low) >>> 1);
            if (atMost(number(middle)) >= rank) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return number(low);
    }

    private static long ordered(double value) {
        long bits = Double.doubleToLongBits(value);
        return bits >= 0 ? bits : Long.MIN_VALUE - bits;
    }

    private static double number(long ordered) {
        return Double.longBitsToDouble(ordered >= 0 ? ordered : Long.MIN_VALUE - ordered);
    }

    private double ranked(double rank) {
        double held = Math.max(1, Math.min((double) pairs(), rank));
        long floor = (long) held;
        double at = difference(floor);
        return floor == held ? at : at + (held - floor) * (difference(floor + 1) - at);
    }

    private static double below(double[] chance, int last) {
        double sum = 0;
        for (int u = 0; u <= last; u++) {
            sum += chance[u];
        }
        return sum;
    }

    private static int first(double[] chance, double least) {
        double sum = chance[0];
        int u = 0;
        while (sum < least) {
            sum += chance[++u];
        }
        return u;
    }

    /**
     * Returns the number of values before.
     *
     * @return m
     */
    public int countBefore() {
        return before.length;
    }

    /**
     * Returns the number of values after.
     *
     * @return n
     */
    public int countAfter() {
        return after.length;
    }

    /**
     * Returns the median before.
     *
     * @return median, in the unit of the values
     */
    public double medianBefore() {
        return median(before);
    }

    /**
     * Returns the median after.
     *
     * @return median, in the unit of the values
     */
    public double medianAfter() {
        return median(after);
    }

    private static double median(double[] sorted) {
        int n = sorted.length;
        return (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
    }

    /**
     * Returns the statistic of the rank sum test.
     *
     * @return U, the pairs in which the value after is the greater, those that are equal counted by half
     */
    public double statistic() {
        return statistic;
    }

    /**
     * Returns the statistic in its standard deviations, with a correction for continuity.
     *
     * @return z, positive if the values after are the greater; 0 if all values are equal
     */
    public double z() {
        double excess = statistic - pairs() / 2.0;
        return excess == 0 ? 0 : (excess - 0.5 * Math.signum(excess)) / Math.sqrt(variance);
    }

    /**
     * Returns the probability of a statistic at least as far from its middle without a change, two-sided.
     *
     * @return p, in (0, 1]
     */
    public double pValue() {
        return pValue;
    }

    /**
     * Tells whether p-value and limits are exact.
     *
     * @return false if they are from the normal distribution
     */
    public boolean isExact() {
        return isExact;
    }

    /**
     * Returns by how much the values after lie higher.
     *
     * @return median of all differences, after less before
     */
    public double shift() {
        return shift;
    }

    /**
     * Returns the lower confidence limit of the shift.
     *
     * @return lower limit
     */
    public double lower() {
        return lower;
    }

    /**
     * Returns the upper confidence limit of the shift.
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
        return "BeforeAfter[median " + Text.significant(medianBefore(), 4) + " of " + before.length + ", then "
                + Text.significant(medianAfter(), 4) + " of " + after.length + ", shift " + Text.significant(shift, 4)
                + ", " + Text.significant(100 * confidence, 4) + " % limits " + Text.significant(lower, 4) + " to "
                + Text.significant(upper, 4) + ", p " + Text.significant(pValue, 3)
                + (isExact ? " exact]" : " normal]");
    }
}
