package dev.runnel.hydraulics.section;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * A box whose floor falls from both walls to a V in the middle, or the same without a cover.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class VInvertSection {
    private VInvertSection() {}

    /**
     * Returns the section under a level cover.
     *
     * @param width clear width, m; greater than 0
     * @param fall height of the V, m; greater than 0
     * @param height clear height in the middle, m; greater than {@code fall}
     * @return the section
     * @throws IllegalArgumentException if a measure is out of range
     */
    public static ProfileSection covered(double width, double fall, double height) {
        Sizes.closed("width", width);
        Sizes.closed("height", height);
        if (!(height > fall && height < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "height must be greater than fall, " + Text.number(fall) + " m, was " + Text.number(height));
        }
        return wall(width, fall, height).mirrored().named("VInvertSection");
    }

    /**
     * Returns the open section.
     *
     * @param width clear width, m; greater than 0
     * @param fall height of the V, m; greater than 0
     * @return the section
     * @throws IllegalArgumentException if a measure is out of range
     */
    public static OpenSection open(double width, double fall) {
        return wall(width, fall, fall + 1).mirroredOpen().named("VInvertSection");
    }

    private static Wall wall(double width, double fall, double top) {
        double half = Sizes.open("width", width) / 2;
        Sizes.open("fall", fall);
        return Wall.from(0, 0).lineTo(half, fall).lineTo(half, top);
    }
}
