package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BootstrapTest {
    private static final double[] SAMPLE = sample(Gumbel.of(30, 8), 50, 3);

    private final Fit fit = Fit.of(DistributionFamily.GUMBEL, FitMethod.MOMENTS, SAMPLE);

    @Test
    void theSameSeedGivesTheSameLimits() {
        Bootstrap bootstrap = Bootstrap.of(200, 11);
        assertThat(bootstrap.returnLevel(fit, SAMPLE, 30)).isEqualTo(bootstrap.returnLevel(fit, SAMPLE, 30));
        assertThat(bootstrap.returnLevel(fit, SAMPLE, 30))
                .isNotEqualTo(Bootstrap.of(200, 12).returnLevel(fit, SAMPLE, 30));
    }

    /**
     * The standard error of a Gumbel quantile by moments is s/sqrt(n) (1 + 1.1396 K + 1.1 K^2)^(1/2) (Kite 1975,
     * Confidence limits for design events, Water Resources Research 11(1); from memory), K the frequency factor.
     */
    @Test
    void theStandardErrorIsThatOfTheory() {
        double s = SampleMoments.of(SAMPLE).standardDeviation();
        double k = (fit.returnLevel(30) - SampleMoments.of(SAMPLE).mean()) / s;
        double theory = s / Math.sqrt(50) * Math.sqrt(1 + 1.1396 * k + 1.1 * k * k);
        assertThat(Gumbel.momentsStandardError(s, 50, 30)).isCloseTo(theory, within(1e-4 * theory));
        var interval = Bootstrap.of(4000, 5).returnLevel(fit, SAMPLE, 30);
        assertThat(interval.standardError() / theory).isCloseTo(1, within(0.08));
        assertThat(interval.lower()).isLessThan(interval.estimate());
        assertThat(interval.upper()).isGreaterThan(interval.estimate());
        assertThat(interval.failed()).isZero();
    }

    /** A value is rarer than T exactly if the quantile of T lies below it, in every replicate. */
    @Test
    void theLimitsOfAReturnPeriodAreThoseOfItsQuantile() {
        Bootstrap bootstrap = Bootstrap.of(400, 3);
        double value = fit.returnLevel(25);
        var period = bootstrap.returnPeriod(fit, SAMPLE, value);
        assertThat(period.estimate()).isCloseTo(25, within(1e-9));
        assertThat(bootstrap.returnLevel(fit, SAMPLE, period.upper()).lower() / value)
                .isCloseTo(1, within(2e-3));
        assertThat(bootstrap.returnLevel(fit, SAMPLE, period.lower()).upper() / value)
                .isCloseTo(1, within(2e-3));
        assertThat(period.standardError()).isNaN();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> bootstrap.returnPeriod(fit, SAMPLE, Double.NaN))
                .withMessageStartingWith("value must be finite");
    }

    @Test
    void aBoundBelowTheValueIsAnInfiniteLimit() {
        double[] bounded = sample(Gev.of(20, 5, 0.4), 40, 9);
        Fit gev = Fit.of(DistributionFamily.GEV, FitMethod.L_MOMENTS, bounded);
        var period = Bootstrap.of(200, 1)
                .returnPeriod(gev, bounded, 0.999 * gev.distribution().upperBound());
        assertThat(period.upper()).isInfinite();
        assertThat(period.lower()).isFinite().isGreaterThan(10);
    }

    /** No sample drawn is lost by the parametric bootstrap, however small, so that no kind of sample is left out. */
    @Test
    void aSmallSampleLosesNoReplicates() {
        double[] five = {12, 15, 18, 30, 14};
        Fit small = Fit.of(DistributionFamily.GUMBEL, FitMethod.L_MOMENTS, five);
        assertThat(Bootstrap.of(1000, 1).returnLevel(small, five, 10).failed()).isZero();
        // All five the same: 5 in 3125 resamples.
        assertThat(Bootstrap.of(1000, 1)
                        .withResampling()
                        .returnLevel(small, five, 10)
                        .failed())
                .isLessThan(8);
    }

    @Test
    void aWrongFamilyIsNotSignificant() {
        double[] flat = new double[60];
        for (int i = 0; i < flat.length; i++) {
            flat[i] = i < 30 ? 10 + 0.01 * i : 20 + 0.01 * i;
        }
        Fit wrong = Fit.of(DistributionFamily.GUMBEL, FitMethod.MOMENTS, flat);
        assertThat(Bootstrap.of(200, 1).significance(wrong, flat).value()).isLessThan(0.02);
        assertThat(Bootstrap.of(200, 1).significance(fit, SAMPLE).value()).isGreaterThan(0.05);
    }

    /** (m + 1) / (n + 1): never 0, and 1 of a sample that fits better than any draw. */
    @Test
    void significanceCountsTheSampleAmongTheDraws() {
        Bootstrap.Significance poor = Bootstrap.of(99, 1).significance(fit, spread(-1, 1));
        assertThat(poor.value()).isEqualTo(0.01);
        assertThat(poor.replicates()).isEqualTo(99);
        assertThat(poor.failed()).isZero();
        double[] perfect = new double[50];
        for (int i = 0; i < perfect.length; i++) {
            perfect[i] = fit.distribution().quantile((i + 0.5) / 50);
        }
        assertThat(Bootstrap.of(99, 1).significance(fit, perfect).value()).isEqualTo(1);
    }

    /** Half of the values at one place and half at another. */
    private static double[] spread(double low, double high) {
        double[] spread = new double[50];
        for (int i = 0; i < spread.length; i++) {
            spread[i] = (i % 2 == 0 ? low : high) + 1e-3 * i;
        }
        return spread;
    }

    @Test
    void itReadsWithItsSeedItsWayAndItsLimits() {
        assertThat(Bootstrap.of(400, 7).withConfidence(0.9))
                .hasToString("Bootstrap[400 replicates, seed 7, confidence 0.9, parametric]");
        assertThat(Bootstrap.of(400, 7).withConfidence(0.9).withResampling())
                .hasToString("Bootstrap[400 replicates, seed 7, confidence 0.9, resampling]");
        assertThat(new Bootstrap.Interval(51.23, 44.5, 60.25, 3.9, 0.9, 398, 2))
                .hasToString("51.23 (90 %: 44.5 to 60.25, 398 replicates, 2 failed)");
    }

    /** The limits come from the seed alone, however many threads work. */
    @Test
    void theNumberOfThreadsChangesNothing() throws Exception {
        Bootstrap bootstrap = Bootstrap.of(200, 11);
        List<Object> one = new ForkJoinPool(1).submit(() -> all(bootstrap)).get();
        List<Object> many = new ForkJoinPool(7).submit(() -> all(bootstrap)).get();
        assertThat(one).isEqualTo(many);
    }

    private List<Object> all(Bootstrap bootstrap) {
        return List.of(
                bootstrap.returnLevel(fit, SAMPLE, 30),
                bootstrap.withResampling().returnLevel(fit, SAMPLE, 30),
                bootstrap.significance(fit, SAMPLE),
                bootstrap.criticalValues(fit, PlottingPosition.GRINGORTEN, 0.1, 0.05));
    }

    /** Of 21 draws the second and the third stand at 5 and 10 %; what is asked between them lies on the line between them. */
    @Test
    void criticalValuesLieOnLinesBetweenTheDraws() {
        List<GoodnessOfFit> three = Bootstrap.of(21, 1)
                .criticalValues(fit, PlottingPosition.GRINGORTEN, 0.05, 0.0625, 0.1)
                .values();
        GoodnessOfFit second = three.get(0);
        GoodnessOfFit between = three.get(1);
        GoodnessOfFit third = three.get(2);
        assertThat(second.andersonDarling()).isGreaterThan(third.andersonDarling());
        assertThat(between.andersonDarling())
                .isCloseTo(0.75 * second.andersonDarling() + 0.25 * third.andersonDarling(), within(1e-12));
        assertThat(between.kolmogorovSmirnov())
                .isCloseTo(0.75 * second.kolmogorovSmirnov() + 0.25 * third.kolmogorovSmirnov(), within(1e-12));
        assertThat(between.plotCorrelation())
                .isCloseTo(0.75 * second.plotCorrelation() + 0.25 * third.plotCorrelation(), within(1e-12));
    }

    /**
     * Bounded families: 5 % of samples that are of the fitted distribution are to be rejected. A value outside the bound
     * fitted to it makes A2 infinite, in so many samples that A2 alone can reject none; the others reject 5 %, and so
     * does the significance. Tolerance: four standard errors of shares of 2000 and 4000, and of 1000, samples.
     */
    @ParameterizedTest
    @CsvSource({"EXPONENTIAL, 0", "GENERALIZED_PARETO, 0.1"})
    void aTestOfABoundedFamilyRejectsAsManyAsItSays(DistributionFamily family, double shape) {
        GeneralizedPareto truth = GeneralizedPareto.of(10, 5, shape);
        Fit fitted = family == DistributionFamily.EXPONENTIAL
                ? Fit.from(family, FitMethod.L_MOMENTS, 30, 10, 5)
                : Fit.from(family, FitMethod.L_MOMENTS, 30, 10, 5, shape);
        Bootstrap.CriticalValues critical =
                Bootstrap.of(4000, 1).criticalValues(fitted, PlottingPosition.CUNNANE, 0.05, 0.5);
        assertThat(critical.replicates()).isEqualTo(4000);
        assertThat(critical.failed()).isZero();
        GoodnessOfFit five = critical.values().get(0);
        assertThat(five.andersonDarling()).isInfinite();
        assertThat(critical.values().get(1).andersonDarling()).isBetween(0.1, 2.0);
        int[] rejected = new int[3];
        int significant = 0;
        for (int i = 0; i < 2000; i++) {
            double[] x = sample(truth, 30, 1000 + i);
            Fit fit = Fit.of(family, FitMethod.L_MOMENTS, x);
            GoodnessOfFit measures = GoodnessOfFit.of(fit.distribution(), PlottingPosition.CUNNANE, x);
            rejected[0] += measures.plotCorrelation() < five.plotCorrelation() ? 1 : 0;
            rejected[1] += measures.andersonDarling() > five.andersonDarling() ? 1 : 0;
            rejected[2] += measures.kolmogorovSmirnov() > five.kolmogorovSmirnov() ? 1 : 0;
            if (i < 1000 && Bootstrap.of(99, i).significance(fit, x).value() <= 0.05) {
                significant++;
            }
        }
        double scatter = 4 * Math.sqrt(0.05 * 0.95 * (1.0 / 2000 + 1.0 / 4000));
        assertThat(rejected[0] / 2000.0).isCloseTo(0.05, within(scatter));
        assertThat(rejected[1]).isZero();
        assertThat(rejected[2] / 2000.0).isCloseTo(0.05, within(scatter));
        assertThat(significant / 1000.0).isCloseTo(0.05, within(4 * Math.sqrt(0.05 * 0.95 / 1000)));
    }

    /** The smallest value has F = 0 in the fit by likelihood, so that A2 is always infinite: the distance decides. */
    @Test
    void aFamilyWithAlwaysInfiniteStatisticsIsStillTested() {
        double[] exponential = sample(Exponential.of(10, 5), 40, 2);
        Fit right = Fit.of(DistributionFamily.EXPONENTIAL, FitMethod.MAXIMUM_LIKELIHOOD, exponential);
        assertThat(Bootstrap.of(200, 1).significance(right, exponential).value())
                .isBetween(0.05, 0.99);
        double[] normal = sample(Normal.of(50, 3), 40, 2);
        Fit wrong = Fit.of(DistributionFamily.EXPONENTIAL, FitMethod.MAXIMUM_LIKELIHOOD, normal);
        assertThat(Bootstrap.of(200, 1).significance(wrong, normal).value()).isLessThan(0.02);
    }

    /** Many samples of ten have no maximum of the Pearson III likelihood: they are counted, and too few are refused. */
    @Test
    void failedReplicatesAreCounted() {
        Fit pearson = Fit.from(DistributionFamily.PEARSON_III, FitMethod.MAXIMUM_LIKELIHOOD, 10, 30, 8, 1.2);
        double[] ten = sample(PearsonIII.of(30, 8, 1.2), 10, 4);
        Bootstrap.Significance significance = Bootstrap.of(200, 1).significance(pearson, ten);
        assertThat(significance.failed()).isGreaterThan(20);
        assertThat(significance.replicates() + significance.failed()).isEqualTo(200);
        assertThat(significance)
                .asString()
                .endsWith("(" + significance.replicates() + " replicates, " + significance.failed() + " failed)");
        assertThat(Bootstrap.of(200, 1)
                        .criticalValues(pearson, PlottingPosition.CUNNANE, 0.1)
                        .failed())
                .isEqualTo(significance.failed());
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Bootstrap.of(20, 1).significance(pearson, ten))
                .withMessageStartingWith("number of replicates that could be fitted must be at least 20, was ");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Bootstrap.of(20, 1).significance(pearson, SAMPLE))
                .withMessage("sample must have the 10 values of the fit, had 50");
    }

    @Test
    void criticalValuesGrowWorseAsTheProbabilityFalls() {
        List<GoodnessOfFit> critical = Bootstrap.of(400, 3)
                .criticalValues(fit, PlottingPosition.GRINGORTEN, 0.5, 0.1, 0.02)
                .values();
        for (int i = 1; i < 3; i++) {
            assertThat(critical.get(i).plotCorrelation())
                    .isLessThan(critical.get(i - 1).plotCorrelation());
            assertThat(critical.get(i).andersonDarling())
                    .isGreaterThan(critical.get(i - 1).andersonDarling());
            assertThat(critical.get(i).kolmogorovSmirnov())
                    .isGreaterThan(critical.get(i - 1).kolmogorovSmirnov());
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Bootstrap.of(20, 1).criticalValues(fit, PlottingPosition.HAZEN, 0))
                .withMessage("significance must be inside (0, 1), was 0");
    }

    /** Only the correlation depends on the position; the samples are the same. */
    @Test
    void severalPositionsHaveTheCriticalValuesThatEachHasAlone() {
        Bootstrap bootstrap = Bootstrap.of(200, 5);
        List<PlottingPosition> positions = List.of(PlottingPosition.HAZEN, PlottingPosition.FILLIBEN);
        List<Bootstrap.CriticalValues> together = bootstrap.criticalValues(fit, positions, 0.1, 0.05);
        assertThat(together)
                .containsExactly(
                        bootstrap.criticalValues(fit, PlottingPosition.HAZEN, 0.1, 0.05),
                        bootstrap.criticalValues(fit, PlottingPosition.FILLIBEN, 0.1, 0.05));
        assertThat(together.get(0)).isNotEqualTo(together.get(1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> bootstrap.criticalValues(fit, List.of(), 0.1))
                .withMessage("number of positions must be at least 1, was 0");
    }

    @Test
    void refusesBadInput() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Bootstrap.of(19, 1))
                .withMessage("replicates must be in [20, 1000000], was 19");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Bootstrap.of(Integer.MAX_VALUE, 1))
                .withMessage("replicates must be in [20, 1000000], was 2147483647");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Bootstrap.of(20, 1).withConfidence(1))
                .withMessage("confidence must be in [0.5, 0.999], was 1");
    }

    private static double[] sample(Distribution distribution, int size, long seed) {
        Random random = new Random(seed);
        double[] sample = new double[size];
        for (int i = 0; i < size; i++) {
            sample[i] = distribution.quantile(random.nextDouble(1e-12, 1));
        }
        return sample;
    }
}
