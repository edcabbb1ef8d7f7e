package dev.runnel.examples.pages;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.EnumSet;
import java.util.List;
import java.util.Properties;
import java.util.Set;

/** Puts a page together. */
final class PageWriter {
    private static final String HERE = "/dev/runnel/examples/pages/";
    private static final String LIBRARY = "/META-INF/resources/webjars/uplot/";
    private static final String VERSION = "/META-INF/maven/org.webjars.npm/uplot/pom.properties";

    private PageWriter() {}

    static String page(SitePage page) {
        StringBuilder out = new StringBuilder();
        boolean script = page.record().isPresent();
        head(out, page.title(), script);
        out.append("<header><h1>").append(Html.escaped(page.title())).append("</h1><p class=\"soft\">");
        out.append(Html.escaped(page.subtitle())).append("</p>");
        if (!page.standsAlone()) {
            out.append("<p class=\"back\"><a href=\"index.html\">All sites</a></p>");
        }
        out.append("</header>\n<main>\n");
        top(out, page);
        page.record().ifPresent(record -> record(out, record));
        panels(out, page.panels(), page.standsAlone());
        if (!page.text().isEmpty()) {
            out.append("<details class=\"words\"><summary>The review in words</summary><pre>")
                    .append(Html.escaped(page.text()).replace("&nbsp;", " "))
                    .append("</pre></details>\n");
        }
        out.append("</main>\n");
        foot(out);
        page.record().ifPresent(record -> {
            out.append("<script type=\"application/json\" id=\"rows\">").append(RecordData.described(record));
            out.append("</script>\n<script type=\"text/plain\" id=\"data\">").append(RecordData.packed(record));
            out.append("</script>\n<script>/*! ").append(license()).append(" */\n");
            out.append(library("uPlot.iife.min.js")).append("</script>\n<script>\n");
            out.append(Html.part(HERE + "record.js")).append("</script>\n");
        });
        return out.append("</body></html>\n").toString();
    }

    static void head(StringBuilder out, String title, boolean script) {
        out.append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n");
        out.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        out.append(
                "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline';"
                        + " script-src 'unsafe-inline'; img-src data:\">\n<title>");
        out.append(Html.escaped(title)).append("</title>\n<style>\n");
        if (script) {
            out.append(library("uPlot.min.css"));
        }
        out.append(Html.part(HERE + "page.css")).append("</style></head><body>\n");
    }

    static void foot(StringBuilder out) {
        out.append("<footer class=\"soft\"><p>Aids to interpretation from instruments in harsh conditions: no statutory"
                + " return, no design, no proof that a sewer is safe or empty. A competent person judges; local codes and"
                + " licensed practice come first. Never enter a sewer or lift a cover to check a figure without a safe"
                + " system of work.</p><p>Drawings are rounded to the steps they show; the CSV files beside this page have the"
                + " full figures.</p></footer>\n");
    }

    private static void top(StringBuilder out, SitePage page) {
        if (page.points().isEmpty() && page.figures().isEmpty()) {
            return;
        }
        if (page.standsAlone() && page.points().isEmpty() && page.notTested().isEmpty()) {
            out.append("<div class=\"top\">");
            figures(out, page);
            out.append("</div>\n");
            return;
        }
        out.append("<div class=\"top\"><section><h2>Needs a person's eye</h2><ol class=\"points\">");
        for (SitePage.Point point : page.points()) {
            out.append("<li>");
            if (point.mark() > 0) {
                out.append("<a class=\"disc\" href=\"#record\" data-mark=\"")
                        .append(point.mark())
                        .append("\">");
                out.append(point.mark()).append("</a>");
            } else {
                out.append("<span class=\"disc none\" aria-hidden=\"true\">&middot;</span>");
            }
            out.append("<span>").append(Html.escaped(point.text())).append("</span></li>\n");
        }
        if (page.points().isEmpty()) {
            out.append("<li><span></span><span>Nothing that was tested stands out.</span></li>");
        }
        out.append("</ol>");
        if (!page.notTested().isEmpty()) {
            out.append("<h3>Not tested</h3><ul class=\"soft\">");
            page.notTested()
                    .forEach(what ->
                            out.append("<li>").append(Html.escaped(what)).append("</li>"));
            out.append("</ul>");
        }
        out.append("</section>\n");
        figures(out, page);
        out.append("</div>\n");
    }

    private static void figures(StringBuilder out, SitePage page) {
        out.append("<section><h2>Figures</h2><table class=\"figures\">");
        for (SitePage.Figure figure : page.figures()) {
            out.append("<tr><th scope=\"row\">")
                    .append(Html.escaped(figure.name()))
                    .append("</th><td>");
            out.append(Html.escaped(figure.value()))
                    .append(" <span class=\"soft\">")
                    .append(Html.escaped(figure.note()))
                    .append("</span>");
            method(out, figure.method(), page.standsAlone());
            out.append("</td></tr>\n");
        }
        out.append("</table></section>\n");
    }

    private static void record(StringBuilder out, RecordRows record) {
        out.append(
                "<section class=\"panel wide\" id=\"record\" tabindex=\"0\" aria-label=\"The record over time; plus and"
                        + " minus zoom, left and right move, Home shows all\"><h2>The record</h2>\n<div class=\"tools\">");
        for (String span : List.of("All", "Month", "Week", "Day", "Hour")) {
            out.append("<button type=\"button\" data-span=\"")
                    .append(span)
                    .append("\">")
                    .append(span)
                    .append("</button>");
        }
        out.append("<button type=\"button\" data-move=\"-1\" aria-label=\"earlier\">&larr;</button>"
                + "<button type=\"button\" data-move=\"1\" aria-label=\"later\">&rarr;</button>"
                + "<span id=\"shown\" class=\"soft\" role=\"status\"></span></div>\n<div id=\"charts\"></div>\n");
        out.append(
                "<p class=\"caption\">Each column of the drawing spans the lowest to the highest reading in it, so no peak"
                        + " is lost. Grey: no data. Numbers: the points above. <span class=\"onscreen\">Hatched: left out, or"
                        + " corrected where the page says so. Bar on top of a row: to be looked at. " + legend(record)
                        + "</span><span class=\"onpaper\">Shaded: left out. </span>Times in ");
        out.append(Html.escaped(record.zone().getId())).append(".</p>\n");
        people(out, record);
        out.append("<div class=\"still\">");
        out.append(PrintedRecord.of(record)).append("</div></section>\n");
    }

    /** What else is drawn on this record, and only that. */
    private static String legend(RecordRows record) {
        Set<RecordRows.Kind> kinds = EnumSet.noneOf(RecordRows.Kind.class);
        record.marks().forEach(mark -> kinds.add(mark.kind()));
        StringBuilder text = new StringBuilder();
        if (kinds.contains(RecordRows.Kind.BASELINE)) {
            text.append("Plain bar at the very top: what is usual was learned there. ");
        }
        kinds.retainAll(EnumSet.of(RecordRows.Kind.ALARM, RecordRows.Kind.SURCHARGE, RecordRows.Kind.SPILL));
        if (!kinds.isEmpty()) {
            text.append("Red above the level: alarm, surcharge or spill. ");
        }
        return text.toString();
    }

    /** What people did at the site, in words below the drawing that marks it. */
    private static void people(StringBuilder out, RecordRows record) {
        List<RecordRows.Mark> marks = record.marks().stream()
                .filter(mark -> mark.kind() == RecordRows.Kind.VISIT || mark.kind() == RecordRows.Kind.CORRECTION)
                .toList();
        if (marks.isEmpty()) {
            return;
        }
        out.append("<ul class=\"caption\">");
        marks.forEach(
                mark -> out.append("<li>").append(Html.escaped(mark.text())).append("</li>\n"));
        out.append("</ul>\n");
    }

    /** Where a figure comes from: a page beside this one, or of the documentation. */
    static void method(StringBuilder out, String name, boolean standsAlone) {
        if (name.isEmpty()) {
            return;
        }
        String text = Html.escaped(name);
        out.append(
                standsAlone
                        ? " <span class=\"soft\">Method: docs/methods/" + text + ".md</span>"
                        : " <a class=\"soft method\" href=\"methods/" + text + ".html\">method</a>");
    }

    static void panels(StringBuilder out, List<SitePage.Panel> panels, boolean standsAlone) {
        out.append("<div class=\"panels\">");
        for (SitePage.Panel panel : panels) {
            out.append("<section class=\"panel")
                    .append(panel.wide() ? " wide" : "")
                    .append("\"><h2>");
            out.append(Html.escaped(panel.title())).append("</h2>\n").append(panel.drawing());
            out.append("<p class=\"caption\">").append(Html.escaped(panel.caption()));
            method(out, panel.method(), standsAlone);
            out.append("</p></section>\n");
        }
        out.append("</div>\n");
    }

    private static String library(String file) {
        return Html.part(LIBRARY + version() + "/dist/" + file);
    }

    private static String license() {
        return Html.part(LIBRARY + version() + "/LICENSE").replace("*/", "* /");
    }

    private static String version() {
        Properties properties = new Properties();
        try {
            properties.load(new StringReader(Html.part(VERSION)));
            return properties.getProperty("version", "");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
