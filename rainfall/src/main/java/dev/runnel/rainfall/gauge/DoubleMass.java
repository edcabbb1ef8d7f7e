package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.apiguardian.api.API;

/**
 * One gauge against a reference, period by period: a storage gauge at its side, or the mean of its neighbours. Immutable
 * and thread-safe.
 *
 * <p>The two running sums against each other are the double-mass curve; its slope Σx/Σa is straight while the gauge
 * keeps its ways. A break is looked for where two slopes, each Σx/Σa of its part, leave the least Σ(x − slope·a)².
 * Source: Searcy and Hardison (1960), Double-mass curves, US Geological Survey Water-Supply Paper 1541-B.
 *
 * <p>Whether a break is more than chance is told by shuffling: the share of random orders of the same periods whose best
 * break explains at least as much. An F table would flatter a break that was picked for being the best.
 *
 * <p>What this is not: a reason to correct. A break asks for the station's history.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DoubleMass {
    /** Sums of squares of the same pieces in another order differ by less; chosen here. */
    /** Chosen here: some seconds. A break is looked for in every order, at every place, over all periods. */
    private static final double MOST_WORK = 2e9;

    private static final double ROUNDING = 1e-12;

    private final double[] gauge;
    private final double[] reference;
    private final int leftOut;

    private DoubleMass(double[] gauge, double[] reference, int leftOut) {
        this.gauge = gauge;
        this.reference = reference;
        this.leftOut = leftOut;
    }

    /**
     * A break in slope.
     *
     * @param periodsBefore periods before the break, counted among those that both have
     * @param slopeBefore slope up to the break
     * @param slopeAfter slope after it
     * @param squaresLeft Σ(x − slope·a)² with the break, mm²
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Break(int periodsBefore, double slopeBefore, double slopeAfter, double squaresLeft) {
        /**
         * Returns the factor that brings the periods before the break to the slope after it.
         *
         * @return slope after over slope before
         */
        public double factor() {
            return slopeAfter / slopeBefore;
        }

        @Override
        public String toString() {
            return "Break[after " + periodsBefore + " periods, slope " + Text.significant(slopeBefore, 4) + " then "
                    + Text.significant(slopeAfter, 4) + "]";
        }
    }

    /**
     * Returns the comparison of two lists of depths.
     *
     * @param gaugeMm depth of the gauge in each period, mm; 0 or greater, NaN for missing
     * @param referenceMm depth of the reference in the same periods, mm; 0 or greater, NaN for missing
     * @return the comparison over the periods that both have
     * @throws IllegalArgumentException if the lengths differ, a depth is negative or infinite, or the reference has no
     *     rain in the common periods
     */
    public static DoubleMass of(double[] gaugeMm, double[] referenceMm) {
        Require.sameLength("referenceMm", gaugeMm.length, referenceMm.length);
        double[] gauge = new double[gaugeMm.length];
        double[] reference = new double[gaugeMm.length];
        int size = 0;
        for (int i = 0; i < gauge.length; i++) {
            if (!Double.isNaN(gaugeMm[i]) && !Double.isNaN(referenceMm[i])) {
                gauge[size] = notNegative("gaugeMm", gaugeMm[i], i);
                reference[size] = notNegative("referenceMm", referenceMm[i], i);
                size++;
            }
        }
        Require.positive("sum of referenceMm", sum(reference, 0, size), "mm");
        return new DoubleMass(Arrays.copyOf(gauge, size), Arrays.copyOf(reference, size), gauge.length - size);
    }

    /**
     * Returns the number of periods that both have.
     *
     * @return count
     */
    public int periods() {
        return gauge.length;
    }

    /**
     * Returns the number of periods left out because one of the two is missing.
     *
     * @return count
     */
    public int leftOut() {
        return leftOut;
    }

    /**
     * Returns depth of the gauge over depth of the reference, all periods together.
     *
     * @return Σx/Σa
     */
    public double ratio() {
        return sum(gauge, 0, gauge.length) / sum(reference, 0, reference.length);
    }

    /**
     * Returns the running sums of the gauge.
     *
     * @return Σx up to each period, mm; a new array
     */
    public double[] cumulativeGauge() {
        return running(gauge);
    }

    /**
     * Returns the running sums of the reference.
     *
     * @return Σa up to each period, mm; a new array
     */
    public double[] cumulativeReference() {
        return running(reference);
    }

    /**
     * Returns Spearman's rank correlation of the periods, ties sharing their mean rank.
     *
     * @return from -1 to 1; 0 if one of the two is the same in all periods
     * @throws IllegalArgumentException if there are fewer than two periods
     */
    public double rankCorrelation() {
        Require.atLeast("periods", periods(), 2);
        double correlation = new SpearmansCorrelation().correlation(gauge, reference);
        return Double.isNaN(correlation) ? 0 : correlation;
    }

    /**
     * Returns the break after a given number of periods.
     *
     * @param periodsBefore from 1 to the number of periods less 1
     * @return slopes before and after it
     * @throws IllegalArgumentException if it is out of range, or the reference has no rain before or after it
     */
    public Break breakAfter(int periodsBefore) {
        Require.inRange("periodsBefore", periodsBefore, 1, periods() - 1.0, "");
        Require.positive("reference before the break", sum(reference, 0, periodsBefore), "mm");
        Require.positive("reference after the break", sum(reference, periodsBefore, periods()), "mm");
        return at(gauge, reference, periodsBefore);
    }

    /**
     * Returns the break that explains most.
     *
     * @param leastPeriods fewest periods on either side; 1 or more, five or so to be of use
     * @return the best break, the first of equals
     * @throws IllegalArgumentException if there are fewer than twice as many periods, or the reference has no rain on
     *     one side of every possible break
     */
    public Break bestBreak(int leastPeriods) {
        Require.atLeast("leastPeriods", leastPeriods, 1);
        if (leastPeriods > periods() / 2) {
            throw new IllegalArgumentException("leastPeriods must be at most half of the " + periods() + " periods, "
                    + periods() / 2 + ", was " + leastPeriods);
        }
        Break best = best(gauge, reference, leastPeriods);
        Require.finite("squares left by the best break", best.squaresLeft(), "mm2");
        return best;
    }

    /**
     * Returns the share of shuffled records whose best break explains at least as much as that of this record.
     *
     * @param leastPeriods fewest periods on either side; as for {@link #bestBreak}
     * @param shuffles number of random orders; 99 or more, and at most 2e9 over the square of the count of periods
     * @param seed seed of the random numbers: the same gives the same answer
     * @return (1 + count)/(1 + shuffles); a break below 0.05 is hardly chance
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double chanceOfBreak(int leastPeriods, int shuffles, long seed) {
        Require.atLeast("shuffles", shuffles, 99);
        if ((double) shuffles * gauge.length * gauge.length > MOST_WORK) {
            throw new IllegalArgumentException("shuffles must be at most "
                    + (long) (MOST_WORK / gauge.length / gauge.length) + " for " + gauge.length
                    + " periods, was " + shuffles + "; longer periods, such as months, tell as much");
        }
        double observed = bestBreak(leastPeriods).squaresLeft();
        Random random = new Random(seed);
        double[] x = gauge.clone();
        double[] a = reference.clone();
        int asGood = 0;
        for (int shuffle = 0; shuffle < shuffles; shuffle++) {
            for (int i = x.length - 1; i > 0; i--) {
                int j = random.nextInt(i + 1);
                swap(x, i, j);
                swap(a, i, j);
            }
            if (best(x, a, leastPeriods).squaresLeft() <= observed * (1 + ROUNDING)) {
                asGood++;
            }
        }
        return (1.0 + asGood) / (1.0 + shuffles);
    }

    /** The name is put together only where it is read. */
    private static double notNegative(String name, double depthMm, int index) {
        return depthMm >= 0 && depthMm <= Double.MAX_VALUE
                ? depthMm
                : Require.nonNegative(name + " at index " + index, depthMm, "mm");
    }

    private static Break best(double[] x, double[] a, int leastPeriods) {
        Break best = new Break(0, 0, 0, Double.POSITIVE_INFINITY);
        for (int k = leastPeriods; k <= x.length - leastPeriods; k++) {
            Break candidate = at(x, a, k);
            if (candidate.squaresLeft() < best.squaresLeft()) {
                best = candidate;
            }
        }
        return best;
    }

    private static Break at(double[] x, double[] a, int k) {
        double before = sum(x, 0, k) / sum(a, 0, k);
        double after = sum(x, k, x.length) / sum(a, k, a.length);
        double squares = 0;
        for (int i = 0; i < x.length; i++) {
            double difference = x[i] - (i < k ? before : after) * a[i];
            squares += difference * difference;
        }
        return new Break(k, before, after, squares);
    }

    private static void swap(double[] values, int i, int j) {
        double held = values[i];
        values[i] = values[j];
        values[j] = held;
    }

    private static double sum(double[] values, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values[i];
        }
        return sum;
    }

    private static double[] running(double[] values) {
        double[] running = values.clone();
        for (int i = 1; i < running.length; i++) {
            running[i] += running[i - 1];
        }
        return running;
    }

    @Override
    public String toString() {
        return "DoubleMass[" + periods() + " periods, ratio " + Text.significant(ratio(), 4) + ", " + leftOut
                + " left out]";
    }
}
