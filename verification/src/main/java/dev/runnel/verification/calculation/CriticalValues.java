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

/**
 * Critical values of a family of location and scale, which its parameters do not change. One simulation serves all
 * significances, and is kept.
 */
final class CriticalValues {
    private static final double[] SIGNIFICANCES = {
        0.005, 0.01, 0.025, 0.05, 0.1, 0.15, 0.25, 0.5, 0.75, 0.9, 0.95, 0.975, 0.99, 0.995
    };
    /** Tables of the correlation were published for both, of the same sizes: the same samples serve them. */
    private static final List<PlottingPosition> TOGETHER = List.of(PlottingPosition.BLOM, PlottingPosition.FILLIBEN);

    private static final Map<Case, List<Bootstrap.CriticalValues>> KEPT = KeptAnswers.map();

    private record Case(
            DistributionFamily family, FitMethod method, List<PlottingPosition> positions, int size, int draws) {
        List<Bootstrap.CriticalValues> simulated() {
            Fit fit = Fit.from(family, method, size, 0, 1);
            Bootstrap bootstrap = Bootstrap.of(draws, 1);
            return positions.size() == 1
                    ? List.of(bootstrap.criticalValues(fit, positions.get(0), SIGNIFICANCES))
                    : bootstrap.criticalValues(fit, positions, SIGNIFICANCES);
        }
    }

    private CriticalValues() {}

    static GoodnessOfFit andersonDarling(Inputs in) {
        return of(in, List.of(position(in)));
    }

    static GoodnessOfFit plotCorrelation(Inputs in) {
        return of(in, TOGETHER.contains(position(in)) ? TOGETHER : List.of(position(in)));
    }

    private static PlottingPosition position(Inputs in) {
        return PlottingPosition.valueOf(FrequencyCalculations.constant(in.text("formula")));
    }

    private static GoodnessOfFit of(Inputs in, List<PlottingPosition> positions) {
        DistributionFamily family = FrequencyCalculations.family(in);
        int usual = family == DistributionFamily.GUMBEL ? 4000 : 20_000;
        Case asked = new Case(
                family,
                FitMethod.valueOf(FrequencyCalculations.constant(in.text("method"))),
                positions,
                in.integer("size"),
                in.has("draws") ? in.integer("draws") : usual);
        for (int i = 0; i < SIGNIFICANCES.length; i++) {
            if (SIGNIFICANCES[i] == in.number("significance")) {
                return KEPT.computeIfAbsent(asked, Case::simulated)
                        .get(positions.indexOf(position(in)))
                        .values()
                        .get(i);
            }
        }
        throw new IllegalArgumentException(
                "significance must be one of " + Arrays.toString(SIGNIFICANCES) + ", was " + in.number("significance"));
    }
}
