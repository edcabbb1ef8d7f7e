package dev.runnel.verification.calculation;

import static dev.runnel.verification.calculation.RainInputs.network;
import static dev.runnel.verification.calculation.RainInputs.rainfall;

import dev.runnel.rainfall.areal.Catchment;
import dev.runnel.rainfall.areal.FilledRain;
import dev.runnel.rainfall.areal.Location;
import dev.runnel.rainfall.areal.NetworkFilling;
import dev.runnel.rainfall.areal.SpatialEstimator;
import dev.runnel.rainfall.design.RunoffCoefficient;
import dev.runnel.rainfall.distribution.ExpectedMoments;
import dev.runnel.rainfall.event.RainAutocorrelation;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Gauges that fill one another's gaps, and what only one call of the library tells. */
final class RainPlaceCalculations {
    private static final String FILLING = "places gauges power least";

    private RainPlaceCalculations() {}

    static List<Calculation> all() {
        return List.of(
                rainfall(
                        "areal.filling.book", "mm", FILLING, in -> Books.sum(filled(in), RainPlaceCalculations::known)),
                rainfall(
                        "areal.filling.filled-depth", "mm", FILLING, in -> Books.sum(filled(in), FilledRain::filledMm)),
                rainfall("areal.filling.filled", "steps", FILLING, in -> Books.sum(filled(in), FilledRain::filled)),
                rainfall(
                        "areal.catchment.km2",
                        "km2",
                        "catchment",
                        in -> Catchment.parse(in.text("catchment")).areaKm2()),
                rainfall("runoff-coefficient.place-of-middle", "1", "surface", in -> {
                    RunoffCoefficient.Range range = RunoffCoefficient.published(in.text("surface"));
                    return (range.middle().coefficient() - range.least()) / (range.greatest() - range.least());
                }),
                rainfall(
                        "event.independent-after",
                        "h",
                        "depths lags",
                        in -> RainAutocorrelation.of(
                                                RegularSeries.of(
                                                        RainInputs.START, Duration.ofHours(1), in.sample("depths")),
                                                in.integer("lags"))
                                        .independentAfter()
                                        .orElseThrow()
                                        .toNanos()
                                / 3.6e12),
                rainfall(
                        "expected-moments.of-known.parameter",
                        "of the variate",
                        "sample parameter",
                        in -> FrequencyCalculations.named(
                                ExpectedMoments.builder()
                                        .known(in.sample("sample"))
                                        .fit()
                                        .distribution()
                                        .parameters(),
                                in.text("parameter"))));
    }

    private static List<FilledRain> filled(Inputs in) {
        Map<String, RegularSeries> rain = network(in, Duration.ofHours(1));
        Map<String, Location> places = new LinkedHashMap<>();
        for (String place : in.text("places").split(";")) {
            double[] xy = Arrays.stream(place.strip().split(" "))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            places.put("gauge " + (places.size() + 1), Location.of(xy[0], xy[1]));
        }
        return new ArrayList<>(NetworkFilling.of(SpatialEstimator.inverseDistance(in.number("power")), places)
                .withLeastNeighbours(in.integer("least"))
                .fill(rain)
                .values());
    }

    private static double known(FilledRain rain) {
        List<Double> depths = Arrays.stream(rain.depth().toValues()).boxed().toList();
        return Books.sum(depths, depth -> Double.isNaN(depth) ? 0 : depth);
    }
}
