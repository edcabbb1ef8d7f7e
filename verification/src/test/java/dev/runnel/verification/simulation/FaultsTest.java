package dev.runnel.verification.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Each fault changes what its label says, from when it says, and nothing else. */
class FaultsTest {
    private static final double BEGIN = 20.3;

    private static Site site(FaultKind kind, double severity, double ramp) {
        return Simulator.site(Orders.with(31, Make.FIRST, kind, severity, ramp));
    }

    private static Site sound() {
        return Simulator.site(Orders.sound(31, Make.FIRST));
    }

    private static boolean same(double[] one, double[] other, int from, int to) {
        return Arrays.equals(one, from, to, other, from, to);
    }

    private static double share(double[] values, int from, IntPredicate predicate) {
        return IntStream.range(from, values.length)
                .filter(i -> !Double.isNaN(values[i]))
                .mapToDouble(i -> predicate.test(i) ? 1 : 0)
                .average()
                .orElseThrow();
    }

    @ParameterizedTest
    @EnumSource(FaultKind.class)
    void nothingChangesBeforeTheBeginning(FaultKind kind) {
        if (kind == FaultKind.OBSTRUCTION_GONE || kind == FaultKind.NONE) {
            return;
        }
        Site site = site(kind, 0.5, 2);
        Site sound = sound();
        int begin = site.grid().at(BEGIN);
        int gaugeBegin = (int) (BEGIN * 1440 / site.gaugeMinutes()) - 1;

        assertThat(Arrays.copyOf(site.stamp(), begin)).isEqualTo(Arrays.copyOf(sound.stamp(), begin));
        assertThat(same(site.depth(), sound.depth(), 0, begin)).isTrue();
        assertThat(same(site.velocity(), sound.velocity(), 0, begin)).isTrue();
        assertThat(same(site.gauge(), sound.gauge(), 0, gaugeBegin)).isTrue();
    }

    @ParameterizedTest
    @EnumSource(
            value = FaultKind.class,
            names = {"BLOCKAGE", "BLOCKAGE_ABRUPT", "BLOCKAGE_DROWNED", "RECURRING", "FROM_FIRST_DAY"})
    void obstructionsLiftTheDepthOfTheSameFlow(FaultKind kind) {
        Site site = site(kind, 0.6, 0);
        Site sound = sound();
        Water held = site.water();
        int begin = site.grid().at(BEGIN) + 1;

        assertThat(held.flow()).isEqualTo(sound.water().flow());
        assertThat(site.gauge()).isEqualTo(sound.gauge());
        for (int i = begin; i < held.depth().length; i++) {
            assertThat(held.depth()[i]).isGreaterThanOrEqualTo(sound.water().depth()[i]);
            assertThat(held.velocity()[i]).isLessThanOrEqualTo(sound.water().velocity()[i]);
        }
    }

    @ParameterizedTest
    @CsvSource({"SHARE, 0.2", "SHARE, 2", "DAM, 0.2", "DAM, 2", "NARROWS, 0.2", "NARROWS, 2"})
    void everyObstructionLiftsTheUsualDepthByItsSeverity(Obstruction obstruction, double rise) {
        assertThat(obstruction.depth(0.13, 0.021, rise, 0.13, 0.021)).isCloseTo(0.13 * (1 + rise), within(1e-12));
    }

    @Test
    void stormsDrownADam() {
        double small = Obstruction.DAM.depth(0.10, 0.01, 0.5, 0.10, 0.01) / 0.10;
        double large = Obstruction.DAM.depth(0.40, 0.20, 0.5, 0.10, 0.01) / 0.40;

        assertThat(small).isCloseTo(1.5, within(1e-12));
        assertThat(large).isBetween(1.0, 1.15);
    }

    /** kappa + b of the law tells how far: near -2 ln 1.5 for a rise by a half. */
    @Test
    void blockageShiftsTheLawAsItsRiseSays() {
        for (long seed = 40; seed < 48; seed++) {
            SiteOrder order = Orders.with(seed, Make.FIRST, FaultKind.BLOCKAGE, 0.5, 4);
            Water water = Simulator.water(order);
            Grid grid = Simulator.grid(order);
            double[] full = Arrays.copyOfRange(water.shift(), grid.at(BEGIN + 4), grid.size());
            Arrays.sort(full);

            assertThat(full[full.length / 2]).isBetween(-1.1, -0.45);
        }
    }

    @Test
    void rampGrowsFromNothingToAll() {
        Fault fault = new Fault(FaultKind.BLOCKAGE, 0.5, 20, 4, Double.POSITIVE_INFINITY, 0);

        assertThat(fault.strength(19.99)).isZero();
        assertThat(fault.strength(21)).isEqualTo(0.25);
        assertThat(fault.strength(30)).isEqualTo(1);
    }

    @Test
    void recurringFaultComesAndGoes() {
        Fault fault = new Fault(FaultKind.RECURRING, 0.5, 20, 0, Double.POSITIVE_INFINITY, 7);
        int falls = 0;
        for (double day = 20; day < 62; day += 0.05) {
            falls += fault.strength(day) > 0.9 && fault.strength(day + 0.05) < 0.1 ? 1 : 0;
        }

        assertThat(falls).isEqualTo(6);
    }

    @Test
    void oldObstructionIsThereUntilItGoes() {
        Site site = site(FaultKind.OBSTRUCTION_GONE, 0.5, 0);
        Site sound = sound();
        int begin = site.grid().at(BEGIN);

        assertThat(site.water().depth()[begin - 1]).isGreaterThan(sound.water().depth()[begin - 1]);
        assertThat(same(site.depth(), sound.depth(), begin, site.depth().length))
                .isTrue();
        assertThat(same(site.velocity(), sound.velocity(), begin, site.depth().length))
                .isTrue();
    }

    @Test
    void sedimentLiftsTheWaterAndKeepsTheFlow() {
        Site site = site(FaultKind.SEDIMENT, 0.4, 0);
        Site sound = sound();
        int begin = site.grid().at(BEGIN) + 1;

        assertThat(site.water().flow()).isEqualTo(sound.water().flow());
        for (int i = begin; i < site.water().depth().length; i++) {
            double lift = site.water().depth()[i] - sound.water().depth()[i];
            assertThat(lift).isBetween(0.0, 0.4 * site.water().usualDepth() + 1e-9);
        }
    }

    @Test
    void waterFaultsScaleTheFlowAndKeepTheLaw() {
        Site less = site(FaultKind.LESS_WATER, 0.4, 0);
        Site sound = sound();
        int begin = less.grid().at(BEGIN) + 1;

        for (int i = begin; i < less.water().flow().length; i++) {
            assertThat(less.water().flow()[i]).isCloseTo(0.6 * sound.water().flow()[i], within(1e-12));
            assertThat(less.water().shift()[i]).isCloseTo(0, within(0.03));
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = FaultKind.class,
            names = {"VELOCITY_FOULING", "VELOCITY_STEP", "VELOCITY_ZEROS", "WEAK_ECHO", "SIGN_FLIPS", "FROZEN_VELOCITY"
            })
    void velocityFaultsTouchOnlyVelocities(FaultKind kind) {
        Site site = site(kind, 0.3, 0);
        Site sound = sound();

        assertThat(site.depth()).isEqualTo(sound.depth());
        assertThat(site.gauge()).isEqualTo(sound.gauge());
        assertThat(site.water().flow()).isEqualTo(sound.water().flow());
        assertThat(site.velocity()).isNotEqualTo(sound.velocity());
        for (int i = 0; i < site.velocity().length; i++) {
            assertThat(Double.isNaN(site.velocity()[i])).isEqualTo(Double.isNaN(sound.velocity()[i]));
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = FaultKind.class,
            names = {"DEPTH_OFFSET", "DEPTH_DRIFT", "FROZEN_DEPTH"})
    void depthFaultsTouchOnlyDepths(FaultKind kind) {
        Site site = site(kind, 0.3, 0);
        Site sound = sound();

        assertThat(site.velocity()).isEqualTo(sound.velocity());
        assertThat(site.gauge()).isEqualTo(sound.gauge());
        assertThat(site.water().depth()).isEqualTo(sound.water().depth());
        assertThat(site.depth()).isNotEqualTo(sound.depth());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.15, -0.3})
    void offsetIsAShareOfTheUsualDepth(double severity) {
        Site site = site(FaultKind.DEPTH_OFFSET, severity, 0);
        Site sound = sound();
        int last = site.depth().length - 20;
        double[] moved = IntStream.range(site.grid().at(BEGIN) + 1, last)
                .mapToDouble(i -> site.depth()[i] - sound.depth()[i])
                .filter(x -> !Double.isNaN(x))
                .sorted()
                .toArray();

        assertThat(moved[moved.length / 2]).isCloseTo(severity * site.water().usualDepth(), within(0.005));
    }

    @Test
    void droppedVelocitiesHaveTheirShare() {
        Site zeros = site(FaultKind.VELOCITY_ZEROS, 0.25, 0);
        Site echoes = site(FaultKind.WEAK_ECHO, 0.3, 0);
        Site flips = site(FaultKind.SIGN_FLIPS, 0.4, 0);
        double[] sound = sound().velocity();
        int begin = zeros.grid().at(BEGIN) + 1;

        assertThat(share(sound, begin, i -> zeros.velocity()[i] == 0)).isCloseTo(0.25, within(0.05));
        assertThat(share(sound, begin, i -> echoes.velocity()[i] < 0.65 * sound[i]))
                .isCloseTo(0.3, within(0.05));
        assertThat(share(sound, begin, i -> flips.velocity()[i] < 0)).isCloseTo(0.4, within(0.05));
    }

    @Test
    void falseEchoesHaveTheirShareAndLeaveTheVelocity() {
        Site echoes = site(FaultKind.FALSE_ECHO, 0.25, 0);
        double[] sound = sound().depth();
        int begin = echoes.grid().at(BEGIN) + 1;

        assertThat(share(sound, begin, i -> echoes.depth()[i] > 1.4 * sound[i])).isCloseTo(0.25, within(0.05));
        assertThat(echoes.velocity()).containsExactly(sound().velocity());
    }

    @Test
    void frozenReadingsAreOneReading() {
        Site site = site(FaultKind.FROZEN_LOGGER, 1, 0);
        int begin = site.grid().at(BEGIN) + 1;

        assertThat(distinct(site.depth(), begin)).isEqualTo(1);
        assertThat(distinct(site.velocity(), begin)).isEqualTo(1);
    }

    private static long distinct(double[] values, int from) {
        return Arrays.stream(values, from, values.length)
                .filter(x -> !Double.isNaN(x))
                .distinct()
                .count();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, -1, 3})
    void clockOfMonitorMovesStampsAndNothingElse(double hours) {
        Site site = site(FaultKind.CLOCK_OF_MONITOR, hours, 0);
        Site sound = sound();
        int begin = site.grid().at(BEGIN);
        int later = (int) Math.round(hours * 60 / site.grid().minutes());

        assertThat(later).isNotZero();
        assertThat(site.gauge()).isEqualTo(sound.gauge());
        for (int i = 1; i < site.stamp().length; i++) {
            assertThat(site.stamp()[i]).isAfter(site.stamp()[i - 1]);
        }
        int n = 0;
        for (int i = 0; i < site.stamp().length; i++) {
            int step = (int)
                    ((site.stamp()[i].getEpochSecond() - site.grid().start().getEpochSecond())
                            / 60
                            / site.grid().minutes());
            if (step >= begin) {
                assertThat(Double.valueOf(site.depth()[i])).isEqualTo(Double.valueOf(sound.depth()[step - later]));
                assertThat(Double.valueOf(site.velocity()[i]))
                        .isEqualTo(Double.valueOf(sound.velocity()[step - later]));
                n++;
            }
        }
        assertThat(n).isGreaterThan(site.grid().size() / 3);
    }

    @Test
    void clockOfGaugeMovesTheRainAlone() {
        Site site = site(FaultKind.CLOCK_OF_GAUGE, 1, 0);
        Site sound = sound();
        int later = 60 / site.gaugeMinutes();
        int begin = (int) Math.round(BEGIN * 1440 / site.gaugeMinutes());

        assertThat(site.depth()).isEqualTo(sound.depth());
        assertThat(site.velocity()).isEqualTo(sound.velocity());
        for (int i = begin + later; i < site.gauge().length; i++) {
            assertThat(Double.valueOf(site.gauge()[i])).isEqualTo(Double.valueOf(sound.gauge()[i - later]));
        }
    }

    @Test
    void deadGaugeSaysNoRain() {
        Site site = site(FaultKind.DEAD_GAUGE, 1, 0);
        int begin = (int) Math.round(BEGIN * 1440 / site.gaugeMinutes()) + 1;

        assertThat(site.depth()).isEqualTo(sound().depth());
        assertThat(Arrays.stream(site.gauge(), begin, site.gauge().length).filter(x -> x > 0))
                .isEmpty();
    }

    @Test
    void gaugeThatIsDeadForSomeDaysWritesAgain() {
        Fault fault = new Fault(FaultKind.DEAD_GAUGE, 1, BEGIN, 0, BEGIN + 10, 0);
        Site site = Simulator.site(Orders.sound(31, Make.FIRST).withFault(fault));
        int end = (int) Math.round((BEGIN + 10) * 1440 / site.gaugeMinutes()) + 1;

        assertThat(same(site.gauge(), sound().gauge(), end, site.gauge().length))
                .isTrue();
        assertThat(Arrays.stream(site.gauge(), 0, end).sum())
                .isLessThan(Arrays.stream(sound().gauge(), 0, end).sum());
    }

    @Test
    void cloggedFunnelWritesItsShareOfTheRainAndChangesNoWater() {
        Site site = site(FaultKind.CLOGGED_FUNNEL, 0.6, 0);
        Site sound = sound();
        int begin = (int) Math.round(BEGIN * 1440 / site.gaugeMinutes());
        double written = rain(site, begin);
        double fallen = rain(sound, begin);

        assertThat(site.depth()).isEqualTo(sound.depth());
        assertThat(fallen).isGreaterThan(5);
        // Up to a tip, of 0.25 mm at most, may be in the bucket at either end.
        assertThat(written).isCloseTo(0.4 * fallen, within(0.5));
    }

    private static double rain(Site site, int from) {
        return Arrays.stream(site.gauge(), from, site.gauge().length)
                .filter(x -> !Double.isNaN(x))
                .sum();
    }

    @ParameterizedTest
    @ValueSource(doubles = {30, -3})
    void falseStampsAreThree(double days) {
        Site site = site(FaultKind.FALSE_STAMP, days, 0);
        Site sound = sound();
        long seconds = Math.round(days * 86400);
        int wrong = 0;
        for (int i = 0; i < site.stamp().length; i++) {
            if (!site.stamp()[i].equals(sound.stamp()[i])) {
                assertThat(site.stamp()[i]).isEqualTo(sound.stamp()[i].plusSeconds(seconds));
                wrong++;
            }
        }

        assertThat(wrong).isEqualTo(3);
        assertThat(site.depth()).isEqualTo(sound.depth());
    }

    @Test
    void waterRunsBackwardsForHours() {
        Site site = site(FaultKind.REVERSE_FLOW, 0.8, 0);
        double hours = Arrays.stream(site.water().velocity()).filter(v -> v < 0).count()
                * site.grid().minutes()
                / 60.0;

        assertThat(hours).isBetween(5.0, 25.0);
        assertThat(site.depth()[site.depth().length - 1]).isEqualTo(sound().depth()[site.depth().length - 1]);
    }
}
