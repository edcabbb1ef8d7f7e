package dev.runnel.examples.pages;

import dev.runnel.rainfall.ddf.DdfBand;
import dev.runnel.rainfall.ddf.DepthDurationFrequency;
import dev.runnel.rainfall.distribution.ConfidenceInterval;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.RainfallEvent;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Storms on the depth-duration chart of the site: peaks of each storm over the durations, and lines of return periods. */
public final class StormFigure {
    private static final double LEFT = 44;
    private static final double RIGHT = 396;
    private static final double TOP = 26;
    private static final double BOTTOM = 250;
    private static final double[] YEARS = {1, 2, 5, 10, 20, 30, 50, 100};
    private static final List<Double> LIMITS_DRAWN = List.of(2.0, 10.0, 100.0);
    private static final List<Duration> DURATIONS = List.of(
            Duration.ofMinutes(5),
            Duration.ofMinutes(15),
            Duration.ofMinutes(30),
            Duration.ofHours(1),
            Duration.ofHours(2),
            Duration.ofHours(6),
            Duration.ofHours(12),
            Duration.ofHours(24));

    private StormFigure() {}

    /**
     * Draws the figure.
     *
     * @param storms storms with their peaks
     * @param marked storms that are drawn in the colour of a mark, such as the rarest
     * @param table depth-duration-frequency relation of the site, if there is one
     * @return SVG
     */
    public static String of(
            List<RainfallEvent> storms, List<RainfallEvent> marked, Optional<? extends DepthDurationFrequency> table) {
        return of(storms, marked, table, Optional.empty());
    }

    /**
     * Draws the figure with the limits of confidence of the lines that are named.
     *
     * @param storms storms with their peaks
     * @param marked storms that are drawn in the colour of a mark, such as the rarest
     * @param table depth-duration-frequency relation of the site, if there is one
     * @param band its limits, if there are any
     * @return SVG
     */
    public static String of(
            List<RainfallEvent> storms,
            List<RainfallEvent> marked,
            Optional<? extends DepthDurationFrequency> table,
            Optional<DdfBand> band) {
        double least = Double.POSITIVE_INFINITY;
        double most = 1;
        for (RainfallEvent storm : storms) {
            for (PeakDepth peak : storm.peaks()) {
                if (peak.depthMm() > 0) {
                    least = Math.min(least, peak.depthMm());
                    most = Math.max(most, peak.depthMm());
                }
            }
        }
        if (table.isPresent() && storms.isEmpty()) {
            least = depth(
                    table.get(), table.get().shortestDuration(), table.get().smallestYears());
        }
        if (table.isPresent()) {
            most = Math.max(
                    most,
                    depth(
                            table.get(),
                            table.get().longestDuration(),
                            table.get().greatestYears()));
        }
        Scale x = Scale.logarithmic(5, 1440, LEFT, RIGHT);
        Scale y = Scale.logarithmic(
                Double.isFinite(least) ? Math.min(storms.isEmpty() ? least : 1, least) : 1, most, BOTTOM, TOP);
        Svg svg = Svg.of(
                440,
                300,
                "Storms against depth and duration",
                "Peak depths of each storm over durations, with return periods");
        for (Duration duration : DURATIONS) {
            double place = x.at(minutes(duration));
            svg.line("grid", place, TOP, place, BOTTOM);
            svg.text("label", place, BOTTOM + 16, "middle", name(duration));
        }
        svg.axisY(y, LEFT, RIGHT, "mm");
        band.ifPresent(limits -> LIMITS_DRAWN.forEach(years -> limits(svg, x, y, limits, years)));
        table.ifPresent(relation -> lines(svg, x, y, relation));
        storms.forEach(storm -> storm(svg, x, y, storm, "storm"));
        marked.forEach(storm -> storm(svg, x, y, storm, "storm marked"));
        return svg.toString();
    }

    private static void limits(Svg svg, Scale x, Scale y, DdfBand band, double years) {
        DepthDurationFrequency relation = band.relation();
        if (years < relation.smallestYears() || years > relation.greatestYears()) {
            return;
        }
        StringBuilder upper = new StringBuilder();
        StringBuilder lower = new StringBuilder();
        for (double minutes = 5; minutes <= 1440.001; minutes *= 1.2) {
            Duration duration = Duration.ofSeconds(Math.round(minutes * 60));
            if (!relation.covers(duration) || !band.covers(duration)) {
                continue;
            }
            ConfidenceInterval depth = band.depthMm(duration, years);
            if (depth.lower() > 0 && Double.isFinite(depth.upper())) {
                String place = Svg.number(x.at(minutes)) + " ";
                upper.append(upper.length() == 0 ? 'M' : 'L').append(place).append(Svg.number(y.at(depth.upper())));
                lower.insert(0, "L" + place + Svg.number(Math.min(BOTTOM, y.at(depth.lower()))));
            }
        }
        svg.path("limits", upper.length() == 0 ? "" : upper + lower.toString() + "z");
    }

    private static double minutes(Duration duration) {
        return duration.toSeconds() / 60.0;
    }

    private static String name(Duration duration) {
        return duration.toMinutes() < 60
                ? duration.toMinutes() + (duration.toMinutes() == 5 ? " min" : "")
                : duration.toHours() + (duration.toHours() == 1 || duration.toHours() == 24 ? " h" : "");
    }

    private static double depth(DepthDurationFrequency relation, Duration duration, double years) {
        return relation.depthMm(duration, years);
    }

    private static void lines(Svg svg, Scale x, Scale y, DepthDurationFrequency table) {
        double lastLabel = Double.POSITIVE_INFINITY;
        for (int k = YEARS.length - 1; k >= 0; k--) {
            double years = YEARS[k];
            if (years < table.smallestYears() || years > table.greatestYears()) {
                continue;
            }
            List<double[]> points = new ArrayList<>();
            for (double minutes = 5; minutes <= 1440.001; minutes *= 1.2) {
                Duration duration = Duration.ofSeconds(Math.round(minutes * 60));
                if (duration.compareTo(table.shortestDuration()) >= 0
                        && duration.compareTo(table.longestDuration()) <= 0) {
                    points.add(new double[] {x.at(minutes), y.at(depth(table, duration, years))});
                }
            }
            if (points.isEmpty()) {
                continue;
            }
            double[] last = points.get(points.size() - 1);
            svg.path(
                    "equal",
                    Svg.polyline(
                            points.stream().mapToDouble(point -> point[0]).toArray(),
                            points.stream().mapToDouble(point -> point[1]).toArray()));
            if (Double.isInfinite(lastLabel) || last[1] - lastLabel > 12) {
                svg.text("label", last[0] + 3, last[1] + 4, "start", Scale.label(years) + " y");
                lastLabel = last[1];
            }
        }
    }

    private static void storm(Svg svg, Scale x, Scale y, RainfallEvent storm, String type) {
        List<PeakDepth> peaks = storm.peaks().stream()
                .filter(peak -> peak.depthMm() > 0 && x.holds(minutes(peak.duration())))
                .toList();
        svg.path(
                type,
                Svg.polyline(
                        peaks.stream()
                                .mapToDouble(peak -> x.at(minutes(peak.duration())))
                                .toArray(),
                        peaks.stream().mapToDouble(peak -> y.at(peak.depthMm())).toArray()));
        if (type.endsWith("marked")) {
            peaks.forEach(peak -> svg.circle("dot", x.at(minutes(peak.duration())), y.at(peak.depthMm()), 3));
        }
    }
}
