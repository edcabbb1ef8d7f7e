package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.distribution.Distribution;
import dev.runnel.rainfall.distribution.FitMethod;
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
        // Between 5 and 9 lie one quiet hour and one without a reading: not two quiet ones.
        assertThat(PeaksOverThreshold.from(values, 4, Duration.ofHours(2)).peaks())
                .containsExactly(7, 9);
        assertThat(PeaksOverThreshold.from(values, 4, Duration.ZERO).peaks()).containsExactly(5, 7, 6, 5, 9);
        assertThat(PeaksOverThreshold.from(values, 10, Duration.ZERO).peaks()).isEmpty();
    }

    /** 12, seven hours without a reading, 15: as long as the separation, so two peaks, and said; six of eight: one. */
    @Test
    void missingTimeIsNoQuietTimeUnlessItIsLong() {
        double nan = Double.NaN;
        RegularSeries longGap =
                RegularSeries.of(START, Duration.ofHours(1), 0, 12, nan, nan, nan, nan, nan, nan, nan, 15, 0);
        PeaksOverThreshold apart = PeaksOverThreshold.from(longGap, 4, Duration.ofHours(6));
        assertThat(apart.peaks()).containsExactly(12, 15);
        assertThat(apart.apartByGaps()).isEqualTo(1);
        assertThat(apart.toString()).endsWith(" years, 1 apart by a gap only]");
        PeaksOverThreshold joined = PeaksOverThreshold.from(longGap, 4, Duration.ofHours(8));
        assertThat(joined.peaks()).containsExactly(15);
        assertThat(joined.apartByGaps()).isZero();
        assertThat(joined.ratePerYear()).isCloseTo(24 * 365.25 / 4, within(1e-9));
        // Two quiet hours, two without a reading and one more quiet: three quiet hours of the four asked for.
        RegularSeries shortGap = RegularSeries.of(START, Duration.ofHours(1), 12, 0, 0, nan, nan, 0, 15, 0);
        assertThat(PeaksOverThreshold.from(shortGap, 4, Duration.ofHours(4)).peaks())
                .containsExactly(15);
        PeaksOverThreshold byQuiet = PeaksOverThreshold.from(shortGap, 4, Duration.ofHours(3));
        assertThat(byQuiet.peaks()).containsExactly(12, 15);
        assertThat(byQuiet.apartByGaps()).isZero();
    }

    @Test
    void theReturnPeriodIsInYearsAndNotInPeaks() {
        PeaksOverThreshold peaks = PeaksOverThreshold.ofThresholdAndYears(10, 2, 11, 12, 13, 15, 20, 11.5);
        PeaksFit peak = peaks.fit(FitMethod.L_MOMENTS);
        double fifty = peak.returnLevel(50);
        assertThat(peak.returnPeriod(fifty)).isCloseTo(50, within(1e-10));
        // Three peaks a year: the 50-year value is that of every 150th peak.
        assertThat(peak.distribution().returnPeriod(fifty)).isCloseTo(150, within(1e-10));
        assertThat(peak.returnPeriod(10)).isCloseTo(1 / 3.0, within(1e-15));
        // Of means 2.5 and L-scales near it the shape is positive, and the level above the bound never comes.
        PeaksFit bounded = PeaksOverThreshold.ofThresholdAndYears(10, 2, 11, 12, 13, 14, 15)
                .fit(FitMethod.L_MOMENTS);
        assertThat(bounded.returnPeriod(bounded.distribution().upperBound())).isInfinite();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> peak.returnPeriod(9.5))
                .withMessage("level must be at least the threshold 10 and finite, was 9.5");
    }

    @Test
    void theReturnLevelCountsEveryExceedance() {
        PeaksOverThreshold peaks =
                PeaksOverThreshold.ofThresholdAndYears(10, 20, 11, 12, 13, 15, 20, 11.5, 12.5, 14, 30, 10.5);
        assertThat(peaks.ratePerYear()).isEqualTo(0.5);
        PeaksFit peak = peaks.fit(FitMethod.L_MOMENTS);
        assertThat(peak.distribution().lMoments().lambda1())
                .isCloseTo(Arrays.stream(peaks.peaks()).average().orElseThrow(), within(1e-12));
        double level = peak.returnLevel(40);
        assertThat(peak.distribution().exceedance(level)).isCloseTo(1 / 20.0, within(1e-14));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> peak.returnLevel(2))
                .withMessage("years must be above 2 years, the mean time between peaks, and finite, was 2");
    }

    /** By hand: excesses 1, 2, 3, 6 have mean 3 and variance 14/3, so k = (27/14 - 1)/2, alpha = 3 (27/14 + 1)/2. */
    @Test
    void momentsOfTheExcesses() {
        Distribution peak = PeaksOverThreshold.ofThresholdAndYears(10, 2, 11, 12, 13, 16)
                .fit(FitMethod.MOMENTS)
                .distribution();
        assertThat(peak.parameters().get("xi")).isEqualTo(10);
        assertThat(peak.parameters().get("k")).isCloseTo(13.0 / 28, within(1e-14));
        assertThat(peak.parameters().get("alpha")).isCloseTo(123.0 / 28, within(1e-14));
    }

    @Test
    void meanExcessOverALevel() {
        PeaksOverThreshold peaks = PeaksOverThreshold.ofThresholdAndYears(10, 5, 11, 13, 18);
        assertThat(peaks.meanExcess(12)).isEqualTo(3.5);
        assertThat(peaks.meanExcess(20)).isNaN();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> peaks.meanExcess(9))
                .withMessage("level must be at least the threshold 10, was 9");
    }

    @Test
    void refusesBadInput() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PeaksOverThreshold.ofThresholdAndYears(10, 0, 11))
                .withMessage("years must be greater than 0 and finite (years), was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PeaksOverThreshold.ofThresholdAndYears(10, 1, 10))
                .withMessage("peaks must be finite and above threshold 10, was 10");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PeaksOverThreshold.ofThresholdAndYears(10, 1, 11, 12, 13)
                        .fit(FitMethod.MOMENTS))
                .withMessage("sample must have at least 4 values, had 3");
        for (FitMethod method : FitMethod.values()) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> PeaksOverThreshold.ofThresholdAndYears(10, 1, 25.4, 25.4, 25.4, 25.4, 25.4)
                            .fit(method))
                    .withMessage("sample must not be all equal, was 5 times 25.4");
        }
    }
}
