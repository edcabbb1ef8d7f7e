package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.RectangularSection;
import org.junit.jupiter.api.Test;

class ReservoirInletTest {
    /** Chezy, b = 2, y = 0.5: R = 1/3, V = 50 √(S/3); mild at S = 0.0012, V = 1 m/s below √(g y). */
    @Test
    void mildChannelByHand() {
        var channel = Conduit.of(RectangularSection.open(2), Gradient.of(0.0012), Chezy.of(50))
                .withGravity(10);
        var inlet = ReservoirInlet.into(channel);
        assertThat(inlet.depth(0.55)).isCloseTo(0.5, within(1e-14));
        assertThat(inlet.discharge(0.55)).isCloseTo(1, within(1e-13));
        assertThat(inlet.isControl(0.55)).isFalse();
        assertThat(inlet.withEntranceLoss(0.5).depth(0.575)).isCloseTo(0.5, within(1e-14));
        assertThat(inlet.withEntranceLoss(0.5).discharge(0.575)).isCloseTo(1, within(1e-13));
    }

    /** Steep: y = 2/3 H, q = √g y^1.5. */
    @Test
    void steepChannelIsControlledByItsInlet() {
        var channel = Conduit.of(RectangularSection.open(2), Gradient.of(0.05), Chezy.of(50))
                .withGravity(10);
        var inlet = ReservoirInlet.into(channel);
        assertThat(inlet.depth(0.6)).isCloseTo(0.4, within(1e-14));
        assertThat(inlet.discharge(0.6)).isCloseTo(1.6, within(1e-13));
        assertThat(inlet.isControl(0.6)).isTrue();
        // y + 1.5 y/2 = H
        assertThat(inlet.withEntranceLoss(0.5).depth(0.7)).isCloseTo(0.4, within(1e-14));
        assertThat(inlet.withEntranceLoss(0.5).discharge(0.7)).isCloseTo(1.6, within(1e-13));
    }

    @Test
    void noFlowWithoutHeadAndNoAnswerUnderWater() {
        var pipe = Conduit.of(CircularSection.ofDiameter(0.3), Gradient.of(0.002), Manning.of(0.013));
        var inlet = ReservoirInlet.into(pipe);
        assertThat(inlet.depth(0)).isZero();
        assertThat(inlet.discharge(0)).isZero();
        assertThat(inlet.discharge(0.2)).isBetween(0.0, pipe.discharge(0.2));
        assertThatThrownBy(() -> inlet.discharge(2))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageStartingWith("a head of 2 m fills the inlet");
        assertThatThrownBy(() -> inlet.depth(-1)).hasMessageContaining("head must be in [0, 10000] m");
        assertThatThrownBy(() -> inlet.depth(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> inlet.withEntranceLoss(-0.1)).hasMessageContaining("coefficient");
    }
}
