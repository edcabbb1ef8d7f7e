package dev.runnel.examples.pages;

import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;

/** A strip of time with what happened on it, such as the spills of a year. */
public final class StripFigure {
    private static final double LEFT = 10;
    private static final double RIGHT = 870;

    /** Below that the weeks are named, above it the months. */
    private static final Duration SHORT = Duration.ofDays(100);

    private StripFigure() {}

    /**
     * Draws the figure.
     *
     * @param record the time it covers
     * @param happened what happened, such as spills
     * @param notSeen times without readings
     * @param zone clock of its months
     * @param title what is shown
     * @return SVG
     */
    public static String of(
            Interval record, List<Interval> happened, List<Interval> notSeen, ZoneId zone, String title) {
        Svg svg = Svg.of(880, 56, title, happened.size() + " times between the ends of the record");
        Scale x = Scale.between(seconds(record.start()), seconds(record.end()), LEFT, RIGHT);
        svg.rectangle("strip", LEFT, 8, RIGHT - LEFT, 20);
        notSeen.forEach(each -> bar(svg, "gap", x, each, 0.5));
        happened.forEach(each -> bar(svg, "spill", x, each, 1.5));
        boolean isShort = record.duration().compareTo(SHORT) < 0;
        LocalDate first = LocalDate.ofInstant(record.start(), zone);
        double last = Double.NEGATIVE_INFINITY;
        for (LocalDate date = isShort ? first : first.withDayOfMonth(1);
                date.atStartOfDay(zone).toInstant().isBefore(record.end());
                date = isShort ? date.plusWeeks(1) : date.plusMonths(1)) {
            double place = x.at(seconds(date.atStartOfDay(zone).toInstant()));
            if (place >= LEFT - 0.1 && place - last > 40 && place < RIGHT - 30) {
                String month = date.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
                svg.line("grid", place, 8, place, 34);
                svg.text(
                        "label",
                        place + 2,
                        46,
                        "start",
                        isShort
                                ? date.getDayOfMonth() + " " + month
                                : month + (date.getMonthValue() == 1 ? " " + date.getYear() : ""));
                last = place;
            }
        }
        return svg.toString();
    }

    private static double seconds(Instant time) {
        return time.getEpochSecond();
    }

    private static void bar(Svg svg, String type, Scale x, Interval time, double least) {
        double from = Math.max(LEFT, x.at(seconds(time.start())));
        double to = Math.min(RIGHT, x.at(seconds(time.end())));
        if (to >= LEFT && from <= RIGHT) {
            svg.rectangle(type, from, 8, Math.max(least, to - from), 20);
        }
    }
}
