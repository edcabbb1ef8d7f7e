package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Inverses of channels, jumps and inlets close, whatever the sizes. */
class ChannelsProperties {
    private static double size(Random random, double from, double to) {
        return from * Math.pow(to / from, random.nextDouble());
    }

    @Property
    void theWidthOfAFlowCarriesIt(@ForAll long seed) {
        Random random = new Random(seed);
        double width = size(random, 0.2, 20);
        double depth = width * size(random, 0.05, 1);
        double slope = random.nextBoolean() ? 0 : size(random, 0.2, 3);
        Gradient gradient = Gradient.of(size(random, 1e-4, 0.02));
        LawByRadius law = random.nextBoolean() ? Manning.of(0.014) : Chezy.of(55);
        CrossSection section =
                slope == 0 ? RectangularSection.open(width) : TrapezoidalSection.ofBedWidthAndSideSlope(width, slope);
        double flow = Conduit.of(section, gradient, law).discharge(depth);
        Channels channels = Channels.ofDischargeAndDepth(flow, depth);
        Conduit found = slope == 0 ? channels.rectangular(gradient, law) : channels.trapezoidal(slope, gradient, law);
        assertThat(found.section().topWidth(0)).isCloseTo(width, within(1e-8 * width));
        assertThat(found.normalDepth(flow)).isCloseTo(depth, within(1e-9 * depth));
    }

    @Property
    void conjugateDepthsAnswerEachOther(@ForAll long seed) {
        Random random = new Random(seed);
        double size = size(random, 0.2, 5);
        boolean round = random.nextBoolean();
        CrossSection section = round ? CircularSection.ofDiameter(size) : RectangularSection.open(size);
        double critical = size * (0.1 + 0.5 * random.nextDouble());
        double flow = CriticalFlow.of(section).discharge(critical);
        SectionFlow state = SectionFlow.of(section, flow);
        double fast = critical * (0.5 + 0.48 * random.nextDouble());
        HydraulicJump jump = state.jump(fast);
        assertThat(jump.downstreamDepth()).isGreaterThan(critical);
        assertThat(jump.energyLoss()).isPositive();
        if (!jump.isFilling()) {
            double momentum = state.momentum(fast);
            assertThat(state.momentum(jump.downstreamDepth())).isCloseTo(momentum, within(1e-11 * momentum));
            assertThat(state.conjugateDepth(jump.downstreamDepth())).isCloseTo(fast, within(1e-7 * fast));
        }
        if (!round) {
            double square = jump.upstreamFroudeNumber() * jump.upstreamFroudeNumber();
            assertThat(jump.downstreamDepth() / fast)
                    .isCloseTo((Math.sqrt(1 + 8 * square) - 1) / 2, within(1e-9 * jump.downstreamDepth() / fast));
        }
    }

    /** More still water in front brings more flow, and the depth at the inlet has the head with the loss. */
    @Property(tries = 200)
    void anInletKeepsItsHead(@ForAll long seed) {
        Random random = new Random(seed);
        double width = size(random, 0.3, 4);
        double loss = random.nextDouble();
        Conduit conduit =
                Conduit.of(RectangularSection.open(width), Gradient.of(size(random, 2e-4, 0.05)), Manning.of(0.013));
        ReservoirInlet inlet = ReservoirInlet.into(conduit).withEntranceLoss(loss);
        double head = width * size(random, 0.1, 1);
        double depth = inlet.depth(head);
        double velocity = inlet.discharge(head) / (width * depth);
        assertThat(depth + (1 + loss) * velocity * velocity / (2 * Gravity.STANDARD))
                .isCloseTo(head, within(1e-9 * head));
        assertThat(inlet.discharge(head * 1.01)).isGreaterThan(inlet.discharge(head));
    }
}
