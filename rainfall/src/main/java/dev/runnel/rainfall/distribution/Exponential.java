package dev.runnel.rainfall.distribution;

import java.util.Arrays;
import java.util.Map;
import org.apiguardian.api.API;

/**
 * The exponential distribution above a lower bound, F(x) = 1 - exp(-(x - &xi;)/&alpha;). Source: Hosking and Wallis
 * (1997), Regional Frequency Analysis, appendix A.2.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Exponential extends ExponentialVariateDistribution {
    private Exponential(double location, double scale) {
        super(location, scale, 0);
    }

    /**
     * Returns the distribution with the given parameters.
     *
     * @param location &xi;, the lower bound; finite
     * @param scale &alpha;; greater than 0
     * @return the distribution
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public static Exponential of(double location, double scale) {
        return new Exponential(location, scale);
    }

    @Override
    public Map<String, Double> parameters() {
        return named("xi", location, "alpha", scale);
    }

    /** Returns the family with its fits. */
    static DistributionFamily family() {
        return DistributionFamily.of(
                        "EXPONENTIAL", p -> of(p[0], p[1]), Parameter.location("xi"), Parameter.scale("alpha"))
                .withLMoments(m -> of(m.lambda1() - 2 * m.lambda2(), 2 * m.lambda2()))
                .withMoments(m -> of(m.mean() - m.standardDeviation(), m.standardDeviation()))
                .withLikelihood(Exponential::likelihood);
    }

    /**
     * Closed forms: the smallest value and the mean above it. The standard errors are those of the exact sampling
     * distribution, since the bound has no regular likelihood.
     */
    private static LikelihoodFit likelihood(DistributionFamily family, double[] sample) {
        double mean = LMoments.ofSample(sample).lambda1();
        double lowest = Arrays.stream(sample).min().orElseThrow();
        double bound = (mean - lowest) / sample.length;
        double scale = (mean - lowest) / Math.sqrt(sample.length);
        return LikelihoodFit.of(family, of(lowest, mean - lowest), sample, new double[][] {
            {bound * bound, 0}, {0, scale * scale}
        });
    }
}
