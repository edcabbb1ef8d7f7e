package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Pipes;
import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.section.Shapes;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class VelocityRatioProperties {
    @Property(tries = 2000)
    void conduitsOwnVelocityGivesRatioOne(@ForAll("conduits") Conduit conduit, @ForAll("parts") double part) {
        double depth = Shapes.depth(conduit.section(), part);
        // Over a bed the level is the depth and the bed, and the depth again their difference: an ulp of the height.
        assertThat(VelocityRatioTest.ratio(PipeMonitor.of(conduit), depth, conduit.velocity(depth)))
                .isCloseTo(1, within(1e-12));
    }

    /** The bed told to the monitor, against a conduit with the same bed in its section. */
    @Property(tries = 1000)
    void bedOfTheMonitorIsTheBedOfTheConduit(
            @ForAll("closed") Conduit conduit, @ForAll("parts") double bedPart, @ForAll("parts") double part) {
        ClosedSection section = ((ClosedSection) conduit.section()).withoutSediment();
        Conduit clean = conduit.withSection(section);
        double bed = 0.8 * bedPart * section.height();
        Conduit silted = clean.withSection(section.withSediment(bed));
        double depth = part * silted.section().height();
        double level = bed + depth;
        // The monitor knows the depth above the bed only as the difference of two levels.
        assertThat(VelocityRatioTest.ratio(PipeMonitor.of(clean).withSediment(bed), level, silted.velocity(depth)))
                .isCloseTo(1, within(1e-11));
    }

    @Provide
    Arbitrary<Conduit> conduits() {
        return Arbitraries.oneOf(closed(), Pipes.of(Shapes.open()));
    }

    @Provide
    Arbitrary<Conduit> closed() {
        Arbitrary<Conduit> plain = Pipes.of(Shapes.closed());
        return Arbitraries.oneOf(
                plain, Combinators.combine(plain, Pipes.depthLaws()).as(Conduit::withResistance));
    }

    @Provide
    Arbitrary<Double> parts() {
        return Pipes.logUniform(1e-3, 1);
    }
}
