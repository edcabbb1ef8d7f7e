package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.change.Pettitt;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * Usual days that are not alike: one mean over both parts is neither. What moves a day too little for a finding, or too slowly, may
 * move the mean of weeks by a good deal.
 *
 * @param from first day of the later part
 * @param before median of the days before it, m3/s or m
 * @param after the same from it on
 */
record UnlikeDays(LocalDate from, double before, double after) {
    // Chosen here, as all limits below: fewer days tell nothing of a part.
    private static final int FEWEST_DAYS = 6;

    /** Days follow each other, so that the test of days apart finds more than there is: it must be sure, and what it finds must matter. */
    static final double LARGEST_P = 0.001;

    private static final double LEAST_CHANGE = 0.10;

    /** Nights hold little water and scatter more; what seeps in shows there first. */
    private static final double LEAST_CHANGE_OF_NIGHTS = 0.25;

    private static final LocalTime NIGHT = LocalTime.of(2, 0);
    private static final LocalTime MORNING = LocalTime.of(5, 0);

    /** Change from the earlier part to the later one, as a share of the smaller. */
    double change() {
        return (after - before) / Math.min(Math.abs(before), Math.abs(after));
    }

    /** Looks for one change of the level of days, by Pettitt's test. */
    static Optional<UnlikeDays> of(Series series, SortedSet<LocalDate> days, ZoneId zone) {
        return of(
                series,
                days,
                day -> Interval.of(
                        day.atStartOfDay(zone).toInstant(),
                        day.plusDays(1).atStartOfDay(zone).toInstant()),
                LEAST_CHANGE);
    }

    /** Looks for one change of the level of nights, from 2 to 5 on the clock of the site: the day may keep its mean and lose its shape. */
    static Optional<UnlikeDays> ofNights(Series series, SortedSet<LocalDate> days, ZoneId zone) {
        return of(
                series,
                days,
                day -> Interval.of(
                        day.atTime(NIGHT).atZone(zone).toInstant(),
                        day.atTime(MORNING).atZone(zone).toInstant()),
                LEAST_CHANGE_OF_NIGHTS);
    }

    private static Optional<UnlikeDays> of(
            Series series, SortedSet<LocalDate> days, Function<LocalDate, Interval> hours, double least) {
        SortedMap<LocalDate, Double> means = new TreeMap<>();
        for (LocalDate day : days) {
            Statistics of = series.slice(hours.apply(day)).statistics();
            if (of.count() > 0) {
                means.put(day, of.mean());
            }
        }
        if (means.size() < 2 * FEWEST_DAYS) {
            return Optional.empty();
        }
        double[] values =
                means.values().stream().mapToDouble(Double::doubleValue).toArray();
        Pettitt test = Pettitt.of(values);
        int parts = test.before();
        if (parts < FEWEST_DAYS || values.length - parts < FEWEST_DAYS || !(test.pValue() < LARGEST_P)) {
            return Optional.empty();
        }
        UnlikeDays found = new UnlikeDays(
                means.keySet().stream().skip(parts).findFirst().orElseThrow(),
                median(values, 0, parts),
                median(values, parts, values.length));
        return Math.abs(found.change()) > least ? Optional.of(found) : Optional.empty();
    }

    private static double median(double[] values, int from, int to) {
        return Statistics.of(Arrays.copyOfRange(values, from, to)).median();
    }
}
