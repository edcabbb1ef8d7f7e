package dev.runnel.timeseries;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EpochNanosTest {
    @ParameterizedTest
    @ValueSource(longs = {0, 1, -1, 999_999_999, -999_999_999, -1_000_000_000, Long.MAX_VALUE, Long.MIN_VALUE})
    void isExactBothWays(long nanos) {
        assertThat(EpochNanos.of(EpochNanos.toInstant(nanos))).isEqualTo(nanos);
    }

    @Test
    void countsBackwardsBefore1970() {
        assertThat(EpochNanos.of(Instant.parse("1969-12-31T23:59:59.999999999Z")))
                .isEqualTo(-1);
        assertThat(EpochNanos.toInstant(-1_500_000_000)).isEqualTo(Instant.parse("1969-12-31T23:59:58.5Z"));
    }

    @Test
    void refusesWhatALongCannotHold() {
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> EpochNanos.of(EpochNanos.toInstant(Long.MAX_VALUE).plusNanos(1)))
                .withMessage("time must be from 1677-09-21 to 2262-04-11, was 2262-04-11T23:47:16.854775808Z");
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> EpochNanos.of(EpochNanos.toInstant(Long.MIN_VALUE).minusNanos(1)))
                .withMessage("time must be from 1677-09-21 to 2262-04-11, was 1677-09-21T00:12:43.145224191Z");
        assertThatIllegalArgumentException().isThrownBy(() -> EpochNanos.of(Instant.MIN));
        assertThatIllegalArgumentException().isThrownBy(() -> EpochNanos.of(Instant.MAX));
    }

    @Test
    void durationsArePositiveAndNotTooLong() {
        assertThat(EpochNanos.positive("step", Duration.ofNanos(1))).isEqualTo(1);
        assertThat(EpochNanos.nonNegative("delay", Duration.ZERO)).isZero();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> EpochNanos.positive("step", Duration.ZERO))
                .withMessage("step must be longer than 0, was 0 s");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> EpochNanos.nonNegative("delay", Duration.ofNanos(-1)))
                .withMessage("delay must not be negative, was PT-0.000000001S");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> EpochNanos.positive("step", Duration.ofDays(110_000)))
                .withMessage("step must be shorter than 292 years, was 110000 d");
    }
}
