package dev.runnel.examples.pages;

import dev.runnel.hydraulics.section.CrossSection;
import java.util.List;
import java.util.OptionalDouble;

/** The outline of a section, with its bed and, if one is given, the water in it. */
public final class SectionFigure {
    private static final double WIDTH = 440;
    private static final double SIZE = 200;
    private static final double TOP = 30;
    private static final int LINES = 120;

    private static final int COLUMNS = 3;
    private static final double CELL_SIZE = 96;
    private static final double CELL_HEIGHT = CELL_SIZE + 60;

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
        double widest = widest(whole, top);
        double scale = SIZE / Math.max(top, widest);
        double bottom = TOP + SIZE;
        Svg svg = Svg.of(WIDTH, bottom + 40, "Section", "Outline of the section, its bed and the water in it");
        double bed = section.bedAboveInvert();
        if (bed > 0) {
            svg.path("bed", strip(whole, 0, bed, scale, WIDTH / 2, bottom));
        }
        if (depth.isPresent() && depth.getAsDouble() > 0) {
            double level = Math.min(top, bed + depth.getAsDouble());
            svg.path("water", strip(whole, bed, level, scale, WIDTH / 2, bottom));
            label(svg, bottom - level * scale, "depth " + mm(depth.getAsDouble()));
        }
        label(svg, TOP, isOpen ? "" : "height " + mm(top));
        svg.text("label", WIDTH / 2, bottom + 22, "middle", "width " + mm(widest));
        if (bed > 0) {
            label(svg, bottom - bed * scale, "bed " + mm(bed));
        }
        String outline = strip(whole, 0, top, scale, WIDTH / 2, bottom);
        svg.path("outline", isOpen ? outline.replace("z", "") : outline);
        return svg.toString();
    }

    /**
     * Draws sections beside each other, each as large as its place allows.
     *
     * @param sections the sections; an open one is cut off at one and a half times its highest corner
     * @return SVG
     */
    public static String plate(List<? extends CrossSection> sections) {
        int columns = Math.min(COLUMNS, sections.size());
        int rows = (sections.size() + columns - 1) / columns;
        Svg svg = Svg.of(WIDTH, rows * CELL_HEIGHT, "Sections", "Outlines of " + sections.size() + " sections");
        for (int i = 0; i < sections.size(); i++) {
            double middle = WIDTH / columns * (i % columns + 0.5);
            int row = i / columns;
            double bottom = CELL_HEIGHT * row + CELL_SIZE + 14;
            cell(svg, sections.get(i), middle, bottom);
        }
        return svg.toString();
    }

    private static void cell(Svg svg, CrossSection section, double middle, double bottom) {
        CrossSection whole = section.withoutSediment();
        boolean isOpen = !Double.isFinite(whole.height());
        double[] breaks = whole.breakDepths();
        double highest = breaks.length == 0 ? 0 : breaks[breaks.length - 1];
        double top = isOpen ? highest > 0 ? 1.5 * highest : 1 : whole.height();
        double widest = widest(whole, top);
        double scale = CELL_SIZE / Math.max(top, widest);
        double bed = section.bedAboveInvert();
        if (bed > 0) {
            svg.path("bed", strip(whole, 0, bed, scale, middle, bottom));
        }
        String outline = strip(whole, 0, top, scale, middle, bottom);
        svg.path("outline", isOpen ? outline.replace("z", "") : outline);
        String text = whole.toString();
        String name = text.contains("[") ? text.substring(0, text.indexOf('[')) : text;
        svg.text("name", middle, bottom + 18, "middle", name + (bed > 0 ? " with a bed" : ""));
        svg.text(
                "label",
                middle,
                bottom + 33,
                "middle",
                isOpen ? "open, " + mm(widest) + " wide" : mm(widest).replace(" mm", "") + " x " + mm(top));
    }

    private static double widest(CrossSection section, double top) {
        double widest = 0;
        for (int i = 0; i <= LINES; i++) {
            widest = Math.max(widest, section.topWidth(top * i / LINES));
        }
        return widest;
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
    private static String strip(
            CrossSection section, double from, double to, double scale, double middle, double bottom) {
        StringBuilder left = new StringBuilder();
        StringBuilder right = new StringBuilder();
        for (int i = 0; i <= LINES; i++) {
            // Closer together at both ends, where the walls of a pipe lie flat.
            double height = from + (to - from) * (1 - Math.cos(Math.PI * i / LINES)) / 2;
            double half = section.topWidth(Math.min(height, to)) / 2 * scale;
            String y = Svg.number(bottom - height * scale);
            right.append('L').append(Svg.number(middle + half)).append(' ').append(y);
            left.insert(0, "L" + Svg.number(middle - half) + " " + y);
        }
        return "M" + left.substring(1) + right + "z";
    }
}
