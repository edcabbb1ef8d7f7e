package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.rainfall.ddf.EventRarity;
import dev.runnel.rainfall.ddf.ReturnPeriod;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvIssue;
import dev.runnel.timeseries.csv.CsvReport;
import dev.runnel.timeseries.csv.CsvWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The results of one site as CSV: units in the headers, instants in UTC. A file without content is not written. */
final class SiteFiles {
    /** All files that may be written. */
    static final List<String> NAMES = List.of(
            "flow.csv",
            "daily.csv",
            "dry-weather.csv",
            "events.csv",
            "rarity.csv",
            "alarms.csv",
            "surcharge.csv",
            "spills.csv",
            "rejected.csv");

    private static final CsvWriter TABLE = CsvWriter.standard().withDecimals(4);

    private final Path folder;
    private final SiteReview review;

    SiteFiles(Path folder, SiteReview review) {
        this.folder = folder;
        this.review = review;
    }

    void write() {
        flow();
        events();
        rarity();
        surcharge();
        rejected();
    }

    private void flow() {
        FlowRecord record = review.flow().record();
        Map<String, Series> columns = new LinkedHashMap<>();
        columns.put("level_m", record.level());
        if (review.data().velocity().isPresent()) {
            columns.put("velocity_m_per_s", record.velocity());
            columns.put("flow_m3_per_s", record.flow());
        }
        CsvWriter.standard()
                .withDecimals(5)
                .withQuality()
                .withComments(
                        review.site().name() + ": level above the invert, mean velocity, flow; time in UTC",
                        "suspect readings are kept here and left out of the review")
                .write(folder.resolve("flow.csv"), columns);
    }

    private void events() {
        review.rain().ifPresent(rain -> {
            List<String> header = new ArrayList<>(List.of(
                    "start_utc", "end_utc", "depth_mm", "duration_h", "dry_before_h", "dry_before_is", "complete"));
            for (Duration duration : RainFindings.DURATIONS) {
                header.add("peak_" + duration.toMinutes() + "_min_mm");
            }
            header.addAll(List.of("rarest_over_min", "return_period_years", "return_period_is"));
            TABLE.writeTable(
                    folder.resolve("events.csv"),
                    header,
                    rain.storms().stream().map(SiteFiles::event).toList());
        });
    }

    private static List<Object> event(RainFindings.Storm storm) {
        RainfallEvent event = storm.event();
        List<Object> row = new ArrayList<>(List.of(
                event.start(),
                event.end(),
                event.depthMm(),
                hours(event.duration()),
                hours(event.antecedentDryTime()),
                event.antecedent().atLeast() ? "at least" : "known",
                event.isComplete() ? "yes" : "no"));
        for (Duration duration : RainFindings.DURATIONS) {
            row.add(event.peak(duration).depthMm());
        }
        Optional<EventRarity.OverDuration> governing = storm.rarity().flatMap(EventRarity::governing);
        row.add(governing.<Object>map(over -> over.duration().toMinutes()).orElse(""));
        row.add(governing.<Object>map(over -> over.returnPeriod().years()).orElse(""));
        row.add(governing.map(over -> standing(over.returnPeriod())).orElse(""));
        return row;
    }

    /** The return period of each storm over each duration. */
    private void rarity() {
        List<List<?>> rows = new ArrayList<>();
        review.rain()
                .map(RainFindings::storms)
                .orElse(List.of())
                .forEach(storm -> storm.rarity()
                        .ifPresent(rarity -> rarity.durations()
                                .forEach(over -> rows.add(List.of(
                                        storm.event().start(),
                                        over.duration().toMinutes(),
                                        over.peak().start(),
                                        over.peak().depthMm(),
                                        over.returnPeriod().years(),
                                        standing(over.returnPeriod()))))));
        if (!rows.isEmpty()) {
            TABLE.writeTable(
                    folder.resolve("rarity.csv"),
                    List.of(
                            "storm_start_utc",
                            "duration_min",
                            "peak_start_utc",
                            "peak_mm",
                            "return_period_years",
                            "return_period_is"),
                    rows);
        }
    }

    /** Whether a return period is a figure or only a bound of it. */
    private static String standing(ReturnPeriod period) {
        return period.isBelow() ? "shorter" : period.isAbove() ? "longer" : "this";
    }

    private void surcharge() {
        if (!review.flow().surcharges().isEmpty()) {
            TABLE.writeTable(
                    folder.resolve("surcharge.csv"),
                    List.of("start_utc", "end_utc", "duration_h", "peak_above_soffit_m", "peak_utc", "complete"),
                    review.flow().surcharges().stream().map(SiteFiles::period).toList());
        }
    }

    static List<Object> period(SurchargePeriod period) {
        return List.of(
                period.interval().start(),
                period.interval().end(),
                hours(period.duration()),
                period.peakAbove(),
                period.peakTime(),
                period.isComplete() ? "yes" : "no");
    }

    /** Every line that was rejected or of which something was altered. */
    private void rejected() {
        List<List<?>> rows = new ArrayList<>();
        for (CsvReport report : review.data().reports()) {
            for (CsvIssue issue : report.issues()) {
                rows.add(List.of(
                        report.source(),
                        issue.line(),
                        issue.column(),
                        issue.kind().toText(),
                        issue.text()));
            }
        }
        TABLE.writeTable(folder.resolve("rejected.csv"), List.of("file", "line", "column", "kind", "what"), rows);
    }

    private static double hours(Duration duration) {
        return duration.toSeconds() / 3600.0;
    }
}
