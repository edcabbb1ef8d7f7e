package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ChannelsTest {
    private static final Gradient FALL = Gradient.of(0.01);
    private static final Resistance LAW = Chezy.of(50);

    /** Chezy, b = 2, y = 0.5: A = 1, R = 1/3, Q = 50 √(0.01/3). */
    @Test
    void rectangleByHand() {
        double discharge = 50 * Math.sqrt(0.01 / 3);
        assertThat(Channels.ofDischargeAndDepth(discharge, 0.5)
                        .rectangular(FALL, LAW)
                        .section()
                        .topWidth(0))
                .isCloseTo(2, within(1e-12));
    }

    /** b = 1, y = 0.75, z = 4/3: slope 1.25, A = 1.5, P = 3.5. */
    @Test
    void trapezoidByHand() {
        double discharge = 1.5 * 50 * Math.sqrt(0.01 * 1.5 / 3.5);
        assertThat(Channels.ofDischargeAndDepth(discharge, 0.75)
                        .trapezoidal(4 / 3., FALL, LAW)
                        .section()
                        .topWidth(0))
                .isCloseTo(1, within(1e-12));
    }

    @Test
    void slopesThatCarryMoreLeaveNoWidth() {
        assertThatThrownBy(() -> Channels.ofDischargeAndDepth(0.01, 1).trapezoidal(2, FALL, LAW))
                .isInstanceOf(NoSolutionException.class)
                .hasMessage("no bed width from 1.0E-6 to 1000000 m carries a discharge of 0.01 m3/s at a depth of 1 m");
        assertThatThrownBy(() -> Channels.ofDischargeAndDepth(1e300, 1).rectangular(FALL, LAW))
                .isInstanceOf(NoSolutionException.class);
        assertThatThrownBy(() -> Channels.ofDischargeAndDepth(Double.NaN, 1).rectangular(FALL, LAW))
                .hasMessageContaining("discharge must be");
        assertThatThrownBy(() -> Channels.ofDischargeAndDepth(1, 0).rectangular(FALL, LAW))
                .hasMessageContaining("depth must be");
    }

    /** Chezy full: D = 4 (V/C)²/S. By continuity half full: A = πD²/8. */
    @Test
    void diameterAtAVelocity() {
        assertThat(Conduits.atFullness(1).flowingAt(2, FALL, LAW).section().height())
                .isCloseTo(0.64, within(1e-12));
        assertThat(Conduits.atFullness(0.5)
                        .sectionOfDischargeAndVelocity(Math.PI / 8, 1)
                        .height())
                .isCloseTo(1, within(1e-14));
        assertThatThrownBy(() -> Conduits.atFullness(1.5).sectionOfDischargeAndVelocity(1, 1))
                .hasMessageContaining("fullness must be");
        assertThatThrownBy(() -> Conduits.atFullness(1).sectionOfDischargeAndVelocity(1e9, 1))
                .isInstanceOf(NoSolutionException.class);
        assertThatThrownBy(() -> Conduits.atFullness(1).flowingAt(1e6, FALL, LAW))
                .isInstanceOf(NoSolutionException.class);
    }
}
