package dev.runnel.examples.review;

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
        altered(folder, review);
        visits(folder, review);
        if (!review.visits().proposals().list().isEmpty()) {
            review.visits().proposals().write(folder.resolve("proposals.csv"));
        }
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
            rows.add(List.of(
                    each.visit().time(),
                    each.visit().author(),
                    each.quantity(),
                    each.hand(),
                    cell(each.monitor()),
                    cell(each.difference()),
                    each.tolerance(),
                    BooksText.verdict(each)));
        }
        if (!rows.isEmpty()) {
            CsvWriter.standard()
                    .withDecimals(6)
                    .withComments(
                            "depth m above the invert, velocity m/s, flow m3/s, clock s; the monitor as corrected")
                    .writeTable(
                            folder.resolve("visits.csv"),
                            List.of(
                                    "time_utc",
                                    "author",
                                    "quantity",
                                    "by_hand",
                                    "monitor",
                                    "difference",
                                    "tolerance",
                                    "verdict"),
                            rows);
        }
    }

    private static Object cell(double value) {
        return Double.isNaN(value) ? "" : value;
    }
}
