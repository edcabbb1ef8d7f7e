package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class PeaksOverThresholdTest {
    private static final Instant START = Instant.parse("2020-01-01T00:00:00Z");

    @Test
    void joinsRunsThatAreNotIndependent() {
        RegularSeries values =
                RegularSeries.of(START, Duration.ofHours(1), 0, 5, 0, 7, 0, 0, 6, 0, 5, 4, Double.NaN, 9);
        assertThat(PeaksOverThreshold.from(values, 4, Duration.ofHours(2)).peaks())
                .containsExactly(7, 6, 9)
                .isNotEmpty();
        assertThat(PeaksOverThreshold.from(values, 4, Duration.ZERO).peaks()).containsExactly(5, 7, 6, 5, 9);
        assertThat(PeaksOverThreshold.from(values, 10, Duration.ZERO).peaks()).isEmpty();
    }

    @Test
    void theReturnLevelCountsEveryExceedance() {
        PeaksOverThreshold peaks = PeaksOverThreshold.of(10, 20, 11, 12, 13, 15, 20, 11.5, 12.5, 14, 30, 10.5);
        assertThat(peaks.ratePerYear()).isEqualTo(0.5);
        GeneralizedPareto peak = peaks.fit(FitMethod.L_MOMENTS);
        assertThat(peak.lMoments().lambda1())
                .isCloseTo(Arrays.stream(peaks.peaks()).average().orElseThrow(), within(1e-12));
        double level = peaks.quantile(peak, 40);
        assertThat(peak.exceedance(level)).isCloseTo(1 / 20.0, within(1e-14));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> peaks.quantile(peak, 2))
                .withMessage("returnPeriodYears must be above 2 years, the mean time between peaks, was 2.0");
    }

    @Test
    void meanExcessOverALevel() {
        PeaksOverThreshold peaks = PeaksOverThreshold.of(10, 5, 11, 13, 18);
        assertThat(peaks.meanExcess(12)).isEqualTo(3.5);
        assertThat(peaks.meanExcess(20)).isNaN();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> peaks.meanExcess(9))
                .withMessage("level must be at least the threshold 10, was 9.0");
    }

    @Test
    void refusesBadInput() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PeaksOverThreshold.of(10, 0, 11))
                .withMessage("years must be greater than 0 and finite (years), was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PeaksOverThreshold.of(10, 1, 10))
                .withMessage("peaks must be finite and above threshold 10, was 10.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PeaksOverThreshold.of(10, 1, 11, 12, 13, 14).fit(FitMethod.MOMENTS))
                .withMessageStartingWith("method must be L_MOMENTS or MAXIMUM_LIKELIHOOD");
    }
}
