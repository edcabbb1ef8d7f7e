package dev.runnel.hydraulics.section;

import dev.runnel.internal.Require;

/** The one rule for depths at the limits of a section. */
final class Depths {
    /** Of the height: what a few additions of readings leave behind, and far below any instrument. */
    private static final double ROUNDING = 1e-12;

    private Depths() {}

    /** Returns the depth, moved to the limit if it misses it by rounding only. */
    static double checked(double depth, double height) {
        if (depth >= 0 && depth <= height && depth < Double.POSITIVE_INFINITY) {
            return depth;
        }
        return nearLimit("depth", depth, height, "m");
    }

    /** The same rule for an area in [0, full]. */
    static double checkedArea(double area, double full) {
        if (area >= 0 && area <= full && area < Double.POSITIVE_INFINITY) {
            return area;
        }
        return nearLimit("area", area, full, "m2");
    }

    private static double nearLimit(String name, double value, double limit, String unit) {
        if (Double.isInfinite(limit)) {
            return Require.nonNegative(name, value, unit);
        }
        double slack = ROUNDING * limit;
        if (value < 0 && value >= -slack) {
            return 0;
        }
        if (value > limit && value <= limit + slack) {
            return limit;
        }
        return Require.inRange(name, value, 0, limit, unit);
    }
}
