package dev.runnel.examples.site;

import dev.runnel.examples.pages.PageParts;
import java.util.List;
import java.util.Set;

/** Head, ways and foot around a page, and the page that searches. */
final class Frame {
    private static final int FEWEST_FOR_CONTENTS = 4;

    private final Set<String> extras;

    Frame(Set<String> extras) {
        this.extras = extras;
    }

    String page(DocPage page) {
        StringBuilder out = new StringBuilder();
        head(out, page.title(), page.target());
        List<DocPage.Section> inside = page.sections().stream()
                .filter(section -> section.level() == 2 || section.level() == 3)
                .toList();
        out.append("<main class=\"text\">\n");
        if (inside.size() >= FEWEST_FOR_CONTENTS) {
            out.append("<details class=\"contents\"><summary>On this page</summary><ul>");
            for (DocPage.Section section : inside) {
                out.append("<li class=\"level").append(section.level()).append("\"><a href=\"#");
                out.append(PageParts.escaped(section.anchor())).append("\">");
                out.append(PageParts.escaped(section.heading())).append("</a></li>");
            }
            out.append("</ul></details>\n");
        }
        return out.append(page.html()).append("</main>\n</body></html>\n").toString();
    }

    /** A page with one way back. */
    static String plain(String title, String back, String backName, String html) {
        StringBuilder out = new StringBuilder();
        begin(out, title);
        out.append("<nav class=\"ways\"><a href=\"").append(back).append("\">").append(backName);
        return out.append("</a></nav>\n<main class=\"text\">\n")
                .append(html)
                .append("</main>\n</body></html>\n")
                .toString();
    }

    private static void begin(StringBuilder out, String title) {
        out.append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n");
        out.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        out.append(
                "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline';"
                        + " script-src 'unsafe-inline'; img-src 'self' data: file:; form-action 'self' file:\">\n<title>");
        out.append(PageParts.escaped(title)).append("</title>\n<style>\n").append(PageParts.style());
        out.append(PageParts.part("/dev/runnel/examples/site/site.css")).append("</style></head><body>\n");
    }

    private void head(StringBuilder out, String title, String target) {
        begin(out, title);
        out.append("<nav class=\"ways\" aria-label=\"Parts of the documentation\">");
        way(out, target, "index.html", "Runnel");
        way(out, target, "start.html", "Start");
        way(out, target, "cookbook/index.html", "Cookbook");
        way(out, target, "methods/index.html", "Methods");
        if (extras.contains("javadoc/hydraulics")) {
            way(out, target, "javadoc/hydraulics/index.html", "Javadoc");
        }
        if (extras.contains("proof")) {
            way(out, target, "proof/report.html", "Proof");
        }
        out.append("<form action=\"").append(Links.relative(target, "search.html"));
        out.append(
                "\"><input type=\"search\" name=\"q\" aria-label=\"Search the documentation\" placeholder=\"Search\"></form>");
        out.append("</nav>\n");
    }

    private static void way(StringBuilder out, String target, String to, String name) {
        out.append("<a href=\"").append(Links.relative(target, to)).append('"');
        out.append(target.equals(to) ? " aria-current=\"page\"" : "")
                .append('>')
                .append(name)
                .append("</a> ");
    }

    String search(List<DocPage> pages) {
        StringBuilder out = new StringBuilder();
        head(out, "Search", "search.html");
        out.append("<main class=\"text\"><h1>Search</h1>\n<p><input id=\"asked\" type=\"search\" size=\"40\""
                + " aria-label=\"Words to search for\"></p><p id=\"count\" class=\"soft\" role=\"status\"></p>"
                + "<ol id=\"found\"></ol></main>\n<script type=\"application/json\" id=\"index\">[");
        String comma = "";
        for (DocPage page : pages) {
            for (DocPage.Section section : page.sections()) {
                out.append(comma)
                        .append('[')
                        .append(PageParts.json(page.target() + "#" + section.anchor()))
                        .append(',');
                out.append(PageParts.json(page.title()))
                        .append(',')
                        .append(PageParts.json(section.heading()))
                        .append(',');
                out.append(PageParts.json(section.text())).append(']');
                comma = ",\n";
            }
        }
        return out.append("]</script>\n<script>\n")
                .append(PageParts.part("/dev/runnel/examples/site/search.js"))
                .append("</script>\n</body></html>\n")
                .toString();
    }
}
