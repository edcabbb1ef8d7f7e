package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import dev.runnel.hydraulics.section.CircularSection;
import org.junit.jupiter.api.Test;

class GateOutfallFlapTest {
    private static final double FOOT = 0.3048;

    @Test
    void freeGateKeepsItsEnergy() {
        SluiceGate gate = SluiceGate.ofWidthAndOpening(1.2, 0.3);
        double q = gate.discharge(1.7) / 1.2;
        double jet = 0.61 * 0.3;
        assertThat(jet + q * q / (2 * 9.80665 * jet * jet))
                .isCloseTo(1.7 + q * q / (2 * 9.80665 * 1.7 * 1.7), within(1e-12));
        StructureContract.holds(gate, 1.7);
        StructureContract.refuses(gate, 0.5, "y1/a must be at least 2");
    }

    /**
     * Y. A. Cengel, J. M. Cimbala, ex. 13-9: y1 3 m, a 0.25 m, y2 1.5 m, b 6 m: coefficient 0.47 and 5.41 m³/s off
     * Henry's measured chart; the two-equation theory is known to lie a few percent above the chart.
     */
    @Test
    void drownedGateNearTheChart() {
        SluiceGate gate = SluiceGate.ofWidthAndOpening(6, 0.25);
        assertThat(gate.modularTailwater(3)).isLessThan(1.5);
        assertThat(gate.discharge(3, 1.5)).isCloseTo(5.41, withPercentage(4));
    }

    @Test
    void drownedGateKeepsEnergyAndMomentum() {
        SluiceGate gate = SluiceGate.ofWidthAndOpening(1, 0.2);
        double y1 = 1.4;
        double y2 = 0.95;
        double g = 9.80665;
        double q = gate.discharge(y1, y2);
        double jet = 0.61 * 0.2;
        double y3 = y1 + q * q / (2 * g) * (1 / (y1 * y1) - 1 / (jet * jet));
        assertThat(y3).isBetween(jet, y2);
        assertThat(y3 * y3 / 2 + q * q / (g * jet)).isCloseTo(y2 * y2 / 2 + q * q / (g * y2), within(1e-12));
        assertThat(gate.head(q, y2)).isCloseTo(y1, within(1e-12));
        assertThat(gate.head(0, y2)).isEqualTo(y2);
        assertThat(gate.discharge(y1, y1)).isZero();
    }

    /** Two flows belong to one pair of depths where drowning sets in; the head of a flow is unique and has no step. */
    @Test
    void drowningSetsIn() {
        SluiceGate gate = SluiceGate.ofWidthAndOpening(1, 0.2);
        double limit = gate.modularTailwater(1.4);
        double free = gate.discharge(1.4);
        assertThat(gate.discharge(1.4, limit * 0.99)).isEqualTo(free);
        assertThat(gate.discharge(1.4, limit * (1 + 1e-9))).isBetween(0.9 * free, 0.95 * free);
        assertThat(gate.head(free, limit * (1 - 1e-9))).isCloseTo(1.4, within(1e-12));
        assertThat(gate.head(free, limit * (1 + 1e-9))).isCloseTo(1.4, within(1e-7));
        for (double tailwater : new double[] {limit * 1.01, 1.1, 1.3, 1.399}) {
            assertThat(gate.head(gate.discharge(1.4, tailwater), tailwater)).isCloseTo(1.4, within(1e-12));
        }
        assertThat(gate.head(gate.discharge(1.4, 0.1), 0.1)).isCloseTo(1.4, within(1e-12));
        assertThatThrownBy(() -> gate.discharge(1.4, 1.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("tailwater must be at most the head 1.4 m (flow back is not covered), was 1.5");
        assertThatThrownBy(() -> gate.head(0.01, 0.35))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("y1/a must be at least 2");
        assertThat(gate.withContraction(0.63)).hasToString("SluiceGate[b = 1 m, a = 0.2 m, Cc = 0.63]");
    }

    /** California pipe, a printed example: a 0.25 ft, d 0.34 ft, 0.049 ft³/s (two digits). */
    @Test
    void californiaPipe() {
        FreeOutfall pipe = FreeOutfall.circular(0.34 * FOOT);
        assertThat(pipe.discharge(0.09 * FOOT) / (FOOT * FOOT * FOOT)).isCloseTo(0.049, within(0.0005));
        StructureContract.holds(pipe, 0.05);
        StructureContract.refuses(pipe, 0.06, "yb/d must be at most 0.5");
        assertThatThrownBy(() -> pipe.evaluate(0.2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("head must be in [0, 0.10363");
    }

    /** Two independent published relations for the same level pipe agree to 10 % below half full. */
    @Test
    void brinkOfACircleByCriticalDepthIsNearTheCaliforniaPipe() {
        FreeOutfall byCritical = FreeOutfall.of(CircularSection.ofDiameter(0.6), 0.75);
        FreeOutfall california = FreeOutfall.circular(0.6);
        for (double depth : new double[] {0.08, 0.17, 0.28}) {
            assertThat(byCritical.discharge(depth)).isCloseTo(california.discharge(depth), withPercentage(10));
        }
        StructureContract.holds(byCritical, 0.36);
        StructureContract.refuses(byCritical, 0.38, "critical depth over height must be at most 0.82");
        assertThatThrownBy(() -> byCritical.head(10))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("discharge must be reached at a head of at most 0.427");
        assertThatThrownBy(() -> FreeOutfall.of(CircularSection.ofDiameter(1), 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("brinkRatio must be greater than 0 and at most 1, was 0");
    }

    @Test
    void rectangularBrinkIsCritical() {
        FreeOutfall outfall = FreeOutfall.rectangular(0.8);
        double q = outfall.discharge(0.143) / 0.8;
        assertThat(Math.cbrt(q * q / 9.80665)).isCloseTo(0.2, within(1e-12));
        StructureContract.holds(outfall, 0.3);
    }

    /** A worked value of Nagler's formula in feet: V 4 ft/s, D 2 ft give K = 0.31. */
    @Test
    void flapLoss() {
        FlapValve flap = FlapValve.ofDiameter(2 * FOOT);
        assertThat(flap.lossCoefficient(4 * FOOT)).isCloseTo(0.31, within(0.005));
        assertThat(flap.headLoss(4 * FOOT) / FOOT)
                .isCloseTo(4 * 16 / (9.80665 / FOOT) * Math.exp(-1.15 * 4 / Math.sqrt(2)), within(1e-12));
    }

    @Test
    void aFlapLossBelongsToTwoVelocities() {
        FlapValve flap = FlapValve.ofDiameter(0.6);
        double worst = flap.worstVelocity();
        double[] both = flap.velocities(0.02);
        assertThat(both).hasSize(2);
        assertThat(both[0]).isLessThan(worst);
        assertThat(both[1]).isGreaterThan(worst);
        for (double v : both) {
            assertThat(flap.headLoss(v)).isCloseTo(0.02, within(1e-14));
        }
        assertThat(flap.velocities(flap.headLoss(worst))).containsExactly(worst);
        assertThat(flap.velocities(flap.headLoss(worst) * 1.001)).isEmpty();
        assertThat(flap.velocities(0)).containsExactly(0);
        assertThat(flap.headLoss(0)).isZero();
        assertThatThrownBy(() -> flap.headLoss(-1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("velocity must be 0 or greater and finite (m/s), was -1");
    }
}
