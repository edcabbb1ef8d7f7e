package dev.runnel.hydraulics.section;

/** What open and closed sections of arcs and straight pieces share: a name and the outline that computes everything. */
abstract class OutlinedSection implements CrossSection {
    final String name;
    final Outline outline;

    OutlinedSection(String name, Outline outline) {
        this.name = name;
        this.outline = outline;
    }

    /** The same shape above a level bed, its depths counted from there. */
    abstract OutlinedSection above(double level);

    @Override
    public final double height() {
        return outline.height();
    }

    @Override
    public final double area(double depth) {
        return outline.area(Depths.checked(depth, height()));
    }

    @Override
    public final double wettedPerimeter(double depth) {
        return outline.perimeter(Depths.checked(depth, height()));
    }

    @Override
    public final double topWidth(double depth) {
        return outline.width(Depths.checked(depth, height()));
    }

    @Override
    public final double centroidDepth(double depth) {
        return outline.centroidDepth(Depths.checked(depth, height()));
    }

    @Override
    public final double depthForArea(double area) {
        return outline.depthForArea(Depths.checkedArea(area, outline.fullArea()));
    }

    @Override
    public final double[] breakDepths() {
        return outline.breaks();
    }

    @Override
    public final boolean equals(Object other) {
        return other instanceof OutlinedSection that
                && getClass() == that.getClass()
                && name.equals(that.name)
                && outline.equals(that.outline);
    }

    @Override
    public final int hashCode() {
        return outline.hashCode();
    }
}
