package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.Reference;
import org.junit.jupiter.api.Test;

class DarcyFrictionTest {
    @Test
    void turbulentFactorHasFullDoublePrecision() {
        var rows = Reference.rows(DarcyFrictionTest.class, "friction.csv");
        assertThat(rows).hasSize(198);
        double worst = rows.stream()
                .mapToDouble(row -> Reference.deviation(
                        DarcyFriction.factor(
                                Double.parseDouble(row.get("reynolds")), Double.parseDouble(row.get("roughness"))),
                        row.get("factor")))
                .max()
                .orElseThrow();
        assertThat(worst).isLessThan(2e-15);
    }

    @Test
    void laminarAndTransition() {
        assertThat(DarcyFriction.factor(1000, 0.01)).isEqualTo(0.064);
        assertThat(DarcyFriction.factor(2000, 0.01)).isEqualTo(0.032);
        double end = DarcyFriction.colebrookWhite(4000, 0.01);
        assertThat(DarcyFriction.factor(3000, 0.01)).isCloseTo((0.032 + end) / 2, within(1e-16));
        assertThat(DarcyFriction.factor(4000, 0.01)).isEqualTo(end);
    }

    /** Very rough walls leave laminar flow earlier: Rs = √(0.95 · 256000/f₄), by hand for f₄ = 0.1026. */
    @Test
    void roughWallsLeaveLaminarFlowEarlier() {
        double end = DarcyFriction.colebrookWhite(4000, 0.08);
        double start = Math.sqrt(0.95 * 256_000 / end);
        assertThat(start).isBetween(1500.0, 1700.0);
        assertThat(DarcyFriction.factor(0.999 * start, 0.08)).isCloseTo(64 / (0.999 * start), within(1e-16));
        double half = (start + 4000) / 2;
        assertThat(DarcyFriction.factor(half, 0.08)).isCloseTo((64 / start + end) / 2, within(1e-16));
    }

    /** The part-full law is this law with 4R for the diameter, at Re 1500 too. */
    @Test
    void partFullLawIsTheSameLaw() {
        int compared = 0;
        for (double reynolds : new double[] {10, 600, 1030, 1500, 2000, 2400, 3000, 3999, 4001, 1e5}) {
            for (double relative : new double[] {0, 1e-4, 0.01, 0.05, 0.2, 1}) {
                double radius = 0.1;
                double viscosity = 1e-6;
                double velocity = reynolds * viscosity / (4 * radius);
                double slope = DarcyFriction.factor(reynolds, relative) * velocity * velocity / (8 * 9.81 * radius);
                var law = ColebrookWhite.ofRoughness(4 * radius * relative).withViscosity(viscosity);
                assertThat(law.velocity(radius, slope, 9.81)).isCloseTo(velocity, within(1e-13 * velocity));
                assertThat(law.gradient(velocity, radius, 9.81)).isCloseTo(slope, within(1e-13 * slope));
                compared++;
            }
        }
        assertThat(compared).isEqualTo(60);
    }

    /** No jump anywhere: what a solver on top would trip over. */
    @Test
    void isContinuousOverAllRegimes() {
        double last = DarcyFriction.factor(500, 0.001);
        for (double re = 500; re < 1e6; re *= 1.0005) {
            double factor = DarcyFriction.factor(re, 0.001);
            assertThat(factor / last).isBetween(0.999, 1.001);
            last = factor;
        }
    }

    @Test
    void bulkFormGivesTheSameBits() {
        double[] reynolds = {900, 2500, 1e5, Double.NaN};
        double[] factor = new double[4];
        DarcyFriction.factor(reynolds, 0.002, factor);
        assertThat(factor)
                .containsExactly(
                        DarcyFriction.factor(900, 0.002),
                        DarcyFriction.factor(2500, 0.002),
                        DarcyFriction.factor(1e5, 0.002),
                        Double.NaN);
    }

    @Test
    void bulkFormGivesTheSameBitsOverTheChart() {
        double[] reynolds = new double[400];
        for (int i = 0; i < reynolds.length; i++) {
            reynolds[i] = 100 * Math.pow(10, 0.02 * i);
        }
        for (double relative : new double[] {0, 1e-6, 0.004, 0.05, 1}) {
            double[] factor = new double[reynolds.length];
            DarcyFriction.factor(reynolds, relative, factor);
            for (int i = 0; i < reynolds.length; i++) {
                assertThat(factor[i]).isEqualTo(DarcyFriction.factor(reynolds[i], relative));
            }
        }
    }

    /** The pieces and Newton's method, which takes over at Re of 128 and 2^30, are the same curve. */
    @Test
    void noStepWhereThePiecesEnd() {
        for (double end : new double[] {0x1p7, 0x1p30}) {
            for (double relative : new double[] {0, 1e-5, 0.01, 0.3, 1}) {
                double below = DarcyFriction.colebrookWhite(Math.nextDown(end), relative);
                double at = DarcyFriction.colebrookWhite(end, relative);
                double above = DarcyFriction.colebrookWhite(Math.nextUp(end), relative);
                assertThat(below / at - 1).isBetween(-4e-15, 4e-15);
                assertThat(above / at - 1).isBetween(-4e-15, 4e-15);
            }
        }
    }

    @Test
    void refusesImpossibleInput() {
        for (double re : new double[] {0, -5, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> DarcyFriction.factor(re, 0.01))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("reynolds must be greater than 0 and finite, was ");
        }
        for (double re : new double[] {1000, 3000, 1e5}) {
            assertThatThrownBy(() -> DarcyFriction.factor(re, 1.1))
                    .hasMessage("relativeRoughness must be in [0, 1], was 1.1");
            assertThatThrownBy(() -> DarcyFriction.factor(re, Double.NaN)).hasMessageContaining("was NaN");
        }
        assertThatThrownBy(() -> DarcyFriction.factor(new double[] {1e5, -1}, 0.01, new double[2]))
                .hasMessageStartingWith("reynolds[1]: reynolds must be");
    }
}
