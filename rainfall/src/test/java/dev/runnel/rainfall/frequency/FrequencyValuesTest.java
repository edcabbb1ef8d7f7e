package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.Exponential;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.GeneralizedPareto;
import dev.runnel.rainfall.distribution.LMoments;
import dev.runnel.rainfall.distribution.LikelihoodFit;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Values by hand and on their limits. */
class FrequencyValuesTest {
    private static final double[] PEAKS = {12, 15, 11, 19, 13, 25, 14, 11.5, 17, 12.5};

    private static RegularSeries hours(double... values) {
        return RegularSeries.of(Instant.EPOCH, Duration.ofHours(1), values);
    }

    private static Region region(int count) {
        List<Region.Site> sites = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            sites.add(new Region.Site(
                    "site " + i, 20 + i, LMoments.of(10, 2 + 0.1 * i, 0.15 + 0.01 * i, 0.15 + 0.01 * (i % 3))));
        }
        return Region.ofSites(sites);
    }

    /** Hosking and Wallis (1997), Regional Frequency Analysis, table 3.1: critical values of the discordancy, from memory. */
    @ParameterizedTest
    @CsvSource({
        "5, 1.333",
        "6, 1.648",
        "7, 1.917",
        "8, 2.140",
        "9, 2.329",
        "10, 2.491",
        "11, 2.632",
        "12, 2.757",
        "13, 2.869",
        "14, 2.971",
        "15, 3",
        "20, 3"
    })
    void criticalDiscordancies(int sites, double critical) {
        assertThat(region(sites).criticalDiscordancy()).isEqualTo(critical);
    }

    @Test
    void aRegionSaysWhatItIs() {
        // By 20, 21 and 22 years: t = (20 0.2 + 21 0.21 + 22 0.22)/63.
        assertThat(region(3)).hasToString("Region[3 sites, t = 0.2103, t3 = 0.1603, t4 = 0.1603]");
        assertThatThrownBy(() -> region(4).criticalDiscordancy())
                .hasMessageStartingWith("number of sites must be at least 5");
        assertThatThrownBy(() -> region(4).discordancy()).hasMessageStartingWith("number of sites must be at least 5");
        RegionSimulation test = region(6).test(20, 3);
        assertThat(test.simulations()).isEqualTo(20);
        assertThat(test.hashCode()).isEqualTo(region(6).test(20, 3).hashCode());
        assertThat(test).isNotEqualTo(region(6).test(21, 3)).isNotEqualTo("a text");
        assertThat(test.hashCode()).isNotEqualTo(region(6).test(21, 3).hashCode());
        assertThat(test.toString())
                .startsWith("RegionSimulation[H1 = ")
                .contains(", H2 = ", ", H3 = ", ", Z GEV = ")
                .endsWith(", 20 simulations]");
        assertThatThrownBy(() -> region(6).test(19, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> region(6).test(100_001, 3)).isInstanceOf(IllegalArgumentException.class);
    }

    /** The variance of a level is that of the parameters and (dx/d ln lambda)^2/n: for the exponential law the slope is alpha. */
    @Test
    void theErrorOfALevelHoldsThatOfTheRate() {
        PeaksOverThreshold peaks = PeaksOverThreshold.ofThresholdAndYears(10, 5, PEAKS);
        PeaksFit fit = peaks.fit(FitMethod.MAXIMUM_LIKELIHOOD);
        LikelihoodFit likelihood = LikelihoodFit.of(GeneralizedPareto.above(10), PEAKS);
        double exceedance = 1 / (2 * 20.0);
        double ofParameters = likelihood.standardError(peak -> peak.quantileOfExceedance(exceedance));
        double k = fit.distribution().parameters().getOrDefault("k", Double.NaN);
        double alpha = fit.distribution().parameters().getOrDefault("alpha", Double.NaN);
        // x = 10 + alpha/k (1 - (lambda T)^-k), so dx/d ln lambda = alpha (lambda T)^-k.
        double ofRate = alpha * Math.pow(40, -k) / Math.sqrt(10);
        assertThat(fit.returnLevelStandardError(20)).isCloseTo(Math.hypot(ofParameters, ofRate), within(1e-6));
        assertThat(fit.quantile(0.5)).isEqualTo(fit.distribution().quantile(0.5));
        assertThat(fit.toString()).startsWith("PeaksFit[").endsWith(", 2 a year]");
        assertThatThrownBy(() -> fit.returnLevel(0.5)).hasMessageStartingWith("years must be above 0.5 years");
        assertThatThrownBy(() -> fit.returnPeriod(9.99)).hasMessageStartingWith("level must be at least the threshold");
        assertThat(fit.returnPeriod(10)).isCloseTo(0.5, within(1e-12));
        assertThatThrownBy(() -> fit.returnPeriod(Double.POSITIVE_INFINITY))
                .hasMessageStartingWith("level must be at least the threshold");
    }

    @Test
    void theMeanExcessOfTheThresholdIsOfAllPeaks() {
        PeaksOverThreshold peaks = PeaksOverThreshold.ofThresholdAndYears(10, 5, PEAKS);
        assertThat(peaks.meanExcess(10)).isCloseTo(5, within(1e-12));
        // A peak on the level does not exceed it: 19 and 25 are left above 17.
        assertThat(peaks.meanExcess(17)).isCloseTo(5, within(1e-12));
        assertThat(peaks.meanExcess(25)).isNaN();
        assertThatThrownBy(() -> peaks.meanExcess(9.99))
                .hasMessageStartingWith("level must be at least the threshold 10");
        assertThatThrownBy(() -> PeaksOverThreshold.ofThresholdAndYears(10, 5, 12, 10))
                .hasMessage("peaks must be finite and above threshold 10, was 10");
    }

    /** Runs are joined over less than the separation, and parted by as much. */
    @Test
    void runsOnTheSeparation() {
        RegularSeries values = hours(5, 1, 1, 6, 1, 7, 2, 3, Double.NaN, Double.NaN, 4);
        assertThat(PeaksOverThreshold.from(values, 2, Duration.ofHours(2)).peaks())
                .containsExactly(5, 7, 4);
        assertThat(PeaksOverThreshold.from(values, 2, Duration.ofHours(2)).apartByGaps())
                .isEqualTo(1);
        assertThat(PeaksOverThreshold.from(values, 2, Duration.ofHours(3)).peaks())
                .containsExactly(7);
        assertThat(PeaksOverThreshold.from(values, 2, Duration.ofHours(1)).peaks())
                .containsExactly(5, 6, 7, 3, 4);
        // Side by side they are one run however short the separation.
        assertThat(PeaksOverThreshold.from(hours(3, 5, 4, 1), 2, Duration.ZERO).peaks())
                .containsExactly(5);
        assertThatThrownBy(() -> PeaksOverThreshold.from(values, 2, Duration.ofHours(-1)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** More peaks than the first room for them, each apart. */
    @Test
    void manyRunsAreKept() {
        double[] values = new double[400];
        for (int i = 0; i < values.length; i += 2) {
            values[i] = 3 + i;
        }
        double[] peaks =
                PeaksOverThreshold.from(hours(values), 2, Duration.ofHours(1)).peaks();
        assertThat(peaks).hasSize(200);
        assertThat(peaks[199]).isEqualTo(401);
    }

    @Test
    void anExponentialLawOfPeaksGivesItsLevelByHand() {
        PeaksOverThreshold peaks = PeaksOverThreshold.ofThresholdAndYears(10, 5, PEAKS);
        PeaksFit fit = PeaksFit.of(peaks, DistributionFamily.EXPONENTIAL, FitMethod.MAXIMUM_LIKELIHOOD);
        assertThat(fit.distribution()).isEqualTo(Exponential.of(11, 4));
        assertThat(fit.returnLevel(10)).isCloseTo(11 + 4 * Math.log(20), within(1e-12));
        assertThat(fit.peaks()).isSameAs(peaks);
        assertThat(fit.method()).isEqualTo(FitMethod.MAXIMUM_LIKELIHOOD);
    }

    /** Ten years of days, of which one is left out for a gap; its gap may be as long as the rule says. */
    @Test
    void yearsOnTheLimitsOfTheirRule() {
        double[] values = new double[3 * 365];
        for (int year = 0; year < 3; year++) {
            values[365 * year + 100] = 10 + year;
        }
        for (int day = 500; day < 510; day++) {
            values[day] = Double.NaN;
        }
        RegularSeries days = RegularSeries.of(Instant.parse("2021-01-01T00:00:00Z"), Duration.ofDays(1), values);
        YearRule ten = YearRule.calendar().withLongestGap(Duration.ofDays(10));
        List<Duration> day = List.of(Duration.ofDays(1));
        assertThat(AnnualMaxima.from(days, day, ten).depthsMm(day.get(0))).containsExactly(10, 11, 12);
        AnnualMaxima two = AnnualMaxima.from(days, day, YearRule.calendar().withLongestGap(Duration.ofDays(9)));
        assertThat(two.depthsMm(day.get(0))).containsExactly(10, 12);
        assertThat(two.warnings()).anyMatch(warning -> warning.endsWith("1 of 3 years were left out."));
        YearRule whole = YearRule.calendar().withMinimumCoverage(355 / 365.0);
        assertThat(AnnualMaxima.from(days, day, whole).depthsMm(day.get(0))).containsExactly(10, 11, 12);
        RegularSeries negative = RegularSeries.of(Instant.parse("2021-01-01T00:00:00Z"), Duration.ofDays(1), 1, -1, 2);
        assertThatThrownBy(() -> AnnualMaxima.from(negative, day, YearRule.calendar()))
                .isInstanceOf(IllegalArgumentException.class);
        // Over two steps a clock cuts a sixteenth at the mean (Weiss 1964): 16/15.
        List<Duration> twoDays = List.of(Duration.ofDays(2));
        assertThat(AnnualMaxima.from(days, twoDays, ten).withClockCorrection().depthsMm(twoDays.get(0))[0])
                .isCloseTo(10 * 16 / 15.0, within(1e-12));
    }

    /** 8766 hours are a year. */
    @Test
    void peaksOfDurationsCountYearsOfHours() {
        double[] values = new double[2 * 8766];
        for (int i = 0; i < 40; i++) {
            values[400 * i] = 1 + i;
        }
        Duration two = Duration.ofHours(2);
        DurationPeaks peaks = DurationPeaks.from(hours(values), List.of(two), 10, two);
        assertThat(peaks.peaks(two).years()).isCloseTo(2, within(1e-12));
        assertThat(peaks.peaks(two).peaks()).hasSize(20);
        assertThat(peaks.peaks(two).threshold()).isEqualTo(20);
        assertThat(peaks.withClockCorrection().peaks(two).threshold()).isCloseTo(20 * 16 / 15.0, within(1e-12));
    }

    @Test
    void rainThatFlowsUpwardsIsRefused() {
        RegularSeries negative = hours(1, -2, 3);
        assertThatThrownBy(() -> AnnualMaxima.from(negative, List.of(Duration.ofHours(1)), YearRule.calendar()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must be 0 or greater");
        assertThatThrownBy(() -> DurationPeaks.from(negative, List.of(Duration.ofHours(1)), 1, Duration.ofHours(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must be 0 or greater");
    }

    /** Six hours of which one is missing, by a window of three: 1 + 2 + 4, then 2 + 4 + 8; the last of all sums whole. */
    @Test
    void windowsOfThreeSteps() {
        List<PeakDepth> windows =
                PeakWindows.greatest(hours(1, 2, 4, 8, Double.NaN, 16, 32), Duration.ofHours(3), Duration.ZERO, 9);
        assertThat(windows).extracting(PeakDepth::depthMm).containsExactly(48.0, 14.0);
        assertThat(windows.get(1).start()).isEqualTo(windows.get(0).start().minus(Duration.ofHours(3)));
    }
}
