package dev.runnel.hydraulics.section;

import org.apiguardian.api.API;

/**
 * An arch: level invert, upright walls and a semicircular crown.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class ArchSection {
    private ArchSection() {}

    /**
     * Returns the section.
     *
     * @param width clear width, m; greater than 0
     * @param wallHeight height of the upright walls, m; 0 or greater; the section is half a width higher
     * @return the section
     * @throws IllegalArgumentException if a measure is out of range
     */
    public static ProfileSection of(double width, double wallHeight) {
        double half = Sizes.closed("width", width) / 2;
        Sizes.openOrNone("wallHeight", wallHeight);
        Wall wall = Wall.from(half, 0);
        if (wallHeight > 0) {
            wall = wall.lineTo(half, wallHeight);
        }
        return wall.arcTo(0, wallHeight + half, 0, wallHeight).mirrored().named("ArchSection");
    }
}
