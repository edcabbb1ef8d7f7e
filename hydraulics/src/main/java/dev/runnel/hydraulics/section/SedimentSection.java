package dev.runnel.hydraulics.section;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;

/** A section above a level bed of sediment; depths count from the bed. */
class SedimentSection implements CrossSection {
    private final CrossSection clean;
    private final double bed;
    private final CrossSection above;

    private SedimentSection(CrossSection clean, double bed, CrossSection above) {
        this.clean = clean;
        this.bed = bed;
        this.above = above;
    }

    /**
     * Returns a section with sediment in it, closed if the clean one is. Circles and outlines are cut exactly; for others
     * the geometry is the difference of that below the surface and that below the bed, good to 1e-15 of the full section.
     */
    static CrossSection of(CrossSection clean, double bedAboveInvert) {
        if (clean.bedAboveInvert() > 0) {
            throw new IllegalStateException("the section has a bed already, " + Text.number(clean.bedAboveInvert())
                    + " m above its invert (withoutSediment() takes it out): " + clean);
        }
        Require.nonNegative("bedAboveInvert", bedAboveInvert, "m");
        if (bedAboveInvert >= clean.height()) {
            throw new IllegalArgumentException("bedAboveInvert must be below the soffit at "
                    + Text.number(clean.height()) + " m, was " + Text.number(bedAboveInvert));
        }
        if (bedAboveInvert == 0) {
            return clean;
        }
        return clean instanceof ClosedSection closed
                ? new Closed(closed, bedAboveInvert)
                : new SedimentSection(clean, bedAboveInvert, cut(clean, bedAboveInvert));
    }

    private static CrossSection cut(CrossSection clean, double bed) {
        if (clean instanceof OutlinedSection outlined) {
            return outlined.above(bed);
        }
        if (clean instanceof CircularSection circle) {
            double radius = circle.diameter() / 2;
            return Wall.from(0, 0)
                    .arcTo(0, circle.diameter(), 0, radius)
                    .mirrored()
                    .above(bed);
        }
        return new RaisedSection(clean, bed);
    }

    @Override
    public CrossSection withoutSediment() {
        return clean;
    }

    @Override
    public double bedAboveInvert() {
        return bed;
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
        return other instanceof SedimentSection that && clean.equals(that.clean) && Double.compare(bed, that.bed) == 0;
    }

    @Override
    public int hashCode() {
        return 31 * clean.hashCode() + Double.hashCode(bed);
    }

    @Override
    public String toString() {
        return clean + " above " + Text.significant(bed, 6) + " m of sediment";
    }

    /** One that has a soffit and can run full. */
    private static final class Closed extends SedimentSection implements ClosedSection {
        private final ClosedSection clean;

        Closed(ClosedSection clean, double bed) {
            super(clean, bed, cut(clean, bed));
            this.clean = clean;
        }

        @Override
        public ClosedSection withSediment(double bedAboveInvert) {
            return ClosedSection.super.withSediment(bedAboveInvert);
        }

        @Override
        public ClosedSection withoutSediment() {
            return clean;
        }
    }
}
