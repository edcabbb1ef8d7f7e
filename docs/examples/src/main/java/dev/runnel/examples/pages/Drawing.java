package dev.runnel.examples.pages;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A figure as a file of its own, for pages that are not ours: it brings its colours, dark and light, with it. */
public final class Drawing {
    private static final Pattern BOX = Pattern.compile("viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\"");

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
        StringBuilder style = new StringBuilder();
        boolean colours = true;
        for (String line :
                Html.part("/dev/runnel/examples/pages/page.css").lines().toList()) {
            // The colours stand first, up to the rule for all elements; of the rest only what is for figures counts.
            colours &= !line.startsWith("*");
            if (colours || line.startsWith(".figure")) {
                style.append(line).append('\n');
            }
        }
        style.append(".figure { font-family: system-ui, \"Segoe UI\", \"Liberation Sans\", Arial, sans-serif; }\n");
        String size = "width=\"" + box.group(1) + "\" height=\"" + box.group(2) + "\"";
        String start = "<svg xmlns=\"http://www.w3.org/2000/svg\" " + size + " class";
        String text = figure.strip().replaceFirst("<svg class", start);
        int inside = text.indexOf("</desc>") + "</desc>".length();
        return text.substring(0, inside) + "\n<style>\n" + style + "</style>\n"
                + "<rect class=\"ground\" width=\"100%\" height=\"100%\"/>" + text.substring(inside) + "\n";
    }
}
