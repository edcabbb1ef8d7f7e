package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Conduits, jumps, profiles and sizes by hand and on both sides of their limits. */
class FlowValuesTest {
    private static final double G = 9.80665;
    private static final CircularSection PIPE = CircularSection.ofDiameter(0.6);
    private static final Manning LAW = Manning.of(0.013);
    private static final CrossSection CHANNEL = RectangularSection.open(2);

    @Test
    void conduitsAreEqualByAllTheyHold() {
        Conduit conduit = Conduit.of(PIPE, Gradient.of(0.01), LAW);
        assertThat(conduit)
                .isEqualTo(Conduit.of(CircularSection.ofDiameter(0.6), Gradient.ofPercent(1), Manning.of(0.013)))
                .hasSameHashCodeAs(Conduit.of(PIPE, Gradient.of(0.01), LAW))
                .isNotEqualTo("conduit");
        for (Conduit other : List.of(
                conduit.withSection(CHANNEL),
                conduit.withGradient(Gradient.of(0.02)),
                conduit.withResistance(Manning.of(0.014)),
                conduit.withGravity(9.81))) {
            assertThat(conduit).isNotEqualTo(other);
            assertThat(conduit.hashCode()).isNotEqualTo(other.hashCode());
        }
    }

    @Test
    void conduitsRefuseWhatIsNone() {
        assertThatThrownBy(() -> Conduit.of(PIPE, Gradient.of(0), LAW))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("gradient must be greater than 0");
        Conduit open = Conduit.of(CHANNEL, Gradient.of(0.01), LAW);
        for (Runnable question :
                List.<Runnable>of(open::fullBore, open::maximum, open::maximumVelocity, () -> open.gradientFor(1))) {
            assertThatThrownBy(question::run)
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessageStartingWith("an open section has no soffit and no full bore: ");
        }
        assertThatThrownBy(() -> open.normalDepth(1.1e9)).hasMessageStartingWith("discharge must be in [0, ");
        assertThatThrownBy(() -> open.normalDepths(1.1e9)).hasMessageStartingWith("discharge must be in [0, ");
        Conduit pipe = open.withSection(PIPE);
        assertThatThrownBy(() -> pipe.normalDepth(-1)).hasMessageStartingWith("discharge must be 0 or greater");
        assertThatThrownBy(() -> pipe.normalDepths(-1)).hasMessageStartingWith("discharge must be 0 or greater");
        assertThatThrownBy(() -> pipe.gradientFor(0)).hasMessageStartingWith("discharge must be greater than 0");
        assertThatThrownBy(() -> pipe.gradientForDischargeAtDepth(1, 0))
                .hasMessageStartingWith("depth must be greater than 0");
        assertThatThrownBy(() -> pipe.criticalGradient(0)).hasMessageStartingWith("discharge must be greater than 0");
    }

    /** Whatever law and section stand behind them, and whatever way they are found by. */
    @Test
    void manyAnswerAsOneDoes() {
        double[] depths = {0.05, 0.2, Double.NaN, 0.45};
        double[] discharges = new double[4];
        double[] out = new double[4];
        for (Resistance law : new Resistance[] {LAW, ColebrookWhite.ofRoughnessMm(0.6), Chezy.of(60)}) {
            for (CrossSection section : List.of(PIPE, RectangularSection.box(0.6, 0.6), CHANNEL)) {
                Conduit conduit = Conduit.of(section, Gradient.of(0.004), law);
                conduit.discharge(depths, discharges);
                conduit.normalDepth(discharges, out);
                double[] velocities = new double[4];
                conduit.velocity(depths, velocities);
                double[] critical = new double[4];
                conduit.criticalDepth(discharges, critical);
                for (int i = 0; i < 4; i++) {
                    if (i == 2) {
                        assertThat(List.of(discharges[i], out[i], velocities[i], critical[i]))
                                .containsOnly(Double.NaN);
                        continue;
                    }
                    assertThat(discharges[i]).isEqualTo(conduit.discharge(depths[i]));
                    assertThat(velocities[i]).isEqualTo(conduit.velocity(depths[i]));
                    assertThat(out[i]).isCloseTo(depths[i], within(1e-12));
                    assertThat(critical[i]).isEqualTo(conduit.criticalDepth(discharges[i]));
                }
                for (int wrong : new int[] {3, 5}) {
                    double[] other = new double[wrong];
                    String length = " must have length 4, was " + wrong;
                    assertThatThrownBy(() -> conduit.discharge(depths, other)).hasMessage("discharges" + length);
                    assertThatThrownBy(() -> conduit.velocity(depths, other)).hasMessage("velocities" + length);
                    assertThatThrownBy(() -> conduit.normalDepth(depths, other)).hasMessage("depths" + length);
                    assertThatThrownBy(() -> conduit.criticalDepth(depths, other))
                            .hasMessage("depths" + length);
                }
                assertThatThrownBy(() -> conduit.discharge(new double[] {0.1, -1}, new double[2]))
                        .hasMessageStartingWith("depths[1]: depth must be");
                assertThatThrownBy(() -> conduit.normalDepth(new double[] {0.1, -1}, new double[2]))
                        .hasMessageStartingWith("discharges[1]: discharge must be");
            }
        }
    }

    /** From 0 to the soffit, and to the greatest discharge; what lies beyond is counted. */
    @Test
    void whereDefinedUpToTheLimits() {
        Conduit conduit = Conduit.of(PIPE, Gradient.of(0.004), LAW);
        double[] out = new double[5];
        double[] depths = {0, 0.6, Math.nextUp(0.6), -1e-9, Double.NaN};
        assertThat(conduit.dischargeWhereDefined(depths, out)).isEqualTo(2);
        assertThat(out).containsExactly(0, conduit.fullBore().discharge(), Double.NaN, Double.NaN, Double.NaN);
        assertThat(conduit.velocityWhereDefined(depths, out)).isEqualTo(2);
        double most = conduit.maximum().discharge();
        assertThat(conduit.normalDepthWhereDefined(new double[] {0, most, 1.0001 * most, -1e-9, Double.NaN}, out))
                .isEqualTo(2);
        assertThat(out[0]).isZero();
        assertThat(out[1]).isCloseTo(conduit.maximum().depth(), within(1e-6));
        Conduit open = conduit.withSection(CHANNEL);
        assertThat(open.dischargeWhereDefined(new double[] {1, Double.POSITIVE_INFINITY}, new double[2]))
                .isEqualTo(1);
        assertThat(open.normalDepthWhereDefined(new double[] {1e9, 1.1e9}, new double[2]))
                .isEqualTo(1);
    }

    /** A rectangle 1 m wide, Froude's number 4 at 0.2 m: y2/y1 = (√(1 + 8 F²) − 1)/2, loss (y2 − y1)³/(4 y1 y2). */
    @Test
    void jumpByHand() {
        double discharge = 4 * Math.sqrt(G * 0.2) * 0.2;
        SectionFlow flow = SectionFlow.of(RectangularSection.open(1), discharge);
        HydraulicJump jump = flow.jump(0.2);
        double after = 0.1 * (Math.sqrt(129) - 1);
        double loss = Math.pow(after - 0.2, 3) / (4 * 0.2 * after);
        assertThat(jump.upstreamDepth()).isEqualTo(0.2);
        assertThat(jump.downstreamDepth()).isCloseTo(after, within(1e-12));
        assertThat(jump.upstreamFroudeNumber()).isCloseTo(4, within(1e-12));
        assertThat(jump.energyLoss()).isCloseTo(loss, within(1e-12));
        assertThat(jump.power()).isCloseTo(1000 * G * discharge * loss, within(1e-8));
        assertThat(jump.isFilling()).isFalse();
        assertThat(jump.length()).isCloseTo(5.8 * after, within(1e-9));
        assertThat(jump.lengthByRise(6)).isCloseTo(6 * (after - 0.2), within(1e-12));
        assertThat(jump.lengthByRise(100)).isCloseTo(100 * (after - 0.2), within(1e-10));
        assertThatThrownBy(() -> jump.lengthByRise(0)).hasMessageStartingWith("multiple must be greater than 0");
        assertThatThrownBy(() -> jump.lengthByRise(100.1)).hasMessage("multiple must be in [0, 100], was 100.1");
        assertThat(jump).hasToString("HydraulicJump[0.2 m to 1.036 m, Froude 4, loss 0.705 m]");
        assertThatThrownBy(() -> flow.jump(1.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("depth must be supercritical for a jump, Froude's number at 1.1 m was 0.31");
        assertThat(flow.alternateDepth(0.2)).isGreaterThan(after);
        assertThat(flow.specificEnergy(flow.alternateDepth(0.2))).isCloseTo(flow.specificEnergy(0.2), within(1e-12));
    }

    /** The same flow in a box 0.8 m high: the momentum is that of the water and of the pressure above the soffit. */
    @Test
    void aJumpThatFills() {
        double discharge = 4 * Math.sqrt(G * 0.2) * 0.2;
        SectionFlow flow = SectionFlow.of(RectangularSection.box(1, 0.8), discharge);
        HydraulicJump jump = flow.jump(0.2);
        double momentum = discharge * discharge / (G * 0.2) + 0.02;
        double level = (momentum - discharge * discharge / (G * 0.8)) / 0.8 + 0.4;
        assertThat(level).isGreaterThan(0.8);
        assertThat(jump.downstreamDepth()).isCloseTo(level, within(1e-12));
        assertThat(jump.isFilling()).isTrue();
        assertThat(jump.toString()).contains(" (filling), Froude 4,");
        assertThatThrownBy(() -> flow.alternateDepth(0.1))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageStartingWith("a depth of 0.1 m has no alternate depth below the soffit for SectionFlow[");
        // Full from the depth on at which the level stands at the soffit.
        assertThat(flow.froudeNumber(0.8)).isZero();
        assertThat(flow.froudeNumber(0.79)).isPositive();
    }

    /** 2 m³/s in 2 m: critical at 0.4673 m, where E = 3/2 y; momentum Q²/(g A) + A y/2. */
    @Test
    void flowInASectionByHand() {
        SectionFlow flow = SectionFlow.of(CHANNEL, 2);
        double critical = Math.cbrt(1 / G);
        assertThat(flow.criticalDepth()).isCloseTo(critical, within(1e-12));
        assertThat(flow.criticalDepths()).hasSize(1);
        assertThat(flow.minimumEnergy()).isCloseTo(1.5 * critical, within(1e-12));
        assertThat(flow.velocity(0.5)).isEqualTo(2);
        assertThat(flow.froudeNumber(0.5)).isCloseTo(2 / Math.sqrt(G * 0.5), within(1e-12));
        assertThat(flow.specificEnergy(0.5)).isCloseTo(0.5 + 4 / (2 * G), within(1e-12));
        assertThat(flow.momentum(0.5)).isCloseTo(4 / (G * 1) + 0.25, within(1e-12));
        assertThat(flow.depthsForEnergy(1.5 * critical * 1.01)).hasSize(2);
        assertThat(flow.depthsForEnergy(1.5 * critical * 0.99)).isEmpty();
        double[] depths = flow.depthsForMomentum(1.1);
        assertThat(depths).hasSize(2);
        for (double depth : depths) {
            assertThat(flow.momentum(depth)).isCloseTo(1.1, within(1e-12));
        }
        assertThat(flow.conjugateDepth(depths[0])).isCloseTo(depths[1], within(1e-11));
        assertThat(flow.conjugateDepth(depths[1])).isCloseTo(depths[0], within(1e-11));
        for (double none : new double[] {0, -1, Double.NaN}) {
            assertThatThrownBy(() -> flow.velocity(none)).hasMessageStartingWith("depth must be greater than 0");
            assertThatThrownBy(() -> flow.specificEnergy(none)).hasMessageStartingWith("depth must be greater than 0");
            assertThatThrownBy(() -> flow.momentum(none)).hasMessageStartingWith("depth must be greater than 0");
            assertThatThrownBy(() -> flow.depthsForEnergy(none)).hasMessageStartingWith("energy must be greater");
            assertThatThrownBy(() -> flow.depthsForMomentum(none)).hasMessageStartingWith("momentum must be greater");
        }
        assertThatThrownBy(
                        () -> SectionFlow.of(RectangularSection.box(1, 0.3), 2).criticalDepth())
                .isInstanceOf(NoSolutionException.class)
                .hasMessageStartingWith("a discharge of 2 m3/s is not critical at any depth below the soffit of ");
    }

    /** Critical at 0.467 m; normal at 0.7305 m on 1 in 1000, at 0.262 m on 1 in 50. */
    @ParameterizedTest
    @CsvSource({
        "0.001, 0.9, M1",
        "0.001, 0.6, M2",
        "0.001, 0.4, M3",
        "0.02, 0.6, S1",
        "0.02, 0.4, S2",
        "0.02, 0.2, S3",
        "0, 0.5, H2",
        "0, 0.4, H3",
        "-0.001, 0.5, A2",
        "-0.001, 0.4, A3"
    })
    void kindsOfProfiles(double gradient, double depth, ProfileType expected) {
        Reach reach = Reach.of(CHANNEL, Gradient.of(gradient), LAW, 10);
        assertThat(ProfileType.ofDischargeAndDepth(reach, 2, depth)).isEqualTo(expected);
        assertThatThrownBy(() -> ProfileType.ofDischargeAndDepth(reach, 2, 0))
                .hasMessageStartingWith("depth must be greater than 0");
    }

    @Test
    void depthsBetweenStations() {
        WaterProfile profile = VariedFlow.of(Reach.of(CHANNEL, Gradient.of(0.001), LAW, 100), 2)
                .withOutletDepth(1)
                .withStep(10)
                .profile();
        List<Station> stations = profile.stations();
        Station upper = stations.get(3);
        Station lower = stations.get(4);
        double middle = (upper.distance() + lower.distance()) / 2;
        assertThat(profile.depthAt(middle)).isCloseTo((upper.depth() + lower.depth()) / 2, within(1e-12));
        double quarter = 0.75 * upper.distance() + 0.25 * lower.distance();
        assertThat(profile.depthAt(quarter)).isCloseTo(0.75 * upper.depth() + 0.25 * lower.depth(), within(1e-12));
        assertThat(profile.depthAt(0)).isEqualTo(profile.inlet().depth());
        assertThat(profile.depthAt(100)).isEqualTo(1);
        assertThat(profile.depthAt(upper.distance())).isEqualTo(upper.depth());
        assertThatThrownBy(() -> profile.depthAt(100.1)).hasMessage("distance must be in [0, 100] m, was 100.1");
        assertThat(profile.pressurisedLength()).isZero();
        assertThat(upper.level()).isEqualTo(upper.invert() + upper.depth());
        assertThat(upper.velocity()).isCloseTo(2 / (2 * upper.depth()), within(1e-12));
        assertThat(upper.energyLevel())
                .isCloseTo(upper.level() + upper.velocity() * upper.velocity() / (2 * G), within(1e-12));
        assertThat(upper.frictionSlope())
                .isCloseTo(LAW.gradient(upper.velocity(), CHANNEL.hydraulicRadius(upper.depth())), within(1e-15));
        assertThat(upper.isPressurised()).isFalse();
        assertThat(upper.toString())
                .startsWith("Station[")
                .contains(" m/s, Froude 0.3")
                .doesNotContain("pressurised");
        assertThat(profile.toString())
                .startsWith("WaterProfile[11 stations, inlet depth ")
                .contains("outlet depth 1 m");
    }

    /** A bore for a discharge at a velocity: D = √(4 Q/(π V)) full; from a micrometre to 50 m. */
    @Test
    void sizesOfPipes() {
        Conduits full = Conduits.atFullness(1);
        assertThat(full.sectionOfDischargeAndVelocity(Math.PI / 4, 1).diameter())
                .isCloseTo(1, within(1e-12));
        assertThat(full.sectionOfDischargeAndVelocity(0.9999 * 2500 * Math.PI / 4, 1)
                        .diameter())
                .isBetween(49.9, 50.0);
        assertThatThrownBy(() -> full.sectionOfDischargeAndVelocity(1.0001 * 2500 * Math.PI / 4, 1))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageContaining("asks for a diameter of 50.00");
        assertThat(full.sectionOfDischargeAndVelocity(1.001e-12 * Math.PI / 4, 1)
                        .diameter())
                .isBetween(1e-6, 1.001e-6);
        assertThatThrownBy(() -> full.sectionOfDischargeAndVelocity(0.999e-12 * Math.PI / 4, 1))
                .isInstanceOf(NoSolutionException.class);
        Gradient fall = Gradient.of(0.01);
        assertThatThrownBy(() -> full.carrying(1e-30, fall, LAW))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageEndingWith(" m carries a discharge of 1.0E-30 m3/s at 1 of its height");
        Conduit found = Conduits.atFullness(0.7).flowingAt(1, fall, LAW);
        assertThat(found.velocity(0.7 * found.section().height())).isCloseTo(1, within(1e-12));
        for (double fullness : new double[] {0, -1, Math.nextUp(1.0), Double.NaN}) {
            assertThatThrownBy(() -> Conduits.atFullness(fullness))
                    .hasMessageStartingWith("fullness must be greater than 0 and at most 1, was ");
        }
        assertThat(Conduits.atFullness(0.7)).hasToString("Conduits[0.7 full]");
    }

    /** The smallest of a list that carries it when full, be it just so, in whatever order they stand. */
    @Test
    void smallestOfAList() {
        Gradient fall = Gradient.of(0.01);
        List<Double> sizes = List.of(0.6, 0.3, 0.45);
        double middle = Conduit.of(CircularSection.ofDiameter(0.45), fall, LAW)
                .fullBore()
                .discharge();
        Optional<Conduit> found = Conduits.smallest(sizes, fall, LAW, middle);
        assertThat(found.orElseThrow().section()).isEqualTo(CircularSection.ofDiameter(0.45));
        assertThat(Conduits.smallest(sizes, fall, LAW, Math.nextUp(middle))
                        .orElseThrow()
                        .section())
                .isEqualTo(PIPE);
        assertThat(Conduits.smallest(sizes, fall, LAW, 10)).isEmpty();
        assertThatThrownBy(() -> Conduits.smallest(List.of(), fall, LAW, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sections must not be empty, for a discharge of 1 m3/s");
        assertThatThrownBy(() -> Conduits.smallest(sizes, fall, LAW, -1))
                .hasMessageStartingWith("discharge must be 0 or greater");
    }

    @Test
    void criticalFlowIsAValue() {
        CriticalFlow critical = CriticalFlow.of(PIPE);
        assertThat(critical).isNotEqualTo(CriticalFlow.of(CHANNEL)).isNotEqualTo("critical");
        assertThat(critical.hashCode())
                .isNotEqualTo(CriticalFlow.of(CHANNEL).hashCode())
                .isNotEqualTo(critical.withGravity(9.81).hashCode());
        double[] out = new double[2];
        CriticalFlow.of(CHANNEL).depth(new double[] {2, Double.NaN}, out);
        assertThat(out[0]).isCloseTo(Math.cbrt(1 / G), within(1e-12));
        assertThat(out[1]).isNaN();
        for (CriticalFlow each : List.of(critical, CriticalFlow.of(CHANNEL))) {
            assertThatThrownBy(() -> each.depth(new double[2], new double[3]))
                    .hasMessage("depths must have length 2, was 3");
            assertThatThrownBy(() -> each.depth(new double[] {1, -1}, new double[2]))
                    .hasMessageStartingWith("discharges[1]: discharge must be 0 or greater");
        }
        // Critical at the soffit but for rounding: a box 1 m by 0.6 m is full at √(g 0.6³).
        CriticalFlow box = CriticalFlow.of(RectangularSection.box(1, 0.6));
        assertThat(box.depth(Math.sqrt(G * 0.6 * 0.6 * 0.6) * (1 + 1e-15))).isCloseTo(0.6, within(1e-12));
        assertThatThrownBy(() -> box.depth(1.001 * Math.sqrt(G * 0.6 * 0.6 * 0.6)))
                .isInstanceOf(NoSolutionException.class);
    }

    /** A pipe of which nothing is kept yet and one that was asked often find the same depth. */
    @Test
    void theFirstDepthIsThatOfAllLaterOnes() {
        Resistance law = ColebrookWhite.ofRoughnessMm(0.6);
        Conduit often = Conduit.of(PIPE, Gradient.of(0.004), law);
        double most = often.maximum().discharge();
        for (double part : new double[] {0, 1e-9, 0.01, 0.2, 0.5, 0.9, 0.999}) {
            Conduit fresh = Conduit.of(PIPE, Gradient.of(0.004), law);
            double first = fresh.normalDepth(part * most);
            assertThat(first).isCloseTo(often.normalDepth(part * most), within(1e-15));
            for (int i = 0; i < 20; i++) {
                assertThat(fresh.normalDepth(part * most)).isCloseTo(first, within(1e-15));
            }
        }
        assertThatThrownBy(() -> Conduit.of(PIPE, Gradient.of(0.004), law).normalDepth(1.001 * most))
                .isInstanceOf(NoSolutionException.class);
    }

    /** Zeros of the derivatives at 60 digits: 1 − 0.2486338348644305² and (1 − cos(θ/2))/2 with θ = tan θ. */
    @Test
    void theCrestsOfManningsCurvesToTheLastBit() {
        Conduit conduit = Conduit.of(PIPE, Gradient.of(0.004), LAW);
        double air = 0.2486338348644305124772035;
        assertThat(conduit.maximum().depth()).isCloseTo(0.6 * (1 - air * air), within(3e-16));
        assertThat(conduit.maximumVelocity().depth()).isCloseTo(0.6 * 0.81280312733986099, within(3e-16));
    }

    @Test
    void sizesByVelocity() {
        Conduits half = Conduits.atFullness(0.5);
        // Half full A = πD²/8: 0.1 m³/s at 2 m/s is 0.05 m².
        assertThat(half.sectionOfDischargeAndVelocity(0.1, 2).diameter())
                .isCloseTo(Math.sqrt(0.4 / Math.PI), within(1e-12));
        assertThat(Conduits.atFullness(1)
                        .sectionOfDischargeAndVelocity(
                                2500 * CircularSection.ofDiameter(1).area(1), 1)
                        .diameter())
                .as("just the largest")
                .isEqualTo(50);
        Gradient fall = Gradient.of(0.01);
        // Manning half full: V = (D/4)^(2/3) √S/n.
        double diameter = half.flowingAt(1.3, fall, LAW).section().height();
        assertThat(diameter).isCloseTo(4 * Math.pow(1.3 * 0.013 / 0.1, 1.5), within(1e-12));
        assertThatThrownBy(() -> half.flowingAt(1e6, fall, LAW))
                .isInstanceOf(NoSolutionException.class)
                .hasMessage("no diameter from 1.0E-6 to 50 m has a velocity of 1000000 m/s at 0.5 of its height");
    }

    @Test
    void gradientsInWords() {
        assertThat(Gradient.of(-0.0)).isEqualTo(Gradient.of(0)).hasSameHashCodeAs(Gradient.of(0));
        assertThat(Gradient.of(0)).hasToString("Gradient[0 m/m]");
        assertThat(Gradient.of(1)).hasToString("Gradient[1 m/m, 1 in 1]");
        assertThat(Gradient.of(-0.01)).hasToString("Gradient[-0.01 m/m]");
        assertThat(Gradient.ofAny(1.5)).hasToString("Gradient[1.5 m/m]");
    }
}
