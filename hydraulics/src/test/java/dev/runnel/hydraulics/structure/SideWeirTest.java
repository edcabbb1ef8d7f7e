package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import dev.runnel.hydraulics.flow.NoSolutionException;
import dev.runnel.hydraulics.section.CircularSection;
import org.junit.jupiter.api.Test;

class SideWeirTest {
    private static final CircularSection PIPE = CircularSection.ofDiameter(1.2);

    /** De Marchi's closed form for a rectangle, x = 3/2 (B/Cd) φ. */
    private static double deMarchi(double energy, double sill, double depth) {
        return (2 * energy - 3 * sill) / (energy - sill) * Math.sqrt((energy - depth) / (depth - sill))
                - 3 * Math.asin(Math.sqrt((energy - depth) / (energy - sill)));
    }

    @Test
    void lengthMatchesTheClosedForm() {
        SideWeir weir = SideWeir.ofSillAndLength(new Box(2.5), 0.84, 3).withCoefficient(0.7);
        for (double spill : new double[] {0.1, 0.5, 0.68}) {
            double length = weir.lengthFromDepthAndDischargeToSpill(1.0608, 5.46, spill);
            SideWeirProfile profile = SideWeir.ofSillAndLength(new Box(2.5), 0.84, length)
                    .withCoefficient(0.7)
                    .fromDownstreamDepthAndDischarge(1.0608, 5.46);
            assertThat(profile.spill()).isCloseTo(spill, within(1e-11));
            double closed = 1.5
                    * 2.5
                    / 0.7
                    * (deMarchi(profile.energy(), 0.84, 1.0608)
                            - deMarchi(profile.energy(), 0.84, profile.upstreamDepth()));
            assertThat(length).isCloseTo(closed, within(1e-10));
        }
    }

    /** The exercise of a textbook (b 2.5 m, sill 0.84 m, 5.96 to 5.46 m³/s, Cd 0.7), g 9.81: 3.315 m by quadrature. */
    @Test
    void lengthOfTheExercise() {
        assertThat(SideWeir.ofSillAndLength(new Box(2.5), 0.84, 3)
                        .withCoefficient(0.7)
                        .lengthFromDepthAndDischargeToSpill(1.0608, 5.46, 0.5))
                .isCloseTo(3.315, withPercentage(0.08));
    }

    /** dy/dx and dQ/dx integrated by scipy's eighth-order Runge-Kutta, relative tolerance 1e-12. */
    @Test
    void profilesAgainstAnIndependentIntegration() {
        SideWeirProfile subcritical = SideWeir.ofSillAndLength(new Box(2.5), 0.84, 3)
                .withCoefficient(0.7)
                .fromDownstreamDepthAndDischarge(1.0608, 5.46);
        assertThat(subcritical.upstreamDepth()).isCloseTo(0.97571706, within(1e-8));
        assertThat(subcritical.upstreamDischarge()).isCloseTo(5.92879175, within(1e-8));
        SideWeirProfile supercritical = SideWeir.ofSillAndLength(new Box(1.2), 0.3, 2)
                .withCoefficient(0.55)
                .fromUpstreamDepthAndDischarge(0.5, 3);
        assertThat(supercritical.downstreamDepth()).isCloseTo(0.45212944, within(1e-8));
        assertThat(supercritical.downstreamDischarge()).isCloseTo(2.76324763, within(1e-8));
        SideWeir inPipe = SideWeir.ofSillAndLength(PIPE, 0.6, 2.4).withCoefficient(0.6);
        SideWeirProfile round = inPipe.fromDownstreamDepthAndDischarge(0.85, 0.5);
        assertThat(round.upstreamDepth()).isCloseTo(0.7938438, within(1e-7));
        assertThat(round.upstreamDischarge()).isCloseTo(0.95349383, within(1e-8));
        SideWeirProfile deadEnd = inPipe.fromDownstreamDepthAndDischarge(0.85, 0);
        assertThat(deadEnd.upstreamDepth()).isCloseTo(0.83091919, within(1e-8));
        assertThat(deadEnd.spill()).isCloseTo(0.5111708, within(1e-7));
        SideWeirProfile fromUpstream =
                SideWeir.ofSillAndLength(PIPE, 0.6, 1).withCoefficient(0.6).fromUpstreamDepthAndDischarge(0.75, 0.8);
        assertThat(fromUpstream.downstreamDepth()).isCloseTo(0.76772482, within(1e-8));
        assertThat(fromUpstream.downstreamDischarge()).isCloseTo(0.68761877, within(1e-8));
    }

    @Test
    void theProfileRunsFromUpstreamToDownstream() {
        SideWeirProfile profile = SideWeir.ofSillAndLength(PIPE, 0.6, 2.4)
                .withCoefficient(0.6)
                .fromDownstreamDepthAndDischarge(0.85, 0.5);
        double[] positions = profile.positions();
        double[] discharges = profile.discharges();
        double[] depths = profile.depths();
        assertThat(positions[0]).isZero();
        assertThat(positions[40]).isCloseTo(2.4, within(1e-12));
        for (int i = 1; i < positions.length; i++) {
            assertThat(positions[i]).isGreaterThan(positions[i - 1]);
            assertThat(discharges[i]).isLessThan(discharges[i - 1]);
            assertThat(depths[i]).isGreaterThan(depths[i - 1]);
        }
        assertThat(profile)
                .hasToString("SideWeirProfile[depth 0.7938 to 0.85 m, discharge 0.9535 to 0.5 m3/s, spill 0.4535"
                        + " m3/s]");
    }

    @Test
    void fromUpstreamUndoesFromDownstream() {
        SideWeir weir = SideWeir.ofSillAndLength(PIPE, 0.6, 2.4).withCoefficient(0.6);
        SideWeirProfile down = weir.fromDownstreamDepthAndDischarge(0.85, 0.5);
        SideWeirProfile up = weir.fromUpstreamDepthAndDischarge(down.upstreamDepth(), down.upstreamDischarge());
        assertThat(up.downstreamDepth()).isCloseTo(0.85, within(1e-12));
        assertThat(up.downstreamDischarge()).isCloseTo(0.5, within(1e-12));
    }

    @Test
    void splitKeepsTheWater() {
        SideWeir weir = SideWeir.ofSillAndLength(PIPE, 0.6, 3).withCoefficient(0.6);
        LargeOrifice throttle = LargeOrifice.circular(0.4);
        SideWeirProfile profile = weir.split(0.9, throttle::discharge);
        assertThat(profile.upstreamDischarge()).isCloseTo(0.9, within(1e-12));
        assertThat(profile.downstreamDischarge())
                .isCloseTo(throttle.discharge(profile.downstreamDepth()), within(1e-12));
        assertThat(profile.spill()).isBetween(0.5, 0.75);
        assertThatThrownBy(() -> weir.split(0.1, throttle::discharge))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageMatching("inflow must be greater than 0\\.\\d+ m3/s, which goes on below the sill, was 0.1");
        assertThatThrownBy(() -> SideWeir.ofSillAndLength(PIPE, 0.6, 0.3)
                        .withCoefficient(0.6)
                        .split(1.9, throttle::discharge))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("inflow must be carried at a depth of at most 1.2 m, was 1.9 m3/s");
    }

    /** K. Subramanya, S. C. Awasthy (1972): 0.611 at rest, equal to 0.864 √((1 − F²)/(2 + F²)). */
    @Test
    void coefficientByFroudeNumber() {
        assertThat(SideWeir.coefficient(0)).isEqualTo(0.611);
        assertThat(SideWeir.coefficient(0.6)).isCloseTo(0.864 * Math.sqrt(0.64 / 2.36), withPercentage(0.02));
        assertThatThrownBy(() -> SideWeir.coefficient(1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("upstreamFroude must be in [0, 0.95], was 1");
    }

    @Test
    void refusesWhatHasNoAnswer() {
        SideWeir endless = SideWeir.ofSillAndLength(new Box(2.5), 0.6, 50).withCoefficient(0.7);
        assertThatThrownBy(() -> endless.fromDownstreamDepthAndDischarge(1.0608, 5.46))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageMatching("the weir is 50 m long and its flow turns critical [0-9.]+ m upstream");
        assertThatThrownBy(() -> endless.fromUpstreamDepthAndDischarge(1.0608, 5.46))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageMatching("the weir is 50 m long and spills all that arrives within [0-9.]+ m");
        assertThatThrownBy(() -> endless.lengthFromDepthAndDischargeToSpill(1.0608, 5.46, 3))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageStartingWith("spill must be at most ");
        assertThatThrownBy(() -> SideWeir.ofSillAndLength(new Box(1.2), 0.3, 2)
                        .withCoefficient(0.55)
                        .fromDownstreamDepthAndDischarge(0.5, 3))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depth must be subcritical at the downstream end, was 0.5 m with 3 m3/s");
        assertThatThrownBy(() -> endless.fromDownstreamDepthAndDischarge(0.6, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("depth must be above the sill 0.6 m");
        assertThatThrownBy(() -> SideWeir.ofSillAndLength(PIPE, 1.2, 1).withCoefficient(0.6))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sillHeight must be below the height of the section 1.2 m, was 1.2");
    }
}
