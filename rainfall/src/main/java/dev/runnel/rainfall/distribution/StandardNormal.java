package dev.runnel.rainfall.distribution;

import org.apache.commons.numbers.gamma.Erfc;
import org.apache.commons.numbers.gamma.InverseErfc;

/** The normal variate z, accurate in both tails. */
final class StandardNormal {
    private static final double ROOT_TWO = Math.sqrt(2);
    private static final double LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

    private StandardNormal() {}

    static double cdf(double z) {
        return 0.5 * Erfc.value(-z / ROOT_TWO);
    }

    static double exceedance(double z) {
        return 0.5 * Erfc.value(z / ROOT_TWO);
    }

    static double quantile(double nonExceedance) {
        return -ROOT_TWO * InverseErfc.value(2 * nonExceedance);
    }

    static double quantileOfExceedance(double exceedance) {
        return ROOT_TWO * InverseErfc.value(2 * exceedance);
    }

    static double logDensity(double z) {
        return -0.5 * z * z - LOG_ROOT_TWO_PI;
    }
}
