package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Map;
import org.apiguardian.api.API;

/**
 * The four-parameter kappa distribution, x = &xi; + &alpha;/k (1 - ((1 - F<sup>h</sup>)/h)<sup>k</sup>). It holds the
 * generalised Pareto (h = 1), extreme value (h = 0) and logistic (h = -1) distributions. Source: Hosking and Wallis
 * (1997), Regional Frequency Analysis, appendix A.10.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Kappa extends ShapedDistribution {
    /** An exponent from which it is handled apart from its exponential. */
    private static final double LARGE = 100;

    private final double h;

    private Kappa(double location, double scale, double shape, double h) {
        super(location, scale, shape);
        this.h = Require.finite("h", h, "");
    }

    /**
     * Returns the distribution with the given parameters.
     *
     * @param location &xi;; finite
     * @param scale &alpha;; greater than 0
     * @param shape k; finite
     * @param h second shape; finite
     * @return the distribution
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public static Kappa of(double location, double scale, double shape, double h) {
        return new Kappa(location, scale, shape, h);
    }

    @Override
    double variate(double nonExceedance) {
        return variateOfLogF(Math.log(nonExceedance));
    }

    @Override
    double variateOfExceedance(double exceedance) {
        return variateOfLogF(Math.log1p(-exceedance));
    }

    private double variateOfLogF(double logF) {
        double power = h * logF;
        if (power > LARGE) {
            // F^h, with h below 0, would overflow; beside it 1 is nothing.
            return Math.log(-h) - power;
        }
        return -Math.log(h == 0 ? -logF : -Math.expm1(power) / h);
    }

    /** Returns ln F = ln(1 - h exp(-s))/h. */
    private double logF(double s) {
        if (h < 0 && -s > LARGE) {
            // 1 - h exp(-s) = -h exp(-s) (1 - exp(s)/h), where exp(-s) would overflow.
            return (Math.log(-h) - s + Math.log1p(-Math.exp(s) / h)) / h;
        }
        double less = h * Math.exp(-s);
        if (less > 0.5) {
            // Near the lower bound, where 1 - h exp(-s) would cancel.
            return Math.log(Math.max(0, (1 - h) - h * Math.expm1(-s))) / h;
        }
        return h == 0 ? -Math.exp(-s) : Math.log1p(-less) / h;
    }

    @Override
    double cdfOfVariate(double s) {
        return Math.exp(logF(s));
    }

    @Override
    double exceedanceOfVariate(double s) {
        return -Math.expm1(logF(s));
    }

    @Override
    double logDensityOfVariate(double s) {
        // At the lower bound ln F is minus infinity: the density is 0 there for h below 1, infinite above it.
        return h == 1 ? -s : -s + (1 - h) * logF(s);
    }

    @Override
    double lowestVariate() {
        return h > 0 ? Math.log(h) : Double.NEGATIVE_INFINITY;
    }

    @Override
    public LMoments lMoments() {
        if (!KappaMoments.exist(shape, h)) {
            throw new IllegalStateException("L-moments exist for k above -1 and, if h is negative, k h above -1; k was "
                    + Text.number(shape) + ", h " + Text.number(h));
        }
        double[] standard = KappaMoments.standard(shape, h);
        return LMoments.of(location + scale * standard[0], scale * standard[1], standard[2], standard[3]);
    }

    @Override
    public Map<String, Double> parameters() {
        return named("xi", location, "alpha", scale, "k", shape, "h", h);
    }

    /** Returns the family with its fits. */
    static DistributionFamily family() {
        return DistributionFamily.of(
                        "KAPPA",
                        p -> of(p[0], p[1], p[2], p[3]),
                        Parameter.location("xi"),
                        Parameter.scale("alpha"),
                        Parameter.shape("k"),
                        Parameter.shape("h"))
                .withLMoments(KappaFit::of)
                .withoutMoments(", since the fourth moment of so few values says too little")
                .withoutLikelihood(
                        ", whose four parameters have no dependable maximum in so small a sample; use L_MOMENTS");
    }

    @Override
    public double mean() {
        if (h < 0 && shape * h <= -1) {
            return Double.NEGATIVE_INFINITY;
        }
        return shape <= -1 ? Double.POSITIVE_INFINITY : location + scale * KappaMoments.standard(shape, h)[0];
    }

    @Override
    public double variance() {
        return shape <= -0.5 || h < 0 && shape * h <= -0.5 ? Double.POSITIVE_INFINITY : QuantileIntegral.variance(this);
    }
}
