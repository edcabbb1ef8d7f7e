package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.BenchedChannel;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TabulatedSection;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Extremes and jumps that are known, wherever they lie. */
class TurningDepthsTest {
    private static final CrossSection CLOSED = RectangularSection.box(1, 1);
    private static final CrossSection OPEN = RectangularSection.open(1);
    private static final double G = 9.80665;

    private static List<double[]> of(DoubleUnaryOperator quantity, double... breaks) {
        return TurningDepths.of(CLOSED, breaks, quantity);
    }

    private static double[] only(List<double[]> chains) {
        assertThat(chains).hasSize(1);
        return chains.get(0);
    }

    @Test
    void aHumpAtAnyDepth() {
        for (double top = 0.011; top < 0.995; top += 0.013) {
            double at = top;
            double[] chain = only(of(y -> 2 - (y - at) * (y - at), 0, 1));
            assertThat(chain).as("%s", at).hasSize(3).startsWith(0).endsWith(1);
            // Where samples lie closer the difference of two values says less.
            double rounding = at > 0.1 && at < 0.9 ? 1e-11 : 1e-9;
            assertThat(chain[1]).isCloseTo(at, within(rounding));
            double[] valley = only(of(y -> 2 + (y - at) * (y - at), 0, 1));
            assertThat(valley).hasSize(3);
            assertThat(valley[1]).isCloseTo(at, within(rounding));
        }
        assertThat(only(of(y -> y, 0, 1))).containsExactly(0, 1);
        assertThat(only(of(y -> y * y, 0, 0.3, 1))).containsExactly(0, 1);
    }

    /** y + c √(1 − y) is largest c²/4 below the soffit, (y − ½) − c √(y − ½) least c²/4 above a corner. */
    @Test
    void anExtremeBesideAnEndThatBendsLikeARoot() {
        for (double beside = 1e-2; beside > 1e-9; beside /= 3) {
            double c = 2 * Math.sqrt(beside);
            double[] top = only(of(y -> y + c * Math.sqrt(1 - y), 0, 1));
            assertThat(top).as("%s below the soffit", beside).hasSize(3);
            assertThat(1 - top[1]).isCloseTo(beside, within(5e-13));
            double[] both = only(of(y -> 1 + (y <= 0.5 ? y - 0.5 : y - 0.5 - c * Math.sqrt(y - 0.5)), 0, 0.5, 1));
            assertThat(both).as("%s above a corner", beside).hasSize(4);
            assertThat(both[1]).isEqualTo(0.5);
            assertThat(both[2] - 0.5).isCloseTo(beside, within(5e-13));
        }
    }

    /** The soffit jumps, and the curve bends like a root towards it; above a corner the piece ends in a fall. */
    @Test
    void anExtremeBesideAnEndThatJumps() {
        for (double beside = 1e-2; beside > 1e-9; beside /= 10) {
            double c = 2 * Math.sqrt(beside);
            List<double[]> lid = of(y -> y < 1 ? 1 + y + c * Math.sqrt(1 - y) : 0.5, 0, 1);
            assertThat(lid).as("%s below the lid", beside).hasSize(2);
            assertThat(lid.get(0)).hasSize(3).endsWith(Math.nextDown(1.0));
            assertThat(1 - lid.get(0)[1]).isCloseTo(beside, within(1e-3 * beside + 1e-12));
            double[] valley = only(of(
                    y -> y <= 0.25
                            ? 25 + y
                            : y <= 0.5 ? 25 + y - c * Math.sqrt(y - 0.25) : 25.5 - c / 2 - 20 * (y - 0.5),
                    0,
                    0.25,
                    0.5,
                    1));
            assertThat(valley).hasSize(5);
            assertThat(valley[1]).isEqualTo(0.25);
            assertThat(valley[2] - 0.25).isCloseTo(beside, within(1e-3 * beside + 1e-12));
            assertThat(valley[3]).isEqualTo(0.5);
        }
    }

    /** y^p (1 − y) is largest at p/(p + 1), and no hump is alike on both sides. */
    @Test
    void aLopsidedHump() {
        for (double p : new double[] {0.7, 1, 1.5, 2, 3}) {
            double[] hump = only(of(y -> 1 + Math.pow(y, p) * (1 - y), 0, 1));
            assertThat(hump).hasSize(3);
            assertThat(hump[1]).as("%s", p).isCloseTo(p / (p + 1), within(1e-11));
            double[] hollow = only(of(y -> 7 - Math.pow(y, p) * (1 - y), 0, 1));
            assertThat(hollow[1]).as("%s", p).isCloseTo(p / (p + 1), within(1e-10));
        }
    }

    /** A level stretch is part of the rise before it: one extreme, and none where the rise goes on. */
    @Test
    void levelStretches() {
        double[] table = only(of(y -> Math.min(1.3, Math.min(1 + y, 2 - y)), 0, 1));
        assertThat(table).hasSize(3);
        assertThat(table[1]).isBetween(0.29, 0.71);
        double[] basin = only(of(y -> Math.max(1.7, Math.max(2 - y, 1 + y)), 0, 1));
        assertThat(basin).hasSize(3);
        assertThat(basin[1]).isBetween(0.29, 0.71);
        assertThat(only(of(y -> 1 + Math.min(y, 0.5), 0, 1))).containsExactly(0, 1);
        assertThat(only(of(y -> 2, 0, 1))).containsExactly(0, 1);
    }

    /** A corner that was announced is an extreme to the last bit. */
    @Test
    void anExtremeOnACorner() {
        double[] roof = only(of(y -> 1 - Math.abs(y - 0.37), 0, 0.37, 1));
        assertThat(roof).containsExactly(0, 0.37, 1);
        double[] pit = only(of(y -> 1 + Math.abs(y - 0.37), 0, 0.37, 1));
        assertThat(pit).containsExactly(0, 0.37, 1);
    }

    /** By more than a millionth it is a jump; so it is at the soffit, and above the last corner of an open section. */
    @Test
    void jumps() {
        for (double part : new double[] {0.5, 1 - 1e-5, 1 + 1e-5, 2}) {
            List<double[]> ledge = of(y -> y <= 0.5 ? y + 1 : part * (y + 1), 0, 0.5, 1);
            assertThat(ledge).hasSize(2);
            assertThat(ledge.get(0)).containsExactly(0, 0.5);
            assertThat(ledge.get(1)).containsExactly(Math.nextUp(0.5), 1);
            List<double[]> lid = of(y -> y < 1 ? y + 1 : 2 * part, 0, 1);
            assertThat(lid).hasSize(2);
            assertThat(lid.get(0)).containsExactly(0, Math.nextDown(1.0));
            assertThat(lid.get(1)).containsExactly(1);
            List<double[]> top = TurningDepths.of(OPEN, new double[] {0, 0.5}, y -> y <= 0.5 ? y + 1 : part * (y + 1));
            assertThat(top).hasSize(2);
            assertThat(top.get(0)).containsExactly(0, 0.5);
            assertThat(top.get(1)).containsExactly(Math.nextUp(0.5), Double.POSITIVE_INFINITY);
        }
        for (double scale : new double[] {1e-6, 1, 1e6}) {
            assertThat(of(y -> scale * (y <= 0.5 ? y + 1 : (1 + 1e-7) * (y + 1)), 0, 0.5, 1))
                    .hasSize(1);
            assertThat(of(y -> scale * (y <= 0.5 ? y + 1 : (1 + 1e-5) * (y + 1)), 0, 0.5, 1))
                    .hasSize(2);
        }
        // What grows without end towards the soffit does not jump there.
        assertThat(of(y -> y / Math.sqrt(1 - y), 0, 1)).hasSize(1);
    }

    /** Above its last corner an open section is looked at from a thousandth of it to a thousand times it. */
    @Test
    void openSections() {
        for (double corner : new double[] {0, 0.001, 0.5, 40}) {
            double[] breaks = corner == 0 ? new double[] {0} : new double[] {0, corner};
            double scale = corner == 0 ? 1 : corner;
            for (double above : new double[] {0.01, 0.3, 5, 200}) {
                double at = corner + above * scale;
                List<double[]> chains = TurningDepths.of(
                        OPEN, breaks, y -> 20 - Math.abs(Math.log((y + 0.1 * scale) / (at + 0.1 * scale))));
                assertThat(chains).hasSize(1);
                double[] chain = chains.get(0);
                assertThat(chain).hasSize(3).startsWith(0).endsWith(Double.POSITIVE_INFINITY);
                assertThat(chain[1]).isCloseTo(at, within(0.5 * (at - corner)));
            }
        }
    }

    /** 2 m wide up to 0.5 m and 0.4 m above: q = A √(g A/T) leaps from 2.21 to 4.95 m³/s; between them the ledge is critical. */
    @Test
    void criticalDepthsAtALedge() {
        var ledge =
                CriticalFlow.of(TabulatedSection.open(new double[] {0, 0.5, 0.5, 2}, new double[] {2, 2, 0.4, 0.4}));
        double below = Math.sqrt(G / 2);
        double above = Math.sqrt(G / 0.4);
        assertThat(ledge.discharge(0.5)).isCloseTo(below, within(1e-12));
        assertThat(ledge.discharge(Math.nextUp(0.5))).isCloseTo(above, within(1e-9));
        for (double q : new double[] {1.0001 * below, 3, 0.9999 * above}) {
            assertThat(ledge.depths(q)).containsExactly(0.5);
            assertThat(ledge.depth(q)).isEqualTo(0.5);
        }
        assertThat(ledge.depths(ledge.discharge(0.5))).containsExactly(0.5);
        assertThat(ledge.depths(ledge.discharge(Math.nextUp(0.5)))).containsExactly(Math.nextUp(0.5));
        assertThat(ledge.depths(0.9 * below)).hasSize(1);
        assertThat(ledge.depth(0.9 * below)).isLessThan(0.5);
        assertThat(ledge.depths(1.1 * above)).hasSize(1);
        assertThat(ledge.depth(1.1 * above)).isGreaterThan(0.5);
        assertThat(ledge.hashCode()).isNotEqualTo(ledge.withGravity(9.81).hashCode());
    }

    /** On the other side of the nearest critical depth, wherever one starts. */
    @Test
    void alternateAndConjugateDepthsInABenchedChannel() {
        CrossSection benched =
                BenchedChannel.ofWidthAndDepth(0.3, 0.3).withBenchSlope(0.02).inChamberOfWidth(1.5);
        SectionFlow flow = SectionFlow.of(benched, 0.11);
        double[] critical = flow.criticalDepths();
        assertThat(critical.length).isGreaterThan(1);
        for (double depth = 0.06; depth < 1; depth += 0.023) {
            double y = depth;
            double nearest = Arrays.stream(critical)
                    .boxed()
                    .min(Comparator.comparingDouble(turn -> Math.abs(turn - y)))
                    .orElseThrow();
            double other;
            try {
                other = flow.alternateDepth(y);
            } catch (NoSolutionException none) {
                continue;
            }
            assertThat(other < nearest)
                    .as("from %s over %s to %s", y, nearest, other)
                    .isEqualTo(y > nearest);
            assertThat(flow.specificEnergy(other)).isCloseTo(flow.specificEnergy(y), within(1e-11));
            for (double each : flow.depthsForEnergy(flow.specificEnergy(y))) {
                assertThat(each > Math.min(nearest, other) + 1e-9 && each < Math.max(nearest, other) - 1e-9)
                        .as("%s is nearer to %s than %s", each, nearest, other)
                        .isFalse();
            }
        }
        double least = flow.minimumEnergy();
        assertThat(flow.depthsForEnergy(least * (1 - 1e-9))).isEmpty();
        assertThat(flow.depthsForEnergy(least)).hasSizeBetween(1, 2);
        for (double turn : critical) {
            assertThat(flow.alternateDepth(turn)).isEqualTo(turn);
        }
        // Deep and shallow, by decades.
        for (double energy = 1.5 * least; energy < 1e4; energy *= 5) {
            double[] depths = flow.depthsForEnergy(energy);
            assertThat(depths).hasSize(2);
            for (double depth : depths) {
                assertThat(flow.specificEnergy(depth)).isCloseTo(energy, within(1e-12 * energy));
            }
        }
    }
}
