package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
}
