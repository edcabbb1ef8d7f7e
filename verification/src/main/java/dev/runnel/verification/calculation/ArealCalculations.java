package dev.runnel.verification.calculation;

import dev.runnel.rainfall.areal.ArealReduction;
import dev.runnel.rainfall.areal.Catchment;
import dev.runnel.rainfall.areal.GaugeWeights;
import dev.runnel.rainfall.areal.Location;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Rain over areas. A catchment is given in well-known text, gauges as {@code x y; x y}. */
final class ArealCalculations {
    private ArealCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of(
                        "rainfall",
                        "areal-reduction.keers-wescott",
                        "1",
                        "area_km2 minutes",
                        in -> ArealReduction.keersWescott().factor(in.number("area_km2"), minutes(in))),
                Calculation.of(
                        "rainfall",
                        "areal.thiessen.weight",
                        "1",
                        "catchment gauges gauge",
                        in -> thiessen(in).weight(name(in.integer("gauge") - 1))),
                Calculation.of(
                        "rainfall",
                        "areal.catchment.area",
                        "m2",
                        "catchment",
                        in -> Catchment.parse(in.text("catchment")).area()),
                Calculation.of(
                        "rainfall",
                        "areal.thiessen.mean",
                        "mm",
                        "catchment gauges depths",
                        in -> mean(thiessen(in), in.sample("depths"))),
                Calculation.of("rainfall", "areal.weighted-mean", "mm", "weights depths", in -> {
                    Map<String, Double> weights = new LinkedHashMap<>();
                    for (double weight : in.sample("weights")) {
                        weights.put(name(weights.size()), weight);
                    }
                    return mean(GaugeWeights.of(weights), in.sample("depths"));
                }));
    }

    private static GaugeWeights thiessen(Inputs in) {
        Map<String, Location> gauges = new LinkedHashMap<>();
        for (String place : in.text("gauges").split(";")) {
            String[] xy = place.strip().split(" ");
            gauges.put(name(gauges.size()), Location.of(Double.parseDouble(xy[0]), Double.parseDouble(xy[1])));
        }
        return GaugeWeights.thiessen(Catchment.parse(in.text("catchment")), gauges);
    }

    private static double mean(GaugeWeights weights, double[] depths) {
        Map<String, RegularSeries> rain = new LinkedHashMap<>();
        for (double depth : depths) {
            rain.put(name(rain.size()), RegularSeries.of(Instant.EPOCH, Duration.ofHours(1), depth));
        }
        return weights.mean(rain).rain().value(0);
    }

    private static String name(int index) {
        return "gauge " + (index + 1);
    }

    private static Duration minutes(Inputs in) {
        return Duration.ofNanos(Math.round(in.number("minutes") * 60e9));
    }
}
