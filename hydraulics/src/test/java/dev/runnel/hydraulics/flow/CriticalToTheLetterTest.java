package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import org.junit.jupiter.api.Test;

/** 1 m³/s in 1 m at g = 1 m/s² is critical at 1 m, without a rounding: E = 1.5 m, M = 1.5 m³, and Froude's number is 1. */
class CriticalToTheLetterTest {
    private static final CrossSection SECTION = RectangularSection.open(1);
    private static final SectionFlow FLOW = SectionFlow.of(SECTION, 1).withGravity(1);

    private static Reach reach(double gradient) {
        return Reach.of(SECTION, Gradient.of(gradient), Manning.of(0.013), 10).withGravity(1);
    }

    @Test
    void aJumpOfNoHeight() {
        assertThat(FLOW.froudeNumber(1)).isEqualTo(1);
        assertThat(FLOW.specificEnergy(1)).isEqualTo(1.5);
        assertThat(FLOW.momentum(1)).isEqualTo(1.5);
        assertThat(FLOW.jump(1).downstreamDepth()).isCloseTo(1, within(1e-7));
        assertThatThrownBy(() -> FLOW.jump(1.01))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("depth must be supercritical for a jump, Froude's number at 1.01 m was 0.98");
    }

    /** Drawdown ends at critical depth; faster it is of the third kind. */
    @Test
    void kindsOfProfiles() {
        assertThat(ProfileType.ofDischargeAndDepth(reach(0), 1, 1)).isEqualTo(ProfileType.H2);
        assertThat(ProfileType.ofDischargeAndDepth(reach(0), 1, 0.999)).isEqualTo(ProfileType.H3);
        assertThat(ProfileType.ofDischargeAndDepth(reach(-0.01), 1, 1)).isEqualTo(ProfileType.A2);
        assertThat(ProfileType.ofDischargeAndDepth(reach(-0.01), 1, 0.999)).isEqualTo(ProfileType.A3);
    }

    /** The least energy is that of the critical depth, which is the fast one as well as the slow one. */
    @Test
    void theLeastEnergy() {
        ReachFlow flow = new ReachFlow(reach(0.001), 1);
        double critical = flow.lowestCritical();
        assertThat(critical).isCloseTo(1, within(1e-15));
        assertThat(flow.fastDepth(flow.energy(critical))).isCloseTo(critical, within(1e-7));
        assertThat(flow.fastDepth(Math.nextDown(flow.energy(critical)))).isNaN();
        assertThat(flow.slowLevel(flow.energy(critical), 0)).isEqualTo(critical);
    }
}
