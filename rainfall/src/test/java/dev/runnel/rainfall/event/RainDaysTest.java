package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Month;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class RainDaysTest {
    private static final ZoneId LONDON = ZoneId.of("Europe/London");

    private static DailyRain days(String first, double... depths) {
        return DailyRain.of(
                RegularSeries.of(Instant.parse(first + "T00:00:00Z"), Duration.ofDays(1), depths),
                RainDay.midnight(ZoneOffset.UTC));
    }

    @Test
    void aStormInTheMorningBelongsToTheDayBefore() {
        RegularSeries rain = RegularSeries.of(Instant.parse("2026-03-02T06:00:00Z"), Duration.ofHours(1), 5, 0, 0, 2);
        List<DailyRain.Day> days = DailyRain.of(rain, RainDay.nineToNine()).days();
        assertThat(days)
                .extracting(DailyRain.Day::date)
                .containsExactly(LocalDate.parse("2026-03-01"), LocalDate.parse("2026-03-02"));
        assertThat(days.get(0).depthMm()).isEqualTo(5);
        assertThat(days.get(0)).hasToString("2026-03-01: at least 5 mm, 21 h not known");
        assertThat(days.get(1).depthMm()).isEqualTo(2);
        assertThat(DailyRain.of(rain, RainDay.nineToNine().withNameOfEnd())
                        .days()
                        .get(0)
                        .date())
                .isEqualTo(LocalDate.parse("2026-03-02"));
    }

    @Test
    void aDayHas23HoursWhereClocksGoForward() {
        RainDay day = RainDay.midnight(LONDON);
        assertThat(day.interval(LocalDate.parse("2026-03-29")).duration()).isEqualTo(Duration.ofHours(23));
        assertThat(day.dateOf(Instant.parse("2026-03-29T23:30:00Z"))).isEqualTo(LocalDate.parse("2026-03-30"));
        assertThat(RainDay.startingAt(LocalTime.of(7, 0), LONDON)).hasToString("RainDay[from 07:00 in Europe/London]");
    }

    @Test
    void drySpellsSayWhatTheyDoNotKnow() {
        DailyRain rain = days("2026-03-01", 0, 0.1, 3, 0, 0.2, 0, Double.NaN, 0, 5, 0, 0, 9);
        List<DrySpells.Spell> spells = DrySpells.of(rain, 0.2, 2);
        assertThat(spells).extracting(DrySpells.Spell::days).containsExactly(2, 3, 2);
        assertThat(spells).extracting(DrySpells.Spell::isAtLeast).containsExactly(true, true, false);
        assertThat(spells.get(1)).hasToString("at least 3 days, 2026-03-04 to 2026-03-06");
        assertThatThrownBy(() -> DrySpells.of(rain, -1, 2)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void monthsAndSeasonsStandBesideTheirNormals() {
        double[] depths = new double[90];
        depths[0] = 30;
        depths[31] = 12;
        depths[40] = 0.9;
        DailyRain rain = days("2025-12-01", depths);
        RainSummary months = RainSummary.monthly(rain, Map.of(Month.DECEMBER, 60.0));
        assertThat(months.rows()).hasSize(3);
        assertThat(months.rows().get(0)).hasToString("2025-12: 30 mm, 50 % of normal, 1 wet days, wettest 30 mm");
        assertThat(months.rows().get(1).percentOfNormal()).isEmpty();
        assertThat(months.rows().get(1).wetDays()).isEqualTo(1);
        RainSummary seasons =
                RainSummary.seasonal(rain, Map.of(Month.DECEMBER, 60.0, Month.JANUARY, 50.0, Month.FEBRUARY, 40.0));
        assertThat(seasons.rows()).hasSize(1);
        RainSummary.Row winter = seasons.rows().get(0);
        assertThat(winter.isComplete()).isTrue();
        assertThat(winter.depthMm()).isCloseTo(42.9, within(1e-12));
        assertThat(winter.percentOfNormal().orElseThrow()).isCloseTo(100 * 42.9 / 150, within(1e-12));
        RainSummary cut = RainSummary.monthly(days("2026-03-30", 1, 2, 3));
        assertThat(cut.rows().get(0).unknown()).isEqualTo(Duration.ofDays(29));
        assertThat(cut.rows().get(1).toString()).startsWith("2026-04: at least 3 mm");
    }

    @Test
    void theListingKnowsOnePieceAndAll() {
        RegularSeries rain = RegularSeries.of(Instant.EPOCH, Duration.ofMinutes(10), 4, 0, 6, 1, 0, 4);
        IntensityListing listing =
                IntensityListing.of(rain, List.of(Duration.ofMinutes(30), Duration.ofMinutes(10), Duration.ofHours(2)));
        assertThat(listing.rows())
                .extracting(IntensityListing.Row::duration)
                .containsExactly(Duration.ofMinutes(10), Duration.ofMinutes(30), Duration.ofHours(2));
        assertThat(listing.rows().get(1).peak().depthMm()).isEqualTo(10);
        assertThat(listing.rows().get(1).heaviestMmPerHour()).isEqualTo(24);
        assertThat(listing.rows().get(2).heaviestMmPerHour()).isZero();
        assertThat(listing.rows().get(0)).hasToString("10 min: 6 mm, 36 mm/h in one piece, 36 mm/h in all");
    }

    @Test
    void snowLiesUntilItMelts() {
        SnowRule rule = SnowRule.standard();
        assertThat(rule.snowShare(-3)).isEqualTo(1);
        assertThat(rule.snowShare(0.5)).isEqualTo(0.75);
        assertThat(rule.snowShare(2)).isZero();
        RegularSeries fell = RegularSeries.of(Instant.EPOCH, Duration.ofHours(12), 4, 2, 0, Double.NaN, 1);
        Series celsius = RegularSeries.of(Instant.EPOCH, Duration.ofHours(12), -5, 1, 3, 2)
                .toSeries();
        SnowRecord record = rule.mark(fell, celsius);
        assertThat(record.rain().toValues()).containsExactly(0, 1, 0, Double.NaN, 1);
        assertThat(record.lying().value(0)).isEqualTo(4);
        assertThat(record.melt().value(1)).isCloseTo(1.37, within(1e-12));
        double lost = record.melt().sum() + record.lying().value(4);
        assertThat(lost).isCloseTo(record.snow().sum(), within(1e-12));
        assertThat(record.unknown()).isEqualTo(1);
        assertThat(record.water().value(1)).isCloseTo(2.37, within(1e-12));
        assertThatThrownBy(() -> rule.withSnowBelowAndRainAbove(2, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("allRainCelsius must be in [2, 10] degC, was 1");
    }

    @Test
    void aSuitableStormLastsAndTheFlowComesBack() {
        RegularSeries rain = RegularSeries.of(Instant.EPOCH, Duration.ofMinutes(10), 0, 6, 0, 4, 2, 0);
        StormCriteria criteria = StormCriteria.ofDepthAndIntensity("ours", 5, 6, Duration.ofMinutes(10));
        StormAssessment met =
                criteria.withConcentrationTime(Duration.ofMinutes(40)).assess(rain.interval(), Map.of("g", rain));
        assertThat(met.isSuitable()).isTrue();
        assertThat(criteria.withConcentrationTime(Duration.ofMinutes(41))
                        .assess(rain.interval(), Map.of("g", rain))
                        .verdict())
                .isEqualTo(StormAssessment.Verdict.NOT_MET);
        java.util.Optional<Duration> late = java.util.Optional.of(Duration.ofHours(9));
        assertThat(met.withReturn("m1", late, Duration.ofHours(8)).verdict())
                .isEqualTo(StormAssessment.Verdict.NOT_MET);
        assertThat(met.withReturn("m1", java.util.Optional.empty(), Duration.ofHours(8))
                        .verdict())
                .isEqualTo(StormAssessment.Verdict.UNKNOWN);
    }
}
