package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
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
    /** Chosen here: nothing measured lies beyond it. */
    private static final double LARGEST_SHAPE = 6;

    /** Chosen here: a skew of 7e5, which no sample of fewer than 5e11 values has. */
    private static final double LARGEST_SHAPE_OF_SKEW = 3;

    /** Chosen here, an L-skewness of 0.79; the likelihoods without limit of short samples lie farther out. */
    private static final double LARGEST_LIKELY_SHAPE = 2;

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
        return new GeneralizedNormal(
                location, scale, Require.inRange("shape", shape, -LARGEST_SHAPE, LARGEST_SHAPE, ""));
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

    /**
     * Returns the family with its fits. The likelihood grows without limit as the bound nears the outermost value. Source: Hill (1963),
     * The three-parameter lognormal distribution and Bayesian analysis of a point-source epidemic, Journal of the American
     * Statistical Association 58(301), 72-84, from memory.
     */
    static DistributionFamily family() {
        return DistributionFamily.of(
                        "GENERALIZED_NORMAL",
                        p -> of(p[0], p[1], p[2]),
                        Parameter.location("xi"),
                        Parameter.scale("alpha"),
                        Parameter.shape("k").within(-LARGEST_LIKELY_SHAPE, LARGEST_LIKELY_SHAPE))
                .withLMoments(GeneralizedNormal::fromLMoments)
                .withMoments(GeneralizedNormal::fromMoments)
                .withLikelihood();
    }

    private static GeneralizedNormal fromLMoments(LMoments m) {
        double tau3 = m.tau3OfShape();
        double size = RootFinder.find(
                "shape for tau3 = " + Text.number(tau3), s -> lSkewness(-s) - Math.abs(tau3), 0, LARGEST_SHAPE);
        double shape = -Math.signum(tau3) * size;
        return withMean(m.lambda1(), m.lambda2() / lScaleRatio(shape), shape);
    }

    /** The variance is (w&sup2; - w)/k&sup2; and the skew (w + 2) &radic;(w - 1) with w = exp(k&sup2;). */
    private static GeneralizedNormal fromMoments(SampleMoments m) {
        double size = RootFinder.find(
                "shape for skew = " + Text.number(m.skew()),
                s -> (Math.exp(s * s) + 2) * Math.sqrt(Math.expm1(s * s)) - Math.abs(m.skew()),
                0,
                LARGEST_SHAPE_OF_SKEW);
        double k = -Math.signum(m.skew()) * size;
        return withMean(m.mean(), m.standardDeviation() / deviation(k), k);
    }

    private static GeneralizedNormal withMean(double mean, double scale, double shape) {
        return of(mean - scale * meanRatio(shape), scale, shape);
    }

    /** Returns the standard deviation over &alpha;. */
    private static double deviation(double k) {
        return k == 0 ? 1 : Math.sqrt(Math.exp(k * k) * Math.expm1(k * k)) / Math.abs(k);
    }

    @Override
    public double mean() {
        return location + scale * meanRatio(shape);
    }

    @Override
    public double variance() {
        double deviation = scale * deviation(shape);
        return deviation * deviation;
    }
}
