package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.internal.StateText;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** The moon in the dry hours of the last weeks: tides made of harmonics whose periods and amplitudes are known. */
class RunningTideTest {
    /** Periods of the constituents M2, S2 and K1, h (common knowledge of tidal practice). */
    private static final double M2 = 12.4206012;

    private static final double S2 = 12;
    private static final double K1 = 23.9344696;
    private static final long FIRST_HOUR = 492_000;

    private static double wave(double amplitude, double period, int hour) {
        return amplitude * Math.cos(2 * Math.PI * hour / period + 0.7);
    }

    private static RunningTide after(int days, IntToDoubleFunction residual) {
        RunningTide tide = new RunningTide();
        for (int hour = 0; hour < 24 * days; hour++) {
            tide.add(FIRST_HOUR + hour, residual.applyAsDouble(hour));
        }
        return tide;
    }

    @Test
    void moonIsATideFromTheLimitOfItsAmplitudeOn() {
        assertThat(after(30, hour -> wave(0.055, M2, hour)).isTidal()).isTrue();
        assertThat(after(30, hour -> wave(0.045, M2, hour)).isTidal()).isFalse();
    }

    @Test
    void sunIsNone() {
        assertThat(after(30, hour -> wave(0.2, S2, hour)).isTidal()).isFalse();
        assertThat(after(30, hour -> wave(0.2, 24, hour)).isTidal()).isFalse();
        assertThat(after(30, hour -> wave(0.2, S2, hour) + wave(0.08, M2, hour)).isTidal())
                .isTrue();
    }

    @Test
    void dayOfTheStarsDoesNotPassForTheMoon() {
        assertThat(after(30, hour -> wave(0.1, K1, hour)).isTidal()).isFalse();
    }

    @Test
    void moonThatExplainsLittleIsNone() {
        // A share of 0.08²/2 / (0.08²/2 + s²) of the variance: 30 % with s = 0.086, 8 % with s = 0.19.
        Random some = new Random(3);
        assertThat(after(40, hour -> wave(0.08, M2, hour) + 0.086 * some.nextGaussian())
                        .isTidal())
                .isTrue();
        Random much = new Random(3);
        assertThat(after(40, hour -> wave(0.08, M2, hour) + 0.19 * much.nextGaussian())
                        .isTidal())
                .isFalse();
    }

    @Test
    void fewHoursSayNothingAndWhatIsOverIsForgotten() {
        assertThat(after(5, hour -> wave(0.2, M2, hour)).isTidal()).isFalse();
        assertThat(after(20, hour -> wave(0.2, M2, hour)).isTidal()).isTrue();
        Random noise = new Random(4);
        assertThat(after(80, hour -> (hour < 480 ? wave(0.2, M2, hour) : 0) + 0.03 * noise.nextGaussian())
                        .isTidal())
                .isFalse();
    }

    @Test
    void stateIsReadBack() {
        RunningTide tide = after(20, hour -> wave(0.2, M2, hour));
        StateText text = StateText.of("tide", 1);
        tide.write(text);
        RunningTide read = new RunningTide();
        read.read(StateText.parse("tide", 1, text.toString()));
        assertThat(read.isTidal()).isTrue();
        StateText again = StateText.of("tide", 1);
        read.write(again);
        assertThat(again.toString()).isEqualTo(text.toString());
    }
}
