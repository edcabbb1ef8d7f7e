package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Days of one value each, from 2 January 2025 on, hour 482 160. */
class StabilityTestTest {
    private static final long FIRST = 20_090 * 24L;

    private static Optional<StabilityTest.Failure> of(double limit, double... days) {
        long[] hours = new long[24 * days.length];
        double[] residuals = new double[hours.length];
        Arrays.setAll(hours, i -> FIRST + i);
        Arrays.setAll(residuals, i -> days[i / 24]);
        return StabilityTest.of("depth", hours, residuals, 8, limit);
    }

    @Test
    void aStep() {
        StabilityTest.Failure up = of(0.1, 0, 0.01, 0, 0.5, 0.5, 0.51).orElseThrow();
        assertThat(up.words()).isEqualTo("depth changed by +65 % at about 2025-01-05");
        assertThat(up.step()).hasValue(FIRST + 72);
        StabilityTest.Failure down = of(0.1, 0, 0, 0.01, 0, -0.5, -0.5).orElseThrow();
        assertThat(down.words()).isEqualTo("depth changed by -39 % at about 2025-01-06");
        assertThat(down.step()).hasValue(FIRST + 96);
    }

    /** Two days on a side are enough, one is a day that was different. */
    @Test
    void oneDayIsNoStep() {
        assertThat(of(0.1, 0, 0, 0, 0, 0, 0.5)).isEmpty();
        assertThat(of(0.1, 0.5, 0, 0, 0, 0, 0)).isEmpty();
        assertThat(of(0.1, 0, 0, 0, 0, 0.5, 0.5).orElseThrow().step()).hasValue(FIRST + 96);
        assertThat(of(0.1, 0.5, 0.5, 0, 0, 0, 0).orElseThrow().step()).hasValue(FIRST + 48);
    }

    @Test
    void whatDoesNotMatterIsLetBe() {
        assertThat(of(0.51, 0, 0, 0, 0.5, 0.5, 0.5)).as("below the limit").isEmpty();
        assertThat(of(0.5, 0, 0, 0, 0.5, 0.5, 0.5)).as("at the limit").isPresent();
        assertThat(of(0.1, 0, 0, 0.5, 0.5)).as("too few days").isEmpty();
        assertThat(of(0.1, 0, 0, 0.5, 0.5, 0.5)).as("just enough").isPresent();
        // 0.05 over 0.015 √(1/3 + 1/3) is a statistic of 4.1, and 0.065 one of 5.3.
        assertThat(of(0.01, 0, 0, 0, 0.05, 0.05, 0.05)).isEmpty();
        assertThat(of(0.01, 0, 0, 0, 0.065, 0.065, 0.065)).isPresent();
    }

    /** Days that rise by as much each: the largest statistic of a step is 4.4, all pairs of days rise. */
    @Test
    void aDrift() {
        StabilityTest.Failure drift =
                of(0.6, 0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7).orElseThrow();
        assertThat(drift.words()).isEqualTo("depth drifted by +101 % over the stretch");
        assertThat(drift.step()).isEmpty();
        assertThat(of(0.6, 0, -0.1, -0.2, -0.3, -0.4, -0.5, -0.6, -0.7)
                        .orElseThrow()
                        .words())
                .isEqualTo("depth drifted by -50 % over the stretch");
        assertThat(of(0.8, 0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7))
                .as("below the limit")
                .isEmpty();
        // Of 28 pairs 24 rise: p is 0.014 for 20.
        assertThat(of(0.3, 0.1, 0, 0.2, 0.5, 0.3, 0.4, 0.7, 0.6)).isEmpty();
    }
}
