package dev.runnel.timeseries.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.BetweenReadings;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;

class DailyTotalsTest {
    private static final ZoneId LONDON = ZoneId.of("Europe/London");

    @Test
    void daysOnWhichClocksChangeHaveTheirOwnLength() {
        for (int hours : new int[] {23, 24, 25}) {
            LocalDate date = hours == 23
                    ? LocalDate.of(2026, 3, 29)
                    : hours == 24 ? LocalDate.of(2026, 6, 1) : LocalDate.of(2026, 10, 25);
            Series flow = constant(date.minusDays(1), 3, 0.01);
            List<DailyTotal> totals = DailyTotals.in(LONDON).totals(flow);
            DailyTotal day = totals.get(1);
            assertThat(day.date()).isEqualTo(date);
            assertThat(day.interval().hours()).isEqualTo(hours);
            assertThat(day.total()).isCloseTo(36.0 * hours, within(1e-9));
            assertThat(day.coverage()).isEqualTo(1);
            assertThat(day.mean()).isCloseTo(0.01, within(1e-15));
        }
    }

    @Test
    void flagsPartialDaysAndAddsNothingForTheRest() {
        LocalDate date = LocalDate.of(2026, 6, 1);
        Instant noon = date.atTime(12, 0).atZone(LONDON).toInstant();
        SeriesBuilder builder = Series.builder();
        constant(date, 2, 0.01).stream()
                .filter(reading -> !reading.time().isBefore(noon))
                .forEach(builder::add);
        List<DailyTotal> totals = DailyTotals.in(LONDON).totals(builder.build());
        assertThat(totals.get(0).isComplete()).isFalse();
        assertThat(totals.get(0).total()).isNaN();
        assertThat(totals.get(0).measured()).isCloseTo(432, within(1e-9));
        assertThat(totals.get(0).coverage()).isEqualTo(0.5);
        assertThat(totals.get(0).toString())
                .matches("DailyTotal\\[2026-06-01, 432(\\.0+)? over 50 % of 24 h, partial]");
        assertThat(DailyTotals.in(LONDON)
                        .withMinimumCoverage(0.5)
                        .totals(builder.build())
                        .get(0)
                        .total())
                .isCloseTo(432, within(1e-9));
        // The last reading of all is at 23:58 and a line ends there: two minutes are not covered.
        assertThat(totals.get(1).coverage()).isCloseTo(1 - 2.0 / 1440, within(1e-12));
        assertThat(totals.get(1).isComplete()).isTrue();
    }

    @Test
    void integratesALineAndBridgesNoGap() {
        Instant midnight = Instant.parse("2026-01-01T00:00:00Z");
        Series flow = Series.builder()
                .add(midnight, 0)
                .add(midnight.plusSeconds(6 * 3600), 2)
                .add(midnight.plusSeconds(12 * 3600), 0)
                .add(midnight.plusSeconds(24 * 3600), 0)
                .build();
        DailyTotal day = DailyTotals.in(LONDON)
                .withMaximumGap(Duration.ofHours(6))
                .totals(flow)
                .get(0);
        assertThat(day.measured()).isEqualTo(12 * 3600);
        assertThat(day.coverage()).isEqualTo(0.5);
        DailyTotal held = DailyTotals.in(LONDON)
                .withBetweenReadings(BetweenReadings.HOLD)
                .withMaximumGap(Duration.ofHours(12))
                .totals(flow)
                .get(0);
        assertThat(held.measured()).isEqualTo(2 * 6 * 3600);
        assertThat(held.coverage()).isEqualTo(1);
    }

    @Test
    void aRegularSeriesHoldsForItsSteps() {
        RegularSeries flow =
                RegularSeries.of(Instant.parse("2026-01-01T00:00:00Z"), Duration.ofHours(6), 1, 2, Double.NaN, 3, 4);
        List<DailyTotal> totals =
                DailyTotals.in(LONDON).withMinimumCoverage(0.75).totals(flow);
        assertThat(totals).hasSize(2);
        assertThat(totals.get(0).total()).isEqualTo(6 * 6 * 3600);
        assertThat(totals.get(0).mean()).isEqualTo(2);
        assertThat(totals.get(1).measured()).isEqualTo(4 * 6 * 3600);
        assertThat(totals.get(1).total()).isNaN();
    }

    /** Two steps of a day from nine in the morning touch three local days. */
    @Test
    void whatTheLastStepHoldsBeyondMidnightIsKept() {
        RegularSeries daily = RegularSeries.of(Instant.parse("2026-01-01T09:00:00Z"), Duration.ofDays(1), 1, 1);
        assertThat(DailyTotals.in(LONDON).totals(daily))
                .extracting(DailyTotal::measured)
                .containsExactly(15 * 3600.0, 24 * 3600.0, 9 * 3600.0);
        // Steps of an hour in a zone half an hour off: the last half hour belongs to the next day.
        RegularSeries hourly = RegularSeries.of(Instant.parse("2026-01-01T18:00:00Z"), Duration.ofHours(1), 2);
        assertThat(DailyTotals.in(ZoneId.of("Asia/Kolkata")).totals(hourly))
                .extracting(DailyTotal::date, DailyTotal::measured)
                .containsExactly(tuple(LocalDate.of(2026, 1, 1), 3600.0), tuple(LocalDate.of(2026, 1, 2), 3600.0));
        // A step that ends at midnight touches no further day.
        RegularSeries untilMidnight = RegularSeries.of(Instant.parse("2026-01-01T22:00:00Z"), Duration.ofHours(2), 1);
        assertThat(DailyTotals.in(LONDON).totals(untilMidnight)).hasSize(1);
        // A reading that holds does the same.
        Series held =
                Series.builder().add(Instant.parse("2026-01-01T23:00:00Z"), 1).build();
        assertThat(DailyTotals.in(LONDON)
                        .withBetweenReadings(BetweenReadings.HOLD)
                        .withMaximumGap(Duration.ofHours(2))
                        .totals(held))
                .extracting(DailyTotal::measured)
                .containsExactly(3600.0, 3600.0);
    }

    @Test
    void aDayWithoutAnyReadingIsThereWithNothing() {
        Series flow = Series.builder()
                .add(Instant.parse("2026-01-01T12:00:00Z"), 1)
                .add(Instant.parse("2026-01-01T12:02:00Z"), 1)
                .add(Instant.parse("2026-01-03T12:00:00Z"), 1)
                .build();
        List<DailyTotal> totals =
                DailyTotals.in(LONDON).withMaximumGap(Duration.ofHours(1)).totals(flow);
        assertThat(totals).hasSize(3);
        assertThat(totals.get(1).coverage()).isZero();
        assertThat(totals.get(1).mean()).isNaN();
        assertThat(DailyTotals.in(LONDON).totals(Series.empty())).isEmpty();
    }

    @Test
    void refusesWrongSettings() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DailyTotals.in(LONDON).withMinimumCoverage(-0.1))
                .withMessage("minimumCoverage must be in [0, 1], was -0.1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DailyTotals.in(LONDON).withMaximumGap(Duration.ZERO))
                .withMessage("maximumGap must be longer than 0, was 0 s");
        assertThat(DailyTotals.in(LONDON))
                .hasToString("DailyTotals[Europe/London, linear up to 1.5 usual spacings, coverage at least 0.9]");
    }

    private static Series constant(LocalDate first, int days, double value) {
        SeriesBuilder builder = Series.builder();
        Instant end = first.plusDays(days).atStartOfDay(LONDON).toInstant();
        for (Instant time = first.atStartOfDay(LONDON).toInstant(); time.isBefore(end); time = time.plusSeconds(120)) {
            builder.add(time, value);
        }
        return builder.build();
    }
}
