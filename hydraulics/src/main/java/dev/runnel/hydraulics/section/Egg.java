package dev.runnel.hydraulics.section;

import org.apiguardian.api.API;

/**
 * Egg-shaped sections, in the classic proportions. R is half of the width.
 *
 * <p>Source: handbook chapter on water supply and drainage, scan TIB 1888293519, pages 164 and 165 (in the manner of
 * Lueger and Weyrauch, Wasserversorgung der Städte): normal, widened and depressed egg, whose radii reproduce the full
 * area and perimeter printed there to five decimals; Encyclopaedia Britannica, 11th edition, "Hydraulics", section 111,
 * for the normal egg. The sharp egg is from memory.
 *
 * <p>Width and height lie in [1e-6, 50] m, and no radius is below 1e-6 m.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Egg {
    private Egg() {}

    /**
     * Returns the normal egg, height 3R: crown R, sides 3R, invert R/2.
     *
     * @param width largest width 2R, m; greater than 0; the height is 1.5 times the width
     * @return the section
     * @throws IllegalArgumentException if {@code width} is not greater than 0 and finite
     */
    public static ProfileSection normal(double width) {
        double r = half(width);
        return Ovoid.ofWidthAndHeight(width, 3 * r).withInvertRadius(r / 2).named("Egg.normal");
    }

    /**
     * Returns the widened egg, height (3/2 + √3/2) R = 2.366 R: crown R, sides 1.5R, invert R/2.
     *
     * @param width largest width 2R, m; greater than 0
     * @return the section
     * @throws IllegalArgumentException if {@code width} is not greater than 0 and finite
     */
    public static ProfileSection widened(double width) {
        double r = half(width);
        return Ovoid.ofWidthAndHeight(width, (1.5 + Math.sqrt(3) / 2) * r)
                .withInvertRadius(r / 2)
                .named("Egg.widened");
    }

    /**
     * Returns the depressed egg, height (1 + 1/√2) R = 1.707 R: crown R, sides R/2, invert (1/2 + 1/√2) R.
     *
     * @param width largest width 2R, m; greater than 0
     * @return the section
     * @throws IllegalArgumentException if {@code width} is not greater than 0 and finite
     */
    public static ProfileSection depressed(double width) {
        double r = half(width);
        return Ovoid.ofWidthAndHeight(width, (1 + Math.sqrt(0.5)) * r)
                .withInvertRadius((0.5 + Math.sqrt(0.5)) * r)
                .named("Egg.depressed");
    }

    /**
     * Returns the sharp egg, height 3R: crown R, sides 8R/3, invert R/4. It scours better at small flows than the normal
     * egg. Proportions from memory.
     *
     * @param width largest width 2R, m; greater than 0; the height is 1.5 times the width
     * @return the section
     * @throws IllegalArgumentException if {@code width} is not greater than 0 and finite
     */
    public static ProfileSection sharp(double width) {
        double r = half(width);
        return Ovoid.ofWidthAndHeight(width, 3 * r).withInvertRadius(r / 4).named("Egg.sharp");
    }

    /**
     * Returns the normal egg standing on its wide end.
     *
     * @param width largest width 2R, m; greater than 0; the height is 1.5 times the width
     * @return the section
     * @throws IllegalArgumentException if {@code width} is not greater than 0 and finite
     */
    public static ProfileSection inverted(double width) {
        double r = half(width);
        // The tangent point of invert R/2 and side 3R lies 0.4 R beside and 0.2 R above the thin end.
        return Wall.from(0, 0)
                .arcTo(r, r, 0, r)
                .arcTo(0.4 * r, 2.8 * r, -2 * r, r)
                .arcTo(0, 3 * r, 0, 2.5 * r)
                .mirrored()
                .named("Egg.inverted");
    }

    private static double half(double width) {
        return Sizes.closed("width", width) / 2;
    }
}
