package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class RainUnitsTest {
    private static RegularSeries series(double... values) {
        return RegularSeries.of(Instant.EPOCH, Duration.ofMinutes(2), values);
    }

    @Test
    void convertsBothWaysAndKeepsGaps() {
        RegularSeries depth = series(0.5, 0, Double.NaN, 2);
        RegularSeries intensity = RainUnits.intensity(depth);
        assertThat(intensity).isEqualTo(series(15, 0, Double.NaN, 60));
        assertThat(RainUnits.depth(intensity)).isEqualTo(depth);
    }

    @Test
    void refusesNegativeRain() {
        assertThatThrownBy(() -> RainUnits.intensity(series(0, -0.2)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depth must be 0 or greater (mm), or NaN for missing, was -0.2 at index 1,"
                        + " 1970-01-01T00:02:00Z");
        assertThatThrownBy(() -> RainUnits.depth(series(-3)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("intensity must be 0 or greater (mm/h)");
    }

    @Test
    void dividesStepsThatDoNotFit() {
        RegularSeries rain = series(0.6, 0, Double.NaN, 1.2, 0.3);
        assertThat(RainUnits.inSteps(rain, Duration.ofMinutes(3)).depth().toValues())
                .containsExactly(new double[] {0.6, Double.NaN, 1.35, 0.15}, within(1e-15));
        assertThat(RainUnits.inSteps(rain, Duration.ofMinutes(1)).depth().toValues())
                .containsExactly(
                        new double[] {0.3, 0.3, 0, 0, Double.NaN, Double.NaN, 0.6, 0.6, 0.15, 0.15}, within(1e-15));
        assertThat(RainUnits.inSteps(series(), Duration.ofMinutes(1)).depth().size())
                .isZero();
        assertThatThrownBy(() -> RainUnits.inSteps(rain, Duration.ZERO))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("step must be longer than 0, was 0 s");
        assertThatThrownBy(() -> RainUnits.inSteps(rain, Duration.ofNanos(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "step must be at least PT0.000006S for a record of 10 min, at most 100000000 steps, was PT0.000000001S");
    }

    /** Minutes 2 to 4 are missing, so are the steps of three minutes to 3 and to 6, and with them the 8 and the 2 mm beside the gap. */
    @Test
    void countsTheRainBesideAGap() {
        StepRecord other = RainUnits.inSteps(series(8, Double.NaN, 2, 1, 0.5), Duration.ofMinutes(3));
        assertThat(other.depth().toValues())
                .containsExactly(new double[] {Double.NaN, Double.NaN, 1.25, 0.25}, within(1e-15));
        assertThat(other.missing()).isEqualTo(2);
        assertThat(other.aside()).isEqualTo(2);
        assertThat(other.asideMm()).isEqualTo(10);
    }

    @Test
    void calibratesStepsByTheirMeanIntensity() {
        TippingBucket gauge = TippingBucket.ofTip(0.2).withCalibration(LostTime.ofSeconds(0.5));
        // 12 tips in 120 s are 10 s apart: 0.5 s of each is lost.
        assertThat(gauge.depthOfCounts(series(12, 0, Double.NaN)).toValues())
                .containsExactly(new double[] {2.4 / 0.95, 0, Double.NaN}, within(1e-14));
        assertThat(gauge.calibrated(series(2.4)).value(0)).isCloseTo(2.4 / 0.95, within(1e-14));
        assertThat(TippingBucket.ofTip(0.2).calibrated(series(2.4, 0.1))).isEqualTo(series(2.4, 0.1));
    }

    @Test
    void refusesCountsThatAreNone() {
        TippingBucket gauge = TippingBucket.ofTip(0.2);
        assertThatThrownBy(() -> gauge.depthOfCounts(series(1, 0.4)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("tipsPerStep must be whole numbers, or NaN for missing, was 0.4 at index 1,"
                        + " 1970-01-01T00:02:00Z");
        assertThatThrownBy(() -> gauge.depthOfCounts(series(-1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("tipsPerStep must be 0 or greater (tips), or NaN for missing, was -1");
        assertThatThrownBy(() -> gauge.calibrated(series(-1))).isInstanceOf(IllegalArgumentException.class);
    }
}
