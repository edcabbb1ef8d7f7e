package dev.runnel.hydraulics.section;

import org.apiguardian.api.API;

/**
 * The standard horseshoe, as high as wide: a semicircular crown of radius D/2 and three arcs of radius D for the sides
 * (each centred on the opposite end of the springing line) and the invert (centred at the crown). The lower corners are
 * not rounded.
 *
 * <p>Source: G. P. Merkley, Standard horseshoe cross section geometry, Agricultural Water Management 71 (2005) 61 to 70
 * (the radius of the three larger arcs is the diameter of the upper one).
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Horseshoe {
    private Horseshoe() {}

    /**
     * Returns the section.
     *
     * @param diameter width and height D, m; greater than 0
     * @return the section
     * @throws IllegalArgumentException if {@code diameter} is not greater than 0 and finite
     */
    public static ProfileSection ofDiameter(double diameter) {
        double d = Sizes.closed("diameter", diameter);
        // Where the circles x² + (y − D)² = D² and (x + D/2)² + (y − D/2)² = D² cross: y = (3 − √7)/4 D, x = D/2 − y.
        double corner = d / (2 * (3 + Math.sqrt(7)));
        return Wall.from(0, 0)
                .arcTo(d / 2 - corner, corner, 0, d)
                .arcTo(d / 2, d / 2, -d / 2, d / 2)
                .arcTo(0, d, 0, d / 2)
                .mirrored()
                .named("Horseshoe");
    }
}
