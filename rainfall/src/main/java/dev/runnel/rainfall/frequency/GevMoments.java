package dev.runnel.rainfall.frequency;

import org.apache.commons.numbers.gamma.Gamma;

/**
 * Standard deviation and skew of the generalised extreme value distribution with scale 1, from g<sub>r</sub> =
 * &Gamma;(1 + r k). Source: Hosking and Wallis (1997), Regional Frequency Analysis, appendix A.6, where the moments are
 * those of y<sup>k</sup>.
 *
 * <p>Near k = 0 the central moments of y<sup>k</sup> are small differences. There they are taken through ln
 * &Gamma;(1 + k) = -&gamma; k + &Sigma; &zeta;(n) (-k)<sup>n</sup>/n, Abramowitz and Stegun (1964), equation 6.1.33.
 */
final class GevMoments {
    private static final double SERIES_BELOW = 0.03;

    /** &zeta;(2) to &zeta;(17). */
    private static final double[] ZETA = {
        1.64493406684822644,
        1.20205690315959429,
        1.08232323371113819,
        1.03692775514336993,
        1.01734306198444914,
        1.00834927738192283,
        1.00407735619794434,
        1.00200839282608221,
        1.00099457512781809,
        1.00049418860411946,
        1.00024608655330805,
        1.00012271334757849,
        1.0000612481350587,
        1.00003058823630702,
        1.00001528225940865,
        1.0000076371976379
    };

    private GevMoments() {}

    /** Returns the standard deviation for a shape above -1/2. */
    static double deviation(double k) {
        double g1 = Gamma.value(1 + k);
        if (Math.abs(k) < SERIES_BELOW) {
            double a = secondCumulant(k);
            return g1 * Math.sqrt(relativeVariance(k, a));
        }
        return Math.sqrt(Gamma.value(1 + 2 * k) - g1 * g1) / Math.abs(k);
    }

    /** Returns the skew for a shape above -1/3; it falls strictly as the shape grows. */
    static double skew(double k) {
        if (Math.abs(k) < SERIES_BELOW) {
            double a = secondCumulant(k);
            double b = 3 * a + k * thirdCumulant(k);
            double square = k * k;
            // [exp(k^2 b) - 1 - 3 (exp(k^2 a) - 1)]/k^3
            double excess =
                    thirdCumulant(k) + k * (b * b * beyondLinear(square * b) - 3 * a * a * beyondLinear(square * a));
            double variance = relativeVariance(k, a);
            return -excess / (variance * Math.sqrt(variance));
        }
        double g1 = Gamma.value(1 + k);
        double g2 = Gamma.value(1 + 2 * k);
        double g3 = Gamma.value(1 + 3 * k);
        double variance = g2 - g1 * g1;
        return Math.signum(k) * (-g3 + 3 * g1 * g2 - 2 * g1 * g1 * g1) / (variance * Math.sqrt(variance));
    }

    /** Returns (g<sub>2</sub>/g<sub>1</sub>&sup2; - 1)/k&sup2;. */
    private static double relativeVariance(double k, double secondCumulant) {
        double square = k * k;
        return secondCumulant * (1 + square * secondCumulant * beyondLinear(square * secondCumulant));
    }

    /** Returns ln(g<sub>2</sub>/g<sub>1</sub>&sup2;)/k&sup2;. */
    private static double secondCumulant(double k) {
        double sum = 0;
        for (int n = ZETA.length + 1; n >= 2; n--) {
            sum = -k * sum + ZETA[n - 2] * (Math.pow(2, n) - 2) / n;
        }
        return sum;
    }

    /** Returns [ln(g<sub>3</sub>/g<sub>1</sub>&sup3;) - 3 ln(g<sub>2</sub>/g<sub>1</sub>&sup2;)]/k&sup3;. */
    private static double thirdCumulant(double k) {
        double sum = 0;
        for (int n = ZETA.length + 1; n >= 3; n--) {
            sum = -k * sum + ZETA[n - 2] * (Math.pow(3, n) - 3 * Math.pow(2, n) + 3) / n;
        }
        return -sum;
    }

    /** Returns (exp(x) - 1 - x)/x&sup2; for a small x. */
    private static double beyondLinear(double x) {
        double sum = 1;
        for (int n = 9; n >= 3; n--) {
            sum = 1 + sum * x / n;
        }
        return 0.5 * sum;
    }
}
