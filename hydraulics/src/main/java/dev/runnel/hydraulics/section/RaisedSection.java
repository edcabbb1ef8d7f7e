package dev.runnel.hydraulics.section;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/** Any section above a level bed, by differences. */
final class RaisedSection implements CrossSection {
    private final CrossSection clean;
    private final double bed;
    private final double bedArea;
    private final double bedMoment;
    /** +∞ for an open section. */
    private final double cleanArea;

    RaisedSection(CrossSection clean, double bed) {
        this.clean = clean;
        this.bed = bed;
        this.bedArea = clean.area(bed);
        this.bedMoment = bedArea * clean.centroidDepth(bed);
        this.cleanArea = clean instanceof ClosedSection closed ? closed.fullArea() : Double.POSITIVE_INFINITY;
    }

    @Override
    public double height() {
        return clean.height() - bed;
    }

    private double level(double depth) {
        return Math.min(bed + Depths.checked(depth, height()), clean.height());
    }

    @Override
    public double area(double depth) {
        return Math.max(clean.area(level(depth)) - bedArea, 0);
    }

    @Override
    public double wettedPerimeter(double depth) {
        if (depth == 0) {
            return 0;
        }
        double level = level(depth);
        return clean.topWidth(bed) + clean.wettedPerimeter(level) - clean.wettedPerimeter(bed);
    }

    @Override
    public double topWidth(double depth) {
        return clean.topWidth(level(depth));
    }

    @Override
    public double centroidDepth(double depth) {
        double area = area(depth);
        if (area == 0) {
            return 0;
        }
        double level = level(depth);
        // The moment of what lies under the bed is taken away: its own, and its area times the lift.
        double moment = clean.area(level) * clean.centroidDepth(level) - bedMoment - bedArea * (level - bed);
        return moment / area;
    }

    @Override
    public double depthForArea(double area) {
        double checked = Depths.checkedArea(area, cleanArea - bedArea);
        return Math.max(clean.depthForArea(Math.min(checked + bedArea, cleanArea)) - bed, 0);
    }

    @Override
    public double[] breakDepths() {
        DoubleStream inner = Arrays.stream(clean.breakDepths())
                .filter(level -> level > bed && level < clean.height())
                .map(level -> level - bed);
        DoubleStream top = Double.isInfinite(height()) ? DoubleStream.empty() : DoubleStream.of(height());
        return DoubleStream.concat(DoubleStream.concat(DoubleStream.of(0), inner), top)
                .toArray();
    }
}
