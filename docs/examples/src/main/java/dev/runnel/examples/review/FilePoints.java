package dev.runnel.examples.review;

import dev.runnel.timeseries.csv.CsvIssue;
import dev.runnel.timeseries.csv.CsvReport;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What needs a person's eye in the files: stamps that cannot be, clocks that change, lines that were lost. */
final class FilePoints {
    private final SiteReview review;
    private final List<String> points = new ArrayList<>();

    private FilePoints(SiteReview review) {
        this.review = review;
    }

    static List<String> of(SiteReview review) {
        FilePoints files = new FilePoints(review);
        files.farStamps();
        files.displacedStamps();
        files.clockChange();
        files.lostLines();
        return files.points;
    }

    /** A clock that was reset, or a damaged line: such readings would stretch the record over years. */
    private void farStamps() {
        farStamps("depth", review.data().depth().lines().far());
        review.data()
                .velocity()
                .ifPresent(velocity -> farStamps("velocity", velocity.lines().far()));
        review.data().rain().ifPresent(rain -> farStamps(rain.what(), rain.far()));
    }

    private void farStamps(String what, List<Instant> far) {
        if (!far.isEmpty()) {
            points.add(Show.count(far.size(), "line") + " of " + what
                    + " stamped more than 30 days from all others and set aside, the first "
                    + Show.timeWithYear(far.get(0), review.site().zone()) + ": was the clock reset?");
        }
    }

    /** By the order of the lines: a clock that was wrong for a while. */
    private void displacedStamps() {
        reports()
                .filter(report -> report.count(CsvIssue.Kind.DISPLACED_STAMP) > 0)
                .map(report ->
                        Show.count(report.count(CsvIssue.Kind.DISPLACED_STAMP), "line") + " of " + report.source()
                                + " stamped with another time than the lines around"
                                + report.issues().stream()
                                        .filter(issue -> issue.kind() == CsvIssue.Kind.DISPLACED_STAMP)
                                        .findFirst()
                                        .map(issue -> ", from line " + issue.line() + " (" + issue.text() + ")")
                                        .orElse("")
                                + ": was the clock of the logger wrong for a while?")
                .distinct()
                .forEach(points::add);
    }

    private void clockChange() {
        long repeated = issues(CsvIssue.Kind.AMBIGUOUS_TIME);
        if (repeated > 0) {
            points.add(Show.count(repeated, "line")
                    + " in the hour that the clock change repeats: which of the two is meant "
                    + "is not written there. \"repeated hour = by order\" in the site file takes them in the order of the "
                    + "file.");
        }
        long skipped = issues(CsvIssue.Kind.SKIPPED_TIME);
        if (skipped > 0) {
            points.add(Show.count(skipped, "line")
                    + " in the hour that the clock change skips: does the logger follow that "
                    + "clock? \"logger clock\" and \"gauge clock\" in the site file say which.");
        }
    }

    /** A file of several quantities is read once for each, and its lines count once. */
    private long issues(CsvIssue.Kind kind) {
        return reports()
                .collect(Collectors.toMap(CsvReport::source, report -> report.count(kind), Math::max))
                .values()
                .stream()
                .mapToLong(Long::longValue)
                .sum();
    }

    private void lostLines() {
        reports()
                .filter(report -> report.rejected() > Attention.MANY_LOST * report.lines())
                .map(report -> report.source() + ": "
                        + Show.percent(report.rejected() / (double) report.lines()) + " of the lines were rejected."
                        + Hints.onRepeats(report))
                .distinct()
                .forEach(points::add);
    }

    private Stream<CsvReport> reports() {
        return review.data().reports().stream();
    }
}
