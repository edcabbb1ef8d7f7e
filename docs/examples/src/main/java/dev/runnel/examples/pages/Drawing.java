package dev.runnel.examples.pages;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A figure as a file of its own, for pages that are not ours: it brings its colours, dark and light, with it. */
public final class Drawing {
    private static final Pattern BOX = Pattern.compile("viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\"");

    /** A rule for figures, with what it is for. */
    private static final Pattern RULE = Pattern.compile("\\.figure ([a-z.0-9]+) \\{[^}]*\\}");

    private Drawing() {}

    /**
     * Returns a figure as a document.
     *
     * @param figure SVG as the figures of this package write it
     * @return an SVG document that needs no style sheet
     */
    public static String alone(String figure) {
        Matcher box = BOX.matcher(figure);
        if (!box.find()) {
            throw new IllegalArgumentException("figure must have a viewBox that begins at 0 0");
        }
        String sheet = Html.part("/dev/runnel/examples/pages/page.css");
        // The colours stand first, up to the rule for all elements.
        StringBuilder style = new StringBuilder(sheet.substring(0, sheet.indexOf("\n* {") + 1));
        RULE.matcher(sheet)
                .results()
                .filter(rule -> isUsed(rule.group(1), figure))
                .forEach(rule -> style.append(rule.group()).append('\n'));
        style.append(".figure { font-family: system-ui, \"Segoe UI\", \"Liberation Sans\", Arial, sans-serif; }\n");
        String size = "width=\"" + box.group(1) + "\" height=\"" + box.group(2) + "\"";
        String start = "<svg xmlns=\"http://www.w3.org/2000/svg\" " + size + " class";
        String text = figure.strip().replaceFirst("<svg class", start);
        int inside = text.indexOf("</desc>") + "</desc>".length();
        return text.substring(0, inside) + "\n<style>\n" + style + "</style>\n"
                + "<rect class=\"ground\" width=\"100%\" height=\"100%\"/>" + text.substring(inside) + "\n";
    }

    /** Tells whether a figure has elements or classes for which a rule is. */
    private static boolean isUsed(String selector, String figure) {
        if (!selector.startsWith(".")) {
            return figure.contains("<" + selector);
        }
        return selector.equals(".ground")
                || Pattern.compile("class=\"[^\"]*\\b" + selector.substring(1).replaceAll("\\..*", "") + "\\b")
                        .matcher(figure)
                        .find();
    }
}
