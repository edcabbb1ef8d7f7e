package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.RectangularSection;
import org.junit.jupiter.api.Test;

class JumpLengthTest {
    /** Froude 3, y₁ 0.5: y₂ = 0.25 (√73 − 1). */
    @Test
    void onACurvePointAndByTheRise() {
        var jump = SectionFlow.of(RectangularSection.open(1), 0.5 * 3 * Math.sqrt(9.80665 * 0.5))
                .jump(0.5);
        double behind = 0.25 * (Math.sqrt(73) - 1);
        assertThat(jump.length()).isCloseTo(5.28 * behind, within(1e-9));
        assertThat(jump.lengthByRise(5)).isCloseTo(5 * (behind - 0.5), within(1e-12));
        assertThatThrownBy(() -> jump.lengthByRise(0)).hasMessageContaining("multiple must be");
    }

    @Test
    void unknownLengths() {
        var weak = SectionFlow.of(RectangularSection.open(1), 0.5 * 1.2 * Math.sqrt(9.80665 * 0.5))
                .jump(0.5);
        assertThatThrownBy(weak::length)
                .isInstanceOf(NoSolutionException.class)
                .hasMessage(
                        "the length of a jump is known for Froude numbers in [1.7, 10], was 1.2: it is a train of waves");
        var strong = SectionFlow.of(RectangularSection.open(1), 0.5 * 10.5 * Math.sqrt(9.80665 * 0.5))
                .jump(0.5);
        assertThatThrownBy(strong::length)
                .isInstanceOf(NoSolutionException.class)
                .hasMessage("the length of a jump is known for Froude numbers in [1.7, 10], was 10.5");
        var round = SectionFlow.of(CircularSection.ofDiameter(1), 0.3).jump(0.15);
        assertThatThrownBy(round::length).hasMessageContaining("rectangular channel only");
    }
}
