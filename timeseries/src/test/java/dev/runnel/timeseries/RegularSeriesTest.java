package dev.runnel.timeseries;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class RegularSeriesTest {
    private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");
    private static final Duration TWO = Duration.ofMinutes(2);
    private static final RegularSeries RAIN = RegularSeries.of(T0, TWO, 0.2, 0, Double.NaN, 0.4);

    @Test
    void knowsItsSteps() {
        assertThat(RAIN.size()).isEqualTo(4);
        assertThat(RAIN.interval()).hasToString("2026-01-01T00:00:00Z/2026-01-01T00:08:00Z");
        assertThat(RAIN.interval(3)).hasToString("2026-01-01T00:06:00Z/2026-01-01T00:08:00Z");
        assertThat(RAIN.time(1)).isEqualTo(T0.plusSeconds(120));
        assertThat(RAIN.missing()).isEqualTo(1);
        assertThat(RAIN.sum()).isEqualTo(0.6000000000000001);
        assertThat(RAIN).hasToString("RegularSeries[4 steps of 2 min from 2026-01-01T00:00:00Z, sum 0.6, 1 missing]");
        assertThatExceptionOfType(IndexOutOfBoundsException.class).isThrownBy(() -> RAIN.time(4));
        assertThatExceptionOfType(IndexOutOfBoundsException.class).isThrownBy(() -> RAIN.interval(-1));
        assertThat(RegularSeries.of(T0, TWO).isEmpty()).isTrue();
        assertThat(RegularSeries.of(T0, TWO).end()).isEqualTo(T0);
    }

    @Test
    void slicesTakeTheStepsThatStartInside() {
        assertThat(RAIN.slice(Interval.of(T0.plusSeconds(1), T0.plusSeconds(240))))
                .isEqualTo(RegularSeries.of(T0.plusSeconds(120), TWO, 0));
        assertThat(RAIN.slice(Interval.of(T0.plusSeconds(120), T0.plusSeconds(241))))
                .isEqualTo(RegularSeries.of(T0.plusSeconds(120), TWO, 0, Double.NaN));
        assertThat(RAIN.slice(Interval.of(Instant.MIN, Instant.MAX))).isEqualTo(RAIN);
        assertThat(RAIN.slice(Interval.of(T0.plusSeconds(1), T0.plusSeconds(2))).isEmpty())
                .isTrue();
        assertThat(RAIN.slice(Interval.of(T0.plusSeconds(500), T0.plusSeconds(900)))
                        .isEmpty())
                .isTrue();
        RegularSeries old = RegularSeries.of(Instant.parse("1969-12-31T23:58:00Z"), TWO, 1, 2, 3);
        assertThat(old.slice(Interval.of(Instant.EPOCH, T0)).toValues()).containsExactly(2, 3);
    }

    @Test
    void becomesASeriesOfStepStarts() {
        Series series = RAIN.toSeries();
        assertThat(series.time(3)).isEqualTo(T0.plusSeconds(360));
        assertThat(series.quality(2)).isEqualTo(Quality.MISSING);
        assertThat(RAIN.map(value -> 2 * value).toValues()).containsExactly(0.4, 0, Double.NaN, 0.8);
    }

    @Test
    void anOutageMakesEveryStepMissingThatItTouches() {
        RegularSeries wet = RegularSeries.of(T0, TWO, 1, 2, 3, 4);
        assertThat(wet.withMissing(Interval.of(T0.plusSeconds(239), T0.plusSeconds(241)))
                        .toValues())
                .containsExactly(1, Double.NaN, Double.NaN, 4);
        assertThat(wet.withMissing(Interval.of(T0.plusSeconds(120), TWO)).toValues())
                .containsExactly(1, Double.NaN, 3, 4);
        assertThat(wet.withMissing(
                                Interval.of(Instant.MIN, T0.plusSeconds(1)),
                                Interval.of(T0.plusSeconds(479), Instant.MAX))
                        .toValues())
                .containsExactly(Double.NaN, 2, 3, Double.NaN);
        assertThat(wet.withMissing(
                        Interval.of(T0.minusSeconds(60), T0), Interval.of(T0.plusSeconds(130), Duration.ZERO)))
                .isEqualTo(wet);
    }

    @Test
    void combinesTheStepsThatBothHave() {
        RegularSeries later = RegularSeries.of(T0.plus(TWO), TWO, 1, 1, 0.1, 5);
        assertThat(RAIN.combine(later, (mine, theirs) -> mine - theirs))
                .isEqualTo(RegularSeries.of(T0.plus(TWO), TWO, -1, Double.NaN, 0.4 - 0.1));
        assertThat(RAIN.combine(RegularSeries.of(T0.plus(Duration.ofDays(1)), TWO, 1), Double::sum)
                        .size())
                .isZero();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RAIN.combine(RegularSeries.of(T0.plusSeconds(1), TWO, 1), Double::sum))
                .withMessage(
                        "other must have steps of 2 min that lie as from 2026-01-01T00:00:00Z, had steps of 2 min from "
                                + "2026-01-01T00:00:01Z");
    }

    @Test
    void refusesWhatIsNotRegular() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RegularSeries.of(T0, Duration.ZERO, 1))
                .withMessage("step must be longer than 0, was 0 s");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RegularSeries.of(T0, TWO, 1, Double.POSITIVE_INFINITY))
                .withMessage("values must be finite, or NaN for missing, was Infinity at index 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RegularSeries.of(Instant.parse("2262-04-11T00:00:00Z"), Duration.ofDays(1), 1))
                .withMessage("values must end before 2262-04-11, were 1 steps of 1 d");
        assertThatIllegalArgumentException().isThrownBy(() -> RAIN.map(value -> value / 0));
    }

    @Test
    void equalSeriesAreEqual() {
        RegularSeries same = RegularSeries.of(T0, TWO, 0.2, 0, Double.NaN, 0.4);
        assertThat(same).isEqualTo(RAIN).hasSameHashCodeAs(RAIN);
        assertThat(same).isNotEqualTo(RegularSeries.of(T0, Duration.ofMinutes(3), 0.2, 0, Double.NaN, 0.4));
    }

    @Test
    void aRunEndsWhereAnotherValueStands() {
        for (int length : new int[] {0, 1, 7, 8, 9, 10, 40}) {
            double[] values = new double[length + 2];
            values[length] = Double.NaN;
            values[length + 1] = Double.NaN;
            RegularSeries series = RegularSeries.of(Instant.EPOCH, Duration.ofMinutes(1), values);
            for (int from = 0; from <= length; from++) {
                assertThat(series.indexOfOtherThan(0, from)).isEqualTo(length);
            }
            assertThat(series.indexOfOtherThan(Double.NaN, length)).isEqualTo(length + 2);
            assertThat(series.indexOfOtherThan(-0.0, 0)).isZero();
        }
        assertThat(RegularSeries.of(Instant.EPOCH, Duration.ofMinutes(1), new double[30])
                        .indexOfOtherThan(0, 3))
                .isEqualTo(30);
    }

    @Test
    void aSeriesFilledInPlaceIsChecked() {
        assertThat(RegularSeries.filled(Instant.EPOCH, Duration.ofMinutes(1), 3, values -> values[1] = 5))
                .isEqualTo(RegularSeries.of(Instant.EPOCH, Duration.ofMinutes(1), 0, 5, 0));
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> RegularSeries.filled(
                        Instant.EPOCH, Duration.ofMinutes(1), 1, values -> values[0] = Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
