package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.section.CrossSection;
import java.util.concurrent.atomic.AtomicInteger;

/** A section of a user's own class, which the library can only ask; it counts how often its area is. */
class OwnSection implements CrossSection {
    private final CrossSection shape;
    private final AtomicInteger asked = new AtomicInteger();

    private OwnSection(CrossSection shape) {
        this.shape = shape;
    }

    /** The same shape, closed if it is closed. */
    static OwnSection of(CrossSection shape) {
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

    /** How often the area was asked for. */
    int asked() {
        return asked.get();
    }

    @Override
    public double area(double depth) {
        asked.incrementAndGet();
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
