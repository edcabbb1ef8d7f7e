package dev.runnel.hydraulics.section;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;

/** The one rule for the measures of a section: metres, and within what can be built or dug. */
final class Sizes {
    /** A micrometre; chosen here, far below any channel and far above what doubles lose. */
    private static final double LEAST = 1e-6;

    /** A thousand kilometres; chosen here, far above any river. */
    private static final double LARGEST = 1e6;

    /**
     * Bound of a closed section, m; chosen here: far wider than any tunnel, and below nearly every bore
     * in millimetres.
     */
    private static final double LARGEST_CLOSED = 50;

    private static final String IN_METRES = ": sizes are in metres, divide millimetres by 1000";

    private Sizes() {}

    /** A measure of a closed section that is built. */
    static double closed(String name, double value) {
        return closed(name, value, IN_METRES);
    }

    /** A measure of a closed section that is built, with another hint for one who meant millimetres. */
    static double closed(String name, double value, String hint) {
        Require.positive(name, value, "m");
        if (!(value >= LEAST && value <= LARGEST_CLOSED)) {
            throw new IllegalArgumentException(name + " must be in [" + Text.number(LEAST) + ", "
                    + Text.number(LARGEST_CLOSED) + "] m, was " + Text.number(value)
                    + (value > LARGEST_CLOSED ? hint : ""));
        }
        return value;
    }

    /** A measure of an open channel, or of a wall of any kind. */
    static double open(String name, double value) {
        return Require.inRange(name, Require.positive(name, value, "m"), LEAST, LARGEST, "m");
    }

    /** The same, 0 included. */
    static double openOrNone(String name, double value) {
        return Require.nonNegative(name, value, "m") == 0 ? 0 : open(name, value);
    }

    /** A place on a wall, to either side. */
    static double place(String name, double value) {
        return Require.inRange(name, value, -LARGEST, LARGEST, "m");
    }

    /** Centres of flat arcs lie far out. */
    static double centre(String name, double value) {
        return Require.inRange(name, value, -1e3 * LARGEST, 1e3 * LARGEST, "m");
    }
}
