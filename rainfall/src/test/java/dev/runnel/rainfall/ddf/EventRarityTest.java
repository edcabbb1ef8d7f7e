package dev.runnel.rainfall.ddf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class EventRarityTest {
    private static final Instant START = Instant.parse("2026-03-01T12:00:00Z");
    private static final DdfTable TABLE = DdfTable.parse("""
            duration_min,2,5,10,30
            15,10,14,17,22
            60,16,22,26,33
            240,24,32,38,48
            """, ReturnPeriodBasis.ANNUAL_MAXIMUM);

    private static RainfallEvent event(double... minutesAndDepths) {
        PeakDepth[] peaks = new PeakDepth[minutesAndDepths.length / 2];
        for (int i = 0; i < peaks.length; i++) {
            peaks[i] = new PeakDepth(
                    Duration.ofSeconds(Math.round(60 * minutesAndDepths[2 * i])), minutesAndDepths[2 * i + 1], START);
        }
        return RainfallEvent.of(
                Interval.of(START, Duration.ofHours(5)), 200, Stream.of(peaks).toList());
    }

    @Test
    void theGreatestReturnPeriodGoverns() {
        EventRarity rarity = TABLE.rarity(event(15, 12, 60, 26, 240, 28));
        assertThat(rarity.durations()).hasSize(3);
        // Half way between 10 mm at 2 and 14 mm at 5 years, in -ln(-ln(1 - 1/T)).
        double logs = Math.sqrt(Math.log(1 - 1 / 2.0) * Math.log(1 - 1 / 5.0));
        assertThat(rarity.durations().get(0).returnPeriod().years())
                .isCloseTo(1 / (1 - Math.exp(-logs)), within(1e-12));
        assertThat(rarity.governing().orElseThrow().duration()).isEqualTo(Duration.ofHours(1));
        assertThat(rarity).hasToString("EventRarity[1 in 10 years over 1 h (26 mm), annual maximum]");
    }

    /** Limits of each duration, and those over all durations at once: the greatest lower and the greatest upper one. */
    @Test
    void limitsStandInTheText() {
        DdfTable lower = DdfTable.parse("""
                duration_min,2,5,10,30
                15,8,12,14,17
                60,13,18,22,27
                """, ReturnPeriodBasis.ANNUAL_MAXIMUM);
        DdfTable upper = DdfTable.parse("""
                duration_min,2,5,10,30
                15,12,17,21,28
                60,19,26,31,41
                """, ReturnPeriodBasis.ANNUAL_MAXIMUM);
        DdfBand band = DdfBand.of(TABLE, lower, upper, 0.9);
        EventRarity rarity = EventRarity.of(band, event(15, 17, 60, 22, 240, 28));
        assertThat(rarity.durations().get(0)).hasToString("1 in 10 years, 90 % between 5 and 30 over 15 min (17 mm)");
        assertThat(rarity.durations().get(1).limits().orElseThrow().upper().years())
                .isCloseTo(10, within(1e-12));
        assertThat(rarity.durations().get(2).limits()).isEmpty();
        assertThat(rarity)
                .hasToString("EventRarity[1 in 10 years, 90 % between 5 and 30 over 15 min (17 mm), annual maximum, "
                        + "over 2 durations at once 90 % between 5 and 30]");
        assertThat(rarity.limits()).contains(band.rarity(event(15, 17, 60, 22, 240, 28)));
        assertThat(EventRarity.of(band, event(240, 28)).limits()).isEmpty();
        assertThat(TABLE.rarity(event(15, 17)).limits()).isEmpty();
    }

    @Test
    void beyondTheTableGovernsAndTheFurtherBeyondTheMore() {
        EventRarity rarity = TABLE.rarity(event(15, 23, 60, 36, 240, 40));
        assertThat(rarity.governing().orElseThrow().duration()).isEqualTo(Duration.ofHours(1));
        assertThat(rarity.governing().orElseThrow().returnPeriod().isAbove()).isTrue();
        assertThat(rarity.governing().orElseThrow().shareOfLimit()).isCloseTo(36.0 / 33, within(1e-15));
        assertThat(rarity).hasToString("EventRarity[rarer than 1 in 30 years over 1 h (36 mm), annual maximum]");
    }

    @Test
    void belowTheTableTheNearestToItGoverns() {
        EventRarity rarity = TABLE.rarity(event(15, 3, 60, 8, 240, 9));
        assertThat(rarity.governing().orElseThrow().duration()).isEqualTo(Duration.ofHours(1));
        assertThat(rarity.governing().orElseThrow().returnPeriod().isBelow()).isTrue();
    }

    /** 12 mm in 15 min are 48 mm/h, above Bilham's 31.75 mm/h; 20 mm in an hour are not. */
    @Test
    void saysWhatIsDoubtful() {
        EventRarity rarity = Bilham.relation().rarity(event(15, 12, 60, 20, 240, 28));
        assertThat(rarity.doubtful()).containsExactly(Duration.ofMinutes(15));
        assertThat(rarity.toString()).endsWith(", doubtful over [15 min], not covered [4 h]]");
        assertThat(TABLE.rarity(event(15, 12)).doubtful()).isEmpty();
    }

    @Test
    void theFirstOfEquallyRareDurationsGoverns() {
        assertThat(TABLE.rarity(event(15, 14, 60, 22)).governing().orElseThrow().duration())
                .isEqualTo(Duration.ofMinutes(15));
    }

    @Test
    void durationsOutsideTheTableAreNamed() {
        EventRarity rarity = TABLE.rarity(event(5, 9, 15, 14, 1440, 60));
        assertThat(rarity.notCovered()).containsExactly(Duration.ofMinutes(5), Duration.ofDays(1));
        assertThat(rarity.durations()).hasSize(1);
        EventRarity none = TABLE.rarity(event(5, 9));
        assertThat(none.governing()).isEmpty();
        assertThat(none).hasToString("EventRarity[no duration covered, not covered [5 min]]");
    }

    /** A step is missing: the recorded rain would do for 10 years, and more may have fallen. */
    @Test
    void aStormWithAMissingStepIsAtLeastThatRare() {
        double[] depths = {2, Double.NaN, 12, 12, 2, 0, 0, 0};
        RegularSeries rain = RegularSeries.of(Instant.parse("2026-06-01T12:00:00Z"), Duration.ofMinutes(15), depths);
        RainfallEvent event = EventSeparation.of(Duration.ofMinutes(30))
                .withPeakDurations(Duration.ofMinutes(15), Duration.ofHours(1))
                .events(rain)
                .get(0);
        EventRarity rarity = TABLE.rarity(event);
        assertThat(rarity.isAtLeast()).isTrue();
        assertThat(rarity.governing().orElseThrow().isAtLeast()).isTrue();
        assertThat(rarity).hasToString("EventRarity[at least 1 in 10 years over 1 h (at least 26 mm), annual maximum]");
        RegularSeries poor = rain.map(depth -> depth / 10);
        EventRarity bottom = TABLE.rarity(EventSeparation.of(Duration.ofMinutes(30))
                .withPeakDurations(Duration.ofHours(1))
                .events(poor)
                .get(0));
        assertThat(bottom.governing().orElseThrow().toText()).endsWith(" years, or rarer");
        RegularSeries rich = rain.map(depth -> depth * 3);
        EventRarity top = TABLE.rarity(EventSeparation.of(Duration.ofMinutes(30))
                .withPeakDurations(Duration.ofHours(1))
                .events(rich)
                .get(0));
        assertThat(top.governing().orElseThrow().toText()).isEqualTo("rarer than 1 in 30 years");
    }

    @Test
    void aStormThatTheRecordCutsIsAtLeastThatRare() {
        RegularSeries rain =
                RegularSeries.of(Instant.parse("2026-06-01T12:00:00Z"), Duration.ofMinutes(15), 0, 0, 0, 9, 9);
        EventRarity rarity = TABLE.rarity(EventSeparation.of(Duration.ofMinutes(30))
                .withPeakDurations(Duration.ofMinutes(15))
                .events(rain)
                .get(0));
        assertThat(rarity.isAtLeast()).isTrue();
    }
}
