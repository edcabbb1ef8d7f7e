package dev.runnel.examples.pages;

import java.time.LocalTime;
import java.util.List;

/** A day as it usually is: a line with its band for each kind of day, before and after a change apart. */
public final class DayFigure {
    /**
     * One kind of day.
     *
     * @param name what it is, with its count of days
     * @param starts beginnings of the slots
     * @param lower lower end of the band in each slot
     * @param middle value in each slot
     * @param upper upper end of the band in each slot
     */
    public record Line(String name, List<LocalTime> starts, double[] lower, double[] middle, double[] upper) {}

    private static final double LEFT = 44;
    private static final double RIGHT = 418;
    private static final double TOP = 62;
    private static final double BOTTOM = 260;
    private static final int LINES = 4;

    private DayFigure() {}

    /**
     * Draws the figure.
     *
     * @param unit unit of the values
     * @param lines at most four kinds of days
     * @return SVG
     */
    public static String of(String unit, List<Line> lines) {
        Svg svg = Svg.of(
                440, 300, "Dry-weather day", "Values over the hours of a dry day, with a band of 80 of 100 days");
        double largest = 0;
        for (Line line : lines) {
            for (double value : line.upper()) {
                largest = Math.max(largest, Double.isNaN(value) ? 0 : value);
            }
        }
        Scale x = Scale.between(0, 24, LEFT, RIGHT);
        Scale y = Scale.fromZero(largest, BOTTOM, TOP);
        for (int hour = 0; hour <= 24; hour += 4) {
            svg.line("grid", x.at(hour), TOP, x.at(hour), BOTTOM);
            svg.text("label", x.at(hour), BOTTOM + 16, "middle", (hour < 10 ? "0" : "") + hour + ":00");
        }
        svg.axisY(y, LEFT, RIGHT, unit);
        for (int i = 0; i < Math.min(LINES, lines.size()); i++) {
            line(svg, x, y, lines.get(i), i + 1);
            svg.line("day" + (i + 1), LEFT + 40, 10 + 15 * i, LEFT + 64, 10 + 15 * i);
            svg.text("label", LEFT + 70, 14 + 15 * i, "start", lines.get(i).name());
        }
        return svg.toString();
    }

    private static void line(Svg svg, Scale x, Scale y, Line line, int number) {
        int n = line.middle().length;
        double[] xs = new double[n];
        double[] ys = new double[n];
        StringBuilder band = new StringBuilder();
        StringBuilder back = new StringBuilder();
        for (int i = 0; i < n; i++) {
            double start = line.starts().get(i).toSecondOfDay() / 3600.0;
            double next = i + 1 < n ? line.starts().get(i + 1).toSecondOfDay() / 3600.0 : 24;
            xs[i] = x.at((start + next) / 2);
            ys[i] = y.at(line.middle()[i]);
            if (!Double.isNaN(line.lower()[i]) && !Double.isNaN(line.upper()[i])) {
                band.append(band.length() == 0 ? 'M' : 'L')
                        .append(Svg.number(xs[i]))
                        .append(' ');
                band.append(Svg.number(y.at(line.upper()[i])));
                back.insert(0, "L" + Svg.number(xs[i]) + " " + Svg.number(y.at(line.lower()[i])));
            }
        }
        svg.path("band" + number, band.length() == 0 ? "" : band + back.toString() + "z");
        svg.path("day" + number, Svg.polyline(xs, ys));
    }
}
