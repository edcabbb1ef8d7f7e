package dev.runnel.hydraulics.section;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * A U: semicircular invert and upright walls, open or with a level cover.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class USection {
    private USection() {}

    /**
     * Returns the open section.
     *
     * @param width clear width, m; greater than 0
     * @return the section
     * @throws IllegalArgumentException if {@code width} is not greater than 0 and finite
     */
    public static OpenSection open(double width) {
        return wall(Sizes.open("width", width), width).mirroredOpen().named("USection");
    }

    /**
     * Returns the section under a level cover.
     *
     * @param width clear width, m; greater than 0
     * @param height clear height, m; greater than half of the width
     * @return the section
     * @throws IllegalArgumentException if a measure is out of range
     */
    public static ProfileSection covered(double width, double height) {
        Sizes.closed("width", width);
        Sizes.closed("height", height);
        if (!(height > width / 2)) {
            throw new IllegalArgumentException("height must be greater than half of the width, "
                    + Text.number(width / 2) + " m, was " + Text.number(height));
        }
        return wall(width, height).mirrored().named("USection");
    }

    private static Wall wall(double width, double top) {
        double radius = width / 2;
        return Wall.from(0, 0).arcTo(radius, radius, 0, radius).lineTo(radius, top);
    }
}
