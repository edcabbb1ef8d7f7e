package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.BenchedChannel;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TabulatedSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How many depths have an energy or a momentum: at the least one to the last bit, at corners, at the soffit, and far away. */
class EnergyBranchesTest {
    private static final double G = 9.80665;
    private static final CrossSection BENCHED =
            TabulatedSection.open(new double[] {0, 0.5, 0.5, 3}, new double[] {1, 1, 1.3, 1.3});

    /** A critical depth is not exact: by a rounding below its energy it is the one depth, by one above there are one or two. */
    @Test
    void aroundTheLeast() {
        for (CrossSection section : List.of(
                RectangularSection.open(2),
                CircularSection.ofDiameter(0.6),
                TrapezoidalSection.ofBedWidthAndSideSlope(0.4, 1.5),
                BENCHED)) {
            for (double q : new double[] {0.01, 0.05, 0.2, 0.4}) {
                SectionFlow flow = SectionFlow.of(section, q);
                double critical = flow.criticalDepth();
                double energy = flow.specificEnergy(critical);
                double momentum = flow.momentum(critical);
                for (int k = 0; k < 30; k++) {
                    double[] depths = flow.depthsForEnergy(energy + k * Math.ulp(energy));
                    assertThat(depths).isSorted().doesNotHaveDuplicates().hasSizeBetween(1, 2);
                    assertThat(depths[0]).isCloseTo(critical, within(1e-6 * critical));
                    depths = flow.depthsForMomentum(momentum + k * Math.ulp(momentum));
                    assertThat(depths).isSorted().doesNotHaveDuplicates().hasSizeBetween(1, 2);
                    assertThat(depths[0]).isCloseTo(critical, within(1e-6 * critical));
                }
                for (int k = 2; k < 20; k++) {
                    assertThat(flow.depthsForEnergy(energy - k * Math.ulp(energy)))
                            .containsExactly(critical);
                    assertThat(flow.depthsForMomentum(momentum - k * Math.ulp(momentum)))
                            .containsExactly(critical);
                }
                assertThat(flow.depthsForEnergy(energy * (1 - 1e-12))).isEmpty();
                assertThat(flow.depthsForEnergy(energy * (1 + 1e-9))).hasSize(2);
                assertThat(flow.depthsForMomentum(momentum * (1 - 1e-12))).isEmpty();
            }
        }
    }

    /** Each of several critical depths is the one answer beside it, whatever else has its energy. */
    @Test
    void aroundEachTurnOfABenchedChannel() {
        CrossSection benched =
                BenchedChannel.ofWidthAndDepth(0.3, 0.3).withBenchSlope(0.02).inChamberOfWidth(1.5);
        SectionFlow flow = SectionFlow.of(benched, 0.11);
        double[] critical = flow.criticalDepths();
        assertThat(critical).hasSize(3);
        for (double turn : critical) {
            double energy = flow.specificEnergy(turn);
            for (int k = -8; k <= 8; k++) {
                double[] depths = flow.depthsForEnergy(energy + k * Math.ulp(energy));
                assertThat(depths).isSorted().doesNotHaveDuplicates();
                long beside = Arrays.stream(depths)
                        .filter(depth -> Math.abs(depth - turn) < 1e-6 * turn)
                        .count();
                assertThat(beside).as("%s and %s ulp", turn, k).isBetween(1L, 2L);
            }
        }
    }

    /** The energy of a corner belongs to it from both sides; it is named once. */
    @Test
    void atACorner() {
        for (double q : new double[] {0.3, 1.5}) {
            SectionFlow flow = SectionFlow.of(BENCHED, q);
            boolean fast = 0.5 < flow.criticalDepth();
            double[] depths = flow.depthsForEnergy(flow.specificEnergy(0.5));
            assertThat(depths).hasSize(2);
            assertThat(depths[fast ? 0 : 1]).isEqualTo(0.5);
            assertThat(flow.alternateDepth(0.5)).isEqualTo(depths[fast ? 1 : 0]);
            depths = flow.depthsForMomentum(flow.momentum(0.5));
            assertThat(depths).hasSize(2);
            assertThat(depths[fast ? 0 : 1]).isEqualTo(0.5);
            assertThat(flow.conjugateDepth(0.5)).isEqualTo(depths[fast ? 1 : 0]);
        }
    }

    /** 1 m by 1 m: slow depths end at the soffit, included. */
    @Test
    void atTheSoffit() {
        SectionFlow flow = SectionFlow.of(RectangularSection.box(1, 1), 1);
        double energy = 1 + 1 / (2 * G);
        assertThat(flow.specificEnergy(1)).isCloseTo(energy, within(1e-15));
        assertThat(flow.depthsForEnergy(flow.specificEnergy(1))).hasSize(2).endsWith(1);
        assertThat(flow.depthsForEnergy(1.0001 * energy)).hasSize(1);
        assertThat(flow.depthsForEnergy(0.9999 * energy)).hasSize(2);
        // Above it the pressure of the whole area rises with the level.
        assertThat(flow.momentumAt(1.5)).isCloseTo(1 / G + 0.5 + 0.5, within(1e-15));
        // All free surfaces are fast: there is no other depth of the same energy, and the jump fills the box.
        SectionFlow full = SectionFlow.of(RectangularSection.box(1, 1), 5);
        assertThat(full.criticalDepths()).isEmpty();
        assertThat(full.depthsForEnergy(full.specificEnergy(0.7))).hasSize(1);
        assertThat(full.depthsForEnergy(0.99 * full.specificEnergy(1))).isEmpty();
        assertThatThrownBy(() -> full.alternateDepth(0.5))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageStartingWith(
                        "a depth of 0.5 m has no alternate depth below the soffit for SectionFlow[5 m3/s");
        double before = 25 / (G * 0.5) + 0.125;
        double fullMomentum = 25 / G + 0.5;
        assertThat(full.conjugateDepth(0.5)).isCloseTo(1 + before - fullMomentum, within(1e-12));
    }

    /** From a film to a sea: both depths of many energies, in a channel of any size. */
    @Test
    void farFromTheLeast() {
        for (double width : new double[] {0.01, 1, 5, 500}) {
            double unit = width * Math.sqrt(G * width * width * width);
            SectionFlow flow = SectionFlow.of(RectangularSection.open(width), 4 * unit);
            double critical = width * Math.cbrt(16);
            assertThat(flow.criticalDepth()).isCloseTo(critical, within(1e-12 * critical));
            for (double part = 1.01; part < 1e6; part *= 3) {
                double energy = part * 1.5 * critical;
                double[] depths = flow.depthsForEnergy(energy);
                assertThat(depths).hasSize(2);
                assertThat(depths[0]).isLessThan(critical);
                assertThat(depths[1]).isGreaterThan(critical);
                for (double depth : depths) {
                    double v = 4 * unit / (width * depth);
                    assertThat(depth + v * v / (2 * G)).isCloseTo(energy, within(1e-12 * energy));
                }
                assertThat(flow.alternateDepth(depths[0])).isCloseTo(depths[1], within(1e-12 * energy));
            }
        }
    }
}
