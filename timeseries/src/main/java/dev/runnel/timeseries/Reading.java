package dev.runnel.timeseries;

import dev.runnel.internal.Text;
import java.time.Instant;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * One reading. Immutable and thread-safe.
 *
 * @param time when it was taken
 * @param value the value in the unit of its series; NaN if and only if the quality is {@link Quality#MISSING}
 * @param quality how far it can be relied on
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Reading(Instant time, double value, Quality quality) {
    /**
     * Checks that value and quality agree.
     *
     * @param time when it was taken
     * @param value the value
     * @param quality how far it can be relied on
     * @throws IllegalArgumentException if the value is infinite, or NaN without MISSING, or MISSING without NaN
     */
    public Reading {
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(quality, "quality");
        check(value, quality);
    }

    /**
     * Returns an unchecked reading, or a missing one if the value is NaN.
     *
     * @param time when it was taken
     * @param value the value, or NaN for none
     * @return the reading
     * @throws IllegalArgumentException if the value is infinite
     */
    public static Reading of(Instant time, double value) {
        return new Reading(time, value, Double.isNaN(value) ? Quality.MISSING : Quality.UNCHECKED);
    }

    /**
     * Tells whether there is no value.
     *
     * @return true if the value is NaN
     */
    public boolean isMissing() {
        return Double.isNaN(value);
    }

    static void check(double value, Quality quality) {
        if (Double.isInfinite(value)) {
            throw new IllegalArgumentException("value must be finite, or NaN for missing, was " + Text.number(value));
        }
        if (Double.isNaN(value) != (quality == Quality.MISSING)) {
            throw new IllegalArgumentException("quality must be MISSING if and only if value is NaN, was " + quality
                    + " with value " + Text.number(value));
        }
    }

    @Override
    public String toString() {
        return time + " " + Text.number(value) + " " + quality.toText();
    }
}
