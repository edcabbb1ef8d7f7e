package dev.runnel.examples.pages;

import dev.runnel.hydraulics.section.CrossSection;
import java.util.OptionalDouble;

/** The outline of a section, with its bed and, if one is given, the water in it. */
public final class SectionFigure {
    private static final double WIDTH = 440;
    private static final double SIZE = 200;
    private static final double TOP = 30;
    private static final int LINES = 120;

    private SectionFigure() {}

    /**
     * Draws the figure.
     *
     * @param section the section; it is drawn as wide at each height as it says, about an upright axis
     * @param depth depth of the water above the bed, m; empty for none
     * @return SVG
     */
    public static String of(CrossSection section, OptionalDouble depth) {
        CrossSection whole = section.withoutSediment();
        boolean isOpen = !Double.isFinite(whole.height());
        double top = isOpen ? Math.max(1, 1.5 * depth.orElse(1)) : whole.height();
        double widest = 0;
        for (int i = 0; i <= LINES; i++) {
            widest = Math.max(widest, whole.topWidth(top * i / LINES));
        }
        double scale = SIZE / Math.max(top, widest);
        double bottom = TOP + SIZE;
        Svg svg = Svg.of(WIDTH, bottom + 40, "Section", "Outline of the section, its bed and the water in it");
        double bed = section.bedAboveInvert();
        if (bed > 0) {
            svg.path("bed", strip(whole, 0, bed, scale, bottom));
        }
        if (depth.isPresent() && depth.getAsDouble() > 0) {
            double level = Math.min(top, bed + depth.getAsDouble());
            svg.path("water", strip(whole, bed, level, scale, bottom));
            label(svg, bottom - level * scale, "depth " + mm(depth.getAsDouble()));
        }
        svg.path(
                "outline",
                isOpen ? strip(whole, 0, top, scale, bottom).replace("z", "") : strip(whole, 0, top, scale, bottom));
        label(svg, TOP, isOpen ? "" : "height " + mm(top));
        svg.text("label", WIDTH / 2, bottom + 22, "middle", "width " + mm(widest));
        if (bed > 0) {
            label(svg, bottom - bed * scale, "bed " + mm(bed));
        }
        return svg.toString();
    }

    private static void label(Svg svg, double y, String text) {
        if (!text.isEmpty()) {
            svg.line("grid", WIDTH / 2, y, WIDTH - 112, y);
            svg.text("label", WIDTH - 106, y + 4, "start", text);
        }
    }

    private static String mm(double metres) {
        return Math.round(metres * 1000) + " mm";
    }

    /** The part between two heights, as one closed line: down the left side and up the right one. */
    private static String strip(CrossSection section, double from, double to, double scale, double bottom) {
        StringBuilder left = new StringBuilder();
        StringBuilder right = new StringBuilder();
        for (int i = 0; i <= LINES; i++) {
            // Closer together at both ends, where the walls of a pipe lie flat.
            double height = from + (to - from) * (1 - Math.cos(Math.PI * i / LINES)) / 2;
            double half = section.topWidth(Math.min(height, to)) / 2 * scale;
            String y = Svg.number(bottom - height * scale);
            right.append('L').append(Svg.number(WIDTH / 2 + half)).append(' ').append(y);
            left.insert(0, "L" + Svg.number(WIDTH / 2 - half) + " " + y);
        }
        return "M" + left.substring(1) + right + "z";
    }
}
