package dev.runnel.rainfall.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class RainTest {
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");

    private static RegularSeries series(double... values) {
        return RegularSeries.of(START, Duration.ofMinutes(5), values);
    }

    private static Interval minutes(int from, int to) {
        return Interval.of(START.plusSeconds(60L * from), START.plusSeconds(60L * to));
    }

    @Test
    void noRainFallsUpwards() {
        assertThatCode(() -> Rain.requireNonNegative("rain", series(0, -0.0, Double.NaN, 0.2), "mm"))
                .doesNotThrowAnyException();
        assertThatThrownBy(() -> Rain.requireNonNegative("rain", series(0, 0.2, -0.4), "mm"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("rain must be 0 or greater (mm), or NaN for missing, was -0.4 at index 2,"
                        + " 2026-03-01T00:10:00Z");
        assertThatThrownBy(() -> Rain.requireNonNegative("rain", series(-1e-9), "mm"))
                .hasMessageContaining(" at index 0, 2026-03-01T00:00:00Z");
    }

    @Test
    void hoursWithFractions() {
        assertThat(Rain.hours(Duration.ofMinutes(90))).isEqualTo(1.5);
        assertThat(Rain.hours(Duration.ofMillis(1500))).isEqualTo(1.5 / 3600);
        assertThat(Rain.hours(Duration.ofMillis(-1500))).isEqualTo(-1.5 / 3600);
        assertThat(Rain.hours(Duration.ZERO)).isZero();
    }

    /** Beyond the ends cut off, empty ones dropped, overlapping and touching ones as one. */
    @Test
    void outagesInARecord() {
        Interval record = minutes(0, 60);
        assertThat(Outages.within(
                        record,
                        List.of(minutes(50, 70), minutes(10, 20), minutes(15, 25), minutes(25, 30), minutes(40, 40))))
                .containsExactly(minutes(10, 30), minutes(50, 60));
        assertThat(Outages.within(record, List.of(minutes(-10, 0), minutes(60, 70))))
                .isEmpty();
        assertThat(Outages.within(record, List.of())).isEmpty();
    }

    @Test
    void stretchesBetweenOutages() {
        Interval record = minutes(0, 60);
        assertThat(Outages.between(record, List.of(minutes(10, 30), minutes(50, 55))))
                .containsExactly(minutes(0, 10), minutes(30, 50), minutes(55, 60));
        assertThat(Outages.between(record, List.of(minutes(0, 5), minutes(40, 60))))
                .containsExactly(minutes(5, 40));
        assertThat(Outages.between(record, List.of(record))).isEmpty();
        assertThat(Outages.between(record, List.of())).containsExactly(record);
    }

    @Test
    void tablesOfTheJar() {
        assertThat(ResourceText.read(RainTest.class, "columns.csv")).startsWith("# invented\n\nspan");
        assertThat(ResourceText.column(RainTest.class, "columns.csv", "share")).containsExactly(0.5, 0.75, -3);
        assertThat(ResourceText.column(RainTest.class, "columns.csv", "span")).containsExactly(1, 2, 5);
        assertThatThrownBy(() -> ResourceText.column(RainTest.class, "columns.csv", "depth"))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("this jar lacks column depth of columns.csv");
        assertThatThrownBy(() -> ResourceText.read(RainTest.class, "none.csv"))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("this jar lacks none.csv");
    }
}
