package dev.runnel.timeseries.balance;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import org.apiguardian.api.API;

/**
 * One discharge of an overflow. Immutable and thread-safe.
 *
 * @param interval when; not empty
 * @param volume how much, m³; NaN if it is not known
 * @param isCertain false if it may not have been one: a suspect reading, a level only just above the crest
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Discharge(Interval interval, double volume, boolean isCertain) {
    /**
     * Checks the parts.
     *
     * @param interval when
     * @param volume how much, m³
     * @param isCertain false if it may not have been one
     * @throws IllegalArgumentException if the interval is empty or the volume negative or infinite
     */
    public Discharge {
        if (interval.isEmpty()) {
            throw new IllegalArgumentException("discharge must not be empty, was " + interval);
        }
        if (volume < 0 || Double.isInfinite(volume)) {
            throw new IllegalArgumentException(
                    "volume must be 0 or greater and finite (m3), or NaN, was " + Text.number(volume));
        }
    }

    /**
     * Returns a certain discharge of unknown volume.
     *
     * @param interval when; not empty
     * @return the discharge
     * @throws IllegalArgumentException if the interval is empty
     */
    public static Discharge of(Interval interval) {
        return new Discharge(interval, Double.NaN, true);
    }

    /**
     * Returns the discharge with its volume.
     *
     * @param volume m³; 0 or greater
     * @return the new discharge
     * @throws IllegalArgumentException if it is negative or infinite
     */
    public Discharge withVolume(double volume) {
        return new Discharge(interval, volume, isCertain);
    }

    /**
     * Returns the discharge as one that may not have been one.
     *
     * @return the new discharge
     */
    public Discharge asUncertain() {
        return new Discharge(interval, volume, false);
    }

    @Override
    public String toString() {
        return "Discharge[" + interval + (Double.isNaN(volume) ? "" : ", " + Text.significant(volume, 6) + " m3")
                + (isCertain ? "" : ", not certain") + "]";
    }
}
