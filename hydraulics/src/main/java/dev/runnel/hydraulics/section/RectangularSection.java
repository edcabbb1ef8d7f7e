package dev.runnel.hydraulics.section;

import org.apiguardian.api.API;

/**
 * A rectangle: an open channel or a box.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class RectangularSection {
    private RectangularSection() {}

    /**
     * Returns the open channel.
     *
     * @param width clear width, m; greater than 0
     * @return the section
     * @throws IllegalArgumentException if {@code width} is not greater than 0 and finite
     */
    public static OpenSection open(double width) {
        double half = Sizes.open("width", width) / 2;
        return Wall.from(half, 0).lineTo(half, 1).mirroredOpen().named("RectangularSection");
    }

    /**
     * Returns the box. Full, its level soffit is wet too; it carries most just below full.
     *
     * @param width clear width, m; greater than 0
     * @param height clear height, m; greater than 0
     * @return the section
     * @throws IllegalArgumentException if a measure is not greater than 0 and finite
     */
    public static ProfileSection box(double width, double height) {
        double half = Sizes.closed("width", width) / 2;
        Sizes.closed("height", height);
        return Wall.from(half, 0).lineTo(half, height).mirrored().named("RectangularSection");
    }
}
