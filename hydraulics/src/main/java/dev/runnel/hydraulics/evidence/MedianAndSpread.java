package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Statistics;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * The middle of a number of values and how they scatter: the median and the interval that holds the central 68 % of them,
 * from the 16 % to the 84 % quantile (for a normal distribution, mean ± one standard deviation). Immutable and
 * thread-safe.
 *
 * <p>What this is not: a confidence interval of the median. Readings minutes apart are not independent, so no such interval
 * follows from their number.
 *
 * @param median the value that half of them do not exceed
 * @param lower the value that 16 % of them do not exceed
 * @param upper the value that 84 % of them do not exceed
 * @param count number of values; at least 1
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record MedianAndSpread(double median, double lower, double upper, int count) {
    private static final double LOWER_SHARE = 0.16;
    private static final double UPPER_SHARE = 0.84;
    private static final int DIGITS = 4;

    /**
     * Checks the order.
     *
     * @param median the value that half of them do not exceed
     * @param lower the value that 16 % of them do not exceed
     * @param upper the value that 84 % of them do not exceed
     * @param count number of values; at least 1
     * @throws IllegalArgumentException if not lower ≤ median ≤ upper, or the count is less than 1
     */
    public MedianAndSpread {
        if (!(lower <= median && median <= upper)) {
            throw new IllegalArgumentException("values must be in the order lower <= median <= upper, were "
                    + Text.number(lower) + ", " + Text.number(median) + ", " + Text.number(upper));
        }
        if (count < 1) {
            throw new IllegalArgumentException("count must be at least 1, was " + count);
        }
    }

    /**
     * Returns the spread of some values.
     *
     * @param values values, NaN for missing; not modified
     * @return the spread; empty if no value is there
     */
    public static Optional<MedianAndSpread> of(double[] values) {
        Objects.requireNonNull(values, "values");
        Statistics statistics = Statistics.of(values);
        if (statistics.count() == 0) {
            return Optional.empty();
        }
        return Optional.of(new MedianAndSpread(
                statistics.median(),
                statistics.quantile(LOWER_SHARE),
                statistics.quantile(UPPER_SHARE),
                statistics.count()));
    }

    @Override
    public String toString() {
        return "MedianAndSpread[" + Text.significant(median, DIGITS) + ", central 68 % "
                + Text.significant(lower, DIGITS) + " to " + Text.significant(upper, DIGITS) + ", " + count
                + " values]";
    }
}
