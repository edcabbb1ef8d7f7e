package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** A season of more water is truly more water, accuses nobody, and hides no fault. */
class SeasonTest {
    private static final int DAYS = 110;

    /** A wet season: the flow grows by a share from day 25 to day 60, and stays; depth and velocity follow their laws. */
    private static InventedSite.Fault season(double share) {
        DoubleUnaryOperator growth = InventedSite.ramp(25, 35, share);
        return (day, depth, velocity, random) -> {
            double higher = Math.pow(1 + growth.applyAsDouble(day), 0.48);
            return new double[] {depth * higher, velocity * Math.pow(higher, 0.55)};
        };
    }

    private static InventedSite.Fault both(InventedSite.Fault first, InventedSite.Fault second) {
        return (day, depth, velocity, random) -> {
            double[] read = first.apply(day, depth, velocity, random);
            return second.apply(day, read[0], read[1], random);
        };
    }

    private static WatchReport report(InventedSite.Fault fault, long seed) {
        SiteRecord record = InventedSite.of(DAYS, seed).record(fault);
        BaselineSearch search = BaselineRule.of(InventedSite.MONITOR).learn(record);
        return WatchRule.of(search.baseline().orElseThrow(() -> new AssertionError(search.describe())))
                .watch(record);
    }

    private static Instant day(int day) {
        return InventedSite.START.plus(Duration.ofDays(day));
    }

    @Test
    void seasonIsMoreWaterAloneAndItsReadingsAreGood() {
        for (long seed = 1; seed <= 3; seed++) {
            WatchReport report = report(season(0.9), seed);
            assertThat(report.findings()).hasSize(1);
            assertThat(report.findings().get(0).names()).containsExactly(FindingName.MORE_WATER);
            DoubtfulReadings doubt = DoubtfulReadings.of(report, day(DAYS));
            assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(100))).isFalse();
        }
    }

    @Test
    void obstructionWithinTheSeasonIsAFindingOfItsOwn() {
        List<Finding> findings = report(both(season(0.9), InventedSite.heldUp(InventedSite.ramp(80, 6, 0.6))), 1)
                .findings();
        assertThat(findings).hasSize(2);
        assertThat(findings.get(0).name()).isEqualTo(FindingName.MORE_WATER);
        assertThat(findings.get(0).isOpen()).isFalse();
        assertThat(findings.get(1).names()).containsExactly(FindingName.HELD_UP);
        assertThat(findings.get(1).since()).isBetween(day(78), day(84));
        assertThat(findings.get(1).isOpen()).isTrue();
    }

    @Test
    void dropOutsWithinTheSeasonAreToldAndStayOpen() {
        List<Finding> findings = report(
                        both(season(0.9), (day, depth, velocity, random) ->
                                new double[] {depth, day > 80 && random.nextDouble() < 0.25 ? 0 : velocity}),
                        1)
                .findings();
        List<Finding> zeros = findings.stream()
                .filter(finding -> finding.name() == FindingName.VELOCITY_ZEROS)
                .toList();
        assertThat(zeros).hasSize(1);
        assertThat(zeros.get(0).found()).isBetween(day(80), day(82));
        assertThat(zeros.get(0).isOpen()).isTrue();
        assertThat(findings).anyMatch(finding -> finding.name() == FindingName.MORE_WATER);
    }

    @Test
    void seasonThatComesOverDropOutsClosesNone() {
        List<Finding> zeros = report(
                        both(season(0.9), (day, depth, velocity, random) ->
                                new double[] {depth, day > 24 && random.nextDouble() < 0.25 ? 0 : velocity}),
                        3)
                .findings()
                .stream()
                .filter(finding -> finding.name() == FindingName.VELOCITY_ZEROS)
                .toList();
        assertThat(zeros).hasSize(1);
        assertThat(zeros.get(0).isOpen()).isTrue();
    }

    @Test
    void velocitySensorThatFoulsWithinTheSeasonIsNamed() {
        DoubleUnaryOperator loss = InventedSite.ramp(80, 5, 0.4);
        List<Finding> findings = report(
                        both(season(0.9), (day, depth, velocity, random) ->
                                new double[] {depth, velocity * (1 - loss.applyAsDouble(day))}),
                        2)
                .findings();
        assertThat(findings).hasSize(2);
        assertThat(findings.get(1).name()).isEqualTo(FindingName.VELOCITY_LOSS);
    }
}
