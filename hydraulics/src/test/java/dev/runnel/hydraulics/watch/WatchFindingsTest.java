package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.hydraulics.watch.InventedSite.Fault;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The shape of each finding on small invented sites; how good the watch is, the score in the proof says. */
class WatchFindingsTest {
    private static Instant day(double day) {
        return InventedSite.START.plus(Duration.ofMinutes(Math.round(day * 1440)));
    }

    private static WatchReport watch(SiteRecord record) {
        return WatchRule.of(BaselineRule.of(InventedSite.MONITOR)
                        .learn(record)
                        .baseline()
                        .orElseThrow())
                .watch(record);
    }

    private static Finding only(WatchReport report) {
        assertThat(report.findings()).as(report.describe()).hasSize(1);
        return report.findings().get(0);
    }

    private static boolean between(double day, double from, double to) {
        return day >= from && day < to;
    }

    @Test
    void knockedDepthSensorIsADepthStepAndItsFlowIsWithheld() {
        SiteRecord record = InventedSite.of(60, 11)
                .record((day, depth, velocity, random) -> new double[] {day < 30.5 ? depth : depth + 0.05, velocity});
        WatchReport report = watch(record);
        Finding finding = only(report);
        assertThat(finding.name()).isEqualTo(FindingName.DEPTH_STEP);
        assertThat(finding.shape()).isEqualTo(ChangeShape.STEP);
        assertThat(Duration.between(day(30.5), finding.since()).abs()).isLessThan(Duration.ofHours(24));
        DoubtfulReadings doubt = DoubtfulReadings.of(report, record.interval().end());
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(29))).isFalse();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(40))).isTrue();
        assertThat(doubt.isDoubtful(ReadingUse.VELOCITY, day(40))).isFalse();
        List<StretchFlow> stretches = StretchFlow.of(flow(record), dates(), ZoneOffset.UTC, doubt);
        assertThat(stretches).hasSize(2);
        assertThat(stretches.get(0).flow().value()).isPresent();
        assertThat(stretches.get(1).flow().isWithheld()).isTrue();
        assertThat(stretches.get(1).flow().findings()).containsExactly(1);
        assertThat(stretches.get(1).flow().asRead())
                .isGreaterThan(1.2 * stretches.get(0).flow().asRead());
    }

    private static Set<LocalDate> dates() {
        Set<LocalDate> dates = new TreeSet<>();
        for (int i = 0; i < 60; i++) {
            dates.add(LocalDate.of(2026, 3, 2).plusDays(i));
        }
        return dates;
    }

    private static Series flow(SiteRecord record) {
        SeriesBuilder flow = Series.builder();
        for (SiteReading reading : record) {
            double value = InventedSite.MONITOR
                    .flow(reading.depth(), reading.velocity())
                    .discharge();
            flow.add(reading.time(), value);
        }
        return flow.build();
    }

    /** Rain of 6 mm in two hours, every 30 hours from day 30 on: by the rule of the rain no hour after it is dry. */
    private static SiteRecord inRain(Fault fault) {
        double[] rain = new double[60 * 96];
        for (int first = 30 * 96; first < rain.length; first += 120) {
            for (int i = first; i < Math.min(rain.length, first + 8); i++) {
                rain[i] = 0.75;
            }
        }
        return new InventedSite(60, 15, 31, 0.02, false)
                .record(fault, true, false)
                .withRain(RegularSeries.of(InventedSite.START, Duration.ofMinutes(15), rain));
    }

    @Test
    void slowWaterDeeperThanLearnedIsToldInWetWeatherTooAndStandsUntilItIsSeenToBeOver() {
        Finding finding = only(watch(inRain(InventedSite.heldUp(day -> between(day, 32, 39) ? 1.2 : 0))));
        assertThat(finding.direction()).isEqualTo(Direction.DOWN);
        assertThat(finding.found()).isBetween(day(32), day(33.5));
        assertThat(finding.closed().orElseThrow()).isBetween(day(39), day(39.5));
        assertThat(finding.moved())
                .filteredOn(moved -> moved.quantity() == Quantity.VELOCITY_AT_DEPTH)
                .singleElement()
                .satisfies(moved -> assertThat(moved.change()).isBetween(-0.85, -0.4));
    }

    @Test
    void waterThatAStormItselfHoldsUpForSomeHoursIsNoFinding() {
        SiteRecord record = inRain(InventedSite.heldUp(day -> day >= 30 && (day - 30) % 1.25 < 10 / 24.0 ? 1.2 : 0));
        assertThat(watch(record).findings()).isEmpty();
    }

    @Test
    void foulingVelocitySensorIsVelocityLoss() {
        Finding finding = only(watch(InventedSite.of(60, 12).record((day, depth, velocity, random) -> new double[] {
            depth, velocity * (1 - InventedSite.ramp(25, 10, 0.4).applyAsDouble(day))
        })));
        assertThat(finding.name()).isEqualTo(FindingName.VELOCITY_LOSS);
        assertThat(finding.isOpen()).isTrue();
        assertThat(finding.describe()).contains("consistent with: a velocity sensor that loses sight");
    }

    /** What sinks to nothing is one thing: readings of no water are where it went. */
    @Test
    void depthSensorThatDriftsDownToNothingIsOneFinding() {
        SiteRecord record = InventedSite.of(110, 24).record((day, depth, velocity, random) ->
                new double[] {Math.max(0, depth - 0.003 * Math.max(0, day - 25)), velocity});
        WatchReport report = watch(record);
        Finding finding = only(report);
        assertThat(finding.names()).containsExactly(FindingName.DEPTH_DRIFT);
        assertThat(finding.isOpen()).isTrue();
        assertThat(DoubtfulReadings.of(report, record.interval().end()).isDoubtful(ReadingUse.DEPTH, day(105)))
                .isTrue();
    }

    /** A bed of 0.3 of the usual depth that grows for twenty days lifts the water by as much and takes its area away. */
    @Test
    void bedThatGrowsAtTheMonitorIsNamedBesideAnObstructionAndItsFlowIsDoubtful() {
        SiteRecord record = InventedSite.of(80, 21).record((day, depth, velocity, random) -> {
            double bed = InventedSite.ramp(25, 20, 0.06).applyAsDouble(day);
            double area = InventedSite.MONITOR.flowArea(depth + bed) - InventedSite.MONITOR.flowArea(bed);
            return new double[] {depth + bed, velocity * InventedSite.MONITOR.flowArea(depth) / area};
        });
        WatchReport report = watch(record);
        Finding finding = only(report);
        assertThat(finding.names()).contains(FindingName.SEDIMENT);
        DoubtfulReadings doubt = DoubtfulReadings.of(report, record.interval().end());
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(60))).isTrue();
    }

    /** The same rise by an obstruction downstream, which leaves the flow as it is. */
    @Test
    void slowObstructionIsNoBed() {
        Finding finding =
                only(watch(InventedSite.of(80, 21).record(InventedSite.heldUp(InventedSite.ramp(25, 20, 0.5)))));
        assertThat(finding.names()).containsExactly(FindingName.HELD_UP);
    }

    /** Whatever the rain: nothing that would have moved the velocity at its depth the other way, and told after it began. */
    @Test
    void whatIsHeldUpIsNeverCalledReleasedAndBeginsBeforeItIsTold() {
        for (long seed = 30; seed < 38; seed++) {
            for (Finding finding : watch(InventedSite.of(50, seed)
                            .record(InventedSite.heldUp(
                                    day -> between(day, 25, 33) ? 0.7 * Math.min(1, (day - 25) / 4) : 0)))
                    .findings()) {
                assertThat(finding.direction()).as(finding.describe()).isEqualTo(Direction.DOWN);
                assertThat(finding.names())
                        .as(finding.describe())
                        .contains(FindingName.HELD_UP)
                        .doesNotContain(FindingName.RELEASED, FindingName.VELOCITY_GAIN);
                assertThat(finding.since()).as(finding.describe()).isBefore(finding.found());
                assertThat(finding.sinceRange().end()).as(finding.describe()).isBeforeOrEqualTo(finding.found());
            }
        }
    }

    @Test
    void releasedObstructionClosesTheFindingAndIsNotAnotherOne() {
        Finding finding = only(watch(InventedSite.of(60, 13)
                .record(InventedSite.heldUp(day -> between(day, 22, 32) ? 0.8 * Math.min(1, (day - 22) / 4) : 0))));
        assertThat(finding.name()).isEqualTo(FindingName.HELD_UP);
        assertThat(finding.closed()).isPresent();
        assertThat(Duration.between(day(32), finding.closed().orElseThrow()).abs())
                .isLessThan(Duration.ofHours(12));
    }

    @Test
    void weeklyBlindingIsOneRecurringFinding() {
        Finding finding = only(watch(
                InventedSite.of(80, 14).record(InventedSite.heldUp(day -> day < 22 ? 0 : (day - 22) % 7 / 7 * 0.9))));
        assertThat(finding.name()).isEqualTo(FindingName.HELD_UP);
        assertThat(finding.isRecurring()).isTrue();
        assertThat(finding.recurrence().orElseThrow()).isBetween(Duration.ofHours(6 * 24), Duration.ofHours(8 * 24));
    }

    @Test
    void zerosWeakEchoFlipsAndFrozenAreFoundWithinTwoDaysAndClose() {
        check(FindingName.VELOCITY_ZEROS, (day, depth, velocity, random) ->
                new double[] {depth, between(day, 25, 32) && random.nextDouble() < 0.25 ? 0 : velocity});
        check(FindingName.WEAK_ECHO, (day, depth, velocity, random) ->
                new double[] {depth, between(day, 25, 32) && random.nextDouble() < 0.35 ? 0.4 * velocity : velocity});
        check(FindingName.FALSE_ECHO, (day, depth, velocity, random) ->
                new double[] {between(day, 25, 32) && random.nextDouble() < 0.15 ? 2 * depth : depth, velocity});
        check(FindingName.FALSE_ECHO, (day, depth, velocity, random) ->
                new double[] {between(day, 25, 32) && random.nextDouble() < 0.15 ? 0.4 * depth : depth, velocity});
        check(FindingName.FALSE_VELOCITY, (day, depth, velocity, random) ->
                new double[] {depth, between(day, 25, 32) && random.nextDouble() < 0.2 ? 2 * velocity : velocity});
        check(FindingName.FALSE_VELOCITY, (day, depth, velocity, random) ->
                new double[] {depth, between(day, 25, 32) && random.nextDouble() < 0.1 ? 1.6 * velocity : velocity});
        check(FindingName.SIGN_FLIPS, (day, depth, velocity, random) ->
                new double[] {depth, between(day, 25, 32) && random.nextDouble() < 0.25 ? -velocity : velocity});
        check(FindingName.REVERSED_SIGN, (day, depth, velocity, random) ->
                new double[] {depth, between(day, 25, 32) ? -velocity : velocity});
    }

    private static void check(FindingName name, Fault fault) {
        Finding finding = only(watch(InventedSite.of(45, 15).record(fault)));
        assertThat(finding.name()).isEqualTo(name);
        assertThat(finding.found()).isBetween(day(25), day(27));
        assertThat(finding.closed().orElseThrow()).isBetween(day(31.5), day(33.5));
    }

    @Test
    void frozenDepthIsNamedWithItsBeginning() {
        SeriesBuilder depth = Series.builder();
        SeriesBuilder velocity = Series.builder();
        for (SiteReading reading : InventedSite.of(45, 16).record(Fault.NONE)) {
            boolean frozen = !reading.time().isBefore(day(25)) && reading.time().isBefore(day(28));
            depth.add(reading.time(), frozen ? 0.137 : reading.depth());
            velocity.add(reading.time(), reading.velocity());
        }
        Finding finding = only(watch(SiteRecord.of(depth.build(), velocity.build())));
        assertThat(finding.name()).isEqualTo(FindingName.FROZEN_DEPTH);
        assertThat(finding.since()).isEqualTo(day(25));
        assertThat(finding.found()).isEqualTo(day(25).plus(Duration.ofHours(9)));
        assertThat(finding.closed().orElseThrow()).isBetween(day(28).minusSeconds(3600), day(28).plusSeconds(3600));
    }

    @Test
    void loggerThatRepeatsItsReadingsAgainIsStillOneFinding() {
        SeriesBuilder depth = Series.builder();
        SeriesBuilder velocity = Series.builder();
        for (SiteReading reading : InventedSite.of(40, 16).record(Fault.NONE)) {
            Instant time = reading.time();
            boolean frozen = !time.isBefore(day(25)) && time.isBefore(day(25).plus(Duration.ofHours(14)))
                    || !time.isBefore(day(29)) && time.isBefore(day(29).plus(Duration.ofHours(14)));
            depth.add(time, frozen ? 0.137 : reading.depth());
            velocity.add(time, frozen ? 0.71 : reading.velocity());
        }
        Finding finding = only(watch(SiteRecord.of(depth.build(), velocity.build())));
        assertThat(finding.names()).containsExactly(FindingName.FROZEN_LOGGER);
        assertThat(finding.since()).isEqualTo(day(25));
        assertThat(finding.returns()).isEqualTo(1);
        assertThat(finding.closed().orElseThrow()).isBetween(day(29).plusSeconds(13 * 3600), day(30));
    }

    /** A habit: the velocity alone for some hours, then both, then both again weeks later, the depth told first. */
    @Test
    void loggerThatHoldsItsLastReadingsNowAndThenIsOneFindingWithItsStretches() {
        SeriesBuilder depth = Series.builder();
        SeriesBuilder velocity = Series.builder();
        for (SiteReading reading : InventedSite.of(75, 16).record(Fault.NONE)) {
            double day = Duration.between(day(0), reading.time()).toMinutes() / 1440.0;
            boolean both = between(day, 33, 33.5) || between(day, 55, 55.5);
            depth.add(reading.time(), both ? 0.137 : reading.depth());
            // The last time the velocity moves on for a while, so that the depth is told first.
            boolean still = between(day, 25, 25.25) || between(day, 33, 33.5);
            velocity.add(reading.time(), still ? 0.71 : reading.velocity());
        }
        SiteRecord record = SiteRecord.of(depth.build(), velocity.build());
        WatchReport report = watch(record);
        Finding finding = only(report);
        assertThat(finding.names()).containsExactly(FindingName.FROZEN_LOGGER);
        assertThat(finding.stretches()).hasSize(3);
        assertThat(finding.stretches().stream().map(FindingStretch::from)).containsExactly(day(25), day(33), day(55));
        assertThat(finding.stood(day(75)).toMinutes() / 60.0).isBetween(28.0, 32.0);
        DoubtfulReadings doubt = DoubtfulReadings.of(report, record.interval().end());
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(25.1))).isTrue();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(28))).isFalse();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(33.2))).isTrue();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(45))).isFalse();
        assertThat(doubt.isDoubtful(ReadingUse.FLOW, day(55.2))).isTrue();
    }

    /** After more than a month it is another finding. */
    @Test
    void depthThatFreezesOnceMoreAfterLongIsAnotherFinding() {
        for (double again : new double[] {54, 58}) {
            SeriesBuilder depth = Series.builder();
            SeriesBuilder velocity = Series.builder();
            for (SiteReading reading : InventedSite.of(62, 16).record(Fault.NONE)) {
                double day = Duration.between(day(0), reading.time()).toMinutes() / 1440.0;
                boolean frozen = between(day, 25, 25.5) || between(day, again, again + 0.5);
                depth.add(reading.time(), frozen ? 0.137 : reading.depth());
                velocity.add(reading.time(), reading.velocity());
            }
            assertThat(watch(SiteRecord.of(depth.build(), velocity.build())).findings())
                    .hasSize(again == 54 ? 1 : 2);
        }
    }

    @Test
    void frozenLoggerIsOneFindingThatSaysBoth() {
        SeriesBuilder depth = Series.builder();
        SeriesBuilder velocity = Series.builder();
        for (SiteReading reading : InventedSite.of(45, 16).record(Fault.NONE)) {
            boolean frozen = !reading.time().isBefore(day(25)) && reading.time().isBefore(day(28));
            depth.add(reading.time(), frozen ? 0.137 : reading.depth());
            velocity.add(reading.time(), frozen ? 0.71 : reading.velocity());
        }
        SiteRecord record = SiteRecord.of(depth.build(), velocity.build());
        WatchReport report = watch(record);
        Finding finding = only(report);
        assertThat(finding.names()).containsExactly(FindingName.FROZEN_LOGGER);
        assertThat(finding.since()).isEqualTo(day(25));
        assertThat(finding.found()).isEqualTo(day(25).plus(Duration.ofHours(4)));
        assertThat(finding.detail()).contains("depth and the velocity");
        assertThat(finding.closed().orElseThrow()).isBetween(day(28).minusSeconds(3600), day(28).plusSeconds(3600));
        DoubtfulReadings doubt = DoubtfulReadings.of(report, record.interval().end());
        assertThat(doubt.isDoubtful(ReadingUse.DEPTH, day(26))).isTrue();
        assertThat(doubt.isDoubtful(ReadingUse.VELOCITY, day(26))).isTrue();
    }

    @Test
    void stepInAWetSeasonIsAlsoNamedByTheDaysBeforeIt() {
        // Against the dry baseline the depth hardly moves; against the days before the step it falls by 7 %.
        SiteRecord record = InventedSite.of(45, 19).record((day, depth, velocity, random) -> {
            double wet = between(day, 20, 30.5) ? 1.08 : 1;
            double gone = day < 30.5 ? 1 : 1.35;
            return new double[] {depth * wet, velocity * Math.pow(wet, 0.55) * gone};
        });
        Finding finding = only(watch(record));
        assertThat(finding.shape()).isEqualTo(ChangeShape.STEP);
        assertThat(finding.names()).containsExactlyInAnyOrder(FindingName.VELOCITY_GAIN, FindingName.RELEASED);
    }

    @Test
    void clockAnHourOffIsNamed() {
        SiteRecord sound = InventedSite.of(45, 17).record(Fault.NONE);
        SeriesBuilder depth = Series.builder();
        SeriesBuilder velocity = Series.builder();
        for (SiteReading reading : sound) {
            Instant time = reading.time().isBefore(day(25))
                    ? reading.time()
                    : reading.time().plusSeconds(3600);
            depth.add(time, reading.depth());
            velocity.add(time, reading.velocity());
        }
        Finding finding = only(watch(SiteRecord.of(depth.build(), velocity.build())));
        assertThat(finding.name()).isEqualTo(FindingName.CLOCK_OF_MONITOR);
        assertThat(finding.direction()).isEqualTo(Direction.UP);
        assertThat(finding.detail()).contains("late by the clock of the monitor");
    }

    /** Stamps of a logger that still tells winter time until it is moved, read as times of the zone; the day as people live it. */
    private static SiteRecord movedLate(double moved) {
        Instant change = Instant.parse("2026-03-29T01:00:00Z");
        SeriesBuilder depth = Series.builder();
        SeriesBuilder velocity = Series.builder();
        Instant last = Instant.MIN;
        Random random = new Random(5);
        for (int i = 0; i < 96 * 45; i++) {
            Instant lived = day(i / 96.0);
            double turn = 2 * Math.PI * i / 96.0;
            double level = 0.12
                    * (1 + 0.2 * Math.sin(turn - 2.4) + 0.1 * Math.sin(2 * turn))
                    * (1 + 0.02 * random.nextGaussian());
            double speed = 0.7 * Math.pow(level / 0.12, 0.6) * (1 + 0.04 * random.nextGaussian());
            if (!lived.isBefore(change) && lived.isBefore(change.plusSeconds(3600))) {
                continue;
            }
            Instant time = lived.isBefore(change) ? lived : lived.minusSeconds(3600);
            boolean late = !time.isBefore(change.plusSeconds(3600)) && time.isBefore(day(moved));
            Instant stamp = late ? time.minusSeconds(3600) : time;
            if (stamp.isAfter(last)) {
                last = stamp;
                depth.add(stamp, level);
                velocity.add(stamp, speed);
            }
        }
        return SiteRecord.of(depth.build(), velocity.build());
    }

    private static WatchReport ofLondon(SiteRecord record) {
        SiteBaseline baseline = BaselineRule.of(InventedSite.MONITOR)
                .withZone(ZoneId.of("Europe/London"))
                .learn(record)
                .baseline()
                .orElseThrow();
        return WatchRule.of(baseline).watch(record);
    }

    @Test
    void loggerMovedByAnHourTheDayAfterTheCivilChangeIsNamedByTheLeapOfItsStamps() {
        WatchReport report = ofLondon(movedLate(28.4));
        assertThat(report.findings()).as(report.describe()).isEmpty();
        Finding remark = report.remarks().get(0);
        assertThat(report.remarks()).hasSize(1);
        assertThat(remark.number()).isZero();
        assertThat(remark.names()).containsExactly(FindingName.CLOCK_OF_MONITOR);
        assertThat(remark.detail()).startsWith("clock of the monitor moved by an hour at the civil change");
        assertThat(remark.describe()).startsWith("Remark: clock of the monitor").doesNotContain("Finding");
        assertThat(remark.since()).isEqualTo(Instant.parse("2026-03-29T01:00:00Z"));
        assertThat(remark.closed().orElseThrow()).isBetween(day(28.25), day(28.4));
        assertThat(remark.found()).isBefore(day(32));
    }

    @Test
    void loggerLeftBehindAtTheCivilChangeIsNamedAfterTwoDays() {
        Finding finding = only(ofLondon(movedLate(32.5)));
        assertThat(finding.names()).containsExactly(FindingName.CLOCK_OF_MONITOR);
        assertThat(finding.direction()).isEqualTo(Direction.DOWN);
        assertThat(finding.detail()).contains("clock of the monitor moved by an hour at the civil change");
        assertThat(finding.found()).isBefore(day(29.5));
        assertThat(finding.closed().orElseThrow()).isBetween(day(32), day(34));
    }

    @Test
    void gapAfterACivilChangeAloneIsNoFinding() {
        SiteRecord sound = InventedSite.of(45, 20).record(Fault.NONE);
        SeriesBuilder depth = Series.builder();
        SeriesBuilder velocity = Series.builder();
        for (SiteReading reading : sound) {
            if (reading.time().isBefore(day(27.85)) || reading.time().isAfter(day(27.9))) {
                depth.add(reading.time(), reading.depth());
                velocity.add(reading.time(), reading.velocity());
            }
        }
        WatchRule rule = WatchRule.of(BaselineRule.of(InventedSite.MONITOR)
                        .learn(sound)
                        .baseline()
                        .orElseThrow())
                .withCivilZone(ZoneId.of("Europe/London"));
        WatchReport report = rule.watch(SiteRecord.of(depth.build(), velocity.build()));
        assertThat(report.findings()).as(report.describe()).isEmpty();
        assertThat(report.remarks()).isEmpty();
    }

    /** A logger that nobody puts back in autumn: people rise an hour later by it from that Sunday on. */
    @Test
    void loggerLeftBehindInAutumnIsNamedAfterTwoDays() {
        Instant start = Instant.parse("2026-10-01T00:00:00Z");
        Instant change = Instant.parse("2026-10-25T01:00:00Z");
        SeriesBuilder depth = Series.builder();
        SeriesBuilder velocity = Series.builder();
        Random random = new Random(7);
        for (int i = 0; i < 96 * 35; i++) {
            Instant time = start.plusSeconds(900L * i);
            boolean winter = !time.isBefore(change);
            // Local time is an hour ahead in summer.
            double turn = 2 * Math.PI * (i + (winter ? 0 : 4)) / 96.0;
            double level = 0.12
                    * (1 + 0.2 * Math.sin(turn - 2.4) + 0.1 * Math.sin(2 * turn))
                    * (1 + 0.02 * random.nextGaussian());
            Instant stamp = winter ? time.plusSeconds(3600) : time;
            depth.add(stamp, level);
            velocity.add(stamp, 0.7 * Math.pow(level / 0.12, 0.6) * (1 + 0.04 * random.nextGaussian()));
        }
        Finding finding = only(ofLondon(SiteRecord.of(depth.build(), velocity.build())));
        assertThat(finding.names()).containsExactly(FindingName.CLOCK_OF_MONITOR);
        assertThat(finding.direction()).isEqualTo(Direction.UP);
        assertThat(finding.detail()).contains("on 2 dry days in a row", "at the civil change, or left behind by it");
        assertThat(finding.found()).isBefore(Instant.parse("2026-10-27T01:30:00Z"));
        assertThat(finding.isOpen()).isTrue();
    }

    @Test
    void levelAloneSaysLevelUpWithoutRainAndNamesNoCause() {
        Finding finding = only(
                watch(InventedSite.of(60, 18).record(InventedSite.heldUp(InventedSite.ramp(25, 5, 0.7)), false, true)));
        assertThat(finding.names()).containsExactly(FindingName.LEVEL_UP);
        assertThat(finding.describe())
                .contains("this says: level up without rain")
                .doesNotContain("consistent with");
    }

    @Test
    void baselineOfLevelAloneSaysWhatCannotBeTested() {
        SiteBaseline baseline = BaselineRule.of(InventedSite.MONITOR)
                .learn(InventedSite.of(20, 19).record(Fault.NONE, false, false))
                .baseline()
                .orElseThrow();
        assertThat(baseline.watches(Quantity.DEPTH)).isTrue();
        assertThat(baseline.watches(Quantity.FLOW)).isFalse();
        assertThat(baseline.notTested()).anyMatch(text -> text.startsWith("velocity at the same depth"));
        assertThat(baseline.notTested()).anyMatch(text -> text.startsWith("rain:"));
        assertThat(SiteBaseline.parse(InventedSite.MONITOR, baseline.toText())).isEqualTo(baseline);
    }

    @Test
    void faultInTheFirstDaysIsNoBaseline() {
        SiteRecord record = InventedSite.of(60, 20).record(InventedSite.heldUp(day -> day < 7 ? 0.8 : 0));
        BaselineSearch search = BaselineRule.of(InventedSite.MONITOR).learn(record);
        assertThat(search.refused()).isNotEmpty();
        assertThat(search.refused().get(0).reasons().get(0)).contains("velocity at the same depth changed by +");
        assertThat(search.baseline().orElseThrow().interval().start()).isAfterOrEqualTo(day(6));
        BaselineSearch stated = BaselineRule.of(InventedSite.MONITOR)
                .withInterval(Interval.of(day(0), day(14)))
                .learn(record);
        assertThat(stated.baseline()).isEmpty();
        assertThat(stated.describe()).startsWith("no baseline is to be had; nothing is judged.");
    }
}
