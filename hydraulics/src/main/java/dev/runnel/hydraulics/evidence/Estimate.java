package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * A figure with the interval it lies in. Immutable and thread-safe.
 *
 * @param value the figure
 * @param lower lower end of the interval; not above {@code value}
 * @param upper upper end of the interval; not below {@code value}
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Estimate(double value, double lower, double upper) {
    private static final int DIGITS = 4;

    /**
     * Checks the order.
     *
     * @param value the figure
     * @param lower lower end of the interval
     * @param upper upper end of the interval
     * @throws IllegalArgumentException if not lower ≤ value ≤ upper
     */
    public Estimate {
        Require.inRange("value", value, lower, upper, "");
    }

    /**
     * Tells whether a figure lies in the interval.
     *
     * @param figure the figure, for example 0 for a bias or 1 for a ratio
     * @return true if it is neither below the lower end nor above the upper
     */
    public boolean holds(double figure) {
        return figure >= lower && figure <= upper;
    }

    @Override
    public String toString() {
        return "Estimate[" + Text.significant(value, DIGITS) + ", " + Text.significant(lower, DIGITS) + " to "
                + Text.significant(upper, DIGITS) + "]";
    }
}
