package dev.runnel.timeseries;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;

class IntervalTest {
    private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");
    private static final Interval HOUR = Interval.of(T0, Duration.ofHours(1));

    @Test
    void joinsWhatOverlapsOrTouches() {
        Instant start = Instant.parse("2026-05-01T00:00:00Z");
        BiFunction<Integer, Integer, Interval> hours =
                (from, to) -> Interval.of(start.plusSeconds(3600L * from), start.plusSeconds(3600L * to));
        assertThat(Interval.joined(List.of(
                        hours.apply(8, 9), hours.apply(1, 4), hours.apply(2, 3), hours.apply(4, 5), hours.apply(6, 7))))
                .containsExactly(hours.apply(1, 5), hours.apply(6, 7), hours.apply(8, 9));
        assertThat(Interval.joined(List.of())).isEmpty();
    }

    @Test
    void theStartIsInsideAndTheEndIsNot() {
        assertThat(HOUR.contains(T0)).isTrue();
        assertThat(HOUR.contains(HOUR.end().minusNanos(1))).isTrue();
        assertThat(HOUR.contains(HOUR.end())).isFalse();
        assertThat(HOUR.contains(T0.minusNanos(1))).isFalse();
        assertThat(Interval.of(T0, T0).contains(T0)).isFalse();
        assertThat(Interval.of(T0, T0).isEmpty()).isTrue();
    }

    @Test
    void touchingIntervalsDoNotOverlap() {
        Interval next = Interval.of(HOUR.end(), Duration.ofHours(1));
        assertThat(HOUR.overlaps(next)).isFalse();
        assertThat(next.overlaps(HOUR)).isFalse();
        assertThat(HOUR.intersection(next)).isEmpty();
        Interval shifted = Interval.of(T0.plusSeconds(1800), Duration.ofHours(1));
        assertThat(HOUR.intersection(shifted)).contains(Interval.of(T0.plusSeconds(1800), HOUR.end()));
        assertThat(shifted.intersection(HOUR)).isEqualTo(HOUR.intersection(shifted));
        assertThat(HOUR.intersection(Interval.of(T0.plusSeconds(60), T0.plusSeconds(120))))
                .contains(Interval.of(T0.plusSeconds(60), T0.plusSeconds(120)));
    }

    @Test
    void readsWhatItWrites() {
        assertThat(HOUR).hasToString("2026-01-01T00:00:00Z/2026-01-01T01:00:00Z");
        assertThat(Interval.parse(HOUR.toString())).isEqualTo(HOUR);
        assertThat(HOUR.hours()).isEqualTo(1);
        assertThat(Interval.of(T0, Duration.ofMinutes(90)).hours()).isEqualTo(1.5);
        assertThat(HOUR.duration()).isEqualTo(Duration.ofHours(1));
    }

    @Test
    void refusesTheWrongOrderAndWrongText() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Interval.of(HOUR.end(), T0))
                .withMessage("end must not be before start 2026-01-01T01:00:00Z, was 2026-01-01T00:00:00Z");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Interval.of(T0, Duration.ofSeconds(-1)))
                .withMessage("end must not be before start 2026-01-01T00:00:00Z, was 2025-12-31T23:59:59Z");
        for (String wrong : new String[] {"", "2026-01-01T00:00:00Z", "a/b", "2026-01-01T00:00:00Z/2026", "//"}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Interval.parse(wrong))
                    .withMessage("text must be two ISO-8601 instants with a slash between, was " + wrong);
        }
    }

    @Test
    void theShareThatAnotherCovers() {
        Interval quarter = Interval.of(T0.plusSeconds(2700), Duration.ofHours(3));
        assertThat(HOUR.shareCoveredBy(quarter)).isEqualTo(0.25);
        assertThat(quarter.shareCoveredBy(HOUR)).isEqualTo(0.25 / 3);
        assertThat(HOUR.shareCoveredBy(HOUR)).isEqualTo(1);
        assertThat(HOUR.shareCoveredBy(Interval.of(T0.minusSeconds(9), Duration.ofDays(400_000))))
                .isEqualTo(1);
        assertThat(HOUR.shareCoveredBy(Interval.of(HOUR.end(), Duration.ofHours(1))))
                .isZero();
        assertThat(HOUR.shareCoveredBy(Interval.of(T0, T0))).isZero();
        assertThat(Interval.of(T0, T0).shareCoveredBy(HOUR)).isZero();
        Instant inside = T0.plusSeconds(900);
        assertThat(Interval.of(inside, inside).shareCoveredBy(HOUR)).isZero();
    }

    @Test
    void hoursOfIntervalsLongerThanTheClockOfNanoseconds() {
        Interval millennium = Interval.of(Instant.parse("1000-01-01T00:00:00Z"), Duration.ofHours(8_766_000));
        assertThat(millennium.hours()).isEqualTo(8_766_000);
    }
}
