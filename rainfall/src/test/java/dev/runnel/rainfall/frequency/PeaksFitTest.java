package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.distribution.Bootstrap;
import dev.runnel.rainfall.distribution.ConfidenceInterval;
import dev.runnel.rainfall.distribution.Fit;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.GeneralizedPareto;
import dev.runnel.rainfall.distribution.LikelihoodFit;
import org.junit.jupiter.api.Test;

class PeaksFitTest {
    private static final double[] PEAKS = GeneralizedPareto.of(30, 8, -0.1).sample(150, 2);
    private final PeaksFit fit =
            PeaksOverThreshold.ofThresholdAndYears(30, 48, PEAKS).fit(FitMethod.MAXIMUM_LIKELIHOOD);

    /** The fit of the peaks alone knows no years: it refuses the level of 100 years, which once was that of 100 peaks. */
    @Test
    void aFitOfPeaksAloneRefusesYears() {
        LikelihoodFit alone = LikelihoodFit.of(GeneralizedPareto.above(30), PEAKS);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> alone.returnLevelStandardError(100))
                .withMessage(
                        "family must be one of annual maxima for a return period in years, was GENERALIZED_PARETO above"
                                + " 30; ask the peaks over threshold, which know their rate");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.of(GeneralizedPareto.above(30), FitMethod.L_MOMENTS, PEAKS)
                        .returnLevel(100));
        double ofHundredPeaks = alone.quantileStandardError(0.99);
        assertThat(fit.returnLevelStandardError(100)).isGreaterThan(1.3 * ofHundredPeaks);
        // Twice the record at the same rate: the error of the rate, and of the rest, falls by the root of 2 or nearly.
        assertThat(fit.returnLevelStandardError(100))
                .isGreaterThan(alone.standardError(member -> member.quantileOfExceedance(48 / (150.0 * 100))));
    }

    @Test
    void limitsByThreeWaysAgreeRoughly() {
        double level = fit.returnLevel(50);
        ConfidenceInterval delta = fit.returnLevelByDelta(50, 0.9);
        ConfidenceInterval profile = fit.returnLevelByProfile(50, 0.9);
        Bootstrap.Interval drawn = fit.returnLevel(50, Bootstrap.of(400, 3));
        assertThat(delta.contains(level) && profile.contains(level)).isTrue();
        // A heavy tail: the profile reaches further up than down.
        assertThat(profile.upper() - level).isGreaterThan(1.2 * (level - profile.lower()));
        double width = delta.upper() - delta.lower();
        assertThat((profile.upper() - profile.lower()) / width).isBetween(0.8, 1.5);
        assertThat((drawn.upper() - drawn.lower()) / width).isBetween(0.7, 1.4);
    }

    @Test
    void theLimitsOfAReturnPeriodAreThoseOfItsLevel() {
        double level = fit.returnLevel(20);
        ConfidenceInterval years = fit.returnPeriodByProfile(level, 0.9);
        assertThat(years.estimate()).isCloseTo(20, within(1e-9));
        assertThat(fit.returnLevelByProfile(years.upper(), 0.9).lower() / level).isCloseTo(1, within(1e-5));
        assertThat(fit.returnLevelByProfile(years.lower(), 0.9).upper() / level).isCloseTo(1, within(1e-5));
        assertThat(years.toText()).startsWith("20, 90 % between ");
    }

    @Test
    void refusesWhatItCannotSay() {
        PeaksFit byMoments =
                PeaksOverThreshold.ofThresholdAndYears(30, 48, PEAKS).fit(FitMethod.L_MOMENTS);
        assertThatIllegalStateException()
                .isThrownBy(() -> byMoments.returnLevelStandardError(100))
                .withMessage("method must be MAXIMUM_LIKELIHOOD for an error from the likelihood, was L_MOMENTS");
        assertThat(byMoments.returnLevel(100, Bootstrap.of(100, 1)).failed()).isZero();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> fit.returnLevelByProfile(100, 1))
                .withMessage("confidence must be inside (0, 1), was 1");
    }
}
