package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.section.CrossSection;

/** An open rectangle written down from its definition, so that the tests here lean on no other formula. */
record Box(double width) implements CrossSection {
    @Override
    public double height() {
        return Double.POSITIVE_INFINITY;
    }

    @Override
    public double area(double depth) {
        return width * depth;
    }

    @Override
    public double wettedPerimeter(double depth) {
        return width + 2 * depth;
    }

    @Override
    public double topWidth(double depth) {
        return width;
    }

    @Override
    public double centroidDepth(double depth) {
        return depth / 2;
    }

    @Override
    public double depthForArea(double area) {
        return area / width;
    }
}
