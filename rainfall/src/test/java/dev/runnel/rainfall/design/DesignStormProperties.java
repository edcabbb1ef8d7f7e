package dev.runnel.rainfall.design;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.rainfall.ddf.IntensityFormula;
import java.time.Duration;
import java.util.Arrays;
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
}
