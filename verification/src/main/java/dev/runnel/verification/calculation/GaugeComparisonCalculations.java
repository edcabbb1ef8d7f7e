package dev.runnel.verification.calculation;

import static dev.runnel.verification.calculation.RainInputs.START;
import static dev.runnel.verification.calculation.RainInputs.network;
import static dev.runnel.verification.calculation.RainInputs.rainfall;

import dev.runnel.rainfall.gauge.DoubleMass;
import dev.runnel.rainfall.gauge.GaugeClocks;
import dev.runnel.rainfall.gauge.GaugeGroups;
import dev.runnel.rainfall.gauge.Neighbours;
import dev.runnel.rainfall.gauge.ShiftedStorms;
import dev.runnel.rainfall.gauge.StorageComparison;
import dev.runnel.rainfall.gauge.StorageGauge;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What is calculated of a gauge beside others: neighbours, a storage gauge, double mass. */
final class GaugeComparisonCalculations {
    private static final String NETWORK = "gauges wet_mm gauge";
    private static final String STORMS = "gauges step_minutes from_minutes long_minutes wet_mm gauge";
    private static final String CLOCKS = "gauges step_minutes from_minutes long_minutes tolerance_minutes gauge";
    private static final String STORAGE = "depths reading_hours stored_mm allowance resolution_mm";

    /** No correlation is that low: too few days to say one. */
    private static final double NONE = -2;

    private GaugeComparisonCalculations() {}

    static List<Calculation> all() {
        return List.of(
                rainfall(
                        "gauge.neighbours.ratio",
                        "1",
                        NETWORK,
                        in -> finding(in).ratio()),
                rainfall(
                        "gauge.neighbours.rank-correlation",
                        "1",
                        NETWORK,
                        in -> finding(in).rankCorrelation()),
                rainfall(
                        "gauge.neighbours.dry-alone",
                        "periods",
                        NETWORK,
                        in -> finding(in).dryAlone()),
                rainfall(
                        "gauge.neighbours.wet-alone",
                        "periods",
                        NETWORK,
                        in -> finding(in).wetAlone()),
                rainfall(
                        "gauge.neighbours.settled-ratio",
                        "1",
                        NETWORK + " tolerance",
                        in -> settled(in).finding(name(in)).orElseThrow().ratio()),
                rainfall(
                        "gauge.neighbours.set-aside",
                        "gauges",
                        NETWORK + " tolerance",
                        in -> settled(in).setAside().size()),
                rainfall(
                        "gauge.neighbours.storms",
                        "storms",
                        STORMS,
                        in -> inStorms(in).compared(name(in)).size()),
                rainfall("gauge.neighbours.last-of-others", "mm", STORMS, in -> {
                    List<Neighbours.Compared> compared = inStorms(in).compared(name(in));
                    return compared.get(compared.size() - 1).othersMm();
                }),
                rainfall(
                        "gauge.neighbours.ratio-in-storms",
                        "1",
                        STORMS,
                        in -> inStorms(in).finding(name(in)).orElseThrow().ratio()),
                rainfall(
                        "gauge.clocks.shift",
                        "min",
                        CLOCKS + " storm",
                        in -> minutes(clocks(in)
                                .shifts(name(in))
                                .get(in.integer("storm") - 1)
                                .shift())),
                rainfall(
                        "gauge.clocks.likeness",
                        "1",
                        CLOCKS + " storm",
                        in -> clocks(in)
                                .shifts(name(in))
                                .get(in.integer("storm") - 1)
                                .likeness()),
                rainfall(
                        "gauge.clocks.compared",
                        "storms",
                        CLOCKS,
                        in -> clocks(in).shifts(name(in)).size()),
                rainfall(
                        "gauge.clocks.row",
                        "storms",
                        CLOCKS,
                        in -> row(in).map(ShiftedStorms::shifted).orElse(0)),
                rainfall(
                        "gauge.clocks.row-others",
                        "storms",
                        CLOCKS,
                        in -> row(in).map(ShiftedStorms::others).orElse(0)),
                rainfall(
                        "gauge.clocks.row-before",
                        "storms",
                        CLOCKS,
                        in -> row(in).map(ShiftedStorms::before).orElse(0)),
                rainfall(
                        "gauge.clocks.row-after",
                        "storms",
                        CLOCKS,
                        in -> row(in).map(ShiftedStorms::after).orElse(0)),
                rainfall(
                        "gauge.clocks.row-shift",
                        "min",
                        CLOCKS,
                        in -> row(in).map(found -> minutes(found.shift())).orElse(0.0)),
                rainfall(
                        "gauge.clocks.row-begins",
                        "min",
                        CLOCKS,
                        in -> row(in).map(found -> sinceStart(found.interval().start()))
                                .orElse(0.0)),
                rainfall(
                        "gauge.clocks.row-ends",
                        "min",
                        CLOCKS,
                        in -> row(in).map(found -> sinceStart(found.interval().end()))
                                .orElse(0.0)),
                rainfall(
                        "gauge.clocks.set-aside",
                        "gauges",
                        CLOCKS,
                        in -> clocks(in).setAside().size()),
                rainfall(
                        "gauge.groups.count",
                        "groups",
                        "gauges step_minutes",
                        in -> GaugeGroups.of(gauges(in)).groups().size()),
                rainfall(
                        "gauge.groups.group",
                        "number",
                        "gauges step_minutes gauge",
                        in -> groupOf(name(in), GaugeGroups.of(gauges(in)))),
                rainfall(
                        "gauge.groups.rank-correlation",
                        "1",
                        "gauges step_minutes gauge other",
                        in -> GaugeGroups.of(gauges(in))
                                .rankCorrelation(name(in), "gauge " + in.integer("other"))
                                .orElse(NONE)),
                rainfall(
                        "gauge.groups.greatest",
                        "1",
                        "gauges step_minutes gauge",
                        in -> GaugeGroups.of(gauges(in))
                                .greatestCorrelation(name(in))
                                .orElse(NONE)),
                rainfall("gauge.double-mass.ratio", "1", "gauge_mm reference_mm", in -> mass(in).ratio()),
                rainfall(
                        "gauge.double-mass.break",
                        "periods",
                        "gauge_mm reference_mm least",
                        in -> mass(in).bestBreak(in.integer("least")).periodsBefore()),
                rainfall(
                        "gauge.double-mass.factor",
                        "1",
                        "gauge_mm reference_mm least",
                        in -> mass(in).bestBreak(in.integer("least")).factor()),
                rainfall(
                        "gauge.storage.ratio",
                        "1",
                        STORAGE,
                        in -> storage(in).ratio().orElseThrow()),
                rainfall(
                        "gauge.storage.count",
                        "readings",
                        STORAGE + " verdict",
                        in -> storage(in)
                                .count(StorageComparison.Verdict.valueOf(
                                        in.text("verdict").toUpperCase(Locale.ROOT)))),
                rainfall(
                        "gauge.neighbours.mass-ratio",
                        "1",
                        NETWORK,
                        in -> Neighbours.of(network(in, Duration.ofDays(1)))
                                .withWetLimit(in.number("wet_mm"))
                                .against("gauge " + in.integer("gauge"))
                                .ratio()),
                rainfall(
                        "gauge.storage.row-ratio",
                        "1",
                        STORAGE + " row",
                        in -> storage(in).rows().get(in.integer("row")).ratio().orElseThrow()));
    }

    private static String name(Inputs in) {
        return "gauge " + in.integer("gauge");
    }

    private static int groupOf(String gauge, GaugeGroups found) {
        List<List<String>> groups = found.groups();
        return groups.indexOf(groups.stream()
                        .filter(group -> group.contains(gauge))
                        .findFirst()
                        .orElseThrow())
                + 1;
    }

    private static Neighbours settled(Inputs in) {
        return Neighbours.of(network(in, Duration.ofDays(1)))
                .withWetLimit(in.number("wet_mm"))
                .settingAside(in.number("tolerance"));
    }

    private static Neighbours inStorms(Inputs in) {
        return Neighbours.inPeriods(gauges(in), storms(in)).withWetLimit(in.number("wet_mm"));
    }

    private static GaugeClocks clocks(Inputs in) {
        GaugeClocks clocks = GaugeClocks.of(gauges(in), storms(in));
        double tolerance = in.number("tolerance_minutes");
        return tolerance > 0 ? clocks.settingAside(Duration.ofMinutes((long) tolerance)) : clocks;
    }

    private static Optional<ShiftedStorms> row(Inputs in) {
        return clocks(in).shiftedStorms(name(in), Duration.ofMinutes((long) in.number("tolerance_minutes")));
    }

    private static double sinceStart(Instant time) {
        return minutes(Duration.between(START, time));
    }

    private static double minutes(Duration duration) {
        return duration.toSeconds() / 60.0;
    }

    private static Map<String, RegularSeries> gauges(Inputs in) {
        Map<String, RegularSeries> gauges = new LinkedHashMap<>();
        double[] steps = in.sample("step_minutes");
        for (String gauge : in.text("gauges").split(";")) {
            double[] depths = Arrays.stream(gauge.strip().split(" "))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            Duration step = Duration.ofMinutes((long) steps[gauges.size()]);
            gauges.put("gauge " + (gauges.size() + 1), RegularSeries.of(START, step, depths));
        }
        return gauges;
    }

    private static List<Interval> storms(Inputs in) {
        List<Interval> storms = new ArrayList<>();
        double[] from = in.sample("from_minutes");
        double[] length = in.sample("long_minutes");
        for (int i = 0; i < from.length; i++) {
            storms.add(Interval.of(START.plusSeconds((long) (from[i] * 60)), Duration.ofMinutes((long) length[i])));
        }
        return storms;
    }

    private static Neighbours.Finding finding(Inputs in) {
        return Neighbours.of(network(in, Duration.ofDays(1)))
                .withWetLimit(in.number("wet_mm"))
                .findings()
                .get(in.integer("gauge") - 1);
    }

    private static DoubleMass mass(Inputs in) {
        return DoubleMass.of(in.sample("gauge_mm"), in.sample("reference_mm"));
    }

    private static StorageComparison storage(Inputs in) {
        StorageGauge gauge = StorageGauge.installed(START);
        double[] hours = in.sample("reading_hours");
        double[] stored = in.sample("stored_mm");
        for (int i = 0; i < hours.length; i++) {
            gauge = gauge.withReading(START.plusSeconds(Math.round(hours[i] * 3600)), stored[i]);
        }
        return gauge.compareByAllowanceAndResolution(
                RegularSeries.of(START, Duration.ofHours(1), in.sample("depths")),
                in.number("allowance"),
                in.number("resolution_mm"));
    }
}
