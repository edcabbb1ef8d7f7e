package dev.runnel.hydraulics.gauging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class VelocityAreaTest {
    private static final CurrentMeter METER = CurrentMeter.ofPitch(0.51).withStartUp(0.03);

    /** K. Subramanya, Engineering Hydrology, example 4.1: distance m, depth m, revolutions, seconds. */
    private static final double[][] SUBRAMANYA = {
        {1, 1.1, 39, 100},
        {3, 2.0, 58, 100},
        {5, 2.5, 112, 150},
        {7, 2.0, 90, 150},
        {9, 1.7, 45, 100},
        {11, 1.0, 30, 100}
    };

    private static VelocityAreaGauging subramanya() {
        List<Vertical> verticals = new ArrayList<>();
        for (double[] row : SUBRAMANYA) {
            verticals.add(
                    Vertical.of(row[0], row[1], PointRule.ONE, METER.velocityOfRevolutionsAndSeconds(row[2], row[3])));
        }
        return VelocityAreaGauging.of(WaterEdge.bank(0), verticals, WaterEdge.bank(12));
    }

    /** The book's segments 0.5036, 1.3032, 2.0540, 1.3440, 0.8823, 0.3660 and total 6.45 m³/s. */
    @Test
    void textbookExample() {
        GaugedDischarge gauged = subramanya().midSectionWithTriangles();
        double[] printed = {0.5036, 1.3032, 2.0540, 1.3440, 0.8823, 0.3660};
        for (int i = 0; i < printed.length; i++) {
            assertThat(gauged.strips().get(i).discharge()).isCloseTo(printed[i], within(0.00006));
        }
        assertThat(gauged.discharge()).isCloseTo(6.45, within(0.005));
        // half distances at the ends, by hand: 1.5 m instead of 2.0 m
        assertThat(subramanya().midSection().discharge()).isCloseTo(6.2357, within(0.0001));
        assertThat(gauged.toString()).startsWith("GaugedDischarge[mid-section with triangles: 6.453 m3/s, area ");
    }

    @Test
    void meanSectionByHand() {
        VelocityAreaGauging gauging = VelocityAreaGauging.of(
                WaterEdge.bank(0),
                List.of(Vertical.of(1, 0.8, PointRule.TWO, 0.5, 0.3), Vertical.of(3, 1.2, PointRule.TWO, 0.8, 0.4)),
                WaterEdge.wall(4, 1.0).withVelocityRatio(0.8));
        // strips: 0.2*0.4*1, 0.5*1.0*2, (0.6+0.48)/2*1.1*1
        assertThat(gauging.meanSection().discharge()).isCloseTo(0.08 + 1.0 + 0.594, within(1e-12));
        assertThat(gauging.meanSection().area()).isCloseTo(0.4 + 2.0 + 1.1, within(1e-12));
        // strips: 0.4*0.8*1.5, 0.6*1.2*1.5, wall 0.48*1.0*0.5
        assertThat(gauging.midSection().discharge()).isCloseTo(0.48 + 1.08 + 0.24, within(1e-12));
        assertThat(gauging.midSection().factorFor(0.9)).isCloseTo(1.8 / 3.5 / 0.9, within(1e-12));
    }

    /** A lecture hand-out, v = 0.03 + 0.66 n: means 0.162, 0.384, 0.432 m/s, discharges 0.015, 0.242, 0.505 m³/s. */
    @Test
    void verticalsOfAHandOut() {
        CurrentMeter meter = CurrentMeter.ofPitch(0.66).withStartUp(0.03);
        double one = PointRule.ONE.mean(meter.velocityOfRevolutionsAndSeconds(10, 50));
        double two = PointRule.TWO.mean(
                meter.velocityOfRevolutionsAndSeconds(35, 52), meter.velocityOfRevolutionsAndSeconds(22, 55));
        double three = PointRule.TWO.mean(
                meter.velocityOfRevolutionsAndSeconds(40, 58), meter.velocityOfRevolutionsAndSeconds(28, 53));
        assertThat(one).isCloseTo(0.162, within(0.0005));
        assertThat(two).isCloseTo(0.384, within(0.0005));
        assertThat(three).isCloseTo(0.432, within(0.0005));
        assertThat(new Strip(0.6, 1.05, two, 0, 2).discharge()).isCloseTo(0.242, within(0.0005));
        assertThat(new Strip(0.75, 1.56, three, 0, 2).discharge()).isCloseTo(0.505, within(0.0005));
    }

    /** Velocity meter manual, p. 3-3: 5.4, 5.5, 5.35 ft/s give 5.44 by three points. */
    @Test
    void rulesOfPoints() {
        assertThat(PointRule.THREE.mean(5.4, 5.5, 5.35)).isCloseTo(5.44, within(0.005));
        assertThat(PointRule.FIVE.mean(1.0, 0.9, 0.7, 0.5, 0.3))
                .isCloseTo((1 + 2.7 + 2.1 + 1 + 0.3) / 10, within(1e-15));
        assertThat(PointRule.SIX.mean(1.0, 0.9, 0.8, 0.7, 0.5, 0.3)).isCloseTo(0.71, within(1e-15));
        assertThat(PointRule.HALF_DEPTH.mean(2)).isEqualTo(1.9);
        for (PointRule rule : PointRule.values()) {
            double[] even = new double[rule.relativeDepths().length];
            java.util.Arrays.fill(even, 0.7);
            assertThat(rule.mean(even)).isCloseTo(rule == PointRule.HALF_DEPTH ? 0.665 : 0.7, within(1e-15));
        }
        assertThatThrownBy(() -> PointRule.TWO.mean(1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("velocities must be 2 for the rule TWO, was 1");
        assertThatThrownBy(() -> PointRule.ONE.mean(Double.NaN))
                .hasMessage("velocity at 0.6 of the depth must be in [-20, 20] m/s, was NaN");
    }

    @Test
    void metersWithRanges() {
        CurrentMeter meter = CurrentMeter.ofPitch(0.25)
                .withStartUp(0.02)
                .from(1.5, CurrentMeter.ofPitch(0.26).withStartUp(0.005));
        assertThat(meter.velocity(1)).isEqualTo(0.27);
        assertThat(meter.velocity(2)).isEqualTo(0.525);
        assertThat(meter.velocity(0)).isZero();
        assertThat(meter).hasToString("CurrentMeter[v = 0.02 + 0.25 n; from n = 1.5 v = 0.005 + 0.26 n]");
        assertThatThrownBy(() -> meter.velocityOfRevolutionsAndSeconds(10, 0))
                .hasMessageStartingWith("seconds must be greater than 0");
        assertThatThrownBy(() -> meter.from(1, CurrentMeter.ofPitch(1)))
                .hasMessageStartingWith("revolutionsPerSecond must be above 1.5");
    }

    /** The budget written out by hand for six strips with one point each. */
    @Test
    void budget() {
        GaugedDischarge gauged = subramanya().midSection();
        GaugingBudget budget = gauged.budget();
        assertThat(budget.ofVerticals()).isCloseTo(0.075 - 0.03 / 5, within(1e-12));
        double sum = 0;
        double[] velocities = {0.2289, 0.3258, 0.4108, 0.336, 0.2595, 0.183};
        for (int i = 0; i < 6; i++) {
            double v = velocities[i];
            double e = v < 0.2
                    ? 0.11 - (v - 0.1) / 0.1 * 0.05
                    : v < 0.3 ? 0.06 - (v - 0.2) / 0.1 * 0.02 : v < 0.4 ? 0.04 - (v - 0.3) / 0.1 * 0.01 : 0.03;
            double c = v < 0.25 ? 0.0125 - (v - 0.15) / 0.1 * 0.0025 : 0.01 - (v - 0.25) / 0.25 * 0.005;
            double q = gauged.strips().get(i).discharge();
            sum += q * q * (2 * 0.005 * 0.005 + 0.075 * 0.075 + e * e + c * c);
        }
        assertThat(budget.ofStrips()).isCloseTo(Math.sqrt(sum) / gauged.discharge(), within(2e-5));
        assertThat(budget.standard())
                .isCloseTo(
                        Math.sqrt(0.069 * 0.069 + 0.01 * 0.01 + budget.ofStrips() * budget.ofStrips()), within(1e-9));
        assertThat(budget.expanded()).isEqualTo(2 * budget.standard());
        assertThat(budget.withExposure(180).ofStrips()).isLessThan(budget.ofStrips());
        assertThat(budget.withWidth(0.05).withDepth(0.05).withSystematic(0.05).standard())
                .isGreaterThan(budget.standard());
    }

    @Test
    void sheets() {
        String sheet = """
                # A stream
                distance_m,depth_m,relative_depth,velocity_m_per_s
                0,0
                1.5,1.3,0.2,0.6
                1.5,1.3,0.8,0.4

                3,0.9,,0.55
                4.2,0.5
                """;
        VelocityAreaGauging gauging = GaugingSheet.parse(sheet);
        assertThat(gauging.verticals()).hasSize(2);
        assertThat(gauging.verticals().get(0).velocity()).isEqualTo(0.5);
        assertThat(gauging.verticals().get(1).rule()).isEqualTo(PointRule.ONE);
        assertThat(gauging.midSection().strips()).hasSize(3);
        StringBuilder counted = new StringBuilder("distance_m,depth_m,revolutions,seconds\n0,0,,\n");
        for (double[] row : SUBRAMANYA) {
            counted.append(row[0] + "," + row[1] + "," + row[2] + "," + row[3] + "\r\n");
        }
        assertThat(GaugingSheet.parse(counted + "12,0,,", METER).midSection())
                .isEqualTo(subramanya().midSection());
        assertThatThrownBy(() -> GaugingSheet.parse("distance_m,depth_m,velocity_m_per_s\n0,0\n1,x,0.5\n2,0"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("line 3, column 2: depth_m must be a number, was \"x\"");
        assertThatThrownBy(() -> GaugingSheet.parse("distance_m,depth\n"))
                .hasMessageStartingWith("line 1, column 2: must be one of distance_m");
        assertThatThrownBy(() -> GaugingSheet.parse("distance_m,depth_m\n0,0\n1,1\n2,0"))
                .hasMessage("line 3: a point between the edges must have a velocity");
        assertThatThrownBy(() -> GaugingSheet.parse(counted + "12,0,,"))
                .hasMessage("line 3: revolutions need the equation of their current meter");
        assertThatThrownBy(() ->
                        GaugingSheet.parse("distance_m,depth_m,relative_depth,velocity_m_per_s\n0,0\n1,1,0.3,0.5\n2,0"))
                .hasMessageStartingWith("line 3: relative_depth must be the points of a rule");
        assertThatThrownBy(() -> GaugingSheet.parse("distance_m,depth_m,velocity_m_per_s\n0,0\n2,1,0.5\n1,0"))
                .hasMessage("distance of the far edge must be above 2 m, was 1");
        assertThatThrownBy(() -> GaugingSheet.parse("")).hasMessageContaining("was 0 rows");
    }
}
