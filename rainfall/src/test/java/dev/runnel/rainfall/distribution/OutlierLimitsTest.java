package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Outliers, skews and years left out, by hand on both sides of each limit; a probability by simulation. */
class OutlierLimitsTest {
    private static final double[] TEN = {12, 15, 18, 30, 14, 22, 26, 19, 17, 25};

    /** Deviates of Bulletin 17B: 2.036 of ten values, 3.34 or so of 149, and none beyond. */
    @Test
    void thresholdsOfGrubbsAndBeck() {
        assertThat(GrubbsBeck.criticalDeviate(10)).isEqualTo(2.036);
        assertThat(GrubbsBeck.criticalDeviate(20)).isEqualTo(2.385);
        double last = 0;
        for (int size = 10; size <= 149; size++) {
            assertThat(GrubbsBeck.criticalDeviate(size)).isGreaterThan(last);
            last = GrubbsBeck.criticalDeviate(size);
        }
        for (int outside : new int[] {9, 150}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> GrubbsBeck.criticalDeviate(outside))
                    .withMessage("size must be in [10, 149] values, was " + outside);
        }
        double mean = Arrays.stream(TEN).map(Math::log10).average().orElseThrow();
        double deviation = Math.sqrt(Arrays.stream(TEN)
                        .map(x -> Math.pow(Math.log10(x) - mean, 2))
                        .sum()
                / 9);
        GrubbsBeck test = GrubbsBeck.of(TEN);
        assertThat(test.lowThreshold()).isCloseTo(Math.pow(10, mean - 2.036 * deviation), within(1e-12));
        assertThat(test.highThreshold()).isCloseTo(Math.pow(10, mean + 2.036 * deviation), within(1e-11));
        assertThat(test.lowOutliers()).isEmpty();
        assertThat(test.highOutliers()).isEmpty();
        double[] wild = {0.1, 15, 18, 30, 14, 22, 26, 19, 17, 25, 16, 21, 900};
        assertThat(GrubbsBeck.of(wild).lowOutliers()).containsExactly(0.1);
        assertThat(GrubbsBeck.of(Arrays.copyOfRange(wild, 1, 13)).highOutliers())
                .containsExactly(900);
        assertThat(wild[0]).as("the sample is not modified").isEqualTo(0.1);
        assertThat(GrubbsBeck.of(wild).toString())
                .startsWith("GrubbsBeck[1 below ")
                .contains(", 0 above ");
    }

    /** A hundred thousand normal samples: how often the statistic of a rank lies below, against the probability given. */
    @Test
    void theProbabilityOfALowValueIsThatOfSimulation() {
        SplittableRandom random = new SplittableRandom(11);
        int samples = 20_000;
        int[][] sizesAndRanks = {{10, 1}, {12, 3}, {30, 2}, {30, 10}};
        double[][] limits = {{-4, -2.5}, {-3, -1.5}, {-3.5, -2.5}, {-1.6, -1}};
        for (int k = 0; k < sizesAndRanks.length; k++) {
            int n = sizesAndRanks[k][0];
            int r = sizesAndRanks[k][1];
            int[] below = new int[2];
            for (int i = 0; i < samples; i++) {
                double[] sample = random.doubles(n)
                        .map(p -> StandardNormal.quantile(Math.max(p, 1e-12)))
                        .sorted()
                        .toArray();
                double[] above = Arrays.copyOfRange(sample, r, n);
                double mean = Arrays.stream(above).sum() / above.length;
                double squares = 0;
                for (double each : above) {
                    squares += (each - mean) * (each - mean);
                }
                double statistic = (sample[r - 1] - mean) / Math.sqrt(squares / (above.length - 1));
                for (int j = 0; j < 2; j++) {
                    below[j] += statistic < limits[k][j] ? 1 : 0;
                }
            }
            for (int j = 0; j < 2; j++) {
                double seen = (double) below[j] / samples;
                double error = 4 * Math.sqrt(seen * (1 - seen) / samples);
                assertThat(LowOutliers.pValue(n, r, limits[k][j]))
                        .as("%s of %s below %s", r, n, limits[k][j])
                        .isCloseTo(seen, within(error + 0.004));
            }
        }
        assertThat(LowOutliers.pValue(10, 1, -1e6)).isBetween(0.0, 1e-6);
        assertThat(LowOutliers.pValue(10, 5, 0)).isBetween(0.9, 1.0);
        for (int rank : new int[] {0, 6}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> LowOutliers.pValue(10, rank, -2))
                    .withMessage("rank must be in [1, 5], was " + rank);
        }
        for (int size : new int[] {9, 10_001}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> LowOutliers.pValue(size, 1, -2))
                    .withMessage("size must be in [10, 10000], was " + size);
        }
    }

    /** The statistic of a rank is its distance from the mean of those above it, in their deviations. */
    @Test
    void statisticsByHand() {
        LowOutliers low = LowOutliers.of(TEN);
        double[] logs = Arrays.stream(TEN).sorted().map(Math::log).toArray();
        for (int rank = 1; rank <= 5; rank++) {
            double[] above = Arrays.copyOfRange(logs, rank, 10);
            double mean = Arrays.stream(above).average().orElseThrow();
            double squares =
                    Arrays.stream(above).map(x -> (x - mean) * (x - mean)).sum();
            assertThat(low.statistic(rank))
                    .isCloseTo((logs[rank - 1] - mean) / Math.sqrt(squares / (9 - rank)), within(1e-12));
            assertThat(low.pValue(rank)).isEqualTo(LowOutliers.pValue(10, rank, low.statistic(rank)));
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> low.statistic(6))
                .withMessage("rank must be in [1, 5], was 6");
        assertThatIllegalArgumentException().isThrownBy(() -> low.pValue(0)).withMessageStartingWith("rank must be in");
        assertThat(low).hasToString("LowOutliers[0 of 10 below 12]");
        // Zeros are low whatever the test says, and are told without a probability of none.
        LowOutliers zero = LowOutliers.of(0, 12, 15, 18, 30, 14, 22, 26, 19, 17);
        assertThat(zero.count()).isEqualTo(1);
        assertThat(zero.threshold()).isEqualTo(12);
        assertThat(zero.kept()).hasSize(9);
        assertThat(zero).hasToString("LowOutliers[1 of 10 below 12, p 0]");
        // Four zeros of ten: the mean of 9 − k logs is dominated by those of the zeros above.
        LowOutliers four = LowOutliers.of(0, 0, 0, 0, 30, 14, 22, 26, 19, 17);
        double share = 6 / 9.0;
        assertThat(four.statistic(1)).isCloseTo(-share / Math.sqrt(3 * 6 / (9.0 * 8)), within(1e-12));
        assertThat(four.count()).isEqualTo(4);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LowOutliers.of(1, 2, 3, 4, 5, -1, 7, 8, 9, 10))
                .withMessageStartingWith("sample[5] must be 0 or greater");
    }

    /** G of the value farthest out, to either side, and its critical value: (n − 1)/√n · √(t²/(n − 2 + t²)). */
    @Test
    void outliersToEitherSide() {
        Outlier low = Outlier.find(0.05, -40, 2, 3, 4, 5, 6, 7, 8).orElseThrow();
        assertThat(low.index()).isZero();
        assertThat(low.value()).isEqualTo(-40);
        assertThat(low.critical()).isCloseTo(2.126645, within(5e-7));
        Outlier inside = Outlier.furthest(0.05, 1, 2, 3, 4, 5, 6, 7, 9);
        assertThat(inside.index()).isEqualTo(7);
        double mean = 37 / 8.0;
        double squares = 0;
        for (double x : new double[] {1, 2, 3, 4, 5, 6, 7, 9}) {
            squares += (x - mean) * (x - mean);
        }
        assertThat(inside.statistic()).isCloseTo((9 - mean) / Math.sqrt(squares / 7), within(1e-12));
        assertThat(inside.toString()).matches("Outlier\\[9 at index 7, G = 1\\.6[0-9]+, critical 2\\.127\\]");
        // The first of two that lie as far.
        assertThat(Outlier.furthest(0.05, 1, 5, 9).index()).isZero();
    }

    /** −0.33 + 0.08 G up to 0.9 and −0.52 + 0.30 G beyond; 0.94 − 0.26 G up to 1.5 and 0.55 beyond. */
    @Test
    void errorsOfASkew() {
        for (double size : new double[] {0.3, 0.9, 0.91, 1.5, 1.51, 3}) {
            double a = size <= 0.9 ? -0.33 + 0.08 * size : -0.52 + 0.30 * size;
            double b = size <= 1.5 ? 0.94 - 0.26 * size : 0.55;
            for (int years : new int[] {10, 40, 10_000}) {
                double error = Math.pow(10, a) * Math.pow(years / 10.0, -b);
                assertThat(WeightedSkew.meanSquareError(size, years)).isCloseTo(error, within(1e-12));
                assertThat(WeightedSkew.meanSquareError(-size, years)).isCloseTo(error, within(1e-12));
            }
        }
        for (int outside : new int[] {9, 10_001}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> WeightedSkew.meanSquareError(0, outside))
                    .withMessage("years must be in [10, 10000], was " + outside);
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> WeightedSkew.meanSquareErrorGriffis(3.1, 20))
                .withMessage("skew must be in [-3, 3], was 3.1");
        double[] sample = {1, 2, 3, 4, 5, 6, 7, 8, 9, 14};
        SampleMoments moments = SampleMoments.of(sample);
        SkewEstimate region = SkewEstimate.ofSkewAndMeanSquareError(-0.1, 0.3);
        WeightedSkew weighted = WeightedSkew.of(moments, region);
        double station = WeightedSkew.meanSquareError(moments.skew(), 10);
        assertThat(weighted.stationMeanSquareError()).isEqualTo(station);
        assertThat(weighted.skew()).isCloseTo((0.3 * moments.skew() - 0.1 * station) / (0.3 + station), within(1e-12));
        assertThat(weighted.toString())
                .startsWith("WeightedSkew[")
                .contains(" of station ")
                .endsWith(" and region -0.1]");
    }

    @Test
    void aSkewIsAValue() {
        SkewEstimate skew = SkewEstimate.ofSkewAndMeanSquareError(0.4, 0.3);
        assertThat(skew)
                .isEqualTo(SkewEstimate.ofSkewAndMeanSquareError(0.4, 0.3))
                .hasSameHashCodeAs(SkewEstimate.ofSkewAndMeanSquareError(0.4, 0.3))
                .isNotEqualTo(SkewEstimate.ofSkewAndMeanSquareError(0.4, 0.2))
                .isNotEqualTo(SkewEstimate.ofSkewAndMeanSquareError(0.3, 0.3))
                .isNotEqualTo("skew")
                .hasToString("SkewEstimate[0.4, mean square error 0.3]");
        assertThat(skew.hashCode())
                .isNotEqualTo(SkewEstimate.ofSkewAndMeanSquareError(0.4, 0.2).hashCode())
                .isNotEqualTo(SkewEstimate.ofSkewAndMeanSquareError(0.3, 0.3).hashCode());
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SkewEstimate.ofSkewAndMeanSquareError(3.1, 1))
                .withMessage("skew must be in [-3, 3], was 3.1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SkewEstimate.ofSkewAndMeanSquareError(1, 0))
                .withMessageStartingWith("meanSquareError must be greater than 0");
    }

    /** Two of ten years are left out: each is exceeded in eight tenths of what the kept ones say. */
    @Test
    void yearsLeftOut() {
        ConditionalProbability of = ConditionalProbability.of(14.5, TEN);
        double[] kept = Arrays.stream(TEN).filter(x -> x > 14.5).toArray();
        assertThat(kept).hasSize(8);
        LogPearsonIII above = (LogPearsonIII) Fit.of(DistributionFamily.LOG_PEARSON_III, FitMethod.MOMENTS, kept)
                .distribution();
        assertThat(of.ofKept().quantile(0.7)).isEqualTo(above.quantile(0.7));
        assertThat(of.returnLevel(20)).isCloseTo(above.quantileOfExceedance(0.05 / 0.8), within(1e-9));
        // The distribution made of three of its levels has those levels.
        double q50 = Math.log10(above.quantileOfExceedance(0.5 / 0.8));
        double q10 = Math.log10(above.quantileOfExceedance(0.1 / 0.8));
        double q01 = Math.log10(above.quantileOfExceedance(0.01 / 0.8));
        assertThat(Math.log10(of.distribution().quantileOfExceedance(0.5))).isCloseTo(q50, within(1e-9));
        assertThat(Math.log10(of.distribution().quantileOfExceedance(0.01))).isCloseTo(q01, within(1e-9));
        double skew = -2.5 + 3.12 * (q01 - q10) / (q10 - q50);
        assertThat(List.copyOf(of.distribution().parameters().values()).get(2)).isCloseTo(skew, within(1e-9));
        assertThat(of.toString()).startsWith("ConditionalProbability[8 of 10 years kept, ");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> of.returnLevel(1.25))
                .withMessage("years must be greater than 1.25 and finite, was 1.25");
        assertThat(of.returnLevel(1.26)).isPositive();
        for (double none : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> ConditionalProbability.of(none, TEN))
                    .withMessageStartingWith("lowest must be greater than 0 and finite, was ");
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConditionalProbability.of(1, 1, -2))
                .withMessage("sample must be 0 or greater and finite, had -2");
        double[] twelve = Arrays.copyOf(TEN, 12);
        twelve[10] = 20;
        twelve[11] = 21;
        assertThat(ConditionalProbability.of(15.5, twelve).toString()).contains("9 of 12");
    }

    /** Above the median of a normal sample lie mean √(2/π) and variance 1 − 2/π; of so many values the rank has little choice. */
    @Test
    void theProbabilityInALargeSample() {
        double mean = Math.sqrt(2 / Math.PI);
        double omega = -mean / Math.sqrt(1 - 2 / Math.PI);
        assertThat(LowOutliers.pValue(10_000, 5000, omega)).isCloseTo(0.5, within(0.02));
        assertThat(LowOutliers.pValue(10_000, 5000, 1.1 * omega)).isLessThan(1e-3);
        assertThat(LowOutliers.pValue(10_000, 5000, 0.9 * omega)).isGreaterThan(0.999);
        // The smallest of ten thousand lies near −3.85, that of a lognormal so much lower is none of them.
        assertThat(LowOutliers.pValue(10_000, 1, -3.85)).isBetween(0.4, 0.6);
        assertThat(LowOutliers.pValue(10_000, 1, -7)).isLessThan(1e-4);
    }

    /** Down to the smallest value by 10 %, up from the median by 0.5 %, the middle rank included. */
    @Test
    void theTwoSweeps() {
        LowOutliers one = LowOutliers.of(6, 15, 18, 30, 14, 22, 26, 19, 17, 25);
        assertThat(one.pValue(1)).isBetween(0.005, 0.10);
        assertThat(one.pValue(2)).isGreaterThan(0.10);
        assertThat(one.count()).isEqualTo(1);
        LowOutliers half = LowOutliers.of(1, 1.2, 1.4, 1.6, 1.8, 20, 20.5, 21, 21.5, 22);
        assertThat(half.pValue(5)).isLessThan(0.005);
        assertThat(half.count()).isEqualTo(5);
        assertThat(half.threshold()).isEqualTo(20);
        assertThat(half.toString()).startsWith("LowOutliers[5 of 10 below 20, p ");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LowOutliers.of(new double[10]))
                .withMessage("sample must have more values above 0 than zeros, had 10 zeros of 10");
    }

    @Test
    void outliersInOrder() {
        double[] wild = {0.1, 15, 18, 15, 14, 15, 16, 15, 17, 15, 16, 0.05, 15, 15, 15, 15, 15, 15, 15, 15, 15, 15};
        assertThat(GrubbsBeck.of(wild).lowOutliers()).containsExactly(0.05, 0.1);
    }

    /** By hand for ten values, 10^0.59 = 3.8905, 10^1.18 = 15.1356, 10^1.77 = 58.8844 and so on. */
    @Test
    void theErrorOfGriffisOfALargeSkew() {
        double a = -0.1775 + 0.05006;
        double b = 3.92 / 1.995262 - 31.10 / 3.981072 + 34.86 / 7.943282;
        double c = -7.31 / 3.890451 + 45.90 / 15.135612 - 86.50 / 58.884366;
        assertThat(WeightedSkew.meanSquareErrorGriffis(2, 10))
                .isCloseTo((0.6 + a) * (1 + 4 * (1.5 + b) + 16 * (0.3125 + c)), within(1e-5));
    }

    @Test
    void yearsLeftOutToTheLetter() {
        // The value at the level counts, zeros are left out, a quarter of the years is allowed.
        double[] sample = {0, 0, 0, 12, 15, 18, 30, 14, 22, 26, 19, 17};
        assertThat(ConditionalProbability.of(12, sample).toString()).contains("[9 of 12 years kept");
        for (double none : new double[] {Double.POSITIVE_INFINITY, Double.NaN}) {
            sample[4] = none;
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> ConditionalProbability.of(12, sample))
                    .withMessageStartingWith("sample must be 0 or greater and finite, had ");
            ConditionalProbability ten = ConditionalProbability.of(12, TEN);
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> ten.returnLevel(none))
                    .withMessageStartingWith("years must be greater than 1 and finite, was ");
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConditionalProbability.of(1, 1, 1.01, 1.02, 1.03, 1.04, 1.05, 1.06, 1.07, 1.08, 100))
                .withMessageMatching(
                        "sample must have a synthetic skew inside \\(-2\\.0, 2\\.5\\), was [2-9]\\.[0-9]+");
    }
}
