package dev.runnel.timeseries.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class TrendTest {
    private static final double[] RISING = {3.1, 2.9, 3.6, 3.4, 4.1, 3.9, 4.4, 4.0, 5.2, 4.8, 5.1, 5.9};
    private static final double[] TIED = {1, 2, 2, 3, 3, 3, 2, 4, 5, 5, 4, 6, 1};

    /** Published: Wisconsin Administrative Code, Mann-Kendall page, table A, worked example of five values. */
    @Test
    void agreesWithAPublishedExample() {
        assertThat(MannKendall.of(100, 50, 85, 75, 50).s()).isEqualTo(-5);
    }

    /** Recomputed with SciPy 1.17.1: kendalltau(method="exact") and theilslopes. */
    @Test
    void agreesWithAGeneralStatisticsPackage() {
        MannKendall exact = MannKendall.of(RISING);
        assertThat(exact.s()).isEqualTo(52);
        assertThat(exact.isExact()).isTrue();
        assertThat(exact.pValue()).isCloseTo(1.0742344075677409e-4, within(1e-15));
        assertThat(exact.tau()).isCloseTo(0.7878787878787877, within(1e-15));
        MannKendall ties = MannKendall.of(TIED);
        assertThat(ties.s()).isEqualTo(37);
        assertThat(ties.isExact()).isFalse();
        assertThat(ties.variance()).isCloseTo(258.3333333333333, within(1e-12));
        assertThat(ties.z()).isCloseTo(2.2398156606177184, within(1e-14));
        assertThat(ties.pValue()).isCloseTo(0.02510289275359325, within(1e-14));
        assertThat(ties.tau()).isCloseTo(0.5043475057342105, within(1e-14));
        double[] times = new double[12];
        java.util.Arrays.setAll(times, i -> 2.0 * i + 1);
        TheilSen line = TheilSen.of(times, RISING, 0.95);
        assertThat(line.slope()).isCloseTo(0.12361111111111105, within(1e-15));
        assertThat(line.intercept()).isCloseTo(2.5666666666666673, within(1e-14));
        // Limits by Gilbert's ranks, sorted and interpolated in NumPy; SciPy itself rounds the ranks.
        assertThat(line.lower()).isCloseTo(0.08502102208812533, within(1e-14));
        assertThat(line.upper()).isCloseTo(0.15000000000000002, within(1e-14));
    }

    /** Exact tail probabilities for n = 10 and n = 4, from the count of orders by hand and from Kendall's tables. */
    @Test
    void smallSamplesAreExact() {
        // n = 4: S = 6 in 1 order of 24, S = 4 in 3; two-sided 2/24 and 8/24.
        assertThat(MannKendall.of(1, 2, 3, 4).pValue()).isCloseTo(2.0 / 24, within(1e-15));
        assertThat(MannKendall.of(1, 2, 4, 3).pValue()).isCloseTo(8.0 / 24, within(1e-15));
        assertThat(MannKendall.of(4, 3, 2, 1).pValue()).isCloseTo(2.0 / 24, within(1e-15));
        // n = 3 with S = 1: every order is at least as far.
        assertThat(MannKendall.of(2, 1, 3).pValue()).isEqualTo(1);
    }

    @Test
    void constantValuesHaveNoTrend() {
        MannKendall none = MannKendall.of(2, 2, 2, 2);
        assertThat(none.s()).isZero();
        assertThat(none.variance()).isZero();
        assertThat(none.tau()).isZero();
        assertThat(none.z()).isZero();
        assertThat(none.pValue()).isEqualTo(1);
        TheilSen flat = TheilSen.of(new double[] {0, 1, 2, 3}, new double[] {2, 2, 2, 2}, 0.9);
        assertThat(flat.slope()).isZero();
        assertThat(flat.lower()).isZero();
        assertThat(flat.upper()).isZero();
    }

    /** Recomputed with SciPy 1.17: siegelslopes(method="hierarchical") up to the intercept, and linregress. */
    @Test
    void otherLinesAgreeWithAGeneralStatisticsPackage() {
        double[] times = new double[12];
        java.util.Arrays.setAll(times, i -> 2.0 * i + 1);
        RepeatedMedian siegel = RepeatedMedian.of(times, RISING);
        assertThat(siegel.slope()).isCloseTo(0.11999999999999997, within(1e-14));
        assertThat(siegel.intercept()).isCloseTo(2.710000000000001, within(1e-14));
        LeastSquaresLine line = LeastSquaresLine.of(times, RISING, 0.9);
        assertThat(line.slope()).isCloseTo(0.11923076923076924, within(1e-14));
        assertThat(line.intercept()).isCloseTo(2.769230769230769, within(1e-14));
        assertThat(line.slopeStandardError()).isCloseTo(0.013277969150664705, within(1e-14));
        assertThat(line.lower()).isCloseTo(0.0951649663552967, within(1e-12));
        assertThat(line.upper()).isCloseTo(0.14329657210624178, within(1e-12));
        assertThat(line.pValue() / 4.22335275979538e-06).isCloseTo(1, within(1e-9));
        assertThat(line).asString().startsWith("LeastSquaresLine[n 12, slope 0.1192, 90 % limits ");
        assertThat(siegel).asString().startsWith("RepeatedMedian[n 12, slope 0.12");
    }

    /** At the bounds all figures are numbers; beyond them they would not be, and that is said. */
    @Test
    void aLineOfLeastSquaresHasBounds() {
        LeastSquaresLine line =
                LeastSquaresLine.of(new double[] {-1e70, 0, 1e70}, new double[] {-1e70, 1e69, 1e70}, 1 - 1e-9);
        assertThat(line.slope()).isCloseTo(1, within(1e-12));
        assertThat(line.lower()).isFinite().isLessThan(-1e6);
        assertThat(line.upper()).isFinite().isGreaterThan(1e6);
        assertThat(line.pValue()).isBetween(0.0, 1.0);
        double[] times = {0, 1, 2};
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LeastSquaresLine.of(times, new double[] {0, 1e200, 3}, 0.95))
                .withMessageStartingWith("value must be in [-1")
                .withMessageContaining("200");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LeastSquaresLine.of(new double[] {0, 1, 1e200}, times, 0.95))
                .withMessageStartingWith("time must be in [-1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LeastSquaresLine.of(times, times, Math.nextDown(1.0)))
                .withMessageStartingWith("confidence must be in [");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LeastSquaresLine.of(new double[] {0, 1e-200, 2e-200}, times, 0.95))
                .withMessageStartingWith("times must lie farther apart for a slope, were 0 to ");
    }

    /** 105,120 values, a year at 5 min, with many ties: the count by merging is the count of all pairs of a part. */
    @Test
    void manyValuesTakeNoTime() {
        java.util.SplittableRandom random = new java.util.SplittableRandom(3);
        double[] part = random.doubles(2000).map(x -> Math.rint(50 * x)).toArray();
        long pairs = 0;
        for (int i = 0; i < part.length; i++) {
            for (int j = i + 1; j < part.length; j++) {
                pairs += (long) Math.signum(part[j] - part[i]);
            }
        }
        assertThat(MannKendall.of(part).s()).isEqualTo(pairs);
        double[] year = new double[105_120];
        double[] days = new double[year.length];
        for (int i = 0; i < year.length; i++) {
            days[i] = i / 288.0;
            year[i] = 3 + 0.01 * days[i] + random.nextDouble();
        }
        long start = System.nanoTime();
        assertThat(MannKendall.of(year).tau()).isGreaterThan(0.5);
        assertThat((System.nanoTime() - start) / 1e9).isLessThan(3);
        TheilSen line = TheilSen.of(days, year, 0.95);
        assertThat(line.isSampled()).isTrue();
        assertThat(line).asString().endsWith(", pairs drawn]");
        assertThat(line.slope()).isCloseTo(0.01, within(4e-5));
        assertThat(line.lower()).isBetween(0.0099, line.slope());
        assertThat(line.upper()).isBetween(line.slope(), 0.0101);
        // Against least squares, whose limits are of like width for values of this kind.
        LeastSquaresLine squares = LeastSquaresLine.of(days, year, 0.95);
        assertThat((line.upper() - line.lower()) / (squares.upper() - squares.lower()))
                .isBetween(0.8, 1.2);
    }

    /** Without ties sqrt(2 (2n + 5)/(9 n (n - 1))): n = 10, by hand sqrt(50/810). */
    @Test
    void theStandardErrorOfTau() {
        assertThat(MannKendall.of(1, 3, 2, 4, 5, 7, 6, 8, 10, 9).tauStandardError())
                .isCloseTo(Math.sqrt(50.0 / 810), within(1e-15));
        assertThat(MannKendall.of(2, 2, 2, 2).tauStandardError()).isZero();
    }

    @Test
    void fourWildValuesOfTenLeaveTheRepeatedMedian() {
        double[] times = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
        double[] values = {1, 3, 5, 7, 9, 11, 900, 800, 950, 870};
        assertThat(RepeatedMedian.of(times, values).slope()).isEqualTo(2);
    }

    @Test
    void oneWildValueHardlyMovesTheSlope() {
        double[] times = new double[21];
        double[] values = new double[21];
        for (int i = 0; i < 21; i++) {
            times[i] = i;
            values[i] = 5 + 0.5 * i;
        }
        values[20] = 1e6;
        assertThat(TheilSen.of(times, values, 0.95).slope()).isEqualTo(0.5);
    }

    @Test
    void seriesAreTakenInDaysAndByTheirUsableReadings() {
        Instant start = Instant.parse("2026-01-01T00:00:00Z");
        SeriesBuilder builder = Series.builder();
        for (int day = 0; day < 20; day++) {
            Instant time = start.plusSeconds(86_400L * day);
            builder.add(
                    day == 7
                            ? new Reading(time, 99, Quality.SUSPECT)
                            : Reading.of(time, day == 9 ? Double.NaN : 1 + 0.25 * day));
        }
        TheilSen line = TheilSen.of(builder.build());
        assertThat(line.slope()).isEqualTo(0.25);
        assertThat(line.intercept()).isCloseTo(1, within(1e-12));
        assertThat(line.count()).isEqualTo(18);
        assertThat(line.confidence()).isEqualTo(0.95);
        assertThat(MannKendall.of(builder.build()).s()).isEqualTo(18 * 17 / 2);
        assertThat(line).hasToString("TheilSen[n 18, slope 0.25, 95 % limits 0.25 to 0.25, intercept 1]");
        assertThat(MannKendall.of(RISING).toString())
                .isEqualTo("MannKendall[n 12, S 52, tau 0.7879, z 3.497, p 0.0001074 exact]");
    }

    @Test
    void refusesTooFewAndWrongValues() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> MannKendall.of(1, 2))
                .withMessage("number of values must be at least 3, was 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> MannKendall.of(1, 2, Double.NaN))
                .withMessage("value must be finite, was NaN");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TheilSen.of(Series.empty()))
                .withMessage("number of usable readings must be in [3, 1.0E7], was 0");
        double[] three = {0, 1, 2};
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TheilSen.of(new double[] {0, 1, 1}, three, 0.95))
                .withMessage("times must increase strictly, was 1 at index 2 after 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TheilSen.of(new double[2], three, 0.95))
                .withMessage("values must have length 2, was 3");
        assertThatIllegalArgumentException().isThrownBy(() -> TheilSen.of(three, three, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> TheilSen.of(three, three, 0));
    }
}
