package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.contract.MachineContract;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Depth sensors that are knocked from one reading to the next, and what looks like it and is none. */
class DepthJumpTest {
    private static final int DAYS = 40;

    /** A dry night; the first reading after the knock. */
    private static final double AT = 25.0625;

    private static final Instant KNOCKED = InventedSite.START.plus(Duration.ofMinutes(Math.round(AT * 1440)));

    private static SiteRecord record(InventedSite.Fault fault, boolean withVelocity) {
        return new InventedSite(DAYS, 15, 41, 0.04, false).record(fault, withVelocity, true);
    }

    private static WatchRule rule(SiteRecord record) {
        BaselineSearch search = BaselineRule.of(InventedSite.MONITOR).learn(record);
        return WatchRule.of(search.baseline().orElseThrow(() -> new AssertionError(search.describe())));
    }

    private static List<Finding> findings(InventedSite.Fault fault, boolean withVelocity) {
        SiteRecord record = record(fault, withVelocity);
        return rule(record).watch(record).findings();
    }

    private static InventedSite.Fault knock(double by) {
        return (day, depth, velocity, random) -> new double[] {day < AT - 1e-9 ? depth : depth + by, velocity};
    }

    @Test
    void knockIsToldWithinHoursSinceItsReadingAndNothingElseIsNamed() {
        for (double by : new double[] {0.03, -0.025}) {
            List<Finding> findings = findings(knock(by), true);
            assertThat(findings).hasSize(1);
            Finding finding = findings.get(0);
            assertThat(finding.names()).containsExactly(FindingName.DEPTH_STEP);
            assertThat(finding.shape()).isEqualTo(ChangeShape.STEP);
            assertThat(finding.since()).isEqualTo(KNOCKED);
            assertThat(finding.sinceRange().start()).isEqualTo(KNOCKED.minus(Duration.ofMinutes(15)));
            assertThat(finding.sinceRange().end()).isEqualTo(KNOCKED);
            assertThat(finding.found()).isBetween(KNOCKED, KNOCKED.plus(Duration.ofHours(9)));
            assertThat(finding.detail())
                    .contains("from one reading to the next, in dry weather, and the velocity did not");
            assertThat(finding.isOpen()).isTrue();
        }
    }

    /** Three days of which only the last hours are dry show too little; the dry days before the rain are asked. */
    @Test
    void knockSoonAfterAWetSpellIsToldByTheDaysBeforeIt() {
        SiteRecord dry = record(knock(0.03), true);
        SiteRecord wet = dry.withRain(RegularSeries.of(
                InventedSite.START,
                Duration.ofHours(1),
                IntStream.range(0, 24 * DAYS)
                        .mapToDouble(
                                hour -> hour >= 24 * (AT - 2.9) && hour < 24 * (AT - 1.6) && hour % 3 == 0 ? 0.3 : 0)
                        .toArray()));
        List<Finding> findings = rule(wet).watch(wet).findings();
        assertThat(findings).hasSize(1);
        assertThat(findings.get(0).names()).containsExactly(FindingName.DEPTH_STEP);
        assertThat(findings.get(0).since()).isEqualTo(KNOCKED);
        assertThat(findings.get(0).found()).isBetween(KNOCKED, KNOCKED.plus(Duration.ofHours(9)));
    }

    @Test
    void levelAloneNamesNoCause() {
        Finding finding = findings(knock(0.03), false).get(0);
        assertThat(finding.names()).containsExactly(FindingName.LEVEL_UP);
        assertThat(finding.since()).isEqualTo(KNOCKED);
        assertThat(finding.found()).isBetween(KNOCKED, KNOCKED.plus(Duration.ofHours(15)));
        assertThat(finding.detail()).contains("from one reading to the next, in dry weather; up to");
    }

    @Test
    void sameRiseOverSomeReadingsOrWithItsVelocityIsNoKnock() {
        InventedSite.Fault slow = (day, depth, velocity, random) ->
                new double[] {depth + 0.03 * Math.min(1, Math.max(0, (day - AT) * 12)), velocity};
        assertThat(findings(slow, true)).noneMatch(finding -> finding.detail().contains("from one reading"));
        InventedSite.Fault held = InventedSite.heldUp(day -> day < AT - 1e-9 ? 0 : 0.3);
        assertThat(findings(held, true)).noneMatch(finding -> finding.detail().contains("from one reading"));
        InventedSite.Fault water = (day, depth, velocity, random) -> day < AT - 1e-9
                ? new double[] {depth, velocity}
                : new double[] {depth * 1.3, velocity * Math.pow(1.3, 0.55)};
        assertThat(findings(water, true)).noneMatch(finding -> finding.detail().contains("from one reading"));
    }

    @Test
    void whatComesBackWithinHoursIsNoKnock() {
        InventedSite.Fault spell = (day, depth, velocity, random) ->
                new double[] {day >= AT - 1e-9 && day < AT + 0.15 ? depth + 0.03 : depth, velocity};
        assertThat(findings(spell, true)).isEmpty();
        assertThat(findings(spell, false)).isEmpty();
    }

    /** A site whose level steps so every day as it is learned. */
    @Test
    void whereStepsAreUsualNoneIsTold() {
        InventedSite.Fault gate = (day, depth, velocity, random) -> {
            boolean lifted = day < AT && day - Math.floor(day) < 0.05 || day >= AT - 1e-9;
            return new double[] {lifted ? depth + 0.03 : depth, velocity};
        };
        assertThat(findings(gate, true)).noneMatch(finding -> finding.detail().contains("from one reading"));
    }

    @Test
    void keepsTheContractOfMachines() {
        SiteRecord record = record(knock(0.03), true);
        List<SiteReading> readings = new java.util.ArrayList<>();
        record.forEach(reading -> {
            if (reading.time().isAfter(KNOCKED.minus(Duration.ofHours(40)))
                    && reading.time().isBefore(KNOCKED.plus(Duration.ofHours(20)))) {
                readings.add(reading);
            }
        });
        assertThat(MachineContract.holds(rule(record), readings))
                .anyMatch(notice -> notice.finding().names().equals(List.of(FindingName.DEPTH_STEP)));
    }
}
