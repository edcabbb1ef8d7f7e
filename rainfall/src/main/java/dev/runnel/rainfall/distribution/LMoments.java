package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * The first L-moments of a distribution or of a sample: location &lambda;<sub>1</sub> (the mean), scale
 * &lambda;<sub>2</sub>, and the ratios &tau;<sub>3</sub> (L-skewness) and &tau;<sub>4</sub> (L-kurtosis).
 *
 * <p>The ratios of a distribution and those of a sample have different limits. A distribution has
 * &tau;<sub>4</sub> of at least (5&tau;<sub>3</sub>&sup2; - 1)/4. The unbiased ratios of a sample may fall lower: of four
 * values with gaps a, b, c, &tau;<sub>4</sub> = 3(a - 2b + c)/(3a + 4b + 3c), which comes down to -3/2 where the values lie
 * in two pairs, and those of a larger sample are averages over its fours. They are kept as they are; a family that has no
 * member with them refuses the fit, and one that does not use &tau;<sub>4</sub> does not ask for it.
 *
 * <p>Source: Hosking (1990), L-moments: analysis and estimation of distributions using linear combinations of order
 * statistics, Journal of the Royal Statistical Society B 52(1), 105-124.
 *
 * @param lambda1 mean
 * @param lambda2 L-scale, half the mean difference of two independent values; greater than 0
 * @param tau3 L-skewness, &lambda;<sub>3</sub>/&lambda;<sub>2</sub>; in [-1, 1]
 * @param tau4 L-kurtosis, &lambda;<sub>4</sub>/&lambda;<sub>2</sub>; of a distribution in [-1/4, 1], of a sample in [-3/2, 1]
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record LMoments(double lambda1, double lambda2, double tau3, double tau4) {
    private static final int SMALLEST_SAMPLE = 4;
    private static final double LOWEST_TAU4 = -1.5;
    private static final double HIGHEST_SKEWNESS = 1 - 1e-12;

    /**
     * Checks the ranges.
     *
     * @param lambda1 mean
     * @param lambda2 L-scale
     * @param tau3 L-skewness
     * @param tau4 L-kurtosis
     * @throws IllegalArgumentException if one is out of range
     */
    public LMoments {
        Require.finite("lambda1", lambda1, "");
        Require.positive("lambda2", lambda2, "");
        Require.inRange("tau3", tau3, -1, 1, "");
        Require.inRange("tau4", tau4, LOWEST_TAU4, 1, "");
    }

    /**
     * Returns the given L-moments.
     *
     * @param lambda1 mean; finite
     * @param lambda2 L-scale; greater than 0
     * @param tau3 L-skewness; in [-1, 1]
     * @param tau4 L-kurtosis; in [-3/2, 1]
     * @return the L-moments
     * @throws IllegalArgumentException if one is out of range
     */
    public static LMoments of(double lambda1, double lambda2, double tau3, double tau4) {
        return new LMoments(lambda1, lambda2, tau3, tau4);
    }

    /**
     * Returns the unbiased L-moments of a sample, from the probability-weighted moments
     * b<sub>r</sub> = n<sup>-1</sup> &Sigma; [(j-1)...(j-r)]/[(n-1)...(n-r)] x<sub>j:n</sub>. The sums are taken from
     * the smallest value, so that a sample far from 0 keeps its digits.
     *
     * @param sample at least 4 values that are not all equal; in any order; not modified
     * @return the L-moments
     * @throws IllegalArgumentException if the sample is too small, not finite or all equal
     */
    public static LMoments ofSample(double... sample) {
        int n = sample.length;
        Samples.check(sample, SMALLEST_SAMPLE);
        double[] x = sample.clone();
        Arrays.sort(x);
        double b0 = 0;
        double b1 = 0;
        double b2 = 0;
        double b3 = 0;
        for (int j = 0; j < n; j++) {
            double above = x[j] - x[0];
            double w1 = (double) j / (n - 1);
            double w2 = w1 * (j - 1) / (n - 2);
            double w3 = w2 * (j - 2) / (n - 3);
            b0 += above;
            b1 += w1 * above;
            b2 += w2 * above;
            b3 += w3 * above;
        }
        b0 /= n;
        b1 /= n;
        b2 /= n;
        b3 /= n;
        double l2 = 2 * b1 - b0;
        double l3 = 6 * b2 - 6 * b1 + b0;
        double l4 = 20 * b3 - 30 * b2 + 12 * b1 - b0;
        return ofParts(x[0] + b0, l2, l3, l4);
    }

    /** Of a sample: beyond the limits of the ratios there is rounding only, as where all values but one are equal. */
    static LMoments ofParts(double l1, double l2, double l3, double l4) {
        return new LMoments(l1, l2, between(-1, l3 / l2), between(LOWEST_TAU4, l4 / l2));
    }

    private static double between(double lowest, double ratio) {
        return Math.max(lowest, Math.min(1, ratio));
    }

    /**
     * Returns the coefficient of L-variation.
     *
     * @return &tau; = &lambda;<sub>2</sub>/&lambda;<sub>1</sub>
     */
    public double tau() {
        return lambda2 / lambda1;
    }

    /** Returns &tau;<sub>3</sub> for a family with a shape; all values of a sample equal but one have 1, to rounding. */
    double tau3OfShape() {
        if (!(Math.abs(tau3) < HIGHEST_SKEWNESS)) {
            throw new NoFitException("tau3 must be inside (-1, 1) for a family with a shape, was " + Text.number(tau3));
        }
        return tau3;
    }

    @Override
    public String toString() {
        return "LMoments[l1 = " + Text.significant(lambda1, 6) + ", l2 = " + Text.significant(lambda2, 6) + ", t3 = "
                + Text.significant(tau3, 5) + ", t4 = " + Text.significant(tau4, 5) + "]";
    }
}
