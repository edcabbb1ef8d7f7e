package dev.runnel.verification.report;

import dev.runnel.internal.Text;
import dev.runnel.verification.Check;
import dev.runnel.verification.Provenance;
import dev.runnel.verification.Results;
import dev.runnel.verification.Status;
import java.util.List;
import java.util.Locale;
import org.apiguardian.api.API;

/**
 * The results on one screen: counts by module and source, every failure, every exclusion, and the verdict.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SummaryReport {
    private SummaryReport() {}

    /**
     * Returns the summary.
     *
     * @param results the results
     * @return lines of plain text
     */
    public static String text(Results results) {
        StringBuilder out = new StringBuilder();
        for (Group module : Group.byModule(results)) {
            out.append(module.name()).append(System.lineSeparator());
            line(out, "  pass  fail  excluded  worst  source", "");
            for (Group source :
                    Group.by(module.checks(), check -> check.source().toString())) {
                line(out, counts(source), source.name());
            }
            out.append(System.lineSeparator());
        }
        if (!results.checks().isEmpty()) {
            line(out, "\"worst\" is the largest share of its tolerance that a passing value uses.", "");
        }
        listed(out, results, Status.EXCLUDED, "Excluded, each with its reason");
        listed(out, results, Status.FAIL, "FAILED");
        if (!results.problems().isEmpty()) {
            line(out, System.lineSeparator() + "COULD NOT RUN", "");
            results.problems().forEach(problem -> line(out, "  " + problem, ""));
        }
        out.append(System.lineSeparator());
        totals(out, results);
        return out.toString();
    }

    private static String counts(Group group) {
        return String.format(
                Locale.ROOT,
                "%6d%6d%10d%7.2f  ",
                group.count(Status.PASS),
                group.count(Status.FAIL),
                group.count(Status.EXCLUDED),
                group.worstShare());
    }

    private static void listed(StringBuilder out, Results results, Status status, String title) {
        List<Check> checks = results.checks().stream()
                .filter(check -> check.status() == status)
                .toList();
        if (checks.isEmpty()) {
            return;
        }
        line(out, System.lineSeparator() + title, "");
        for (Check check : checks) {
            line(
                    out,
                    "  " + check.name() + ": expected " + check.printed() + ", computed " + computed(check)
                            + ", tolerance " + Text.significant(check.tolerance(), 3) + " " + check.unit(),
                    (check.remark().isEmpty() ? "" : " - " + check.remark()) + place(check));
        }
    }

    /** Eight digits, or all of them where eight would hide by how much the answer is off. */
    private static String computed(Check check) {
        if (check.computed().isEmpty()) {
            return "none";
        }
        double answer = check.computed().getAsDouble();
        String eight = Text.significant(answer, 8);
        boolean hides = Math.abs(Double.parseDouble(eight) - answer) > check.tolerance() / 10;
        return hides && check.status() == Status.FAIL ? Double.toString(answer) : eight;
    }

    /** For who looks for the fault: the column of the table, the named calculation and the method it asks. */
    private static String place(Check check) {
        if (check.status() != Status.FAIL || check.column().isEmpty()) {
            return "";
        }
        String asked = PublicCalculations.askedBy(check.calculation());
        return "; column " + check.column() + ", calculation " + check.calculation()
                + (asked.isEmpty() ? "" : ", which asks " + asked);
    }

    private static void totals(StringBuilder out, Results results) {
        for (Group module : Group.byModule(results)) {
            line(out, module.name() + ": " + tally(module), "");
        }
        if (!results.checks().isEmpty()) {
            Group all = new Group("all", results.checks());
            line(out, "Total: " + tally(all) + "; " + results.blanks() + " blank cells not compared", "");
        }
        line(out, verdict(results), "");
    }

    private static String tally(Group group) {
        StringBuilder text = new StringBuilder();
        text.append(group.checks().size()).append(" values from ");
        text.append(Group.by(group.checks(), check -> check.source().citation()).size());
        text.append(" sources, ").append(group.count(Status.PASS)).append(" pass");
        String separator = " (";
        for (Provenance provenance : Provenance.values()) {
            long count = group.passing(provenance);
            if (count > 0) {
                text.append(separator).append(count).append(' ').append(provenance);
                separator = ", ";
            }
        }
        return text + (separator.equals(", ") ? ")" : "") + ", " + group.count(Status.FAIL) + " fail, "
                + group.count(Status.EXCLUDED) + " excluded";
    }

    private static String verdict(Results results) {
        return switch (results.exitCode()) {
            case 0 -> "PASS: every value that is not excluded lies within its tolerance.";
            case 1 -> "FAIL: " + results.count(Status.FAIL) + " values lie outside their tolerance.";
            default ->
                results.problems().isEmpty()
                        ? "COULD NOT RUN: nothing was checked."
                        : "COULD NOT RUN: " + results.problems().size() + " problems, see above.";
        };
    }

    private static void line(StringBuilder out, String start, String end) {
        out.append(start).append(end).append(System.lineSeparator());
    }
}
