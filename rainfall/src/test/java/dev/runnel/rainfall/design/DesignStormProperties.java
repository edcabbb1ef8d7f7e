package dev.runnel.rainfall.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.ddf.FormulaDdf;
import dev.runnel.rainfall.ddf.IntensityFormula;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import java.time.Duration;
import java.util.Arrays;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;

class DesignStormProperties {
    private static final Duration STEP = Duration.ofMinutes(5);

    @Property
    void shapesKeepTheDepthToTheLastPlace(
            @ForAll @DoubleRange(min = 0.1, max = 500) @Scale(6) double depth,
            @ForAll @IntRange(min = 1, max = 400) int steps,
            @ForAll @DoubleRange(min = 0.001, max = 0.999) @Scale(3) double a,
            @ForAll @DoubleRange(min = 0.3, max = 3) @Scale(3) double b) {
        DesignStorm storm =
                DesignStorm.of("symmetric", SymmetricProfile.of(a, b), STEP.multipliedBy(steps), depth, STEP);
        // isCloseTo compares decimal texts, which can be further apart than the doubles.
        assertThat(Math.abs(storm.depthMm() - depth)).isLessThanOrEqualTo(Math.ulp(depth));
        assertThat(storm.depths()).hasSize(steps);
        assertThat(Arrays.stream(storm.depths()).min().orElseThrow()).isGreaterThanOrEqualTo(0);
    }

    @Property
    void chicagoKeepsTheDepthOfItsFormula(
            @ForAll @DoubleRange(min = 0.05, max = 0.95) @Scale(3) double peakAt,
            @ForAll @IntRange(min = 1, max = 200) int steps) {
        Duration duration = STEP.multipliedBy(steps);
        IntensityFormula formula = IntensityFormula.sherman(1500, 10, 0.8, Duration.ofNanos(1), Duration.ofDays(1));
        DesignStorm storm = DesignStorm.chicago(formula, duration, peakAt, STEP);
        double depth = formula.depthMm(duration);
        // isCloseTo compares decimal texts, which can be further apart than the doubles.
        assertThat(Math.abs(storm.depthMm() - depth)).isLessThanOrEqualTo(Math.ulp(depth));
        assertThat(Arrays.stream(storm.depths()).min().orElseThrow()).isGreaterThanOrEqualTo(0);
    }

    private static FormulaDdf relation(double b, double n) {
        return FormulaDdf.of(
                ReturnPeriodBasis.PEAKS_OVER_THRESHOLD,
                Map.of(5.0, IntensityFormula.sherman(1500, b, n, Duration.ofMinutes(1), Duration.ofDays(1))));
    }

    /** Of rain whose intensity falls with duration, the wettest k blocks lie side by side and hold the depth of k blocks. */
    @Property
    void alternatingBlocksHoldTheDepthOfEveryDuration(
            @ForAll @DoubleRange(min = 0, max = 30) @Scale(3) double b,
            @ForAll @DoubleRange(min = 0.3, max = 0.95) @Scale(3) double n,
            @ForAll @IntRange(min = 1, max = 60) int steps) {
        FormulaDdf relation = relation(b, n);
        DesignStorm storm = DesignStorm.alternatingBlock(relation, 5, STEP.multipliedBy(steps), STEP);
        double depth = relation.depthMm(STEP.multipliedBy(steps), 5);
        assertThat(Math.abs(storm.depthMm() - depth)).isLessThanOrEqualTo(Math.ulp(depth));
        double[] depths = storm.depths();
        for (int k = 1; k <= steps; k++) {
            double wettest = 0;
            for (int from = 0; from + k <= steps; from++) {
                wettest =
                        Math.max(wettest, Arrays.stream(depths, from, from + k).sum());
            }
            double wanted = relation.depthMm(STEP.multipliedBy(k), 5);
            assertThat(wettest).isCloseTo(wanted, within(1e-12 * wanted));
        }
    }

    @Property
    void eulerHoldsTheBlocksInItsOrder(
            @ForAll @DoubleRange(min = 0, max = 30) @Scale(3) double b,
            @ForAll @DoubleRange(min = 0.3, max = 0.95) @Scale(3) double n,
            @ForAll @IntRange(min = 1, max = 60) int steps) {
        FormulaDdf relation = relation(b, n);
        double[] depths = DesignStorm.eulerTypeTwo(relation, 5, STEP.multipliedBy(steps), STEP)
                .depths();
        double depth = relation.depthMm(STEP.multipliedBy(steps), 5);
        assertThat(Math.abs(Arrays.stream(depths).sum() - depth)).isLessThanOrEqualTo(1e-12 * depth);
        int peak = 0;
        while (peak + 1 < steps && depths[peak + 1] > depths[peak]) {
            peak++;
        }
        assertThat(peak == 0 || (peak + 1) * 10 <= 3 * steps).isTrue();
        for (int i = peak + 1; i < steps; i++) {
            assertThat(depths[i]).isLessThanOrEqualTo(depths[i - 1] * (1 + 1e-9));
        }
    }

    @Property
    void trianglesAndPointsKeepTheDepth(
            @ForAll @DoubleRange(min = 0.1, max = 500) @Scale(6) double depth,
            @ForAll @DoubleRange(min = 0.5, max = 0.99) @Scale(3) double share,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(3) double position,
            @ForAll @IntRange(min = 4, max = 200) int steps) {
        Duration duration = STEP.multipliedBy(steps);
        DesignStorm triangle = DoubleTriangle.of(depth, duration, share * depth, duration.dividedBy(4), position)
                .storm(STEP);
        assertThat(Math.abs(triangle.depthMm() - depth)).isLessThanOrEqualTo(Math.ulp(depth));
        assertThat(Arrays.stream(triangle.depths()).min().orElseThrow()).isGreaterThanOrEqualTo(0);
        StormShape points = StormShape.through(new double[] {0, position + 0.1, 2}, new double[] {0, share, 1});
        DesignStorm storm = DesignStorm.of("points", points, duration, depth, STEP);
        assertThat(Math.abs(storm.depthMm() - depth)).isLessThanOrEqualTo(Math.ulp(depth));
    }
}
