package dev.runnel.verification.report;

import dev.runnel.internal.Text;
import dev.runnel.verification.Check;
import dev.runnel.verification.Provenance;
import dev.runnel.verification.Results;
import dev.runnel.verification.Status;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.stream.DoubleStream;
import org.apiguardian.api.API;

/**
 * The results as one page without any other file: verdict, counts, and per source every value with its deviation drawn
 * against its tolerance.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class HtmlReport {
    private final StringBuilder out = new StringBuilder();

    private HtmlReport() {}

    /**
     * Returns the page.
     *
     * @param results the results
     * @return an HTML document
     */
    public static String text(Results results) {
        return new HtmlReport().page(results);
    }

    private String page(Results results) {
        out.append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n");
        out.append("<title>Runnel verification</title>\n<style>\n")
                .append(style())
                .append("</style></head><body>\n");
        out.append("<h1>Runnel verification</h1>\n");
        out.append(
                "<p class=\"soft\">Expected values beside what the library computes. A value passes if it lies within the"
                        + " tolerance stated with its table. The columns from &quot;published&quot; on split the values"
                        + " that pass by where the expected value comes from.</p>\n");
        verdict(results);
        counts(results);
        for (Group module : Group.byModule(results)) {
            out.append("<h2>").append(escaped(module.name())).append("</h2>\n");
            Group.by(module.checks(), check -> check.source().toString()).forEach(this::source);
        }
        return out.append("</body></html>\n").toString();
    }

    private void verdict(Results results) {
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
                            out.append("<p>").append(escaped(problem)).append("</p>"));
        }
        out.append("</div>\n");
    }

    private void counts(Results results) {
        out.append("<table><tr><th>module</th><th class=\"n\">sources</th><th class=\"n\">values</th>"
                + "<th class=\"n\">pass</th><th class=\"n\">fail</th><th class=\"n\">excluded</th>");
        for (Provenance provenance : Provenance.values()) {
            out.append("<th class=\"n\">").append(provenance).append("</th>");
        }
        out.append("</tr>\n");
        for (Group module : Group.byModule(results)) {
            out.append("<tr><td>").append(escaped(module.name())).append("</td>");
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
        out.append("</table>\n<p class=\"soft\">").append(results.blanks());
        out.append(" cells are blank in the sources and were not compared.</p>\n");
    }

    private void number(long value) {
        out.append("<td class=\"n\">").append(value).append("</td>");
    }

    private void source(Group source) {
        out.append("<details")
                .append(source.count(Status.FAIL) > 0 ? " open" : "")
                .append("><summary>");
        out.append(escaped(source.name())).append(" <span class=\"soft\">");
        for (Status status : Status.values()) {
            if (source.count(status) > 0) {
                out.append("<span class=\"")
                        .append(status)
                        .append("\"> ")
                        .append(source.count(status))
                        .append(' ');
                out.append(status).append("</span>");
            }
        }
        out.append("</span></summary>\n");
        Group.by(source.checks(), check -> check.table() + ", " + check.calculation())
                .forEach(this::table);
        out.append("</details>\n");
    }

    private void table(Group table) {
        out.append("<h3>").append(escaped(table.name())).append("</h3>\n");
        strip(table);
        out.append("<table><tr><th>row</th><th>locator</th><th>input</th><th class=\"n\">expected</th>"
                + "<th class=\"n\">computed</th><th class=\"n\">deviation</th><th class=\"n\">tolerance</th>"
                + "<th>unit</th><th>status</th></tr>\n");
        for (Check check : table.checks()) {
            row(check);
        }
        out.append("</table>\n");
    }

    private void row(Check check) {
        out.append("<tr><td>")
                .append(escaped(check.name().substring(check.table().length() + 1)));
        out.append("</td><td>").append(escaped(check.locator()));
        out.append("</td><td class=\"in\">").append(escaped(check.input()));
        out.append("</td><td class=\"n\">").append(escaped(check.printed()));
        out.append("</td><td class=\"n\">").append(shown(check.computed().stream(), 9));
        out.append("</td><td class=\"n\">").append(shown(check.deviation().stream(), 3));
        out.append("</td><td class=\"n\">").append(Text.significant(check.tolerance(), 3));
        out.append("</td><td>").append(escaped(check.unit()));
        out.append("</td><td class=\"").append(check.status()).append("\">").append(check.status());
        if (!check.remark().isEmpty()) {
            out.append("<br>").append(escaped(check.remark()));
        }
        out.append("</td></tr>\n");
    }

    /** Draws every deviation on a line from minus to plus the tolerance; beyond it lies a margin for failures. */
    private void strip(Group table) {
        out.append("<svg class=\"strip\" viewBox=\"-130 -17 260 34\" preserveAspectRatio=\"none\" role=\"img\""
                + " aria-label=\"deviations between minus and plus the tolerance\">"
                + "<rect x=\"-100\" y=\"-15\" width=\"200\" height=\"30\" fill=\"#eef3f1\"/>"
                + "<path d=\"M0-15V15\" stroke=\"#9fb3a8\" vector-effect=\"non-scaling-stroke\"/>");
        for (Status status : Status.values()) {
            StringBuilder marks = new StringBuilder();
            for (Check check : table.checks()) {
                if (check.status() == status && check.deviation().isPresent()) {
                    double share = Math.min(check.share(), 1.25)
                            * Math.signum(check.deviation().getAsDouble());
                    marks.append(String.format(Locale.ROOT, "M%.1f-9V9", share * 100));
                }
            }
            String colour = status == Status.PASS ? "#2f7d5b" : status == Status.FAIL ? "#b3261e" : "#9a6b00";
            if (!marks.isEmpty()) {
                out.append("<path d=\"").append(marks).append("\" stroke=\"").append(colour);
                out.append("\" stroke-opacity=\".55\" stroke-width=\"1.5\" vector-effect=\"non-scaling-stroke\"/>");
            }
        }
        out.append("</svg>\n");
    }

    private static String shown(DoubleStream value, int digits) {
        return value.mapToObj(number -> Text.significant(number, digits))
                .findFirst()
                .orElse("none");
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    private static String style() {
        try (InputStream css = HtmlReport.class.getResourceAsStream("/dev/runnel/verification/report/report.css")) {
            if (css == null) {
                throw new IllegalStateException("report.css is missing from the program");
            }
            return new String(css.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
