package dev.runnel.examples.pages;

import java.util.List;

/** Curves over axes that begin where the values do: a rating, a water level along a sewer, a frequency curve. */
public final class CurveFigure {
    /**
     * One curve, or some points.
     *
     * @param name what it is; empty for one that belongs to the curve before it
     * @param style class of the style sheet: {@code day1} to {@code day4}, {@code soffit}, {@code equal}, or {@code dot1}
     *     to {@code dot4} for points
     * @param xs places to the right
     * @param ys places up; NaN parts a line
     */
    public record Curve(String name, String style, double[] xs, double[] ys) {}

    private static final double LEFT = 52;
    private static final double RIGHT = 424;
    private static final double BOTTOM = 250;

    private CurveFigure() {}

    /**
     * Draws the figure.
     *
     * @param title its title
     * @param nameX what goes to the right, with its unit
     * @param nameY what goes up, with its unit
     * @param logarithmicX whether the axis to the right is logarithmic
     * @param curves the curves
     * @return SVG
     */
    public static String of(String title, String nameX, String nameY, boolean logarithmicX, List<Curve> curves) {
        Svg svg = Svg.of(440, 290, title, nameY + " over " + nameX);
        long named = curves.stream().filter(curve -> !curve.name().isEmpty()).count();
        double top = 34 + 15 * named;
        Scale x = scale(ends(curves, true), LEFT, RIGHT, logarithmicX);
        Scale y = scale(ends(curves, false), BOTTOM, top, false);
        svg.axisX(x, top, BOTTOM, nameX);
        svg.axisY(y, LEFT, RIGHT, nameY);
        int line = 0;
        for (Curve curve : curves) {
            boolean points = curve.style().startsWith("dot");
            double[] xs = new double[curve.xs().length];
            double[] ys = new double[xs.length];
            for (int k = 0; k < xs.length; k++) {
                xs[k] = x.at(curve.xs()[k]);
                ys[k] = y.at(curve.ys()[k]);
                if (points && !Double.isNaN(xs[k] + ys[k])) {
                    svg.circle(curve.style(), xs[k], ys[k], 3);
                }
            }
            if (!points) {
                svg.path(curve.style(), Svg.polyline(xs, ys));
            }
            if (!curve.name().isEmpty()) {
                double height = 10 + 15 * line++;
                if (points) {
                    svg.circle(curve.style(), LEFT + 20, height, 3);
                } else {
                    svg.line(curve.style(), LEFT + 8, height, LEFT + 32, height);
                }
                svg.text("label", LEFT + 38, height + 4, "start", curve.name());
            }
        }
        return svg.toString();
    }

    private static Scale scale(double[] ends, double start, double end, boolean logarithmic) {
        if (logarithmic) {
            return Scale.logarithmic(ends[0], ends[1], start, end);
        }
        // A scale that could begin at 0 without losing half of its room does.
        return ends[0] >= 0 && ends[0] < ends[1] / 2
                ? Scale.fromZero(ends[1], start, end)
                : Scale.round(ends[0], ends[1], start, end);
    }

    private static double[] ends(List<Curve> curves, boolean alongX) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Curve curve : curves) {
            for (double value : alongX ? curve.xs() : curve.ys()) {
                low = value < low ? value : low;
                high = value > high ? value : high;
            }
        }
        return low <= high ? new double[] {low, high} : new double[] {0, 1};
    }
}
