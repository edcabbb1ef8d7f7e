package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.section.CrossSection;

/** A section of a user's own class, which the library can only ask. */
record OwnSection(CrossSection shape) implements CrossSection {
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
