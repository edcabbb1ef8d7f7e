package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.section.RandomWalls;
import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CriticalFlowProperties {
    @Provide
    Arbitrary<ClosedSection> sections() {
        return RandomWalls.closed();
    }

    @Provide
    Arbitrary<Double> parts() {
        return Arbitraries.doubles().between(0.001, 1).ofScale(9);
    }

    /** At any depth, and at every corner of the wall up to a level soffit, the critical discharge has a critical depth. */
    @Property(tries = 20_000)
    void everyCriticalDischargeHasItsDepth(@ForAll("sections") ClosedSection section, @ForAll("parts") double part) {
        givesBack(section, part * section.height());
    }

    /** Seeds of which one has a slight bend and the others a neck in which an ulp of the depth is 1e-12 of the discharge. */
    @ParameterizedTest
    @ValueSource(longs = {2164949283739207914L, 2387006761945935898L, -8912612900407649595L})
    void slightBendsAndNecksToo(long seed) {
        ClosedSection section = RandomWalls.closed(seed).orElseThrow();
        givesBack(section, section.height());
    }

    /** A foot between two arcs so narrow that 1e-17 of the place of a wall would be 1e-11 of the width. */
    @Test
    void narrowFeetToo() {
        givesBack(RandomWalls.closed(-4923067026185540678L).orElseThrow(), 0.0011242647483185864);
    }

    /**
     * Crests so close to a corner of the wall that no usual sample lies beyond: 0.05 mm under the soffit, and 0.1 and 0.05 mm
     * over a neck. Around each the discharge falls to both sides.
     */
    @ParameterizedTest
    @CsvSource({
        "4714482115296531166, 0.9164670765325827, -0.00005",
        "4046340446655599281, 1.3521275764660527, 0.00009",
        "-2395029968734048328, 1.4239082115525148, 0.00005"
    })
    void crestsNextToACornerToo(long seed, double corner, double away) {
        ClosedSection section = RandomWalls.closed(seed).orElseThrow();
        CriticalFlow critical = CriticalFlow.of(section);
        double near = critical.discharge(corner + away);
        assertThat(near).isGreaterThan(critical.discharge(corner)).isGreaterThan(critical.discharge(corner + 8 * away));
        assertThat(critical.depths(near)).hasSize(2);
        for (double part = 1e-12; part < 100; part *= 3) {
            double depth = corner + part * away;
            if (depth <= section.height()) {
                givesBack(section, depth);
            }
        }
    }

    private static void givesBack(ClosedSection section, double anotherDepth) {
        CriticalFlow critical = CriticalFlow.of(section);
        double[] depths = Arrays.copyOf(section.breakDepths(), section.breakDepths().length + 1);
        depths[depths.length - 1] = anotherDepth;
        for (double depth : depths) {
            double discharge = critical.discharge(depth);
            if (Double.isInfinite(discharge)) {
                continue;
            }
            double found = critical.depth(discharge);
            boolean atLedge = critical.discharge(found) < discharge
                    && found < section.height()
                    && discharge < critical.discharge(Math.nextUp(found))
                    && Arrays.binarySearch(section.breakDepths(), found) > 0;
            if (atLedge) {
                continue;
            }
            // In a neck the discharge changes by more than 1e-12 from one double depth to the next.
            double ulps = 2 * Math.abs(critical.discharge(Math.nextDown(found)) - critical.discharge(found));
            assertThat(critical.discharge(found)).isCloseTo(discharge, within(1e-12 * discharge + ulps));
        }
    }
}
