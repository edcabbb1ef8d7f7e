package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class SideWeirProperties {
    /** A short weir under a deep, slow stream: always subcritical, so that the way up and the way down must meet. */
    @Property(tries = 300)
    void theWayUpUndoesTheWayDown(
            @ForAll("share") double sill, @ForAll("share") double head, @ForAll("share") double flow) {
        double s = 0.5 + 0.2 * sill;
        double depth = s + 0.02 + 0.2 * head;
        SideWeir weir = SideWeir.ofSillAndLength(CircularSection.ofDiameter(1.2), s, 0.8)
                .withCoefficient(0.6);
        double discharge = 0.02 + 0.4 * flow;
        SideWeirProfile down = weir.fromDownstreamDepthAndDischarge(depth, discharge);
        assertThat(down.spill()).isPositive();
        assertThat(down.upstreamDepth()).isLessThan(depth);
        SideWeirProfile up = weir.fromUpstreamDepthAndDischarge(down.upstreamDepth(), down.upstreamDischarge());
        assertThat(up.downstreamDepth()).isCloseTo(depth, within(1e-11));
        assertThat(up.spill()).isCloseTo(down.spill(), within(1e-10));
        assertThat(weir.lengthFromDepthAndDischargeToSpill(depth, discharge, down.spill()))
                .isCloseTo(0.8, within(1e-9));
    }

    /** The closed form bounds the spill: no less than under the least head along the crest, no more than the greatest. */
    @Property(tries = 300)
    void theSpillLiesBetweenItsEnds(@ForAll("share") double head, @ForAll("share") double flow) {
        double depth = 0.62 + 0.3 * head;
        SideWeirProfile profile = SideWeir.ofSillAndLength(new Box(1.5), 0.6, 1)
                .withCoefficient(0.6)
                .fromDownstreamDepthAndDischarge(depth, 0.05 + 0.5 * flow);
        double factor = 0.6 * 2 / 3 * Math.sqrt(2 * 9.80665);
        assertThat(profile.spill())
                .isBetween(
                        factor * Math.pow(profile.upstreamDepth() - 0.6, 1.5) * (1 - 1e-9),
                        factor * Math.pow(depth - 0.6, 1.5) * (1 + 1e-9));
    }

    @Provide
    static Arbitrary<Double> share() {
        return Arbitraries.doubles().between(0, 1).ofScale(6);
    }
}
