package dev.runnel.verification.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.Egg;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The pieces of which sites are made. */
class IngredientsTest {
    private static final Pipe PIPE = Pipe.of(Egg.normal(0.6));

    @Test
    void tablesOfASectionFollowIt() {
        for (double depth = 0.02; depth < 0.9; depth += 0.0137) {
            assertThat(PIPE.area(depth)).isCloseTo(PIPE.section().area(depth), within(2e-6));
            assertThat(PIPE.perimeter(depth)).isCloseTo(PIPE.section().wettedPerimeter(depth), within(3e-4));
        }
        assertThat(PIPE.area(3)).isEqualTo(PIPE.area(0.9));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.12, 0, 0.15})
    void depthIsTheInverseOfFlow(double excess) {
        Law law = new Law(PIPE, 0.21, 0.7, excess, 0.3, -0.2);
        assertThat(law.velocity(0.21)).isCloseTo(0.7, within(1e-12));
        for (double depth = 0.03; depth < 0.8; depth += 0.0171) {
            assertThat(law.depth(law.flow(depth))).isCloseTo(depth, within(2e-4 * depth + 5e-6));
        }
    }

    @Test
    void exponentLiesOffManningByTheExcess() {
        Law manning = new Law(PIPE, 0.2, 0.7, 0, 1, 0);
        Law other = new Law(PIPE, 0.2, 0.7, 0.1, 1, 0);

        assertThat(Math.log(other.velocity(0.4) / manning.velocity(0.4))).isCloseTo(0.1 * Math.log(2), within(1e-12));
    }

    @Test
    void bedTakesAreaAndLeavesTheFlow() {
        Law law = new Law(PIPE, 0.2, 0.7, 0.05, 1, 0);
        double flow = law.flow(0.25);

        double depth = law.depthOverBed(flow, 0.06);

        assertThat(depth).isBetween(0.25, 0.31);
        assertThat(law.depthOverBed(flow, 0)).isEqualTo(law.depth(flow));
        assertThat(law.depthOverBed(flow, 1e-5)).isCloseTo(law.depth(flow), within(1e-3));
    }

    @Test
    void surchargeGoesOnFromTheLaw() {
        Law law = new Law(PIPE, 0.2, 0.7, 0, 1, 0);
        double most = law.flow(0.92 * 0.9);

        assertThat(law.depth(most * 1.0000001)).isCloseTo(0.92 * 0.9, within(1e-4));
        assertThat(law.depth(1.5 * most)).isGreaterThan(0.9);
    }

    @Test
    void reservoirsKeepTheVolume() {
        double[] inflow = new double[5000];
        inflow[10] = 3;
        inflow[40] = 1.5;

        double[] outflow = Wanders.routed(inflow, 0.25, 8, 2);

        assertThat(Arrays.stream(outflow).sum()).isCloseTo(4.5, within(1e-9));
        assertThat(Arrays.stream(outflow).max().orElseThrow()).isLessThan(0.1);
    }

    @Test
    void autoregressiveProcessHasItsDeviation() {
        Grid grid = new Grid(Instant.parse("2020-01-01T00:00:00Z"), 15, 400_000, ZoneId.of("UTC"));
        double[] values = Wanders.autoregressive(grid, Draws.of(1, "test"), 1, 0.5, 0.04);
        double squares = Arrays.stream(values).map(x -> x * x).average().orElseThrow();

        // Between knots a straight line is quieter: at the middle of two by (1 + 0.5) / 2 of the variance.
        assertThat(Math.sqrt(squares)).isBetween(0.034, 0.041);
    }

    @Test
    void rainIsTheSameOnEveryGrid() {
        Rain rain = new Rain();
        rain.add(3.5, 17, 4);
        rain.add(100, 1, 0.7);

        for (int minutes : new int[] {1, 2, 5, 15}) {
            assertThat(Arrays.stream(rain.onto(minutes, 600)).sum()).isCloseTo(4.7, within(1e-12));
        }
        assertThat(rain.onto(5, 40)[1]).isCloseTo(4.0 * 5 / 17, within(1e-12));
        assertThat(rain.onto(5, 40)[20]).isCloseTo(0.7, within(1e-12));
    }

    @Test
    void gaugeCountsWholeTips() {
        double[] rain = new double[100];
        Arrays.fill(rain, 0.07);

        double[] tipped = Rain.tipped(rain, 0.2, 1);

        assertThat(Arrays.stream(tipped).sum()).isCloseTo(7.0, within(0.2));
        for (double step : tipped) {
            assertThat(step / 0.2).isCloseTo(Math.rint(step / 0.2), within(1e-9));
        }
    }

    @ParameterizedTest
    @EnumSource
    void rainOfAYearIsOfAPlaceWherePeopleLive(Make make) {
        for (long seed = 1; seed <= 20; seed++) {
            Nature nature = make.nature(seed, 1);
            Grid grid = new Grid(Instant.parse("2021-01-01T00:00:00Z"), 15, 365 * 96, ZoneId.of("UTC"));

            assertThat(Arrays.stream(nature.rain(grid).onto(15, grid.size())).sum())
                    .isBetween(150.0, 1500.0);
        }
    }

    /** What the people do follows the civil clock, not the sun: the morning comes an hour earlier in summer, in UTC. */
    @ParameterizedTest
    @EnumSource
    void peopleFollowTheCivilClock(Make make) {
        Nature nature = make.nature(9, 1);
        Grid grid = new Grid(Instant.parse("2021-03-01T00:00:00Z"), 15, 60 * 96, ZoneId.of("Europe/Berlin"));
        double[] flow = nature.dryFlow(grid, 1);

        double later = phase(flow, 32, 60) - phase(flow, 2, 27);

        assertThat(later - 24 * Math.rint(later / 24)).isCloseTo(-1, within(0.3));
    }

    /** Hours by which the first harmonic of the day lies later. */
    private static double phase(double[] flow, int fromDay, int toDay) {
        double sin = 0;
        double cos = 0;
        for (int i = 96 * fromDay; i < 96 * toDay; i++) {
            sin += flow[i] * Math.sin(2 * Math.PI * i / 96);
            cos += flow[i] * Math.cos(2 * Math.PI * i / 96);
        }
        return Math.atan2(sin, cos) * 12 / Math.PI;
    }

    @Test
    void streamsOfOneSeedAreApart() {
        assertThat(Draws.of(1, "rain").uniform(0, 1))
                .isEqualTo(Draws.of(1, "rain").uniform(0, 1));
        assertThat(Draws.of(1, "rain").uniform(0, 1))
                .isNotEqualTo(Draws.of(1, "gauge").uniform(0, 1));
        assertThat(Draws.of(1, "rain").uniform(0, 1))
                .isNotEqualTo(Draws.of(2, "rain").uniform(0, 1));
    }

    @Test
    void heavyTailsHaveUnitDeviation() {
        Draws draws = Draws.of(3, "heavy");
        double squares = 0;
        for (int i = 0; i < 200_000; i++) {
            double x = draws.heavy();
            squares += x * x;
        }

        // Cut at 6, so a little below 1.
        assertThat(squares / 200_000).isBetween(0.75, 1.05);
    }

    /** Saturday and Sunday have a morning of their own, and no other day has it. */
    @ParameterizedTest
    @EnumSource
    void morningsComeLaterAtTheWeekend(Make make) {
        int later = 0;
        for (long seed = 1; seed <= 8; seed++) {
            Nature nature = make.nature(seed, 1);
            // A Monday.
            Grid grid = new Grid(Instant.parse("2021-02-01T00:00:00Z"), 15, 140 * 96, ZoneId.of("UTC"));
            double[] flow = nature.dryFlow(grid, 1);
            double[] early = new double[7];
            for (int day = 0; day < 140; day++) {
                double morning = 0;
                double all = 0;
                for (int k = 0; k < 96; k++) {
                    morning += k >= 20 && k < 34 ? flow[96 * day + k] : 0;
                    all += flow[96 * day + k];
                }
                early[day % 7] += morning / all / 20;
            }
            double workdays = Arrays.stream(early, 0, 5).min().orElseThrow();
            later += early[5] < workdays && early[6] < workdays ? 1 : 0;
        }

        assertThat(later).isGreaterThanOrEqualTo(7);
    }
}
