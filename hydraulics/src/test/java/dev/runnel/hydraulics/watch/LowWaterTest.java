package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.internal.StateText;
import dev.runnel.timeseries.contract.MachineContract;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** The lowest water of two tides: by hand, and at invented sites into which the sea comes twice a day. */
class LowWaterTest {
    private static final double NAN = Double.NaN;

    /** The sea: M2 with a spring and a neap tide a fortnight, m above the invert of the monitor. */
    private static double sea(double day) {
        double spring = 1 + 0.3 * Math.cos(2 * Math.PI * day / 14.77);
        return 0.03 + 0.11 * spring * Math.cos(2 * Math.PI * 24 * day / 12.4206012);
    }

    /** Held up by the sea, and by an obstruction that lifts the sewer's own water by a share; a velocity that reads another one. */
    private static InventedSite.Fault tide(DoubleUnaryOperator share, DoubleUnaryOperator speed) {
        return (day, depth, velocity, random) -> {
            double own = depth * (1 + share.applyAsDouble(day));
            double higher = Math.min(0.59, Math.pow(Math.pow(own, 5) + Math.pow(Math.max(0, sea(day)), 5), 0.2));
            double area = InventedSite.MONITOR.flowArea(depth) / InventedSite.MONITOR.flowArea(higher);
            return new double[] {higher, velocity * area * speed.applyAsDouble(day)};
        };
    }

    private static final InventedSite.Fault SOUND = tide(day -> 0, day -> 1);

    private static WatchReport watch(InventedSite.Fault fault, boolean withVelocity, int days, long seed) {
        SiteRecord record = InventedSite.of(days, seed).record(fault, withVelocity, true);
        SiteBaseline baseline =
                BaselineRule.of(InventedSite.MONITOR).learn(record).baseline().orElseThrow();
        assertThat(baseline.isTidal()).isTrue();
        assertThat(baseline.watches(Quantity.DEPTH)).isTrue();
        assertThat(baseline.watches(Quantity.FLOW)).isFalse();
        return WatchRule.of(baseline).watch(record);
    }

    @Test
    void lowestOfTheLastTwentyFiveHoursWithItsVelocity() {
        LowWater low = new LowWater();
        for (int hour = 0; hour < 19; hour++) {
            low.add(hour, hour == 3 ? -3 : -2, hour == 3 ? 0.5 : 0.1);
            assertThat(low.lnDepth()).isNaN();
        }
        low.add(19, -2, 0.1);
        assertThat(low.lnDepth()).isEqualTo(-3);
        assertThat(low.lnVelocity()).isEqualTo(0.5);
        for (int hour = 20; hour < 28; hour++) {
            low.add(hour, -2 - hour / 100.0, NAN);
        }
        assertThat(low.lnDepth()).isEqualTo(-3);
        // The hour of the lowest is now 25 h ago.
        low.add(28, -2, 0.3);
        assertThat(low.lnDepth()).isEqualTo(-2.27);
        assertThat(low.lnVelocity()).isNaN();
    }

    @Test
    void hourThatIsNotKnownSaysNothingAndFiveMayBeMissing() {
        LowWater low = new LowWater();
        for (int hour = 0; hour < 25; hour++) {
            low.add(hour, hour < 4 ? NAN : -2, 0.1);
        }
        assertThat(low.lnDepth()).isEqualTo(-2);
        low.add(25, NAN, NAN);
        assertThat(low.lnDepth()).isNaN();
        low.add(26, -2, 0.1);
        assertThat(low.lnDepth()).isEqualTo(-2);
        low.dropFrom(20);
        low.add(27, -2, 0.1);
        assertThat(low.lnDepth()).isNaN();
    }

    @Test
    void stateIsReadBack() {
        LowWater low = new LowWater();
        for (int hour = 0; hour < 30; hour++) {
            low.add(hour, -2 + 0.01 * (hour % 7), 0.1 * hour);
        }
        StateText text = StateText.of("low", 1);
        low.write(text);
        LowWater read = new LowWater();
        read.read(StateText.parse("low", 1, text.toString()));
        low.add(30, -1, 0);
        read.add(30, -1, 0);
        assertThat(read.lnDepth()).isEqualTo(low.lnDepth()).isEqualTo(-2);
        assertThat(read.lnVelocity()).isEqualTo(low.lnVelocity()).isCloseTo(0.7, within(1e-12));
    }

    @Test
    void soundTidalSiteIsSilent() {
        assertThat(watch(SOUND, true, 70, 5).findings()).isEmpty();
        assertThat(watch(SOUND, false, 70, 6).findings()).isEmpty();
    }

    @Test
    void blockageBehindTheTideIsToldAndItsFlowIsGood() {
        WatchReport report = watch(tide(InventedSite.ramp(24, 12, 1.3), day -> 1), true, 44, 7);
        assertThat(report.findings()).hasSize(1);
        Finding finding = report.findings().get(0);
        assertThat(finding.names()).containsExactly(FindingName.HELD_UP);
        assertThat(finding.found()).isBefore(InventedSite.START.plusSeconds(36 * 86_400L));
        assertThat(finding.since()).isAfter(InventedSite.START.plusSeconds(22 * 86_400L));
        assertThat(DoubtfulReadings.of(report, InventedSite.START.plusSeconds(44 * 86_400L))
                        .isDoubtful(ReadingUse.FLOW, finding.found()))
                .isFalse();
    }

    @Test
    void velocityThatReadsLowIsNotTakenForABlockageAlone() {
        WatchReport report = watch(tide(day -> 0, day -> day < 24 ? 1 : 0.6), true, 44, 8);
        assertThat(report.findings()).hasSize(1);
        assertThat(report.findings().get(0).names()).contains(FindingName.VELOCITY_LOSS);
    }

    @Test
    void levelAloneIsToldWithoutACause() {
        WatchReport report = watch(tide(InventedSite.ramp(24, 12, 1.3), day -> 1), false, 44, 9);
        assertThat(report.findings()).hasSize(1);
        assertThat(report.findings().get(0).names()).containsExactly(FindingName.LEVEL_UP);
    }

    @Test
    void watchKeepsTheContractOfMachines() {
        SiteRecord record = InventedSite.of(28, 10).record(tide(InventedSite.ramp(16, 3, 1.3), day -> 1));
        SiteBaseline baseline =
                BaselineRule.of(InventedSite.MONITOR).learn(record).baseline().orElseThrow();
        assertThat(baseline.isTidal()).isTrue();
        assertThat(SiteBaseline.parse(InventedSite.MONITOR, baseline.toText())).isEqualTo(baseline);
        WatchRule rule = WatchRule.of(baseline);
        List<SiteReading> readings = new ArrayList<>();
        record.forEach(readings::add);
        assertThat(rule.over(readings)).isEqualTo(rule.watch(record).events());
        MachineContract.holds(rule, readings.subList(readings.size() - 4 * 96, readings.size()));
    }
}
