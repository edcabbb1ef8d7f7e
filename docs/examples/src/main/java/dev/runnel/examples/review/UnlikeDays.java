package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.change.Pettitt;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;

/**
 * Usual days that are not alike: one mean over both parts is neither. What moves a day too little for a finding, or too slowly, may
 * move the mean of weeks by a good deal.
 *
 * @param from first day of the later part
 * @param before median of the days before it, m3/s or m
 * @param after the same from it on
 */
record UnlikeDays(LocalDate from, double before, double after) {
    // Chosen here, as both limits below: fewer days tell nothing of a part.
    private static final int FEWEST_DAYS = 6;

    /** Days follow each other, so that the test of days apart finds more than there is: it must be sure, and what it finds must matter. */
    static final double LARGEST_P = 0.001;

    private static final double LEAST_CHANGE = 0.10;

    /** Change from the earlier part to the later one, as a share of the smaller. */
    double change() {
        return (after - before) / Math.min(Math.abs(before), Math.abs(after));
    }

    /** Looks for one change of the level of days, by Pettitt's test. */
    static Optional<UnlikeDays> of(Series series, SortedSet<LocalDate> days, ZoneId zone) {
        SortedMap<LocalDate, Double> means = new TreeMap<>();
        for (LocalDate day : days) {
            Statistics of = series.slice(Interval.of(
                            day.atStartOfDay(zone).toInstant(),
                            day.plusDays(1).atStartOfDay(zone).toInstant()))
                    .statistics();
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
        return Math.abs(found.change()) > LEAST_CHANGE ? Optional.of(found) : Optional.empty();
    }

    private static double median(double[] values, int from, int to) {
        return Statistics.of(Arrays.copyOfRange(values, from, to)).median();
    }
}
