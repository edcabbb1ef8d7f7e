package dev.runnel.timeseries.balance;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Statistics;
import java.time.LocalDate;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * Daily volumes of one site over those of another on the days that both cover. Immutable and thread-safe.
 *
 * @param ratios ratio by day; only days complete at both, with volume at the first
 * @param first volume of the first site on those days, m³
 * @param second volume of the second site on those days, m³
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record VolumeRatios(SortedMap<LocalDate, Double> ratios, double first, double second) {
    /**
     * Copies the map.
     *
     * @param ratios ratio by day
     * @param first volume of the first site, m³
     * @param second volume of the second site, m³
     */
    public VolumeRatios {
        Objects.requireNonNull(ratios, "ratios");
        ratios = Collections.unmodifiableSortedMap(new TreeMap<>(ratios));
    }

    /**
     * Compares two sites.
     *
     * @param first daily totals of the first, for example upstream
     * @param second daily totals of the second, for example downstream
     * @return ratios of the second over the first
     */
    public static VolumeRatios of(List<DailyTotal> first, List<DailyTotal> second) {
        Map<LocalDate, DailyTotal> byDay = new HashMap<>();
        first.forEach(day -> byDay.put(day.date(), day));
        SortedMap<LocalDate, Double> ratios = new TreeMap<>();
        CompensatedSum sumFirst = new CompensatedSum();
        CompensatedSum sumSecond = new CompensatedSum();
        for (DailyTotal day : second) {
            DailyTotal other = byDay.get(day.date());
            if (other != null && other.isComplete() && day.isComplete() && other.measured() > 0) {
                sumFirst.add(other.measured());
                sumSecond.add(day.measured());
                ratios.put(day.date(), day.measured() / other.measured());
            }
        }
        return new VolumeRatios(ratios, sumFirst.value(), sumSecond.value());
    }

    /**
     * Returns the usual ratio.
     *
     * @return median of the days; NaN if there is none
     */
    public double usual() {
        return ratios.isEmpty()
                ? Double.NaN
                : Statistics.of(ratios.values().stream()
                                .mapToDouble(Double::doubleValue)
                                .toArray())
                        .median();
    }

    /**
     * Returns the days on which the ratio is far from the usual one.
     *
     * @param tolerance largest relative difference that is not far; 0 or greater
     * @return ratio by day
     * @throws IllegalArgumentException if the tolerance is negative or not finite
     */
    public SortedMap<LocalDate, Double> fartherThan(double tolerance) {
        Require.nonNegative("tolerance", tolerance, "");
        double usual = usual();
        SortedMap<LocalDate, Double> far = new TreeMap<>();
        ratios.forEach((day, ratio) -> {
            if (Math.abs(ratio / usual - 1) > tolerance) {
                far.put(day, ratio);
            }
        });
        return Collections.unmodifiableSortedMap(far);
    }

    @Override
    public String toString() {
        return "VolumeRatios[" + ratios.size() + " days, " + Text.significant(second, 4) + " over "
                + Text.significant(first, 4) + " m3, usual " + Text.significant(usual(), 3) + "]";
    }
}
