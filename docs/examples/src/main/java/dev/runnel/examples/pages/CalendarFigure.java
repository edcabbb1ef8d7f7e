package dev.runnel.examples.pages;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** A row a month, a cell a day, filled from below by a share; a cross where there is nothing. */
public final class CalendarFigure {
    private static final double LEFT = 66;
    private static final double CELL = 11.8;
    private static final double SIZE = 10;
    private static final double ROW = 20;
    private static final double TOP = 8;

    /** A reading or two that are lost are not to stand out; chosen here. */
    private static final double FULL = 0.99;

    private CalendarFigure() {}

    /**
     * Draws the figure.
     *
     * @param shares usable share of each day, from 0 to 1; days that are not in it lie outside of the record
     * @param title what the shares are
     * @return SVG
     */
    public static String of(SortedMap<LocalDate, Double> shares, String title) {
        SortedMap<YearMonth, Integer> rows = new TreeMap<>();
        if (!shares.isEmpty()) {
            YearMonth last = YearMonth.from(shares.lastKey());
            for (YearMonth month = YearMonth.from(shares.firstKey());
                    !month.isAfter(last);
                    month = month.plusMonths(1)) {
                rows.put(month, rows.size());
            }
        }
        double height = TOP + ROW * rows.size() + 24;
        Svg svg = Svg.of(440, height, title, "A row for each month, a cell for each day, filled by its share");
        rows.forEach((month, row) -> svg.text(
                "label",
                LEFT - 8,
                TOP + ROW * row + SIZE,
                "end",
                month.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH)
                        + (row == 0 || month.getMonthValue() == 1 ? " " + month.getYear() : "")));
        for (Map.Entry<LocalDate, Double> day : shares.entrySet()) {
            double x = LEFT + CELL * (day.getKey().getDayOfMonth() - 1);
            double y = TOP + ROW * rows.getOrDefault(YearMonth.from(day.getKey()), 0);
            cell(svg, x, y, day.getValue());
        }
        for (int day = 1; day <= 31; day += 5) {
            svg.text("label", LEFT + CELL * (day - 1) + SIZE / 2, TOP + ROW * rows.size() + 12, "middle", "" + day);
        }
        return svg.toString();
    }

    /** Draws a day: a full one is pale, so that the others catch the eye. */
    private static void cell(Svg svg, double x, double y, double share) {
        if (share >= FULL) {
            svg.rectangle("full", x, y, SIZE, SIZE);
            return;
        }
        svg.rectangle("part", x, y + SIZE * (1 - share), SIZE, SIZE * share);
        svg.rectangle("edge", x, y, SIZE, SIZE);
        if (share < 0.001) {
            svg.path(
                    "cross",
                    "M" + Svg.number(x + 2) + " " + Svg.number(y + 2) + "l6 6M" + Svg.number(x + 8) + " "
                            + Svg.number(y + 2) + "l-6 6");
        }
    }
}
