package dev.runnel.timeseries.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.balance.BalanceLine.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class VolumeBalanceTest {
    private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");

    @Test
    void aWaveThatTakesAnHourBalancesOnlyWithItsTravelTime() {
        Series above = wave(0);
        Series below = wave(3600);
        Interval storm = Interval.of(T0.plusSeconds(11 * 3600), Duration.ofHours(2));
        BalanceSite downstream = BalanceSite.of("below", below, 0.02);
        BalanceLine late = VolumeBalance.of(List.of(BalanceSite.of("above", above, 0.02)), downstream)
                .over(List.of(storm))
                .get(0);
        assertThat(late.verdict()).isEqualTo(Verdict.GAIN);
        BalanceLine balanced = VolumeBalance.of(
                        List.of(BalanceSite.of("above", above, 0.02).withTravelTime(Duration.ofHours(1))), downstream)
                .over(List.of(storm))
                .get(0);
        assertThat(balanced.difference()).isCloseTo(0, within(1e-9));
        assertThat(balanced.verdict()).isEqualTo(Verdict.WITHIN);
        assertThat(balanced.upstream().get(0).interval().start()).isEqualTo(T0.plusSeconds(10 * 3600));
    }

    @Test
    void theVerdictWaitsForTheUncertainty() {
        // 86.4 m3 a day and 172.8 m3 a day in, 300 m3 a day out: 40.8 m3 more.
        BalanceSite a = BalanceSite.of("a", constant(0.001), 0.1);
        BalanceSite b = BalanceSite.of("b", constant(0.002), 0.05);
        BalanceSite out = BalanceSite.of("out", constant(300 / 86_400.0), 0.04);
        VolumeBalance balance = VolumeBalance.of(List.of(a, b), out);
        BalanceLine line = balance.daily(ZoneOffset.UTC).get(1);
        assertThat(line.inflow()).isCloseTo(259.2, within(1e-9));
        assertThat(line.difference()).isCloseTo(40.8, within(1e-9));
        // 2 sqrt(8.64^2 + 8.64^2 + 12^2)
        assertThat(line.uncertainty()).isCloseTo(34.2520, within(1e-4));
        assertThat(line.verdict()).isEqualTo(Verdict.GAIN);
        assertThat(line.ratio()).isCloseTo(300 / 259.2, within(1e-12));
        assertThat(balance.withCoverageFactor(3).daily(ZoneOffset.UTC).get(1).verdict())
                .isEqualTo(Verdict.WITHIN);
        assertThat(VolumeBalance.of(List.of(a, b, out), out)
                        .daily(ZoneOffset.UTC)
                        .get(1)
                        .verdict())
                .isEqualTo(Verdict.LOSS);
        assertThat(line)
                .hasToString(
                        "BalanceLine[2026-01-02T00:00:00Z/2026-01-03T00:00:00Z, in 259.2 m3, out 300 m3, difference"
                                + " 40.8 +/- 34.3 m3, 100 % covered: gain]");
        // The last day ends with its last reading, ten minutes before midnight.
        assertThat(balance.daily(ZoneOffset.UTC)).hasSize(3);
    }

    @Test
    void aDayThatIsNotCoveredGetsNoVerdict() {
        SeriesBuilder holed = Series.builder();
        constant(0.001).stream()
                .filter(each -> each.time().isBefore(T0.plusSeconds(86_400 + 3 * 3600))
                        || each.time().isAfter(T0.plusSeconds(86_400 + 6 * 3600)))
                .forEach(holed::add);
        VolumeBalance balance = VolumeBalance.of(
                List.of(BalanceSite.of("a", holed.build(), 0)), BalanceSite.of("out", constant(0.001), 0));
        BalanceLine line = balance.daily(ZoneOffset.UTC).get(1);
        assertThat(line.coverage()).isCloseTo(1 - (3 + 1 / 3.0) / 24, within(1e-12));
        assertThat(line.verdict()).isEqualTo(Verdict.NOT_COVERED);
        assertThat(balance.withMinimumCoverage(0.5).daily(ZoneOffset.UTC).get(1).verdict())
                .isEqualTo(Verdict.GAIN);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> VolumeBalance.of(List.of(), BalanceSite.of("out", constant(1), 0)))
                .withMessage("number of sites upstream must be at least 1, was 0");
    }

    @Test
    void ratiosOfDaysCompleteAtBoth() {
        List<DailyTotal> above = days(100, 100, 100, 0, 100);
        List<DailyTotal> below = days(120, 150, 118, 120, 122);
        VolumeRatios ratios = VolumeRatios.of(above, below);
        assertThat(ratios.usual()).isEqualTo((1.2 + 1.22) / 2);
        assertThat(ratios.first()).isEqualTo(400);
        assertThat(ratios.second()).isEqualTo(510);
        assertThat(ratios.fartherThan(0.15)).containsExactly(entry(LocalDate.of(2026, 1, 2), 1.5));
        assertThat(VolumeRatios.of(List.of(), below).usual()).isNaN();
        assertThat(ratios).hasToString("VolumeRatios[4 days, 510 over 400 m3, usual 1.21]");
    }

    @Test
    void gaugesAreComparedOverTheirCommonTimeWithTheMedianOfTheOthers() {
        Map<String, RegularSeries> gauges = new LinkedHashMap<>();
        gauges.put("blocked", hourly(0, 1, 1, 1, 1, 1, 1));
        gauges.put("east", hourly(0, 2, 2, 2, Double.NaN, 2, 2));
        gauges.put("late", hourly(2, 3, 2, 2, 2, 9));
        CommonTotals totals = CommonTotals.of(gauges);
        assertThat(totals.steps()).isEqualTo(3);
        assertThat(totals.totals()).containsExactly(entry("blocked", 3.0), entry("east", 6.0), entry("late", 7.0));
        assertThat(totals.ratioToOthers("blocked")).isEqualTo(3 / 6.5);
        assertThat(totals.ratioToOthers("late")).isEqualTo(7 / 4.5);
        assertThat(totals.fartherThan(0.3)).containsOnlyKeys("blocked", "late");
        CommonTotals storm = CommonTotals.of(gauges, Interval.of(T0.plusSeconds(3 * 3600 + 1), Duration.ofDays(1)));
        assertThat(storm.steps()).isEqualTo(2);
        gauges.put("elsewhere", hourly(100, 1, 1));
        assertThat(CommonTotals.of(gauges).steps()).isZero();
        assertThat(CommonTotals.of(gauges).ratioToOthers("east")).isNaN();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> totals.ratioToOthers("west"))
                .withMessage("record must be one of [blocked, east, late], was west");
        gauges.put("askew", RegularSeries.of(T0.plusSeconds(60), Duration.ofHours(1), 1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CommonTotals.of(gauges))
                .withMessageStartingWith("records must have steps of 1 h that lie as from 2026-01-01T00:00:00Z, had");
    }

    @Test
    void aModelIsComparedWithWhatWasObserved() {
        RegularSeries observed = hourly(0, 2.5, 0.0, 2.1, 1.4, 3.2, 2.8, 1.9, 0.5);
        RegularSeries modelled = hourly(-1, 99, 3.0, -0.5, 2.0, 1.5, 3.0, 2.9, 2.1, 0.8, Double.NaN);
        ModelFit fit = ModelFit.of(observed, modelled);
        assertThat(fit.steps()).isEqualTo(8);
        assertThat(fit.nashSutcliffe()).isCloseTo(0.918981, within(1e-6));
        assertThat(fit.peakRise()).isCloseTo(-0.2, within(1e-12));
        assertThat(fit.peakDifference()).isCloseTo(-0.0625, within(1e-12));
        assertThat(fit.peakLag()).isEqualTo(Duration.ofHours(-4));
        ModelFit same = ModelFit.of(observed, observed);
        assertThat(same.nashSutcliffe()).isEqualTo(1);
        assertThat(same.klingGupta()).isCloseTo(1, within(1e-12));
        assertThat(same.rootMeanSquare()).isZero();
        assertThat(ModelFit.of(observed, hourly(0, 1.8, 1.8, 1.8, 1.8, 1.8, 1.8, 1.8, 1.8))
                        .nashSutcliffe())
                .as("the mean itself")
                .isCloseTo(0, within(1e-12));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ModelFit.of(hourly(0, 1, 1, 1), observed))
                .withMessage("observed must vary and have a mean other than 0, did not");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ModelFit.of(observed, hourly(100, 1)))
                .withMessage("number of steps known to both must be at least 2, was 0");
    }

    private static List<DailyTotal> days(double... volumes) {
        RegularSeries rate = RegularSeries.of(
                T0,
                Duration.ofDays(1),
                java.util.Arrays.stream(volumes).map(each -> each / 86_400).toArray());
        return DailyTotals.in(ZoneOffset.UTC).totals(rate).stream()
                .map(day -> new DailyTotal(
                        day.date(), day.interval(), Math.rint(day.measured() * 1e6) / 1e6, day.coverage(), true))
                .toList();
    }

    private static RegularSeries hourly(int from, double... values) {
        return RegularSeries.of(T0.plusSeconds(3600L * from), Duration.ofHours(1), values);
    }

    private static Series constant(double value) {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < 3 * 144; i++) {
            builder.add(T0.plusSeconds(600L * i), value);
        }
        return builder.build();
    }

    /** A triangle of flow that rises at ten o'clock and is over at noon, shifted by so many seconds. */
    private static Series wave(int shift) {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < 144; i++) {
            double hours = (600.0 * i - shift) / 3600;
            builder.add(T0.plusSeconds(600L * i), 0.01 + Math.max(0, 1 - Math.abs(hours - 11)));
        }
        return builder.build();
    }
}
