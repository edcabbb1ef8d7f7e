package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;
import org.apache.commons.numbers.gamma.Gamma;
import org.apiguardian.api.API;

/**
 * The generalised extreme value distribution, F(x) = exp(-y), y = (1 - k (x - &xi;)/&alpha;)<sup>1/k</sup>. Shape k of
 * Hosking: k &lt; 0 has a heavy upper tail, k = 0 is {@link Gumbel}, k &gt; 0 an upper bound at &xi; + &alpha;/k.
 * Source: Hosking and Wallis (1997), Regional Frequency Analysis, appendix A.6.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Gev extends GumbelVariateDistribution {
    private static final double LOG_2 = Math.log(2);
    private static final double LOG_3 = Math.log(3);
    private static final double LOG_4 = Math.log(4);

    /** Chosen here, inside the range of the approximation: beyond this L-skewness to either side it takes one step more. */
    private static final double WIDEST_APPROXIMATION = 0.4;

    /** Chosen here: the steps double the digits of a start that has three. */
    private static final int NEWTON_STEPS = 3;

    /** Nearer to 0 the slope cancels. */
    private static final double LEAST_NEWTON_SHAPE = 1e-3;

    /** Shapes between which the bracketed search looks, above -1, where the moments end; chosen here. */
    private static final double LEAST_SHAPE = -1 + 1e-9;

    private static final double LARGEST_SHAPE = 50;

    private Gev(double location, double scale, double shape) {
        super(location, scale, shape);
    }

    /**
     * Returns the distribution with the given parameters.
     *
     * @param location &xi;; finite
     * @param scale &alpha;; greater than 0
     * @param shape k of Hosking, the negative of the shape in books that call it &xi;; finite
     * @return the distribution
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public static Gev of(double location, double scale, double shape) {
        return new Gev(location, scale, shape);
    }

    /** Returns the L-skewness for a shape above -1; it falls strictly as the shape grows. */
    static double lSkewness(double shape) {
        return shape == 0 ? 2 * LOG_3 / LOG_2 - 3 : 2 * Math.expm1(-shape * LOG_3) / Math.expm1(-shape * LOG_2) - 3;
    }

    /** Returns &lambda;<sub>2</sub>/&alpha;. */
    static double lScaleRatio(double shape) {
        return shape == 0 ? LOG_2 : -Math.expm1(-shape * LOG_2) / shape * Gamma.value(1 + shape);
    }

    /** Returns (&lambda;<sub>1</sub> - &xi;)/&alpha; = (1 - &Gamma;(1 + k))/k. */
    static double meanRatio(double shape) {
        if (shape == 0) {
            return EULER;
        }
        return Math.abs(shape) < 0.5
                ? -Math.expm1(org.apache.commons.math3.special.Gamma.logGamma1p(shape)) / shape
                : (1 - Gamma.value(1 + shape)) / shape;
    }

    private static double lKurtosis(double shape) {
        if (shape == 0) {
            return 16 - 10 * LOG_3 / LOG_2;
        }
        double two = Math.expm1(-shape * LOG_2);
        return (6 * two - 10 * Math.expm1(-shape * LOG_3) + 5 * Math.expm1(-shape * LOG_4)) / two;
    }

    @Override
    public LMoments lMoments() {
        if (shape <= -1) {
            throw new IllegalStateException("L-moments exist for shape above -1, was " + Text.number(shape));
        }
        return LMoments.of(
                location + scale * meanRatio(shape), scale * lScaleRatio(shape), lSkewness(shape), lKurtosis(shape));
    }

    /**
     * Returns the family with its fits. The likelihood grows without limit for a shape of 1 or more, and again far below -1, where
     * the mean is infinite: as k falls, a lower bound that nears the smallest value by exp(k) gains more than the others lose.
     */
    static DistributionFamily family() {
        return DistributionFamily.of(
                        "GEV",
                        p -> of(p[0], p[1], p[2]),
                        Parameter.location("xi"),
                        Parameter.scale("alpha"),
                        Parameter.shape("k").within(-1, 1))
                .withLMoments(Gev::fromLMoments)
                .withMoments(Gev::fromMoments)
                .withLikelihood();
    }

    private static Gev fromLMoments(LMoments m) {
        double tau3 = m.tau3OfShape();
        double shape = shapeOf(tau3);
        return withMean(m.lambda1(), m.lambda2() / lScaleRatio(shape), shape);
    }

    /**
     * Solves for the shape by Newton steps from the approximation of Hosking, Wallis and Wood (1985), Estimation of the generalized
     * extreme-value distribution by the method of probability-weighted moments, Technometrics 27(3), which is 9e-4 off at most for
     * an L-skewness from -0.5 to 0.5; bracketed elsewhere.
     */
    private static double shapeOf(double tau3) {
        double c = 2 / (3 + tau3) - LOG_2 / LOG_3;
        double k = c * (7.8590 + 2.9554 * c);
        if (Math.abs(tau3) > WIDEST_APPROXIMATION || Math.abs(k) < LEAST_NEWTON_SHAPE) {
            return RootFinder.find(
                    "shape for tau3 = " + Text.number(tau3),
                    shape -> lSkewness(shape) - tau3,
                    LEAST_SHAPE,
                    LARGEST_SHAPE);
        }
        for (int i = 0; i < NEWTON_STEPS; i++) {
            double two = Math.expm1(-k * LOG_2);
            double three = Math.expm1(-k * LOG_3);
            double slope = 2 * (LOG_2 * (two + 1) * three - LOG_3 * (three + 1) * two) / (two * two);
            k -= (2 * three / two - 3 - tau3) / slope;
        }
        return k;
    }

    private static Gev fromMoments(SampleMoments m) {
        double shape = PowerMoments.GEV.shape(m.skew(), PowerMoments.LARGEST_GEV_SHAPE);
        return withMean(m.mean(), m.standardDeviation() / PowerMoments.GEV.deviation(shape), shape);
    }

    private static Gev withMean(double mean, double scale, double shape) {
        return of(mean - scale * meanRatio(shape), scale, shape);
    }

    @Override
    public double mean() {
        return shape <= -1 ? Double.POSITIVE_INFINITY : location + scale * meanRatio(shape);
    }

    @Override
    public double variance() {
        if (shape <= -0.5) {
            return Double.POSITIVE_INFINITY;
        }
        double deviation = scale * PowerMoments.GEV.deviation(shape);
        return deviation * deviation;
    }
}
