package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Printed results are in the tables of the proof; here are edges, and what must hold of any sample. */
class LowOutliersTest {
    private static final double[] TEN = {12, 15, 18, 30, 14, 22, 26, 19, 17, 25};

    @Test
    void aUnitChangesNothing() {
        double[] sample = withLow();
        LowOutliers metres = LowOutliers.of(sample);
        LowOutliers feet =
                LowOutliers.of(Arrays.stream(sample).map(x -> x / 0.3048).toArray());
        assertThat(metres.count()).isEqualTo(2).isEqualTo(feet.count());
        assertThat(metres.pValue(2)).isLessThan(0.005).isCloseTo(feet.pValue(2), within(1e-10));
        assertThat(metres.threshold()).isEqualTo(20);
        assertThat(metres.kept()).hasSize(28).startsWith(20);
        assertThat(metres).asString().startsWith("LowOutliers[2 of 30 below 20, p ");
    }

    private static double[] withLow() {
        double[] sample = new double[30];
        for (int i = 0; i < 30; i++) {
            sample[i] = i < 2 ? 0.5 + i : 18 + i;
        }
        return sample;
    }

    /** The limit of a very small value: the counts and the probabilities go over into one another. */
    @Test
    void zerosAreTheLimitOfSmallValues() {
        double[] zeros = withLow();
        zeros[0] = 0;
        zeros[1] = 0;
        double[] small = zeros.clone();
        small[0] = 1e-280;
        small[1] = 1e-280;
        LowOutliers ofZeros = LowOutliers.of(zeros);
        LowOutliers ofSmall = LowOutliers.of(small);
        assertThat(ofZeros.count()).isEqualTo(2).isEqualTo(ofSmall.count());
        assertThat(ofZeros.statistic(1)).isCloseTo(ofSmall.statistic(1), within(0.05));
        assertThat(ofZeros.pValue(2)).isZero();
        assertThat(ofSmall.pValue(2)).isLessThan(1e-12);
    }

    @Test
    void anEvenSampleHasNone() {
        LowOutliers none = LowOutliers.of(TEN);
        assertThat(none.count()).isZero();
        assertThat(none.threshold()).isEqualTo(12);
        assertThat(ExpectedMoments.of(none).distribution().mean())
                .isCloseTo(
                        Fit.of(DistributionFamily.LOG_PEARSON_III, FitMethod.MOMENTS, TEN)
                                .distribution()
                                .mean(),
                        within(0.1));
    }

    /** With no interval the moments are the ordinary ones: with n/(n - 1) and n^2/((n - 1)(n - 2)) over n. */
    @Test
    void withoutIntervalsExpectedMomentsAreTheMoments() {
        SampleMoments logs = SampleMoments.of(Logarithms.decimal(TEN));
        assertThat(ExpectedMoments.builder()
                        .known(TEN)
                        .fit()
                        .distribution()
                        .parameters()
                        .values())
                .zipSatisfy(
                        java.util.List.of(logs.mean(), logs.standardDeviation(), logs.skew()),
                        (got, wanted) -> assertThat(got).isCloseTo(wanted, within(1e-9)));
    }

    /** Historical years below a mark pull the level down; a level between two is as good as known if they are close. */
    @Test
    void intervalsCount() {
        double without = ExpectedMoments.builder().known(TEN).fit().returnLevel(100);
        ExpectedMoments with =
                ExpectedMoments.builder().known(TEN).below(30.5, 60).fit();
        assertThat(with.returnLevel(100)).isLessThan(without);
        assertThat(with.years()).isEqualTo(70);
        double close = ExpectedMoments.builder()
                .known(Arrays.copyOf(TEN, 9))
                .between(24.999999, 25.000001, 1)
                .fit()
                .returnLevel(10);
        // The factors for the bias count known values only, so that the two differ a little.
        assertThat(close / ExpectedMoments.builder().known(TEN).fit().returnLevel(10))
                .isCloseTo(1, within(0.02));
        Bootstrap.Interval limits = with.returnLevel(100, Bootstrap.of(100, 1));
        assertThat(limits.lower()).isLessThan(with.returnLevel(100));
        assertThat(limits.upper()).isGreaterThan(with.returnLevel(100));
        assertThat(with.distributionWeighted(SkewEstimate.ofSkewAndMeanSquareError(0.4, 0.1))
                        .quantile(0.5))
                .isPositive();
    }

    @Test
    void theWeightedSkewLiesBetween() {
        WeightedSkew weighted = WeightedSkew.of(
                SkewEstimate.ofSkewAndMeanSquareError(0.2, 0.1), SkewEstimate.ofSkewAndMeanSquareError(0.6, 0.3));
        assertThat(weighted.skew()).isCloseTo(0.3, within(1e-15));
        assertThat(weighted.meanSquareError()).isCloseTo(0.075, within(1e-15));
        // By hand: 10^(-0.33 + 0.08 0.5 - (0.94 - 0.26 0.5) log10 4).
        assertThat(WeightedSkew.meanSquareError(-0.5, 40))
                .isCloseTo(Math.pow(10, -0.29) / Math.pow(4, 0.81), within(1e-14));
        assertThat(WeightedSkew.meanSquareError(2, 10)).isCloseTo(Math.pow(10, 0.08), within(1e-14));
        assertThat(WeightedSkew.meanSquareErrorGriffis(0, 100)).isCloseTo(0.06 - 17.75e-4 + 50.06e-6, within(1e-15));
    }

    /** Simulated: 100,000 samples of 68 values of a Pearson III of skew 0.4, drawn with SciPy, have 0.09805 +- 0.0006. */
    @Test
    void theErrorOfGriffisIsThatOfSimulation() {
        assertThat(WeightedSkew.meanSquareErrorGriffis(0.4, 68)).isCloseTo(0.09805, within(0.002));
        assertThat(WeightedSkew.meanSquareErrorGriffis(0.2, 50)).isCloseTo(0.11718, within(0.002));
    }

    @Test
    void refusesBadInput() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LowOutliers.of(1, 2, 3))
                .withMessage("number of values must be in [10, 10000], was 3");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LowOutliers.of(0, 0, 0, 0, 0, 1, 2, 3, 4, 5))
                .withMessage("sample must have more values above 0 than zeros, had 5 zeros of 10");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LowOutliers.of(1, 2, 3, 4, 5, 7, 7, 7, 7, 7))
                .withMessage("sample must differ above its median, was all 7 there");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> GrubbsBeck.of(new double[150]))
                .withMessageStartingWith("size must be in [10, 149]");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConditionalProbability.of(16, TEN))
                .withMessage("lowest must leave out at most a quarter of the years, left out 3 of 10");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ExpectedMoments.builder().between(5, 4, 1))
                .withMessage("levels must be 0 or greater and rise, were 5 and 4");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> WeightedSkew.meanSquareError(4, 20))
                .withMessage("skew must be in [-3, 3], was 4");
    }
}
