package dev.runnel.rainfall.frequency;

import dev.runnel.base.Require;
import java.util.Map;
import org.apache.commons.numbers.gamma.Digamma;
import org.apache.commons.numbers.gamma.LogGamma;
import org.apache.commons.numbers.gamma.Trigamma;
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
    /** Below it the L-moments are taken by their series in k, whose error is about k squared. */
    private static final double SERIES_BELOW = 1e-5;

    /** Below it Gamma functions of 1/h would cancel; the limit h = 0 is as accurate. */
    private static final double NO_H_BELOW = 1e-9;

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
        return -Math.log(h == 0 ? -logF : -Math.expm1(h * logF) / h);
    }

    /** Returns ln F = ln(1 - h exp(-s))/h. */
    private double logF(double s) {
        return h == 0 ? -Math.exp(-s) : Math.log1p(-h * Math.exp(-s)) / h;
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
        return -s + (1 - h) * logF(s);
    }

    @Override
    double lowestVariate() {
        return h > 0 ? Math.log(h) : Double.NEGATIVE_INFINITY;
    }

    /** Tells whether L-moments exist for these shapes. */
    static boolean hasLMoments(double k, double h) {
        return k > -1 && (h >= 0 || k * h < 1);
    }

    /** Returns (1 - g<sub>r</sub>)/k, with g<sub>r</sub> = r &int; y<sup>k</sup> F<sup>r-1</sup> dF. */
    private static double momentTerm(int r, double k, double h) {
        double bend = Math.abs(h) < NO_H_BELOW ? 0 : h;
        if (Math.abs(k) >= SERIES_BELOW) {
            return -Math.expm1(logG(r, k, bend)) / k;
        }
        double slope;
        double curvature;
        if (bend == 0) {
            slope = -GumbelVariateDistribution.EULER - Math.log(r);
            curvature = Trigamma.value(1);
        } else if (bend > 0) {
            slope = Digamma.value(1) - Math.log(bend) - Digamma.value(1 + r / bend);
            curvature = Trigamma.value(1) - Trigamma.value(1 + r / bend);
        } else {
            slope = Digamma.value(1) - Math.log(-bend) - Digamma.value(-r / bend);
            curvature = Trigamma.value(1) + Trigamma.value(-r / bend);
        }
        return -(slope + 0.5 * k * (slope * slope + curvature));
    }

    private static double logG(int r, double k, double h) {
        if (h == 0) {
            return LogGamma.value(1 + k) - k * Math.log(r);
        }
        if (h > 0) {
            return Math.log(r)
                    + LogGamma.value(1 + k)
                    + LogGamma.value(r / h)
                    - (1 + k) * Math.log(h)
                    - LogGamma.value(1 + k + r / h);
        }
        return Math.log(r)
                + LogGamma.value(1 + k)
                + LogGamma.value(-k - r / h)
                - (1 + k) * Math.log(-h)
                - LogGamma.value(1 - r / h);
    }

    /** Returns &lambda;<sub>1</sub>, &lambda;<sub>2</sub>, &tau;<sub>3</sub>, &tau;<sub>4</sub> for location 0, scale 1. */
    static double[] standardLMoments(double k, double h) {
        double t1 = momentTerm(1, k, h);
        double t2 = momentTerm(2, k, h);
        double t3 = momentTerm(3, k, h);
        double t4 = momentTerm(4, k, h);
        double l2 = t2 - t1;
        return new double[] {t1, l2, (t1 - 3 * t2 + 2 * t3) / l2, (5 * t4 - 10 * t3 + 6 * t2 - t1) / l2};
    }

    @Override
    public LMoments lMoments() {
        if (!hasLMoments(shape, h)) {
            throw new IllegalStateException(
                    "L-moments exist for k above -1 and, if h is negative, k h below 1; k was " + shape + ", h " + h);
        }
        double[] standard = standardLMoments(shape, h);
        return LMoments.of(location + scale * standard[0], scale * standard[1], standard[2], standard[3]);
    }

    @Override
    public Map<String, Double> parameters() {
        return named("xi", location, "alpha", scale, "k", shape, "h", h);
    }
}
