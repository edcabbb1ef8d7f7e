package dev.runnel.verification.calculation;

import dev.runnel.rainfall.areal.ArealReduction;
import dev.runnel.rainfall.areal.AustralianRegion;
import dev.runnel.rainfall.areal.Catchment;
import dev.runnel.rainfall.areal.CatchmentCells;
import dev.runnel.rainfall.areal.CrossValidation;
import dev.runnel.rainfall.areal.GaugeWeights;
import dev.runnel.rainfall.areal.Location;
import dev.runnel.rainfall.areal.MeanFieldBias;
import dev.runnel.rainfall.areal.PlaceWeights;
import dev.runnel.rainfall.areal.RainGrid;
import dev.runnel.rainfall.areal.SpatialEstimator;
import dev.runnel.rainfall.areal.Variogram;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Rain over areas. A catchment is given in well-known text, gauges as {@code x y; x y}. */
final class ArealCalculations {
    private static final String KRIGING = "shape range sill? nugget? gauges";

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
                        "areal-reduction.australia-2019",
                        "1",
                        "region area_km2 minutes aep",
                        in -> ArealReduction.australia2019(region(in), in.number("aep"))
                                .factor(in.number("area_km2"), minutes(in))),
                Calculation.of(
                        "rainfall",
                        "areal.inverse-distance.mean",
                        "mm",
                        "target gauges depths power",
                        in -> mean(
                                GaugeWeights.at(
                                        place(in.text("target")),
                                        places(in),
                                        SpatialEstimator.inverseDistance(in.number("power"))),
                                in.sample("depths"))),
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
                Calculation.of(
                        "rainfall",
                        "areal.kriging.mean",
                        "mm",
                        KRIGING + " target depths",
                        in -> kriged(in).depthMm(in.sample("depths"))),
                Calculation.of(
                        "rainfall",
                        "areal.kriging.variance",
                        "mm2",
                        KRIGING + " target",
                        in -> kriged(in).varianceMm2().orElseThrow()),
                Calculation.of(
                        "rainfall",
                        "areal.cross-validation.root-mean-square",
                        "mm",
                        KRIGING + " depths",
                        in -> validated(in).rootMeanSquareMm()),
                Calculation.of(
                        "rainfall",
                        "areal.cross-validation.bias",
                        "mm",
                        KRIGING + " depths",
                        in -> validated(in).biasMm()),
                Calculation.of(
                        "rainfall",
                        "areal.cross-validation.standardised",
                        "1",
                        KRIGING + " depths",
                        in -> validated(in).standardisedSquare().orElseThrow()),
                Calculation.of(
                        "rainfall",
                        "areal.grid.mean",
                        "mm",
                        "catchment corner cell columns depths",
                        in -> gridMean(in).depthMm()),
                Calculation.of(
                        "rainfall",
                        "areal.grid.known-share",
                        "1",
                        "catchment corner cell columns depths",
                        in -> gridMean(in).knownShare()),
                Calculation.of(
                        "rainfall",
                        "areal.mean-field-bias",
                        "1",
                        "gauge_mm grid_mm least_mm",
                        in -> MeanFieldBias.of(in.sample("gauge_mm"), in.sample("grid_mm"), in.number("least_mm"))
                                .factor()),
                Calculation.of(
                        "rainfall",
                        "areal.mean-field-bias.left-out",
                        "1",
                        "gauge_mm grid_mm least_mm",
                        in -> MeanFieldBias.of(in.sample("gauge_mm"), in.sample("grid_mm"), in.number("least_mm"))
                                .leftOut()),
                Calculation.of(
                        "rainfall",
                        "areal.mean-field-bias.corrected",
                        "mm",
                        "gauge_mm grid_mm least_mm cell",
                        in -> MeanFieldBias.of(in.sample("gauge_mm"), in.sample("grid_mm"), in.number("least_mm"))
                                .corrected(in.sample("grid_mm"))[in.integer("cell")]),
                Calculation.of(
                        "rainfall",
                        "areal.grid.cell",
                        "1",
                        "corner cell columns rows place",
                        in -> grid(in).indexOf(place(in.text("place")))),
                Calculation.of(
                        "rainfall",
                        "areal.grid.centre-x",
                        "m",
                        "corner cell columns rows index",
                        in -> grid(in).centre(in.integer("index")).x()),
                Calculation.of(
                        "rainfall",
                        "areal.grid.centre-y",
                        "m",
                        "corner cell columns rows index",
                        in -> grid(in).centre(in.integer("index")).y()),
                Calculation.of("rainfall", "areal.weighted-mean", "mm", "weights depths", in -> {
                    Map<String, Double> weights = new LinkedHashMap<>();
                    for (double weight : in.sample("weights")) {
                        weights.put(name(weights.size()), weight);
                    }
                    return mean(GaugeWeights.of(weights), in.sample("depths"));
                }));
    }

    private static SpatialEstimator kriging(Inputs in) {
        double range = in.number("range");
        Variogram variogram = switch (in.text("shape")) {
            case "spherical" -> Variogram.spherical(range);
            case "exponential" -> Variogram.exponential(range);
            case "gaussian" -> Variogram.gaussian(range);
            default -> throw new IllegalArgumentException("shape must be spherical, exponential or gaussian");
        };
        Variogram withSill = in.has("sill") ? variogram.withSill(in.number("sill")) : variogram;
        return SpatialEstimator.ordinaryKriging(in.has("nugget") ? withSill.withNugget(in.number("nugget")) : withSill);
    }

    private static PlaceWeights kriged(Inputs in) {
        return kriging(in)
                .weights(place(in.text("target")), List.copyOf(places(in).values()));
    }

    private static CrossValidation validated(Inputs in) {
        return CrossValidation.of(kriging(in), places(in), hourly(in.sample("depths")));
    }

    private static CatchmentCells.Mean gridMean(Inputs in) {
        double[] depths = in.sample("depths");
        int columns = in.integer("columns");
        return RainGrid.from(place(in.text("corner")), in.number("cell"))
                .withColumns(columns)
                .withRows(depths.length / columns)
                .over(Catchment.parse(in.text("catchment")))
                .mean(depths);
    }

    private static RainGrid grid(Inputs in) {
        return RainGrid.from(place(in.text("corner")), in.number("cell"))
                .withColumns(in.integer("columns"))
                .withRows(in.integer("rows"));
    }

    private static GaugeWeights thiessen(Inputs in) {
        return GaugeWeights.thiessen(Catchment.parse(in.text("catchment")), places(in));
    }

    private static Map<String, Location> places(Inputs in) {
        Map<String, Location> gauges = new LinkedHashMap<>();
        for (String place : in.text("gauges").split(";")) {
            gauges.put(name(gauges.size()), place(place));
        }
        return gauges;
    }

    private static Location place(String text) {
        String[] xy = text.strip().split(" ");
        return Location.of(Double.parseDouble(xy[0]), Double.parseDouble(xy[1]));
    }

    private static AustralianRegion region(Inputs in) {
        return AustralianRegion.valueOf(
                in.text("region").toUpperCase(Locale.ROOT).replace(' ', '_'));
    }

    private static double mean(GaugeWeights weights, double[] depths) {
        return weights.mean(hourly(depths)).rain().value(0);
    }

    private static Map<String, RegularSeries> hourly(double[] depths) {
        Map<String, RegularSeries> rain = new LinkedHashMap<>();
        for (double depth : depths) {
            rain.put(name(rain.size()), RegularSeries.of(RainInputs.START, Duration.ofHours(1), depth));
        }
        return rain;
    }

    private static String name(int index) {
        return "gauge " + (index + 1);
    }

    private static Duration minutes(Inputs in) {
        return Duration.ofNanos(Math.round(in.number("minutes") * 60e9));
    }
}
