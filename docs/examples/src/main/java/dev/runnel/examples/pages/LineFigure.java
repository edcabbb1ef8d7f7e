package dev.runnel.examples.pages;

import java.util.List;

/** Lines over a straight axis: cumulative volumes of sites, a double mass, rain and response of storms. */
public final class LineFigure {
    /**
     * One line, or some points.
     *
     * @param name what it is
     * @param xs places to the right
     * @param ys places up; NaN parts a line
     * @param points whether points are drawn and no line
     */
    public record Line(String name, double[] xs, double[] ys, boolean points) {}

    private static final double LEFT = 52;

    /** Letters of a label for which that leaves room, and how much more each further one takes. */
    private static final int LETTERS = 6;

    private static final double LETTER = 7.5;
    private static final double RIGHT = 424;
    private static final double BOTTOM = 250;
    private static final int LINES = 4;

    private LineFigure() {}

    /**
     * Draws the figure.
     *
     * @param title its title
     * @param nameX what goes to the right, with its unit
     * @param nameY what goes up, with its unit
     * @param lines at most four lines
     * @return SVG
     */
    public static String of(String title, String nameX, String nameY, List<Line> lines) {
        Svg svg = Svg.of(440, 290, title, nameY + " over " + nameX);
        double right = 0;
        double up = 0;
        for (Line line : lines) {
            right = Math.max(right, greatest(line.xs()));
            up = Math.max(up, greatest(line.ys()));
        }
        double top = 34 + 15 * Math.min(LINES, lines.size());
        Scale y = Scale.fromZero(up, BOTTOM, top);
        int longest = y.ticks().stream()
                .mapToInt(tick -> Scale.label(tick).length())
                .max()
                .orElse(0);
        double left = LEFT + LETTER * Math.max(0, longest - LETTERS);
        Scale x = Scale.fromZero(right, left, RIGHT);
        svg.axisX(x, top, BOTTOM, nameX);
        svg.axisY(y, left, RIGHT, nameY);
        for (int i = 0; i < Math.min(LINES, lines.size()); i++) {
            Line line = lines.get(i);
            String type = "day" + (i + 1);
            double[] xs = new double[line.xs().length];
            double[] ys = new double[xs.length];
            for (int k = 0; k < xs.length; k++) {
                xs[k] = x.at(line.xs()[k]);
                ys[k] = y.at(line.ys()[k]);
                if (line.points() && !Double.isNaN(xs[k] + ys[k])) {
                    svg.circle("dot" + (i + 1), xs[k], ys[k], 3);
                }
            }
            if (!line.points()) {
                svg.path(type, Svg.polyline(xs, ys));
                svg.line(type, left + 8, 10 + 15 * i, left + 32, 10 + 15 * i);
            } else {
                svg.circle("dot" + (i + 1), left + 20, 10 + 15 * i, 3);
            }
            svg.text("label", left + 38, 14 + 15 * i, "start", line.name());
        }
        return svg.toString();
    }

    private static double greatest(double[] values) {
        double greatest = 0;
        for (double value : values) {
            greatest = value > greatest ? value : greatest;
        }
        return greatest;
    }
}
