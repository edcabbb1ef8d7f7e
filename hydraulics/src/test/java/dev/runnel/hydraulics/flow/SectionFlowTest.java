package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.BenchedChannel;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import org.junit.jupiter.api.Test;

class SectionFlowTest {
    /** 3 m³/s in 2 m, g 9.81. */
    private static final SectionFlow FLOW =
            SectionFlow.of(RectangularSection.open(2), 3).withGravity(9.81);

    /** In a rectangle yc = (q²/g)^(1/3) with q per width, and the least energy is 1.5 yc. */
    @Test
    void criticalFlowInARectangle() {
        double critical = Math.cbrt(1.5 * 1.5 / 9.81);
        assertThat(FLOW.criticalDepth()).isCloseTo(critical, within(1e-15));
        assertThat(FLOW.minimumEnergy()).isCloseTo(1.5 * critical, within(1e-15));
        assertThat(FLOW.froudeNumber(critical)).isCloseTo(1, within(1e-14));
        assertThat(FLOW.velocity(0.5)).isEqualTo(3);
    }

    /** Rectangle: y1 + a/y1² = y2 + a/y2² with 2 a = y1³ F1² leaves y2² − (y1 F1²/2) y2 − y1² F1²/2 = 0. */
    @Test
    void alternateDepthInARectangle() {
        for (double depth : new double[] {0.1, 0.3, 0.6, 0.62, 0.9, 3}) {
            double square = FLOW.froudeNumber(depth) * FLOW.froudeNumber(depth);

            double b = depth * square / 4;
            double other = b + Math.sqrt(b * b + 2 * b * depth);
            assertThat(FLOW.alternateDepth(depth)).isCloseTo(other, within(1e-13 * other));
        }
        assertThat(FLOW.alternateDepth(FLOW.criticalDepth())).isEqualTo(FLOW.criticalDepth());
    }

    /** Bélanger: y2/y1 = (√(1 + 8 F1²) − 1)/2; loss (y2 − y1)³/(4 y1 y2). */
    @Test
    void jumpInARectangle() {
        HydraulicJump jump = FLOW.jump(0.2);
        double froude = FLOW.froudeNumber(0.2);
        double behind = 0.1 * (Math.sqrt(1 + 8 * froude * froude) - 1);
        assertThat(jump.upstreamDepth()).isEqualTo(0.2);
        assertThat(jump.upstreamFroudeNumber()).isEqualTo(froude);
        assertThat(jump.downstreamDepth()).isCloseTo(behind, within(1e-14));
        double loss = Math.pow(behind - 0.2, 3) / (4 * behind * 0.2);
        assertThat(jump.energyLoss()).isCloseTo(loss, within(1e-13));
        assertThat(jump.power()).isCloseTo(1000 * 9.81 * 3 * loss, within(1e-8));
        assertThat(jump.isFilling()).isFalse();
        assertThat(FLOW.conjugateDepth(behind)).isCloseTo(0.2, within(1e-14));
        assertThat(jump.toString()).startsWith("HydraulicJump[0.2 m to 1.418 m").contains("Froude 5.35");
    }

    @Test
    void jumpCanFillAPipe() {
        var pipe = CircularSection.ofDiameter(0.6);
        var flow = SectionFlow.of(pipe, 0.6);
        HydraulicJump jump = flow.jump(0.3);
        assertThat(jump.isFilling()).isTrue();
        assertThat(jump.downstreamDepth()).isGreaterThan(0.6);
        // Momentum written out: full pipe, its centroid at half height below the soffit, pressure above.
        double full = pipe.fullArea();
        double behind = 0.36 / (9.80665 * full) + full * (jump.downstreamDepth() - 0.3);
        assertThat(behind).isCloseTo(flow.momentum(0.3), within(1e-14));
        assertThat(jump.energyLoss()).isPositive();
        assertThat(jump.toString()).contains("(filling)");
        assertThatThrownBy(() -> flow.alternateDepth(0.1))
                .isInstanceOf(NoSolutionException.class)
                .hasMessage("a depth of 0.1 m has no alternate depth below the soffit for SectionFlow[0.6 m3/s in"
                        + " CircularSection[D = 0.6 m]]");
    }

    @Test
    void energyBelowTheMinimumHasNoDepth() {
        assertThat(FLOW.depthsForEnergy(FLOW.minimumEnergy() * 0.999)).isEmpty();
        assertThat(FLOW.depthsForEnergy(1.2)).hasSize(2);
        assertThat(FLOW.depthsForMomentum(0.1)).isEmpty();
        assertThat(FLOW.depthsForMomentum(2)).hasSize(2);
    }

    @Test
    void benchedChannelCanHaveSeveralCriticalDepths() {
        var channel =
                BenchedChannel.ofWidthAndDepth(0.3, 0.3).withBenchSlope(0.02).inChamberOfWidth(1.5);
        var flow = SectionFlow.of(channel, 0.11);
        assertThat(flow.criticalDepths().length).isGreaterThan(1);
        assertThat(flow.criticalDepth()).isEqualTo(flow.criticalDepths()[0]);
        for (double depth : flow.criticalDepths()) {
            assertThat(flow.froudeNumber(depth)).isCloseTo(1, within(1e-10));
        }
    }

    @Test
    void boxCanBeFullBeforeCritical() {
        var flow = SectionFlow.of(RectangularSection.box(1, 0.5), 2);
        assertThat(flow.criticalDepths()).isEmpty();
        assertThatThrownBy(flow::criticalDepth)
                .isInstanceOf(NoSolutionException.class)
                .hasMessageContaining("is not critical at any depth below the soffit");
        assertThatThrownBy(flow::minimumEnergy).isInstanceOf(NoSolutionException.class);
        assertThat(flow.jump(0.3).isFilling()).isTrue();
    }

    @Test
    void refusesImpossibleInput() {
        assertThatThrownBy(() -> SectionFlow.of(RectangularSection.open(1), 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("discharge must be greater than 0 and finite (m3/s), was 0");
        assertThatThrownBy(() -> FLOW.withGravity(-1)).hasMessageContaining("gravity must be greater than 0");
        assertThatThrownBy(() -> FLOW.specificEnergy(0)).hasMessageContaining("depth must be greater than 0");
        assertThatThrownBy(() -> FLOW.momentum(Double.NaN)).hasMessageContaining("was NaN");
        assertThatThrownBy(() -> FLOW.depthsForEnergy(-1)).hasMessageContaining("energy must be greater than 0");
        assertThatThrownBy(() -> FLOW.jump(1.5))
                .hasMessage("depth must be supercritical for a jump, Froude's number at 1.5 m was 0.2607");
        var pipe = SectionFlow.of(CircularSection.ofDiameter(0.6), 0.1);
        assertThatThrownBy(() -> pipe.velocity(0.61)).hasMessage("depth must be in [0, 0.6] m, was 0.61");
    }

    /** Found by a property: at the critical depth the momentum fell short of its own minimum in the last bit. */
    @Test
    void theCriticalDepthItselfHasItsOwnEnergyAndMomentum() {
        for (int i = 1; i <= 200; i++) {
            CrossSection section = TrapezoidalSection.ofBedWidthAndSideSlope(0.3 + i * 0.01, 0.5);
            double depth = 0.003 * i;
            double area = section.area(depth);
            SectionFlow flow =
                    SectionFlow.of(section, area * Math.sqrt(Gravity.STANDARD * area / section.topWidth(depth)));
            assertThat(flow.depthsForEnergy(flow.specificEnergy(depth))).isNotEmpty();
            assertThat(flow.depthsForMomentum(flow.momentum(depth))).isNotEmpty();
        }
    }
}
