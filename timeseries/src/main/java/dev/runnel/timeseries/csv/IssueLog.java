package dev.runnel.timeseries.csv;

import dev.runnel.timeseries.csv.CsvIssue.Kind;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Keeps the account of lines while a file is read. */
final class IssueLog {
    private final String source;
    private final int limit;
    private final Map<Kind, Long> counts = new EnumMap<>(Kind.class);
    private final List<CsvIssue> issues = new ArrayList<>();
    private long lines;
    private long accepted;
    private long altered;

    IssueLog(String source, int limit) {
        this.source = source;
        this.limit = limit;
    }

    void line() {
        lines++;
    }

    /** Accounts for lines of which nothing is to be said. */
    void acceptedAsWritten(int count) {
        lines += count;
        accepted += count;
    }

    void accepted(boolean asWritten) {
        accepted++;
        altered += asWritten ? 0 : 1;
    }

    void issue(long line, int column, Kind kind, String text) {
        counts.merge(kind, 1L, Long::sum);
        if (issues.size() < limit) {
            issues.add(new CsvIssue(line, column, kind, text));
        }
    }

    CsvReport report() {
        return new CsvReport(source, lines, accepted, altered, counts, issues);
    }
}
