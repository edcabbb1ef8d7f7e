package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;
import org.apiguardian.api.API;

/**
 * A continuous probability distribution of any quantity. Implementations are immutable and thread-safe. One of your own needs
 * {@link #cdf(double)}, {@link #quantile(double)}, {@link #logDensity} and {@link #parameters}; the rest follows, if less
 * exactly in the far tails.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface Distribution {
    /**
     * Returns the probability of a value not greater than the given one.
     *
     * @param x the value; finite
     * @return F(x), in [0, 1]
     * @throws IllegalArgumentException if {@code x} is not finite
     */
    double cdf(double x);

    /**
     * Returns the probability of a value greater than the given one. The distributions here give it to full relative accuracy
     * where it is small; unless overridden it is 1 - F(x).
     *
     * @param x the value; finite
     * @return p = 1 - F(x), in [0, 1]
     * @throws IllegalArgumentException if {@code x} is not finite
     */
    default double exceedance(double x) {
        return 1 - cdf(x);
    }

    /**
     * Returns the natural logarithm of the probability density.
     *
     * @param x the value; finite
     * @return ln f(x); negative infinity outside the bounds
     * @throws IllegalArgumentException if {@code x} is not finite
     */
    double logDensity(double x);

    /**
     * Returns the value that is not exceeded with the given probability.
     *
     * @param probability F of non-exceedance, in (0, 1)
     * @return x with F(x) = F
     * @throws IllegalArgumentException if {@code probability} is not inside (0, 1)
     */
    double quantile(double probability);

    /**
     * Returns the value that is exceeded with the given probability. The distributions here do not form 1 - p; unless
     * overridden it is {@link #quantile} of that.
     *
     * @param exceedance p, in (0, 1)
     * @return x with 1 - F(x) = p
     * @throws IllegalArgumentException if {@code exceedance} is not inside (0, 1)
     */
    default double quantileOfExceedance(double exceedance) {
        return quantile(Math.min(1 - Probability.inside("exceedance", exceedance), Math.nextDown(1.0)));
    }

    /**
     * Returns the value below which there is no probability.
     *
     * @return the lower bound, or negative infinity, as it is unless overridden
     */
    default double lowerBound() {
        return Double.NEGATIVE_INFINITY;
    }

    /**
     * Returns the value above which there is no probability.
     *
     * @return the upper bound, or positive infinity, as it is unless overridden
     */
    default double upperBound() {
        return Double.POSITIVE_INFINITY;
    }

    /**
     * Returns the L-moments of the distribution. Unless overridden they are integrated over the quantiles: to about 1e-9 where
     * the tails are not much heavier than that of an exponential.
     *
     * @return the L-moments
     * @throws IllegalStateException if the mean is infinite, so that they do not exist
     */
    default LMoments lMoments() {
        return QuantileIntegral.lMoments(this);
    }

    /**
     * Returns the mean. Unless overridden it is integrated like the L-moments.
     *
     * @return &int; x dF; infinite where a tail is so heavy
     */
    default double mean() {
        return QuantileIntegral.mean(this);
    }

    /**
     * Returns the variance. Unless overridden it is integrated like the L-moments.
     *
     * @return &int; (x - mean)&sup2; dF; infinite where a tail is so heavy
     */
    default double variance() {
        return QuantileIntegral.variance(this);
    }

    /**
     * Returns the parameters by name, in the order of the factory.
     *
     * @return for example {xi=30.0, alpha=8.0, k=-0.1}; unmodifiable
     */
    Map<String, Double> parameters();

    /**
     * Returns the value exceeded on average once in the given number of years, if the distribution is that of annual
     * maxima: x with 1 - F(x) = 1/T.
     *
     * @param years return period T among annual maxima, years; greater than 1, finite
     * @return the value
     * @throws IllegalArgumentException if {@code years} is not greater than 1
     */
    default double returnLevel(double years) {
        if (!(years > 1 && years < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "years must be greater than 1 and finite among annual maxima, was " + Text.number(years));
        }
        return quantileOfExceedance(1 / years);
    }

    /**
     * Returns the return period of a value, if the distribution is that of annual maxima: T = 1 / (1 - F(x)).
     *
     * @param level the value x; finite
     * @return years, at least 1; infinite at or above the upper bound
     * @throws IllegalArgumentException if {@code level} is not finite
     */
    default double returnPeriod(double level) {
        return 1 / exceedance(level);
    }

    /**
     * Returns the probabilities of values not greater than the given ones, each that of {@link #cdf(double)}.
     *
     * @param x the values; finite; not modified
     * @param probabilities F(x); as long, overwritten
     * @throws IllegalArgumentException if a value is not finite, or the lengths differ
     */
    default void cdf(double[] x, double[] probabilities) {
        Require.sameLength("probabilities", x.length, probabilities.length);
        for (int i = 0; i < x.length; i++) {
            probabilities[i] = cdf(x[i]);
        }
    }

    /**
     * Returns the probabilities of values greater than the given ones, each that of {@link #exceedance(double)}.
     *
     * @param x the values; finite; not modified
     * @param probabilities 1 - F(x); as long, overwritten
     * @throws IllegalArgumentException if a value is not finite, or the lengths differ
     */
    default void exceedance(double[] x, double[] probabilities) {
        Require.sameLength("probabilities", x.length, probabilities.length);
        for (int i = 0; i < x.length; i++) {
            probabilities[i] = exceedance(x[i]);
        }
    }

    /**
     * Returns the values that are not exceeded with the given probabilities, each that of {@link #quantile(double)}.
     *
     * @param probabilities F, in (0, 1); not modified
     * @param x the values; as long, overwritten
     * @throws IllegalArgumentException if a probability is not inside (0, 1), or the lengths differ
     */
    default void quantile(double[] probabilities, double[] x) {
        Require.sameLength("x", probabilities.length, x.length);
        for (int i = 0; i < x.length; i++) {
            x[i] = quantile(probabilities[i]);
        }
    }

    /**
     * Returns the levels of return periods, each that of {@link #returnLevel(double)}.
     *
     * @param years T among annual maxima, years; greater than 1, finite; not modified
     * @param levels the values; as long, overwritten
     * @throws IllegalArgumentException if a return period is not greater than 1, or the lengths differ
     */
    default void returnLevel(double[] years, double[] levels) {
        Require.sameLength("levels", years.length, levels.length);
        for (int i = 0; i < levels.length; i++) {
            levels[i] = returnLevel(years[i]);
        }
    }

    /**
     * Returns a source of independent values of this distribution. The same seed gives the same values on every machine.
     *
     * @param seed start of the random sequence
     * @return a source that never ends; for one thread
     */
    default DoubleSupplier sampler(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return () -> quantile(random.nextDouble(Double.MIN_NORMAL, 1));
    }

    /**
     * Returns independent values of this distribution, the first of {@link #sampler}.
     *
     * @param size how many; in [1, 100,000,000]
     * @param seed start of the random sequence
     * @return the values
     * @throws IllegalArgumentException if {@code size} is out of range
     */
    default double[] sample(int size, long seed) {
        double[] values = new double[Limits.within("size", size, 1, Limits.MOST_VALUES)];
        DoubleSupplier source = sampler(seed);
        Arrays.setAll(values, i -> source.getAsDouble());
        return values;
    }

    /**
     * Returns the probability density.
     *
     * @param x the value; finite
     * @return f(x), 0 outside the bounds
     * @throws IllegalArgumentException if {@code x} is not finite
     */
    default double density(double x) {
        return Math.exp(logDensity(x));
    }

    /**
     * Returns the sum of the logarithms of the density over a sample.
     *
     * @param sample values; not modified
     * @return log-likelihood; negative infinity if a value lies outside the bounds
     * @throws IllegalArgumentException if a value is not finite
     */
    default double logLikelihood(double[] sample) {
        Objects.requireNonNull(sample, "sample");
        double sum = 0;
        for (double x : sample) {
            sum += logDensity(Require.finite("sample", x, ""));
        }
        return sum;
    }
}
