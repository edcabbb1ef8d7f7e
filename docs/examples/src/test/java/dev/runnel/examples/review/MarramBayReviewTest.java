package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.examples.House;
import dev.runnel.examples.marrambay.Scenario;
import dev.runnel.examples.marrambay.Storm;
import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.hydraulics.watch.ChangeShape;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.gauge.TipSummary;
import dev.runnel.rainfall.response.StormResponse;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.balance.DailyTotal;
import dev.runnel.timeseries.csv.CsvIssue.Kind;
import dev.runnel.timeseries.csv.CsvReport;
import dev.runnel.timeseries.quality.QualityFlag;
import dev.runnel.timeseries.quality.QualityFlags;
import dev.runnel.timeseries.quality.QualityReport;
import dev.runnel.timeseries.quality.Verdict;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The review of the demo against what was planted in it. */
class MarramBayReviewTest {
    private static final Path TOWN = House.root().resolve("docs/examples/marram-bay");

    private static SiteReview saltingsLane;
    private static SiteReview quayStreet;

    @BeforeAll
    static void reviewBoth() {
        saltingsLane = SiteReview.of(SiteData.read(TOWN.resolve("saltings-lane")));
        quayStreet = SiteReview.of(SiteData.read(TOWN.resolve("quay-street")));
    }

    private static LocalDate day(Instant time) {
        return LocalDate.ofInstant(time, Scenario.ZONE);
    }

    private static Interval hoursAfter(Storm storm, int hours) {
        return Interval.of(storm.start(), storm.end().plus(Duration.ofHours(hours)));
    }

    @Test
    void recordSpansTheSixWeeksAtTwoMinutes() {
        assertThat(saltingsLane.data().record()).isEqualTo(Interval.of(Scenario.START, Scenario.END));
        assertThat(quayStreet.data().record()).isEqualTo(Interval.of(Scenario.START, Scenario.END));
        assertThat(saltingsLane.data().depth().interval()).isEqualTo(Scenario.STEP);
    }

    /** 30,270 steps; 100 lost; 14 repeated, 1 contradicted, 1 spoiled, 60 in the repeated hour. */
    @Test
    void everyBlemishOfTheDepthAtSaltingsLaneIsCounted() {
        CsvReport report = saltingsLane.data().depth().lines().report();

        assertThat(report.lines()).isEqualTo(30_270 - 100 + 14 + 1);
        assertThat(report.count(Kind.DUPLICATE)).isEqualTo(14);
        assertThat(report.count(Kind.CONFLICTING_DUPLICATE)).isEqualTo(1);
        assertThat(report.count(Kind.TOO_FEW_COLUMNS)).isEqualTo(1);
        assertThat(report.count(Kind.AMBIGUOUS_TIME)).isEqualTo(60);
        assertThat(report.count(Kind.OUT_OF_ORDER)).isEqualTo(5);
        assertThat(report.rejected()).isEqualTo(14 + 1 + 1 + 60);
        assertThat(report.altered()).isEqualTo(5);
        assertThat(report.issues()).hasSize(81);
    }

    @Test
    void everyOtherBlemishIsCounted() {
        CsvReport velocity =
                saltingsLane.data().velocity().orElseThrow().lines().report();
        assertThat(velocity.count(Kind.UNREADABLE_NUMBER)).isEqualTo(1);
        assertThat(velocity.count(Kind.AMBIGUOUS_TIME)).isEqualTo(60);
        assertThat(velocity.issueCount()).isEqualTo(61);

        CsvReport depth = quayStreet.data().depth().lines().report();
        assertThat(depth.count(Kind.DUPLICATE)).isEqualTo(6);
        assertThat(depth.issueCount()).isEqualTo(6);

        CsvReport tips = quayStreet.data().rain().orElseThrow().report().orElseThrow();
        assertThat(tips.count(Kind.UNREADABLE_TIME)).isEqualTo(1);
        assertThat(tips.issueCount()).isEqualTo(1);
    }

    @Test
    void gapsAreThoseOfTheLoggersAndOfTheClockChange() {
        assertThat(saltingsLane.data().depth().gaps())
                .contains(
                        Interval.parse("2026-10-13T01:58:00Z/2026-10-13T05:20:00Z"),
                        Interval.parse("2026-10-24T23:58:00Z/2026-10-25T02:00:00Z"));
        assertThat(quayStreet.data().depth().gaps())
                .containsExactly(Interval.parse("2026-10-22T04:58:00Z/2026-10-23T02:00:00Z"));
    }

    /** The peak of a storm of hours may come before its centre; from centre to centre the sewer answers alike. */
    @Test
    void theLagIsTheOneThatTheShapeOfAStormDoesNotMove() {
        List<StormResponse> answers =
                saltingsLane.responses().orElseThrow().responses().all();
        assertThat(answers).anyMatch(each -> each.lagToPeak().orElseThrow().isNegative());
        assertThat(answers)
                .hasSize(11)
                .allSatisfy(each -> assertThat(each.lagToCentre().orElseThrow())
                        .isBetween(Duration.ofMinutes(25), Duration.ofMinutes(65)));
    }

    @Test
    void rainIsTheTipsAndTheirCorrection() throws IOException {
        long tips = Files.readAllLines(TOWN.resolve("saltings-lane/tips.csv")).stream()
                .filter(line -> line.startsWith("2026-"))
                .count();
        RainFindings rain = saltingsLane.rain().orElseThrow();

        TipSource source = (TipSource) saltingsLane.data().rain().orElseThrow();
        TipSummary summary = source.bucket().summary(source.tips());
        assertThat(summary.tips()).isEqualTo((int) tips);
        assertThat(summary.nominalMm()).isCloseTo(tips * Scenario.TIP_MM, within(1e-9));
        assertThat(rain.rain().sum()).isCloseTo(summary.depthMm(), within(1e-9));
        double storms = rain.storms().stream()
                .mapToDouble(storm -> storm.event().depthMm())
                .sum();
        assertThat(storms + rain.events().droppedMm()).isCloseTo(rain.rain().sum(), within(1e-9));
    }

    /**
     * What a bucket still holds at the end of a storm is missing there, and what it held before comes with the next: up to
     * a tip each. The first tip is spread over the time before it.
     */
    @Test
    void stormsAreThosePlantedWithTheirDepths() {
        List<RainFindings.Storm> storms = saltingsLane.rain().orElseThrow().storms();

        assertThat(storms).hasSameSizeAs(Scenario.STORMS);
        for (int i = 0; i < storms.size(); i++) {
            RainfallEvent event = storms.get(i).event();
            Storm planted = Scenario.STORMS.get(i);
            assertThat(event.depthMm()).isCloseTo(planted.depthMm(), within(2 * Scenario.TIP_MM));
            assertThat(event.start()).isBetween(planted.start().minus(TipSource.CAP), planted.end());
            assertThat(event.end()).isBefore(planted.end().plus(Duration.ofMinutes(30)));
        }
        assertThat(saltingsLane.rain().orElseThrow().events().droppedEvents()).isEqualTo(1);
    }

    @Test
    void theGreatStormIsRareAndTheOthersAreBelowTheTable() {
        List<RainFindings.Storm> storms = saltingsLane.rain().orElseThrow().storms();
        for (int i = 0; i < storms.size(); i++) {
            boolean isWithin = storms.get(i)
                    .rarity()
                    .orElseThrow()
                    .governing()
                    .orElseThrow()
                    .returnPeriod()
                    .isWithin();
            assertThat(isWithin)
                    .as("storm %d", i)
                    .isEqualTo(Scenario.STORMS.get(i).isConvective());
        }
        assertThat(storms.get(Scenario.STORMS.indexOf(Scenario.GREAT_STORM))
                        .rarity()
                        .orElseThrow()
                        .governing()
                        .orElseThrow()
                        .duration())
                .isEqualTo(Duration.ofHours(1));
    }

    @Test
    void theTwoHardStormsSurchargeSaltingsLaneAndNothingElseDoes() {
        List<SurchargePeriod> periods = saltingsLane.flow().surcharges();

        assertThat(periods).hasSize(2).allMatch(SurchargePeriod::isComplete);
        assertThat(hoursAfter(Scenario.GREAT_STORM, 1).contains(periods.get(0).peakTime()))
                .isTrue();
        assertThat(hoursAfter(Scenario.MORNING_AFTER, 1).contains(periods.get(1).peakTime()))
                .isTrue();
        assertThat(quayStreet.flow().surcharges()).isEmpty();
    }

    /** 3.7 ha are paved in the scenario, and all but the wetting of it, less than a millimetre a storm, comes to the sewer. */
    @Test
    void theStormsComeFromThePavedArea() {
        ResponseFindings found = saltingsLane.responses().orElseThrow();

        assertThat(found.responses().all()).hasSize(11);
        found.responses()
                .all()
                .forEach(each -> assertThat(each.runoff().percent().orElseThrow())
                        .as(each.toString())
                        .isBetween(65.0, 100.0));
        assertThat(found.trends()).isNotEmpty().allMatch(trend -> trend.test().pValue() > 0.05);
    }

    /** The second storm begins more than 12 hours after the first spill and so counts as another. */
    @Test
    void twoSpillsAreCounted() {
        FlowFindings.Spills spills = saltingsLane.flow().spills().orElseThrow();

        assertThat(spills.periods()).hasSize(2);
        assertThat(spills.tally().count()).isEqualTo(2);
        assertThat(Duration.between(
                        spills.periods().get(0).interval().start(),
                        spills.periods().get(1).interval().start()))
                .isBetween(Duration.ofHours(12), Duration.ofHours(36));
        assertThat(quayStreet.flow().spills()).isEmpty();
    }

    @Test
    void alarmsComeWithTheTwoHardStormsOnly() {
        for (SiteReview review : List.of(saltingsLane, quayStreet)) {
            assertThat(review.flow().alarms()).hasSize(2).noneMatch(alarm -> alarm.isActive());
            assertThat(hoursAfter(Scenario.GREAT_STORM, 1)
                            .contains(review.flow().alarms().get(0).onset()))
                    .isTrue();
            assertThat(hoursAfter(Scenario.MORNING_AFTER, 1)
                            .contains(review.flow().alarms().get(1).onset()))
                    .isTrue();
        }
    }

    @Test
    void foulingAndFreezingAreFoundAtSaltingsLaneAndCalledNothingElse() {
        List<Finding> findings = saltingsLane.watched().findings();

        assertThat(findings).hasSize(2);
        Finding fouling = findings.get(0);
        assertThat(fouling.names()).containsExactly(FindingName.VELOCITY_LOSS);
        assertThat(fouling.since())
                .isBetween(
                        Scenario.FOULING_START.minus(Duration.ofDays(2)),
                        Scenario.FOULING_START.plus(Duration.ofDays(2)));
        Finding frozen = findings.get(1);
        assertThat(frozen.names()).containsExactly(FindingName.FROZEN_VELOCITY);
        assertThat(frozen.since())
                .isBetween(
                        Scenario.FREEZE_START.minus(Duration.ofHours(1)),
                        Scenario.FREEZE_START.plus(Duration.ofHours(1)));
        assertThat(frozen.closed().orElseThrow())
                .isBetween(Scenario.CLEANED, Scenario.CLEANED.plus(Duration.ofHours(3)));
    }

    /** The first readings of the frozen spell pass: nobody can know yet. */
    @Test
    void frozenVelocityFailsTheFlatLineTestAfterTwelveHoursAndOnlyThere() {
        QualityFlags flat =
                saltingsLane.data().velocity().orElseThrow().quality().flags("flat line");
        List<QualityFlag> failed = flat.raised().stream()
                .filter(flag -> flag.verdict() == Verdict.FAIL)
                .toList();

        assertThat(failed.get(0).time())
                .isBetween(
                        Scenario.FREEZE_START.plus(Duration.ofHours(11)),
                        Scenario.FREEZE_START.plus(Duration.ofHours(12)));
        assertThat(failed.get(failed.size() - 1).time()).isEqualTo(Scenario.CLEANED.minus(Scenario.STEP));
        assertThat(quayStreet
                        .data()
                        .velocity()
                        .orElseThrow()
                        .quality()
                        .flags("flat line")
                        .raised())
                .isEmpty();
    }

    @Test
    void spikeAndNegativeDepthFailAndTheStormsDoNot() {
        QualityReport depth = saltingsLane.data().depth().quality();

        assertThat(depth.count(Verdict.FAIL)).isEqualTo(2);
        assertThat(depth.flags("lone reading").raised().stream()
                        .filter(flag -> flag.verdict() == Verdict.FAIL)
                        .map(QualityFlag::time))
                .containsExactly(Instant.parse("2026-10-15T15:30:00Z"));
        assertThat(depth.flags("range").raised().stream().map(QualityFlag::time))
                .containsExactly(Instant.parse("2026-10-30T03:12:00Z"));
        assertThat(quayStreet.data().velocity().orElseThrow().quality().count(Verdict.UNUSUAL))
                .isEqualTo(1);
    }

    @Test
    void blockageIsFoundAtQuayStreetAndCalledNothingElse() {
        List<Finding> findings = quayStreet.watched().findings();

        assertThat(findings).hasSize(1);
        Finding blockage = findings.get(0);
        assertThat(blockage.names()).containsExactly(FindingName.HELD_UP);
        assertThat(blockage.shape()).isEqualTo(ChangeShape.RAMP);
        assertThat(blockage.sinceRange().start()).isBefore(Scenario.BLOCKAGE_START.plus(Duration.ofDays(1)));
        assertThat(blockage.since())
                .isBetween(
                        Scenario.BLOCKAGE_START.minus(Duration.ofDays(2)),
                        Scenario.BLOCKAGE_START.plus(Duration.ofDays(2)));
        assertThat(blockage.found()).isBefore(Scenario.BLOCKAGE_START.plus(Duration.ofDays(2)));
        assertThat(blockage.closed().orElseThrow())
                .isBetween(Scenario.JETTED, Scenario.JETTED.plus(Duration.ofDays(3)));
    }

    @Test
    void daysOfTheBlockageAreADryWeatherOfTheirOwnWithTheSameFlow() {
        DryWeather dry = quayStreet.dryWeather();
        double usual = dry.usual().profile().orElseThrow().mean();

        assertThat(dry.others()).hasSize(1);
        assertThat(dry.others().get(0).profile().orElseThrow().mean()).isCloseTo(usual, within(0.05 * usual));
        assertThat(dry.doubtful()).isEmpty();
        DryWeather.Together all = dry.together().orElseThrow();
        assertThat(all.days())
                .isEqualTo(
                        dry.usual().days().size() + dry.others().get(0).days().size());
        assertThat(all.mean())
                .isBetween(
                        Math.min(
                                        usual,
                                        dry.others()
                                                .get(0)
                                                .profile()
                                                .orElseThrow()
                                                .mean())
                                * 0.99,
                        Math.max(
                                        usual,
                                        dry.others()
                                                .get(0)
                                                .profile()
                                                .orElseThrow()
                                                .mean())
                                * 1.01);
    }

    /** Used in the town: 0.0200 m3/s times the mean of the pattern upstream, 0.0150 more of the same downstream. */
    @Test
    void dryWeatherFlowIsWhatTheTownUses() {
        double upstream =
                saltingsLane.dryWeather().usual().profile().orElseThrow().mean();
        double downstream =
                quayStreet.dryWeather().usual().profile().orElseThrow().mean();

        assertThat(downstream / upstream).isCloseTo(0.0350 / 0.0200, within(0.07));
        assertThat(saltingsLane.dryWeather().doubtful().keySet())
                .contains(day(Scenario.FREEZE_START).minusDays(1));
        assertThat(saltingsLane.dryWeather().usual().days())
                .noneMatch(day ->
                        day.isAfter(day(Scenario.FOULING_START).plusDays(1)) && day.isBefore(day(Scenario.CLEANED)));
    }

    /** Counted again, reading by reading, from when the findings stood. */
    @Test
    void figuresSayHowMuchOfThemIsDoubtful() {
        SiteReview review = saltingsLane;
        Series flow = review.flow().record().flow();
        List<Interval> doubted = review.watched().findings().stream()
                .filter(review.doubts()::isFlowDoubtful)
                .map(finding -> finding.interval(review.data().record().end()))
                .toList();
        DryWeather dry = review.dryWeather();
        double volume = 0;
        double doubtfulVolume = 0;
        int dryReadings = 0;
        int doubtfulDry = 0;
        for (int i = 0; i < flow.size(); i++) {
            if (!flow.quality(i).isUsable()) {
                continue;
            }
            Instant time = flow.time(i);
            boolean isDoubtful = doubted.stream().anyMatch(interval -> interval.contains(time));
            volume += Math.abs(flow.value(i));
            doubtfulVolume += isDoubtful ? Math.abs(flow.value(i)) : 0;
            LocalDate day = day(time);
            if (dry.usual().days().contains(day) || dry.doubtful().containsKey(day)) {
                dryReadings++;
                doubtfulDry += isDoubtful ? 1 : 0;
            }
        }
        assertThat(doubted).isNotEmpty();
        assertThat(review.doubts().shareOfFlow(flow)).isCloseTo(doubtfulVolume / volume, within(1e-9));
        // Days go by time, of which a lost reading covers none.
        assertThat(dry.doubtfulShare()).isCloseTo((double) doubtfulDry / dryReadings, within(0.01));
        assertThat(SiteFigures.of(review).toString())
                .contains(Show.percent(doubtfulVolume / volume) + " of it rests on doubtful readings");
        assertThat(ReviewText.ofSite(review, Attention.of(review)).replaceAll("\\s+", " "))
                .contains("; " + Show.percent(dry.doubtfulShare()).replace(Page.BOUND, ' ')
                        + " of the readings of dry days are doubtful and left out");
        // The figure itself rests on none of them.
        Series sound = review.doubts().withoutDoubtful(true, flow);
        for (int i = 0; i < flow.size(); i++) {
            Instant time = flow.time(i);
            if (doubted.stream().anyMatch(interval -> interval.contains(time))) {
                assertThat(sound.quality(i)).isEqualTo(Quality.MISSING);
            } else {
                assertThat(sound.get(i)).isEqualTo(flow.get(i));
            }
        }
    }

    @Test
    void volumesGrowDownstreamOnEveryDay() {
        for (DailyTotal below : quayStreet.flow().volumes()) {
            saltingsLane.flow().volumes().stream()
                    .filter(above -> above.date().equals(below.date()) && above.isComplete() && below.isComplete())
                    .forEach(above -> assertThat(below.measured()).isGreaterThan(above.measured()));
        }
    }

    @Test
    void textTellsTheStoryInItsFirstLines() {
        List<SiteResult> results = List.of(
                SiteResult.of(saltingsLane, Attention.of(saltingsLane)),
                SiteResult.of(quayStreet, Attention.of(quayStreet)));
        String page = ReviewText.of(TOWN, results, BetweenSitesText.of(results));
        String flat = page.replaceAll("\\s+", " ");

        assertThat(page.lines()).allMatch(line -> line.length() <= Page.WIDTH, "lines of a page");
        assertThat(page).doesNotContain("NaN").doesNotContain("Infinity");
        assertThat(flat)
                .contains("look at 1 Surcharged twice")
                .contains("Water above the overflow's crest twice")
                .contains("2 spills.")
                .contains("Looks like a velocity sensor that loses sight")
                .contains("Looks like water held up downstream")
                .contains("of 11 storms 1 differs by more than 20 %: Mon 2 Nov");
        assertThat(page.chars()).allMatch(c -> c == '\n' || c >= ' ' && c < 127, "plain ASCII");
    }
}
