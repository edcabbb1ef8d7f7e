package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.Shapes;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class SectionFlowProperties {
    @Provide
    Arbitrary<CrossSection> sections() {
        return Shapes.all();
    }

    @Provide
    Arbitrary<Double> parts() {
        return Arbitraries.doubles().between(0.001, 0.98).ofScale(9);
    }

    /** The flow that is critical at a part of the height (or that many metres), looked at from another depth. */
    private static SectionFlow flow(CrossSection section, double part) {
        double depth = part * Math.min(section.height(), 5);
        double area = section.area(depth);
        return SectionFlow.of(section, area * Math.sqrt(Gravity.STANDARD * area / section.topWidth(depth)));
    }

    @Property(tries = 2000)
    void energyAndMomentumCloseOnEveryBranch(
            @ForAll("sections") CrossSection section, @ForAll("parts") double critical, @ForAll("parts") double part) {
        SectionFlow flow = flow(section, critical);
        double depth = part * Math.min(section.height(), 5);
        double energy = flow.specificEnergy(depth);
        double[] depths = flow.depthsForEnergy(energy);
        assertThat(depths).isNotEmpty().isSorted();
        assertThat(nearest(depths, depth) / depth - 1).isCloseTo(0, within(1e-5));
        for (double found : depths) {
            assertThat(flow.specificEnergy(found)).isCloseTo(energy, within(1e-12 * energy));
        }
        double momentum = flow.momentum(depth);
        double[] conjugates = flow.depthsForMomentum(momentum);
        assertThat(conjugates).isNotEmpty();
        for (double found : conjugates) {
            assertThat(flow.momentum(found)).isCloseTo(momentum, within(1e-12 * momentum));
        }
    }

    private static double nearest(double[] depths, double depth) {
        double nearest = depths[0];
        for (double candidate : depths) {
            nearest = Math.abs(candidate - depth) < Math.abs(nearest - depth) ? candidate : nearest;
        }
        return nearest;
    }

    @Property(tries = 2000)
    void jumpsLoseEnergyAndKeepMomentum(
            @ForAll("sections") CrossSection section, @ForAll("parts") double critical, @ForAll("parts") double part) {
        SectionFlow flow = flow(section, critical);
        double depth = part * Math.min(flow.criticalDepths()[0], 5);
        Assume.that(flow.froudeNumber(depth) > 1);
        HydraulicJump jump = flow.jump(depth);
        assertThat(jump.downstreamDepth()).isGreaterThanOrEqualTo(depth);
        double before = flow.momentum(depth);
        assertThat(flow.momentumAt(jump.downstreamDepth())).isCloseTo(before, within(1e-12 * before));
        assertThat(flow.energyAt(depth) - flow.energyAt(jump.downstreamDepth()))
                .isGreaterThan(-1e-12 * flow.energyAt(depth));
    }

    @Property(tries = 1000)
    void energyAndMomentumAreLeastAtTheCriticalDepth(
            @ForAll("sections") CrossSection section, @ForAll("parts") double critical) {
        SectionFlow flow = flow(section, critical);
        double least = flow.minimumEnergy();
        for (double x = 0.01; x < 1; x += 0.01) {
            double depth = x * Math.min(section.height(), 10);
            assertThat(flow.specificEnergy(depth)).isGreaterThanOrEqualTo(least * (1 - 1e-14));
        }
    }
}
