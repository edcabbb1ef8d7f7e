package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.watch.InventedSite.Fault;
import dev.runnel.timeseries.Machine;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What comes back after it was over: the same finding, or one of its own. */
class ReturnsTest {
    private static Instant day(double day) {
        return InventedSite.START.plus(Duration.ofMinutes(Math.round(day * 1440)));
    }

    private static WatchRule rule(SiteRecord record) {
        return WatchRule.of(
                BaselineRule.of(InventedSite.MONITOR).learn(record).baseline().orElseThrow());
    }

    private static boolean between(double day, double from, double to) {
        return day >= from && day < to;
    }

    /** An obstruction of eight days that goes, and two weeks after its end a bed that takes area away. */
    private static SiteRecord bedAfterBlockage() {
        Fault blockage = InventedSite.heldUp(day -> between(day, 22, 30) ? 0.8 * Math.min(1, (day - 22) / 3) : 0);
        return InventedSite.of(100, 21).record((day, depth, velocity, random) -> {
            if (day < 30) {
                return blockage.apply(day, depth, velocity, random);
            }
            double bed = InventedSite.ramp(38, 25, 0.06).applyAsDouble(day);
            double area = InventedSite.MONITOR.flowArea(depth + bed) - InventedSite.MONITOR.flowArea(bed);
            return new double[] {depth + bed, velocity * InventedSite.MONITOR.flowArea(depth) / area};
        });
    }

    @Test
    void bedThatGrowsAfterAClearedBlockageIsAFindingOfItsOwnAndItsFlowIsDoubtful() {
        SiteRecord record = bedAfterBlockage();
        WatchReport report = rule(record).watch(record);
        assertThat(report.findings()).as(report.describe()).hasSize(2);
        Finding blockage = report.findings().get(0);
        assertThat(blockage.names()).containsExactly(FindingName.HELD_UP);
        assertThat(blockage.returns()).isZero();
        assertThat(blockage.closed().orElseThrow()).isBetween(day(29), day(33));
        Finding bed = report.findings().get(1);
        assertThat(bed.names()).contains(FindingName.SEDIMENT);
        assertThat(bed.isOpen()).isTrue();
        assertThat(bed.since()).isBetween(day(33), day(50));
        assertThat(bed.sinceRange().start()).isAfter(blockage.closed().orElseThrow());
        assertThat(bed.moved()).isNotEmpty();
        DoubtfulReadings doubt = DoubtfulReadings.of(report, record.interval().end());
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(27))).isFalse();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(32.5))).isFalse();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(75))).isTrue();
    }

    /** The same by one reading after the other, with a state kept as text every few days. */
    @Test
    void whatCameBackIsRememberedThroughRestarts() {
        SiteRecord record = bedAfterBlockage();
        WatchRule rule = rule(record);
        List<WatchNotice> together = new ArrayList<>();
        rule.over(record).forEach(together::add);
        List<WatchNotice> restarted = new ArrayList<>();
        Machine<SiteReading, WatchNotice, WatchState> machine = rule.start();
        int count = 0;
        for (Iterator<SiteReading> readings = record.iterator(); readings.hasNext(); ) {
            restarted.addAll(machine.next(readings.next()));
            if (++count % 401 == 0) {
                machine = rule.startFromText(machine.state().toText());
            }
        }
        restarted.addAll(machine.finish());
        assertThat(restarted).isEqualTo(together);
    }

    /** Three weeks of a fouled velocity sensor stay in doubt though a blockage of a few days follows its cleaning. */
    @Test
    void shortReturnDoesNotClearTheDaysOfWhatStoodForWeeks() {
        Fault blockage = InventedSite.heldUp(day -> between(day, 56, 60) ? 0.7 : 0);
        SiteRecord record = InventedSite.of(80, 23)
                .record((day, depth, velocity, random) -> day < 50
                        ? new double[] {depth, between(day, 25, 50) ? 0.65 * velocity : velocity}
                        : blockage.apply(day, depth, velocity, random));
        WatchReport report = rule(record).watch(record);
        DoubtfulReadings doubt = DoubtfulReadings.of(report, record.interval().end());
        assertThat(report.findings()).as(report.describe()).isNotEmpty();
        for (int day = 28; day < 49; day++) {
            assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(day + 0.5)))
                    .as("day %s: %s", day, report.describe())
                    .isTrue();
        }
    }

    /**
     * A velocity sensor that loses sight every few days is one finding, which must be quiet for longer each time before it is over:
     * what lies between is not to be trusted.
     */
    @Test
    void whatComesAndGoesStaysOpenAndItsDaysInDoubt() {
        SiteRecord record = InventedSite.of(90, 24).record((day, depth, velocity, random) ->
                new double[] {depth, day >= 22 && (day - 22) % 6 < 2.5 ? 0.5 * velocity : velocity});
        WatchRule rule = rule(record);
        WatchReport report = rule.watch(record);
        assertThat(report.findings()).as(report.describe()).hasSize(1);
        Finding finding = report.findings().get(0);
        assertThat(finding.isOpen()).as(finding.describe()).isTrue();
        assertThat(finding.returns()).isBetween(1, 2);
        for (int i = 1; i < finding.stretches().size(); i++) {
            Duration quiet = Duration.between(
                    finding.stretches().get(i - 1).to().orElseThrow(),
                    finding.stretches().get(i).from());
            assertThat(quiet).isBetween(Duration.ofDays(1), Duration.ofDays(5));
        }
        DoubtfulReadings doubt = DoubtfulReadings.of(report, record.interval().end());
        for (int day = 45; day < 90; day++) {
            assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(day + 0.5)))
                    .as("day %s: %s", day, finding.describe())
                    .isTrue();
        }
    }

    /** A river that holds the water up for three days every ten days is one finding that recurs, and what lies between is not in doubt. */
    @Test
    void riverThatComesBackIsOneFindingThatRecurs() {
        for (long seed = 50; seed < 54; seed++) {
            SiteRecord record = InventedSite.of(100, seed)
                    .record(InventedSite.heldUp(day -> between(day, 22, 85) && (day - 22) % 11 < 3 ? 0.9 : 0));
            WatchReport report = rule(record).watch(record);
            assertThat(report.findings()).as(report.describe()).hasSize(1);
            Finding finding = report.findings().get(0);
            assertThat(finding.names()).as(finding.describe()).contains(FindingName.HELD_UP);
            assertThat(finding.stretches()).as(finding.describe()).hasSize(6);
            assertThat(finding.recurrence()).as(finding.describe()).isPresent();
            // The scatter of a day may stand away once more before it is seen to be over.
            assertThat(finding.closed().orElseThrow()).isBetween(day(79), day(84));
        }
    }

    /** It stood far away, and the site wandered by a twentieth meanwhile: that is no rest of it. */
    @Test
    void whatStoodFarAwayIsOverThoughTheSiteWandered() {
        SiteRecord record = InventedSite.of(70, 25).record((day, depth, velocity, random) ->
                new double[] {depth, velocity * (between(day, 22, 34) ? 0.5 : day < 34 ? 1 : 0.955)});
        Finding finding = rule(record).watch(record).findings().get(0);
        assertThat(finding.closed().orElseThrow()).as(finding.describe()).isBetween(day(33), day(35));
    }

    /** It is over once it has been quiet for long enough, since it stood away last. */
    @Test
    void whatCameAndWentIsOverAfterLong() {
        SiteRecord record = InventedSite.of(90, 24).record((day, depth, velocity, random) ->
                new double[] {depth, between(day, 22, 52) && (day - 22) % 6 < 2.5 ? 0.5 * velocity : velocity});
        WatchReport report = rule(record).watch(record);
        assertThat(report.findings()).as(report.describe()).hasSize(1);
        assertThat(report.findings().get(0).closed().orElseThrow()).isBetween(day(48), day(51));
    }

    /** Two days of usual readings, while it is over but not yet closed, tell nothing of what it was. */
    @Test
    void shortBlockageThatIsClearedAccusesNoSensor() {
        for (long seed = 30; seed < 40; seed++) {
            SiteRecord record = InventedSite.of(45, seed)
                    .record(InventedSite.heldUp(day -> between(day, 25.2, 27.7) ? Math.min(1, day - 25.2) : 0));
            WatchReport report = rule(record).watch(record);
            assertThat(report.findings()).as("seed %s", seed).isNotEmpty();
            for (Finding finding : report.findings()) {
                assertThat(finding.names())
                        .as(finding.describe())
                        .doesNotContain(FindingName.DEPTH_STEP, FindingName.DEPTH_DRIFT);
                assertThat(Duration.between(day(25.2), finding.since()).abs())
                        .as(finding.describe())
                        .isLessThan(Duration.ofHours(36));
            }
        }
    }
}
