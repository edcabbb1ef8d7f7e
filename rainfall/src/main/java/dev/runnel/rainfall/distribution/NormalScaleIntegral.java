package dev.runnel.rainfall.distribution;

import java.util.function.DoubleUnaryOperator;

/**
 * Third and fourth L-moments that have no closed form: &lambda;<sub>r</sub> = &int; x(F) P*<sub>r-1</sub>(F) dF over
 * the normal variate z. The integrand and all its derivatives vanish at both ends, so that the trapezoidal rule is
 * accurate to rounding.
 */
final class NormalScaleIntegral {
    private static final double STEP = 0.0625;
    private static final double REACH = 12;

    private NormalScaleIntegral() {}

    /**
     * @param valueOfZ x as a function of the normal variate
     * @param shift by how much the tails of x move its mass along z
     */
    static double lambda3(DoubleUnaryOperator valueOfZ, double shift) {
        return integral(valueOfZ, shift, false);
    }

    static double lambda4(DoubleUnaryOperator valueOfZ, double shift) {
        return integral(valueOfZ, shift, true);
    }

    private static double integral(DoubleUnaryOperator valueOfZ, double shift, boolean degreeThree) {
        double reach = REACH + Math.abs(shift);
        int steps = (int) Math.ceil(2 * reach / STEP);
        double sum = 0;
        for (int i = 0; i <= steps; i++) {
            double z = i * STEP - reach;
            double density = Math.exp(StandardNormal.logDensity(z));
            if (density > 0) {
                double p = StandardNormal.cdf(z);
                double q = StandardNormal.exceedance(z);
                // P2* = 1 - 6 F (1 - F), P3* = (2 F - 1)(1 - 10 F (1 - F))
                double polynomial = degreeThree ? (p - q) * (1 - 10 * p * q) : 1 - 6 * p * q;
                sum += valueOfZ.applyAsDouble(z) * polynomial * density;
            }
        }
        return sum * STEP;
    }
}
