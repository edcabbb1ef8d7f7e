package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.BenchedChannel;
import dev.runnel.hydraulics.section.CircularSection;
import java.util.List;
import org.junit.jupiter.api.Test;

class ConduitTest {
    private static final Conduit PIPE =
            Conduit.of(CircularSection.ofDiameter(0.450), Gradient.ofRatio(1, 150), Manning.of(0.013));

    /** Zeros of the derivative of A R^(2/3) and of R^(2/3) on the circle, computed at 50 digits. */
    @Test
    void maximaOfManningLieWhereTheyShould() {
        assertThat(PIPE.maximum().fullness()).isCloseTo(0.938181216160607098, within(1e-11));
        assertThat(PIPE.maximum().discharge() / PIPE.fullBore().discharge())
                .isCloseTo(1.075706129400464771, within(1e-14));
        assertThat(PIPE.maximumVelocity().fullness()).isCloseTo(0.812803127340, within(1e-11));
    }

    @Test
    void maximumDependsOnTheLaw() {
        var rough = PIPE.withResistance(ColebrookWhite.ofRoughness(0.0015));
        assertThat(rough.maximum().fullness()).isBetween(0.939, 0.941);
        assertThat(PIPE.maximum().fullness()).isLessThan(rough.maximum().fullness() - 0.001);
    }

    /** Found by a property: here laminar flow turns turbulent so close to the maximum that it lies on the corner. */
    @Test
    void maximumOnTheCornerBetweenLaminarAndTurbulentFlow() {
        for (double length = 385; length < 400; length += 0.25) {
            var capillary = Conduit.of(
                    CircularSection.ofDiameter(0.01), Gradient.ofRatio(1, length), ColebrookWhite.ofRoughness(0));
            double most = capillary.maximum().discharge();
            for (double x = 0.9; x <= 1; x += 1e-4) {
                assertThat(capillary.discharge(x * 0.01)).isLessThanOrEqualTo(most * (1 + 1e-15));
            }
        }
    }

    /** Manning by hand: R = D/4 = 0.1125 m, A = 0.15904 m². */
    @Test
    void fullBoreByHand() {
        double velocity = Math.pow(0.1125, 2.0 / 3) * Math.sqrt(1.0 / 150) / 0.013;
        assertThat(PIPE.fullBore().velocity()).isCloseTo(velocity, within(1e-14));
        assertThat(PIPE.fullBore().discharge()).isCloseTo(velocity * Math.PI * 0.45 * 0.45 / 4, within(1e-14));
        assertThat(PIPE.fullBore().fullness()).isEqualTo(1);
        assertThat(PIPE.fullBore().froudeNumber()).isZero();
    }

    @Test
    void halfFullRunsAtFullBoreVelocity() {
        assertThat(PIPE.velocity(0.225)).isCloseTo(PIPE.fullBore().velocity(), within(1e-15));
    }

    @Test
    void stateHoldsWhatAnAnalystReadsOff() {
        FlowState state = PIPE.at(0.2);
        assertThat(state.depth()).isEqualTo(0.2);
        assertThat(state.area()).isEqualTo(PIPE.section().area(0.2));
        assertThat(state.wettedPerimeter()).isEqualTo(PIPE.section().wettedPerimeter(0.2));
        assertThat(state.hydraulicRadius()).isEqualTo(PIPE.section().hydraulicRadius(0.2));
        assertThat(state.topWidth()).isEqualTo(PIPE.section().topWidth(0.2));
        assertThat(state.velocity()).isEqualTo(PIPE.velocity(0.2));
        assertThat(state.discharge()).isEqualTo(PIPE.discharge(0.2));
        assertThat(state.froudeNumber())
                .isCloseTo(state.velocity() / Math.sqrt(9.80665 * PIPE.section().hydraulicDepth(0.2)), within(1e-15));
        assertThat(state.shearStress()).isCloseTo(1000 * 9.80665 * state.hydraulicRadius() / 150, within(1e-14));
        assertThat(state.velocityHead()).isEqualTo(state.velocity() * state.velocity() / (2 * 9.80665));
        assertThat(state.specificEnergy()).isEqualTo(0.2 + state.velocityHead());
        assertThat(state)
                .hasToString("FlowState[depth 0.2 m, velocity 1.389 m/s, discharge 0.09485 m3/s, Froude 1.13,"
                        + " shear 6.8 Pa]");
    }

    @Test
    void dryPipeIsAllZero() {
        FlowState dry = PIPE.at(0);
        assertThat(dry.velocity()).isZero();
        assertThat(dry.discharge()).isZero();
        assertThat(dry.froudeNumber()).isZero();
        assertThat(dry.shearStress()).isZero();
        assertThat(PIPE.normalDepth(0)).isZero();
        assertThat(PIPE.normalDepths(0)).containsExactly(0);
        assertThat(PIPE.criticalDepth(0)).isZero();
    }

    @Test
    void twoDepthsBetweenFullBoreAndMaximum() {
        double[] depths = PIPE.normalDepths(0.24);
        assertThat(depths).hasSize(2);
        assertThat(depths[0]).isLessThan(PIPE.maximum().depth()).isEqualTo(PIPE.normalDepth(0.24));
        assertThat(depths[1]).isGreaterThan(PIPE.maximum().depth()).isLessThan(0.45);
        assertThat(PIPE.discharge(depths[1])).isCloseTo(0.24, within(1e-14));
        assertThat(PIPE.normalDepths(0.06)).hasSize(1);
        assertThat(PIPE.normalDepths(PIPE.fullBore().discharge())).hasSize(2).endsWith(0.45);
    }

    @Test
    void moreThanTheMaximumHasNoDepth() {
        assertThat(PIPE.normalDepths(0.3)).isEmpty();
        assertThatThrownBy(() -> PIPE.normalDepth(0.3))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageStartingWith("no depth carries a discharge of 0.3 m3/s: the maximum is 0.25041168")
                .hasMessageContaining("CircularSection[D = 0.45 m]");
    }

    @Test
    void refusesImpossibleInput() {
        assertThatThrownBy(() -> PIPE.discharge(0.46)).hasMessage("depth must be in [0, 0.45] m, was 0.46");
        assertThatThrownBy(() -> PIPE.at(Double.NaN)).hasMessage("depth must be in [0, 0.45] m, was NaN");
        assertThatThrownBy(() -> PIPE.normalDepth(-0.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("discharge must be 0 or greater and finite (m3/s), was -0.1");
        assertThatThrownBy(() -> PIPE.normalDepths(Double.NaN)).hasMessageContaining("was NaN");
        assertThatThrownBy(() -> PIPE.criticalDepth(Double.POSITIVE_INFINITY)).hasMessageContaining("was Infinity");
        assertThatThrownBy(() -> PIPE.gradientFor(0))
                .hasMessage("discharge must be greater than 0 and finite (m3/s), was 0");
        assertThatThrownBy(() -> PIPE.gradientForDischargeAtDepth(0.1, 0))
                .hasMessageContaining("depth must be greater than 0");
        assertThatThrownBy(() -> PIPE.withGradient(Gradient.of(0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gradient must be greater than 0 and finite (m/m), was 0");
        assertThatThrownBy(() -> PIPE.withGradient(Gradient.of(-0.001))).hasMessageContaining("was -0.001");
        assertThatThrownBy(() -> PIPE.withGravity(0)).hasMessageContaining("gravity must be greater than 0");
    }

    @Test
    void bulkFormsNameTheIndex() {
        assertThatThrownBy(() -> PIPE.discharge(new double[] {0.1, 0.5}, new double[2]))
                .hasMessage("depths[1]: depth must be in [0, 0.45] m, was 0.5");
        assertThatThrownBy(() -> PIPE.normalDepth(new double[] {0.1, -1}, new double[2]))
                .hasMessage("discharges[1]: discharge must be 0 or greater and finite (m3/s), was -1");
        assertThatThrownBy(() -> PIPE.normalDepth(new double[] {0.1, 0.3}, new double[2]))
                .isInstanceOf(NoSolutionException.class);
    }

    @Test
    void gradientForACapacityRunsFull() {
        Gradient gradient = PIPE.gradientFor(0.3);
        assertThat(PIPE.withGradient(gradient).fullBore().discharge()).isCloseTo(0.3, within(1e-14));
        assertThat(PIPE.gradientForDischargeAtDepth(PIPE.discharge(0.1), 0.1).value())
                .isCloseTo(1.0 / 150, within(1e-16));
    }

    @Test
    void gravityReachesTheResistanceAndCriticalFlow() {
        var rough = PIPE.withResistance(ColebrookWhite.ofRoughness(0.0015));
        var other = rough.withGravity(9.81);
        assertThat(other.fullBore().velocity() / rough.fullBore().velocity())
                .isCloseTo(Math.sqrt(9.81 / 9.80665), within(1e-5))
                .isGreaterThan(1);
        assertThat(other.criticalDischarge(0.2) / rough.criticalDischarge(0.2))
                .isCloseTo(Math.sqrt(9.81 / 9.80665), within(1e-15));
        assertThat(other.toString()).endsWith("g = 9.81 m/s2]");
    }

    @Test
    void smallestOfAList() {
        var gradient = Gradient.ofRatio(1, 150);
        var law = Manning.of(0.013);
        assertThat(Conduits.smallest(List.of(0.375, 0.225, 0.300), gradient, law, 0.060))
                .hasValue(Conduit.of(CircularSection.ofDiameter(0.300), gradient, law));
        assertThat(Conduits.smallest(List.of(0.225), gradient, law, 0.060)).isEmpty();
        assertThat(Conduits.smallest(List.of(0.3, 0.225), gradient, law, 0))
                .hasValue(Conduit.of(CircularSection.ofDiameter(0.225), gradient, law));
        assertThatThrownBy(() -> Conduits.smallest(List.of(), gradient, law, 0.06))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sections must not be empty, for a discharge of 0.06 m3/s");
        assertThatThrownBy(() -> Conduits.smallest(List.of(0.3, -0.1), gradient, law, 0.06))
                .hasMessageContaining("diameter must be greater than 0");
    }

    @Test
    void isAValue() {
        var same = Conduit.of(CircularSection.ofDiameter(0.450), Gradient.ofRatio(1, 150), Manning.of(0.013));
        assertThat(PIPE).isEqualTo(same).hasSameHashCodeAs(same);
        assertThat(PIPE).isNotEqualTo(PIPE.withGravity(9.81)).isNotEqualTo(PIPE.withResistance(Manning.of(0.012)));
        assertThat(PIPE.withSection(CircularSection.ofDiameter(0.3))).isNotEqualTo(PIPE);
        assertThat(PIPE)
                .hasToString("Conduit[CircularSection[D = 0.45 m], Gradient[0.0066667 m/m, 1 in 150],"
                        + " Manning[n = 0.013]]");
    }

    /** Found by a property: the depth just above a level bench that is the last corner of an open section was missed. */
    @Test
    void findsTheDepthsOnBothSidesOfALevelBench() {
        Conduit channel = Conduit.of(
                BenchedChannel.ofWidthAndDepth(1, 0.5).inChamberOfWidth(3), Gradient.of(1e-6), Manning.of(0.005));
        for (double above = 1e-9; above < 0.02; above *= 1.7) {
            double discharge = channel.discharge(0.5 + above);
            double[] depths = channel.normalDepths(discharge);
            assertThat(depths).hasSize(2).isSorted();
            assertThat(depths[0]).isLessThan(0.5);
            assertThat(depths[1]).isCloseTo(0.5 + above, within(1e-12));
            for (double depth : depths) {
                Closing.assertCloses(channel::discharge, depth, discharge);
            }
        }
    }

    /** One bad reading stops nothing: it is marked and counted. */
    @Test
    void bulkFormsMarkAndCountWhatHasNoAnswer() {
        double[] depths = {0.2, 0.5, Double.NaN, -0.01, 0.45, Double.POSITIVE_INFINITY};
        double[] out = new double[6];
        assertThat(PIPE.dischargeWhereDefined(depths, out)).isEqualTo(3);
        assertThat(out)
                .containsExactly(
                        PIPE.discharge(0.2), Double.NaN, Double.NaN, Double.NaN, PIPE.discharge(0.45), Double.NaN);
        assertThat(PIPE.velocityWhereDefined(depths, out)).isEqualTo(3);
        assertThat(out[0]).isEqualTo(PIPE.velocity(0.2));
        double[] discharges = {0.05, 99, Double.NaN, -1, 0};
        double[] found = new double[5];
        assertThat(PIPE.normalDepthWhereDefined(discharges, found)).isEqualTo(2);
        assertThat(found).containsExactly(PIPE.normalDepth(0.05), Double.NaN, Double.NaN, Double.NaN, 0);
        assertThatThrownBy(() -> PIPE.dischargeWhereDefined(depths, new double[2]))
                .hasMessage("discharges must have length 6, was 2");
    }

    @Test
    void absurdDischargeIsNamedNotADepth() {
        var channel = PIPE.withSection(dev.runnel.hydraulics.section.TrapezoidalSection.ofBedWidthAndSideSlope(1, 1));
        assertThatThrownBy(() -> channel.normalDepth(1e300))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("discharge must be in [0, 1.0E9] m3/s, was 1.0E300");
        assertThatThrownBy(() -> channel.normalDepths(1e300)).hasMessageStartingWith("discharge must be in [0, 1.0E9]");
        assertThatThrownBy(() -> PIPE.normalDepth(1e300)).isInstanceOf(NoSolutionException.class);
    }

    /** Half full it carries half of full: the diameter for q half full is that for 2 q full. */
    @Test
    void diameterAtAStatedFilling() {
        var half = Conduits.atFullness(0.5).carrying(0.1, Gradient.ofRatio(1, 150), Manning.of(0.013));
        double diameter = half.section().height();
        assertThat(half.discharge(diameter / 2)).isCloseTo(0.1, within(1e-13));
        var full = Conduits.atFullness(1).carrying(0.2, Gradient.ofRatio(1, 150), Manning.of(0.013));
        assertThat(full.section().height()).isCloseTo(diameter, within(1e-13));
        // q = (π/4) D² (D/4)^(2/3) √S / n solved for D.
        double byHand = Math.pow(0.2 * 0.013 * Math.sqrt(150) * Math.pow(4, 5.0 / 3) / Math.PI, 3.0 / 8);
        assertThat(diameter).isCloseTo(byHand, within(1e-12));
        assertThatThrownBy(() -> Conduits.atFullness(0.5).carrying(1e9, Gradient.ofRatio(1, 150), Manning.of(0.013)))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageStartingWith("no diameter from 1.0E-6 to 50 m carries a discharge of 1.0E9 m3/s");
        assertThatThrownBy(() -> Conduits.atFullness(1.5).carrying(0.1, Gradient.ofRatio(1, 150), Manning.of(0.013)))
                .hasMessage("fullness must be greater than 0 and at most 1, was 1.5");
    }
}
