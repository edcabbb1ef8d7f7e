package dev.runnel.examples.pages;

import dev.runnel.rainfall.ddf.DepthDurationFrequency;
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
        table.ifPresent(relation -> lines(svg, x, y, relation));
        storms.forEach(storm -> storm(svg, x, y, storm, "storm"));
        marked.forEach(storm -> storm(svg, x, y, storm, "storm marked"));
        return svg.toString();
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
