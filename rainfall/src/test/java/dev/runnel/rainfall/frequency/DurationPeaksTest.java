package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class DurationPeaksTest {
    private static final Instant START = Instant.parse("2021-01-01T00:00:00Z");
    private static final Duration HOUR = Duration.ofHours(1);
    private static final Duration TWO = Duration.ofHours(2);
    private static final double HOURS_A_YEAR = 24 * 365.25;

    /** By hand: 6 at hour 5 counts first; 5 at hour 2 is two dry hours away; 4 and 3 are not; then 2 at hour 8. */
    @Test
    void theGreatestCountsFirstAndKeepsOthersAway() {
        RegularSeries rain = rain(0, 4, 5, 3, 0, 6, 0, 0, 2, 0, 0, 0);
        DurationPeaks peaks = DurationPeaks.from(rain, List.of(HOUR), 2 * HOURS_A_YEAR / 12 + 1, TWO);
        assertThat(starts(peaks.windows(HOUR))).containsExactly(2, 5);
        assertThat(peaks.peaks(HOUR).threshold()).isEqualTo(2);
        assertThat(peaks.peaks(HOUR).peaks()).containsExactly(5, 6);
        assertThat(peaks.peaks(HOUR).ratePerYear()).isCloseTo(HOURS_A_YEAR / 6, within(1e-9));
        assertThat(peaks).hasToString("DurationPeaks[2 above 2 mm in 1 h; 0.001369 years]");
    }

    /** By hand, over two hours: 4 + 5 at hour 1; 0 + 6 at hour 4 is one hour after its end, so 6 + 0 at hour 5. */
    @Test
    void eachDurationHasPeaksOfItsOwn() {
        RegularSeries rain = rain(0, 4, 5, 3, 0, 6, 0, 0, 2, 0, 0, 0);
        TreeMap<Duration, Double> thresholds = new TreeMap<>();
        thresholds.put(HOUR, 4.5);
        thresholds.put(TWO, 2.5);
        DurationPeaks peaks = DurationPeaks.from(rain, thresholds, TWO);
        assertThat(peaks.durations()).containsExactly(HOUR, TWO);
        assertThat(peaks.peaks(HOUR).peaks()).containsExactly(5, 6);
        assertThat(starts(peaks.windows(TWO))).containsExactly(1, 5);
        assertThat(peaks.peaks(TWO).peaks()).containsExactly(9, 6);
        thresholds.put(TWO, 20.0);
        assertThat(DurationPeaks.from(rain, thresholds, TWO).windows(TWO)).isEmpty();
    }

    @Test
    void equalDepthsAreNotAboveTheirThreshold() {
        double third = 0.1 + 0.2;
        RegularSeries rain = rain(third, 0, 0.3, 0, third, 0, 0.5);
        TreeMap<Duration, Double> thresholds = new TreeMap<>();
        thresholds.put(HOUR, 0.3);
        assertThat(DurationPeaks.from(rain, thresholds, Duration.ZERO)
                        .peaks(HOUR)
                        .peaks())
                .containsExactly(0.5);
    }

    @Test
    void missingStepsAreNoRainAndNoTime() {
        RegularSeries rain = rain(1, Double.NaN, 3, Double.NaN, Double.NaN, 2);
        DurationPeaks peaks = DurationPeaks.from(rain, List.of(HOUR), 2 * HOURS_A_YEAR / 3 + 1, Duration.ZERO);
        assertThat(peaks.yearsMeasured()).isCloseTo(3 / HOURS_A_YEAR, within(1e-15));
        assertThat(peaks.peaks(HOUR).peaks()).containsExactly(3, 2);
    }

    @Test
    void theClockCorrectionScalesPeaksAndThreshold() {
        DurationPeaks peaks = DurationPeaks.from(
                        rain(1, 5, 0, 7, 0, 2), List.of(TWO), HOURS_A_YEAR / 6 + 1, Duration.ZERO)
                .withClockCorrection();
        double factor = 2 / 1.875;
        assertThat(peaks.peaks(TWO).peaks()).containsExactly(7 * factor);
        assertThat(peaks.peaks(TWO).threshold()).isEqualTo(6 * factor);
        assertThat(peaks.windows(TWO).get(0).depthMm()).isEqualTo(7);
    }

    /** By hand: of 9, 7, 5, 5, 5 the four greatest are asked for; the fifth is 5, above which only two lie, and two more equal it. */
    @Test
    void equalDepthsLeftOutAreCounted() {
        RegularSeries rain = rain(5, 0, 9, 0, 5, 0, 7, 0, 5, 0, 3, 0);
        DurationPeaks peaks = DurationPeaks.from(rain, List.of(HOUR), 4 * HOURS_A_YEAR / 12 + 1, Duration.ZERO);
        assertThat(peaks.peaks(HOUR).peaks()).containsExactly(9, 7);
        assertThat(peaks.equalToThreshold(HOUR)).isEqualTo(2);
        assertThat(peaks.withClockCorrection().equalToThreshold(HOUR)).isEqualTo(2);
        assertThat(peaks).hasToString("DurationPeaks[2 above 5 mm in 1 h (2 equal to it left out); 0.001369 years]");
        TreeMap<Duration, Double> thresholds = new TreeMap<>();
        thresholds.put(HOUR, 4.0);
        assertThat(DurationPeaks.from(rain, thresholds, Duration.ZERO).equalToThreshold(HOUR))
                .isZero();
        thresholds.put(HOUR, 5.0);
        assertThat(DurationPeaks.from(rain, thresholds, Duration.ZERO).equalToThreshold(HOUR))
                .isEqualTo(3);
        thresholds.put(HOUR, 0.0);
        assertThat(DurationPeaks.from(rain, thresholds, Duration.ZERO).equalToThreshold(HOUR))
                .isZero();
    }

    @Test
    void nothingAboveTheThresholdIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DurationPeaks.from(
                        rain(11, 0, 11, 0, 11, 0, 11), List.of(HOUR), 2 * HOURS_A_YEAR / 7 + 1, Duration.ZERO))
                .withMessage("rain must have windows of 1 h above the threshold of 11 mm that 2 peaks ask for, had 4"
                        + " equal to it and none above");
    }

    @Test
    void theClockIsCorrectedOnce() {
        DurationPeaks once = DurationPeaks.from(
                        rain(1, 5, 0, 7, 0, 2), List.of(HOUR), HOURS_A_YEAR / 6 + 1, Duration.ZERO)
                .withClockCorrection();
        assertThat(once.withClockCorrection().peaks(HOUR).peaks()).containsExactly(8);
        assertThat(once.toString()).endsWith(" years, corrected for the clock]");
    }

    @Test
    void refusesBadInput() {
        RegularSeries rain = rain(1, 0, 3, 0, 2);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DurationPeaks.from(rain, List.of(Duration.ofMinutes(90)), 1, TWO))
                .withMessage("number of peaks in 0.0005704 years must be at least 1, was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DurationPeaks.from(rain, List.of(Duration.ofMinutes(90)), 1e4, TWO))
                .withMessage("duration must be a whole number of steps of 1 h, was 1 h 30 min");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DurationPeaks.from(rain, List.of(HOUR), 1e4, TWO))
                .withMessage("rain must have more than 5 separate wet windows of 1 h, had 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DurationPeaks.from(rain, List.of(), 1, TWO))
                .withMessage("number of durations must be at least 1, was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DurationPeaks.from(rain(1, -1), List.of(HOUR), 1, TWO))
                .withMessageStartingWith("rain must be 0 or greater (mm), or NaN for missing, was -1 at index 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DurationPeaks.from(rain(Double.NaN), List.of(HOUR), 1, TWO))
                .withMessageStartingWith("years measured must be greater than 0");
    }

    private static List<Integer> starts(List<PeakDepth> windows) {
        return windows.stream()
                .map(window -> (int) Duration.between(START, window.start()).toHours())
                .toList();
    }

    private static RegularSeries rain(double... depths) {
        return RegularSeries.of(START, HOUR, depths);
    }
}
