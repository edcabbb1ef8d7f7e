package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** When a level that rises in a known way is told to reach the alarm and the soffit. */
class LevelForecastsTest {
    private static final SiteBaseline BASELINE = KnownHours.baseline(hour -> {});
    private static final long NOW = ChangeSeries.blockOf(KnownHours.FIRST) + 400;
    private static final double SOFFIT = InventedSite.MONITOR.soffit();

    /** An open finding with its forecasts, of a highest level in m at each time in days from now; NaN where it is not known. */
    private static Track after(double alarm, long start, int blocks, DoubleUnaryOperator level) {
        ChangeSeries series = new ChangeSeries(BASELINE);
        for (long block = NOW - blocks + 1; block <= NOW; block++) {
            double[] row = new double[Quantity.COUNT];
            row[ChangeSeries.D] = Math.log(level.applyAsDouble((block - NOW) / 8.0) / BASELINE.usualPeak());
            series.blocks.add(block, row);
        }
        Track open = new Track(1, FindingName.HELD_UP, 0, 0);
        LevelForecasts.make(WatchRule.of(BASELINE).withAlarmLevel(alarm), series, start, NOW, open);
        return open;
    }

    private static Track after(double alarm, DoubleUnaryOperator level) {
        return after(alarm, 0, 300, level);
    }

    private static double days(Instant time) {
        Instant end = EpochNanos.toInstant(ChangeSeries.time(NOW + 1));
        return Duration.between(end, time).toMillis() / 86_400_000.0;
    }

    private static DoubleUnaryOperator line(double now, double perDay) {
        return day -> now + perDay * day;
    }

    @Test
    void levelThatRisesInALineReachesTheAlarmAndThenTheSoffit() {
        Track open = after(0.32, line(0.25, 0.007));
        LevelForecast alarm = open.alarm.orElseThrow();
        assertThat(alarm.level()).isEqualTo(0.32);
        assertThat(days(alarm.time())).isCloseTo(10, within(1e-4));
        assertThat(days(alarm.earliest())).isCloseTo(10, within(1e-4));
        assertThat(days(alarm.latest())).isCloseTo(10, within(1e-4));
        LevelForecast soffit = open.soffit.orElseThrow();
        assertThat(soffit.level()).isEqualTo(SOFFIT);
        assertThat(days(soffit.time())).isCloseTo((SOFFIT - 0.25) / 0.007, within(1e-4));
        assertThat(WatchRule.of(BASELINE).alarmLevel()).isEmpty();
    }

    @Test
    void levelThatScattersIsToldWithAnEarlierAndALaterTime() {
        LevelForecast alarm = after(0.32, day -> 0.25 + 0.007 * day + 0.003 * Math.sin(40 * day))
                .alarm
                .orElseThrow();
        assertThat(days(alarm.time())).isCloseTo(10, within(0.5));
        assertThat(days(alarm.earliest())).isBetween(7.0, days(alarm.time()) - 0.1);
        assertThat(days(alarm.latest())).isBetween(days(alarm.time()) + 0.1, 13.0);
    }

    @Test
    void onlyTheLastTwoWeeksSinceTheFindingBeganCount() {
        DoubleUnaryOperator bent = day -> 0.25 + (day < -14 ? -0.07 + 0.05 * (day + 14) / 40 : 0.005 * day);
        assertThat(days(after(0.30, bent).alarm.orElseThrow().time())).isCloseTo(10, within(1e-4));
        DoubleUnaryOperator young = day -> 0.25 + (day < -3 ? 0 : 0.01 * day);
        assertThat(days(after(0.30, NOW - 24, 300, young).alarm.orElseThrow().time()))
                .isCloseTo(5, within(1e-4));
    }

    @Test
    void levelThatStandsFallsOrIsThereAlreadyReachesNothing() {
        assertThat(after(0.30, line(0.25, 0)).alarm).isEmpty();
        assertThat(after(0.30, line(0.25, -0.005)).alarm).isEmpty();
        assertThat(after(0.20, line(0.25, -0.005)).alarm).isEmpty();
        Track above = after(0.20, line(0.25, 0.005));
        assertThat(above.alarm).isEmpty();
        assertThat(above.soffit).isPresent();
    }

    @Test
    void noForecastGoesBeyondAYear() {
        assertThat(days(after(0.25 + 364.5 * 5e-4, line(0.25, 5e-4))
                        .alarm
                        .orElseThrow()
                        .time()))
                .isCloseTo(364.5, within(1e-3));
        assertThat(after(0.25 + 365.5 * 5e-4, line(0.25, 5e-4)).alarm).isEmpty();
    }

    /** The more a level scatters about its line, the later it may be at the alarm, and at last it may never be. */
    @Test
    void aRiseThatMayTakeMoreThanTenYearsIsNotTold() {
        double[] latest = new double[8];
        for (int i = 0; i < latest.length; i++) {
            double amplitude = 0.0150 + 2e-4 * i;
            latest[i] = after(0.39, day -> 0.25 + 4e-4 * day + amplitude * Math.sin(40 * day))
                    .alarm
                    .map(alarm -> days(alarm.latest()))
                    .orElse(Double.NaN);
        }
        // By Theil's and Sen's limits of each line: 2368, 2566, 2801, 3083, 3428, 3861 and more days; within a year by
        // the line.
        assertThat(latest[0]).isBetween(2300.0, 2400.0);
        assertThat(Arrays.copyOf(latest, 5)).isSorted();
        assertThat(latest[4]).isBetween(3000.0, 3650.0);
        assertThat(latest[5]).isNaN();
        assertThat(latest[7]).isNaN();
    }

    @Test
    void aDayOfKnownBlocksIsEnough() {
        assertThat(days(after(0.30, 0, 8, line(0.25, 0.01)).alarm.orElseThrow().time()))
                .isCloseTo(5, within(1e-4));
        assertThat(after(0.30, 0, 7, line(0.25, 0.01)).alarm).isEmpty();
        DoubleUnaryOperator gaps = day -> day > -1 && day < -0.3 ? Double.NaN : 0.25 + 0.01 * day;
        assertThat(days(after(0.30, 0, 16, gaps).alarm.orElseThrow().time())).isCloseTo(5, within(1e-4));
        assertThat(after(0.30, 0, 12, gaps).alarm).isEmpty();
    }

    @Test
    void whatWasForecastIsTakenBack() {
        Track open = after(0.32, line(0.25, 0.007));
        ChangeSeries nothing = new ChangeSeries(BASELINE);
        LevelForecasts.make(WatchRule.of(BASELINE).withAlarmLevel(0.32), nothing, 0, NOW, open);
        assertThat(open.alarm).isEqualTo(Optional.empty());
        assertThat(open.soffit).isEqualTo(Optional.empty());
    }

    @Test
    void itReadsToTheHour() {
        Instant time = Instant.parse("2026-05-01T06:40:00Z");
        assertThat(new LevelForecast(0.4123, time, time.minus(50, ChronoUnit.HOURS), time.plus(90, ChronoUnit.MINUTES)))
                .hasToString("0.412 m about 2026-05-01T06:00:00Z (2026-04-29T04:00:00Z to 2026-05-01T08:00:00Z)");
    }
}
