package dev.runnel.hydraulics.section;

import org.apiguardian.api.API;

/**
 * The mouth profile, three quarters as high as wide, for little cover. R is half of the width: crown R, corners 3R/8,
 * invert 2R, height 1.5R. Proportions from memory; they reproduce the full area 2.378 R² and perimeter 5.603 R that are
 * remembered of the standard to all digits.
 *
 * <p>Width and height lie in [1e-6, 50] m.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class MouthSection {
    private MouthSection() {}

    /**
     * Returns the section.
     *
     * @param width largest width 2R, m; greater than 0; the height is 0.75 times the width
     * @return the section
     * @throws IllegalArgumentException if {@code width} is not greater than 0 and finite
     */
    public static ProfileSection ofWidth(double width) {
        Sizes.closed("width", width);
        return Ovoid.ofWidthAndHeight(width, 0.75 * width)
                .withInvertRadius(width)
                .named("MouthSection");
    }
}
