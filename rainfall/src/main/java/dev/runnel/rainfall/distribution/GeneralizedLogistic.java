package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The generalised logistic distribution, x = &xi; + &alpha;/k (1 - ((1 - F)/F)<sup>k</sup>). Source: Hosking and Wallis
 * (1997), Regional Frequency Analysis, appendix A.7.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GeneralizedLogistic extends ShapedDistribution {
    private static final double SERIES_BELOW = 5e-3;

    private GeneralizedLogistic(double location, double scale, double shape) {
        super(location, scale, shape);
    }

    /**
     * Returns the distribution with the given parameters.
     *
     * @param location &xi;, the median; finite
     * @param scale &alpha;; greater than 0
     * @param shape k; finite
     * @return the distribution
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public static GeneralizedLogistic of(double location, double scale, double shape) {
        return new GeneralizedLogistic(location, scale, shape);
    }

    /** Returns &lambda;<sub>2</sub>/&alpha; = k&pi;/sin(k&pi;). */
    static double lScaleRatio(double shape) {
        return shape == 0 ? 1 : shape * Math.PI / Math.sin(shape * Math.PI);
    }

    /** Returns (&lambda;<sub>1</sub> - &xi;)/&alpha; = 1/k - &pi;/sin(k&pi;), by its series where that cancels. */
    static double meanRatio(double shape) {
        if (Math.abs(shape) >= SERIES_BELOW) {
            return 1 / shape - Math.PI / Math.sin(shape * Math.PI);
        }
        double square = Math.PI * Math.PI;
        double k2 = square * shape * shape;
        return -square * shape * (1.0 / 6 + k2 * (7.0 / 360 + k2 * 31.0 / 15120));
    }

    @Override
    double variate(double nonExceedance) {
        return Math.log(nonExceedance) - Math.log1p(-nonExceedance);
    }

    @Override
    double variateOfExceedance(double exceedance) {
        return Math.log1p(-exceedance) - Math.log(exceedance);
    }

    @Override
    double cdfOfVariate(double s) {
        return 1 / (1 + Math.exp(-s));
    }

    @Override
    double exceedanceOfVariate(double s) {
        return 1 / (1 + Math.exp(s));
    }

    @Override
    double logDensityOfVariate(double s) {
        double magnitude = Math.abs(s);
        return -magnitude - 2 * Math.log1p(Math.exp(-magnitude));
    }

    @Override
    public LMoments lMoments() {
        if (Math.abs(shape) >= 1) {
            throw new IllegalStateException("L-moments exist for shape inside (-1, 1), was " + Text.number(shape));
        }
        return LMoments.of(
                location + scale * meanRatio(shape), scale * lScaleRatio(shape), -shape, (1 + 5 * shape * shape) / 6);
    }

    /** Returns the family with its fits. The likelihood grows without limit for a shape of 1 or more, or -1 or less. */
    static DistributionFamily family() {
        return DistributionFamily.of(
                        "GENERALIZED_LOGISTIC",
                        p -> of(p[0], p[1], p[2]),
                        Parameter.location("xi"),
                        Parameter.scale("alpha"),
                        Parameter.shape("k").within(-1, 1))
                .withLMoments(m -> withMean(m.lambda1(), m.lambda2() / lScaleRatio(m.tau3OfShape()), -m.tau3()))
                .withMoments(GeneralizedLogistic::fromMoments)
                .withLikelihood();
    }

    private static GeneralizedLogistic fromMoments(SampleMoments m) {
        double shape = PowerMoments.LOGISTIC.shape(m.skew(), -PowerMoments.SMALLEST_SHAPE);
        return withMean(m.mean(), m.standardDeviation() / PowerMoments.LOGISTIC.deviation(shape), shape);
    }

    private static GeneralizedLogistic withMean(double mean, double scale, double shape) {
        return of(mean - scale * meanRatio(shape), scale, shape);
    }

    @Override
    public double mean() {
        return Math.abs(shape) >= 1
                ? -Math.signum(shape) * Double.POSITIVE_INFINITY
                : location + scale * meanRatio(shape);
    }

    @Override
    public double variance() {
        if (Math.abs(shape) >= 0.5) {
            return Double.POSITIVE_INFINITY;
        }
        double deviation = scale * PowerMoments.LOGISTIC.deviation(shape);
        return deviation * deviation;
    }
}
