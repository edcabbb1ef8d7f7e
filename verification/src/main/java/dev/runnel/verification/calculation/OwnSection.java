package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.section.CrossSection;

/** A section of a user's own class, which the library can only ask. */
class OwnSection implements CrossSection {
    private final CrossSection shape;

    private OwnSection(CrossSection shape) {
        this.shape = shape;
    }

    /** The same shape, closed if it is closed. */
    static CrossSection of(CrossSection shape) {
        return shape instanceof ClosedSection ? new Closed(shape) : new OwnSection(shape);
    }

    private static final class Closed extends OwnSection implements ClosedSection {
        Closed(CrossSection shape) {
            super(shape);
        }

        @Override
        public ClosedSection withSediment(double bedAboveInvert) {
            return ClosedSection.super.withSediment(bedAboveInvert);
        }

        @Override
        public ClosedSection withoutSediment() {
            return ClosedSection.super.withoutSediment();
        }
    }

    @Override
    public double height() {
        return shape.height();
    }

    @Override
    public double area(double depth) {
        return shape.area(depth);
    }

    @Override
    public double wettedPerimeter(double depth) {
        return shape.wettedPerimeter(depth);
    }

    @Override
    public double topWidth(double depth) {
        return shape.topWidth(depth);
    }

    @Override
    public double centroidDepth(double depth) {
        return shape.centroidDepth(depth);
    }

    @Override
    public double depthForArea(double area) {
        return shape.depthForArea(area);
    }
}
