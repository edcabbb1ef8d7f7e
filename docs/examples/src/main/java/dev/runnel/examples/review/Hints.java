package dev.runnel.examples.review;

import dev.runnel.timeseries.csv.CsvIssue;
import dev.runnel.timeseries.csv.CsvReport;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the lines that could not be read look like, and which key of the site file would say so. */
final class Hints {
    private static final Pattern QUOTED = Pattern.compile("\"([^\"]*)\"");

    private Hints() {}

    /** Returns the first value that is no number, and what may be wrong with it; else nothing. */
    static String onNumbers(CsvReport report) {
        return first(report, CsvIssue.Kind.UNREADABLE_NUMBER)
                .map(issue -> "; " + issue
                        + (quoted(issue).matches("-?[0-9.]*,[0-9]+")
                                ? "; \"decimal mark = comma\" in " + SiteFile.NAME + " reads such numbers"
                                : ""))
                .orElse("");
    }

    /** Returns which time pattern the first time that cannot be read may need; else nothing. */
    static String onTimes(CsvReport report) {
        return first(report, CsvIssue.Kind.UNREADABLE_TIME)
                .map(issue -> "; \"time pattern = " + pattern(quoted(issue)) + "\" in " + SiteFile.NAME
                        + " says how times are written")
                .orElse("");
    }

    /** Returns what may be wrong where most lines repeat a time; else nothing. */
    static String onRepeats(CsvReport report) {
        long repeats = report.count(CsvIssue.Kind.CONFLICTING_DUPLICATE) + report.count(CsvIssue.Kind.DUPLICATE);
        return 2 * repeats > report.lines()
                ? " Most repeat a time that was there before: does the time of day stand in a column of its own? \"time of "
                        + "day column = ...\" in " + SiteFile.NAME + " names it."
                : "";
    }

    private static String pattern(String time) {
        if (!time.matches("[0-9]+([.,][0-9]+)?")) {
            return time.matches("[0-9]{1,2}/[0-9]{1,2}/[0-9]{4}.*") ? "dd/MM/yyyy HH:mm, or MM/dd/yyyy HH:mm," : "...";
        }
        double number = Double.parseDouble(time.replace(',', '.'));
        if (number >= 1e12) {
            return "milliseconds since 1970";
        }
        return number >= 1e8 ? "seconds since 1970" : number >= 1e4 && number < 1e5 ? "spreadsheet days" : "...";
    }

    private static Optional<CsvIssue> first(CsvReport report, CsvIssue.Kind kind) {
        return report.issues().stream().filter(issue -> issue.kind() == kind).findFirst();
    }

    private static String quoted(CsvIssue issue) {
        Matcher matcher = QUOTED.matcher(issue.text());
        return matcher.find() ? matcher.group(1) : "";
    }
}
