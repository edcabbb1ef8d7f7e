package dev.runnel.hydraulics.internal;

import dev.runnel.internal.Require;
import org.apiguardian.api.API;

/** The sizes that this library takes: nothing built is smaller or larger, and no formula overflows in between. */
@API(status = API.Status.INTERNAL)
public final class Sizes {
    /** Smallest length, m. */
    public static final double LEAST = 1e-6;

    /** Greatest length, m. */
    public static final double GREATEST = 1e6;

    private Sizes() {}

    /**
     * Returns a length that something built may have.
     *
     * @param name parameter name, for the message
     * @param length the length, m
     * @return {@code length}
     * @throws IllegalArgumentException if it is outside [1e-6, 1e6] m or NaN
     */
    public static double length(String name, double length) {
        return Require.inRange(name, length, LEAST, GREATEST, "m");
    }

    /**
     * Returns a length that may also be 0.
     *
     * @param name parameter name, for the message
     * @param length the length, m
     * @return {@code length}
     * @throws IllegalArgumentException if it is outside [0, 1e6] m or NaN
     */
    public static double lengthOrNone(String name, double length) {
        return Require.inRange(name, length, 0, GREATEST, "m");
    }
}
