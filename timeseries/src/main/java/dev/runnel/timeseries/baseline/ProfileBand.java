package dev.runnel.timeseries.baseline;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * What is usual at one time, between two quantiles. Immutable and thread-safe. All three are NaN where the profile has
 * too few days.
 *
 * @param lower lower quantile, in the unit of the readings
 * @param expected median
 * @param upper upper quantile
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ProfileBand(double lower, double expected, double upper) {
    /**
     * Tells whether a value is usual.
     *
     * @param value value in the unit of the readings
     * @return true if it lies in the closed band; false if it or the band is NaN
     */
    public boolean contains(double value) {
        return value >= lower && value <= upper;
    }

    @Override
    public String toString() {
        return "ProfileBand[" + Text.significant(lower, 4) + " to " + Text.significant(upper, 4) + ", expected "
                + Text.significant(expected, 4) + "]";
    }
}
