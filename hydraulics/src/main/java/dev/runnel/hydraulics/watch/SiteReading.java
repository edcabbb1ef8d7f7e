package dev.runnel.hydraulics.watch;

import dev.runnel.internal.Text;
import java.time.Instant;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What a site says at one moment: depth, velocity and rain, each of which may be missing. Immutable and thread-safe.
 *
 * <p>Depth and velocity are the readings as the sensors give them, before offset and velocity factor. A site without
 * velocity sensor or rain gauge always says NaN there.
 *
 * @param time the moment
 * @param depth depth reading, m, or NaN
 * @param velocity velocity reading, m/s, negative upstream, or NaN
 * @param rain rain that has fallen since the reading before, mm, or NaN if it is not known
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record SiteReading(Instant time, double depth, double velocity, double rain) {
    /**
     * Checks the values.
     *
     * @param time the moment
     * @param depth depth reading, m; not infinite
     * @param velocity velocity reading, m/s; not infinite
     * @param rain rain since the reading before, mm; 0 or greater, or NaN
     * @throws IllegalArgumentException if a value is infinite or the rain negative
     */
    public SiteReading {
        Objects.requireNonNull(time, "time");
        notInfinite("depth", depth, "m");
        notInfinite("velocity", velocity, "m/s");
        notInfinite("rain", rain, "mm");
        if (rain < 0) {
            throw new IllegalArgumentException("rain must be 0 or greater, or NaN, was " + Text.number(rain) + " mm");
        }
    }

    private static void notInfinite(String name, double value, String unit) {
        if (Double.isInfinite(value)) {
            throw new IllegalArgumentException(
                    name + " must be finite, or NaN for missing, was " + Text.number(value) + " " + unit);
        }
    }
}
