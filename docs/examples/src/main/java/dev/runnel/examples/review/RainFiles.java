package dev.runnel.examples.review;

import dev.runnel.rainfall.ddf.DdfBand;
import dev.runnel.rainfall.ddf.EventRarity;
import dev.runnel.rainfall.ddf.ReturnPeriod;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.csv.CsvIssue;
import dev.runnel.timeseries.csv.CsvReport;
import dev.runnel.timeseries.csv.CsvWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The results of a gauge as CSV, and the lines that were rejected. A file without content is not written. */
final class RainFiles {
    private static final CsvWriter TABLE = CsvWriter.standard().withDecimals(4);

    private final Path folder;

    RainFiles(Path folder) {
        this.folder = folder;
    }

    void write(RainFindings rain) {
        events(rain);
        rarity(rain);
    }

    /** Rain of each local day, for a gauge without a monitor. */
    void daily(RainFindings rain) {
        table(
                "daily.csv",
                List.of("local_date", "day_is", "rain_mm"),
                rain.daily().days().stream()
                        .map(day -> List.of(day.date(), rain.kind(day.date()), day.depthMm()))
                        .toList());
    }

    private void table(String file, List<String> header, List<? extends List<?>> rows) {
        if (!rows.isEmpty()) {
            TABLE.writeTable(folder.resolve(file), header, rows);
        }
    }

    private void events(RainFindings rain) {
        List<String> header = new ArrayList<>(
                List.of("start_utc", "end_utc", "depth_mm", "duration_h", "dry_before_h", "dry_before_is", "complete"));
        for (Duration duration : RainFindings.DURATIONS) {
            header.add("peak_" + duration.toMinutes() + "_min_mm");
        }
        header.addAll(List.of(
                "rarest_over_min",
                "return_period_years",
                "return_period_is",
                "lower_years",
                "lower_is",
                "upper_years",
                "upper_is"));
        table("events.csv", header, rain.storms().stream().map(RainFiles::event).toList());
    }

    private static List<Object> event(RainFindings.Storm storm) {
        RainfallEvent event = storm.event();
        List<Object> row = new ArrayList<>(List.of(
                event.start(),
                event.end(),
                event.depthMm(),
                hours(event.duration()),
                hours(event.antecedentDryTime()),
                event.antecedent().isAtLeast() ? "at least" : "known",
                event.isComplete() ? "yes" : "no"));
        for (Duration duration : RainFindings.DURATIONS) {
            row.add(RainFindings.peak(event, duration)
                    .<Object>map(PeakDepth::depthMm)
                    .orElse(""));
        }
        Optional<EventRarity.OverDuration> governing = storm.rarity().flatMap(EventRarity::governing);
        row.add(governing.<Object>map(over -> over.duration().toMinutes()).orElse(""));
        row.add(governing.<Object>map(over -> over.returnPeriod().years()).orElse(""));
        row.add(governing.map(over -> standing(over)).orElse(""));
        row.addAll(limits(storm.rarity().flatMap(EventRarity::limits)));
        return row;
    }

    /** The return period of each storm over each duration. */
    private void rarity(RainFindings rain) {
        List<List<?>> rows = new ArrayList<>();
        rain.storms()
                .forEach(storm -> storm.rarity()
                        .ifPresent(rarity -> rarity.durations().forEach(over -> {
                            List<Object> row = new ArrayList<>(List.of(
                                    storm.event().start(),
                                    over.duration().toMinutes(),
                                    over.peak().start(),
                                    over.peak().depthMm(),
                                    over.returnPeriod().years(),
                                    standing(over)));
                            row.addAll(limits(over.limits()));
                            rows.add(row);
                        })));
        table(
                "rarity.csv",
                List.of(
                        "storm_start_utc",
                        "duration_min",
                        "peak_start_utc",
                        "peak_mm",
                        "return_period_years",
                        "return_period_is",
                        "lower_years",
                        "lower_is",
                        "upper_years",
                        "upper_is"),
                rows);
    }

    /** Limits of confidence, each with whether it is a figure or a bound; blank without. */
    private static List<Object> limits(Optional<DdfBand.Rarity> limits) {
        return limits.map(found -> List.<Object>of(
                        found.lower().years(),
                        standing(found.lower()),
                        found.upper().years(),
                        standing(found.upper())))
                .orElse(List.of("", "", "", ""));
    }

    /** Whether a return period is a figure or only a bound of it. */
    private static String standing(EventRarity.OverDuration over) {
        ReturnPeriod period = over.returnPeriod();
        if (over.isAtLeast() && !period.isAbove()) {
            return period.isBelow() ? "not known" : "at least";
        }
        return standing(period);
    }

    private static String standing(ReturnPeriod period) {
        return period.isBelow() ? "shorter" : period.isAbove() ? "longer" : "this";
    }

    /** Every line that was rejected or of which something was altered. */
    void rejected(List<CsvReport> reports) {
        List<List<?>> rows = new ArrayList<>();
        for (CsvReport report : reports) {
            for (CsvIssue issue : report.issues()) {
                rows.add(List.of(
                        report.source(),
                        issue.line(),
                        issue.column(),
                        issue.kind().toText(),
                        issue.text()));
            }
        }
        table("rejected.csv", List.of("file", "line", "column", "kind", "what"), rows);
    }

    private static double hours(Duration duration) {
        return duration.toSeconds() / 3600.0;
    }
}
