package dev.runnel.rainfall.distribution;

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
}
