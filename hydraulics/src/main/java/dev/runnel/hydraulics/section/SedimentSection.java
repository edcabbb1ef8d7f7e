package dev.runnel.hydraulics.section;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * A closed section with a level bed of sediment. <b>Depths count from the bed</b>: level 0 is its surface, the height is
 * what is left below the soffit, and the bed belongs to the wetted perimeter. Immutable and thread-safe.
 *
 * <p>The bed does not move, slope or let water through.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class SedimentSection implements ClosedSection {
    private final ClosedSection clean;
    private final double sedimentDepth;
    private final ClosedSection above;

    private SedimentSection(ClosedSection clean, double sedimentDepth, ClosedSection above) {
        this.clean = clean;
        this.sedimentDepth = sedimentDepth;
        this.above = above;
    }

    /**
     * Returns a section with sediment in it. Circular and profile sections are cut exactly; for others the geometry above
     * the bed is the difference of that below the surface and that below the bed, good to 1e-15 of the full section.
     *
     * @param clean the section without sediment
     * @param depth depth of the sediment above the invert, m; in (0, height)
     * @return the section above the bed
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public static SedimentSection of(ClosedSection clean, double depth) {
        Require.positive("sediment depth", depth, "m");
        if (!(depth < clean.height())) {
            throw new IllegalArgumentException("sediment depth must be below the soffit at "
                    + Text.number(clean.height()) + " m, was " + Text.number(depth));
        }
        ClosedSection above;
        if (clean instanceof CircularSection circle) {
            double radius = circle.diameter() / 2;
            above = Wall.from(0, 0)
                    .arcTo(0, circle.diameter(), 0, radius)
                    .mirrored()
                    .above(depth);
        } else if (clean instanceof ProfileSection profile) {
            above = profile.above(depth);
        } else {
            above = new RaisedSection(clean, depth);
        }
        return new SedimentSection(clean, depth, above);
    }

    /**
     * Returns the section without sediment.
     *
     * @return the clean section
     */
    public ClosedSection clean() {
        return clean;
    }

    /**
     * Returns the depth of the sediment.
     *
     * @return depth of the bed above the invert, m
     */
    public double sedimentDepth() {
        return sedimentDepth;
    }

    /**
     * Returns the width of the bed.
     *
     * @return width, m
     */
    public double bedWidth() {
        return above.topWidth(0);
    }

    @Override
    public double height() {
        return above.height();
    }

    @Override
    public double area(double depth) {
        return above.area(depth);
    }

    @Override
    public double wettedPerimeter(double depth) {
        return above.wettedPerimeter(depth);
    }

    @Override
    public double topWidth(double depth) {
        return above.topWidth(depth);
    }

    @Override
    public double centroidDepth(double depth) {
        return above.centroidDepth(depth);
    }

    @Override
    public double depthForArea(double area) {
        return above.depthForArea(area);
    }

    @Override
    public double[] breakDepths() {
        return above.breakDepths();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SedimentSection
                && clean.equals(((SedimentSection) other).clean)
                && Double.compare(sedimentDepth, ((SedimentSection) other).sedimentDepth) == 0;
    }

    @Override
    public int hashCode() {
        return 31 * clean.hashCode() + Double.hashCode(sedimentDepth);
    }

    @Override
    public String toString() {
        return clean + " above " + Text.number(sedimentDepth) + " m of sediment";
    }
}
