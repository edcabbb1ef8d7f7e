package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;
import java.util.function.DoubleBinaryOperator;

/**
 * Moments of any distribution as integrals over its quantiles, &int; g(x(F), F) dF, taken over the normal variate z by the
 * trapezoidal rule: the integrand and all its derivatives vanish at both ends unless a tail is very heavy.
 */
final class QuantileIntegral {
    private static final double STEP = 0.0625;

    /** Where the probability of a tail, 5e-300, is still a number of full precision. */
    private static final int STEPS_EACH_WAY = 592;

    private QuantileIntegral() {}

    static double mean(Distribution distribution) {
        return integral(distribution, (x, f) -> x);
    }

    static double variance(Distribution distribution) {
        double mean = mean(distribution);
        return integral(distribution, (x, f) -> (x - mean) * (x - mean));
    }

    static LMoments lMoments(Distribution distribution) {
        double mean = mean(distribution);
        // Without the mean they would be differences of integrals that it alone makes large.
        double l2 = integral(distribution, (x, f) -> (x - mean) * (2 * f - 1));
        double l3 = integral(distribution, (x, f) -> (x - mean) * (1 - 6 * f * (1 - f)));
        double l4 = integral(distribution, (x, f) -> (x - mean) * (2 * f - 1) * (1 - 10 * f * (1 - f)));
        if (!(Math.abs(mean) < Double.POSITIVE_INFINITY && l2 < Double.POSITIVE_INFINITY)) {
            throw new IllegalStateException("L-moments exist for a finite mean, was " + Text.number(mean));
        }
        return LMoments.of(mean, l2, l3 / l2, l4 / l2);
    }

    private static double integral(Distribution distribution, DoubleBinaryOperator ofValueAndProbability) {
        double sum = 0;
        for (int i = -STEPS_EACH_WAY; i <= STEPS_EACH_WAY; i++) {
            double z = i * STEP;
            double p = StandardNormal.cdf(z);
            double x =
                    z < 0 ? distribution.quantile(p) : distribution.quantileOfExceedance(StandardNormal.exceedance(z));
            sum += ofValueAndProbability.applyAsDouble(x, p) * Math.exp(StandardNormal.logDensity(z));
        }
        return sum * STEP;
    }
}
