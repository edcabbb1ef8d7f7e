package dev.runnel.verification.report;

import dev.runnel.internal.Text;
import dev.runnel.verification.Check;
import dev.runnel.verification.Provenance;
import dev.runnel.verification.Results;
import dev.runnel.verification.Status;
import java.util.List;
import java.util.NavigableSet;
import java.util.StringJoiner;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * The results as one page without any other file: verdict, counts, an index by source and by calculation with every
 * deviation drawn against its tolerance, the public calculations and what stands behind them, and every value on request.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class HtmlReport {
    private final StringBuilder out = new StringBuilder();
    private final Results results;

    private HtmlReport(Results results) {
        this.results = results;
    }

    /**
     * Returns the page.
     *
     * @param results the results
     * @return an HTML document
     */
    public static String text(Results results) {
        return new HtmlReport(results).page();
    }

    private String page() {
        out.append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n");
        out.append("<meta name=\"viewport\" content=\"width=device-width\">\n");
        out.append(
                "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline';"
                        + " script-src 'unsafe-inline'; img-src data:\">\n");
        out.append("<title>Runnel verification</title>\n<style>\n")
                .append(Html.part("report.css"))
                .append("</style></head><body>\n<h1>Runnel verification</h1>\n");
        out.append(
                "<p class=\"soft\">Expected values beside what the library computes. A value passes if it lies within the"
                        + " tolerance stated with its table. The columns from &quot;published&quot; on split the values"
                        + " that pass by where the expected value comes from.</p>\n");
        verdict();
        counts();
        facts();
        out.append(
                "<p><label for=\"find\">Find</label> <input id=\"find\" type=\"search\" size=\"40\""
                        + " placeholder=\"source, calculation or class\"> <span id=\"found\" class=\"soft\" role=\"status\"></span></p>\n");
        List<Group> groups = sources();
        calculations();
        classes();
        withoutPublished();
        excluded();
        out.append("<script type=\"text/plain\" id=\"data\">").append(PackedRows.of(groups));
        out.append("</script>\n<script>\n").append(Html.part("report.js")).append("</script>\n");
        return out.append("</body></html>\n").toString();
    }

    private void verdict() {
        int code = results.exitCode();
        out.append("<div class=\"verdict").append(code == 0 ? "" : " bad").append("\">");
        if (code == 0) {
            out.append("Every value that is not excluded passes.");
        } else if (code == 1) {
            out.append(results.count(Status.FAIL)).append(" values fail.");
        } else {
            out.append("Could not run:").append(results.problems().isEmpty() ? " nothing was checked." : "");
            results.problems()
                    .forEach(problem ->
                            out.append("<p>").append(Html.escaped(problem)).append("</p>"));
        }
        out.append("</div>\n");
    }

    private void counts() {
        out.append("<table><tr><th>module</th><th class=\"n\">sources</th><th class=\"n\">values</th>"
                + "<th class=\"n\">pass</th><th class=\"n\">fail</th><th class=\"n\">excluded</th>");
        for (Provenance provenance : Provenance.values()) {
            out.append("<th class=\"n\">").append(provenance).append("</th>");
        }
        out.append("</tr>\n");
        for (Group module : Group.byModule(results)) {
            out.append("<tr><td>").append(Html.escaped(module.name())).append("</td>");
            number(Group.by(module.checks(), check -> check.source().citation()).size());
            number(module.checks().size());
            for (Status status : Status.values()) {
                number(module.count(status));
            }
            for (Provenance provenance : Provenance.values()) {
                number(module.passing(provenance));
            }
            out.append("</tr>\n");
        }
        long derived = results.checks().stream()
                .filter(check -> check.source().provenance() == Provenance.DERIVED_ORACLE)
                .count();
        long named = results.checks().stream()
                .filter(check -> check.source().provenance() == Provenance.DERIVED_ORACLE
                        && !check.program().isEmpty())
                .count();
        out.append("</table>\n<p class=\"soft\">").append(results.blanks());
        out.append(" cells are blank in the sources and were not compared. Of ").append(derived);
        out.append(" derived values ").append(named);
        out.append(" name the program in the repository that made them.</p>\n");
    }

    private void facts() {
        out.append("<dl class=\"facts\">");
        Facts.of(results)
                .forEach((name, value) -> out.append("<dt>")
                        .append(Html.escaped(name))
                        .append("</dt><dd>")
                        .append(Html.escaped(value))
                        .append("</dd>"));
        out.append("</dl>\n");
    }

    private void number(long value) {
        out.append("<td class=\"n\">").append(value).append("</td>");
    }

    private List<Group> sources() {
        out.append("<h2 id=\"sources\">By source</h2>\n");
        List<Group> groups = PackedRows.bySource(results).stream()
                .sorted((a, b) -> a.name().compareTo(b.name()))
                .toList();
        for (int i = 0; i < groups.size(); i++) {
            Group group = groups.get(i);
            String[] name = group.name().split("\t", 2);
            out.append("<details data-group=\"")
                    .append(i)
                    .append("\" id=\"source-")
                    .append(i)
                    .append("\"");
            out.append(group.count(Status.FAIL) > 0 ? " open" : "").append("><summary><span class=\"soft\">");
            out.append(Html.escaped(name[0])).append("</span> ").append(Html.escaped(name[1]));
            tally(group);
            out.append("</summary>\n");
            strip(group);
            out.append("</details>\n");
        }
        return groups;
    }

    private void tally(Group group) {
        out.append(" <span class=\"soft\">");
        for (Status status : Status.values()) {
            if (group.count(status) > 0) {
                out.append("<span class=\"").append(status).append("\"> ").append(group.count(status));
                out.append(' ').append(status).append("</span>");
            }
        }
        out.append("</span>");
    }

    /** There are so many rows that what HTML lets be left out is left out: ends of cells, and classes that the place of a cell tells. */
    private void calculations() {
        out.append(
                "<h2 id=\"calculations\">By calculation</h2>\n<table class=\"index figures\"><tr><th>calculation</th>"
                        + "<th class=\"n\">sources</th><th class=\"n\">pass</th><th class=\"n\">fail</th>"
                        + "<th class=\"n\">worst</th><th>deviations between minus and plus the tolerance</th></tr>\n");
        for (Group group : Group.by(results.checks(), Check::calculation).stream()
                .sorted((a, b) -> a.name().compareTo(b.name()))
                .toList()) {
            out.append("<tr><td>").append(Html.escaped(group.name()));
            out.append("<td>")
                    .append(Group.by(group.checks(), check -> check.source().citation())
                            .size());
            out.append("<td>").append(group.count(Status.PASS));
            out.append("<td>").append(group.count(Status.FAIL));
            out.append("<td>").append(Text.fixed(group.worstShare(), 2)).append("<td>");
            strip(group);
        }
        out.append("</table>\n");
    }

    /** How many of the public calculations of each class a table reaches. */
    private void classes() {
        out.append(
                "<h2 id=\"classes\">By class</h2>\n<p class=\"soft\">Public calculations that do arithmetic of their own,"
                        + " and how many of them a table reaches: straight, or through another public calculation.</p>\n"
                        + "<table class=\"index\"><tr><th>class</th><th class=\"n\">calculations</th><th class=\"n\">straight</th>"
                        + "<th class=\"n\">through</th><th class=\"n\">none</th><th>reached by none</th></tr>\n");
        TreeMap<String, List<PublicCalculations.Method>> byClass = PublicCalculations.all().stream()
                .collect(Collectors.groupingBy(
                        method -> method.name().substring(0, method.name().indexOf('#')),
                        TreeMap::new,
                        Collectors.toList()));
        byClass.forEach((name, methods) -> {
            List<PublicCalculations.Method> none = methods.stream()
                    .filter(method -> method.calculations().isEmpty())
                    .toList();
            long straight = methods.stream()
                    .filter(method -> !method.straight().isEmpty())
                    .count();
            out.append("<tr><td>").append(Html.escaped(name)).append("</td>");
            number(methods.size());
            number(straight);
            number(methods.size() - straight - none.size());
            number(none.size());
            out.append("<td>");
            out.append(Html.escaped(none.stream()
                    .map(method ->
                            method.name().substring(method.name().indexOf('#') + 1) + " (" + method.reason() + ")")
                    .collect(Collectors.joining("; "))));
            out.append("</td></tr>\n");
        });
        out.append("</table>\n");
    }

    private void withoutPublished() {
        var published = results.checks().stream()
                .filter(check -> check.status() == Status.PASS)
                .filter(check -> check.source().provenance() == Provenance.PUBLISHED
                        || check.source().provenance() == Provenance.SECOND_HAND)
                .map(Check::calculation)
                .collect(Collectors.toSet());
        List<String> names = PublicCalculations.all().stream()
                .filter(method -> method.calculations().stream().noneMatch(published::contains))
                .map(PublicCalculations.Method::name)
                .toList();
        out.append("<h2 id=\"unpublished\">Public calculations without a published value</h2>\n<p>")
                .append(names.size());
        out.append(" of ").append(PublicCalculations.all().size());
        out.append(": they rest on derived values, values from memory, or unit tests.</p>\n<ul class=\"names\">");
        names.forEach(name -> out.append("<li>").append(Html.escaped(name)).append("</li>"));
        out.append("</ul>\n");
    }

    private void excluded() {
        out.append("<h2 id=\"excluded\">Excluded, each with its reason</h2>\n<ul>");
        results.checks().stream()
                .filter(check -> check.status() == Status.EXCLUDED)
                .forEach(check -> out.append("<li>")
                        .append(Html.escaped(check.name() + ": " + check.remark()))
                        .append("</li>"));
        out.append("</ul>\n");
    }

    /**
     * Writes where every deviation stands on a line from minus to plus 100, the tolerance; beyond it lies a margin for failures.
     * {@code report.js} draws them.
     */
    private void strip(Group group) {
        out.append("<svg class=\"strip\"");
        for (Status status : Status.values()) {
            NavigableSet<Integer> places = new TreeSet<>();
            for (Check check : group.checks()) {
                if (check.status() == status && check.deviation().isPresent()) {
                    places.add((int) Math.round(100
                            * Math.min(check.share(), 1.25)
                            * Math.signum(check.deviation().getAsDouble())));
                }
            }
            if (!places.isEmpty()) {
                out.append(" data-")
                        .append(status)
                        .append("=\"")
                        .append(runs(places))
                        .append('"');
            }
        }
        out.append("></svg>\n");
    }

    /** Whole numbers, such as {@code -3 5..9}: many of them stand side by side. */
    private static String runs(NavigableSet<Integer> places) {
        StringJoiner runs = new StringJoiner(" ");
        int from = places.first();
        for (int place : places) {
            if (!places.contains(place - 1)) {
                from = place;
            }
            if (!places.contains(place + 1)) {
                runs.add(from == place ? Integer.toString(place) : from + ".." + place);
            }
        }
        return runs.toString();
    }
}
