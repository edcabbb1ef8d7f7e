package dev.runnel.timeseries.balance;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.csv.CsvWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * One line of the annual return of an overflow: what it discharged in one year or season, and how much of that time was
 * observed. Immutable and thread-safe.
 *
 * <p>Discharges that run over an end of the period are cut there and their volume shared by time; how many were is told.
 * Uncertain discharges stand apart: the count with them is a second figure. Nothing is added for time not observed.
 *
 * @param overflow name of the overflow
 * @param label name of the period, for example {@code 2026} or {@code bathing season 2026}
 * @param period half-open
 * @param spills counted spills of the certain discharges
 * @param spillsWithUncertain counted spills if the uncertain ones are spills too
 * @param discharges certain discharges, after merging if the rule merges
 * @param uncertain uncertain discharges
 * @param duration time of the certain discharges before any counting in blocks
 * @param volume their volume as far as it is known, m³
 * @param withoutVolume certain discharges whose volume is not known
 * @param cut discharges, certain or not, that run over an end of the period
 * @param observed share of the period in which discharges could be seen, in [0, 1]
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record OverflowReturn(
        String overflow,
        String label,
        Interval period,
        long spills,
        long spillsWithUncertain,
        long discharges,
        int uncertain,
        Duration duration,
        double volume,
        int withoutVolume,
        int cut,
        double observed) {
    /**
     * Checks that nothing is missing.
     *
     * @param overflow name of the overflow
     * @param label label
     * @param period half-open
     * @param spills counted spills of the certain discharges
     * @param spillsWithUncertain counted spills if the uncertain ones are spills too
     * @param discharges certain discharges, after merging if the rule merges
     * @param uncertain uncertain discharges
     * @param duration time of the certain discharges before any counting in blocks
     * @param volume their volume as far as it is known, m³
     * @param withoutVolume certain discharges whose volume is not known
     * @param cut discharges, certain or not, that run over an end of the period
     * @param observed share of the period in which discharges could be seen, in [0, 1]
     */
    public OverflowReturn {
        Objects.requireNonNull(overflow, "overflow");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(period, "period");
        Objects.requireNonNull(duration, "duration");
    }

    private static final List<String> COLUMNS = List.of(
            "overflow",
            "period",
            "from",
            "to",
            "spills",
            "spills with uncertain",
            "discharges",
            "uncertain discharges",
            "hours",
            "volume m3",
            "discharges without volume",
            "discharges cut at an end",
            "percent observed");

    /**
     * Makes the line of a calendar year.
     *
     * @param overflow name of the overflow
     * @param year the year
     * @param zone zone of its ends
     * @param rule how spills are counted
     * @param discharges all that are known, in order of time, none overlapping
     * @param observed when discharges could be seen, in any order
     * @return the line
     * @throws IllegalArgumentException if discharges overlap or are not in order
     */
    public static OverflowReturn ofYear(
            String overflow,
            int year,
            ZoneId zone,
            SpillCount rule,
            List<Discharge> discharges,
            List<Interval> observed) {
        Objects.requireNonNull(overflow, "overflow");
        return ofPeriod(
                overflow,
                String.valueOf(year),
                days(LocalDate.of(year, 1, 1), LocalDate.of(year, 12, 31), zone),
                rule,
                discharges,
                observed);
    }

    /**
     * Makes the line of a bathing season. England's is 15 May to 30 September, Scotland's 1 June to 15 September, both days
     * included.
     *
     * @param overflow name of the overflow
     * @param year the year
     * @param first first day
     * @param last last day, included; not before the first
     * @param zone zone of its ends
     * @param rule how spills are counted
     * @param discharges all that are known, in order of time, none overlapping
     * @param observed when discharges could be seen, in any order
     * @return the line
     * @throws IllegalArgumentException if the season ends before it begins, or discharges overlap or are not in order
     */
    public static OverflowReturn ofSeason(
            String overflow,
            int year,
            MonthDay first,
            MonthDay last,
            ZoneId zone,
            SpillCount rule,
            List<Discharge> discharges,
            List<Interval> observed) {
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(last, "last");
        if (last.isBefore(first)) {
            throw new IllegalArgumentException("last must not be before first, " + first + ", was " + last);
        }
        return ofPeriod(
                overflow,
                "bathing season " + year,
                days(first.atYear(year), last.atYear(year), zone),
                rule,
                discharges,
                observed);
    }

    private static Interval days(LocalDate first, LocalDate last, ZoneId zone) {
        return Interval.of(
                first.atStartOfDay(zone).toInstant(),
                last.plusDays(1).atStartOfDay(zone).toInstant());
    }

    /**
     * Makes the line of any period.
     *
     * @param overflow name of the overflow
     * @param label name of the period
     * @param period half-open, not empty
     * @param rule how spills are counted
     * @param discharges all that are known, in order of time, none overlapping
     * @param observed when discharges could be seen, in any order
     * @return the line
     * @throws IllegalArgumentException if the period is empty, or discharges overlap or are not in order
     */
    public static OverflowReturn ofPeriod(
            String overflow,
            String label,
            Interval period,
            SpillCount rule,
            List<Discharge> discharges,
            List<Interval> observed) {
        Objects.requireNonNull(overflow, "overflow");
        Objects.requireNonNull(label, "label");
        if (period.isEmpty()) {
            throw new IllegalArgumentException("period must not be empty, was " + period);
        }
        List<Interval> certain = new ArrayList<>();
        List<Interval> all = new ArrayList<>();
        double volume = 0;
        int withoutVolume = 0;
        int cut = 0;
        for (Discharge each : discharges) {
            List<Interval> inside = Discharges.within(List.of(each.interval()), period);
            if (inside.isEmpty()) {
                continue;
            }
            Interval part = inside.get(0);
            cut += part.equals(each.interval()) ? 0 : 1;
            all.add(part);
            if (each.isCertain()) {
                certain.add(part);
                withoutVolume += Double.isNaN(each.volume()) ? 1 : 0;
                volume += Double.isNaN(each.volume())
                        ? 0
                        : each.volume() * (nanos(part) / (double) nanos(each.interval()));
            }
        }
        SpillTally tally = rule.count(certain);
        long seen = Discharges.within(Discharges.joined(filled(observed), Duration.ZERO), period).stream()
                .mapToLong(OverflowReturn::nanos)
                .sum();
        return new OverflowReturn(
                overflow,
                label,
                period,
                tally.count(),
                rule.count(all).count(),
                tally.discharges(),
                all.size() - certain.size(),
                tally.duration(),
                volume,
                withoutVolume,
                cut,
                seen / (double) nanos(period));
    }

    private static List<Interval> filled(List<Interval> observed) {
        return observed.stream().filter(each -> !each.isEmpty()).toList();
    }

    private static long nanos(Interval interval) {
        return EpochNanos.nonNegative("interval", interval.duration());
    }

    /**
     * Writes lines as a table, the durations in hours as plain numbers: a spreadsheet takes what looks like a time for one.
     *
     * @param file the file, replaced as a whole if there is one
     * @param lines the lines
     * @throws java.io.UncheckedIOException if the file cannot be written
     */
    public static void write(Path file, List<OverflowReturn> lines) {
        List<List<Object>> rows = new ArrayList<>();
        for (OverflowReturn each : lines) {
            rows.add(List.of(
                    each.overflow,
                    each.label,
                    each.period.start(),
                    each.period.end(),
                    each.spills,
                    each.spillsWithUncertain,
                    each.discharges,
                    each.uncertain,
                    Text.fixed(each.hours(), 2),
                    Text.significant(each.volume, 4),
                    each.withoutVolume,
                    each.cut,
                    Text.fixed(100 * each.observed, 2)));
        }
        CsvWriter.standard().writeTable(file, COLUMNS, rows);
    }

    /**
     * Returns the time of the certain discharges.
     *
     * @return hours
     */
    public double hours() {
        return duration.toNanos() / 3.6e12;
    }

    @Override
    public String toString() {
        return "OverflowReturn[" + overflow + ", " + label + ": " + spills + " spills"
                + (spillsWithUncertain == spills ? "" : " (" + spillsWithUncertain + " with uncertain ones)") + ", "
                + discharges + " discharges, " + Text.duration(duration) + ", "
                + Text.significant(volume, 4) + " m3"
                + (withoutVolume == 0 ? "" : ", " + withoutVolume + " without volume")
                + (cut == 0 ? "" : ", " + cut + " cut at an end") + ", " + Text.significant(100 * observed, 4)
                + " % observed]";
    }
}
