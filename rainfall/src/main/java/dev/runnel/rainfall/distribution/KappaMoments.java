package dev.runnel.rainfall.distribution;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.special.Gamma;
import org.apache.commons.numbers.gamma.Digamma;
import org.apache.commons.numbers.gamma.LogGamma;

/**
 * L-moments of the kappa distribution with location 0 and scale 1, from g<sub>r</sub> = r &int; y<sup>k</sup>
 * F<sup>r-1</sup> dF, which is a ratio of Gamma functions. Source: Hosking and Wallis (1997), Regional Frequency
 * Analysis, appendix A.10.
 *
 * <p>Near k = 0 and near h = 0 the logarithms of the Gamma functions would cancel. So ln(g<sub>r</sub>)/k is taken as
 * the mean of a digamma function over an interval of length k, where nothing does.
 */
final class KappaMoments {
    /** Below it the limit h = 0 differs by less than rounding. */
    private static final double NO_H_BELOW = 1e-17;

    /** Points of Gauss and Legendre to every unit at most; chosen here. */
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(14, 0, 1);

    /** Where two terms of the asymptotic series of the digamma function are exact to rounding. */
    private static final double LARGE = 1e4;

    private KappaMoments() {}

    /** Tells whether L-moments exist for these shapes. */
    static boolean exist(double k, double h) {
        return k > -1 && h * Math.max(k, 0) > -1;
    }

    /** Returns &lambda;<sub>1</sub>, &lambda;<sub>2</sub>, &tau;<sub>3</sub>, &tau;<sub>4</sub>. */
    static double[] standard(double k, double h) {
        double t1 = term(1, k, h);
        double t2 = term(2, k, h);
        double t3 = term(3, k, h);
        double t4 = term(4, k, h);
        double l2 = t2 - t1;
        return new double[] {t1, l2, (t1 - 3 * t2 + 2 * t3) / l2, (5 * t4 - 10 * t3 + 6 * t2 - t1) / l2};
    }

    /** Returns (1 - g<sub>r</sub>)/k. */
    private static double term(int r, double k, double h) {
        double slope = gammaPart(k) - digammaPart(r, k, h);
        return k == 0 ? -slope : -Math.expm1(k * slope) / k;
    }

    /** Returns ln(&Gamma;(1 + k))/k. */
    private static double gammaPart(double k) {
        if (k == 0) {
            return -GumbelVariateDistribution.EULER;
        }
        return (Math.abs(k) <= 0.5 ? Gamma.logGamma1p(k) : LogGamma.value(1 + k)) / k;
    }

    private static double digammaPart(int r, double k, double h) {
        if (Math.abs(h) < NO_H_BELOW) {
            return Math.log(r);
        }
        return h > 0 ? meanDigamma(1 + r / h, k, h) : meanDigamma(-r / h, -k, -h);
    }

    /** Returns [ln &Gamma;(x + d) - ln &Gamma;(x)]/d + ln h. */
    private static double meanDigamma(double x, double d, double h) {
        // Gamma(x) = Gamma(x + 1)/x, away from the pole.
        double shift = d == 0 ? 1 / x : Math.log1p(d / x) / d;
        // ln h and the logarithm in the digamma function nearly cancel where h is small.
        DoubleUnaryOperator digamma = at -> Math.log(h * at) + digammaLessLog(at);
        int panels = 1 + (int) Math.abs(d);
        double sum = 0;
        for (int i = 0; i < panels; i++) {
            double from = x + 1 + d * i / panels;
            sum += RULE.integrate(u -> digamma.applyAsDouble(from + d / panels * u));
        }
        return sum / panels - shift;
    }

    /** Returns &psi;(x) - ln x; the series is in Abramowitz and Stegun (1964), equation 6.3.18. */
    private static double digammaLessLog(double x) {
        if (x < LARGE) {
            return Digamma.value(x) - Math.log(x);
        }
        return -0.5 / x - 1 / (12 * x * x);
    }
}
