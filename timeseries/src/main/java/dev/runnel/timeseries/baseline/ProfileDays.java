package dev.runnel.timeseries.baseline;

import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** The mean of the readings in each slot of each chosen day. */
final class ProfileDays {
    private static final int SECONDS_IN_DAY = 86_400;

    /** The sums of a day that is not asked for. */
    private static final double[] NONE = new double[0];

    private final ProfileRule rule;
    private final int slotCount;
    private final int slotSeconds;
    private final Map<LocalDate, double[]> slotMeans = new TreeMap<>();
    private final Set<LocalDate> dates;

    /** The day of the last reading, with its sums and how many readings are in them; the day hardly ever changes. */
    private long day = Long.MIN_VALUE;

    private double[] sums = NONE;
    private int[] numbers = new int[0];

    ProfileDays(Series series, Set<LocalDate> dates, ZoneId zone, ProfileRule rule) {
        this.rule = rule;
        this.slotSeconds = (int) rule.slot().getSeconds();
        this.slotCount = SECONDS_IN_DAY / slotSeconds;
        this.dates = dates;
        Map<LocalDate, int[]> counts = new TreeMap<>();
        add(series, new LocalSeconds(zone), counts);
        slotMeans.forEach((date, ofDay) -> divide(ofDay, counts.getOrDefault(date, new int[slotCount])));
    }

    private void add(Series series, LocalSeconds clock, Map<LocalDate, int[]> counts) {
        for (int i = 0; i < series.size(); i++) {
            if (series.quality(i).isUsable()) {
                add(clock.of(series.epochNanos(i)), series.value(i), counts);
            }
        }
    }

    /** A method of each reading, so that what few readings need is not woven into the loop over all. */
    private void add(long local, double value, Map<LocalDate, int[]> counts) {
        long newDay = Math.floorDiv(local, SECONDS_IN_DAY);
        if (newDay != day) {
            begin(newDay, counts);
        }
        if (sums != NONE) {
            int slot = (int) (local - newDay * SECONDS_IN_DAY) / slotSeconds;
            sums[slot] += value;
            numbers[slot]++;
        }
    }

    private void begin(long newDay, Map<LocalDate, int[]> counts) {
        day = newDay;
        LocalDate date = LocalDate.ofEpochDay(day);
        sums = dates.contains(date) ? slotMeans.computeIfAbsent(date, d -> new double[slotCount]) : NONE;
        numbers = sums == NONE ? numbers : counts.computeIfAbsent(date, d -> new int[slotCount]);
    }

    private static void divide(double[] sums, int[] counts) {
        for (int i = 0; i < sums.length; i++) {
            // 0 / 0 is NaN, which is what a slot without readings should be.
            sums[i] /= counts[i];
        }
    }

    int days(DayClass dayClass) {
        return (int) slotMeans.keySet().stream()
                .filter(date -> rule.classOf(date) == dayClass)
                .count();
    }

    int daysWithoutReadings() {
        return dates.size() - slotMeans.size();
    }

    Statistics[] statistics(DayClass dayClass) {
        double[][] ofClass = slotMeans.entrySet().stream()
                .filter(entry -> rule.classOf(entry.getKey()) == dayClass)
                .map(Map.Entry::getValue)
                .toArray(double[][]::new);
        Statistics[] statistics = new Statistics[slotCount];
        for (int slot = 0; slot < slotCount; slot++) {
            int at = slot;
            statistics[slot] = Statistics.of(
                    Arrays.stream(ofClass).mapToDouble(day -> day[at]).toArray());
        }
        return statistics;
    }
}
