package dev.runnel.timeseries.quality;

import dev.runnel.internal.SeriesArrays;
import dev.runnel.timeseries.BetweenReadings;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.internal.TimeIntegral;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The calendar of good data: for each local day how much of it usable readings speak for. Immutable and thread-safe.
 *
 * <p>A reading speaks for the time to the next usable one, at most for 1.5 times the usual time between readings, so that
 * a single lost reading shows.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GoodDays {
    /** Chosen here: a hundred years of days; a stamp far from the others makes a calendar that nobody wants. */
    private static final long MOST_DAYS = 36_525;

    private final ZoneId zone;

    private GoodDays(ZoneId zone) {
        this.zone = zone;
    }

    /**
     * Returns the calendar of a zone.
     *
     * @param zone zone of the local days
     * @return the calendar
     */
    public static GoodDays in(ZoneId zone) {
        return new GoodDays(Objects.requireNonNull(zone, "zone"));
    }

    /**
     * Returns the days of a record.
     *
     * @param series the readings, checked
     * @return one entry for each local day from the first reading to the last; empty if there is none
     * @throws IllegalArgumentException if the record spans more than 36,525 days
     */
    public List<GoodDay> of(Series series) {
        if (series.isEmpty()) {
            return List.of();
        }
        LocalDate first = date(series, 0);
        LocalDate last = date(series, series.size() - 1);
        long count = last.toEpochDay() - first.toEpochDay() + 1;
        if (count > MOST_DAYS) {
            throw new IllegalArgumentException(
                    "series must span at most " + MOST_DAYS + " days, was " + first + " to " + last);
        }
        long[] edges = new long[(int) count + 1];
        for (int i = 0; i < edges.length; i++) {
            edges[i] = EpochNanos.of(first.plusDays(i).atStartOfDay(zone).toInstant());
        }
        long gap = TimeIntegral.usualGap(series);
        long usual = gap / 3 * 2;
        TimeIntegral covered = TimeIntegral.of(series, BetweenReadings.HOLD, gap, edges);
        List<GoodDay> days = new ArrayList<>();
        long[] times = SeriesArrays.keeper().times(series);
        byte[] qualities = SeriesArrays.keeper().qualities(series);
        int from = 0;
        for (int day = 0; day < count; day++) {
            int to = firstAtOrAfter(edges[day + 1], times, from);
            int[] counts = counts(qualities, from, to);
            from = to;
            int poor = counts[Quality.ESTIMATE.toCode()] + counts[Quality.POOR.toCode()];
            days.add(new GoodDay(
                    first.plusDays(day),
                    Interval.of(EpochNanos.toInstant(edges[day]), EpochNanos.toInstant(edges[day + 1])),
                    usual == 0 ? 1 : (int) Math.round((edges[day + 1] - edges[day]) / (double) usual),
                    counts[Quality.GOOD.toCode()] + counts[Quality.UNCHECKED.toCode()] + poor,
                    poor,
                    counts[Quality.SUSPECT.toCode()],
                    counts[Quality.MISSING.toCode()],
                    covered.coverage(day)));
        }
        return List.copyOf(days);
    }

    private static int firstAtOrAfter(long edge, long[] times, int from) {
        int found = Arrays.binarySearch(times, from, times.length, edge);
        return found >= 0 ? found : -found - 1;
    }

    /** How many readings have each quality, by its code. */
    private static int[] counts(byte[] qualities, int from, int to) {
        int[] counts = new int[Quality.values().length];
        for (int i = from; i < to; ) {
            // Readings come by the hundred with one quality: a run is counted as a whole.
            byte code = qualities[i];
            int end = i + 1;
            while (end < to && qualities[end] == code) {
                end++;
            }
            counts[code] += end - i;
            i = end;
        }
        return counts;
    }

    private LocalDate date(Series series, int index) {
        return series.time(index).atZone(zone).toLocalDate();
    }

    @Override
    public String toString() {
        return "GoodDays[" + zone + "]";
    }
}
