package dev.runnel.hydraulics.gauging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.Egg;
import dev.runnel.hydraulics.section.RectangularSection;
import org.junit.jupiter.api.Test;

class VelocityProfileTest {
    private static final double CIRCLE = 0.758114396969088909;

    /** C. T. Crowe and others, Engineering Fluid Mechanics, table 10.2: Reynolds number, u_max/V with three digits. */
    @Test
    void powerLawOfSmoothPipes() {
        double[][] rows = {{4e3, 1.26}, {2.3e4, 1.24}, {1.1e5, 1.22}, {1.1e6, 1.18}, {3.2e6, 1.16}};
        for (double[] row : rows) {
            assertThat(1 / PowerLaw.ofReynolds(row[0]).meanToCentre()).isCloseTo(row[1], withPercentage(0.5));
        }
        assertThat(PowerLaw.of(7).meanToCentre()).isCloseTo(98.0 / 120, within(1e-15));
        assertThat(PowerLaw.of(7).meanToSurface()).isEqualTo(0.875);
    }

    /** The points of the field rules: 0.6 from the surface, and 0.2 with 0.8, are near the mean of any turbulent profile. */
    @Test
    void fieldRulesFollowFromTheLaws() {
        PowerLaw power = PowerLaw.of(7);
        assertThat(power.meanToPoint(0.4)).isCloseTo(1, within(0.005));
        assertThat((1 / power.meanToPoint(0.8) + 1 / power.meanToPoint(0.2)) / 2)
                .isCloseTo(1, within(0.02));
        assertThat(PowerLaw.throughHeightsAndVelocities(0.1, 0.4, 1, Math.pow(4, 1.0 / 6))
                        .m())
                .isCloseTo(6, within(1e-12));
        assertThat(power.atPoint(0.4).standardUncertainty()).isLessThan(0.01);
        LogLaw log = LogLaw.ofFriction(0.02);
        assertThat(log.meanToPoint(Math.exp(-1))).isCloseTo(1, within(1e-12));
        assertThat(log.meanToCentre()).isCloseTo(0.8453608, within(1e-6));
        assertThat(log.meanToSurface()).isCloseTo(0.8913043, within(1e-6));
        assertThatThrownBy(() -> LogLaw.ofFriction(2)).hasMessage("frictionFactor must be in [0.004, 0.2], was 2");
        assertThatThrownBy(() -> LogLaw.ofFriction(0.2).meanToPoint(0.01))
                .hasMessageMatching("height must be greater than 0.0[0-9]+, below which the law fails, was 0.01");
    }

    /** Integral with 25 digits by mpmath's quadrature. */
    @Test
    void traverseOfACircle() {
        SectionTraverse traverse = SectionTraverse.of(CircularSection.ofDiameter(0.6), 0.42);
        double[] heights = {0.05, 0.15, 0.3, 0.4};
        double[] velocities = {0.5, 0.7, 0.85, 0.9};
        assertThat(traverse.mean(heights, velocities)).isCloseTo(CIRCLE, within(1e-9));
        assertThat(traverse.withWidthFactor(0.9).mean(heights, velocities)).isCloseTo(0.9 * CIRCLE, within(1e-9));
        assertThat(traverse.meanToGreatest(heights, velocities)).isCloseTo(CIRCLE / 0.9, within(1e-9));
        assertThatThrownBy(() -> traverse.mean(new double[] {0.5}, new double[] {1}))
                .hasMessage("heights[0] must be above 0 m and at most the depth 0.42 m, was 0.5");
    }

    /** A full power law over a box: the mean is m/(m + 1) of the surface; a lone point stands for a law and a plug above it. */
    @Test
    void traverseOfABoxAndAnEgg() {
        SectionTraverse box = SectionTraverse.of(RectangularSection.open(1.2), 0.8);
        assertThat(box.mean(new double[] {0.8}, new double[] {2})).isCloseTo(1.75, within(1e-12));
        assertThat(box.withBedLaw(PowerLaw.of(4)).mean(new double[] {0.4}, new double[] {1}))
                .isCloseTo(0.5 * 0.8 + 0.5, within(1e-12));
        // in any section an even velocity above a thin bed layer is the mean
        SectionTraverse egg = SectionTraverse.of(Egg.normal(0.9), 0.7);
        double[] heights = {1e-9, 0.3, 0.7};
        assertThat(egg.mean(heights, new double[] {0.6, 0.6, 0.6})).isCloseTo(0.6, within(1e-9));
    }

    @Test
    void indexVelocity() {
        double[] index = {0.2, 0.4, 0.6, 0.8, 1.0};
        double[] mean = {0.19, 0.35, 0.52, 0.71, 0.86};
        IndexVelocity fit = IndexVelocity.fitted(index, mean);
        // by hand: slope 0.34/0.4 = 0.85, intercept 0.526 - 0.51
        assertThat(fit.line().coefficients()[1]).isCloseTo(0.85, within(1e-12));
        assertThat(fit.mean(0.5)).isCloseTo(0.016 + 0.425, within(1e-12));
        assertThat(fit.factorAt(0.5).factor()).isCloseTo(0.882, within(1e-12));
        double s = fit.line().residualDeviation();
        assertThat(fit.uncertainty(0.6)).isCloseTo(s * Math.sqrt(1.2), within(1e-12));
        assertThatThrownBy(() -> fit.mean(1.1)).hasMessage("index must be in [0.2, 1] m/s, was 1.1");
    }

    @Test
    void factorsOfTheTrade() {
        assertThat(VelocityFactor.ofGreatest().mean(1.2)).isCloseTo(1.08, within(1e-15));
        assertThat(VelocityFactor.ofSurface().relativeUncertainty()).isCloseTo(0.0588, within(1e-4));
        assertThat(VelocityFactor.ofPipeCentre()).hasToString("VelocityFactor[0.85 ± 0.03, centre of a full pipe]");
        assertThatThrownBy(() -> new VelocityFactor(5, 0, "x")).hasMessage("factor must be in [0.1, 3], was 5");
    }
}
