package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.gamma.Gamma;

/**
 * Standard deviation and skew of a variate x = (1 - y<sup>k</sup>)/k, from the moments g<sub>r</sub> of
 * y<sup>k r</sup>: for the generalised extreme value distribution g<sub>r</sub> = &Gamma;(1 + r k), for the generalised
 * logistic &Gamma;(1 + r k) &Gamma;(1 - r k) = r k &pi;/sin(r k &pi;). Source: Hosking and Wallis (1997), Regional
 * Frequency Analysis, appendix A.6 and A.7, where y is given.
 *
 * <p>Near k = 0 the central moments are small differences. There they are taken through ln g<sub>r</sub> = &Sigma;
 * c<sub>n</sub> (-r k)<sup>n</sup>/n, with c<sub>n</sub> = &zeta;(n) for the first and 2 &zeta;(n) for n even, else 0, for
 * the second; the term of n = 1 cancels. Abramowitz and Stegun (1964), equation 6.1.33.
 */
final class PowerMoments {
    static final PowerMoments GEV = new PowerMoments(x -> Gamma.value(1 + x), false);
    static final PowerMoments LOGISTIC = new PowerMoments(x -> x == 0 ? 1 : x * Math.PI / Math.sin(x * Math.PI), true);

    /** Chosen here: the third moment exists for a shape above -1/3, where the skew has grown beyond all bounds. */
    static final double SMALLEST_SHAPE = -0.33;

    /** Chosen here: a skew of -19.6, which no sample of fewer than 380 values has. */
    static final double LARGEST_GEV_SHAPE = 3;

    private static final double SERIES_BELOW = 0.08;

    /** Terms of the series: the last is below rounding for three times the largest k. */
    private static final int ORDERS = 32;

    private final DoubleUnaryOperator moment;
    private final double[] coefficients;

    private PowerMoments(DoubleUnaryOperator moment, boolean even) {
        this.moment = moment;
        this.coefficients = new double[ORDERS + 1];
        for (int n = 2; n <= ORDERS; n++) {
            coefficients[n] = even ? (n % 2 == 0 ? 2 * zeta(n) : 0) : zeta(n);
        }
    }

    /** Returns &zeta;(n) by its sum, the rest of it by the formula of Euler and Maclaurin. */
    private static double zeta(int n) {
        // The first term left out is 2e-15 of the sum for n = 2, and less for all others.
        int last = 400;
        double sum = Math.pow(last, 1 - n) / (n - 1) + 0.5 * Math.pow(last, -n) + n / 12.0 * Math.pow(last, -n - 1);
        for (int i = last - 1; i >= 1; i--) {
            sum += Math.pow(i, -n);
        }
        return sum;
    }

    /** Returns the standard deviation, for a shape whose second moment exists. */
    double deviation(double k) {
        double g1 = moment.applyAsDouble(k);
        if (Math.abs(k) < SERIES_BELOW) {
            return g1 * Math.sqrt(relativeVariance(k, secondCumulant(k)));
        }
        return Math.sqrt(moment.applyAsDouble(2 * k) - g1 * g1) / Math.abs(k);
    }

    /**
     * Returns the shape of a skew.
     *
     * @throws NoFitException if there is none up to the largest
     */
    double shape(double skew, double largest) {
        return RootFinder.find("shape for skew = " + Text.number(skew), k -> skew(k) - skew, SMALLEST_SHAPE, largest);
    }

    /** Returns the skew, for a shape whose third moment exists; it falls strictly as the shape grows. */
    double skew(double k) {
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
        double g1 = moment.applyAsDouble(k);
        double g2 = moment.applyAsDouble(2 * k);
        double g3 = moment.applyAsDouble(3 * k);
        double variance = g2 - g1 * g1;
        return Math.signum(k) * (-g3 + 3 * g1 * g2 - 2 * g1 * g1 * g1) / (variance * Math.sqrt(variance));
    }

    /** Returns (g<sub>2</sub>/g<sub>1</sub>&sup2; - 1)/k&sup2;. */
    private static double relativeVariance(double k, double secondCumulant) {
        double square = k * k;
        return secondCumulant * (1 + square * secondCumulant * beyondLinear(square * secondCumulant));
    }

    /** Returns ln(g<sub>2</sub>/g<sub>1</sub>&sup2;)/k&sup2;. */
    private double secondCumulant(double k) {
        double sum = 0;
        for (int n = ORDERS; n >= 2; n--) {
            sum = -k * sum + coefficients[n] * (Math.pow(2, n) - 2) / n;
        }
        return sum;
    }

    /** Returns [ln(g<sub>3</sub>/g<sub>1</sub>&sup3;) - 3 ln(g<sub>2</sub>/g<sub>1</sub>&sup2;)]/k&sup3;. */
    private double thirdCumulant(double k) {
        double sum = 0;
        for (int n = ORDERS; n >= 3; n--) {
            sum = -k * sum + coefficients[n] * (Math.pow(3, n) - 3 * Math.pow(2, n) + 3) / n;
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
