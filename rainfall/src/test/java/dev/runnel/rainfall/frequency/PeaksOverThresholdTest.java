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

    /** By hand: excesses 1, 2, 3, 6 have mean 3 and variance 14/3, so k = (27/14 - 1)/2, alpha = 3 (27/14 + 1)/2. */
    @Test
    void momentsOfTheExcesses() {
        GeneralizedPareto peak = PeaksOverThreshold.of(10, 2, 11, 12, 13, 16).fit(FitMethod.MOMENTS);
        assertThat(peak.location).isEqualTo(10);
        assertThat(peak.shape).isCloseTo(13.0 / 28, within(1e-14));
        assertThat(peak.scale).isCloseTo(123.0 / 28, within(1e-14));
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
                .isThrownBy(() -> PeaksOverThreshold.of(10, 1, 11, 12, 13).fit(FitMethod.MOMENTS))
                .withMessage("sample must have at least 4 values, had 3");
        for (FitMethod method : FitMethod.values()) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> PeaksOverThreshold.of(10, 1, 25.4, 25.4, 25.4, 25.4, 25.4)
                            .fit(method))
                    .withMessage("sample must not be all equal, was 5 times 25.4");
        }
    }
}
