package dev.runnel.examples.shell;

import dev.runnel.examples.pages.CurveFigure;
import dev.runnel.examples.pages.CurveFigure.Curve;
import dev.runnel.examples.pages.DayFigure;
import dev.runnel.examples.pages.RecordFigure;
import dev.runnel.examples.pages.RecordRows;
import dev.runnel.examples.pages.SectionFigure;
import dev.runnel.examples.pages.SitePage;
import dev.runnel.examples.pages.StormFigure;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.FlowState;
import dev.runnel.hydraulics.flow.Station;
import dev.runnel.hydraulics.flow.WaterProfile;
import dev.runnel.hydraulics.rating.RatingCurve;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.structure.HeadDischarge;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.ddf.DepthDurationFrequency;
import dev.runnel.rainfall.design.DesignStorm;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.baseline.DayClass;
import dev.runnel.timeseries.baseline.DiurnalProfile;
import dev.runnel.timeseries.baseline.ProfileSlot;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** Draws the things of the library. Nothing is computed here but places on paper. */
final class Charts {
    private static final int POINTS = 200;
    private static final double CONFIDENCE = 0.95;
    private static final double MM = 1000;
    private static final double LITRES = 1000;

    private Charts() {}

    static Chart of(String title, RecordRows rows) {
        return Chart.of(title, SitePage.of(title, "").withRecord(rows), RecordFigure.of(rows));
    }

    static Chart of(CrossSection section, OptionalDouble depth) {
        String title = section.toString();
        String drawing = SectionFigure.of(section, depth);
        return Chart.of(title, SitePage.of(title, "").withPanel(panel("Section", drawing, "", "sections")), drawing);
    }

    static Chart plate(List<CrossSection> sections) {
        String title = sections.size() + " sections";
        String drawing = SectionFigure.plate(sections);
        return Chart.of(
                title,
                SitePage.of("Sections", title)
                        .withPanel(
                                panel("Sections", drawing, "Width x height, each at a scale of its own.", "sections")),
                drawing);
    }

    /** An open channel has no full bore to take shares of. */
    private static Chart ofOpen(Conduit conduit) {
        double[] breaks = conduit.section().breakDepths();
        double highest = breaks.length == 0 ? 0 : breaks[breaks.length - 1];
        double[] depths = between(0, highest > 0 ? 1.5 * highest : 1);
        double[] mm = map(depths, depth -> depth * MM);
        String drawing = CurveFigure.of(
                "Flow of an open channel",
                "flow, l/s",
                "depth, mm",
                false,
                List.of(new Curve(
                        "uniform flow",
                        "day1",
                        map(depths, depth -> depth == 0 ? 0 : conduit.discharge(depth) * LITRES),
                        mm)));
        String velocities = CurveFigure.of(
                "Velocity in an open channel",
                "velocity, m/s",
                "depth, mm",
                false,
                List.of(new Curve(
                        "uniform flow", "day2", map(depths, depth -> depth == 0 ? 0 : conduit.velocity(depth)), mm)));
        return Chart.of(
                "uniform flow of " + conduit,
                SitePage.of("Flow of an open channel", conduit.toString())
                        .withPanel(panel("Flow", drawing, "Uniform flow in a clean channel.", "part-full-flow"))
                        .withPanel(panel("Velocity", velocities, "", "part-full-flow"))
                        .withPanel(panel("Section", SectionFigure.plate(List.of(conduit.section())), "", "sections")),
                drawing);
    }

    static Chart of(Conduit conduit) {
        if (!Double.isFinite(conduit.section().height())) {
            return ofOpen(conduit);
        }
        FlowState full = conduit.fullBore();
        FlowState most = conduit.maximum();
        double height = conduit.section().height();
        double[] depths = new double[POINTS + 1];
        double[] discharges = new double[POINTS + 1];
        double[] velocities = new double[POINTS + 1];
        for (int i = 0; i <= POINTS; i++) {
            // Closer together near the soffit, where both curves turn.
            double depth = height * Math.sin(Math.PI / 2 * i / POINTS);
            depths[i] = depth * MM;
            discharges[i] = i == 0 ? 0 : conduit.discharge(depth) / full.discharge();
            velocities[i] = i == 0 ? 0 : conduit.velocity(depth) / full.velocity();
        }
        String drawing = CurveFigure.of(
                "Part-full flow",
                "share of the full bore",
                "depth, mm",
                false,
                List.of(
                        new Curve("discharge, of " + litres(full.discharge()), "day1", discharges, depths),
                        new Curve(
                                "velocity, of " + Text.significant(full.velocity(), 3) + " m/s",
                                "day2",
                                velocities,
                                depths),
                        new Curve(
                                "most: " + litres(most.discharge()) + " at " + Math.round(most.depth() * MM) + " mm",
                                "dot4",
                                new double[] {most.discharge() / full.discharge()},
                                new double[] {most.depth() * MM})));
        SitePage page = SitePage.of("Part-full flow", conduit.toString())
                .withFigure(new SitePage.Figure(
                        "Full bore", litres(full.discharge()), "uniform flow, clean pipe", "part-full-flow"))
                .withFigure(new SitePage.Figure(
                        "Most it carries",
                        litres(most.discharge()),
                        "at a depth of " + Math.round(most.depth() * MM) + " mm",
                        "part-full-flow"))
                .withPanel(panel("Part-full flow", drawing, "Uniform flow in a clean pipe.", "part-full-flow"))
                .withPanel(
                        panel("Section", SectionFigure.of(conduit.section(), OptionalDouble.empty()), "", "sections"));
        return Chart.of("part-full flow of " + conduit, page, drawing);
    }

    static Chart of(DepthDurationFrequency relation, List<RainfallEvent> storms) {
        String drawing = StormFigure.of(storms, storms.size() == 1 ? storms : List.of(), Optional.of(relation));
        String title = storms.isEmpty()
                ? relation.toString()
                : storms.size() == 1 ? storms.get(0).toString() : storms.size() + " storms";
        return Chart.of(
                title,
                SitePage.of("Depth, duration, frequency", title)
                        .withPanel(panel(
                                "Depths over durations",
                                drawing,
                                "Thin lines: return periods in years, " + relation.basis() + ".",
                                "depth-duration-frequency")),
                drawing);
    }

    static Chart of(List<RainfallEvent> storms) {
        String drawing = StormFigure.of(storms, List.of(), Optional.empty());
        String title = storms.size() == 1 ? storms.get(0).toString() : storms.size() + " storms";
        return Chart.of(
                title,
                SitePage.of("Storms", title).withPanel(panel("Peaks over durations", drawing, "", "storm-measures")),
                drawing);
    }

    static Chart of(DesignStorm storm) {
        double[] depths = storm.depths();
        double minutes = storm.duration().toSeconds() / 60.0 / depths.length;
        double[] xs = new double[2 * depths.length + 2];
        double[] ys = new double[xs.length];
        for (int i = 0; i < depths.length; i++) {
            Arrays.fill(ys, 2 * i + 1, 2 * i + 3, depths[i] / minutes * 60);
            xs[2 * i + 1] = minutes * i;
            xs[2 * i + 2] = minutes * (i + 1);
        }
        xs[xs.length - 1] = xs[xs.length - 2];
        String drawing = CurveFigure.of(
                "Design storm",
                "minutes",
                "mm/h",
                false,
                List.of(new Curve(Text.significant(storm.depthMm(), 3) + " mm in all", "day2", xs, ys)));
        return Chart.of(
                storm.toString(),
                SitePage.of("Design storm", storm.toString())
                        .withPanel(panel("Intensity", drawing, "", "design-storms")),
                drawing);
    }

    static Chart of(DiurnalProfile profile, String unit, double factor) {
        List<DayFigure.Line> lines = new ArrayList<>();
        for (DayClass dayClass : profile.rule().split().classes()) {
            List<ProfileSlot> slots = profile.slots(dayClass);
            LocalDate day = LocalDate.of(2026, 1, 1)
                    .datesUntil(LocalDate.of(2027, 1, 1))
                    .filter(date -> profile.rule().classOf(date) == dayClass)
                    .findFirst()
                    .orElseThrow();
            double[][] band = new double[3][slots.size()];
            List<LocalTime> starts = new ArrayList<>();
            for (int i = 0; i < slots.size(); i++) {
                starts.add(slots.get(i).start());
                Instant time =
                        day.atTime(slots.get(i).start()).atZone(profile.zone()).toInstant();
                band[0][i] = profile.quantile(time, 0.1) * factor;
                band[1][i] = slots.get(i).median() * factor;
                band[2][i] = profile.quantile(time, 0.9) * factor;
            }
            lines.add(new DayFigure.Line(
                    dayClass.toText() + ", " + profile.days(dayClass) + " days", starts, band[0], band[1], band[2]));
        }
        String drawing = DayFigure.of(unit, lines);
        return Chart.of(
                profile.toString(),
                SitePage.of("Day profile", profile.toString())
                        .withPanel(
                                panel("Day profile", drawing, "Median; band: 80 of 100 days.", "dry-weather-profile")),
                drawing);
    }

    static Chart of(RatingCurve rating) {
        double low = rating.lowestStage();
        double high = rating.highestStage();
        double[] stages = between(low, high);
        String drawing = CurveFigure.of(
                "Rating",
                "flow, l/s",
                "stage, m",
                false,
                List.of(
                        new Curve("rating", "day1", map(stages, stage -> rating.discharge(stage) * LITRES), stages),
                        new Curve(
                                "between these lie 95 of 100 further gaugings",
                                "equal",
                                map(
                                        stages,
                                        stage -> rating.prediction(stage, CONFIDENCE)
                                                        .lower()
                                                * LITRES),
                                stages),
                        new Curve(
                                "",
                                "equal",
                                map(
                                        stages,
                                        stage -> rating.prediction(stage, CONFIDENCE)
                                                        .upper()
                                                * LITRES),
                                stages)));
        return Chart.of(
                rating.toString(),
                SitePage.of("Rating", rating.toString())
                        .withPanel(panel("Rating", drawing, "Over the gauged stages only.", "rating-curve")),
                drawing);
    }

    static Chart of(HeadDischarge structure, double highest) {
        double[] heads = between(0, Math.min(highest, structure.highestHead()));
        double[] within = map(heads, head -> discharge(structure, head, true));
        double[] outside = map(heads, head -> discharge(structure, head, false));
        String drawing = CurveFigure.of(
                "Rating of a structure",
                "flow, l/s",
                "head, mm",
                false,
                List.of(
                        new Curve("within the limits of its formula", "day1", within, map(heads, head -> head * MM)),
                        new Curve("outside of them", "day4", outside, map(heads, head -> head * MM))));
        return Chart.of(
                structure.toString(),
                SitePage.of("Rating of a structure", structure.toString())
                        .withPanel(panel("Flow over head", drawing, "", "weirs")),
                drawing);
    }

    private static double discharge(HeadDischarge structure, double head, boolean within) {
        if (head == 0) {
            return within ? Double.NaN : 0;
        }
        var rated = structure.evaluate(head);
        return rated.isWithinLimits() == within ? rated.discharge() * LITRES : Double.NaN;
    }

    static Chart of(WaterProfile profile) {
        List<Station> stations = profile.stations();
        double[] distances = stations.stream().mapToDouble(Station::distance).toArray();
        String drawing = CurveFigure.of(
                "Water profile",
                "distance, m",
                "level, m",
                false,
                List.of(
                        new Curve("water", "day2", distances, levels(stations, Station::level)),
                        new Curve("invert", "day1", distances, levels(stations, Station::invert)),
                        new Curve("soffit", "soffit", distances, levels(stations, Charts::soffit))));
        return Chart.of(
                profile.toString(),
                SitePage.of("Water profile", profile.toString())
                        .withPanel(panel("Levels along the sewer", drawing, "Steady flow.", "varied-flow")),
                drawing);
    }

    /** Of an open channel there is none. */
    private static double soffit(Station station) {
        double height = station.reach().section().height();
        return Double.isFinite(height) ? station.invert() + height : Double.NaN;
    }

    private static double[] levels(List<Station> stations, java.util.function.ToDoubleFunction<Station> level) {
        return stations.stream().mapToDouble(level).toArray();
    }

    private static double[] between(double low, double high) {
        double[] values = new double[POINTS + 1];
        for (int i = 0; i <= POINTS; i++) {
            values[i] = i == POINTS ? high : low + (high - low) * i / POINTS;
        }
        return values;
    }

    private static double[] map(double[] values, DoubleUnaryOperator function) {
        return Arrays.stream(values).map(function).toArray();
    }

    private static String litres(double cubicMetresPerSecond) {
        return Text.significant(cubicMetresPerSecond * LITRES, 3) + " l/s";
    }

    private static SitePage.Panel panel(String title, String drawing, String caption, String method) {
        return new SitePage.Panel(title, drawing, caption, method, false);
    }
}
