package dev.runnel.rainfall.response;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class ReturnToDryWeatherTest {
    private static final Duration STEP = Duration.ofMinutes(10);
    private static final Duration HALF_HOUR = Duration.ofMinutes(30);

    private static RegularSeries series(double... values) {
        return RegularSeries.of(Instant.EPOCH, STEP, values);
    }

    private static ReturnToDryWeather of(double... flow) {
        RegularSeries dry = series(flow).map(value -> 10);
        return ReturnToDryWeather.of(Instant.EPOCH.plusSeconds(300), series(flow), dry, 0.1, HALF_HOUR);
    }

    @Test
    void backIsWhereItStays() {
        ReturnToDryWeather found = of(10, 30, 11, 12, 11, 10.5, 9, 10, 10);
        assertThat(found.back()).contains(Instant.EPOCH.plusSeconds(2400));
        assertThat(found).hasToString("ReturnToDryWeather[after 35 min]");
    }

    @Test
    void neverBackWithoutHavingBeenSeen() {
        assertThat(of(10, 30, 20, 11, 11).back()).isEmpty();
        RegularSeries flow = series(10, 30, 10, 10, Double.NaN, 10, 10, 10);
        ReturnToDryWeather gap =
                ReturnToDryWeather.of(Instant.EPOCH, flow, series(10, 10, 10, 10, 10, 10, 10, 10), 0.1, HALF_HOUR);
        assertThat(gap.back()).contains(Instant.EPOCH.plusSeconds(3000));
        assertThat(gap.knownUntil()).isEqualTo(Instant.EPOCH.plusSeconds(2400));
        assertThat(of(10, 30, 20).toString()).isEqualTo("ReturnToDryWeather[not back by 1970-01-01T00:30:00Z]");
    }

    @Test
    void refusesBadInput() {
        RegularSeries flow = series(1, 2);
        assertThatThrownBy(() -> ReturnToDryWeather.of(Instant.EPOCH.plusSeconds(9999), flow, flow, 0.1, STEP))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("rainEnd must lie in ");
        assertThatThrownBy(() -> ReturnToDryWeather.of(Instant.EPOCH, flow, flow, 1.5, STEP))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("allowance must be in [0, 1], was 1.5");
        assertThatThrownBy(() -> ReturnToDryWeather.of(Instant.EPOCH, flow, series(1, 2, 3), 0.1, STEP))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("dryWeatherFlow must have the steps");
    }
}
