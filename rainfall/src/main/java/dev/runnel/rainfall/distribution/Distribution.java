package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import java.util.Map;
import org.apiguardian.api.API;

/**
 * A continuous probability distribution of a rainfall depth or of any other quantity. Implementations are immutable and
 * thread-safe.
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
     * Returns the probability of a value greater than the given one, to full relative accuracy where it is small.
     *
     * @param x the value; finite
     * @return p = 1 - F(x), in [0, 1]
     * @throws IllegalArgumentException if {@code x} is not finite
     */
    double exceedance(double x);

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
     * @param nonExceedance F, in (0, 1)
     * @return x with F(x) = F
     * @throws IllegalArgumentException if {@code nonExceedance} is not inside (0, 1)
     */
    double quantile(double nonExceedance);

    /**
     * Returns the value that is exceeded with the given probability, without forming 1 - p.
     *
     * @param exceedance p, in (0, 1)
     * @return x with 1 - F(x) = p
     * @throws IllegalArgumentException if {@code exceedance} is not inside (0, 1)
     */
    double quantileOfExceedance(double exceedance);

    /**
     * Returns the value below which there is no probability.
     *
     * @return the lower bound, or negative infinity
     */
    double lowerBound();

    /**
     * Returns the value above which there is no probability.
     *
     * @return the upper bound, or positive infinity
     */
    double upperBound();

    /**
     * Returns the L-moments of the distribution.
     *
     * @return the L-moments
     * @throws IllegalStateException if the mean is infinite, so that they do not exist
     */
    LMoments lMoments();

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
    default double quantileOfReturnPeriod(double years) {
        if (!(years > 1 && years < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "years must be greater than 1 and finite among annual maxima, was " + years);
        }
        return quantileOfExceedance(1 / years);
    }

    /**
     * Returns the return period of a value, if the distribution is that of annual maxima: T = 1 / (1 - F(x)).
     *
     * @param x the value; finite
     * @return years, at least 1; infinite at or above the upper bound
     * @throws IllegalArgumentException if {@code x} is not finite
     */
    default double returnPeriod(double x) {
        return 1 / exceedance(x);
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
        double sum = 0;
        for (double x : sample) {
            sum += logDensity(Require.finite("sample", x, ""));
        }
        return sum;
    }
}
