package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.gamma.Erf;
import org.apiguardian.api.API;

/**
 * The generalised normal distribution, x = &xi; + &alpha; (1 - exp(-k z))/k with the normal variate z: the
 * three-parameter lognormal written so that k = 0 is the normal. Source: Hosking and Wallis (1997), Regional Frequency
 * Analysis, appendix A.8.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GeneralizedNormal extends NormalVariateDistribution {
    private GeneralizedNormal(double location, double scale, double shape) {
        super(location, scale, shape);
    }

    /**
     * Returns the distribution with the given parameters.
     *
     * @param location &xi;, the median; finite
     * @param scale &alpha;; greater than 0
     * @param shape k; k &lt; 0 bounds below and is heavy above; in [-6, 6], beyond which nothing measured lies
     * @return the distribution
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public static GeneralizedNormal of(double location, double scale, double shape) {
        return new GeneralizedNormal(location, scale, Require.inRange("shape", shape, -6, 6, ""));
    }

    /** Returns &lambda;<sub>2</sub>/&alpha; = exp(k&sup2;/2) erf(k/2)/k. */
    static double lScaleRatio(double shape) {
        return shape == 0 ? 1 / Math.sqrt(Math.PI) : Math.exp(0.5 * shape * shape) * Erf.value(0.5 * shape) / shape;
    }

    /** Returns (&lambda;<sub>1</sub> - &xi;)/&alpha; = (1 - exp(k&sup2;/2))/k. */
    static double meanRatio(double shape) {
        return shape == 0 ? 0 : -Math.expm1(0.5 * shape * shape) / shape;
    }

    /** Returns the L-skewness, which falls strictly as the shape grows. */
    static double lSkewness(double shape) {
        return NormalScaleIntegral.lambda3(standard(shape), shape) / lScaleRatio(shape);
    }

    private static DoubleUnaryOperator standard(double shape) {
        return z -> shape == 0 ? z : -Math.expm1(-shape * z) / shape;
    }

    @Override
    public LMoments lMoments() {
        double ratio = lScaleRatio(shape);
        return LMoments.of(
                location + scale * meanRatio(shape),
                scale * ratio,
                lSkewness(shape),
                NormalScaleIntegral.lambda4(standard(shape), shape) / ratio);
    }
}
