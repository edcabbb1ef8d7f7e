package dev.runnel.rainfall.internal;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import org.apiguardian.api.API;

/** Checks and conversions of rain records. */
@API(status = API.Status.INTERNAL)
public final class Rain {
    /** Depths nearer than this are equal, mm (chosen here); no gauge tells a thousandth of it. */
    private static final double ROUNDING_MM = 1e-9;

    private Rain() {}

    /**
     * Checks that no value of a rain record is negative.
     *
     * @param name parameter name, for the message
     * @param rain the record, NaN for missing
     * @param unit its unit, for the message
     * @throws IllegalArgumentException if a value is negative; the message names its position and time
     */
    public static void requireNonNegative(String name, RegularSeries rain, String unit) {
        for (int i = 0; i < rain.size(); i++) {
            if (rain.value(i) < 0) {
                throw negative(name, unit, rain.value(i), i, rain.time(i));
            }
        }
    }

    /**
     * Makes the refusal of a negative value.
     *
     * @param name parameter name
     * @param unit unit of the value
     * @param value the value
     * @param index its position
     * @param time its time
     * @return the exception, to be thrown
     */
    public static IllegalArgumentException negative(String name, String unit, double value, long index, Instant time) {
        return new IllegalArgumentException(name + " must be 0 or greater (" + unit + "), or NaN for missing, was "
                + Text.number(value) + " at index " + index + ", " + time);
    }

    /**
     * Tells whether a depth reaches a limit: a sum of tips may lie a rounding beside it.
     *
     * @param depthMm the depth, mm
     * @param limitMm the limit, mm
     * @return true from a billionth of a millimetre below the limit on; false for NaN
     */
    public static boolean reaches(double depthMm, double limitMm) {
        return depthMm >= limitMm - ROUNDING_MM;
    }

    /**
     * Returns a duration in hours, fractions included.
     *
     * @param duration the duration
     * @return h
     */
    public static double hours(Duration duration) {
        return (duration.getSeconds() + duration.getNano() * 1e-9) / 3600;
    }
}
