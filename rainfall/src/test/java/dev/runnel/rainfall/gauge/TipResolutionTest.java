package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TipResolutionTest {
    private static final TipResolution GAUGE = TipResolution.of(TippingBucket.ofTip(0.2));

    @ParameterizedTest
    @CsvSource({"0.1, 6", "0.2, 12", "0.254, 15.24", "0.5, 30"})
    void oneTipAMinute(double tip, double step) {
        assertThat(TipResolution.of(TippingBucket.ofTip(tip)).stepMmPerHour(Duration.ofMinutes(1)))
                .isCloseTo(step, within(1e-12));
    }

    /** 20 tips for 5 %: 96, 32 and 4.8 min at 2.5, 7.5 and 50 mm/h. */
    @ParameterizedTest
    @CsvSource({"2.5, 96", "7.5, 32", "50, 4.8"})
    void windowForFivePercent(double intensity, double minutes) {
        assertThat(GAUGE.windowFor(intensity, 0.05)).isEqualTo(Duration.ofMillis(Math.round(minutes * 60_000)));
    }

    @Test
    void standardUncertaintyAgreesWithCounting() {
        // Steady rain that starts at any filling of the bucket: depth and count over windows of random length.
        Random random = new Random(7);
        double squares = 0;
        int windows = 200_000;
        for (int i = 0; i < windows; i++) {
            double start = 1000 * random.nextDouble();
            double depth = 50 * random.nextDouble() + 1;
            double counted = Math.floor(start + depth) - Math.floor(start);
            squares += (counted - depth) * (counted - depth);
        }
        double expected = GAUGE.standardUncertaintyMmPerHour(Duration.ofHours(1)) / 0.2;
        assertThat(Math.sqrt(squares / windows)).isCloseTo(expected, within(0.003));
    }

    @Test
    void boundsOfADepth() {
        assertThat(GAUGE.leastMm(0)).isZero();
        assertThat(GAUGE.mostMm(0)).isEqualTo(0.2);
        assertThat(GAUGE.leastMm(6)).isCloseTo(1.0, within(1e-15));
        assertThat(GAUGE.mostMm(6)).isCloseTo(1.4, within(1e-15));
        assertThat(GAUGE.standardUncertaintyMm()).isCloseTo(0.0816496580927726, within(1e-15));
        assertThatThrownBy(() -> GAUGE.leastMm(-1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("tips must be at least 0, was -1");
        assertThatThrownBy(() -> GAUGE.mostMm(-1)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Steady rain from a bucket of unknown filling: n tips always lie between the bounds, with the deviation of the formula. */
    @Test
    void boundsOfADepthAgreeWithCounting() {
        Random random = new Random(11);
        double squares = 0;
        for (int i = 0; i < 100_000; i++) {
            double held = 0.2 * random.nextDouble();
            double fell = 3 * random.nextDouble();
            int tips = (int) ((held + fell) / 0.2);
            assertThat(fell).isBetween(GAUGE.leastMm(tips), GAUGE.mostMm(tips));
            squares += (fell - 0.2 * tips) * (fell - 0.2 * tips) / 100_000;
        }
        assertThat(Math.sqrt(squares)).isCloseTo(GAUGE.standardUncertaintyMm(), within(5e-4));
    }

    /** Two times cut to a second, simulated. */
    @Test
    void uncertaintyOfTheClockAgreesWithCutting() {
        Random random = new Random(12);
        double squares = 0;
        for (int i = 0; i < 100_000; i++) {
            double first = 100 * random.nextDouble();
            double gap = 60 + random.nextDouble();
            double error = Math.floor(first + gap) - Math.floor(first) - gap;
            squares += error * error / 100_000;
        }
        double expected = 0.2 * 3600 / 60.5 * Math.sqrt(squares) / 60.5;
        assertThat(GAUGE.standardUncertaintyMmPerHour(Duration.ofMillis(60_500), Duration.ofSeconds(1)))
                .isCloseTo(expected, within(0.01 * expected));
        assertThatThrownBy(() -> GAUGE.standardUncertaintyMmPerHour(Duration.ofSeconds(9), Duration.ofSeconds(-1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("clock must not be negative, was -1 s");
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> GAUGE.windowFor(10, 5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("share must be in [0, 1], was 5");
        assertThatThrownBy(() -> GAUGE.windowFor(0, 0.05))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("intensityMmPerHour must be greater than 0 and finite (mm/h), was 0");
        assertThat(GAUGE).hasToString("TipResolution[0.2 mm, 12 mm/h over a minute]");
    }
}
