package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a finding says of its beginning and size where it was over within a day, or took weeks to be told. Invented readings. */
class BeginningTest {
    private static SiteBaseline learn(SiteRecord record) {
        return BaselineRule.of(InventedSite.MONITOR).learn(record).baseline().orElseThrow();
    }

    private static List<Finding> findings(int days, InventedSite.Fault fault) {
        SiteRecord record = new InventedSite(days, 15, 41, 0.04, false).record(fault, true, true);
        return WatchRule.of(learn(record)).watch(record).findings();
    }

    /** Nine hours in which the water stands 60 % higher: the days before and after it take no part in its size. */
    @Test
    void whatIsOverWithinADayIsToldAsLargeAsItWas() {
        double from = 25.5;
        List<Finding> findings =
                findings(40, InventedSite.heldUp(day -> day >= from && day < from + 9 / 24.0 ? 0.6 : 0));
        assertThat(findings).hasSize(1);
        Finding finding = findings.get(0);
        assertThat(finding.isOpen()).isFalse();
        Moved moved = finding.moved().stream()
                .filter(each -> each.quantity() == Quantity.VELOCITY_AT_DEPTH)
                .findFirst()
                .orElseThrow();
        // The area at 1.6 times the depth is about twice as large, and the usual velocity there 1.3 times.
        assertThat(moved.change()).isBetween(-0.7, -0.5);
        assertThat(moved.hours()).isLessThan(12);
        assertThat(finding.detail()).containsPattern("down by about [56][0-9] %");
        Instant began = InventedSite.START.plus(Duration.ofHours(Math.round(24 * from)));
        assertThat(finding.since()).isBetween(began.minus(Duration.ofHours(3)), began.plus(Duration.ofHours(3)));
    }

    /** A depth that drifts by so little that its sum fills over more than a month: how it came, and when, is open, and said to be so. */
    @Test
    void whatTookWeeksToBeToldMayHaveBegunAtAnyTimeSinceTheBaseline() {
        SiteRecord record = new InventedSite(130, 15, 41, 0.04, false)
                .record(
                        (day, depth, velocity, random) ->
                                new double[] {depth + 0.00035 * Math.max(0, day - 20), velocity},
                        true,
                        true);
        SiteBaseline baseline = learn(record);
        List<Finding> findings = WatchRule.of(baseline).watch(record).findings();
        assertThat(findings).hasSize(1);
        Finding finding = findings.get(0);
        Instant began = InventedSite.START.plus(Duration.ofDays(20));
        assertThat(Duration.between(began, finding.found())).isGreaterThan(Duration.ofDays(35));
        assertThat(finding.shape()).isNotEqualTo(ChangeShape.STEP);
        assertThat(finding.names()).contains(FindingName.DEPTH_DRIFT);
        assertThat(finding.sinceRange().start()).isBetween(baseline.interval().end(), began);
        assertThat(finding.sinceRange().end()).isAfter(finding.sinceRange().start());
    }
}
