package dev.runnel.hydraulics.gauging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Limits, refusals and budgets that can be worked out by hand. */
class GaugingEdgesTest {
    @Test
    void metersAtTheirLimits() {
        CurrentMeter meter = CurrentMeter.ofPitch(0.25).from(2, CurrentMeter.ofPitch(0.26));
        assertThat(meter.velocity(2)).isEqualTo(0.52);
        assertThat(meter.velocity(1.999)).isCloseTo(0.49975, within(1e-15));
        assertThat(meter.velocity(1000)).isEqualTo(260);
        assertThat(meter.velocityOfRevolutionsAndSeconds(3600, 3600)).isEqualTo(0.25);
        assertThat(meter)
                .isEqualTo(CurrentMeter.ofPitch(0.25).from(2, CurrentMeter.ofPitch(0.26)))
                .isNotEqualTo(CurrentMeter.ofPitch(0.25))
                .hasSameHashCodeAs(CurrentMeter.ofPitch(0.25).from(2, CurrentMeter.ofPitch(0.26)));
        assertThat(meter.hashCode()).isNotEqualTo(CurrentMeter.ofPitch(0.25).hashCode());
        assertThat(CurrentMeter.ofPitch(10).withStartUp(-1).velocity(1)).isEqualTo(9);
        assertThatThrownBy(() -> CurrentMeter.ofPitch(0))
                .hasMessage("pitch must be greater than 0 and at most 10 m, was 0");
        assertThatThrownBy(() -> CurrentMeter.ofPitch(10.1))
                .hasMessage("pitch must be greater than 0 and at most 10 m, was 10.1");
        assertThatThrownBy(() -> meter.withStartUp(1.1)).hasMessage("velocity must be in [-1, 1] m/s, was 1.1");
        assertThatThrownBy(() -> meter.from(2, CurrentMeter.ofPitch(1)))
                .hasMessage("revolutionsPerSecond must be above 2 and at most 1000 1/s, was 2");
        assertThat(meter.from(1000, CurrentMeter.ofPitch(1)).velocity(1000)).isEqualTo(1000);
        assertThatThrownBy(() -> meter.from(1000.1, CurrentMeter.ofPitch(1)))
                .hasMessageStartingWith("revolutionsPerSecond must be above 2");
        assertThatThrownBy(() -> CurrentMeter.ofPitch(1).from(1, meter))
                .hasMessageStartingWith("meter must have one range, was CurrentMeter[");
        assertThatThrownBy(() -> meter.velocity(1000.1))
                .hasMessage("revolutionsPerSecond must be in [0, 1000] 1/s, was 1000.1");
        assertThatThrownBy(() -> meter.velocityOfRevolutionsAndSeconds(-1, 10))
                .hasMessageStartingWith("revolutions must be ");
        assertThatThrownBy(() -> meter.velocityOfRevolutionsAndSeconds(1, 3600.1))
                .hasMessage("seconds must be greater than 0 and at most 3600 s, was 3600.1");
    }

    /** One strip, two points: 0.5 % of width and depth, 3.5 % of the profile, (0.5² + e²)/2 % of the meter and the time. */
    @Test
    void aBudgetByHand() {
        GaugedDischarge gauged = new GaugedDischarge("mid-section", List.of(new Strip(2, 1, -0.5, 0.035, 2)), 20);
        GaugingBudget budget = gauged.budget();
        assertThat(budget.ofVerticals()).isCloseTo(0.025, within(1e-15));
        assertThat(budget.ofStrips()).isCloseTo(ofOneStrip(0.005, 0.005, 0.03), within(1e-12));
        assertThat(budget.withExposure(30).ofStrips()).isCloseTo(ofOneStrip(0.005, 0.005, 0.04), within(1e-12));
        assertThat(budget.withExposure(45).ofStrips()).isCloseTo(ofOneStrip(0.005, 0.005, 0.035), within(1e-12));
        assertThat(budget.withExposure(120).ofStrips()).isCloseTo(ofOneStrip(0.005, 0.005, 0.02), within(1e-12));
        assertThat(budget.withWidth(0.04).ofStrips()).isCloseTo(ofOneStrip(0.04, 0.005, 0.03), within(1e-12));
        assertThat(budget.withDepth(0.03).ofStrips()).isCloseTo(ofOneStrip(0.005, 0.03, 0.03), within(1e-12));
        double strips = budget.ofStrips();
        assertThat(budget.standard()).isCloseTo(Math.sqrt(0.025 * 0.025 + 1e-4 + strips * strips), within(1e-12));
        assertThat(budget.withSystematic(0.02).standard())
                .isCloseTo(Math.sqrt(0.025 * 0.025 + 4e-4 + strips * strips), within(1e-12));
        assertThat(budget).hasToString("GaugingBudget[U 9.9 % (k = 2): verticals 2.5 %, strips 4.2 %, systematic 1 %]");
        assertThatThrownBy(() -> budget.withExposure(9)).hasMessage("seconds must be in [10, 3600] s, was 9");
        assertThatThrownBy(() -> budget.withWidth(0.6)).hasMessage("newWidth must be in [0, 0.5], was 0.6");
        assertThatThrownBy(() -> budget.withDepth(-0.1)).hasMessage("newDepth must be in [0, 0.5], was -0.1");
        assertThatThrownBy(() -> budget.withSystematic(0.6)).hasMessage("newSystematic must be in [0, 0.5], was 0.6");
        GaugedDischarge still = new GaugedDischarge("mid-section", List.of(new Strip(2, 1, 0, 0.035, 2)), 20);
        assertThatThrownBy(still::budget).hasMessage("discharge of the gauging must not be 0 m3/s");
    }

    private static double ofOneStrip(double width, double depth, double exposure) {
        return Math.sqrt(width * width + depth * depth + 0.035 * 0.035 + (0.005 * 0.005 + exposure * exposure) / 2);
    }

    @Test
    void sharesAndFactors() {
        GaugedDischarge gauged =
                new GaugedDischarge("mid-section", List.of(new Strip(1, 1, 0.2, 0, 1), new Strip(2, 1, 0.3, 0, 1)), 2);
        assertThat(gauged.greatestShare()).isCloseTo(0.75, within(1e-15));
        assertThat(gauged.factorFor(-0.5)).isCloseTo(-0.8 / 3 / 0.5, within(1e-15));
        for (double wrong : new double[] {0, Double.POSITIVE_INFINITY, Double.NaN}) {
            assertThatThrownBy(() -> gauged.factorFor(wrong))
                    .hasMessageStartingWith("read must be a velocity other than 0 m/s, was ");
        }
        assertThat(gauged.strips().get(1)).hasToString("Strip[2 m × 1 m, 0.3 m/s, 0.6 m3/s]");
        assertThat(Vertical.of(3, 1.2, PointRule.ONE, 0.5)).hasToString("Vertical[3 m: depth 1.2 m, 0.5 m/s]");
        assertThat(WaterEdge.wall(4, 0.5)).hasToString("WaterEdge[4 m, depth 0.5 m]");
        assertThat(WaterEdge.wall(4, 0.5).velocityRatio()).isEqualTo(0.91);
    }

    /** A mean-section strip has the worse rule of its two verticals and the fewer points. */
    @Test
    void stripsBetweenVerticals() {
        Vertical one = Vertical.of(1, 0.8, PointRule.ONE, 0.5);
        Vertical two = Vertical.of(3, 1.2, PointRule.TWO, 0.8, 0.4);
        VelocityAreaGauging gauging = VelocityAreaGauging.of(
                WaterEdge.wall(0, 0.4).withVelocityRatio(0.5), List.of(one, two), WaterEdge.bank(4));
        List<Strip> strips = gauging.meanSection().strips();
        assertThat(strips).extracting(Strip::velocityUncertainty).containsExactly(0.075, 0.075, 0.035);
        assertThat(strips).extracting(Strip::points).containsExactly(1, 1, 2);
        assertThat(strips.get(0).velocity()).isCloseTo(0.375, within(1e-15));
        assertThat(strips.get(0).depth()).isCloseTo(0.6, within(1e-15));
        assertThat(strips.get(2).velocity()).isCloseTo(0.3, within(1e-15));
        assertThat(strips.get(2).depth()).isCloseTo(0.6, within(1e-15));
        Strip wall = gauging.midSection().strips().get(0);
        assertThat(wall.width()).isEqualTo(0.5);
        assertThat(wall.velocity()).isEqualTo(0.25);
        assertThat(wall.velocityUncertainty()).isEqualTo(0.075);
        assertThat(wall.points()).isEqualTo(1);
        assertThat(gauging.midSection().strips()).hasSize(3);
        assertThat(gauging).hasToString("VelocityAreaGauging[2 verticals from 0 to 4 m]");
        assertThatThrownBy(() -> VelocityAreaGauging.of(WaterEdge.bank(1), List.of(one), WaterEdge.bank(4)))
                .hasMessage("distance of vertical 0 must be above 1 m, was 1");
        assertThatThrownBy(() -> VelocityAreaGauging.of(WaterEdge.bank(0), List.of(one), WaterEdge.bank(1)))
                .hasMessage("distance of the far edge must be above 1 m, was 1");
        assertThatThrownBy(() -> VelocityAreaGauging.of(WaterEdge.bank(0), List.of(), WaterEdge.bank(1)))
                .hasMessageStartingWith("count of verticals must be in [1, ");
        assertThatThrownBy(() -> VelocityAreaGauging.of(WaterEdge.bank(0), List.of(one), WaterEdge.bank(4))
                        .midSectionWithTriangles())
                .hasMessage("count of verticals must be at least 2, was 1");
    }

    /** End panels (outer + inner/2)²/(2 outer): outer 1 and inner 2 give 2 m, outer 1.5 and inner 3 give 3 m. */
    @Test
    void triangularEndPanels() {
        List<Vertical> verticals = List.of(
                Vertical.of(1, 1, PointRule.ONE, 0.5),
                Vertical.of(3, 1, PointRule.ONE, 0.5),
                Vertical.of(6, 1, PointRule.ONE, 0.5));
        assertThat(VelocityAreaGauging.of(WaterEdge.bank(0), verticals, WaterEdge.bank(7.5))
                        .midSectionWithTriangles()
                        .strips())
                .extracting(Strip::width)
                .containsExactly(2.0, 2.5, 3.0);
        assertThat(VelocityAreaGauging.of(WaterEdge.bank(0), verticals.subList(0, 2), WaterEdge.bank(4))
                        .midSectionWithTriangles()
                        .strips())
                .extracting(Strip::width)
                .containsExactly(2.0, 2.0);
    }

    @Test
    void lawsByHand() {
        LogLaw log = LogLaw.ofFriction(0.02);
        assertThat(log.meanToPoint(0.5)).isCloseTo(1 / (1 + 0.05 / 0.41 * (1 + Math.log(0.5))), within(1e-12));
        assertThat(log)
                .isEqualTo(LogLaw.ofFriction(0.02))
                .isNotEqualTo(LogLaw.ofFriction(0.03))
                .hasSameHashCodeAs(LogLaw.ofFriction(0.02))
                .hasToString("LogLaw[u* = 0.05 V]");
        assertThat(log.hashCode()).isNotEqualTo(LogLaw.ofFriction(0.03).hashCode());
        assertThatThrownBy(() -> log.meanToPoint(0.009)).hasMessage("height must be in [0.01, 1], was 0.009");
        PowerLaw power = PowerLaw.of(7);
        assertThat(power.atCentre().standardUncertainty()).isCloseTo((128.0 / 153 - 72.0 / 91) / 2, within(1e-12));
        assertThat(power.atPoint(0.2).standardUncertainty())
                .isCloseTo(
                        Math.abs(8.0 / 9 / Math.pow(0.2, 1.0 / 8) - 6.0 / 7 / Math.pow(0.2, 1.0 / 6)) / 2,
                        within(1e-12));
        assertThat(power.atPoint(0.2).factor()).isCloseTo(0.875 / Math.pow(0.2, 1.0 / 7), within(1e-12));
        assertThat(power.atCentre().source()).isEqualTo("power law 1/7");
        assertThat(PowerLaw.throughHeightsAndVelocities(0.1, 0.8, 0.5, 1).m()).isCloseTo(3, within(1e-12));
        assertThat(power.meanToPoint(1)).isEqualTo(0.875);
        assertThat(power)
                .isEqualTo(PowerLaw.of(7))
                .isNotEqualTo(PowerLaw.of(8))
                .hasSameHashCodeAs(PowerLaw.of(7))
                .hasToString("PowerLaw[1/7]");
        assertThat(power.hashCode()).isNotEqualTo(PowerLaw.of(8).hashCode());
        for (double wrong : new double[] {0, 1.01}) {
            assertThatThrownBy(() -> power.meanToPoint(wrong))
                    .hasMessageStartingWith("height must be greater than 0 and at most 1, was ");
        }
        assertThatThrownBy(() -> PowerLaw.of(1.9)).hasMessage("m must be in [2, 20], was 1.9");
        assertThatThrownBy(() -> PowerLaw.ofReynolds(3e3)).hasMessageStartingWith("reynolds must be in ");
        assertThatThrownBy(() -> PowerLaw.throughHeightsAndVelocities(0.1, 0.1, 1, 2))
                .hasMessageStartingWith("upperHeight and upperVelocity must be above the lower ones, were 0.1 m and 2");
        assertThatThrownBy(() -> PowerLaw.throughHeightsAndVelocities(0.1, 0.2, 1, 1))
                .hasMessageStartingWith("upperHeight and upperVelocity must be above the lower ones");
        assertThatThrownBy(() -> PowerLaw.throughHeightsAndVelocities(0, 0.2, 1, 2))
                .hasMessageStartingWith("lowerHeight must be ");
        assertThatThrownBy(() -> PowerLaw.throughHeightsAndVelocities(0.1, 0.2, 0, 2))
                .hasMessageStartingWith("lowerVelocity must be ");
    }

    @Test
    void traversesRefuse() {
        CircularSection pipe = CircularSection.ofDiameter(0.6);
        SectionTraverse traverse = SectionTraverse.of(pipe, 0.6);
        assertThat(traverse.toString()).startsWith("SectionTraverse[Circular").endsWith(" at 0.6 m]");
        for (double wrong : new double[] {0, 0.61, Double.NaN}) {
            assertThatThrownBy(() -> SectionTraverse.of(pipe, wrong))
                    .hasMessageStartingWith("depth must be greater than 0 and at most the height of the section 0.6 m");
        }
        assertThatThrownBy(() -> traverse.withWidthFactor(0.4))
                .hasMessage("newWidthFactor must be in [0.5, 1.2], was 0.4");
        assertThatThrownBy(() -> traverse.mean(new double[] {0.2, 0.2}, new double[] {1, 1}))
                .hasMessage("heights[1] must be above 0.2 m and at most the depth 0.6 m, was 0.2");
        assertThatThrownBy(() -> traverse.mean(new double[] {0}, new double[] {1}))
                .hasMessageStartingWith("heights[0] must be above 0 m");
        assertThatThrownBy(() -> traverse.mean(new double[] {0.6}, new double[] {20.1}))
                .hasMessage("velocities[0] must be in [-20, 20] m/s, was 20.1");
        assertThatThrownBy(() -> traverse.mean(new double[0], new double[0]))
                .hasMessage("count of points must be at least 1, was 0");
        assertThatThrownBy(() -> traverse.mean(new double[] {0.1}, new double[2]))
                .hasMessage("velocities must have length 1, was 2");
        assertThatThrownBy(() -> traverse.meanToGreatest(new double[] {0.3}, new double[] {0}))
                .hasMessage("velocities must have one above 0 m/s, was 0");
    }

    @Test
    void indexVelocitiesInAnyOrder() {
        IndexVelocity fit = IndexVelocity.fitted(new double[] {0.6, 0.2, 1, 0.4}, new double[] {0.5, 0.1, 0.9, 0.3});
        assertThat(fit.toString()).startsWith("IndexVelocity[V = -0.1 + 1 Vi, 0.2 to 1 m/s, residual ");
        assertThat(fit.mean(0.2)).isCloseTo(0.1, within(1e-12));
        assertThat(fit.mean(1)).isCloseTo(0.9, within(1e-12));
        assertThatThrownBy(() -> fit.uncertainty(0.1)).hasMessage("index must be in [0.2, 1] m/s, was 0.1");
        assertThatThrownBy(() -> fit.factorAt(0)).hasMessageStartingWith("index must be greater than 0");
        IndexVelocity rough = IndexVelocity.fitted(new double[] {-1, -1, 1, 1}, new double[] {0, 2, 4, 6});
        // s² = 2: of the line at 1 s²(1/4 + 1/4), of a reading s² more
        assertThat(rough.uncertainty(1)).isCloseTo(Math.sqrt(3), within(1e-12));
        assertThatThrownBy(() -> IndexVelocity.fitted(new double[] {1, 2, 21}, new double[] {1, 2, 3}))
                .hasMessage("index[2] must be in [-20, 20] m/s, was 21");
        assertThatThrownBy(() -> IndexVelocity.fitted(new double[] {1, 2, 3}, new double[] {1, 2, -21}))
                .hasMessage("mean[2] must be in [-20, 20] m/s, was -21");
        IndexVelocity slow = IndexVelocity.fitted(new double[] {0.5, 0.5, 1.5, 1.5}, new double[] {0.4, 0.6, 1.3, 1.5});
        // s² = 0.02, Σ(x − 1)² = 1: at 2/2 = 1 of the line s²/4
        assertThat(slow.factorAt(1).standardUncertainty()).isCloseTo(Math.sqrt(0.005), within(1e-12));
        assertThat(slow.factorAt(0.5).standardUncertainty()).isCloseTo(Math.sqrt(0.01) / 0.5, within(1e-12));
    }

    private static final String HEADER = "distance_m,depth_m,relative_depth,velocity_m_per_s,revolutions,seconds\n";

    private static void refuses(String rows, String message) {
        assertThatThrownBy(() -> GaugingSheet.parse(HEADER + rows))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith(message);
    }

    @Test
    void sheetsAreRefusedByTheirLine() {
        refuses("0,0\n1,1,,0.5\n1,1.1,0.8,0.5\n2,0", "line 4: depth_m must be that of line 3, 1, was 1.1");
        refuses("0,0\n1,1,0.6,0.5\n1,1,,0.5\n2,0", "line 4: relative_depth must differ from those before, was 0.6");
        refuses("0,0,,0.1\n1,1,,0.5\n2,0", "line 2: the first and the last row are the edges of the water");
        refuses("0,0\n1,1,,0.5\n2,0,,0.1", "line 4: the first and the last row are the edges of the water");
        refuses("0,0\n2,0", "a sheet must have an edge, at least one point and an edge, was 2 rows");
        refuses("0,0\n1,Infinity,,0.5\n2,0", "line 3, column 2: depth_m must be a number, was \"Infinity\"");
        refuses("0,0\n,1,,0.5\n2,0", "line 3, column 1: distance_m must be a number, was \"\"");
        refuses("0,0\n1,1,,25\n2,0", "line 3: velocity at 0.6 of the depth must be in [-20, 20] m/s, was 25");
        refuses("0,0\n1,1,,,10,0\n2,0", "line 3: a point between the edges must have a velocity");
        refuses("0,0\n1,1,,,10,\n2,0", "line 3: a point between the edges must have a velocity");
        refuses("0,0\n1,1,,,,10\n2,0", "line 3: a point between the edges must have a velocity");
        assertThatThrownBy(() -> GaugingSheet.parse("# no depth\ndistance_m,velocity_m_per_s\n"))
                .hasMessage("line 2: column depth_m must be there");
    }

    /** Edges that stand still, a wall before and a bank behind, points of a rule that are rounded in the tenth digit. */
    @Test
    void sheetsAreReadAsWritten() {
        VelocityAreaGauging gauging = GaugingSheet.parse(HEADER + "0,0.5,,0\n1,1,0.2,0.5\n1,1,0.8000000001,0.3\n2,0\n");
        assertThat(gauging.verticals().get(0)).isEqualTo(Vertical.of(1, 1, PointRule.TWO, 0.5, 0.3));
        assertThat(gauging.midSection().strips()).hasSize(2);
        assertThat(gauging.midSection().strips().get(0).depth()).isEqualTo(0.5);
        assertThatThrownBy(() -> GaugingSheet.parse(HEADER + "0,0\n1,1,0.2,0.5\n1,1,0.81,0.3\n2,0\n"))
                .hasMessageStartingWith("line 3: relative_depth must be the points of a rule");
        // counted turns count before a velocity that is written beside them
        assertThat(GaugingSheet.parse(HEADER + "0,0\n1,1,,9,10,5\n2,0\n", CurrentMeter.ofPitch(0.25))
                        .verticals()
                        .get(0)
                        .velocity())
                .isEqualTo(0.5);
    }
}
