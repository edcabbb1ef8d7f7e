package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.gauge.StorageComparison.Row;
import dev.runnel.rainfall.gauge.StorageComparison.Verdict;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class StorageGaugeTest {
    private static final Instant START = Instant.parse("2026-03-01T12:00:00Z");
    private static final double MISSING = Double.NaN;

    private static RegularSeries rain(double... hourlyMm) {
        return RegularSeries.of(START, Duration.ofHours(1), hourlyMm);
    }

    private static Instant hour(double hours) {
        return START.plusSeconds(Math.round(3600 * hours));
    }

    @Test
    void comparesReadingByReading() {
        StorageGauge gauge = StorageGauge.installed(START)
                .withReading(hour(2), 10)
                .withReading(hour(4), 10)
                .withReading(hour(6), 10);
        assertThat(gauge).hasToString("StorageGauge[3 readings, 30 mm, emptied 2026-03-01T18:00:00Z]");
        StorageComparison comparison = gauge.compareByAllowanceAndResolution(rain(5, 4, 5, 3.5, 6, 6), 0.1, 0);
        assertThat(comparison.rows())
                .extracting(Row::verdict)
                .containsExactly(Verdict.WITHIN, Verdict.LOW, Verdict.HIGH);
        assertThat(comparison.rows().get(1).ratio()).hasValue(0.85);
        assertThat(comparison.ratio().getAsDouble()).isCloseTo(29.5 / 30, within(1e-15));
        assertThat(comparison.doubleMass().periods()).isEqualTo(3);
        assertThat(comparison.rows().get(1))
                .hasToString("Row[2026-03-01T14:00:00Z/2026-03-01T16:00:00Z, 8.5 recorded of 10 mm: low]");
        assertThat(comparison)
                .hasToString("StorageComparison[3 readings, ratio 0.9833, 1 within 10 %, 1 high, 1 low, 0 unknown]");
    }

    @Test
    void aStepInWhichItWasEmptiedIsDividedByTime() {
        StorageComparison comparison = StorageGauge.installed(hour(0.25))
                .withReading(hour(1.5), 1)
                .withReading(hour(2), 1)
                .compareByAllowanceAndResolution(rain(4, 8), 0.1, 0);
        assertThat(comparison.rows().get(0).recordedMm()).isCloseTo(3 + 4, within(1e-15));
        assertThat(comparison.rows().get(1).recordedMm()).isCloseTo(4, within(1e-15));
    }

    @Test
    void aSmallDepthMayDifferByATip() {
        StorageGauge gauge = StorageGauge.installed(START).withReading(hour(2), 1);
        assertThat(gauge.compareByAllowanceAndResolution(rain(0.6, 0.6), 0.1, 0.2)
                        .count(Verdict.WITHIN))
                .isEqualTo(1);
        assertThat(gauge.compareByAllowanceAndResolution(rain(0.6, 0.6), 0.1, 0.1)
                        .count(Verdict.HIGH))
                .isEqualTo(1);
    }

    @Test
    void whatIsMissingLeavesItOpenUnlessTooMuchWasRecorded() {
        StorageGauge gauge = StorageGauge.installed(hour(-1))
                .withReading(hour(1), 3)
                .withReading(hour(3), 3)
                .withReading(hour(5), 3)
                .withReading(hour(8), 0);
        StorageComparison comparison = gauge.compareByAllowanceAndResolution(rain(3, 9, MISSING, 1, 2), 0.1, 0.2);
        assertThat(comparison.rows())
                .extracting(Row::verdict)
                .containsExactly(Verdict.UNKNOWN, Verdict.HIGH, Verdict.WITHIN, Verdict.UNKNOWN);
        assertThat(comparison.rows())
                .extracting(Row::missing)
                .containsExactly(Duration.ofHours(1), Duration.ofHours(1), Duration.ZERO, Duration.ofHours(3));
        assertThat(comparison.rows().get(0).ratio()).isEmpty();
        assertThat(comparison.rows().get(1))
                .hasToString("Row[2026-03-01T13:00:00Z/2026-03-01T15:00:00Z, 9 recorded of 3 mm, 1 h missing: high]");
        assertThat(comparison.ratio()).hasValue(1);
    }

    @Test
    void withoutRainThereIsNoRatio() {
        StorageComparison dry = StorageGauge.installed(START)
                .withReading(hour(2), 0)
                .compareByAllowanceAndResolution(rain(0, 0), 0.1, 0);
        assertThat(dry.ratio()).isEmpty();
        assertThat(dry.rows().get(0).ratio()).isEmpty();
        assertThat(dry).hasToString("StorageComparison[1 readings, no ratio, 1 within 10 %, 0 high, 0 low, 0 unknown]");
        assertThatThrownBy(dry::doubleMass)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sum of referenceMm must be greater than 0 and finite (mm), was 0");
    }

    @Test
    void refusesBadInput() {
        StorageGauge gauge = StorageGauge.installed(START);
        assertThatThrownBy(() -> gauge.withReading(START, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time must be after 2026-03-01T12:00:00Z, was 2026-03-01T12:00:00Z");
        assertThatThrownBy(() -> gauge.withReading(hour(1), -1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthMm must be 0 or greater and finite (mm), was -1");
        assertThatThrownBy(() -> gauge.compareByAllowanceAndResolution(rain(1), 0.1, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("readings must be at least 1, was 0");
        StorageGauge read = gauge.withReading(hour(1), 1);
        assertThatThrownBy(() -> read.compareByAllowanceAndResolution(rain(-1), 0.1, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("rain must be 0 or greater (mm), or NaN for missing, was -1");
        assertThatThrownBy(() -> read.compareByAllowanceAndResolution(rain(1), Double.NaN, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("allowance must be in [0, 1], was NaN");
        assertThatThrownBy(() -> read.compareByAllowanceAndResolution(rain(1), 10, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("allowance must be in [0, 1], was 10");
        assertThatThrownBy(() -> read.compareByAllowanceAndResolution(rain(1), 0.1, -0.2))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
