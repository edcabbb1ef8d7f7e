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
    private final Map<LocalDate, double[]> slotMeans = new TreeMap<>();
    private final int dates;

    ProfileDays(Series series, Set<LocalDate> dates, ZoneId zone, ProfileRule rule) {
        this.rule = rule;
        this.slotCount = (int) (SECONDS_IN_DAY / rule.slot().getSeconds());
        this.dates = dates.size();
        LocalSeconds clock = new LocalSeconds(zone);
        Map<LocalDate, int[]> counts = new TreeMap<>();
        int seconds = (int) rule.slot().getSeconds();
        long day = Long.MIN_VALUE;
        double[] sums = NONE;
        int[] numbers = new int[0];
        for (int i = 0; i < series.size(); i++) {
            if (!series.quality(i).isUsable()) {
                continue;
            }
            long local = clock.of(series.epochNanos(i));
            long newDay = Math.floorDiv(local, SECONDS_IN_DAY);
            // The day hardly ever changes.
            if (newDay != day) {
                day = newDay;
                LocalDate date = LocalDate.ofEpochDay(day);
                sums = dates.contains(date) ? slotMeans.computeIfAbsent(date, d -> new double[slotCount]) : NONE;
                numbers = sums == NONE ? numbers : counts.computeIfAbsent(date, d -> new int[slotCount]);
            }
            if (sums != NONE) {
                int slot = (int) (local - newDay * SECONDS_IN_DAY) / seconds;
                sums[slot] += series.value(i);
                numbers[slot]++;
            }
        }
        slotMeans.forEach((date, ofDay) -> {
            int[] count = counts.getOrDefault(date, new int[slotCount]);
            for (int i = 0; i < slotCount; i++) {
                // 0 / 0 is NaN, which is what a slot without readings should be.
                ofDay[i] /= count[i];
            }
        });
    }

    int days(DayClass dayClass) {
        return (int) slotMeans.keySet().stream()
                .filter(date -> rule.classOf(date) == dayClass)
                .count();
    }

    int daysWithoutReadings() {
        return dates - slotMeans.size();
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
