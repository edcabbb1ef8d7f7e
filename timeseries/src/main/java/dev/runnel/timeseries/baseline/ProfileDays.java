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

    private final ProfileRule rule;
    private final int slotCount;
    private final Map<LocalDate, double[]> slotMeans = new TreeMap<>();
    private final int dates;

    ProfileDays(Series series, Set<LocalDate> dates, ZoneId zone, ProfileRule rule) {
        this.rule = rule;
        this.slotCount = (int) (SECONDS_IN_DAY / rule.slot().getSeconds());
        this.dates = dates.size();
        Map<LocalDate, int[]> counts = new TreeMap<>();
        for (int i = 0; i < series.size(); i++) {
            if (!series.quality(i).isUsable()) {
                continue;
            }
            long local = DiurnalProfile.localSecond(zone, series.epochNanos(i));
            LocalDate date = LocalDate.ofEpochDay(Math.floorDiv(local, SECONDS_IN_DAY));
            if (dates.contains(date)) {
                int slot = (int)
                        (Math.floorMod(local, SECONDS_IN_DAY) / rule.slot().getSeconds());
                slotMeans.computeIfAbsent(date, d -> new double[slotCount])[slot] += series.value(i);
                counts.computeIfAbsent(date, d -> new int[slotCount])[slot]++;
            }
        }
        slotMeans.forEach((date, sums) -> {
            int[] count = counts.getOrDefault(date, new int[slotCount]);
            for (int i = 0; i < slotCount; i++) {
                // 0 / 0 is NaN, which is what a slot without readings should be.
                sums[i] /= count[i];
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
