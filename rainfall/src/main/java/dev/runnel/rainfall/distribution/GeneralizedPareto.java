package dev.runnel.rainfall.distribution;

import org.apiguardian.api.API;

/**
 * The generalised Pareto distribution, x = &xi; + &alpha;/k (1 - (1 - F)<sup>k</sup>), the law of exceedances over a
 * high threshold &xi;. Source: Hosking and Wallis (1997), Regional Frequency Analysis, appendix A.5.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GeneralizedPareto extends ExponentialVariateDistribution {
    private GeneralizedPareto(double location, double scale, double shape) {
        super(location, scale, shape);
    }

    /**
     * Returns the distribution with the given parameters.
     *
     * @param location &xi;, the lower bound; finite
     * @param scale &alpha;; greater than 0
     * @param shape k; finite
     * @return the distribution
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public static GeneralizedPareto of(double location, double scale, double shape) {
        return new GeneralizedPareto(location, scale, shape);
    }
}
