package dev.runnel.verification.calculation;

import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.infiltration.DailyFlows;
import dev.runnel.timeseries.infiltration.NightFlow;
import dev.runnel.timeseries.infiltration.NightMinimum;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.TreeMap;

/** Infiltration from daily flows and from night flows. */
final class InfiltrationCalculations {
    private static final LocalDate FIRST = LocalDate.of(2001, 1, 1);

    private InfiltrationCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of(
                        "timeseries",
                        "infiltration.moving-minimum",
                        "as the flows",
                        "flows day days",
                        in -> flows(in).movingMinimum(in.integer("days")).get(FIRST.plusDays(in.integer("day")))),
                Calculation.of(
                        "timeseries",
                        "infiltration.by-moving-minimum",
                        "as the flows",
                        "flows day days foul",
                        in -> flows(in)
                                .infiltration(in.integer("days"), in.number("foul"))
                                .get(FIRST.plusDays(in.integer("day")))),
                Calculation.of(
                        "timeseries",
                        "infiltration.night-flow",
                        "as the flows",
                        "values step_minutes start zone night from to window_minutes",
                        in -> night(in).flow()),
                Calculation.of(
                        "timeseries",
                        "infiltration.night-share",
                        "1",
                        "values step_minutes start zone night from to window_minutes",
                        in -> night(in).shareOfDay()));
    }

    private static DailyFlows flows(Inputs in) {
        TreeMap<LocalDate, Double> flows = new TreeMap<>();
        for (double flow : in.sample("flows")) {
            flows.put(FIRST.plusDays(flows.size()), flow);
        }
        return DailyFlows.of(flows);
    }

    private static NightFlow night(Inputs in) {
        RegularSeries flow = RegularSeries.of(
                Instant.parse(in.text("start")), minutes(in.number("step_minutes")), in.sample("values"));
        return NightMinimum.between(
                        LocalTime.parse(in.text("from")), LocalTime.parse(in.text("to")), ZoneId.of(in.text("zone")))
                .withWindow(minutes(in.number("window_minutes")))
                .of(flow.toSeries())
                .get(in.integer("night"));
    }

    private static Duration minutes(double minutes) {
        return Duration.ofNanos(Math.round(minutes * 60e9));
    }
}
