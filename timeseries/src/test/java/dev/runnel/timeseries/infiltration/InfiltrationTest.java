package dev.runnel.timeseries.infiltration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.balance.DailyTotals;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class InfiltrationTest {
    private static final ZoneId LONDON = ZoneId.of("Europe/London");
    private static final LocalDate FIRST = LocalDate.of(2026, 6, 1);

    @Test
    void theNightMinimumIsAMeanOverAnHourOfTheLocalNight() {
        // 10 L/s, 4 L/s from 02:00 to 04:00 local time, and one reading of 0 at 03:00 on the second night.
        SeriesBuilder builder = Series.builder();
        Instant start = FIRST.atStartOfDay(LONDON).toInstant();
        for (int i = 0; i < 2 * 288; i++) {
            int minute = i % 288 * 5;
            double flow = minute >= 120 && minute <= 240 ? 0.004 : 0.010;
            builder.add(start.plusSeconds(300L * i), i == 288 + 36 ? 0 : flow);
        }
        NightMinimum rule = NightMinimum.between(LocalTime.of(1, 0), LocalTime.of(5, 0), LONDON);
        List<NightFlow> nights = rule.of(builder.build());
        assertThat(nights).hasSize(2);
        assertThat(nights.get(0).flow()).isCloseTo(0.004, within(1e-15));
        assertThat(nights.get(0).interval()).hasToString("2026-06-01T01:00:00Z/2026-06-01T02:00:00Z");
        assertThat(nights.get(0).infiltrationByShare(0.9)).isCloseTo(0.0036, within(1e-15));
        assertThat(nights.get(0).infiltrationLess(0.001)).isCloseTo(0.003, within(1e-15));
        assertThat(nights.get(0).infiltrationLess(0.005)).isZero();
        // One reading of 0 takes a twelfth of its hour away, not all of it.
        assertThat(nights.get(1).flow()).isCloseTo(0.004 * 11 / 12, within(1e-12));
        // Twenty-two hours at 10 less what the slopes between readings hold, two at 4.
        assertThat(nights.get(0).dayMean()).isBetween(0.0094, 0.0096);
        assertThat(nights.get(0).shareOfDay()).isBetween(0.41, 0.43);
        assertThat(rule.withWindow(Duration.ofHours(5)).of(builder.build())).isEmpty();
        assertThat(rule.of(Series.empty())).isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> rule.withWindow(Duration.ofHours(25)))
                .withMessage("window in hours must be in [0, 24], was 25");
        assertThat(rule).hasToString("NightMinimum[01:00 to 05:00 in Europe/London, over 1 h]");
    }

    @Test
    void aNightThatIsNotCoveredHasNone() {
        SeriesBuilder builder = Series.builder();
        Instant start = FIRST.atStartOfDay(ZoneOffset.UTC).toInstant();
        for (int i = 0; i < 288; i++) {
            if (i < 6 || i > 72) {
                builder.add(start.plusSeconds(300L * i), 0.01);
            }
        }
        assertThat(NightMinimum.between(LocalTime.of(0, 0), LocalTime.of(6, 0), ZoneOffset.UTC)
                        .of(builder.build()))
                .isEmpty();
        // A night over midnight belongs to the day on which it begins.
        assertThat(NightMinimum.between(LocalTime.of(22, 0), LocalTime.of(0, 0), ZoneOffset.UTC)
                        .of(builder.build()))
                .extracting(NightFlow::date)
                .containsExactly(FIRST);
    }

    @Test
    void theMovingMinimumLooksBackOverCalendarDays() {
        DailyFlows flows =
                DailyFlows.of(Map.of(day(0), 100.0, day(1), 90.0, day(2), 95.0, day(3), 97.0, day(6), 120.0));
        assertThat(flows.movingMinimum(3))
                .containsExactly(
                        entry(day(0), 100.0),
                        entry(day(1), 90.0),
                        entry(day(2), 90.0),
                        entry(day(3), 90.0),
                        entry(day(6), 120.0));
        assertThat(flows.movingMinimum(5)).containsEntry(day(6), 95.0);
        assertThat(flows.infiltration(3, 95)).containsEntry(day(0), 5.0).containsEntry(day(1), 0.0);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> flows.movingMinimum(0))
                .withMessage("days must be in [1, 366], was 0");
    }

    @Test
    void dryWeatherFlowByPercentileAndByRuns() {
        Map<LocalDate, Double> eleven = new TreeMap<>();
        for (int i = 0; i <= 10; i++) {
            eleven.put(day(i), 10.0 * i);
        }
        DailyFlows flows = DailyFlows.of(eleven);
        assertThat(flows.percentile(0.2)).isCloseTo(20, within(1e-9));
        assertThat(flows.meanOfRuns(List.of(day(1), day(2)), 3)).isEqualTo((10 + 20 + 30 + 40) / 4.0);
        assertThat(flows.meanOfRuns(List.of(day(9)), 3)).as("runs over the end").isNaN();
        assertThat(DailyFlows.of(Map.<LocalDate, Double>of()).percentile(0.2)).isNaN();
        assertThat(flows).hasToString("DailyFlows[11 days, 2026-06-01 to 2026-06-11]");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DailyFlows.of(Map.of(FIRST, Double.NaN)))
                .withMessage("flow of 2026-06-01 must be finite, was NaN");
    }

    @Test
    void onlyCompleteDaysCount() {
        SeriesBuilder builder = Series.builder();
        Instant start = FIRST.atStartOfDay(ZoneOffset.UTC).toInstant();
        for (int i = 0; i < 36 * 12; i++) {
            builder.add(start.plusSeconds(300L * i), 0.01);
        }
        DailyFlows flows = DailyFlows.of(DailyTotals.in(ZoneOffset.UTC).totals(builder.build()));
        assertThat(flows.flows()).hasSize(1);
        assertThat(flows.flows().get(FIRST)).isCloseTo(864, within(1e-9));
    }

    private static LocalDate day(int number) {
        return FIRST.plusDays(number);
    }
}
