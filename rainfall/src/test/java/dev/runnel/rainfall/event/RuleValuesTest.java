package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.Month;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What rules of rain are equal to, what they print, and values by hand on their limits. */
class RuleValuesTest {
    private static final Duration HOUR = Duration.ofHours(1);
    private static final RainDay MIDNIGHT = RainDay.midnight(ZoneOffset.UTC);
    private static final EventSeparation SIX_HOURS = EventSeparation.of(Duration.ofHours(6));

    private static RegularSeries hours(double... depths) {
        return RegularSeries.of(Instant.parse("2026-03-01T00:00:00Z"), HOUR, depths);
    }

    private static RegularSeries days(double... depths) {
        return RegularSeries.of(Instant.parse("2026-03-01T00:00:00Z"), Duration.ofDays(1), depths);
    }

    private static void assertDiffer(Object rule, Object same, Object... others) {
        assertThat(rule).isEqualTo(same).hasSameHashCodeAs(same).isNotEqualTo("a text");
        for (Object other : others) {
            assertThat(rule).isNotEqualTo(other);
            assertThat(rule.hashCode()).isNotEqualTo(other.hashCode());
        }
    }

    @Test
    void rulesAreEqualByTheirParts() {
        DryDayRule dry = DryDayRule.of(0.2);
        assertDiffer(
                dry,
                DryDayRule.of(0.2),
                DryDayRule.of(0.3),
                dry.withRun(2),
                dry.withDaysBefore(1, 0),
                dry.withDaysBefore(1, 0.5),
                dry.withMissingAllowed(HOUR));
        assertThat(dry.withDaysBefore(1, 0)).isNotEqualTo(dry.withDaysBefore(1, 0.5));
        assertDiffer(DryDayRule.of(0), DryDayRule.of(0), DryDayRule.of(-0.0));
        assertDiffer(SIX_HOURS.withWetAbove(0), SIX_HOURS.withWetAbove(0), SIX_HOURS.withWetAbove(-0.0));
        assertDiffer(
                RainDay.nineToNine(),
                RainDay.startingAt(LocalTime.of(9, 0), ZoneOffset.UTC),
                MIDNIGHT,
                RainDay.startingAt(LocalTime.of(9, 0), ZoneId.of("Europe/London")),
                RainDay.nineToNine().withNameOfEnd());
        assertDiffer(
                SIX_HOURS,
                EventSeparation.of(Duration.ofHours(6)),
                EventSeparation.of(Duration.ofHours(7)),
                SIX_HOURS.withMinimumDepth(1),
                SIX_HOURS.withWetAbove(0.1),
                SIX_HOURS.withoutPeaks());
        assertDiffer(
                SIX_HOURS.ofSteps(HOUR),
                EventSeparation.of(Duration.ofHours(6)).ofSteps(HOUR),
                SIX_HOURS.ofSteps(Duration.ofMinutes(30)),
                SIX_HOURS.withMinimumDepth(1).ofSteps(HOUR));
        TippingBucket bucket = TippingBucket.ofTip(0.2);
        assertDiffer(
                SIX_HOURS.ofTips(bucket),
                EventSeparation.of(Duration.ofHours(6)).ofTips(TippingBucket.ofTip(0.2)),
                SIX_HOURS.ofTips(TippingBucket.ofTip(0.5)),
                SIX_HOURS.withMinimumDepth(1).ofTips(bucket));
    }

    @Test
    void rulesSayWhatTheyAre() {
        assertThat(SIX_HOURS).hasToString("EventSeparation[gap of 6 h, at least 0 mm, wet above 0 mm]");
        assertThat(SIX_HOURS.ofSteps(HOUR))
                .hasToString(
                        "StepSeparation[EventSeparation[gap of 6 h, at least 0 mm, wet above 0 mm], steps of 1 h]");
        assertThat(SIX_HOURS.ofTips(TippingBucket.ofTip(0.2)).toString())
                .startsWith("TipSeparation[EventSeparation[gap of 6 h, at least 0 mm, wet above 0 mm], TippingBucket[");
        assertThat(AntecedentIndex.of(0.85, 30)).hasToString("AntecedentIndex[30 days, 0.85 left after a day]");
        assertThat(SlidingMaximum.of(HOUR, Duration.ofMinutes(30))).hasToString("SlidingMaximum[1 h, 30 min]");
        assertThat(SnowRule.standard())
                .hasToString("SnowRule[snow to 0 degC, rain from 2 degC, melt 2.74 mm a degree and day above 0 degC]");
        assertThat(DailyRain.of(days(1, Double.NaN, 2.5), MIDNIGHT))
                .hasToString("DailyRain[3 days, 3.5 mm, 1 not complete; RainDay[from 00:00 in Z]]");
        assertThat(DryGaps.ofHours(1, 2, 4)
                        .candidates(DryGaps.Convention.values()[0])
                        .get(0)
                        .toString())
                .startsWith("Candidate[");
        IntensityListing listing = IntensityListing.of(hours(1, 3, 2), List.of(HOUR, Duration.ofHours(2)));
        assertThat(listing.toString())
                .isEqualTo("IntensityListing[1 h: 3 mm, 3 mm/h in one piece, 3 mm/h in all, "
                        + "2 h: 5 mm, 2.5 mm/h in one piece, 2 mm/h in all]");
    }

    /** Four values about their mean of 2, the third missing: pairs a step apart are (1, 3) alone, two apart (3, 2) alone. */
    @Test
    void autocorrelationCountsCompletePairs() {
        RainAutocorrelation found = RainAutocorrelation.of(hours(1, 3, Double.NaN, 2), 3);
        double variance = 2.0 / 3;
        assertThat(found.coefficient(0)).isEqualTo(1);
        assertThat(found.coefficient(1)).isCloseTo(-1 / variance, within(1e-14));
        assertThat(found.coefficient(2)).isCloseTo(0, within(1e-14));
        assertThat(found.coefficient(3)).isCloseTo(0, within(1e-14));
        assertThat(found.limit(0)).isCloseTo(1.959964 / Math.sqrt(3), within(1e-6));
        assertThat(found.limit(1)).isCloseTo(1.959964, within(1e-6));
        assertThat(found.limit(2)).isCloseTo(1.959964, within(1e-6));
        // The first of two missing in a row, and one at the end, take a pair each once.
        RainAutocorrelation twice = RainAutocorrelation.of(hours(1, 3, Double.NaN, Double.NaN, 2, 0, Double.NaN), 1);
        assertThat(twice.limit(1)).isCloseTo(1.959964 / Math.sqrt(2), within(1e-6));
        assertThatThrownBy(() -> RainAutocorrelation.of(hours(1, 3, 2), 3))
                .hasMessage("lags must be less than the steps of rain, 3, was 3");
        assertThatThrownBy(() -> RainAutocorrelation.of(hours(1, -3, 2), 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> RainAutocorrelation.of(hours(2, 2, 2), 1))
                .hasMessage("rain must vary, was the same in all steps or missing");
        assertThat(RainAutocorrelation.of(hours(1, 3, 2, 0, 1, 3, 2, 0), 2).independentAfter())
                .contains(HOUR);
    }

    /** A temperature as old as 3 h holds, one that is a moment older does not; of two usable the later one. */
    @Test
    void snowTakesATemperatureOfTheLastThreeHours() {
        SnowRule rule = SnowRule.standard();
        Instant start = Instant.parse("2026-03-01T00:00:00Z");
        Series atTheLimit = Series.of(List.of(Reading.of(start.minus(Duration.ofHours(3)), -1)));
        SnowRecord record = rule.mark(hours(4), atTheLimit);
        assertThat(record.snow().value(0)).isEqualTo(4);
        assertThat(record)
                .hasToString("SnowRecord[0 mm rain, 4 mm snow, 0 mm of it melted, 0 steps without temperature]");
        Series tooOld =
                Series.of(List.of(Reading.of(start.minus(Duration.ofHours(3)).minusNanos(1), -1)));
        assertThat(rule.mark(hours(4), tooOld).unknown()).isEqualTo(1);
        Series two = Series.of(List.of(
                Reading.of(start.minus(Duration.ofHours(2)), -1), Reading.of(start.minus(Duration.ofHours(1)), 5)));
        assertThat(rule.mark(hours(4), two).rain().value(0)).isEqualTo(4);
        // On its limits all is snow, and all is rain; between them a share.
        assertThat(rule.snowShare(0)).isEqualTo(1);
        assertThat(rule.snowShare(2)).isZero();
        assertThat(rule.snowShare(0.5)).isEqualTo(0.75);
        SnowRule sharp = rule.withSnowBelowAndRainAbove(1, 1);
        assertThat(sharp.snowShare(1)).isEqualTo(1);
        assertThat(sharp.snowShare(1.01)).isZero();
        assertThatThrownBy(() -> rule.mark(hours(-1), two)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void indicesAndCountsHaveLimits() {
        for (double outside : new double[] {0, 1}) {
            assertThatThrownBy(() -> AntecedentIndex.of(outside, 5))
                    .hasMessageStartingWith("recession must be above 0 and below 1, was ");
        }
        assertThatThrownBy(() -> AntecedentIndex.of(0.5, 1).before(days(1, -1, 2)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> AntecedentIndex.of(0.5, 1).before(hours(1, 2)))
                .hasMessage("daily must have a step of 1 d, had 1 h");
        Instant now = Instant.EPOCH;
        assertThatCode(() -> new TipCount(now, TipCount.MOST)).doesNotThrowAnyException();
        assertThatThrownBy(() -> new TipCount(now, TipCount.MOST + 1))
                .hasMessage("tips must be in [0, 1000000], was 1000001");
        assertThatThrownBy(() -> DryDayRule.of(0).withRun(0)).hasMessageStartingWith("days must be in [1, ");
        assertThatCode(() -> DryDayRule.of(0).withRun(1)).doesNotThrowAnyException();
        assertThatThrownBy(() -> DailyRain.of(days(1, -1), MIDNIGHT)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> DryGaps.of(hours(1, -1))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> DryGaps.ofHours(1, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> StormProfile.of(hours(1, -1, 2))).isInstanceOf(IllegalArgumentException.class);
    }

    /** Between tips of 0, 2 and 5 h and a second one at 5 h there are gaps of 2 and 3 h. */
    @Test
    void gapsOfTipsByHand() {
        Instant start = Instant.parse("2026-03-01T00:00:00Z");
        Tips tips = Tips.of(start, start.plusSeconds(7200), start.plusSeconds(18_000), start.plusSeconds(18_000));
        assertThat(DryGaps.of(tips)).hasToString("DryGaps[2 gaps of 2 to 3 h, 0 of unknown length]");
        // A missing step inside makes a gap unknown; wet steps side by side leave none.
        assertThat(DryGaps.of(hours(1, 1, 0, 0, 1, 0, Double.NaN, 1)))
                .hasToString("DryGaps[1 gaps of 2 to 2 h, 1 of unknown length]");
    }

    @Test
    void aSummaryOnItsLimits() {
        double[] month = new double[31];
        month[3] = 1;
        month[4] = 0.999;
        RainSummary.Row row = RainSummary.monthly(DailyRain.of(days(month), MIDNIGHT), Map.of(Month.MARCH, 4.0))
                .rows()
                .get(0);
        assertThat(row.wetDays()).isEqualTo(1);
        assertThat(row.wettestMm()).isEqualTo(1);
        assertThat(row.isComplete()).isTrue();
        assertThat(row.percentOfNormal().orElseThrow()).isCloseTo(49.975, within(1e-9));
        assertThat(RainSummary.monthly(DailyRain.of(days(month), MIDNIGHT), Map.of(Month.MARCH, 0.0))
                        .rows()
                        .get(0)
                        .percentOfNormal())
                .isEmpty();
        assertThatThrownBy(() -> RainSummary.monthly(DailyRain.of(days(month), MIDNIGHT), Map.of(Month.MARCH, -1.0)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void drySpellsOnTheirLimits() {
        DailyRain rain = DailyRain.of(days(5, 0.2, 0.2, 5, 0, 5), MIDNIGHT);
        assertThat(DrySpells.of(rain, 0.2, 2)).hasSize(1);
        assertThat(DrySpells.of(rain, 0.2, 2).get(0).isAtLeast()).isFalse();
        assertThat(DrySpells.of(rain, 0.2, 1)).hasSize(2);
        assertThat(DrySpells.of(rain, 0.2, 3)).isEmpty();
        assertThat(DrySpells.of(rain, 0.19, 1)).hasSize(1);
    }
}
