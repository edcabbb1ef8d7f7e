package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class SlidingMaximumTest {
    private static final Instant START = Instant.parse("2026-03-01T12:00:00Z");

    private static RegularSeries rain(double... depths) {
        return RegularSeries.of(START, Duration.ofMinutes(2), depths);
    }

    private static PeakDepth peak(int minutes, RegularSeries rain) {
        return SlidingMaximum.of(Duration.ofMinutes(minutes)).peaks(rain).get(0);
    }

    @Test
    void findsTheDeepestWindow() {
        RegularSeries rain = rain(1, 0, 3, 2, 0, 4, 0);
        assertThat(peak(2, rain)).isEqualTo(new PeakDepth(Duration.ofMinutes(2), 4, START.plusSeconds(600)));
        assertThat(peak(4, rain)).isEqualTo(new PeakDepth(Duration.ofMinutes(4), 5, START.plusSeconds(240)));
        assertThat(peak(8, rain)).isEqualTo(new PeakDepth(Duration.ofMinutes(8), 9, START.plusSeconds(240)));
    }

    @Test
    void aWindowOfBrokenStepsTakesTheWetterNeighbour() {
        // 3 min over 2-min steps: one step and half of the one before or after.
        assertThat(peak(3, rain(2, 6, 1))).isEqualTo(new PeakDepth(Duration.ofMinutes(3), 7, START.plusSeconds(60)));
        assertThat(peak(3, rain(1, 6, 2))).isEqualTo(new PeakDepth(Duration.ofMinutes(3), 7, START.plusSeconds(120)));
        assertThat(peak(3, rain(6, 0, 0))).isEqualTo(new PeakDepth(Duration.ofMinutes(3), 6, START));
        assertThat(peak(3, rain(0, 0, 6)).depthMm()).isEqualTo(6);
    }

    @Test
    void theEarliestOfEqualWindowsIsNamed() {
        assertThat(peak(2, rain(0, 5, 0, 5)).start()).isEqualTo(START.plusSeconds(120));
    }

    @Test
    void aLongWindowHoldsAllTheRain() {
        assertThat(peak(600, rain(1, 0, 3))).isEqualTo(new PeakDepth(Duration.ofMinutes(600), 4, START, true));
        assertThat(peak(6, rain(1, 0, 3)).isAtLeast()).isFalse();
        assertThat(peak(8, rain(1, 0, 3))).hasToString("PeakDepth[at least 4 mm in 8 min from " + START + "]");
        assertThat(peak(6, rain(1, 0, 3)).depthMm()).isEqualTo(4);
        assertThat(peak(5, rain(1, 0, 3)).depthMm()).isEqualTo(3.5);
    }

    @Test
    void aDryRecordHasDepthZero() {
        assertThat(peak(2, rain(0, 0))).isEqualTo(new PeakDepth(Duration.ofMinutes(2), 0, START));
    }

    @Test
    void missingStepsCountAsNoRain() {
        assertThat(peak(4, rain(1, Double.NaN, 3, Double.NaN)).depthMm()).isEqualTo(3);
        assertThat(peak(600, rain(1, Double.NaN, 3)).depthMm()).isEqualTo(4);
        assertThat(peak(2, rain(1, 9, 3, Double.NaN)))
                .isEqualTo(new PeakDepth(Duration.ofMinutes(2), 9, START.plusSeconds(120), true));
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> peak(1, rain(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must not be shorter than the step of the record, 2 min, was 1 min");
        assertThatThrownBy(() -> peak(2, rain()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("rain must have at least one step, had none");
        assertThatThrownBy(() -> peak(2, rain(-1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("rain must be 0 or greater (mm)");
        assertThatThrownBy(() -> SlidingMaximum.of(Duration.ZERO))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must be longer than 0, was 0 s");
    }
}
