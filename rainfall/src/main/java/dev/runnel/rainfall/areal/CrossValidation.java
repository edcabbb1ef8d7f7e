package dev.runnel.rainfall.areal;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.RegularSeries;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * How well the others tell the rain of each gauge: every gauge is left out in turn and estimated from those that have a value in the step.
 * Steps in which no gauge had rain are left out, since every rule gets them right.
 *
 * <p>Errors e are estimate less gauge: bias Σe/n, root mean square √(Σe²/n). If the rule knows its variance σ², the mean of e²/σ² should be
 * about 1; far above, the variogram promises too much. Source: Cressie (1993), Statistics for spatial data, section 2.6.4.
 *
 * @param estimates gauges and steps compared
 * @param biasMm mean error, mm
 * @param rootMeanSquareMm root of the mean square error, mm
 * @param standardisedSquare mean of e²/σ² where σ² is above 0; empty if the rule knows no variance
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record CrossValidation(
        int estimates, double biasMm, double rootMeanSquareMm, OptionalDouble standardisedSquare) {
    /**
     * Checks that nothing is missing.
     *
     * @param estimates gauges and steps compared
     * @param biasMm mean error, mm
     * @param rootMeanSquareMm root of the mean square error, mm
     * @param standardisedSquare mean of e²/σ² where σ² is above 0; empty if the rule knows no variance
     */
    public CrossValidation {
        Objects.requireNonNull(standardisedSquare, "standardisedSquare");
    }

    /**
     * Leaves out each gauge in turn.
     *
     * @param rule the rule to be tried
     * @param places where the gauges stand, by name; at least two
     * @param rainByGauge depth in each step, mm; all gauges, all with the same steps, NaN for missing
     * @return how well it does
     * @throws IllegalArgumentException if there are fewer than two gauges, they differ from those of the places, a depth is negative, or no
     *     step has rain at a gauge and a value at another
     */
    public static CrossValidation of(
            SpatialEstimator rule, Map<String, Location> places, Map<String, RegularSeries> rainByGauge) {
        Require.atLeast("gauges", places.size(), 2);
        TreeMap<String, Location> sorted = new TreeMap<>(places);
        List<RegularSeries> rain = GaugeRecords.of(List.copyOf(sorted.keySet()), rainByGauge);
        List<Location> where = List.copyOf(sorted.values());
        SubsetWeights weights = new SubsetWeights(rule, where);
        CompensatedSum errors = new CompensatedSum();
        CompensatedSum squares = new CompensatedSum();
        CompensatedSum standardised = new CompensatedSum();
        int count = 0;
        int known = 0;
        for (int step = 0; step < rain.get(0).size(); step++) {
            double[] depths = GaugeRecords.at(rain, step);
            if (!GaugeRecords.isAnyWet(depths)) {
                continue;
            }
            for (int left = 0; left < depths.length; left++) {
                List<Integer> others = new ArrayList<>();
                for (int i = 0; i < depths.length; i++) {
                    if (i != left && !Double.isNaN(depths[i])) {
                        others.add(i);
                    }
                }
                if (Double.isNaN(depths[left]) || others.isEmpty()) {
                    continue;
                }
                PlaceWeights each = weights.of(left, others);
                double error =
                        each.depthMm(others.stream().mapToDouble(i -> depths[i]).toArray()) - depths[left];
                errors.add(error);
                squares.add(error * error);
                count++;
                if (each.varianceMm2().orElse(Double.NaN) > 0) {
                    standardised.add(error * error / each.varianceMm2().getAsDouble());
                    known++;
                }
            }
        }
        if (count == 0) {
            throw new IllegalArgumentException("rainByGauge must hold a wet step that two gauges have, held none");
        }
        return new CrossValidation(
                count,
                errors.value() / count,
                Math.sqrt(squares.value() / count),
                known == 0 ? OptionalDouble.empty() : OptionalDouble.of(standardised.value() / known));
    }

    @Override
    public String toString() {
        return "CrossValidation[" + estimates + " estimates, bias " + Text.significant(biasMm, 3)
                + " mm, root mean square " + Text.significant(rootMeanSquareMm, 3) + " mm"
                + (standardisedSquare.isPresent()
                        ? ", standardised " + Text.significant(standardisedSquare.getAsDouble(), 3) + "]"
                        : "]");
    }
}
