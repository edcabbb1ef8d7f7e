package dev.runnel.hydraulics.gauging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** What holds for every gauging, whatever its verticals. */
class VelocityAreaProperties {
    private record Survey(double width, double wallDepth, double[] places, double[] depths, double[] velocities) {
        static Survey of(Random random) {
            int n = 2 + random.nextInt(20);
            double width = 0.5 + 20 * random.nextDouble();
            double[] places = random.doubles(n, 0.01 * width, 0.99 * width)
                    .sorted()
                    .distinct()
                    .toArray();
            double[] depths = random.doubles(places.length, 0.05, 4).toArray();
            double[] velocities = random.doubles(places.length, 0.01, 3).toArray();
            return new Survey(width, 0.05 + random.nextDouble(), places, depths, velocities);
        }

        VelocityAreaGauging gauging(double velocityFactor, boolean mirrored) {
            List<Vertical> verticals = new ArrayList<>();
            int n = places.length;
            for (int i = 0; i < n; i++) {
                int at = mirrored ? n - 1 - i : i;
                double place = mirrored ? width - places[at] : places[at];
                verticals.add(Vertical.of(place, depths[at], PointRule.ONE, velocityFactor * velocities[at]));
            }
            return VelocityAreaGauging.of(
                    WaterEdge.wall(0, wallDepth).withVelocityRatio(0.8),
                    verticals,
                    WaterEdge.wall(width, wallDepth).withVelocityRatio(0.8));
        }
    }

    @Property
    void stripsFillTheWidthAndAddUp(@ForAll long seed) {
        Survey survey = Survey.of(new Random(seed));
        VelocityAreaGauging gauging = survey.gauging(1, false);
        for (GaugedDischarge each : List.of(gauging.midSection(), gauging.meanSection())) {
            double width = each.strips().stream().mapToDouble(Strip::width).sum();
            double area = each.strips().stream().mapToDouble(Strip::area).sum();
            double flow = each.strips().stream().mapToDouble(Strip::discharge).sum();
            assertThat(width).isCloseTo(survey.width(), within(1e-12 * survey.width()));
            assertThat(each.area()).isCloseTo(area, within(1e-12 * area));
            assertThat(each.discharge()).isCloseTo(flow, within(1e-12 * flow));
            assertThat(each.meanVelocity() * each.area()).isCloseTo(flow, within(1e-12 * flow));
            assertThat(each.greatestShare()).isBetween(1.0 / each.strips().size() - 1e-12, 1.0);
        }
    }

    @Property
    void twiceTheVelocityIsTwiceTheFlow(@ForAll long seed) {
        Survey survey = Survey.of(new Random(seed));
        VelocityAreaGauging once = survey.gauging(1, false);
        VelocityAreaGauging twice = survey.gauging(2, false);
        assertThat(twice.midSection().discharge())
                .isCloseTo(
                        2 * once.midSection().discharge(),
                        within(1e-12 * twice.midSection().discharge()));
        assertThat(twice.meanSection().discharge())
                .isCloseTo(
                        2 * once.meanSection().discharge(),
                        within(1e-12 * twice.meanSection().discharge()));
        assertThat(twice.midSection().area()).isEqualTo(once.midSection().area());
    }

    @Property
    void fromTheOtherBankItIsTheSame(@ForAll long seed) {
        Survey survey = Survey.of(new Random(seed));
        double mid = survey.gauging(1, false).midSection().discharge();
        double mean = survey.gauging(1, false).meanSection().discharge();
        assertThat(survey.gauging(1, true).midSection().discharge()).isCloseTo(mid, within(1e-9 * mid));
        assertThat(survey.gauging(1, true).meanSection().discharge()).isCloseTo(mean, within(1e-9 * mean));
    }

    /** In a flume of one depth and one velocity both methods give depth by width by velocity. */
    @Property
    void inAFlumeBothMethodsAreExact(@ForAll long seed) {
        Random random = new Random(seed);
        double width = 0.2 + 5 * random.nextDouble();
        double depth = 0.05 + 2 * random.nextDouble();
        double velocity = 0.05 + 2 * random.nextDouble();
        List<Vertical> verticals = random.doubles(2 + random.nextInt(10), 0.01 * width, 0.99 * width)
                .sorted()
                .distinct()
                .mapToObj(place -> Vertical.of(place, depth, PointRule.ONE, velocity))
                .toList();
        VelocityAreaGauging gauging = VelocityAreaGauging.of(
                WaterEdge.wall(0, depth).withVelocityRatio(1),
                verticals,
                WaterEdge.wall(width, depth).withVelocityRatio(1));
        double flow = width * depth * velocity;
        assertThat(gauging.midSection().discharge()).isCloseTo(flow, within(1e-12 * flow));
        assertThat(gauging.meanSection().discharge()).isCloseTo(flow, within(1e-12 * flow));
    }
}
