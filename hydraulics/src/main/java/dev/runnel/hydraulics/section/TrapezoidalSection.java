package dev.runnel.hydraulics.section;

import dev.runnel.internal.Require;
import org.apiguardian.api.API;

/**
 * An open channel with a level bed and sloping walls; with a bed width of 0 a triangle.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class TrapezoidalSection {
    /** Chosen here: flatter than any bank. */
    private static final double LARGEST_SLOPE = 1e4;

    private TrapezoidalSection() {}

    /**
     * Returns the section.
     *
     * @param bedWidth width of the bed, m; 0 or greater
     * @param sideSlope horizontal over vertical of both walls (1.5 for 1.5 : 1); 0 or greater, and greater than 0 if the
     *     bed width is 0
     * @return the section
     * @throws IllegalArgumentException if a measure is out of range
     */
    public static OpenSection ofBedWidthAndSideSlope(double bedWidth, double sideSlope) {
        double half = Sizes.openOrNone("bedWidth", bedWidth) / 2;
        Require.inRange("sideSlope", sideSlope, 0, LARGEST_SLOPE, "");
        if (bedWidth == 0) {
            Require.positive("sideSlope", sideSlope, "");
        }
        return Wall.from(half, 0).lineTo(half + sideSlope, 1).mirroredOpen().named("TrapezoidalSection");
    }
}
