package dev.runnel.timeseries.balance;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Statistics;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Totals of several records, such as rain gauges, over the steps that all of them know. Immutable and thread-safe.
 *
 * <p>A step that one record does not know counts for none of them: time outside a record is not 0. Each total is compared
 * with the median of the others, so that one bad record does not accuse the good ones.
 *
 * @param interval the time that all records span
 * @param steps steps in it that all of them know
 * @param totals sum by record over those steps
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record CommonTotals(Interval interval, int steps, Map<String, Double> totals) {
    /**
     * Copies the map.
     *
     * @param interval the time that all records span
     * @param steps steps in it that all of them know
     * @param totals sum by record
     */
    public CommonTotals {
        Objects.requireNonNull(interval, "interval");
        Objects.requireNonNull(totals, "totals");
        totals = Collections.unmodifiableMap(new LinkedHashMap<>(totals));
    }

    /**
     * Adds up records over all their common time.
     *
     * @param records at least two, with equal steps that lie alike
     * @return the totals; of no step if they have no time in common
     * @throws IllegalArgumentException if there are fewer than two, or steps differ or lie apart
     */
    public static CommonTotals of(Map<String, RegularSeries> records) {
        Require.atLeast("number of records", records.size(), 2);
        List<RegularSeries> all = List.copyOf(records.values());
        Instant start = all.get(0).start();
        Instant end = all.get(0).end();
        for (RegularSeries each : all) {
            start = each.start().isAfter(start) ? each.start() : start;
            end = each.end().isBefore(end) ? each.end() : end;
        }
        return of(records, Interval.of(start, end.isBefore(start) ? start : end));
    }

    /**
     * Adds up records over one interval, such as a storm.
     *
     * @param records at least two, with equal steps that lie alike
     * @param interval steps that lie in it as a whole count
     * @return the totals
     * @throws IllegalArgumentException if there are fewer than two, or steps differ or lie apart
     */
    public static CommonTotals of(Map<String, RegularSeries> records, Interval interval) {
        Objects.requireNonNull(interval, "interval");
        Require.atLeast("number of records", records.size(), 2);
        List<RegularSeries> all = new ArrayList<>(records.values());
        RegularSeries first = all.get(0);
        int[] offsets = new int[all.size()];
        for (int i = 0; i < all.size(); i++) {
            offsets[i] = offset(first, all.get(i));
        }
        double[] sums = new double[all.size()];
        int steps = 0;
        for (int at = 0; at < first.size(); at++) {
            Interval step = first.interval(at);
            boolean inside =
                    !step.start().isBefore(interval.start()) && !step.end().isAfter(interval.end());
            if (inside && isKnown(all, offsets, at)) {
                steps++;
                for (int i = 0; i < sums.length; i++) {
                    sums[i] += all.get(i).value(at + offsets[i]);
                }
            }
        }
        Map<String, Double> totals = new LinkedHashMap<>();
        int i = 0;
        for (String name : records.keySet()) {
            totals.put(name, sums[i++]);
        }
        return new CommonTotals(interval, steps, totals);
    }

    private static int offset(RegularSeries first, RegularSeries other) {
        long step = first.step().toNanos();
        long apart = Duration.between(other.start(), first.start()).toNanos();
        if (!other.step().equals(first.step()) || apart % step != 0) {
            throw new IllegalArgumentException("records must have steps of " + Text.duration(first.step())
                    + " that lie as from " + first.start() + ", had steps of " + Text.duration(other.step()) + " from "
                    + other.start());
        }
        return (int) Math.max(Integer.MIN_VALUE / 2, Math.min(apart / step, Integer.MAX_VALUE / 2));
    }

    private static boolean isKnown(List<RegularSeries> all, int[] offsets, int at) {
        for (int i = 0; i < offsets.length; i++) {
            int there = at + offsets[i];
            if (there < 0
                    || there >= all.get(i).size()
                    || Double.isNaN(all.get(i).value(there))) {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns a total over the median of the others.
     *
     * @param record name of the record
     * @return ratio; NaN if the others had nothing
     * @throws IllegalArgumentException if there is no such record
     */
    public double ratioToOthers(String record) {
        Double own = totals.get(record);
        if (own == null) {
            throw new IllegalArgumentException("record must be one of " + totals.keySet() + ", was " + record);
        }
        double median = Statistics.of(totals.entrySet().stream()
                        .filter(each -> !each.getKey().equals(record))
                        .mapToDouble(Map.Entry::getValue)
                        .toArray())
                .median();
        return median > 0 ? own / median : Double.NaN;
    }

    /**
     * Returns the records that are far from the others. Of two nobody can tell which is wrong: both are then given.
     *
     * @param tolerance largest relative difference to the median of the others that is not far; 0 or greater
     * @return ratio to the others by record
     * @throws IllegalArgumentException if the tolerance is negative or not finite
     */
    public Map<String, Double> fartherThan(double tolerance) {
        Require.nonNegative("tolerance", tolerance, "");
        Map<String, Double> far = new LinkedHashMap<>();
        for (String each : totals.keySet()) {
            double ratio = ratioToOthers(each);
            if (Math.abs(ratio - 1) > tolerance) {
                far.put(each, ratio);
            }
        }
        return Collections.unmodifiableMap(far);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("CommonTotals[" + steps + " steps in " + interval);
        totals.forEach(
                (name, total) -> text.append(", ").append(name).append(' ').append(Text.significant(total, 4)));
        return text.append(']').toString();
    }
}
