package dev.runnel.timeseries;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class AlignmentTest {
    private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");

    @Test
    void exactTakesNothingFromAnotherInstant() {
        Series sum = Alignment.exact().apply(series(0, 1, 2, 2, 4, 3), series(0, 10, 3, 20, 4, 30), Double::sum);
        assertThat(sum.toValues()).containsExactly(11, Double.NaN, 33);
        assertThat(sum.quality(0)).isEqualTo(Quality.UNCHECKED);
        assertThat(sum.quality(1)).isEqualTo(Quality.MISSING);
        assertThat(sum.toEpochNanos()).isEqualTo(series(0, 1, 2, 2, 4, 3).toEpochNanos());
    }

    @Test
    void holdLastReachesBackToTheLimitAndNotFurther() {
        Series aligned = Alignment.holdLast(Duration.ofMinutes(5)).align(series(0, 0, 5, 0, 6, 0), series(0, 7, 8, 9));
        assertThat(aligned.toValues()).containsExactly(7, 7, Double.NaN);
        assertThat(aligned.quality(0)).isEqualTo(Quality.UNCHECKED);
        assertThat(aligned.quality(1)).isEqualTo(Quality.ESTIMATE);
    }

    @Test
    void linearJoinsNeighboursNoFurtherApartThanTheLimit() {
        Series clock = series(-1, 0, 1, 0, 4, 0, 6, 0, 11, 0);
        Series other = series(0, 10, 4, 18, 10, 0);
        Series aligned = Alignment.linear(Duration.ofMinutes(4)).align(clock, other);
        assertThat(aligned.toValues()).containsExactly(Double.NaN, 12, 18, Double.NaN, Double.NaN);
        assertThat(aligned.quality(1)).isEqualTo(Quality.ESTIMATE);
        assertThat(aligned.quality(2)).isEqualTo(Quality.UNCHECKED);
    }

    @Test
    void passesOverReadingsWithoutAValueInsideTheLimit() {
        Series other = series(0, 10, 1, Double.NaN, 2, Double.NaN, 4, 30);
        assertThat(Alignment.holdLast(Duration.ofMinutes(2))
                        .align(series(2, 0, 3, 0), other)
                        .toValues())
                .containsExactly(10, Double.NaN);
        assertThat(Alignment.linear(Duration.ofMinutes(4))
                        .align(series(1, 0, 2, 0), other)
                        .toValues())
                .containsExactly(15, 20);
        assertThat(Alignment.exact().align(series(1, 0), other).value(0)).isNaN();
    }

    @Test
    void suspicionIsPassedOn() {
        Series suspect = Series.builder()
                .add(new Reading(T0, 10, Quality.SUSPECT))
                .add(new Reading(T0.plusSeconds(120), 12, Quality.GOOD))
                .build();
        Series aligned = Alignment.linear(Duration.ofMinutes(4)).align(series(0, 0, 1, 0, 2, 0), suspect);
        assertThat(aligned.quality(0)).isEqualTo(Quality.SUSPECT);
        assertThat(aligned.quality(1)).isEqualTo(Quality.SUSPECT);
        assertThat(aligned.quality(2)).isEqualTo(Quality.GOOD);
        assertThat(aligned.value(1)).isEqualTo(11);
    }

    @Test
    void nanFromTheFunctionIsMissingAndInfinityIsRefused() {
        Series zero = series(0, 0);
        assertThat(Alignment.exact().apply(zero, zero, (a, b) -> a / b).quality(0))
                .isEqualTo(Quality.MISSING);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Alignment.exact().apply(series(0, 1), zero, (a, b) -> a / b))
                .withMessage("function must return finite values or NaN, was Infinity at 2026-01-01T00:00:00Z");
    }

    @Test
    void emptySeriesOnEitherSide() {
        assertThat(Alignment.exact().align(Series.empty(), series(0, 1)).isEmpty())
                .isTrue();
        assertThat(Alignment.linear(Duration.ofHours(1))
                        .align(series(0, 1), Series.empty())
                        .count(Quality.MISSING))
                .isEqualTo(1);
    }

    @Test
    void neighboursCenturiesApartAreBeyondAnyLimit() {
        Series other = Series.builder()
                .add(Instant.parse("1700-01-01T00:00:00Z"), 1)
                .add(Instant.parse("2250-01-01T00:00:00Z"), 2)
                .build();
        assertThat(Alignment.linear(Duration.ofDays(36_500))
                        .align(series(0, 1), other)
                        .value(0))
                .isNaN();
        assertThat(Alignment.holdLast(Duration.ofDays(36_500))
                        .align(series(0, 1), other)
                        .value(0))
                .isNaN();
    }

    @Test
    void refusesALimitOfZero() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Alignment.holdLast(Duration.ZERO))
                .withMessage("limit must be longer than 0, was 0 s");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Alignment.linear(Duration.ofSeconds(-2)))
                .withMessage("limit must not be negative, was -2 s");
    }

    @Test
    void saysWhatItDoes() {
        assertThat(Alignment.exact()).hasToString("Alignment[same instant]");
        assertThat(Alignment.holdLast(Duration.ofMinutes(4))).hasToString("Alignment[last value, at most 4 min old]");
        assertThat(Alignment.linear(Duration.ofMinutes(4))).hasToString("Alignment[straight line over at most 4 min]");
    }

    private static Series series(double... minuteAndValue) {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < minuteAndValue.length; i += 2) {
            builder.add(T0.plusSeconds((long) (60 * minuteAndValue[i])), minuteAndValue[i + 1]);
        }
        return builder.build();
    }
}
