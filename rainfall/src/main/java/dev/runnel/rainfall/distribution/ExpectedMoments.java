package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.apache.commons.math3.util.MathArrays;
import org.apiguardian.api.API;

/**
 * A log-Pearson III distribution by the expected moments algorithm: years of which only an interval is known, as low outliers,
 * zeros and years without a gauge in which a mark was not reached, count with the moments that the distribution has inside it.
 * With M, S and G of log10, N years, n of them known,
 *
 * <blockquote>M = (&Sigma; x + &Sigma; E[X])/N, S&sup2; = (n/(n - 1) &Sigma; (x - M)&sup2; + &Sigma; E[(X - M)&sup2;])/N,
 * G = (n&sup2;/((n - 1)(n - 2)) &Sigma; (x - M)&sup3; + &Sigma; E[(X - M)&sup3;])/(N S&sup3;)</blockquote>
 *
 * <p>where E is of the distribution found last, until nothing changes. Source: Cohn, Lane and Baier (1997), An algorithm for
 * computing moments-based flood quantile estimates when historical flood information is available, Water Resources Research
 * 33(9), 2089-2096; England and others (2019), Bulletin 17C, U.S. Geological Survey Techniques and Methods 4-B5.
 *
 * <p>Immutable and thread-safe. Limits are by replicates, see {@link #returnLevel(double, Bootstrap)}: not those of Bulletin 17C,
 * which rest on an expansion.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ExpectedMoments {
    /** Chosen here: a skew needs three values, and one more to be more than their shape. */
    private static final int FEWEST_KNOWN = 4;

    /** Chosen here: the rounds end when no moment moves by more than this share; far fewer rounds are usual. */
    private static final int MOST_STEPS = 1000;

    private static final double ACCURACY = 1e-10;

    /** Chosen here: a skew of logarithms beyond it, on the way, would take all probability to one bound. */
    private static final double LARGEST_SKEW = 5;

    /** Below it the probability inside an interval is lost in rounding. */
    private static final double LEAST_PROBABILITY = 1e-14;

    /** Years known to lie above lower (excluded) and at or below upper, in log10; of one kind. */
    private record Interval(double lower, double upper) {}

    private final double[] known;
    private final Map<Interval, Integer> intervals;
    /** In log10: years of the gauge below it are known to be below it only. */
    private final double lowLevel;

    private final PearsonIII ofLogarithms;

    private ExpectedMoments(double[] known, Map<Interval, Integer> intervals, double lowLevel) {
        this.known = known;
        this.intervals = intervals;
        this.lowLevel = lowLevel;
        this.ofLogarithms = iterate(known, intervals);
    }

    /**
     * Gathers the years; each call returns the same builder.
     *
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public static final class Builder {
        private final List<Double> known = new ArrayList<>();
        private final Map<Interval, Integer> intervals = new LinkedHashMap<>();

        private double lowLevel = Double.NEGATIVE_INFINITY;

        private Builder() {}

        /**
         * Adds years whose value is known.
         *
         * @param values greater than 0, finite
         * @return this
         * @throws IllegalArgumentException if one is not
         */
        public Builder known(double... values) {
            Objects.requireNonNull(values, "values");
            for (double value : values) {
                known.add(Math.log10(Require.positive("value", value, "")));
            }
            return this;
        }

        /**
         * Adds years of which is known that their value was below a level.
         *
         * @param level the level, greater than 0
         * @param years how many such years; 1 to 10,000
         * @return this
         * @throws IllegalArgumentException if an argument is out of range
         */
        public Builder below(double level, int years) {
            return between(0, level, years);
        }

        /**
         * Adds years of which is known that their value was between two levels.
         *
         * @param lower lower level; 0 or greater
         * @param upper upper level; greater than {@code lower}, infinite for none
         * @param years how many such years; 1 to 10,000
         * @return this
         * @throws IllegalArgumentException if an argument is out of range
         */
        public Builder between(double lower, double upper, int years) {
            if (!(lower >= 0 && upper > lower)) {
                throw new IllegalArgumentException("levels must be 0 or greater and rise, were " + Text.number(lower)
                        + " and " + Text.number(upper));
            }
            Limits.within("years", years, 1, 10_000);
            intervals.merge(new Interval(Math.log10(lower), Math.log10(upper)), years, Integer::sum);
            return this;
        }

        /**
         * Fits the distribution.
         *
         * @return the fit
         * @throws IllegalArgumentException if fewer than 4 values are known, or they are all equal
         * @throws NoFitException if the moments do not settle
         */
        public ExpectedMoments fit() {
            double[] values = known.stream().mapToDouble(Double::doubleValue).toArray();
            Samples.check(values, FEWEST_KNOWN);
            return new ExpectedMoments(values, new LinkedHashMap<>(intervals), lowLevel);
        }
    }

    /**
     * Begins with no year.
     *
     * @return a builder
     */
    public static Builder builder() {
        return new Builder();
    }

    /**
     * Fits a sample whose low outliers are known only to be below the smallest value that is none.
     *
     * @param lowOutliers the test of the sample
     * @return the fit
     * @throws NoFitException if the moments do not settle
     */
    public static ExpectedMoments of(LowOutliers lowOutliers) {
        Builder builder = builder().known(lowOutliers.kept());
        if (lowOutliers.count() > 0) {
            builder.below(lowOutliers.threshold(), lowOutliers.count());
            builder.lowLevel = Math.log10(lowOutliers.threshold());
        }
        return builder.fit();
    }

    private static PearsonIII iterate(double[] known, Map<Interval, Integer> intervals) {
        SampleMoments start = SampleMoments.of(known);
        int n = known.length;
        int total = n + intervals.values().stream().mapToInt(Integer::intValue).sum();
        double c2 = n / (n - 1.0);
        double c3 = n * (double) n / ((n - 1.0) * (n - 2.0));
        double mean = start.mean();
        double deviation = start.standardDeviation();
        double skew = clamped(start.skew());
        double sumOfKnown = Arrays.stream(known).sum();
        for (int step = 0; step < MOST_STEPS; step++) {
            PearsonIII at = PearsonIII.of(mean, deviation, skew);
            double[][] inside = new double[intervals.size()][];
            int row = 0;
            double sum = sumOfKnown;
            for (Map.Entry<Interval, Integer> each : intervals.entrySet()) {
                inside[row] = expected(at, each.getKey());
                sum += each.getValue() * (mean + inside[row++][0]);
            }
            double nextMean = sum / total;
            double second = 0;
            double third = 0;
            for (double x : known) {
                double d = x - nextMean;
                second += c2 * d * d;
                third += c3 * d * d * d;
            }
            row = 0;
            for (int count : intervals.values()) {
                // About the last mean, which at the end is the next.
                double[] e = inside[row++];
                second += count * e[1];
                third += count * e[2];
            }
            double nextDeviation = Math.sqrt(second / total);
            double nextSkew = clamped(third / (total * nextDeviation * nextDeviation * nextDeviation));
            double change = MathArrays.distanceInf(
                    new double[] {mean, deviation, skew}, new double[] {nextMean, nextDeviation, nextSkew});
            mean = nextMean;
            deviation = nextDeviation;
            skew = nextSkew;
            if (change < ACCURACY) {
                return PearsonIII.of(mean, deviation, skew);
            }
        }
        throw new NoFitException("expected moments must settle within " + MOST_STEPS + " steps, of " + n
                + " known values and " + (total - n) + " intervals they did not");
    }

    private static double clamped(double skew) {
        return Math.max(-LARGEST_SKEW, Math.min(LARGEST_SKEW, skew));
    }

    /**
     * Returns E[(X - M)<sup>k</sup>] inside the interval for k = 1, 2, 3, M being the mean of the distribution. With d = x - M and
     * w = S&sup2; + (G S/2) d, the density of every Pearson III distribution has (w f)' = -d f, and integration by parts leaves
     * the bounds only: nothing is summed, and nothing cancels, at any skew.
     */
    private static double[] expected(PearsonIII distribution, Interval interval) {
        double mean = distribution.mean();
        double square = distribution.variance();
        double tilt = 0.5 * distribution.skew() * Math.sqrt(square);
        boolean hasLower = interval.lower > Double.NEGATIVE_INFINITY;
        boolean hasUpper = interval.upper < Double.POSITIVE_INFINITY;
        double below = hasLower ? distribution.cdf(interval.lower) : 0;
        double inside = hasUpper
                ? distribution.cdf(interval.upper) - below
                : hasLower ? distribution.exceedance(interval.lower) : 1;
        if (!(inside > LEAST_PROBABILITY)) {
            // All probability lies outside: the bound nearest to it.
            double toLower = interval.lower - mean;
            double toUpper = interval.upper - mean;
            double bound = Math.abs(toLower) < Math.abs(toUpper) ? toLower : toUpper;
            return new double[] {bound, bound * bound, bound * bound * bound};
        }
        double[] ends = new double[3];
        if (hasUpper) {
            addEnd(ends, 1, interval.upper - mean, square, tilt, distribution.density(interval.upper));
        }
        if (hasLower) {
            addEnd(ends, -1, interval.lower - mean, square, tilt, distribution.density(interval.lower));
        }
        double first = -ends[0];
        double second = square * inside + tilt * first - ends[1];
        double third = 2 * (square * first + tilt * second) - ends[2];
        return new double[] {first / inside, second / inside, third / inside};
    }

    private static void addEnd(double[] ends, int sign, double d, double square, double tilt, double density) {
        double term = sign * (square + tilt * d) * density;
        for (int k = 0; k < ends.length; k++) {
            ends[k] += term;
            term *= d;
        }
    }

    /**
     * Returns the number of years, those known as an interval included.
     *
     * @return N
     */
    public int years() {
        return known.length
                + intervals.values().stream().mapToInt(Integer::intValue).sum();
    }

    /**
     * Returns the fitted distribution, with the skew of the station.
     *
     * @return the distribution
     */
    public LogPearsonIII distribution() {
        return LogPearsonIII.of(ofLogarithms.mean(), Math.sqrt(ofLogarithms.variance()), ofLogarithms.skew());
    }

    /**
     * Returns the distribution with the skew weighted with that of the region. The mean square error of the station skew is that
     * of N years all known; so many intervals make it greater, and the weight of the station too great.
     *
     * @param region skew G<sub>R</sub> of the region and its error
     * @return the distribution
     * @throws IllegalArgumentException if an argument is out of range, or there are fewer than 10 years
     */
    public LogPearsonIII distributionWeighted(SkewEstimate region) {
        double error = WeightedSkew.meanSquareError(ofLogarithms.skew(), years());
        double skew = WeightedSkew.of(SkewEstimate.ofSkewAndMeanSquareError(ofLogarithms.skew(), error), region)
                .skew();
        return LogPearsonIII.of(ofLogarithms.mean(), Math.sqrt(ofLogarithms.variance()), skew);
    }

    /**
     * Returns the value exceeded on average once in the given number of years.
     *
     * @param years return period among annual maxima, years; greater than 1, finite
     * @return the level, in the unit of the values
     * @throws IllegalArgumentException if {@code years} is not greater than 1
     */
    public double returnLevel(double years) {
        return distribution().returnLevel(years);
    }

    /**
     * Returns limits of a return level by replicates: as many years are drawn from the fitted distribution. Those without a gauge
     * are known only as their interval if they lie in it, those of the gauge if they lie below the threshold of low outliers.
     *
     * @param years return period among annual maxima, years; greater than 1, finite
     * @param bootstrap number of replicates, seed and confidence
     * @return the interval
     * @throws IllegalArgumentException if an argument is out of range or fewer than 20 replicates could be fitted
     */
    public Bootstrap.Interval returnLevel(double years, Bootstrap bootstrap) {
        Objects.requireNonNull(bootstrap, "bootstrap must not be null");
        return bootstrap.interval(returnLevel(years), random -> {
            double[] values = new double[years()];
            int count = 0;
            Map<Interval, Integer> drawnIntervals = new LinkedHashMap<>();
            Interval low = new Interval(Double.NEGATIVE_INFINITY, lowLevel);
            for (int i = 0; i < known.length; i++) {
                count = draw(random, low, values, count, drawnIntervals);
            }
            for (Map.Entry<Interval, Integer> each : intervals.entrySet()) {
                for (int i = 0; i < each.getValue(); i++) {
                    count = draw(random, each.getKey(), values, count, drawnIntervals);
                }
            }
            double[] drawn = Arrays.copyOf(values, count);
            return count < FEWEST_KNOWN || Samples.areAllEqual(drawn)
                    ? Double.NaN
                    : Math.pow(10, iterate(drawn, drawnIntervals).returnLevel(years));
        });
    }

    /** Draws a year, and adds it to the intervals if it lies inside its own, else to the values. */
    private int draw(
            SplittableRandom random, Interval own, double[] values, int count, Map<Interval, Integer> drawnIntervals) {
        double x = ofLogarithms.quantile(random.nextDouble(Double.MIN_NORMAL, 1));
        if (x >= own.lower && x < own.upper) {
            drawnIntervals.merge(own, 1, Integer::sum);
            return count;
        }
        values[count] = x;
        return count + 1;
    }

    @Override
    public String toString() {
        return "ExpectedMoments[" + distribution() + " of " + known.length + " known values and "
                + (years() - known.length) + " intervals]";
    }
}
