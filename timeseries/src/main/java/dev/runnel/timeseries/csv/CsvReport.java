package dev.runnel.timeseries.csv;

import dev.runnel.timeseries.csv.CsvIssue.Kind;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * The account of a file: every line of data is either accepted or rejected. Immutable and thread-safe.
 *
 * <p>Comments, blank lines, the header and what stands before it are not lines of data. An altered line is an accepted
 * one of which something was not taken as written. Counts are exact; the list of issues ends at a limit.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CsvReport {
    private final String source;
    private final long lines;
    private final long accepted;
    private final long altered;
    private final Map<Kind, Long> counts;
    private final List<CsvIssue> issues;

    CsvReport(String source, long lines, long accepted, long altered, Map<Kind, Long> counts, List<CsvIssue> issues) {
        this.source = source;
        this.lines = lines;
        this.accepted = accepted;
        this.altered = altered;
        this.counts = new EnumMap<>(Kind.class);
        this.counts.putAll(counts);
        this.issues = List.copyOf(issues);
    }

    /**
     * Returns the account of several files that are read as one, such as one for each month. Each issue names its file.
     *
     * @param source what the files are called together
     * @param reports their accounts
     * @return the sums
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public static CsvReport joined(String source, Collection<CsvReport> reports) {
        Objects.requireNonNull(source, "source");
        Map<Kind, Long> counts = new EnumMap<>(Kind.class);
        List<CsvIssue> issues = new ArrayList<>();
        for (CsvReport each : reports) {
            each.counts.forEach((kind, count) -> counts.merge(kind, count, Long::sum));
            each.issues.forEach(issue -> issues.add(
                    new CsvIssue(issue.line(), issue.column(), issue.kind(), each.source + ": " + issue.text())));
        }
        return new CsvReport(
                source,
                reports.stream().mapToLong(CsvReport::lines).sum(),
                reports.stream().mapToLong(CsvReport::accepted).sum(),
                reports.stream().mapToLong(CsvReport::altered).sum(),
                counts,
                issues);
    }

    /**
     * Returns the account without issues that have turned out to be unfounded, and of lines that were accepted: behind one
     * line of the year 2099 all others are out of order. A line without any other issue is as it was written.
     *
     * @param unfounded tells whether an issue is
     * @return the account
     * @throws IllegalArgumentException if not all issues are listed
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public CsvReport withoutIssues(Predicate<CsvIssue> unfounded) {
        Objects.requireNonNull(unfounded, "unfounded");
        if (issueCount() != issues.size()) {
            throw new IllegalArgumentException("report must list all its issues, lists " + issues.size() + " of "
                    + issueCount() + ": the layout must set another limit");
        }
        Map<Kind, Long> left = new EnumMap<>(counts);
        List<CsvIssue> founded = new ArrayList<>();
        Set<Long> withdrawn = new HashSet<>();
        for (CsvIssue issue : issues) {
            if (unfounded.test(issue)) {
                left.computeIfPresent(issue.kind(), (kind, count) -> count > 1 ? count - 1 : null);
                withdrawn.add(issue.line());
            } else {
                founded.add(issue);
            }
        }
        founded.forEach(issue -> withdrawn.remove(issue.line()));
        return new CsvReport(source, lines, accepted, altered - withdrawn.size(), left, founded);
    }

    /**
     * Returns what was read.
     *
     * @return name of the file
     */
    public String source() {
        return source;
    }

    /**
     * Returns the number of lines of data.
     *
     * @return accepted and rejected lines
     */
    public long lines() {
        return lines;
    }

    /**
     * Returns the number of lines that gave a reading or an instant.
     *
     * @return accepted lines, altered ones included
     */
    public long accepted() {
        return accepted;
    }

    /**
     * Returns the number of lines that gave nothing.
     *
     * @return rejected lines
     */
    public long rejected() {
        return lines - accepted;
    }

    /**
     * Returns the number of accepted lines of which something was not taken as written.
     *
     * @return altered lines
     */
    public long altered() {
        return altered;
    }

    /**
     * Returns how many issues of one kind there were, also beyond those listed.
     *
     * @param kind the kind
     * @return exact count
     */
    public long count(Kind kind) {
        Objects.requireNonNull(kind, "kind");
        return counts.getOrDefault(kind, 0L);
    }

    /**
     * Returns how many issues there were, also beyond those listed.
     *
     * @return exact count
     */
    public long issueCount() {
        return counts.values().stream().mapToLong(Long::longValue).sum();
    }

    /**
     * Returns the issues in the order of their lines.
     *
     * @return the first ones, as many as the layout's limit
     */
    public List<CsvIssue> issues() {
        return issues;
    }

    @Override
    public String toString() {
        String kinds = counts.entrySet().stream()
                .map(entry -> entry.getValue() + " " + entry.getKey().toText())
                .collect(Collectors.joining(", "));
        return "CsvReport[" + source + ": " + lines + " lines, " + accepted + " accepted, " + rejected() + " rejected, "
                + altered + " altered" + (kinds.isEmpty() ? "" : "; " + kinds) + "]";
    }
}
