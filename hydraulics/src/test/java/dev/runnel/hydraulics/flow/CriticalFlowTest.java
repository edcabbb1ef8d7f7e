package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.BenchedChannel;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TabulatedSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import org.junit.jupiter.api.Test;

class CriticalFlowTest {
    private static final double G = 9.80665;

    /** Rectangle 2 m wide: q = b √(g) y^1.5, E = 1.5 y. */
    @Test
    void rectangleByHand() {
        var critical = CriticalFlow.of(RectangularSection.open(2));
        double discharge = 2 * Math.sqrt(G) * Math.pow(0.64, 1.5);
        assertThat(critical.discharge(0.64)).isCloseTo(discharge, within(1e-15));
        assertThat(critical.depth(discharge)).isCloseTo(0.64, within(1e-15));
        assertThat(critical.depths(discharge)).hasSize(1);
        assertThat(critical.velocity(0.64)).isCloseTo(0.8 * Math.sqrt(G), within(1e-15));
        assertThat(critical.energy(0.64)).isCloseTo(0.96, within(1e-15));
        assertThat(critical.depthForEnergy(0.96)).isCloseTo(0.64, within(1e-15));
        assertThat(critical.dischargeForEnergy(0.96)).isCloseTo(discharge, within(1e-14));
        assertThat(critical.depth(0)).isZero();
        assertThat(critical.depthForEnergy(0)).isZero();
        assertThat(critical.dischargeForEnergy(0)).isZero();
    }

    /** Triangle with sides 1 : 1: A/(2T) = y/4, so y = 4/5 E. */
    @Test
    void triangleByHand() {
        var critical =
                CriticalFlow.of(TrapezoidalSection.ofBedWidthAndSideSlope(0, 1)).withGravity(10);
        assertThat(critical.depthForEnergy(1)).isCloseTo(0.8, within(1e-15));
        assertThat(critical.dischargeForEnergy(1)).isCloseTo(0.64 * Math.sqrt(2 * 10 * 0.2), within(1e-15));
    }

    /** No gradient, no law: the conduit answers the same with any. */
    @Test
    void conduitAsksThisAlone() {
        var pipe = CircularSection.ofDiameter(0.6);
        var critical = CriticalFlow.of(pipe).withGravity(9.81);
        var conduit = Conduit.of(pipe, Gradient.of(0.3), Manning.of(0.05)).withGravity(9.81);
        assertThat(conduit.criticalDepth(0.1)).isEqualTo(critical.depth(0.1));
        assertThat(conduit.criticalDischarge(0.2)).isEqualTo(critical.discharge(0.2));
        assertThat(SectionFlow.of(pipe, 0.1).withGravity(9.81).criticalDepth()).isEqualTo(critical.depth(0.1));
    }

    /** Box 1 m wide and 0.6 m high: full at E = 0.9 m, and nothing is critical beyond. */
    @Test
    void fullSectionHasNoCriticalDepth() {
        var critical = CriticalFlow.of(RectangularSection.box(1, 0.6));
        assertThat(critical.depthForEnergy(0.9)).isCloseTo(0.6, within(1e-15));
        assertThatThrownBy(() -> critical.depthForEnergy(0.901))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageStartingWith("a specific energy of 0.901 m fills the section");
        assertThatThrownBy(() -> critical.depth(5))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageStartingWith("a discharge of 5 m3/s is not critical at any depth below the soffit of");
        // A round crown leaves a surface at every energy.
        var pipe = CriticalFlow.of(CircularSection.ofDiameter(0.6));
        double depth = pipe.depthForEnergy(2);
        assertThat(depth).isLessThan(0.6);
        assertThat(pipe.energy(depth)).isCloseTo(2, within(1e-9));
    }

    /** The most that passes, found independently by trying depths. */
    @Test
    void mostThatAnEnergyCarriesIsTheMost() {
        var ledge = TabulatedSection.open(new double[] {0, 0.5, 0.5, 2}, new double[] {2, 2, 0.4, 0.4});
        for (var section : new dev.runnel.hydraulics.section.CrossSection[] {
            BenchedChannel.ofWidthAndDepth(0.4, 0.4).withBenchSlope(0.02).inChamberOfWidth(3),
            ledge,
            CircularSection.ofDiameter(1)
        }) {
            for (double energy = 0.05; energy < 1.4; energy += 0.05) {
                double most = 0;
                for (int i = 1; i < 20_000; i++) {
                    double depth = Math.min(energy * i / 20_000, section.height());
                    most = Math.max(most, section.area(depth) * Math.sqrt(2 * G * (energy - depth)));
                }
                double found = CriticalFlow.of(section).dischargeForEnergy(energy);
                assertThat(found).isBetween(most * (1 - 1e-12), most * (1 + 1e-4));
            }
        }
    }

    @Test
    void refusesImpossibleInput() {
        var critical = CriticalFlow.of(RectangularSection.open(2));
        assertThatThrownBy(() -> critical.depth(-1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("discharge must be 0 or greater and finite (m3/s), was -1");
        assertThatThrownBy(() -> critical.depths(Double.NaN)).hasMessageContaining("was NaN");
        assertThatThrownBy(() -> critical.depthForEnergy(-1))
                .hasMessage("energy must be 0 or greater and finite (m), was -1");
        assertThatThrownBy(() -> critical.withGravity(0)).hasMessageStartingWith("gravity must be greater than 0");
        assertThatThrownBy(() -> critical.discharge(-1)).hasMessageStartingWith("depth must be");
    }

    @Test
    void isAValue() {
        var critical = CriticalFlow.of(CircularSection.ofDiameter(0.6));
        assertThat(critical)
                .isEqualTo(CriticalFlow.of(CircularSection.ofDiameter(0.6)))
                .hasSameHashCodeAs(CriticalFlow.of(CircularSection.ofDiameter(0.6)))
                .hasToString("CriticalFlow[CircularSection[D = 0.6 m]]");
        assertThat(critical.withGravity(9.81))
                .isNotEqualTo(critical)
                .hasToString("CriticalFlow[CircularSection[D = 0.6 m], g = 9.81 m/s2]");
        assertThat(critical.withGravity(9.81).gravity()).isEqualTo(9.81);
        assertThat(critical.section()).isEqualTo(CircularSection.ofDiameter(0.6));
    }
}
