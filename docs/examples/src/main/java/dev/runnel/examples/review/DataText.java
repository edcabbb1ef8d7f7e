package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.csv.CsvIssue;
import dev.runnel.timeseries.csv.CsvReport;
import dev.runnel.timeseries.quality.QualityFlags;
import dev.runnel.timeseries.quality.Verdict;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;

/** What was received, what of it was rejected and what flagged. */
final class DataText {
    private DataText() {}

    static void put(Page page, SiteData data) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("", "lines", "read", "rejected", "altered", "unusual", "failed", "gaps", "longest"));
        rows.add(row(data.depth()));
        data.velocity().ifPresent(velocity -> rows.add(row(velocity)));
        data.rain()
                .ifPresent(rain -> rain.report()
                        .ifPresent(report -> rows.add(List.of(
                                rain.what(),
                                "" + report.lines(),
                                "" + report.accepted(),
                                "" + report.rejected(),
                                "" + report.altered(),
                                "-",
                                "-",
                                "-",
                                "-"))));
        page.section("data").table("lrrrrrrrr", rows);
        page.say(columns(data));
        joined(page, data);
        lines(page, "depth", data.depth().lines().report());
        flags(page, data.depth(), data.dates());
        data.velocity()
                .ifPresentOrElse(
                        velocity -> {
                            lines(page, "velocity", velocity.lines().report());
                            flags(page, velocity, data.dates());
                        },
                        () -> page.say(data.emptyVelocity()
                                        .map(file ->
                                                file.getFileName() + ": no readings, a header and no line below it; ")
                                        .orElse("")
                                + "no velocity readings: the review is of depth only, there is no flow"));
        data.rain()
                .ifPresentOrElse(
                        rain -> rain.report()
                                .ifPresentOrElse(
                                        report -> lines(page, rain.what(), report), () -> page.say(rain.emptyText())),
                        () -> page.say("no rain gauge: no storms, and no dry days to find dry weather flow on"));
    }

    private static void joined(Page page, SiteData data) {
        List<String> texts = new ArrayList<>(List.of(data.depth().lines().joined()));
        data.velocity().ifPresent(velocity -> texts.add(velocity.lines().joined()));
        data.rain().ifPresent(rain -> texts.add(rain.joined()));
        texts.stream().filter(text -> !text.isEmpty()).forEach(page::say);
    }

    private static String columns(SiteData data) {
        StringBuilder text = new StringBuilder("read as: ").append(column(data.depth()));
        data.velocity().ifPresent(velocity -> text.append("; ").append(column(velocity)));
        data.rain().ifPresent(rain -> text.append("; ").append(rain.readAs()));
        return text.toString();
    }

    private static String column(CheckedReadings readings) {
        return readings.lines().column().what() + " from \"" + readings.lines().header() + "\" in "
                + readings.lines().unit().symbol();
    }

    private static List<String> row(CheckedReadings readings) {
        CsvReport report = readings.lines().report();
        return List.of(
                readings.lines().column().what(),
                "" + report.lines(),
                "" + report.accepted(),
                "" + report.rejected(),
                "" + report.altered(),
                "" + readings.quality().count(Verdict.UNUSUAL),
                "" + readings.quality().count(Verdict.FAIL),
                "" + readings.gaps().size(),
                readings.gaps().stream()
                        .map(Interval::duration)
                        .max(Duration::compareTo)
                        .map(Show::duration)
                        .orElse("-"));
    }

    /** What was wrong with the lines of a file, each kind with its first line. */
    private static void lines(Page page, String what, CsvReport report) {
        StringJoiner kinds = new StringJoiner("; ", what + " lines: ", "").setEmptyValue("");
        for (CsvIssue.Kind kind : CsvIssue.Kind.values()) {
            if (report.count(kind) > 0) {
                long first = report.issues().stream()
                        .filter(issue -> issue.kind() == kind)
                        .mapToLong(CsvIssue::line)
                        .min()
                        .orElse(0);
                kinds.add(report.count(kind) + " " + kind.toText() + " (line " + first + ")");
            }
        }
        if (kinds.length() > 0) {
            page.say(kinds.toString());
        }
    }

    /** What each test found unusual or failed, and when first. */
    private static void flags(Page page, CheckedReadings readings, Dates dates) {
        int missing = readings.lines().series().count(Quality.MISSING);
        if (missing > 0) {
            page.say(readings.lines().column().what() + ": " + Show.count(missing, "reading") + " without a value");
        }
        StringJoiner tests =
                new StringJoiner("; ", readings.lines().column().what() + " tests: ", "").setEmptyValue("");
        for (QualityFlags flags : readings.quality().flags()) {
            if (!flags.raised().isEmpty()) {
                tests.add(flags.check() + counts(flags) + " (from "
                        + dates.time(flags.raised().get(0).time()) + ")");
            }
        }
        if (tests.length() > 0) {
            page.say(tests.toString());
        }
    }

    private static String counts(QualityFlags flags) {
        List<String> counts = new ArrayList<>();
        if (flags.count(Verdict.UNUSUAL) > 0) {
            counts.add(" " + flags.count(Verdict.UNUSUAL) + " unusual");
        }
        if (flags.count(Verdict.FAIL) > 0) {
            counts.add(" " + flags.count(Verdict.FAIL) + " failed");
        }
        return String.join(",", counts);
    }
}
