package dev.runnel.verification.report;

import dev.runnel.verification.Check;
import dev.runnel.verification.Provenance;
import dev.runnel.verification.Results;
import dev.runnel.verification.Selection;
import dev.runnel.verification.Status;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * One page of paper for who signs for the numbers: what was compared, by which version, what passed, what was excluded
 * and why, what it does not say, and lines to fill in by hand. The clock is not read: the same run gives the same page.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SignOffReport {
    /** More would not fit on the page; chosen here. */
    private static final int LINES = 40;

    private static final String BY_HAND = "<span class=\"blank\">&nbsp;</span>";

    private final StringBuilder out = new StringBuilder();
    private final Results results;
    private final Selection selection;

    private SignOffReport(Results results, Selection selection) {
        this.results = results;
        this.selection = selection;
    }

    /**
     * Returns the page.
     *
     * @param results the results
     * @param selection what was compared
     * @param day the day of the run; left open for the pen if empty
     * @return an HTML document that prints on one sheet of A4
     */
    public static String text(Results results, Selection selection, Optional<LocalDate> day) {
        return new SignOffReport(results, selection).page(day);
    }

    private String page(Optional<LocalDate> day) {
        out.append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n");
        out.append("<meta name=\"viewport\" content=\"width=device-width\">\n");
        out.append(
                "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n");
        out.append("<title>Statement of verification</title>\n<style>\n").append(Html.part("report.css"));
        out.append(Html.part("sign-off.css")).append("</style></head><body>\n");
        out.append("<h1>Statement of verification</h1>\n<div class=\"verdict")
                .append(results.exitCode() == 0 ? "" : " bad")
                .append("\">")
                .append(Html.escaped(verdict()))
                .append("</div>\n");
        scope();
        counts();
        exclusions();
        out.append(
                "<h2>What this statement does not say</h2>\n<p>That a source is right, that a formula suits a pipe or a"
                        + " storm, or that a result may be used for a design: that needs a qualified engineer and the local codes."
                        + " Derived values were computed from a published formula by another program; a pass shows that two"
                        + " programs agree. ");
        long open = PublicCalculations.all().stream()
                .filter(method -> method.calculations().isEmpty())
                .count();
        out.append(open).append(" of ").append(PublicCalculations.all().size());
        out.append(" public calculations have no table at all; report.html lists them with the reason.</p>\n");
        out.append("<dl class=\"sign\"><dt>Day</dt><dd>")
                .append(day.map(LocalDate::toString).orElse(BY_HAND))
                .append("</dd><dt>Run by</dt><dd>" + BY_HAND + "</dd><dt>Checked by</dt><dd>" + BY_HAND
                        + "</dd><dt>For</dt><dd>" + BY_HAND + "</dd></dl>\n");
        return out.append("</body></html>\n").toString();
    }

    private String verdict() {
        return switch (results.exitCode()) {
            case 0 ->
                "All " + results.count(Status.PASS)
                        + " values that are not excluded lie within the tolerance stated with their table.";
            case 1 -> results.count(Status.FAIL) + " values lie outside their tolerance: this run proves nothing.";
            default -> "Something could not be run: this run proves nothing.";
        };
    }

    private void scope() {
        out.append("<h2>What was compared</h2>\n<dl class=\"facts\"><dt>Selection</dt><dd>")
                .append(selection.toString().isEmpty() ? "everything" : Html.escaped(selection.toString()))
                .append("</dd>");
        Facts.of(results)
                .forEach((name, value) -> out.append("<dt>")
                        .append(Html.escaped(name))
                        .append("</dt><dd>")
                        .append(Html.escaped(value))
                        .append("</dd>"));
        out.append("</dl>\n");
    }

    private void counts() {
        out.append("<table><tr><th>module</th><th class=\"n\">calculations</th><th class=\"n\">sources</th>"
                + "<th class=\"n\">pass</th><th class=\"n\">fail</th><th class=\"n\">excluded</th>");
        for (Provenance provenance : Provenance.values()) {
            out.append("<th class=\"n\">").append(provenance).append("</th>");
        }
        out.append("</tr>\n");
        Group.byModule(results).forEach(this::row);
        row(new Group("all", results.checks()));
        out.append("</table>\n");
    }

    private void row(Group group) {
        out.append("<tr><td>").append(Html.escaped(group.name())).append("</td>");
        number(Group.by(group.checks(), Check::calculation).size());
        number(Group.by(group.checks(), check -> check.source().citation()).size());
        for (Status status : Status.values()) {
            number(group.count(status));
        }
        for (Provenance provenance : Provenance.values()) {
            number(group.passing(provenance));
        }
        out.append("</tr>\n");
    }

    private void number(long value) {
        out.append("<td class=\"n\">").append(value).append("</td>");
    }

    private void exclusions() {
        List<Group> reasons = Group.by(
                results.checks().stream()
                        .filter(check -> check.status() == Status.EXCLUDED)
                        .toList(),
                check -> check.table() + ": " + check.remark());
        out.append("<h2>Excluded, and why</h2>\n");
        if (reasons.isEmpty()) {
            out.append("<p>Nothing.</p>\n");
            return;
        }
        out.append("<ul class=\"tight\">");
        reasons.stream()
                .limit(LINES)
                .forEach(reason -> out.append("<li>")
                        .append(Html.escaped(reason.name()))
                        .append(
                                reason.checks().size() == 1
                                        ? ""
                                        : " (" + reason.checks().size() + " values)")
                        .append("</li>\n"));
        out.append("</ul>\n");
        if (reasons.size() > LINES) {
            out.append("<p>and ").append(reasons.size() - LINES).append(" further reasons, in report.html.</p>\n");
        }
    }
}
