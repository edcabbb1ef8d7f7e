package dev.runnel.timeseries.infiltration;

import dev.runnel.internal.Require;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.balance.DailyTotal;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * Daily flows and the published ways to read dry weather flow and infiltration from them; the package page names them.
 * Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DailyFlows {
    private final SortedMap<LocalDate, Double> flows;

    private DailyFlows(SortedMap<LocalDate, Double> flows) {
        this.flows = Collections.unmodifiableSortedMap(flows);
    }

    /**
     * Returns the flows of the complete days.
     *
     * @param days daily totals, m³
     * @return volumes by day, m³ a day; days that are not complete are not in it
     */
    public static DailyFlows of(List<DailyTotal> days) {
        SortedMap<LocalDate, Double> flows = new TreeMap<>();
        for (DailyTotal day : days) {
            if (day.isComplete()) {
                // A day that is covered by nine tenths is taken to have flowed on as it did.
                flows.put(day.date(), day.mean() * 86_400);
            }
        }
        return new DailyFlows(flows);
    }

    /**
     * Returns given flows.
     *
     * @param flows by day, any unit, finite
     * @return the flows
     * @throws IllegalArgumentException if one is not finite
     */
    public static DailyFlows of(Map<LocalDate, Double> flows) {
        flows.forEach((day, flow) -> Require.finite("flow of " + day, flow, ""));
        return new DailyFlows(new TreeMap<>(flows));
    }

    /**
     * Returns the flows.
     *
     * @return flow by day
     */
    public SortedMap<LocalDate, Double> flows() {
        return flows;
    }

    /**
     * Returns the flows as a series, for the tests of {@link dev.runnel.timeseries.change}.
     *
     * @param zone zone of the days
     * @return flow at the begin of each day, in the unit of the flows
     */
    public Series series(ZoneId zone) {
        Objects.requireNonNull(zone, "zone");
        SeriesBuilder builder = Series.builder();
        flows.forEach((day, flow) -> builder.add(day.atStartOfDay(zone).toInstant(), flow));
        return builder.build();
    }

    /**
     * Returns a percentile of the daily flows, by the definition of {@link Statistics#quantile}.
     *
     * @param probability for example 0.2, exceeded on 80 % of days; in [0, 1]
     * @return flow, in the unit of the flows; NaN without days
     * @throws IllegalArgumentException if the probability is outside [0, 1] or NaN
     */
    public double percentile(double probability) {
        Require.inRange("probability", probability, 0, 1, "");
        return flows.isEmpty()
                ? Double.NaN
                : Statistics.of(flows.values().stream()
                                .mapToDouble(Double::doubleValue)
                                .toArray())
                        .quantile(probability);
    }

    /**
     * Returns for each day the smallest flow of the last days, itself included.
     *
     * @param days how many calendar days are looked at; 21 in German practice; 1 to 366
     * @return smallest flow by day; days without a flow have no entry, and at the begin of the record, or behind a gap, fewer
     *     days are looked at
     * @throws IllegalArgumentException if the count is out of its range
     */
    public SortedMap<LocalDate, Double> movingMinimum(int days) {
        Require.inRange("days", days, 1, 366, "");
        SortedMap<LocalDate, Double> minima = new TreeMap<>();
        Deque<Map.Entry<LocalDate, Double>> rising = new ArrayDeque<>();
        for (Map.Entry<LocalDate, Double> each : flows.entrySet()) {
            while (!rising.isEmpty() && rising.peekLast().getValue() >= each.getValue()) {
                rising.removeLast();
            }
            rising.addLast(Map.entry(each.getKey(), each.getValue()));
            LocalDate first = each.getKey().minusDays(days - 1L);
            while (rising.peekFirst().getKey().isBefore(first)) {
                rising.removeFirst();
            }
            minima.put(each.getKey(), rising.peekFirst().getValue());
        }
        return Collections.unmodifiableSortedMap(minima);
    }

    /**
     * Returns the infiltration of each day by the moving minimum.
     *
     * @param days how many calendar days are looked at; 1 to 366
     * @param foulFlow constant foul flow, in the unit of the flows; 0 or greater
     * @return moving minimum less foul flow by day; 0 where that is negative
     * @throws IllegalArgumentException if the count is out of its range, or the foul flow negative or not finite
     */
    public SortedMap<LocalDate, Double> infiltration(int days, double foulFlow) {
        Require.nonNegative("foulFlow", foulFlow, "");
        SortedMap<LocalDate, Double> infiltration = new TreeMap<>();
        movingMinimum(days).forEach((day, minimum) -> infiltration.put(day, Math.max(0, minimum - foulFlow)));
        return Collections.unmodifiableSortedMap(infiltration);
    }

    /**
     * Returns the mean flow over runs of days that begin on given days, such as the seven dry days after seven nearly dry
     * ones. A day in several runs counts once.
     *
     * @param starts first days of runs
     * @param length days of a run; 1 to 366
     * @return mean, in the unit of the flows; NaN if no run has a flow on all its days
     * @throws IllegalArgumentException if the length is out of its range
     */
    public double meanOfRuns(Collection<LocalDate> starts, int length) {
        Require.inRange("length", length, 1, 366, "");
        SortedMap<LocalDate, Double> used = new TreeMap<>();
        for (LocalDate start : starts) {
            List<LocalDate> run = start.datesUntil(start.plusDays(length)).toList();
            if (flows.keySet().containsAll(run)) {
                run.forEach(day -> used.put(day, flows.getOrDefault(day, Double.NaN)));
            }
        }
        return Statistics.of(new ArrayList<>(used.values())
                        .stream().mapToDouble(Double::doubleValue).toArray())
                .mean();
    }

    @Override
    public String toString() {
        return flows.isEmpty()
                ? "DailyFlows[no days]"
                : "DailyFlows[" + flows.size() + " days, " + flows.firstKey() + " to " + flows.lastKey() + "]";
    }
}
