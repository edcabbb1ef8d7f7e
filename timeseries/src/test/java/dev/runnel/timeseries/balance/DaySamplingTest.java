package dev.runnel.timeseries.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DaySamplingTest {
    private static final DailyTotals RULE = DailyTotals.in(ZoneId.of("UTC"));

    private static DaySampling of(int count, IntToDoubleFunction rate) {
        Series series = RegularSeries.of(
                        Instant.parse("2026-03-01T00:00:00Z"),
                        Duration.ofHours(1),
                        IntStream.range(0, count).mapToDouble(rate).toArray())
                .toSeries();
        return DaySampling.of(series, RULE.totals(series));
    }

    @Test
    void halvesOfOneDayByHand() {
        // 12 readings of 3 and 12 of 1: |3 - 1| / (3 + 1) = 0.5. The hour to the next midnight counts too, so there is
        // one more reading.
        DaySampling found = of(25, i -> i % 2 == 0 ? 3 : 1);
        assertThat(found.days()).isEqualTo(1);
        assertThat(found.halves()).isCloseTo(1.4826 * 0.5, within(1e-12));
        assertThat(found.scatter()).isNaN();
        assertThat(found.isCoarse()).isTrue();
        assertThat(found).hasToString("DaySampling[1 day, halves 74.1 % apart, coarse]");
    }

    @Test
    void aSteadyFlowIsNotCoarseHoweverItsDaysDiffer() {
        // Days of 1, 2, 3 ... 9 a second: of each the readings are alike but for the line to the next day.
        DaySampling found = of(9 * 24 + 1, i -> 1 + i / 24);
        assertThat(found.days()).isEqualTo(9);
        assertThat(found.halves()).isZero();
        assertThat(found.scatter()).isGreaterThan(0.3);
        assertThat(found.isCoarse()).isFalse();
    }

    @Test
    void scatterIsThatOfDaysFromThoseAround() {
        // Nine days of 2, the third of them 3: of the nine deviations eight are 0 to 1 %, so the median is small.
        assertThat(of(9 * 24 + 1, i -> i / 24 == 2 ? 3 : 2).scatter()).isLessThan(0.01);
        // Every other day 3: the median of nine is 3, of which 2 is a third off; of deviations 0 and 1/3 the median is
        // 0 to 1/3.
        assertThat(of(9 * 24 + 1, i -> i / 24 % 2 == 0 ? 3 : 2).scatter()).isLessThan(1.4826 / 3);
    }

    @Test
    void whatSaysNothingIsLeftOut() {
        // Water upstream, and a day of which two thirds are missing.
        assertThat(of(24 * 3 + 1, i -> -1).days()).isZero();
        assertThat(of(24 * 3 + 1, i -> -1).halves()).isNaN();
        assertThat(of(24 * 3 + 1, i -> i >= 24 && i < 40 ? Double.NaN : 1).days())
                .isEqualTo(2);
        assertThat(DaySampling.of(Series.empty(), List.of()).days()).isZero();
        assertThat(DaySampling.of(Series.empty(), List.of()).isCoarse()).isFalse();
    }

    /** Strokes of 10 min every 40, read every 15 min: the halves tell the size of the error that the truth shows. */
    @Test
    void halvesTellTheErrorOfADayByItsReadings() {
        Random random = new Random(5);
        int days = 60;
        boolean[] on = new boolean[days * 1440];
        for (int at = 0; at < on.length; at += 30 + random.nextInt(21)) {
            for (int i = at; i < Math.min(on.length, at + 10); i++) {
                on[i] = true;
            }
        }
        double share = IntStream.range(0, on.length).filter(i -> on[i]).count() / (double) on.length;
        Series series = RegularSeries.of(
                        Instant.parse("2026-03-01T00:00:00Z"),
                        Duration.ofMinutes(15),
                        IntStream.range(0, days * 96)
                                .mapToDouble(i -> on[15 * i] ? 1 / share : 0)
                                .toArray())
                .toSeries();
        List<DailyTotal> totals = RULE.totals(series);
        DaySampling found = DaySampling.of(series, totals);
        double squares = 0;
        int count = 0;
        for (DailyTotal day : totals) {
            if (day.isComplete()) {
                int from = count++ * 1440;
                double truth =
                        IntStream.range(from, from + 1440).filter(i -> on[i]).count() / (1440 * share);
                squares += Math.pow(day.mean() / truth - 1, 2);
            }
        }
        double error = Math.sqrt(squares / count);
        assertThat(error).isBetween(0.08, 0.25);
        assertThat(found.isCoarse()).isTrue();
        assertThat(found.halves()).isBetween(0.6 * error, 1.6 * error);
        assertThat(found.scatter()).isGreaterThan(0.7 * error);
    }
}
