package dev.runnel.hydraulics.monitoring;

import dev.runnel.hydraulics.section.CrossSection;

/**
 * The part of a section above a flat sediment bed, for any level: above the soffit it is the whole part. Levels count from
 * the invert and the section may be open, unlike in {@link dev.runnel.hydraulics.section.SedimentSection}; for a circle the
 * difference of two areas is also the faster way.
 */
final class FlowArea {
    private final CrossSection section;
    private final double bed;
    private final double bedArea;
    private final double bedPerimeter;
    private final double bedWidth;

    FlowArea(CrossSection section, double bed) {
        this.section = section;
        this.bed = bed;
        this.bedArea = section.area(bed);
        this.bedPerimeter = section.wettedPerimeter(bed);
        // Without sediment the floor of the section itself is the bed, and its perimeter counts it already.
        this.bedWidth = bed == 0 ? 0 : section.topWidth(bed);
    }

    /** Area between bed and level, m²; 0 at or below the bed. */
    double area(double level) {
        // The difference of two rounded areas may fall below 0 just above the bed; an area cannot.
        return level <= bed ? 0 : Math.max(0, section.area(inSection(level)) - bedArea);
    }

    /** Width of the water surface, m: how fast the area grows with the level; 0 above the soffit. */
    double topWidth(double level) {
        return level <= bed || level > section.height() ? 0 : section.topWidth(level);
    }

    /** Area over wetted perimeter, the bed counted as wetted, m; 0 at or below the bed. */
    double hydraulicRadius(double level) {
        double area = area(level);
        return area == 0 ? 0 : area / (section.wettedPerimeter(inSection(level)) - bedPerimeter + bedWidth);
    }

    /**
     * How the area grows when the whole section grows in proportion and level and bed stay, m: from A = H² a(y/H) follows
     * ∂A/∂H = (2 A − y T) / H.
     */
    double growthWithHeight(double level) {
        if (level <= bed) {
            return 0;
        }
        double depth = inSection(level);
        double width = level > section.height() ? 0 : section.topWidth(depth);
        return (2 * section.area(depth) - depth * width - (2 * bedArea - bed * bedWidth)) / section.height();
    }

    private double inSection(double level) {
        return Math.min(level, section.height());
    }
}
