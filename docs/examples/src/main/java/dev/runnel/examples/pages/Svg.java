package dev.runnel.examples.pages;

import dev.runnel.internal.Text;

/** Writes a figure. Colours are classes of the page's style sheet, so that a figure follows dark and light. */
final class Svg {
    private final StringBuilder out = new StringBuilder();

    private Svg() {}

    /** Begins a figure; title and description are for those who hear the page. */
    static Svg of(double width, double height, String title, String description) {
        Svg svg = new Svg();
        svg.out
                .append("<svg class=\"figure\" viewBox=\"0 0 ")
                .append(number(width))
                .append(' ')
                .append(number(height));
        svg.out.append("\" role=\"img\"><title>").append(Html.escaped(title)).append("</title><desc>");
        svg.out.append(Html.escaped(description)).append("</desc>\n");
        return svg;
    }

    Svg line(String type, double x1, double y1, double x2, double y2) {
        out.append("<path class=\"")
                .append(type)
                .append("\" d=\"M")
                .append(number(x1))
                .append(' ')
                .append(number(y1));
        out.append('L').append(number(x2)).append(' ').append(number(y2)).append("\"/>\n");
        return this;
    }

    Svg path(String type, CharSequence data) {
        if (data.length() > 0) {
            out.append("<path class=\"")
                    .append(type)
                    .append("\" d=\"")
                    .append(data)
                    .append("\"/>\n");
        }
        return this;
    }

    Svg rectangle(String type, double x, double y, double width, double height) {
        out.append("<rect class=\"")
                .append(type)
                .append("\" x=\"")
                .append(number(x))
                .append("\" y=\"")
                .append(number(y));
        out.append("\" width=\"").append(number(Math.max(0, width))).append("\" height=\"");
        out.append(number(Math.max(0, height))).append("\"/>\n");
        return this;
    }

    Svg circle(String type, double x, double y, double radius) {
        out.append("<circle class=\"")
                .append(type)
                .append("\" cx=\"")
                .append(number(x))
                .append("\" cy=\"")
                .append(number(y));
        out.append("\" r=\"").append(number(radius)).append("\"/>\n");
        return this;
    }

    /** A text; the anchor is {@code start}, {@code middle} or {@code end}. */
    Svg text(String type, double x, double y, String anchor, String text) {
        out.append("<text class=\"")
                .append(type)
                .append("\" x=\"")
                .append(number(x))
                .append("\" y=\"")
                .append(number(y));
        out.append("\" text-anchor=\"")
                .append(anchor)
                .append("\">")
                .append(Html.escaped(text))
                .append("</text>\n");
        return this;
    }

    /** Grid and labels of a scale that goes to the right. */
    Svg axisX(Scale x, double top, double bottom, String name) {
        for (double tick : x.ticks()) {
            line("grid", x.at(tick), top, x.at(tick), bottom);
            text("label", x.at(tick), bottom + 16, "middle", Scale.label(tick));
        }
        return text("label", x.end(), bottom + 32, "end", name);
    }

    /** Grid and labels of a scale that goes up. */
    Svg axisY(Scale y, double left, double right, String name) {
        for (double tick : y.ticks()) {
            line("grid", left, y.at(tick), right, y.at(tick));
            text("label", left - 6, y.at(tick) + 4, "end", Scale.label(tick));
        }
        return text("label", left - 6, y.end() - 10, "start", name);
    }

    /** Begins what leads to another page. */
    Svg begin(String link) {
        out.append("<a href=\"").append(Html.escaped(link)).append("\">");
        return this;
    }

    Svg end() {
        out.append("</a>\n");
        return this;
    }

    static String number(double value) {
        String text = Text.fixed(value, 1);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    /** A path through points; a NaN parts it. */
    static String polyline(double[] xs, double[] ys) {
        StringBuilder data = new StringBuilder();
        boolean drawing = false;
        for (int i = 0; i < xs.length; i++) {
            if (Double.isNaN(xs[i]) || Double.isNaN(ys[i])) {
                drawing = false;
                continue;
            }
            data.append(drawing ? 'L' : 'M').append(number(xs[i])).append(' ').append(number(ys[i]));
            drawing = true;
        }
        return data.toString();
    }

    @Override
    public String toString() {
        return out + "</svg>\n";
    }
}
