package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.Machine;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Columns of depth and velocity that are exchanged from a reading on, or from the first day, are told as that within hours. */
class ExchangedColumnsTest {
    private static final int DAYS = 60;

    /** Noon of the day on which they are exchanged. */
    private static final double CHANGE = 40.5;

    private static final Instant CHANGED = day(CHANGE);

    private static Instant day(double day) {
        return InventedSite.START.plus(Duration.ofMinutes(Math.round(day * 1440)));
    }

    /** The record with each column in the other from a day up to another; the depth in units of 1/factor m. */
    private static SiteRecord exchanged(SiteRecord record, double from, double to, double factor) {
        List<SiteReading> readings = new ArrayList<>();
        for (SiteReading each : record) {
            boolean there = !each.time().isBefore(day(from)) && each.time().isBefore(day(to));
            readings.add(
                    there
                            ? new SiteReading(each.time(), each.velocity() / factor, each.depth() * factor, each.rain())
                            : each);
        }
        return SiteRecord.ofReadings(readings);
    }

    private static SiteRecord sound(long seed) {
        return InventedSite.of(DAYS, seed).record(InventedSite.Fault.NONE);
    }

    private static WatchRule rule(SiteRecord record) {
        BaselineSearch search = BaselineRule.of(InventedSite.MONITOR).learn(record);
        return WatchRule.of(search.baseline().orElseThrow(() -> new AssertionError(search.describe())));
    }

    private static WatchReport report(SiteRecord record) {
        return rule(record).watch(record);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 100, 1000, 0.01, 0.001})
    void exchangedFromAReadingOnIsToldWithinADayWithItsUnits(double factor) {
        WatchReport report = report(exchanged(sound(1), CHANGE, DAYS, factor));
        assertThat(report.findings()).as(report.describe()).hasSize(1);
        Finding finding = report.findings().get(0);
        assertThat(finding.names()).containsExactly(FindingName.EXCHANGED_COLUMNS);
        assertThat(finding.sinceRange().contains(CHANGED)).isTrue();
        assertThat(finding.since()).isBetween(CHANGED, CHANGED.plus(Duration.ofHours(1)));
        assertThat(finding.found()).isBetween(CHANGED.plus(Duration.ofHours(11)), CHANGED.plus(Duration.ofHours(16)));
        assertThat(finding.isOpen()).isTrue();
        assertThat(finding.shape()).isEqualTo(ChangeShape.STEP);
        int[] counts = finding.detail()
                .replaceAll("\\D+(\\d+) of (\\d+) hours.* (\\d+) as they are written", "$1 $2 $3")
                .lines()
                .flatMap(line -> List.of(line.split(" ")).stream())
                .mapToInt(Integer::parseInt)
                .toArray();
        assertThat(counts).hasSize(3);
        assertThat(counts[0]).isBetween(400, counts[1]);
        assertThat(counts[2]).isLessThan(20);
        if (factor == 1) {
            assertThat(finding.detail()).doesNotContain("times");
        } else {
            assertThat(finding.detail())
                    .contains("the depth as written times " + dev.runnel.internal.Text.significant(factor, 4)
                            + " for the velocity");
        }
    }

    @Test
    void nothingElseIsGoodForAnyUseAndTheRecordIsNotCut() {
        DoubtfulReadings doubt = DoubtfulReadings.of(report(exchanged(sound(2), CHANGE, DAYS, 1)), day(DAYS));
        for (ReadingUse use : ReadingUse.values()) {
            assertThat(doubt.isDoubtful(use, day(50))).isTrue();
            assertThat(doubt.isDoubtful(use, day(CHANGE - 0.5))).isFalse();
        }
        assertThat(doubt.cuts()).isEmpty();
    }

    @Test
    void readingsThatAreRightAgainEndItAndWhatComesBackSoonIsTheSame() {
        WatchReport report = report(exchanged(exchanged(sound(3), CHANGE, 45, 1), 48, 52, 1));
        assertThat(report.findings()).as(report.describe()).hasSize(1);
        Finding finding = report.findings().get(0);
        assertThat(report.events())
                .extracting(WatchNotice::kind)
                .containsExactly(
                        WatchNotice.Kind.FOUND,
                        WatchNotice.Kind.CLOSED,
                        WatchNotice.Kind.RETURNED,
                        WatchNotice.Kind.CLOSED);
        assertThat(report.events().get(1).finding().closed().orElseThrow())
                .isBetween(day(45).minusSeconds(3600), day(45).plusSeconds(3600));
        assertThat(finding.closed().orElseThrow()).isBetween(day(52).minusSeconds(3600), day(52).plusSeconds(3600));
        assertThat(finding.returns()).isEqualTo(1);
        assertThat(finding.detail()).contains(" 0 as they are written");
    }

    @Test
    void anOutageHidesNoExchange() {
        SiteRecord record = InventedSite.of(DAYS, 4)
                .record((day, depth, velocity, random) -> day >= 38 && day < CHANGE
                        ? new double[] {Double.NaN, Double.NaN}
                        : new double[] {depth, velocity});
        Finding finding = report(exchanged(record, CHANGE, DAYS, 1)).findings().get(0);
        assertThat(finding.names()).containsExactly(FindingName.EXCHANGED_COLUMNS);
        assertThat(finding.sinceRange().start()).isBetween(day(37.9), day(38));
    }

    /** At once by half or more, in a sewer where the numbers of depth and velocity are not far apart: held up, and nothing else. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, 1.5, 2, 3})
    void obstructionsThatComeAtOnceAreNoExchange(double share) {
        for (long seed = 20; seed < 24; seed++) {
            WatchReport report = report(InventedSite.of(DAYS, seed)
                    .record((day, depth, velocity, random) -> InventedSite.heldUp(at -> day < CHANGE ? 0 : share)
                            .apply(day, depth, 0.6 * velocity, random)));
            assertThat(report.findings())
                    .as("%s", report.describe())
                    .isNotEmpty()
                    .noneMatch(finding -> finding.names().contains(FindingName.EXCHANGED_COLUMNS));
        }
    }

    /** What was held up for days may be as usual for an hour, as in a storm: what follows begins no exchange. */
    @Test
    void oneUsualHourAfterDaysOfAnotherStateIsNoUsualDay() {
        SiteRecord record = InventedSite.of(DAYS, 11).record((day, depth, velocity, random) ->
                new double[] {depth, day >= 38 && day < CHANGE - 1 / 24.0 ? 0.5 * velocity : velocity});
        assertThat(report(exchanged(record, CHANGE, DAYS, 1)).findings())
                .isNotEmpty()
                .noneMatch(finding -> finding.names().contains(FindingName.EXCHANGED_COLUMNS));
    }

    /** Water that fills the pipe at once and stands as deep as it used to be fast: its depth does not follow its velocity. */
    @Test
    void waterHeldUpAtOnceIsNoExchange() {
        for (double level : new double[] {0.5, 0.6, 0.7, 0.8}) {
            WatchReport report = report(InventedSite.of(DAYS, 5)
                    .record((day, depth, velocity, random) -> day < CHANGE
                            ? new double[] {depth, velocity}
                            : new double[] {
                                level * (1 + 0.01 * random.nextGaussian()),
                                velocity
                                        * InventedSite.MONITOR.flowArea(depth)
                                        / InventedSite.MONITOR.flowArea(Math.min(level, 0.6))
                            }));
            assertThat(report.findings())
                    .as("%s m: %s", level, report.describe())
                    .isNotEmpty()
                    .noneMatch(finding -> finding.names().contains(FindingName.EXCHANGED_COLUMNS));
        }
    }

    @Test
    void exchangedFromTheFirstDayIsToldByTheDrawings() {
        WatchReport report = report(exchanged(sound(6), 0, DAYS, 1));
        assertThat(report.findings()).as(report.describe()).hasSize(1);
        Finding finding = report.findings().get(0);
        assertThat(finding.names()).containsExactly(FindingName.EXCHANGED_COLUMNS);
        assertThat(finding.since()).isEqualTo(InventedSite.START);
        assertThat(finding.found()).isBetween(day(14), day(15));
        assertThat(finding.detail()).contains("uniform flow by gradient and roughness as given");
        assertThat(DoubtfulReadings.of(report, day(DAYS)).isDoubtful(ReadingUse.FLOW, day(3)))
                .isTrue();
    }

    @Test
    void aBaselineOfExchangedColumnsSaysSoAndASoundOneDoesNot() {
        SiteRecord right = sound(7);
        SiteRecord wrong = exchanged(right, 0, DAYS, 1);
        SiteBaseline baseline =
                BaselineRule.of(InventedSite.MONITOR).learn(wrong).baseline().orElseThrow();
        assertThat(baseline.notes())
                .anyMatch(note -> note.startsWith("the columns of depth and velocity may be exchanged: "));
        assertThat(SiteBaseline.parse(InventedSite.MONITOR, baseline.toText()).exchanged)
                .isEqualTo(baseline.exchanged)
                .isPresent();
        assertThat(BaselineRule.of(InventedSite.MONITOR).learn(right).baseline().orElseThrow().exchanged)
                .isEmpty();
    }

    /** Mended later: the finding closes, and what was learned from exchanged columns accuses no day. */
    @Test
    void mendedColumnsEndWhatTheDrawingsToldAndNothingElseIsTold() {
        WatchReport report = report(exchanged(sound(8), 0, 30, 1));
        assertThat(report.findings()).as(report.describe()).hasSize(1);
        assertThat(report.findings().get(0).closed().orElseThrow())
                .isBetween(day(30).minusSeconds(3600), day(30).plusSeconds(3600));
        assertThat(DoubtfulReadings.of(report, day(DAYS)).isDoubtful(ReadingUse.FLOW, day(40)))
                .isFalse();
    }

    /** A level behind a weir is deep and slow from the first day on, and does not follow the velocity. */
    @Test
    void aPoolBehindAWeirIsNoExchangedBaseline() {
        for (double weir : new double[] {0.2, 0.3, 0.4, 0.5}) {
            SiteRecord record = InventedSite.of(20, 9).record((day, depth, velocity, random) -> {
                double flow = velocity * InventedSite.MONITOR.flowArea(depth);
                double level = Math.min(0.59, weir + 0.5 * Math.pow(flow / 0.05, 2.0 / 3));
                return new double[] {level, flow / InventedSite.MONITOR.flowArea(level)};
            });
            BaselineSearch search = BaselineRule.of(InventedSite.MONITOR).learn(record);
            assertThat(search.baseline().orElseThrow().exchanged)
                    .as("weir of %s m", weir)
                    .isEmpty();
        }
    }

    @Test
    void aStateKeptAsTextGoesOnAsIfNothingHadHappened() {
        for (double from : new double[] {0, CHANGE}) {
            SiteRecord record = exchanged(sound(10), from, 47, from == 0 ? 1 : 1000);
            WatchRule rule = rule(record);
            List<WatchNotice> told = new ArrayList<>();
            Machine<SiteReading, WatchNotice, WatchState> machine = rule.start();
            int count = 0;
            for (SiteReading reading : record) {
                told.addAll(machine.next(reading));
                if (++count % 7 == 0 && count > 40 * 96 || count % 501 == 0) {
                    machine = rule.startFromText(machine.state().toText());
                }
            }
            String text = machine.state().toText();
            told.addAll(machine.finish());
            assertThat(told).isEqualTo(rule.over(record)).isNotEmpty();
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> rule.startFromText(text.replace("exchangedFollows", "exchangedFellow")))
                    .withMessageContaining("exchangedFollows");
        }
    }
}
