package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import java.util.List;
import org.junit.jupiter.api.Test;

class VariedFlowTest {
    private static final Manning LAW = Manning.of(0.013);
    private static final CrossSection CHANNEL = RectangularSection.open(2);
    private static final CircularSection PIPE = CircularSection.ofDiameter(0.6);

    private static Reach channel(double gradient, double length) {
        return Reach.of(CHANNEL, Gradient.of(gradient), LAW, length);
    }

    private static double normal(double gradient, double discharge) {
        return Conduit.of(CHANNEL, Gradient.of(gradient), LAW).normalDepth(discharge);
    }

    @Test
    void drawdownToAFreeOutfallEndsCriticalAndBeginsNormal() {
        WaterProfile profile = VariedFlow.of(channel(0.0005, 4000), 2).profile();
        double critical = SectionFlow.of(CHANNEL, 2).criticalDepth();
        assertThat(profile.outlet().depth()).isEqualTo(critical);
        assertThat(profile.outlet().froudeNumber()).isCloseTo(1, within(1e-12));
        // Integral of dx/dy from critical depth by adaptive quadrature (SciPy): 0.941555597 m; normal 0.941794949 m.
        assertThat(profile.inlet().depth()).isCloseTo(0.9415555970, within(5e-6));
        assertThat(profile.inlet().depth()).isLessThan(normal(0.0005, 2));
        assertThat(profile.jumps()).isEmpty();
        assertThat(profile.stations()).hasSize(201);
        assertThat(ProfileType.ofDischargeAndDepth(channel(0.0005, 1), 2, profile.depthAt(3500)))
                .isEqualTo(ProfileType.M2);
    }

    /** The same backwater by distance steps, by depth steps and by integration. */
    @Test
    void threeWaysAgreeOnABackwater() {
        var conduit = Conduit.of(CHANNEL, Gradient.of(0.001), LAW);
        double seen = VariedFlow.of(Reach.of(conduit, 400), 2)
                .withOutletDepth(1.2)
                .withStep(1)
                .profile()
                .inlet()
                .depth();
        assertThat(seen).isBetween(normal(0.001, 2) + 0.05, 1.0);
        Backwater backwater = Backwater.of(conduit, 2);
        assertThat(backwater.depthUpstream(1.2, 400)).isCloseTo(seen, within(2e-7));
        assertThat(backwater.raisedDepth(seen, 400)).isCloseTo(1.2, within(1e-6));
        double[] depths = new double[1001];
        for (int i = 0; i <= 1000; i++) {
            depths[i] = 1.2 + (seen - 1.2) * i / 1000;
        }
        var stations = DepthSteps.through(channel(0.001, 1), 2, depths);
        assertThat(stations.get(1000).distance()).isCloseTo(-400, within(0.005));
        assertThat(stations.get(1000).invert()).isCloseTo(0.4, within(1e-5));
    }

    @Test
    void steepReachRunsAtNormalDepthAfterItsEntry() {
        WaterProfile profile = VariedFlow.of(channel(0.02, 200), 2).profile();
        assertThat(profile.inlet().depth()).isCloseTo(SectionFlow.of(CHANNEL, 2).criticalDepth(), within(1e-12));
        // By adaptive quadrature (SciPy); normal depth is 0.2621180996 m.
        assertThat(profile.outlet().depth()).isCloseTo(0.2621211607, within(5e-8));
        assertThat(profile.outlet().froudeNumber()).isGreaterThan(1);
        assertThat(ProfileType.ofDischargeAndDepth(channel(0.02, 1), 2, profile.depthAt(10)))
                .isEqualTo(ProfileType.S2);
    }

    @Test
    void raisedOutletOnASteepReachBacksUpToAJump() {
        WaterProfile profile = VariedFlow.of(channel(0.02, 200), 2)
                .withOutletDepth(2.5)
                .withStep(0.25)
                .profile();
        assertThat(profile.jumps()).hasSize(1);
        JumpPlace place = profile.jumps().get(0);
        assertThat(place.jump().upstreamDepth()).isCloseTo(normal(0.02, 2), within(1e-3));
        double length =
                Backwater.of(Conduit.of(CHANNEL, Gradient.of(0.02), LAW), 2).length(2.5, 0.01);
        assertThat(200 - place.distance()).isCloseTo(length, within(0.05));
        assertThat(profile.depthAt(place.distance() + 2)).isCloseTo(place.jump().downstreamDepth(), within(0.06));
        assertThat(ProfileType.ofDischargeAndDepth(channel(0.02, 1), 2, 2.5)).isEqualTo(ProfileType.S1);
        assertThat(place.toString()).startsWith("at ").contains("HydraulicJump[");
    }

    @Test
    void fastInflowOnAMildReachJumpsUp() {
        WaterProfile profile = VariedFlow.of(channel(0.001, 300), 2)
                .withInletDepth(0.12)
                .withOutletDepth(normal(0.001, 2))
                .withStep(0.1)
                .profile();
        assertThat(profile.inlet().depth()).isEqualTo(0.12);
        assertThat(profile.jumps()).hasSize(1);
        HydraulicJump jump = profile.jumps().get(0).jump();
        assertThat(jump.downstreamDepth()).isCloseTo(normal(0.001, 2), within(1e-3));
        assertThat(ProfileType.ofDischargeAndDepth(channel(0.001, 1), 2, profile.depthAt(1)))
                .isEqualTo(ProfileType.M3);
        assertThat(profile.outlet().depth()).isCloseTo(normal(0.001, 2), within(1e-12));
    }

    @Test
    void fastInflowTooWeakForTheDownstreamDepthIsDrownedAtTheInlet() {
        WaterProfile profile = VariedFlow.of(channel(0.001, 300), 2)
                .withInletDepth(0.3)
                .withOutletDepth(2)
                .profile();
        assertThat(profile.jumps()).isEmpty();
        assertThat(profile.inlet().depth()).isGreaterThan(1.5);
    }

    @Test
    void levelAndAdverseReachesHaveProfilesToo() {
        for (double gradient : new double[] {0, -0.002}) {
            WaterProfile drawdown = VariedFlow.of(channel(gradient, 300), 2).profile();
            for (int i = 1; i < drawdown.stations().size(); i++) {
                Station upper = drawdown.stations().get(i - 1);
                Station lower = drawdown.stations().get(i);
                assertThat(upper.energyLevel()).isGreaterThan(lower.energyLevel());
                assertThat(upper.level()).isGreaterThan(lower.level());
            }
            WaterProfile fast =
                    VariedFlow.of(channel(gradient, 15), 2).withInletDepth(0.1).profile();
            assertThat(fast.jumps()).isEmpty();
            assertThat(fast.outlet().depth()).isGreaterThan(0.1).isLessThan(0.4);
        }
        assertThat(ProfileType.ofDischargeAndDepth(channel(0, 1), 2, 0.8)).isEqualTo(ProfileType.H2);
        assertThat(ProfileType.ofDischargeAndDepth(channel(0, 1), 2, 0.2)).isEqualTo(ProfileType.H3);
        assertThat(ProfileType.ofDischargeAndDepth(channel(-0.01, 1), 2, 0.8)).isEqualTo(ProfileType.A2);
        assertThat(ProfileType.ofDischargeAndDepth(channel(-0.01, 1), 2, 0.2)).isEqualTo(ProfileType.A3);
    }

    /** Overloaded pipe with a drowned outlet: the pressure line falls with the friction of the full pipe, by hand. */
    @Test
    void pressurisedPipeByHand() {
        var conduit = Conduit.of(PIPE, Gradient.of(0.003), LAW);
        double discharge = 1.3 * conduit.fullBore().discharge();
        double full = 0.003 * 1.3 * 1.3;
        WaterProfile profile = VariedFlow.of(Reach.of(conduit, 100), discharge)
                .withOutletDepth(0.8)
                .profile();
        assertThat(profile.outlet().frictionSlope()).isCloseTo(full, within(1e-15));
        assertThat(profile.inlet().depth()).isCloseTo(0.8 + (full - 0.003) * 100, within(1e-9));
        assertThat(profile.pressurisedLength()).isEqualTo(100);
        assertThat(profile.inlet().isPressurised()).isTrue();
        assertThat(profile.inlet().froudeNumber()).isZero();
        assertThat(profile.toString()).contains("pressurised over 100 m");
        assertThat(profile.inlet().toString()).endsWith("pressurised]");
    }

    @Test
    void drownedOutletOfAnUnloadedPipeComesFreeUpstream() {
        var conduit = Conduit.of(PIPE, Gradient.of(0.003), LAW);
        double discharge = 0.4 * conduit.fullBore().discharge();
        WaterProfile profile = VariedFlow.of(Reach.of(conduit, 800), discharge)
                .withOutletDepth(1.5)
                .withStep(0.5)
                .profile();
        double slope = 0.003 * (1 - 0.16);
        assertThat(profile.pressurisedLength()).isCloseTo(0.9 / slope, within(0.5));
        assertThat(profile.inlet().depth()).isCloseTo(conduit.normalDepth(discharge), within(1e-4));
        double length = Backwater.of(conduit, discharge).length(1.5, 0.01);
        assertThat(profile.depthAt(800 - length)).isCloseTo(conduit.normalDepth(discharge) + 0.01, within(1e-4));
    }

    @Test
    void pipeCanRunFreeThenFillThenRunFree() {
        // A flat middle reach cannot carry the flow, the steep ones before and behind can.
        var reaches = List.of(
                Reach.of(PIPE, Gradient.of(0.02), LAW, 200),
                Reach.of(PIPE, Gradient.of(0.0005), LAW, 100),
                Reach.of(PIPE, Gradient.of(0.02), LAW, 200));
        WaterProfile profile = VariedFlow.of(reaches, 0.35).withStep(0.5).profile();
        assertThat(profile.inlet().isPressurised()).isFalse();
        assertThat(profile.outlet().isPressurised()).isFalse();
        assertThat(profile.pressurisedLength()).isBetween(50.0, 150.0);
        assertThat(profile.jumps()).hasSize(1);
        assertThat(profile.jumps().get(0).distance()).isLessThan(200);
        HydraulicJump jump = profile.jumps().get(0).jump();
        assertThat(profile.depthAt(profile.jumps().get(0).distance() + 0.5))
                .isCloseTo(jump.downstreamDepth(), within(0.02));
    }

    @Test
    void chainKeepsTheEnergyWhereReachesMeet() {
        var reaches = List.of(
                channel(0.001, 200).withLoss(0.5),
                Reach.of(RectangularSection.open(1.5), Gradient.of(0.001), LAW, 150)
                        .withDrop(0.1));
        WaterProfile profile = VariedFlow.of(reaches, 1.5)
                .withOutletDepth(1.1)
                .withOutletInvert(10)
                .profile();
        Station above = profile.stations().get(200);
        Station below = profile.stations().get(201);
        assertThat(above.distance()).isEqualTo(below.distance()).isEqualTo(200);
        assertThat(above.invert()).isCloseTo(below.invert(), within(1e-12)).isCloseTo(10.15, within(1e-12));
        double head = above.velocity() * above.velocity() / (2 * Gravity.STANDARD);
        assertThat(above.energyLevel() - below.energyLevel()).isCloseTo(0.5 * head, within(1e-12));
        assertThat(profile.outlet().level()).isCloseTo(11.1, within(1e-12));
        assertThat(above.reach()).isSameAs(reaches.get(0));
    }

    @Test
    void dropMakesAnOutfall() {
        var reaches = List.of(channel(0.001, 200).withDrop(2), channel(0.001, 200));
        WaterProfile profile =
                VariedFlow.of(reaches, 2).withOutletDepth(normal(0.001, 2)).profile();
        Station brink = profile.stations().get(200);
        assertThat(brink.froudeNumber()).isCloseTo(1, within(1e-12));
        assertThat(profile.stations().get(201).invert()).isCloseTo(brink.invert() - 2, within(1e-12));
    }

    @Test
    void mildSteepMildHasTheControlAtTheBreak() {
        var reaches = List.of(channel(0.001, 300), channel(0.03, 100), channel(0.001, 300));
        WaterProfile profile = VariedFlow.of(reaches, 2)
                .withOutletDepth(normal(0.001, 2))
                .withStep(0.25)
                .profile();
        double critical = SectionFlow.of(CHANNEL, 2).criticalDepth();
        assertThat(profile.depthAt(300)).isCloseTo(critical, within(1e-9));
        // Both by adaptive quadrature (SciPy) from critical depth: 90 m down the steep, 300 m up the mild reach.
        assertThat(profile.depthAt(390)).isCloseTo(0.2302517972, within(1e-6));
        assertThat(profile.jumps()).hasSize(1);
        assertThat(profile.jumps().get(0).distance()).isBetween(390.0, 480.0);
        assertThat(profile.inlet().depth()).isCloseTo(0.7088487133, within(2e-6));
    }

    @Test
    void profilesOfACriticalSlope() {
        var conduit = Conduit.of(CHANNEL, Gradient.of(0.001), LAW);
        var reach = Reach.of(CHANNEL, conduit.criticalGradient(2), LAW, 10);
        double critical = conduit.criticalDepth(2);
        assertThat(ProfileType.ofDischargeAndDepth(reach, 2, 1.1 * critical)).isEqualTo(ProfileType.C1);
        assertThat(ProfileType.ofDischargeAndDepth(reach, 2, 0.9 * critical)).isEqualTo(ProfileType.C3);
        assertThat(ProfileType.ofDischargeAndDepth(channel(0.001, 1), 2, normal(0.001, 2)))
                .isEqualTo(ProfileType.UNIFORM);
        assertThat(ProfileType.ofDischargeAndDepth(channel(0.001, 1), 2, 1.5)).isEqualTo(ProfileType.M1);
        assertThat(ProfileType.ofDischargeAndDepth(channel(0.02, 1), 2, 0.9 * normal(0.02, 2)))
                .isEqualTo(ProfileType.S3);
    }

    @Test
    void backwaterWithoutEnd() {
        var conduit = Conduit.of(PIPE, Gradient.of(0.003), LAW);
        double between = (conduit.fullBore().discharge() + conduit.maximum().discharge()) / 2;
        Backwater backwater = Backwater.of(conduit, between);
        assertThat(backwater.normalDepth()).isEqualTo(conduit.normalDepth(between));
        assertThatThrownBy(() -> backwater.length(0.9, 0.01))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageContaining("the level rises upstream without end");
        double upper = conduit.normalDepths(between)[1];
        assertThat(backwater.length(0.5 * (backwater.normalDepth() + upper), 0.001))
                .isPositive();
        assertThatThrownBy(() -> Backwater.of(conduit, 2 * between))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageContaining("the maximum is");
        assertThat(Backwater.of(conduit, 0.1).length(0.1, 0.01)).isZero();
        assertThat(Backwater.of(conduit, 0.1).depthUpstream(0.7, 1e5)).isEqualTo(conduit.normalDepth(0.1));
        assertThat(Backwater.of(conduit, 0.1))
                .hasToString(
                        "Backwater[SectionFlow[0.1 m3/s in CircularSection[D = 0.6 m]], normal depth 0.2243 m, mild]");
        assertThatThrownBy(() -> Backwater.of(conduit, 0.1).raisedDepth(0.1, 50))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("seenDepth must be greater than");
    }

    @Test
    void reachOfAConduitHasItsGravity() {
        var conduit = Conduit.of(PIPE, Gradient.of(0.003), ColebrookWhite.ofRoughness(0.0015))
                .withGravity(9.7);
        var reach = Reach.of(conduit, 100);
        assertThat(reach.gravity()).isEqualTo(9.7);
        assertThat(reach).asString().endsWith(", g = 9.7 m/s2]");
        assertThat(reach.withDrop(1).withLoss(1).gravity()).isEqualTo(9.7);
        var profile = VariedFlow.of(reach, 0.15).profile();
        assertThat(profile.outlet().depth()).isEqualTo(conduit.criticalDepth(0.15));
        assertThat(VariedFlow.of(Reach.of(conduit.withGravity(9.80665), 100), 0.15)
                        .withGravity(9.7)
                        .profile()
                        .inlet()
                        .depth())
                .isEqualTo(profile.inlet().depth());
        assertThatThrownBy(() -> VariedFlow.of(List.of(reach, reach.withGravity(9.8)), 0.15))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("reaches must share one gravity, had 9.7 and 9.8 m/s2");
    }

    @Test
    void refusesImpossibleInput() {
        assertThatThrownBy(() -> VariedFlow.of(List.of(), 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("reaches must not be empty, for a discharge of 1 m3/s");
        assertThatThrownBy(() -> VariedFlow.of(channel(0.001, 10), 0))
                .hasMessage("discharge must be greater than 0 and finite (m3/s), was 0");
        assertThatThrownBy(() -> channel(0.001, 0)).hasMessageContaining("length must be greater than 0");
        assertThatThrownBy(() -> channel(0.001, 1).withLoss(-1)).hasMessageContaining("lossCoefficient must be 0 or");
        assertThatThrownBy(() -> channel(0.001, 1).withDrop(Double.NaN)).hasMessageContaining("drop must be finite");
        var flow = VariedFlow.of(channel(0.001, 10), 1);
        assertThatThrownBy(() -> flow.withOutletDepth(-1)).hasMessageContaining("depth must be 0 or greater");
        assertThatThrownBy(() -> flow.withInletDepth(0)).hasMessageContaining("depth must be greater than 0");
        assertThatThrownBy(() -> flow.withStep(Double.NaN)).hasMessageContaining("step must be greater than 0");
        assertThatThrownBy(() -> flow.withGravity(0)).hasMessageContaining("gravity must be greater than 0");
        assertThatThrownBy(() -> flow.profile().depthAt(11)).hasMessage("distance must be in [0, 10] m, was 11");
        assertThatThrownBy(() -> DepthSteps.through(channel(0.001, 1), 2, 1))
                .hasMessage("number of depths must be at least 2, was 1");
        assertThatThrownBy(() -> DepthSteps.through(channel(0.001, 1), 2, 1.5, 0.6))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageContaining("normal depth lies between them");
        assertThatThrownBy(() -> DepthSteps.through(channel(0, 1), 2, 0.6, 0.2))
                .hasMessageContaining("critical depth lies between them");
        assertThatThrownBy(() -> DepthSteps.through(Reach.of(PIPE, Gradient.of(0.01), LAW, 1), 0.1, 0.3, 0.7))
                .hasMessage("depth must be in [0, 0.6] m, was 0.7");
        assertThat(flow).hasToString("VariedFlow[1 m3/s through 1 reaches, outlet depth 0 m]");
        assertThat(channel(0.001, 10).withDrop(0.1).withLoss(0.2))
                .hasToString("Reach[10 m of RectangularSection[open, bed width 2 m], Gradient[0.001 m/m, 1 in 1000],"
                        + " Manning[n = 0.013], drop 0.1 m, loss K = 0.2]");
    }
}
