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
    private final double width;
    private final double fall;

    private VInvertSection(double width, double fall) {
        this.width = width;
        this.fall = fall;
    }

    /**
     * Begins a section with the measures of its V; {@link #open} or {@link #coveredAt} makes it a section.
     *
     * @param width clear width, m; greater than 0
     * @param fall height of the V, m; greater than 0
     * @return the measures
     * @throws IllegalArgumentException if a measure is out of range
     */
    public static VInvertSection ofWidthAndFall(double width, double fall) {
        return new VInvertSection(Sizes.open("width", width), Sizes.open("fall", fall));
    }

    /**
     * Returns the section under a level cover.
     *
     * @param height clear height in the middle, m; greater than the fall
     * @return the section
     * @throws IllegalArgumentException if {@code height} is out of range, or the width is that of an open section only
     */
    public ProfileSection coveredAt(double height) {
        Sizes.closed("width", width);
        Sizes.closed("height", height);
        if (!(height > fall)) {
            throw new IllegalArgumentException(
                    "height must be greater than fall, " + Text.number(fall) + " m, was " + Text.number(height));
        }
        return wall(height).mirrored().named("VInvertSection");
    }

    /**
     * Returns the open section.
     *
     * @return the section
     */
    public OpenSection open() {
        return wall(fall + width).mirroredOpen().named("VInvertSection");
    }

    private Wall wall(double top) {
        return Wall.from(0, 0).lineTo(width / 2, fall).lineTo(width / 2, top);
    }

    @Override
    public String toString() {
        return "VInvertSection[" + Text.significant(width, 6) + " m wide, V of " + Text.significant(fall, 6) + " m]";
    }
}
