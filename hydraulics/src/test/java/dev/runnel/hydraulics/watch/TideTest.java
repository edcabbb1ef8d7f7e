package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.LongToDoubleFunction;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** When residuals follow the moon. */
class TideTest {
    private static final long FIRST = 492_000;
    private static final int WEEKS = 14 * 24;

    private static boolean isTidal(int count, LongToDoubleFunction residual) {
        long[] hours = LongStream.range(FIRST, FIRST + count).toArray();
        return Tide.isTidal(
                hours,
                LongStream.of(hours)
                        .mapToDouble(hour -> residual.applyAsDouble(hour))
                        .toArray());
    }

    private static double wave(double amplitude, double period, long hour) {
        return amplitude * Math.cos(2 * Math.PI * hour / period + 1);
    }

    @Test
    void amplitudeAndShareDecide() {
        assertThat(isTidal(WEEKS, hour -> wave(0.055, 12.4206012, hour))).isTrue();
        assertThat(isTidal(WEEKS, hour -> wave(0.045, 12.4206012, hour))).isFalse();
        // 0.01/(0.01 + 0.04) is a share of 0.2, 0.01/(0.01 + 0.09) one of 0.1.
        assertThat(isTidal(WEEKS, hour -> wave(0.1, 12.4206012, hour) + wave(0.2, 168, hour)))
                .isTrue();
        assertThat(isTidal(WEEKS, hour -> wave(0.1, 12.4206012, hour) + wave(0.3, 168, hour)))
                .isFalse();
    }

    @Test
    void whereTheResidualsLieDoesNotCount() {
        for (double mean : new double[] {-3, -0.5, 0.5, 3}) {
            assertThat(isTidal(WEEKS, hour -> mean + wave(0.1, 12.4206012, hour)))
                    .isTrue();
            assertThat(isTidal(WEEKS, hour -> mean)).isFalse();
        }
    }

    @Test
    void courseOfTheDayIsNone() {
        assertThat(isTidal(WEEKS, hour -> wave(0.3, 24, hour))).isFalse();
        assertThat(isTidal(WEEKS, hour -> wave(0.3, 12, hour))).isFalse();
    }

    @Test
    void threeDaysMustBeKnown() {
        for (int known : new int[] {71, 72}) {
            assertThat(isTidal(
                            WEEKS,
                            hour -> hour < FIRST + 100 && hour >= FIRST + 100 - known
                                    ? wave(0.1, 12.4206012, hour)
                                    : Double.NaN))
                    .isEqualTo(known == 72);
        }
    }

    /** Whatever the phase, over three days that hold no whole number of tides, and with hours missing. */
    @Test
    void thePhaseOfATideDoesNotCount() {
        for (int step = 0; step < 24; step++) {
            double phase = step * Math.PI / 12;
            for (double amplitude : new double[] {0.048, 0.052}) {
                for (int every : new int[] {100_000, 3}) {
                    assertThat(isTidal(
                                    every == 3 ? 130 : 75,
                                    hour -> hour % every == 0
                                            ? Double.NaN
                                            : amplitude * Math.cos(2 * Math.PI * hour / 12.4206012 + phase)))
                            .as("%s at %s", amplitude, phase)
                            .isEqualTo(amplitude > 0.05);
                }
            }
        }
    }
}
