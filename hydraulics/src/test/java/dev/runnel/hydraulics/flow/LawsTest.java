package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.water.Water;
import org.junit.jupiter.api.Test;

class LawsTest {
    /** Worked by hand: R = 0.125 m, so R^(2/3) = 0.25; S = 0.0064, root 0.08; n = 0.0125. */
    @Test
    void manningByHand() {
        assertThat(Manning.of(0.0125).velocity(0.125, 0.0064)).isCloseTo(1.6, within(1e-15));
        assertThat(Manning.of(0.0125).gradient(1.6, 0.125)).isCloseTo(0.0064, within(1e-17));
    }

    /** Rough limit by hand: ks/(14.8 R) = 0.01 gives 1/√f = 4, viscosity too small to count. */
    @Test
    void colebrookWhiteInTheRoughLimitByHand() {
        var law = ColebrookWhite.ofRoughness(0.0148).withViscosity(1e-30);
        double velocity = law.velocity(0.1, 0.005, 9.81);
        assertThat(velocity).isCloseTo(4 * Math.sqrt(8 * 9.81 * 0.1 * 0.005), within(1e-14));
    }

    @Test
    void temperatureSetsTheViscosity() {
        var cold = ColebrookWhite.ofRoughness(0.00003).atTemperature(5);
        var warm = ColebrookWhite.ofRoughness(0.00003).atTemperature(20);
        assertThat(cold.viscosity()).isEqualTo(Water.atTemperature(5).kinematicViscosity());
        assertThat(warm.velocity(0.05, 0.005)).isGreaterThan(1.02 * cold.velocity(0.05, 0.005));
        assertThat(ColebrookWhite.ofRoughness(0.001).viscosity())
                .isEqualTo(Water.atTemperature(15).kinematicViscosity());
    }

    /** Below the crossing flow is laminar: V = g S R²/(2ν), from f = 64/Re. */
    @Test
    void thinFilmsAreLaminar() {
        var law = ColebrookWhite.ofRoughness(0).withViscosity(1e-6);
        double radius = 2e-4;
        double laminar = 9.80665 * 0.001 * radius * radius / 2e-6;
        assertThat(4 * radius * laminar / 1e-6).isLessThan(1000);
        assertThat(law.velocity(radius, 0.001)).isCloseTo(laminar, within(1e-15 * laminar));
        assertThat(law.gradient(laminar, radius)).isCloseTo(0.001, within(1e-17));
    }

    @Test
    void velocityIsContinuousWhereTheLawsMeet() {
        for (double roughness : new double[] {0, 3e-5, 6e-4, 1.5e-3}) {
            var law = ColebrookWhite.ofRoughness(roughness);
            double last = 0;
            for (double logRadius = -7; logRadius <= 0; logRadius += 1e-4) {
                double velocity = law.velocity(Math.pow(10, logRadius), 0.004);
                // At most the laminar growth, R².
                assertThat(velocity).isGreaterThan(last);
                if (last > 0) {
                    assertThat(velocity / last).isLessThan(Math.pow(10, 2.001e-4));
                }
                last = velocity;
            }
        }
    }

    @Test
    void nothingFlowsWithoutGradientOrWater() {
        for (LawByRadius law : new LawByRadius[] {Manning.of(0.013), ColebrookWhite.ofRoughness(0.0015)}) {
            assertThat(law.velocity(0, 0.01)).isZero();
            assertThat(law.velocity(0.1, 0)).isZero();
            assertThat(law.gradient(0, 0.1)).isZero();
        }
    }

    @Test
    void lawsRefuseImpossibleInput() {
        assertThatThrownBy(() -> Manning.of(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("n must be greater than 0 and finite (s/m^(1/3)), was 0");
        assertThatThrownBy(() -> Manning.of(Double.NaN)).hasMessageContaining("was NaN");
        assertThatThrownBy(() -> ColebrookWhite.ofRoughness(-0.001))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("roughness must be 0 or greater and finite (m), was -0.001");
        assertThatThrownBy(() -> ColebrookWhite.ofRoughnessMm(-1)).hasMessageContaining("roughnessMm");
        assertThatThrownBy(() -> ColebrookWhite.ofRoughness(0.001).withViscosity(0))
                .hasMessage("viscosity must be greater than 0 and finite (m2/s), was 0");
        for (LawByRadius law : new LawByRadius[] {Manning.of(0.013), ColebrookWhite.ofRoughness(0.0015)}) {
            assertThatThrownBy(() -> law.velocity(-1, 0.01)).hasMessageStartingWith("hydraulicRadius must be ");
            assertThatThrownBy(() -> law.velocity(1, -0.01)).hasMessageStartingWith("gradient must be ");
            assertThatThrownBy(() -> law.gradient(-1, 1)).hasMessageStartingWith("velocity must be ");
            assertThatThrownBy(() -> law.gradient(1, 0)).hasMessageStartingWith("hydraulicRadius must be ");
        }
    }

    /** What slips in from another unit is refused, and told where it belongs. */
    @Test
    void otherUnitsAreRefusedWithTheFactoryForThem() {
        assertThatThrownBy(() -> Manning.of(77))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("n must be in [0.001, 1] s/m^(1/3), was 77: for Strickler's k in m^(1/3)/s use"
                        + " Manning.ofStrickler");
        assertThatThrownBy(() -> Manning.ofStrickler(0.013))
                .hasMessage("k must be in [1, 1000] m^(1/3)/s, was 0.013: for Manning's n use Manning.of");
        assertThatThrownBy(() -> CompositeManning.ofBedAndWalls(Compounding.LOTTER, 0.013, 77))
                .hasMessageStartingWith("wallN must be in [0.001, 1]");
        assertThatThrownBy(() -> VariableManning.of(77, RoughnessByDepth.asce1970()))
                .hasMessageStartingWith("fullN must be in [0.001, 1]");
        assertThatThrownBy(() -> ColebrookWhite.ofRoughness(1.5))
                .hasMessage("roughness must be in [0, 0.5] m, was 1.5: for millimetres use"
                        + " ColebrookWhite.ofRoughnessMm");
        for (double gradient : new double[] {150, -150, 1.5, 1e-311}) {
            assertThatThrownBy(() -> Gradient.of(gradient))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("gradient must be 0 or of 1.0E-12 to 1 m/m, was ");
        }
        assertThatThrownBy(() -> Gradient.of(150))
                .hasMessageEndingWith(
                        "was 150: 1 in 150 is Gradient.ofRatio(1, 150); there are ofPercent and ofPerMille too");
        assertThatThrownBy(() -> Gradient.ofRatio(150, 1)).hasMessageContaining("1 in 150 is Gradient.ofRatio(1, 150)");
        assertThatThrownBy(() -> Gradient.ofPercent(150)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void gradientsReadAndCompare() {
        assertThat(Gradient.ofRatio(1, 150)).hasToString("Gradient[0.0066667 m/m, 1 in 150]");
        assertThat(Gradient.of(-0.001)).hasToString("Gradient[-0.001 m/m]");
        assertThat(Gradient.of(0)).hasToString("Gradient[0 m/m]").isEqualTo(Gradient.of(-0.0));
        assertThat(Gradient.ofPercent(0.5)).isEqualTo(Gradient.ofPerMille(5)).hasSameHashCodeAs(Gradient.of(0.005));
        assertThatThrownBy(() -> Gradient.of(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gradient must be finite (m/m), was NaN");
        assertThatThrownBy(() -> Gradient.ofRatio(1, 0)).hasMessage("length must be greater than 0 and finite, was 0");
    }

    @Test
    void lawsAreValues() {
        assertThat(Manning.of(0.013)).isEqualTo(Manning.of(0.013)).hasSameHashCodeAs(Manning.of(0.013));
        assertThat(Manning.of(0.013)).isNotEqualTo(Manning.of(0.014)).hasToString("Manning[n = 0.013]");
        assertThat(ColebrookWhite.ofRoughnessMm(1.5)).isEqualTo(ColebrookWhite.ofRoughness(0.0015));
        assertThat(ColebrookWhite.ofRoughness(0.0015).withViscosity(1.141e-6))
                .hasToString("ColebrookWhite[ks = 1.5 mm, viscosity 1.141e-06 m2/s]")
                .isNotEqualTo(ColebrookWhite.ofRoughness(0.0015));
    }
}
