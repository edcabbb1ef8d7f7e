package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * Ordinary moments of a sample.
 *
 * @param size number of values n
 * @param mean arithmetic mean
 * @param standardDeviation with divisor n - 1
 * @param skew bias-corrected, n/((n-1)(n-2)) &Sigma; ((x - mean)/s)&sup3;
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record SampleMoments(int size, double mean, double standardDeviation, double skew) {
    private static final int SMALLEST_SAMPLE = 3;

    /**
     * Checks the ranges.
     *
     * @param size number of values
     * @param mean arithmetic mean
     * @param standardDeviation with divisor n - 1
     * @param skew bias-corrected
     * @throws IllegalArgumentException if the size is below 3, the standard deviation not greater than 0, or a number not finite
     */
    public SampleMoments {
        Require.atLeast("size", size, SMALLEST_SAMPLE);
        Require.finite("mean", mean, "");
        Require.positive("standardDeviation", standardDeviation, "");
        Require.finite("skew", skew, "");
    }

    /**
     * Returns the moments of a sample.
     *
     * @param sample at least 3 values that are not all equal; not modified
     * @return the moments
     * @throws IllegalArgumentException if the sample is too small, not finite or all equal
     */
    public static SampleMoments of(double... sample) {
        int n = sample.length;
        Samples.check(sample, SMALLEST_SAMPLE);
        double mean = 0;
        for (double x : sample) {
            mean += x / n;
        }
        double second = 0;
        double third = 0;
        for (double x : sample) {
            double deviation = x - mean;
            second += deviation * deviation;
            third += deviation * deviation * deviation;
        }
        double sd = Math.sqrt(second / (n - 1));
        if (!(sd > 0)) {
            throw new IllegalArgumentException(
                    "sample must differ by more than its squares can show, sd was " + Text.number(sd));
        }
        return new SampleMoments(n, mean, sd, n * third / ((n - 1.0) * (n - 2.0) * sd * sd * sd));
    }

    @Override
    public String toString() {
        return "SampleMoments[n = " + size + ", mean = " + Text.significant(mean, 6) + ", sd = "
                + Text.significant(standardDeviation, 6) + ", skew = " + Text.significant(skew, 5) + "]";
    }
}
