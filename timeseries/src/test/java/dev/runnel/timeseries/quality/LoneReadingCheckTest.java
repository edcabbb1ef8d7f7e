package dev.runnel.timeseries.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Each expectation is worked by hand from the sentences that state the check. */
class LoneReadingCheckTest {
    private static final double NONE = Double.NaN;
    private static final LoneReadingCheck CHECK = LoneReadingCheck.of(0.1, Duration.ofMinutes(15));

    private static Series every(int minutes, double... values) {
        long[] times = new long[values.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = Instant.parse("2026-01-01T00:00:00Z").getEpochSecond() * 1_000_000_000L
                    + 60_000_000_000L * minutes * i;
        }
        return Series.of(times, values);
    }

    private static String codes(Series checked, Series companion) {
        QualityFlags flags = CHECK.apply(checked, companion);
        return IntStream.range(0, flags.size())
                .mapToObj(i -> Integer.toString(flags.verdict(i).code()))
                .collect(Collectors.joining(" "));
    }

    @Test
    void aFalseEchoBesideASteadyVelocityFailsNearAndFar() {
        for (int minutes : new int[] {1, 5, 15}) {
            Series depth = every(minutes, 0.09, 0.09, 0.65, 0.10, 0.10);
            Series velocity = every(minutes, 0.7, 0.72, 0.71, 0.7, 0.7);
            assertThat(codes(depth, velocity)).isEqualTo("2 2 4 2 2");
            assertThat(CHECK.apply(depth, velocity).raised().get(0).reason())
                    .isEqualTo("0.65 is 0.555 off its neighbours 0.09 and 0.1, and the companion stood still");
        }
        assertThat(codes(every(16, 0.09, 0.09, 0.65, 0.10, 0.10), every(16, 0.7, 0.72, 0.71, 0.7, 0.7)))
                .isEqualTo("2 2 2 2 2");
    }

    @Test
    void aVelocityThatDroppedOutBesideASteadyDepthFails() {
        assertThat(codes(every(5, 0.6, 0.62, 0, 0.61, 0.6), every(5, 0.12, 0.12, 0.121, 0.12, 0.12)))
                .isEqualTo("2 2 4 2 2");
    }

    @Test
    void whatTheCompanionSharesPasses() {
        // A storm, or the stroke of a pump, moves both; 0.112 of 0.712 is more than 0.2 of 0.556/0.65, 0.1 of 0.8 is
        // less.
        Series depth = every(15, 0.09, 0.09, 0.65, 0.10, 0.10);
        assertThat(codes(depth, every(15, 0.7, 0.72, 1.5, 0.7, 0.7))).isEqualTo("2 2 1 2 2");
        assertThat(codes(depth, every(15, 0.7, 0.7, 0.85, 0.7, 0.7))).isEqualTo("2 2 1 2 2");
        assertThat(codes(depth, every(15, 0.7, 0.7, 0.84, 0.7, 0.7))).isEqualTo("2 2 4 2 2");
    }

    @Test
    void itMustStandOutByHalfOfItselfAndByTheLimit() {
        Series still = every(15, 1, 1, 1, 1, 1);
        // Water above the soffit rises while the velocity stands, but seldom to more than twice as deep. What is beside
        // a larger
        // deviation is spared, even if that one passes.
        assertThat(codes(every(15, 0.6, 0.6, 1.0, 0.6, 0.6), still)).isEqualTo("2 2 1 2 2");
        assertThat(codes(every(15, 0.05, 0.05, 0.15, 0.05, 0.05), still)).isEqualTo("2 1 1 1 2");
        assertThat(codes(every(15, 0.05, 0.05, 0.16, 0.05, 0.05), still)).isEqualTo("2 1 4 1 2");
    }

    @Test
    void theWaterMustComeBackToWhereItWas() {
        Series still = every(15, 0.7, 0.7, 0.7, 0.7, 0.7);
        // 0.65 less 0.17 is 0.48, of which a quarter is 0.12; less 0.149 it is 0.501, of which a quarter is 0.125.
        assertThat(codes(every(15, 0.09, 0.09, 0.65, 0.25, 0.25), still)).isEqualTo("2 2 1 2 2");
        assertThat(codes(every(15, 0.09, 0.09, 0.65, 0.208, 0.208), still)).isEqualTo("2 2 4 2 2");
    }

    @Test
    void withoutACompanionNothingIsJudged() {
        Series depth = every(5, 0.06, 0.06, 0.40, 0.06, 0.06);
        assertThat(codes(depth, every(5, 0.5, NONE, 0.5, 0.5, 0.5))).isEqualTo("2 2 2 2 2");
        assertThat(codes(depth, Series.empty())).isEqualTo("2 2 2 2 2");
        // A logger that lost both writes zeros: that is no witness.
        assertThat(codes(every(5, 0.40, 0.40, 0, 0.40, 0.40), every(5, 1.2, 1.2, 0, 1.2, 1.2)))
                .isEqualTo("2 2 2 2 2");
        // One of its own neighbours may have dropped out.
        assertThat(codes(depth, every(5, 0.5, 0.5, 0.5, 0, 0.5))).isEqualTo("2 2 4 2 2");
    }

    @Test
    void theLimitsMustBeLimits() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LoneReadingCheck.of(-0.1, Duration.ofMinutes(1)))
                .withMessageContaining("above");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LoneReadingCheck.of(Double.POSITIVE_INFINITY, Duration.ofMinutes(1)))
                .withMessageContaining("above");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LoneReadingCheck.of(0.1, Duration.ZERO))
                .withMessageContaining("maximumGap");
        assertThat(CHECK.name()).isEqualTo("lone reading");
        assertThat(CHECK).hasToString("LoneReadingCheck[above 0.1, neighbours within 15 min]");
    }
}
