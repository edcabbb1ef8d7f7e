package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;
import org.apiguardian.api.API;

/**
 * The value of a sample that lies furthest from its mean, with what the test of Grubbs says of it: G = |x - mean|/s
 * against (n - 1)/&radic;n &middot; &radic;(t&sup2;/(n - 2 + t&sup2;)), t being the upper &alpha;/(2n) point of Student's
 * t with n - 2 degrees of freedom. Source: Grubbs (1950), Sample criteria for testing outlying observations, Annals of
 * Mathematical Statistics 21(1); the form with t as in Grubbs (1969), Technometrics 11(1).
 *
 * <p>The test holds for a normal sample: ask it of the logarithms of annual maxima. It marks a value for a second look
 * at the record; it is no reason to drop a storm that was measured well.
 *
 * @param index position of the value in the sample
 * @param value the value
 * @param statistic G
 * @param critical G that a normal sample exceeds with probability &alpha;
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Outlier(int index, double value, double statistic, double critical) {
    /**
     * Tests the furthest value of a sample.
     *
     * @param significance &alpha;, two-sided; in (0, 1)
     * @param sample at least 3 values that are not all equal; not modified
     * @return the value if it is an outlier, else empty
     * @throws IllegalArgumentException if the significance is not inside (0, 1), or the sample too small, not finite or
     *     all equal
     */
    public static Optional<Outlier> find(double significance, double... sample) {
        Outlier furthest = furthest(significance, sample);
        return furthest.statistic > furthest.critical ? Optional.of(furthest) : Optional.empty();
    }

    /**
     * Returns the furthest value whether or not it is an outlier.
     *
     * @param significance &alpha;, two-sided; in (0, 1)
     * @param sample at least 3 values that are not all equal; not modified
     * @return the value with its test
     * @throws IllegalArgumentException as {@link #find}
     */
    public static Outlier furthest(double significance, double... sample) {
        Probability.inside("significance", significance);
        SampleMoments moments = SampleMoments.of(sample);
        int at = 0;
        for (int i = 1; i < sample.length; i++) {
            if (Math.abs(sample[i] - moments.mean()) > Math.abs(sample[at] - moments.mean())) {
                at = i;
            }
        }
        int n = sample.length;
        double t = new TDistribution(n - 2).inverseCumulativeProbability(1 - significance / (2 * n));
        double critical = (n - 1) / Math.sqrt(n) * Math.sqrt(t * t / (n - 2 + t * t));
        return new Outlier(
                at, sample[at], Math.abs(sample[at] - moments.mean()) / moments.standardDeviation(), critical);
    }

    @Override
    public String toString() {
        return "Outlier[" + Text.significant(value, 6) + " at index " + index + ", G = "
                + Text.significant(statistic, 4) + ", critical " + Text.significant(critical, 4) + "]";
    }
}
