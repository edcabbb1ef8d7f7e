package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** The headwater of a culvert rises with the discharge over all its three laws, and the inverse closes. */
class CulvertInletProperties {
    private static final double LARGEST = 12;

    @Property(tries = 300)
    void risesAndComesBack(@ForAll long seed) {
        Random random = new Random(seed);
        CulvertEdge[] edges = CulvertEdge.values();
        double diameter = 0.3 * Math.pow(10, random.nextDouble());
        CulvertInlet inlet = CulvertInlet.of(CircularSection.ofDiameter(diameter), edges[random.nextInt(edges.length)])
                .withGradient(0.05 * random.nextDouble());
        // Q/(A √D) in feet, from a trickle to nearly where the formulas end
        double unit = Math.PI / 4 * diameter * diameter * Math.sqrt(diameter) * Math.sqrt(0.3048);
        double discharge = unit * (0.5 + (LARGEST - 0.6) * random.nextDouble());
        double headwater = inlet.headwater(discharge);
        assertThat(inlet.headwater(discharge * 1.005)).isGreaterThan(headwater);
        assertThat(inlet.discharge(headwater)).isCloseTo(discharge, within(1e-9 * discharge));
    }
}
