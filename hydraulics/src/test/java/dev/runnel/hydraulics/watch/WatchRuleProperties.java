package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.watch.InventedSite.Fault;
import dev.runnel.timeseries.contract.MachineContract;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class WatchRuleProperties {
    private static final SiteBaseline BASELINE = BaselineRule.of(InventedSite.MONITOR)
            .learn(InventedSite.of(16, 31).record(Fault.NONE))
            .baseline()
            .orElseThrow();

    /** Readings as a broken logger may send them: gaps, missing and absurd values, frozen, upstream, dry. */
    private static List<SiteReading> broken(int seed, int count) {
        Random random = new Random(seed);
        List<SiteReading> readings = new ArrayList<>();
        Instant time = InventedSite.START.plusSeconds(16L * 86_400);
        double depth = 0.12;
        double velocity = 0.6;
        for (int i = 0; i < count; i++) {
            time = time.plusSeconds(random.nextInt(20) == 0 ? 86_400L * random.nextInt(9) + 1 : 900);
            switch (random.nextInt(8)) {
                case 0 -> depth = random.nextInt(5) == 0 ? Double.NaN : 0.3 * random.nextDouble();
                case 1 -> velocity = random.nextInt(5) == 0 ? Double.NaN : random.nextGaussian();
                case 2 -> depth = random.nextInt(9) == 0 ? 1e300 * random.nextGaussian() : 0;
                case 3 -> velocity = 0;
                default -> {
                    // As before: a frozen reading.
                }
            }
            double rain = random.nextInt(3) == 0 ? Double.NaN : random.nextInt(40) == 0 ? 9 : 0;
            readings.add(new SiteReading(time, depth, velocity, rain));
        }
        return readings;
    }

    @Property(tries = 6)
    void keepsTheContractOfMachinesOnBrokenReadings(@ForAll @IntRange(min = 0, max = 100_000) int seed) {
        MachineContract.holds(WatchRule.of(BASELINE).withAlarmLevel(0.4), broken(seed, 150));
    }

    @Property(tries = 30)
    void bulkAndSingleReadingsGiveTheSameEventsAndFiniteFigures(
            @ForAll @IntRange(min = 0, max = 100_000) int seed, @ForAll @IntRange(min = 100, max = 3000) int count) {
        List<SiteReading> readings = broken(seed, count);
        WatchRule rule = WatchRule.of(BASELINE);
        WatchReport report = rule.watch(SiteRecord.ofReadings(readings));
        assertThat(rule.over(readings)).isEqualTo(report.events());
        for (WatchNotice event : report.events()) {
            Finding finding = event.finding();
            assertThat(event.time())
                    .isBetween(
                            readings.get(0).time(),
                            readings.get(readings.size() - 1).time().plusSeconds(3 * 3600));
            assertThat(finding.sinceRange().start()).isBeforeOrEqualTo(finding.since());
            assertThat(finding.moved()).allMatch(moved -> Double.isFinite(moved.change()) && moved.scatter() > 0);
            assertThat(finding.describe()).doesNotContain("NaN");
        }
    }
}
