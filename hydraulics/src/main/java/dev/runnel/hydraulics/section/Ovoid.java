package dev.runnel.hydraulics.section;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * Sections of three tangent arcs: a semicircular crown, two side arcs centred on the springing line, and an invert arc.
 * Eggs stand on a narrow invert, mouth profiles on a wide one.
 *
 * <p>With the crown radius R = width/2, the springing level k = height − R and the invert radius r, tangency gives the
 * side radius
 *
 * <pre>
 * s = (R² − r² + (k − r)²)/(2 (R − r))
 * </pre>
 *
 * from (s − R)² + (k − r)² = (s − r)², the distance of the two centres of circles that touch from inside (plane geometry).
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Ovoid {
    private final double width;
    private final double height;

    private Ovoid(double width, double height) {
        this.width = width;
        this.height = height;
    }

    /**
     * Begins an ovoid with its outer measures; {@link #withInvertRadius} makes it a section.
     *
     * @param width largest width, at the springing line, m; greater than 0
     * @param height height, m; greater than half of the width
     * @return the measures
     * @throws IllegalArgumentException if a measure is out of range
     */
    public static Ovoid ofWidthAndHeight(double width, double height) {
        return new Ovoid(Sizes.closed("width", width), Sizes.closed("height", height));
    }

    /**
     * Returns the section of this width and height.
     *
     * @param invertRadius radius of the invert arc, m; greater than 0, not half of the width
     * @return the section
     * @throws IllegalArgumentException if it is out of range or no side arc touches both crown and invert
     */
    public ProfileSection withInvertRadius(double invertRadius) {
        Sizes.open("invertRadius", invertRadius);
        double crown = width / 2;
        double springing = height - crown;
        double side = (crown * crown - invertRadius * invertRadius + sq(springing - invertRadius))
                / (2 * (crown - invertRadius));
        // The side centre must lie on the springing line, and the arcs meet between invert and springing.
        double ratio = invertRadius / (side - invertRadius);
        double tangentX = (side - crown) * ratio;
        double tangentLevel = invertRadius + (invertRadius - springing) * ratio;
        if (!(springing > 0 && side > 0 && tangentX > 0 && tangentLevel > 0 && tangentLevel < springing)) {
            throw new IllegalArgumentException("no tangent arcs join an invert of radius " + Text.number(invertRadius)
                    + " m with a crown of radius " + Text.number(crown) + " m in a height of " + Text.number(height)
                    + " m");
        }
        return Wall.from(0, 0)
                .arcTo(tangentX, tangentLevel, 0, invertRadius)
                .arcTo(crown, springing, crown - side, springing)
                .arcTo(0, height, 0, springing)
                .mirrored()
                .named("Ovoid");
    }

    private static double sq(double x) {
        return x * x;
    }

    @Override
    public String toString() {
        return "Ovoid[" + Text.significant(width, 6) + " m wide, " + Text.significant(height, 6) + " m high]";
    }
}
