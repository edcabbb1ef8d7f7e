package dev.runnel.verification.calculation;

import dev.runnel.rainfall.distribution.Bootstrap;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.Fit;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.GoodnessOfFit;
import dev.runnel.rainfall.distribution.PlottingPosition;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Critical values of a family of location and scale, which its parameters do not change. One simulation serves all
 * significances, and is kept.
 */
final class CriticalValues {
    private static final double[] SIGNIFICANCES = {
        0.005, 0.01, 0.025, 0.05, 0.1, 0.15, 0.25, 0.5, 0.75, 0.9, 0.95, 0.975, 0.99, 0.995
    };
    private static final Map<Case, List<GoodnessOfFit>> KEPT = new ConcurrentHashMap<>();

    private record Case(DistributionFamily family, FitMethod method, PlottingPosition position, int size, int draws) {
        List<GoodnessOfFit> simulated() {
            Fit fit = Fit.from(family, method, size, 0, 1);
            return Bootstrap.of(draws, 1)
                    .criticalValues(fit, position, SIGNIFICANCES)
                    .values();
        }
    }

    private CriticalValues() {}

    static GoodnessOfFit of(Inputs in) {
        DistributionFamily family = FrequencyCalculations.family(in);
        int usual = family == DistributionFamily.GUMBEL ? 4000 : 20_000;
        Case asked = new Case(
                family,
                FitMethod.valueOf(FrequencyCalculations.constant(in.text("method"))),
                PlottingPosition.valueOf(FrequencyCalculations.constant(in.text("formula"))),
                in.integer("size"),
                in.has("draws") ? in.integer("draws") : usual);
        for (int i = 0; i < SIGNIFICANCES.length; i++) {
            if (SIGNIFICANCES[i] == in.number("significance")) {
                return KEPT.computeIfAbsent(asked, Case::simulated).get(i);
            }
        }
        throw new IllegalArgumentException(
                "significance must be one of " + Arrays.toString(SIGNIFICANCES) + ", was " + in.number("significance"));
    }
}
