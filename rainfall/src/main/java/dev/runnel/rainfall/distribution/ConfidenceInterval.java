package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * An estimate with its limits of confidence. A plain result.
 *
 * @param estimate the estimate
 * @param lower lower limit; negative infinity if there is none
 * @param upper upper limit; positive infinity if there is none
 * @param confidence probability with which such limits hold the truth; in (0, 1)
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ConfidenceInterval(double estimate, double lower, double upper, double confidence) {
    /**
     * Checks the order.
     *
     * @param estimate the estimate
     * @param lower lower limit
     * @param upper upper limit
     * @param confidence probability with which such limits hold the truth
     * @throws IllegalArgumentException if the lower limit is above the upper one or the confidence is not inside (0, 1)
     */
    public ConfidenceInterval {
        Probability.inside("confidence", confidence);
        if (!(lower <= upper)) {
            throw new IllegalArgumentException(
                    "lower must be at most upper, were " + Text.number(lower) + " and " + Text.number(upper));
        }
    }

    /**
     * Tells whether the limits hold a value.
     *
     * @param value the value
     * @return true if it lies between them or on one
     */
    public boolean contains(double value) {
        return value >= lower && value <= upper;
    }

    /**
     * Returns the interval in a sentence.
     *
     * @return for example {@code 10, 90 % between 6 and 31}
     */
    public String toText() {
        return Text.significant(estimate, 3) + ", " + Text.significant(100 * confidence, 3) + " % between "
                + Text.significant(lower, 3) + " and " + Text.significant(upper, 3);
    }

    @Override
    public String toString() {
        return "ConfidenceInterval[" + toText() + "]";
    }
}
