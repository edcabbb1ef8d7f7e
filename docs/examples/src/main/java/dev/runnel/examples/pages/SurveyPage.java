package dev.runnel.examples.pages;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The page of a survey: a line a site, who flows into whom, and what the sites say of each other. */
public final class SurveyPage {
    /**
     * A site.
     *
     * @param id name of its page without ending
     * @param name its name
     * @param state a word or two: what needs a person's eye
     * @param points how many points need a person's eye
     * @param received share of the time with readings, as text
     * @param dryWeather dry weather flow, with its mark, as text
     * @param highest highest level, as text
     * @param spills spills, as text
     * @param upstream ids of the sites upstream
     */
    public record Line(
            String id,
            String name,
            String state,
            int points,
            String received,
            String dryWeather,
            String highest,
            String spills,
            List<String> upstream) {}

    private static final double BOX = 150;
    private static final double STEP_X = 200;
    private static final double STEP_Y = 46;
    private static final double STEP_DOWN = 54;
    private static final int MOST_ACROSS = 6;

    /** More of them would push the drawings off the first screen. */
    private static final int FEW_SENTENCES = 8;

    private SurveyPage() {}

    /**
     * Returns the page.
     *
     * @param title name of the survey
     * @param subtitle a line about it
     * @param lines its sites
     * @param complaints sites that could not be reviewed, each with the reason
     * @param between what the sites say of each other, a sentence each
     * @param panels drawings that belong to more than one site
     * @return an HTML document that needs no other file
     */
    public static String of(
            String title,
            String subtitle,
            List<Line> lines,
            List<String> complaints,
            List<String> between,
            List<SitePage.Panel> panels) {
        StringBuilder out = new StringBuilder();
        PageWriter.head(out, title, false);
        out.append("<header><h1>").append(Html.escaped(title)).append("</h1><p class=\"soft\">");
        out.append(Html.escaped(subtitle)).append("</p></header>\n<main>\n");
        if (!complaints.isEmpty()) {
            out.append("<section><h2>Could not be reviewed</h2><ul>");
            complaints.forEach(
                    each -> out.append("<li>").append(Html.escaped(each)).append("</li>"));
            out.append("</ul></section>\n");
        }
        out.append(
                "<div class=\"scroll\"><table class=\"sites\"><thead><tr><th>site</th><th class=\"n\">to look at</th>"
                        + "<th>first of it</th><th class=\"n\">data received</th><th class=\"n\">dry weather</th>"
                        + "<th class=\"n\">highest level</th><th class=\"n\">spills</th></tr></thead><tbody>\n");
        for (Line line : lines) {
            out.append("<tr><td><a href=\"").append(Html.escaped(line.id())).append(".html\">");
            out.append(Html.escaped(line.name()))
                    .append("</a></td><td class=\"n\">")
                    .append(line.points());
            for (String cell : List.of(line.state())) {
                out.append("</td><td>").append(Html.escaped(cell));
            }
            for (String cell : List.of(line.received(), line.dryWeather(), line.highest(), line.spills())) {
                out.append("</td><td class=\"n\">").append(Html.escaped(cell));
            }
            out.append("</td></tr>\n");
        }
        out.append("</tbody></table></div>\n");
        boolean few = between.size() <= FEW_SENTENCES;
        if (few) {
            between(out, between);
        }
        List<SitePage.Panel> all = new ArrayList<>();
        if (lines.stream().anyMatch(line -> !line.upstream().isEmpty())) {
            all.add(new SitePage.Panel(
                    "Who flows into whom",
                    natural(network(lines)),
                    "Filled: sites with a finding that is open.",
                    "",
                    true));
        }
        all.addAll(panels);
        PageWriter.panels(out, all, false);
        if (!few) {
            between(out, between);
        }
        out.append("</main>\n");
        PageWriter.foot(out);
        return out.append("</body></html>\n").toString();
    }

    private static void between(StringBuilder out, List<String> between) {
        if (!between.isEmpty()) {
            out.append("<section><h2>Between the sites</h2><ul>");
            between.forEach(
                    each -> out.append("<li>").append(Html.escaped(each)).append("</li>"));
            out.append("</ul></section>\n");
        }
    }

    /** A drawing no larger than it was drawn. */
    private static String natural(String svg) {
        int from = svg.indexOf("viewBox=\"0 0 ") + "viewBox=\"0 0 ".length();
        String width = svg.substring(from, svg.indexOf(' ', from));
        return "<div class=\"scroll\"><div style=\"max-width: " + width + "px\">" + svg + "</div></div>\n";
    }

    /** Sites in columns by how many lie below them, arrows downstream. */
    static String network(List<Line> lines) {
        Map<String, Line> byId = new HashMap<>();
        lines.forEach(line -> byId.put(line.id(), line));
        Map<String, Integer> columns = new HashMap<>();
        lines.forEach(line -> column(line, byId, columns, 0));
        // Long sewers run down the page, short ones across it.
        boolean down = columns.values().stream().anyMatch(column -> column >= MOST_ACROSS);
        Map<String, double[]> places = new HashMap<>();
        Map<Integer, Integer> taken = new HashMap<>();
        int wide = 1;
        int high = 1;
        for (Line line : lines) {
            int column = columns.getOrDefault(line.id(), 0);
            int row = taken.merge(column, 1, Integer::sum) - 1;
            int x = down ? row : column;
            int y = down ? column : row;
            places.put(line.id(), new double[] {10 + STEP_X * x, 10 + (down ? STEP_DOWN : STEP_Y) * y});
            wide = Math.max(wide, x + 1);
            high = Math.max(high, y + 1);
        }
        Svg svg = Svg.of(
                Math.max(440, STEP_X * wide),
                (down ? STEP_DOWN : STEP_Y) * high + 20,
                "Who flows into whom",
                "Sites, with arrows downstream");
        for (Line line : lines) {
            double[] here = places.getOrDefault(line.id(), new double[2]);
            for (String id : line.upstream()) {
                if (places.containsKey(id)) {
                    arrow(svg, places.getOrDefault(id, here), here, down);
                }
            }
            svg.begin(line.id() + ".html");
            svg.rectangle(line.state().startsWith("open") ? "box open" : "box", here[0], here[1], BOX, 32);
            svg.text("name", here[0] + BOX / 2, here[1] + 20, "middle", shortened(line.name()));
            svg.end();
        }
        return svg.toString();
    }

    /** From the right side of one box to the left side of another, or from its lower side to the upper one. */
    private static void arrow(Svg svg, double[] from, double[] to, boolean down) {
        double x = down ? to[0] + BOX / 2 : to[0];
        double y = down ? to[1] : to[1] + 16;
        svg.line("arrow", down ? from[0] + BOX / 2 : from[0] + BOX, down ? from[1] + 32 : from[1] + 16, x, y);
        double across = down ? 4 : 7;
        double along = down ? 7 : 4;
        svg.path(
                "arrow",
                "M" + Svg.number(x - across) + " " + Svg.number(y - along) + "L" + Svg.number(x) + " " + Svg.number(y)
                        + "L" + Svg.number(down ? x + across : x - across) + " "
                        + Svg.number(down ? y - along : y + along));
    }

    private static String shortened(String name) {
        return name.length() <= 22 ? name : name.substring(0, 21) + "...";
    }

    /** One more than the highest column upstream; a ring of sites ends the count. */
    private static int column(Line line, Map<String, Line> byId, Map<String, Integer> columns, int depth) {
        Integer known = columns.get(line.id());
        if (known != null || depth > byId.size()) {
            return known == null ? 0 : known;
        }
        int column = 0;
        for (String id : line.upstream()) {
            Line above = byId.get(id);
            if (above != null) {
                column = Math.max(column, 1 + column(above, byId, columns, depth + 1));
            }
        }
        int bounded = Math.min(column, byId.size());
        columns.put(line.id(), bounded);
        return bounded;
    }
}
