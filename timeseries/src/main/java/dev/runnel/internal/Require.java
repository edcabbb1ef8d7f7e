package dev.runnel.internal;

import org.apiguardian.api.API;

/**
 * Argument checks with one wording: name, allowed range, unit, value. Every condition is written so that NaN fails it.
 */
@API(status = API.Status.INTERNAL)
public final class Require {
    private Require() {}

    /**
     * Returns the value if it is finite.
     *
     * @param name parameter name, for the message
     * @param value the value
     * @param unit unit of the value, empty for a pure number
     * @return {@code value}
     * @throws IllegalArgumentException if it is infinite or NaN
     */
    public static double finite(String name, double value, String unit) {
        if (!Double.isFinite(value)) {
            throw refused(name, "finite", unit, value);
        }
        return value;
    }

    /**
     * Returns the value if it is finite and greater than 0.
     *
     * @param name parameter name, for the message
     * @param value the value
     * @param unit unit of the value, empty for a pure number
     * @return {@code value}
     * @throws IllegalArgumentException if it is not
     */
    public static double positive(String name, double value, String unit) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw refused(name, "greater than 0 and finite", unit, value);
        }
        return value;
    }

    /**
     * Returns the value if it is finite and 0 or greater.
     *
     * @param name parameter name, for the message
     * @param value the value
     * @param unit unit of the value, empty for a pure number
     * @return {@code value}
     * @throws IllegalArgumentException if it is not
     */
    public static double nonNegative(String name, double value, String unit) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw refused(name, "0 or greater and finite", unit, value);
        }
        return value;
    }

    /**
     * Returns the value if it lies in the closed range.
     *
     * @param name parameter name, for the message
     * @param value the value
     * @param from lowest allowed value
     * @param to highest allowed value
     * @param unit unit of the value, empty for a pure number
     * @return {@code value}
     * @throws IllegalArgumentException if it is outside [from, to] or NaN
     */
    public static double inRange(String name, double value, double from, double to, String unit) {
        if (!(value >= from && value <= to)) {
            throw new IllegalArgumentException(name + " must be in [" + Text.number(from) + ", " + Text.number(to) + "]"
                    + unitText(unit) + ", was " + Text.number(value));
        }
        return value;
    }

    /**
     * Returns the value if it is at least the given least value.
     *
     * @param name parameter name, for the message
     * @param value the value
     * @param least lowest allowed value
     * @return {@code value}
     * @throws IllegalArgumentException if it is smaller
     */
    public static int atLeast(String name, int value, int least) {
        if (value < least) {
            throw new IllegalArgumentException(name + " must be at least " + least + ", was " + value);
        }
        return value;
    }

    /**
     * Checks that two arrays have the same length.
     *
     * @param name name of the second array, for the message
     * @param expected length of the first
     * @param actual length of the second
     * @throws IllegalArgumentException if they differ
     */
    public static void sameLength(String name, int expected, int actual) {
        if (expected != actual) {
            throw new IllegalArgumentException(name + " must have length " + expected + ", was " + actual);
        }
    }

    private static IllegalArgumentException refused(String name, String allowed, String unit, double value) {
        return new IllegalArgumentException(name + " must be " + allowed + (unit.isEmpty() ? "" : " (" + unit + ")")
                + ", was " + Text.number(value));
    }

    private static String unitText(String unit) {
        return unit.isEmpty() ? "" : " " + unit;
    }
}
