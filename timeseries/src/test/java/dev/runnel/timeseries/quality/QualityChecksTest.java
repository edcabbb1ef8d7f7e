package dev.runnel.timeseries.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.tuple;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class QualityChecksTest {
    private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");
    private static final double NONE = Double.NaN;

    @Test
    void rangeFailsBeyondTheSensorAndIsUnusualBeyondTheSite() {
        RangeCheck test = RangeCheck.of(0, 3).withUsual(0.1, 2);
        Series series = every2Minutes(0.1, 2, 0.09, 2.01, 0, 3, -0.01, 3.01, NONE);
        assertThat(codes(test, series)).isEqualTo("1 1 3 3 3 3 4 4 9");
        assertThat(test.apply(series).raised().get(0))
                .hasToString("2026-01-01T00:04:00Z unusual: 0.09 is outside [0.1, 2]");
        assertThat(test.apply(series))
                .hasToString("QualityFlags[range: 2 pass, 0 not evaluated, 4 unusual, 2 fail, 1 missing]");
    }

    @Test
    void spikeComparesWithTheMeanOfTheNeighbours() {
        SpikeCheck test = SpikeCheck.of(0.5, 2);
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
        FlatLineCheck test = FlatLineCheck.of(3, 5, 0.001);
        assertThat(codes(test, every2Minutes(1, 2, 2, 2, 2, 2, 2, 3))).isEqualTo("1 1 1 3 3 4 4 1");
        assertThat(codes(test, every2Minutes(2, 2, NONE, 2, 2, 2))).isEqualTo("1 1 9 1 1 3");
        // A slow drift within the tolerance from reading to reading is not flat: all are compared with this one.
        assertThat(codes(test, every2Minutes(0, 0.0008, 0.0016, 0.0024, 0.0032)))
                .isEqualTo("1 1 1 1 1");
        assertThat(codes(FlatLineCheck.of(2, 2, 0), every2Minutes(1, 1, 1.0000001)))
                .isEqualTo("1 4 1");
        assertThat(test.apply(every2Minutes(2, 2, 2)).raised().get(0).reason()).isEqualTo("2 for 3 readings in a row");
    }

    @Test
    void rateOfChangeIsPerTime() {
        RateOfChangeCheck test = RateOfChangeCheck.of(0.5, Duration.ofMinutes(1));
        assertThat(codes(test, every2Minutes(0, 1, 2.25, 1, NONE, 3))).isEqualTo("2 1 3 3 9 1");
        assertThat(codes(test.withMaximumGap(Duration.ofMinutes(3)), every2Minutes(0, 1, NONE, 9)))
                .isEqualTo("2 1 9 2");
        assertThat(test.apply(every2Minutes(0, 1.5)).raised().get(0).reason())
                .isEqualTo("from 0 to 1.5 in 2 min, at most 1 is usual");
    }

    @Test
    void gapsLieBetweenValues() {
        GapCheck check = GapCheck.longerThan(Duration.ofMinutes(4));
        Series series = every2Minutes(NONE, 1, NONE, 1, NONE, NONE, 1, 1, NONE, NONE, NONE);
        assertThat(check.over(series)).containsExactly(Interval.of(T0.plusSeconds(360), T0.plusSeconds(720)));
        assertThat(check.over(Series.empty())).isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> GapCheck.longerThan(Duration.ZERO))
                .withMessage("maximum must be longer than 0, was 0 s");
    }

    @Test
    void checksJoinTheVerdictsAndChangeNoValue() {
        Series series = every2Minutes(1, 1, 1, 9, 1, NONE);
        QualityReport report =
                QualityChecks.of(RangeCheck.of(0, 10), SpikeCheck.of(2, 5)).apply(series);
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
        assertThat(report.count(Verdict.UNUSUAL)).isEqualTo(1);
        assertThat(report.flags("spike").count(Verdict.NOT_EVALUATED)).isEqualTo(2);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> report.flags("flat"))
                .withMessage("check must be one of [range, spike], was flat");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QualityChecks.of(RangeCheck.of(0, 1), RangeCheck.of(0, 2)))
                .withMessage("checks must have different names, was range twice");
    }

    /** A logger that writes -9999 for a lost echo, 35 times in a night of good depths. */
    @Test
    void minus9999FailsTheRangeAndTakesNoGoodNeighbourWithIt() {
        double[] values = new double[700];
        for (int i = 0; i < values.length; i++) {
            values[i] = i % 20 == 7 ? -9999 : 0.2 + 0.001 * (i % 5);
        }
        QualityReport report = QualityChecks.of(
                        RangeCheck.of(0, 2),
                        SpikeCheck.of(0.05, 0.1),
                        RateOfChangeCheck.of(0.05, Duration.ofMinutes(1)))
                .apply(every2Minutes(values));
        assertThat(report.count(Verdict.FAIL)).isEqualTo(35);
        assertThat(report.count(Verdict.UNUSUAL)).isZero();
        assertThat(report.series().count(Quality.SUSPECT)).isEqualTo(35);
        // The neighbours of a failure have no two neighbours of their own; nor have the ends.
        assertThat(report.flags("spike").count(Verdict.NOT_EVALUATED)).isEqualTo(35 + 2 * 35 + 2);
        assertThat(report.flags("rate of change").count(Verdict.PASS)).isEqualTo(700 - 35 - 1);
    }

    @Test
    void aSpikeBesideAFailureIsFoundAndItsGoodNeighbourIsKept() {
        Series series = every2Minutes(0.2, 0.2, -9999, 0.9, 0.2, 0.2);
        QualityReport report = QualityChecks.of(
                        RangeCheck.of(0, 2), SpikeCheck.of(0.1, 0.3).withNeighboursSpared())
                .apply(series);
        assertThat(report.flags("spike").raised())
                .extracting(QualityFlag::verdict, QualityFlag::reason)
                .containsExactly(tuple(Verdict.FAIL, "0.9 is 0.7 off its neighbours 0.2 and 0.2"));
        assertThat(report.series().count(Quality.SUSPECT)).isEqualTo(2);
        // The published formula alone cannot judge beside a failure, and takes the good reading behind the spike for
        // one.
        QualityReport published =
                QualityChecks.of(RangeCheck.of(0, 2), SpikeCheck.of(0.1, 0.3)).apply(series);
        assertThat(published.flags("spike").raised())
                .extracting(QualityFlag::reason)
                .containsExactly("0.2 is 0.35 off its neighbours 0.9 and 0.2");
    }

    @Test
    void neighboursOfASpikeAreSparedOnRequest() {
        Series series = every2Minutes(1, 1, 9, 1, 1, 1);
        assertThat(codes(SpikeCheck.of(0.5, 2), series)).isEqualTo("2 4 4 4 1 2");
        SpikeCheck sparing = SpikeCheck.of(0.5, 2).withNeighboursSpared();
        assertThat(codes(sparing, series)).isEqualTo("2 2 4 2 1 2");
        // Two readings that stand out together have equal deviations: none explains the other.
        assertThat(codes(sparing, every2Minutes(1, 1, 9, 9, 1, 1))).isEqualTo("2 4 4 4 4 2");
    }

    @Test
    void refusesStatesThatAreNotItsOwn() {
        FlatLineCheck flat = FlatLineCheck.of(2, 3, 0);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> flat.parseState("flat-line-check/1 run=1.0,1.0,1.0,1.0,"))
                .withMessage("state flat-line-check: length of run must be in [0, 3], was 4");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> flat.parseState("flat-line-check/1 run=NaN,"))
                .withMessage("state flat-line-check: run must be finite, was NaN");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QualityChecks.of(flat).parseState("quality-checks/1 checks= waiting="))
                .withMessage("state quality-checks: checks must have length 1, was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SpikeCheck.of(1, 2).parseState("spike-check/1 times=1, values= qualities= owed=0"))
                .withMessage("state spike-check: values must have length 1, was 0");
    }

    @Test
    void refusesLimitsThatAreNotInOrder() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RangeCheck.of(1, 0))
                .withMessage("failAbove must be in [1, Infinity], was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RangeCheck.of(Double.NaN, 0))
                .withMessage("failAbove must be in [NaN, Infinity], was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RangeCheck.of(0, 1).withUsual(0.5, 2))
                .withMessage("unusualAbove must be in [0.5, 1], was 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SpikeCheck.of(0.2, 0.1))
                .withMessage("failAbove must be in [0.2, Infinity], was 0.1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FlatLineCheck.of(1, 5, 0))
                .withMessage("unusualCount must be at least 2, was 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FlatLineCheck.of(3, 2, 0))
                .withMessage("failCount must be in [3, 100000], was 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RateOfChangeCheck.of(0, Duration.ofMinutes(1)))
                .withMessage("change must be greater than 0 and finite, was 0");
    }

    private static String codes(QualityCheck test, Series series) {
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

    /** Verdicts of a part are those of the whole: the flat line had begun before. */
    @Test
    void aSliceKeepsItsVerdicts() {
        Instant start = Instant.parse("2026-03-01T00:00:00Z");
        Series series = RegularSeries.of(start, Duration.ofMinutes(2), 0.2, 0.1, 0.1, 0.1, 0.1, 9)
                .toSeries();
        QualityReport report =
                QualityChecks.of(RangeCheck.of(0, 2), FlatLineCheck.of(3, 5, 0)).apply(series);
        QualityReport part = report.slice(Interval.of(start.plusSeconds(360), start.plusSeconds(600)));
        assertThat(part.series().toValues()).containsExactly(0.1, 0.1);
        assertThat(part.flags("flat line").verdict(0))
                .isEqualTo(report.flags("flat line").verdict(3));
        assertThat(part.flags("flat line").raised()).hasSize(2);
        assertThat(part.flags("range").raised()).isEmpty();
        assertThat(part.flags("range").size()).isEqualTo(2);
    }
}
