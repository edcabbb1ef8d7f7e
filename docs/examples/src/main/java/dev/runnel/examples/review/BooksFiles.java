package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.timeseries.correction.VisitDifference;
import dev.runnel.timeseries.csv.CsvWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What became of the readings by corrections, what visits found, and what follows, as CSV. */
final class BooksFiles {
    private BooksFiles() {}

    static void write(Path folder, SiteReview review) {
        settings(folder, review);
        altered(folder, review);
        visits(folder, review);
        if (!review.visits().proposals().list().isEmpty()) {
            review.visits().proposals().write(folder.resolve("proposals.csv"));
        }
    }

    /** The monitor of each time, where the books say that it changed. */
    private static void settings(Path folder, SiteReview review) {
        SiteBooks books = review.data().books();
        if (books.monitors().isConstant()) {
            return;
        }
        List<List<?>> rows = new ArrayList<>();
        for (MonitorHistory.Stretch each :
                books.monitors().stretches(review.data().record())) {
            PipeMonitor monitor = each.monitor();
            rows.add(List.of(
                    each.interval().start(),
                    each.interval().end(),
                    monitor.bedAboveInvert(),
                    monitor.sensorOffset(),
                    SiteText.law(monitor.conduit().resistance()),
                    monitor.conduit().fullBore().discharge(),
                    monitor.withoutSediment().conduit().fullBore().discharge()));
        }
        CsvWriter.standard()
                .withDecimals(6)
                .withComments("settings of the monitor; full bore by the law of the pipe, above the bed and without it")
                .writeTable(
                        folder.resolve("settings.csv"),
                        List.of(
                                "from_utc",
                                "to_utc",
                                "sediment_m",
                                "sensor_offset_m",
                                "roughness",
                                "full_bore_m3_per_s",
                                "full_bore_clean_m3_per_s"),
                        rows);
    }

    /** Of each altered reading what it was, and by which corrections it is another. */
    private static void altered(Path folder, SiteReview review) {
        List<List<?>> rows = new ArrayList<>();
        review.data().books().corrected().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(entry -> entry.getValue().trail().stream()
                        .filter(each ->
                                review.data().record().contains(each.corrected().time()))
                        .forEach(each -> rows.add(List.of(
                                entry.getKey(),
                                each.raw().time(),
                                cell(each.raw().value()),
                                each.corrected().time(),
                                cell(each.corrected().value()),
                                each.numbers().stream().map(String::valueOf).collect(Collectors.joining(" ")),
                                String.join("; ", each.reasons())))));
        if (!rows.isEmpty()) {
            CsvWriter.standard()
                    .withDecimals(6)
                    .withComments(
                            "m or m/s as the sensor gave it; the corrections are numbered as in their file, from 1")
                    .writeTable(
                            folder.resolve("altered.csv"),
                            List.of("series", "was_at_utc", "was", "time_utc", "value", "corrections", "reasons"),
                            rows);
        }
    }

    private static void visits(Path folder, SiteReview review) {
        List<List<?>> rows = new ArrayList<>();
        for (VisitDifference each : review.visits().differences()) {
            rows.add(VisitTable.row(each));
        }
        if (!rows.isEmpty()) {
            CsvWriter.standard()
                    .withDecimals(6)
                    .withComments(
                            "depth m above the invert, velocity m/s, flow m3/s, clock s; the monitor as corrected")
                    .writeTable(folder.resolve("visits.csv"), VisitTable.COLUMNS, rows);
        }
    }

    private static Object cell(double value) {
        return Double.isNaN(value) ? "" : value;
    }
}
