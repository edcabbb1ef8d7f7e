package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Laws and channels on both sides of their limits, by hand. */
class FlowEdgesTest {
    private static final double TIGHT = 1e-12;

    private static Gradient slope(double value) {
        return Gradient.of(value);
    }

    /** A V of sides 1 : 1 and a bank beside it: stretches dry, cut by the water and drowned. */
    @Test
    void aSurveyPartlyUnderWater() {
        DividedChannel channel = DividedChannel.ofSurvey(
                new double[] {0, 1, 2, 4}, new double[] {1, 0, 1, 1.5}, new double[] {0.02, 0.02, 0.05});
        assertThat(channel.area(0)).isZero();
        assertThat(channel.area(0.5)).isCloseTo(0.25, within(TIGHT));
        assertThat(channel.area(1)).isCloseTo(1, within(TIGHT));
        assertThat(channel.area(1.25)).isCloseTo(1.5 + 0.125, within(TIGHT));
        assertThat(channel.area(2)).isCloseTo(3 + 1.5, within(TIGHT));
        double root = Math.sqrt(2);
        assertThat(channel.conveyance(0.5)).isCloseTo(0.25 / 0.02 * Math.pow(0.25 / root, 2 / 3.0), within(1e-10));
        // The left end is a wall; between the parts the water is no wall, or one of 0.25 m.
        double left = 1.5 / 0.02 * Math.pow(1.5 / (2 * root + 0.25), 2 / 3.0);
        double bank = 0.125 / 0.05 * Math.pow(0.125 / Math.hypot(1, 0.25), 2 / 3.0);
        assertThat(channel.conveyance(1.25)).isCloseTo(left + bank, within(1e-10));
        double wettedLeft = 1.5 / 0.02 * Math.pow(1.5 / (2 * root + 0.5), 2 / 3.0);
        double wettedBank = 0.125 / 0.05 * Math.pow(0.125 / (Math.hypot(1, 0.25) + 0.25), 2 / 3.0);
        assertThat(channel.withWettedInterfaces().conveyance(1.25)).isCloseTo(wettedLeft + wettedBank, within(1e-10));
        assertThat(channel.withWettedInterfaces()).hasToString("DividedChannel[4 points, 4 m wide, interfaces wetted]");
        assertThat(channel.discharge(1.25, slope(0.04))).isCloseTo(0.2 * (left + bank), within(1e-10));
        assertThat(channel.discharge(1.25, slope(0))).isZero();
        // A level bed is dry with the water at it.
        DividedChannel level = DividedChannel.ofSurvey(
                new double[] {0, 0, 3, 3}, new double[] {1, 0, 0, 1}, new double[] {0.02, 0.02, 0.02});
        assertThat(level.conveyance(0)).isZero();
        assertThat(level.conveyance(1e-9)).isPositive();
        assertThatThrownBy(() -> channel.area(Double.NaN)).hasMessageStartingWith("level must be finite");
        assertThatThrownBy(() -> channel.conveyance(Double.NaN)).hasMessageStartingWith("level must be finite");
        assertThatThrownBy(() -> DividedChannel.ofSurvey(new double[] {0}, new double[] {0}, new double[0]))
                .hasMessage("number of places must be at least 2, was 1");
        assertThatThrownBy(() -> DividedChannel.ofSurvey(new double[2], new double[3], new double[1]))
                .hasMessage("levels must have length 2, was 3");
        assertThatThrownBy(() -> DividedChannel.ofSurvey(new double[] {0, 2e6}, new double[2], new double[] {0.02}))
                .hasMessageStartingWith("places[1] must be in [-1000000, 1000000] m");
        assertThatThrownBy(() -> DividedChannel.ofSurvey(new double[2], new double[] {0, -2e6}, new double[] {0.02}))
                .hasMessageStartingWith("levels[1] must be in [-1000000, 1000000] m");
    }

    @Test
    void gradientsOnTheirLimits() {
        for (double inside : new double[] {1, -1, 1e-12, -1e-12, 0}) {
            assertThat(Gradient.of(inside).value()).isEqualTo(inside);
        }
        for (double outside : new double[] {Math.nextUp(1.0), -1.1, 0.9e-12, -0.9e-12}) {
            assertThatThrownBy(() -> Gradient.of(outside))
                    .hasMessageStartingWith("gradient must be 0 or of 1.0E-12 to 1 m/m, was ");
        }
        assertThatThrownBy(() -> Gradient.of(150)).hasMessageEndingWith("there are ofPercent and ofPerMille too");
        assertThatThrownBy(() -> Gradient.of(0.9e-12)).hasMessageEndingWith("was 9.0E-13");
        assertThat(Gradient.ofPercent(2).value()).isEqualTo(0.02);
        assertThat(Gradient.ofPerMille(2).value()).isEqualTo(0.002);
    }

    /** Froude numbers of the table, the middle between two, and beyond both ends; upright walls alone. */
    @Test
    void lengthsOfJumps() {
        var channel = RectangularSection.open(2);
        assertThat(JumpLength.of(channel, 1.7, 0.5)).isCloseTo(2, within(TIGHT));
        assertThat(JumpLength.of(channel, 2, 0.5)).isCloseTo(0.5 * 4.35, within(TIGHT));
        assertThat(JumpLength.of(channel, 4.5, 0.5)).isCloseTo(0.5 * 5.9, within(TIGHT));
        assertThat(JumpLength.of(channel, 10, 0.5)).isCloseTo(0.5 * 6.1, within(TIGHT));
        assertThatThrownBy(() -> JumpLength.of(channel, 1.69, 0.5))
                .hasMessage("the length of a jump is known for Froude numbers in [1.7, 10], was 1.69: it is a train of"
                        + " waves");
        assertThatThrownBy(() -> JumpLength.of(channel, 10.1, 0.5))
                .hasMessage("the length of a jump is known for Froude numbers in [1.7, 10], was 10.1");
        String upright = "the length of a jump is known for a rectangular channel only, was ";
        assertThatThrownBy(() -> JumpLength.of(TrapezoidalSection.ofBedWidthAndSideSlope(2, 0.1), 4, 0.5))
                .hasMessageStartingWith(upright);
        assertThatThrownBy(() -> JumpLength.of(CircularSection.ofDiameter(1), 4, 0.5))
                .hasMessageStartingWith(upright);
        var box = RectangularSection.box(2, 1);
        assertThat(JumpLength.of(box, 4, 0.99)).isCloseTo(0.99 * 5.8, within(TIGHT));
        assertThatThrownBy(() -> JumpLength.of(box, 4, 1)).hasMessageEndingWith(" to 1 m");
    }

    /** Borda and Carnot: (1 - A1/A2)². */
    @Test
    void lossesAtAnEnlargement() {
        LocalLoss half = LocalLoss.enlargement(1, 2);
        assertThat(half.coefficient()).isEqualTo(0.25);
        assertThat(half.head(2)).isCloseTo(0.25 * 4 / (2 * 9.80665), within(TIGHT));
        assertThat(half.head(-2)).isEqualTo(half.head(2));
        assertThat(half.item()).isEqualTo("sudden enlargement");
        assertThat(half.condition()).isEmpty();
        assertThat(half.referenceVelocity()).isEqualTo(LocalLoss.ReferenceVelocity.UPSTREAM);
        assertThat(LocalLoss.enlargement(1, 1).coefficient()).isZero();
        assertThatThrownBy(() -> LocalLoss.enlargement(1, 0.99))
                .hasMessage("downstreamArea must be at least upstreamArea, 1 m2, was 0.99");
        assertThatThrownBy(() -> LocalLoss.enlargement(0, 1)).hasMessageStartingWith("upstreamArea must be greater ");
        assertThatThrownBy(() -> half.head(Double.NaN)).hasMessageStartingWith("meanVelocity must be finite");
        assertThatThrownBy(() -> LocalLoss.of(-1)).hasMessageStartingWith("coefficient must be 0 or greater");
        assertThat(LocalLoss.of(0.5)).hasToString("LocalLoss[own: K = 0.5 on the mean velocity, own]");
        Reach reach = Reach.of(RectangularSection.open(2), slope(0.001), Manning.of(0.013), 10);
        assertThat(reach.withLoss(half).lossCoefficient()).isEqualTo(0.25);
        LocalLoss downstream = LocalLoss.published("entrance").get(0);
        assertThatThrownBy(() -> reach.withLoss(downstream))
                .hasMessageStartingWith("loss must go with the upstream or mean velocity, was LocalLoss[");
    }

    @Test
    void roughnessByHeightOfTheWall() {
        CompositeManning law = CompositeManning.ofBedAndWalls(Compounding.PAVLOVSKIJ, 0.03, 0.012)
                .above(0.3, 0.02);
        for (double wrong : new double[] {0.3, 0.2, Double.POSITIVE_INFINITY, Double.NaN}) {
            assertThatThrownBy(() -> law.above(wrong, 0.02))
                    .hasMessageStartingWith("levelAboveInvert must be greater than 0.3 m, was ");
        }
        var box = RectangularSection.box(1, 0.5);
        assertThat(law.breakDepths(box, 0.01, 9.81)).containsExactly(0.3);
        assertThat(law.breakDepths(RectangularSection.box(1, 0.3), 0.01, 9.81)).isEmpty();
        assertThat(law.n(box, 0)).isEqualTo(0.03);
        assertThat(law.n(CircularSection.ofDiameter(1), 0)).isEqualTo(0.012);
        // Pavlovskij: the root of the mean of the squares, by lengths: bed 1 m, wall 2 x 0.3 m, wall 2 x 0.1 m.
        double squares = (1 * 0.03 * 0.03 + 0.6 * 0.012 * 0.012 + 0.2 * 0.02 * 0.02) / 1.8;
        assertThat(law.n(box, 0.4)).isCloseTo(Math.sqrt(squares), within(1e-15));
        double below = (1 * 0.03 * 0.03 + 0.4 * 0.012 * 0.012) / 1.4;
        assertThat(law.n(box, 0.2)).isCloseTo(Math.sqrt(below), within(1e-15));
    }

    @Test
    void curvesOfRoughnessAreChecked() {
        double[] two = {0.2, 0.8};
        assertThat(RoughnessByDepth.of(two, new double[] {1.2, 1}).ratio(0.5)).isCloseTo(1.1, within(TIGHT));
        assertThat(RoughnessByDepth.of(two, new double[] {1.2, 1}).ratio(0.1)).isEqualTo(1.2);
        assertThatThrownBy(() -> RoughnessByDepth.of(two, new double[1])).hasMessage("ratio must have length 2, was 1");
        assertThatThrownBy(() -> RoughnessByDepth.of(new double[0], new double[0]))
                .hasMessage("number of points must be at least 1, was 0");
        assertThatThrownBy(() -> RoughnessByDepth.of(new double[] {0.2, 0.2}, new double[] {1, 1}))
                .hasMessage("fullness[1] must be greater than fullness[0] = 0.2, was 0.2");
        assertThatThrownBy(() -> RoughnessByDepth.of(new double[] {1.1}, new double[] {1}))
                .hasMessage("fullness[0] must be in [0, 1], was 1.1");
        assertThatThrownBy(() -> RoughnessByDepth.of(two, new double[] {1, 0}))
                .hasMessageStartingWith("ratio[1] must be greater than 0");
        assertThatThrownBy(() -> RoughnessByDepth.asce1970().ratio(1.01))
                .hasMessage("fullness must be in [0, 1], was 1.01");
        var law = VariableManning.of(0.013, RoughnessByDepth.asce1970());
        assertThatThrownBy(() -> law.breakDepths(RectangularSection.open(1), 0.01, 9.81))
                .hasMessageStartingWith(
                        "a roughness by fullness needs a section with a soffit, was RectangularSection[");
        assertThat(law.hashCode())
                .isNotEqualTo(
                        VariableManning.of(0.014, RoughnessByDepth.asce1970()).hashCode());
    }

    @Test
    void inletsAndChannelsSayWhatTheyAre() {
        Conduit pipe = Conduit.of(CircularSection.ofDiameter(0.3), slope(0.002), Manning.of(0.013));
        assertThat(ReservoirInlet.into(pipe).withEntranceLoss(0.5))
                .hasToString("ReservoirInlet[" + pipe + ", k = 0.5]");
        assertThat(Channels.ofDischargeAndDepth(0.5, 0.25)).hasToString("Channels[0.5 m3/s at 0.25 m]");
        Reach reach = Reach.of(pipe.withGravity(9.81), 10).withDrop(0.1).withLoss(0.5);
        assertThat(reach.toString())
                .startsWith("Reach[10 m of CircularSection[D = 0.3 m], ")
                .endsWith(", drop 0.1 m, loss K = 0.5, g = 9.81 m/s2]");
        assertThatThrownBy(() -> Reach.of(pipe, 0)).hasMessageStartingWith("length must be greater than 0");
        assertThatThrownBy(() -> reach.withDrop(Double.NaN)).hasMessageStartingWith("drop must be finite");
        assertThatThrownBy(() -> reach.withLoss(-1)).hasMessageStartingWith("lossCoefficient must be 0 or greater");
        assertThatThrownBy(() -> reach.withGravity(0)).hasMessageStartingWith("gravity must be greater than 0");
        VariedFlow flow = VariedFlow.of(reach, 0.02);
        assertThatThrownBy(() -> flow.withOutletDepth(-1)).hasMessageStartingWith("depth must be 0 or greater");
        assertThatThrownBy(() -> flow.withInletDepth(0)).hasMessageStartingWith("depth must be greater than 0");
        assertThatThrownBy(() -> flow.withOutletInvert(Double.NaN)).hasMessageStartingWith("level must be finite");
        assertThatThrownBy(() -> flow.withStep(0)).hasMessageStartingWith("step must be greater than 0");
        assertThatThrownBy(() -> VariedFlow.of(List.of(), 1))
                .hasMessage("reaches must not be empty, for a discharge of 1 m3/s");
        assertThatThrownBy(() -> VariedFlow.of(List.of(reach, reach.withGravity(9.8)), 1))
                .hasMessage("reaches must share one gravity, had 9.81 and 9.8 m/s2");
    }
}
