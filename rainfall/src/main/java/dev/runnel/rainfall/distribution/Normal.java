package dev.runnel.rainfall.distribution;

import java.util.Map;
import org.apiguardian.api.API;

/**
 * The normal distribution. Source of the L-moments: Hosking and Wallis (1997), Regional Frequency Analysis, appendix A.3.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Normal extends NormalVariateDistribution {
    private static final double TAU_4 = 30 / Math.PI * Math.atan(Math.sqrt(2)) - 9;

    private Normal(double mean, double standardDeviation) {
        super(mean, standardDeviation, 0);
    }

    /**
     * Returns the distribution with the given parameters.
     *
     * @param mean &mu;; finite
     * @param standardDeviation &sigma;; greater than 0
     * @return the distribution
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public static Normal of(double mean, double standardDeviation) {
        return new Normal(mean, standardDeviation);
    }

    @Override
    public LMoments lMoments() {
        return LMoments.of(location, scale / Math.sqrt(Math.PI), 0, TAU_4);
    }

    @Override
    public Map<String, Double> parameters() {
        return named("mu", location, "sigma", scale);
    }

    /** Returns the family with its fits. */
    static DistributionFamily family() {
        return DistributionFamily.of("NORMAL", p -> of(p[0], p[1]), Parameter.location("mu"), Parameter.scale("sigma"))
                .withLMoments(m -> of(m.lambda1(), m.lambda2() * Math.sqrt(Math.PI)))
                .withMoments(m -> of(m.mean(), m.standardDeviation()))
                .withLikelihood();
    }

    @Override
    public double mean() {
        return location;
    }

    @Override
    public double variance() {
        return scale * scale;
    }
}
