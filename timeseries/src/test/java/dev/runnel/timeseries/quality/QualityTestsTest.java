package dev.runnel.timeseries.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class QualityTestsTest {
    private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");
    private static final double NONE = Double.NaN;

    @Test
    void rangeFailsBeyondTheSensorAndIsUnusualBeyondTheSite() {
        RangeTest test = RangeTest.of(0, 3).withUsual(0.1, 2);
        Series series = every2Minutes(0.1, 2, 0.09, 2.01, 0, 3, -0.01, 3.01, NONE);
        assertThat(codes(test, series)).isEqualTo("1 1 3 3 3 3 4 4 9");
        assertThat(test.apply(series).raised().get(0))
                .hasToString("2026-01-01T00:04:00Z unusual: 0.09 is outside [0.1, 2]");
        assertThat(test.apply(series))
                .hasToString("QualityFlags[range: 2 pass, 0 not evaluated, 4 unusual, 2 fail, 1 missing]");
    }

    @Test
    void spikeComparesWithTheMeanOfTheNeighbours() {
        SpikeTest test = SpikeTest.of(0.5, 2);
        assertThat(codes(test, every2Minutes(1, 1.5, 1, 1, 3.5, 1))).isEqualTo("2 1 1 3 4 2");
        assertThat(codes(test, every2Minutes(1, 1.5625, 1))).isEqualTo("2 3 2");
        assertThat(codes(test, every2Minutes(0, 1, 2, 3))).isEqualTo("2 1 1 2");
        assertThat(codes(test, every2Minutes(1, NONE, 9, 1, 1, 1))).isEqualTo("2 9 2 4 1 2");
        assertThat(codes(test, every2Minutes(1))).isEqualTo("2");
        assertThat(codes(test.withMaximumGap(Duration.ofSeconds(119)), every2Minutes(1, 9, 1)))
                .isEqualTo("2 2 2");
        assertThat(test.apply(every2Minutes(1, 3.5, 1)).raised().get(0).reason())
                .isEqualTo("3.5 is 2.5 off its neighbours 1 and 1");
    }

    @Test
    void flatLineCountsThisValueToo() {
        FlatLineTest test = FlatLineTest.of(3, 5, 0.001);
        assertThat(codes(test, every2Minutes(1, 2, 2, 2, 2, 2, 2, 3))).isEqualTo("1 1 1 3 3 4 4 1");
        assertThat(codes(test, every2Minutes(2, 2, NONE, 2, 2, 2))).isEqualTo("1 1 9 1 1 3");
        // A slow drift within the tolerance from reading to reading is not flat: all are compared with this one.
        assertThat(codes(test, every2Minutes(0, 0.0008, 0.0016, 0.0024, 0.0032)))
                .isEqualTo("1 1 1 1 1");
        assertThat(codes(FlatLineTest.of(2, 2, 0), every2Minutes(1, 1, 1.0000001)))
                .isEqualTo("1 4 1");
        assertThat(test.apply(every2Minutes(2, 2, 2)).raised().get(0).reason()).isEqualTo("2 for 3 readings in a row");
    }

    @Test
    void rateOfChangeIsPerTime() {
        RateOfChangeTest test = RateOfChangeTest.of(0.5, Duration.ofMinutes(1));
        assertThat(codes(test, every2Minutes(0, 1, 2.25, 1, NONE, 3))).isEqualTo("2 1 3 3 9 1");
        assertThat(codes(test.withMaximumGap(Duration.ofMinutes(3)), every2Minutes(0, 1, NONE, 9)))
                .isEqualTo("2 1 9 2");
        assertThat(test.apply(every2Minutes(0, 1.5)).raised().get(0).reason())
                .isEqualTo("from 0 to 1.5 in PT2M, at most 1 is usual");
    }

    @Test
    void gapsLieBetweenValues() {
        GapTest test = GapTest.longerThan(Duration.ofMinutes(4));
        Series series = every2Minutes(NONE, 1, NONE, 1, NONE, NONE, 1, 1, NONE, NONE, NONE);
        assertThat(test.gaps(series)).containsExactly(Interval.of(T0.plusSeconds(360), T0.plusSeconds(720)));
        assertThat(test.gaps(Series.empty())).isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> GapTest.longerThan(Duration.ZERO))
                .withMessage("maximum must be longer than 0, was PT0S");
    }

    @Test
    void aCheckJoinsTheVerdictsAndChangesNoValue() {
        Series series = every2Minutes(1, 1, 1, 9, 1, NONE);
        QualityReport report =
                QualityCheck.of(RangeTest.of(0, 5), SpikeTest.of(2, 100)).apply(series);
        assertThat(report.series().toValues()).isEqualTo(series.toValues());
        assertThat(report.series().stream().map(reading -> reading.quality()))
                .containsExactly(
                        Quality.UNCHECKED,
                        Quality.UNCHECKED,
                        Quality.POOR,
                        Quality.SUSPECT,
                        Quality.UNCHECKED,
                        Quality.MISSING);
        assertThat(report.count(Verdict.FAIL)).isEqualTo(1);
        assertThat(report.count(Verdict.UNUSUAL)).isEqualTo(2);
        assertThat(report.flags("spike").count(Verdict.NOT_EVALUATED)).isEqualTo(2);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> report.flags("flat"))
                .withMessage("test must be one of [range, spike], was flat");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QualityCheck.of(RangeTest.of(0, 1), RangeTest.of(0, 2)))
                .withMessage("tests must have different names, was range twice");
    }

    @Test
    void refusesLimitsThatAreNotInOrder() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RangeTest.of(1, 0))
                .withMessage("failAbove must be in [1, Infinity], was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RangeTest.of(Double.NaN, 0))
                .withMessage("failAbove must be in [NaN, Infinity], was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RangeTest.of(0, 1).withUsual(0.5, 2))
                .withMessage("unusualAbove must be in [0.5, 1], was 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SpikeTest.of(0.2, 0.1))
                .withMessage("failAbove must be in [0.2, Infinity], was 0.1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FlatLineTest.of(1, 5, 0))
                .withMessage("unusualCount must be at least 2, was 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FlatLineTest.of(3, 2, 0))
                .withMessage("failCount must be in [3, 100000], was 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RateOfChangeTest.of(0, Duration.ofMinutes(1)))
                .withMessage("change must be greater than 0 and finite, was 0");
    }

    private static String codes(QualityTest test, Series series) {
        QualityFlags flags = test.apply(series);
        StringBuilder codes = new StringBuilder();
        for (int i = 0; i < flags.size(); i++) {
            codes.append(i == 0 ? "" : " ").append(flags.verdict(i).code());
        }
        return codes.toString();
    }

    private static Series every2Minutes(double... values) {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < values.length; i++) {
            builder.add(T0.plusSeconds(120L * i), values[i]);
        }
        return builder.build();
    }
}
