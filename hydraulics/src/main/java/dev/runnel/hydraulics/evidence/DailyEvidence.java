package dev.runnel.hydraulics.evidence;

import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.apiguardian.api.API;

/**
 * What a monitor saw on one dry day, in medians that a few odd readings do not move. Immutable and thread-safe.
 *
 * <p>The medians are over the pairs of readings that are usable and in which water flows or stands in the section (part full
 * or surcharged, in either direction). The mean flow is over all usable flows of the day, an empty pipe counting as 0. A
 * day is a local date in the zone of the site: 23 or 25 hours long when the clocks change.
 *
 * <p>What this is not: comparable between days that were seen at different hours. Look at the coverage first.
 *
 * @param date local date
 * @param readings number of pairs the medians are made of; at least 1
 * @param coverage share of the hours of the day with at least one such pair, in [0, 1]
 * @param medianLevel median level above the invert, m
 * @param medianVelocity median of the measured mean velocity, m/s
 * @param medianRatio median of measured over uniform-flow velocity
 * @param meanFlow mean flow, m³/s
 * @param unchangedVelocityShare share of the pairs whose velocity is exactly that of the pair before, in [0, 1]; near 1 when
 *     the velocity sensor is frozen
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record DailyEvidence(
        LocalDate date,
        int readings,
        double coverage,
        double medianLevel,
        double medianVelocity,
        double medianRatio,
        double meanFlow,
        double unchangedVelocityShare) {
    /**
     * Checks the range.
     *
     * @param date local date
     * @param readings number of pairs; at least 1
     * @param coverage share of the hours of the day, in [0, 1]
     * @param medianLevel median level above the invert, m; 0 or greater
     * @param medianVelocity median velocity, m/s; finite
     * @param medianRatio median of measured over uniform-flow velocity; finite
     * @param meanFlow mean flow, m³/s; finite
     * @param unchangedVelocityShare share of the pairs with an unchanged velocity, in [0, 1]
     * @throws IllegalArgumentException if a value is out of range
     */
    public DailyEvidence {
        Objects.requireNonNull(date, "date");
        Require.atLeast("readings", readings, 1);
        Require.inRange("coverage", coverage, 0, 1, "");
        Require.nonNegative("medianLevel", medianLevel, "m");
        Require.finite("medianVelocity", medianVelocity, "m/s");
        Require.finite("medianRatio", medianRatio, "");
        Require.finite("meanFlow", meanFlow, "m3/s");
        Require.inRange("unchangedVelocityShare", unchangedVelocityShare, 0, 1, "");
    }

    /**
     * Returns the evidence of the dry days of a record.
     *
     * @param record the record of a monitor
     * @param dryDates dates to look at, for example the dry days found in the rain
     * @param zone zone of the site, in which the dates are meant
     * @return one item for each of the dates on which a usable pair was read, in order; a date without one is left out
     */
    public static List<DailyEvidence> of(FlowRecord record, Set<LocalDate> dryDates, ZoneId zone) {
        Objects.requireNonNull(dryDates, "dryDates");
        Series ratios = record.velocityRatio();
        List<DailyEvidence> days = new ArrayList<>();
        for (LocalDate date : new TreeSet<>(dryDates)) {
            Interval day = Interval.of(
                    date.atStartOfDay(zone).toInstant(),
                    date.plusDays(1).atStartOfDay(zone).toInstant());
            Day collected = new Day(record, ratios, day);
            if (collected.size > 0) {
                days.add(collected.evidence(date));
            }
        }
        return List.copyOf(days);
    }

    /** The usable pairs of one day. */
    private static final class Day {
        private static final long HOUR = Duration.ofHours(1).toNanos();

        private final double[] levels;
        private final double[] velocities;
        private final double[] dayRatios;
        private final Statistics flow;
        private final double coverage;
        private int size;
        private int hours;
        private long lastHour = -1;

        Day(FlowRecord record, Series ratios, Interval day) {
            int from = ratios.firstIndexAtOrAfter(day.start());
            int to = ratios.firstIndexAtOrAfter(day.end());
            levels = new double[to - from];
            velocities = new double[to - from];
            dayRatios = new double[to - from];
            long start = EpochNanos.of(day.start());
            for (int i = from; i < to; i++) {
                take(record, ratios, i, start);
            }
            coverage = hours / Math.ceil(day.hours());
            flow = Statistics.of(record.flow().slice(day).toUsableValues());
        }

        private void take(FlowRecord record, Series ratios, int i, long start) {
            if (ratios.quality(i).isUsable()) {
                levels[size] = record.level().value(i);
                velocities[size] = record.velocity().value(i);
                dayRatios[size] = ratios.value(i);
                long hour = (ratios.epochNanos(i) - start) / HOUR;
                hours += hour == lastHour ? 0 : 1;
                lastHour = hour;
                size++;
            }
        }

        DailyEvidence evidence(LocalDate date) {
            int unchanged = 0;
            for (int i = 1; i < size; i++) {
                unchanged += velocities[i] == velocities[i - 1] ? 1 : 0;
            }
            return new DailyEvidence(
                    date,
                    size,
                    coverage,
                    median(levels),
                    median(velocities),
                    median(dayRatios),
                    flow.mean(),
                    size == 1 ? 0 : (double) unchanged / (size - 1));
        }

        private double median(double[] values) {
            return Statistics.of(java.util.Arrays.copyOf(values, size)).median();
        }
    }

    @Override
    public String toString() {
        return "DailyEvidence[" + date + ", " + readings + " readings, " + Text.fixed(100 * coverage, 0)
                + " % of the hours, level " + Text.fixed(medianLevel, 3) + " m, velocity "
                + Text.fixed(medianVelocity, 3) + " m/s, ratio " + Text.fixed(medianRatio, 3) + ", mean flow "
                + Text.significant(meanFlow, 4) + " m3/s]";
    }
}
