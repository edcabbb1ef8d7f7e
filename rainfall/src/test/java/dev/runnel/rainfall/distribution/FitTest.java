package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class FitTest {
    private static final double[] SAMPLE = sample(Gev.of(30, 8, -0.1), 60);

    static List<DistributionFamily> searched() {
        return DistributionFamily.all().stream()
                .filter(family -> !List.of(
                                DistributionFamily.EXPONENTIAL,
                                DistributionFamily.GENERALIZED_PARETO,
                                DistributionFamily.KAPPA,
                                DistributionFamily.WAKEBY)
                        .contains(family))
                .toList();
    }

    static List<DistributionFamily> allButKappa() {
        return DistributionFamily.all().stream()
                .filter(family -> family != DistributionFamily.KAPPA && family != DistributionFamily.WAKEBY)
                .toList();
    }

    @ParameterizedTest
    @MethodSource("searched")
    void noNeighbourHasAGreaterLikelihood(DistributionFamily family) {
        LikelihoodFit fit = LikelihoodFit.of(family, SAMPLE);
        double[] p = fit.distribution().parameters().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        for (int i = 0; i < p.length; i++) {
            for (double move : new double[] {-1e-3, 1e-3}) {
                double[] near = p.clone();
                near[i] += move;
                assertThat(fit.family().with(near).logLikelihood(SAMPLE)).isLessThan(fit.logLikelihood());
            }
        }
        assertThat(fit.standardErrors().values()).hasSize(p.length).allMatch(error -> error > 0);
    }

    @Test
    void aLargeSampleGivesBackItsParameters() {
        double[] large = sample(Gev.of(30, 8, -0.1), 20_000);
        for (FitMethod method : FitMethod.values()) {
            Gev fitted = (Gev) Fit.of(DistributionFamily.GEV, method, large).distribution();
            assertThat(fitted.location).as(method.name()).isCloseTo(30, within(0.3));
            assertThat(fitted.scale).as(method.name()).isCloseTo(8, within(0.3));
            assertThat(fitted.shape).as(method.name()).isCloseTo(-0.1, within(0.03));
        }
    }

    @Test
    void peaksGiveBackScaleAndShape() {
        double[] peaks = sample(GeneralizedPareto.of(10, 4, 0.1), 5_000);
        GeneralizedPareto fitted = (GeneralizedPareto)
                LikelihoodFit.of(GeneralizedPareto.above(10), peaks).distribution();
        assertThat(fitted.scale).isCloseTo(4, within(0.3));
        assertThat(fitted.shape).isCloseTo(0.1, within(0.06));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LikelihoodFit.of(GeneralizedPareto.above(10), 11, 10, 12, 13))
                .withMessage("peaks must be above threshold 10, was 10");
    }

    @Test
    void refusesWhatCannotBeFitted() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.of(DistributionFamily.KAPPA, FitMethod.L_MOMENTS, 1, 2, 3, 4))
                .withMessage("sample must have more values than KAPPA has parameters, 4, had 4");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.of(DistributionFamily.KAPPA, FitMethod.MOMENTS, SAMPLE))
                .withMessage(
                        "family must not be KAPPA for a fit by moments, since the fourth moment of so few values says too"
                                + " little");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.of(DistributionFamily.KAPPA, FitMethod.MAXIMUM_LIKELIHOOD, SAMPLE))
                .withMessageStartingWith("family must not be KAPPA for a fit by maximum likelihood");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.of(DistributionFamily.GENERALIZED_PARETO, FitMethod.MAXIMUM_LIKELIHOOD, SAMPLE))
                .withMessageEndingWith("has no maximum while the bound is unknown; fit peaks above a threshold");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.of(DistributionFamily.LOG_NORMAL, FitMethod.L_MOMENTS, 1, 2, 0, 4))
                .withMessage("sample[2] must be greater than 0 and finite, was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.of(DistributionFamily.GUMBEL, FitMethod.MOMENTS, 5, 5, 5, 5))
                .withMessage("sample must not be all equal, was 4 times 5");
    }

    /** Every family and method on the smallest sample it takes: a usable answer, or a refusal that says why. */
    @ParameterizedTest
    @MethodSource("dev.runnel.rainfall.distribution.DistributionFamily#all")
    void theSmallestSampleIsFittedOrRefused(DistributionFamily family) {
        int least = Math.max(4, family.parameterCount() + 1);
        double[] smallest = Arrays.copyOf(new double[] {21, 30, 18.5, 25, 41, 23, 28}, least);
        for (FitMethod method : FitMethod.values()) {
            try {
                Fit fit = Fit.of(family, method, smallest);
                assertThat(fit.returnLevel(50)).as(family + " " + method).isGreaterThan(fit.returnLevel(2));
            } catch (IllegalArgumentException | NoFitException e) {
                assertThat(e).message().matches("(?s)(family|shape|sample|tau|L-moments).* must .*");
            }
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Fit.of(family, method, Arrays.copyOf(smallest, least - 1)))
                    .withMessageMatching("(sample must have|family must).*");
            double[] equal = new double[10];
            Arrays.fill(equal, 25.4);
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Fit.of(family, method, equal))
                    .withMessageMatching("(sample must not be all equal, was 10 times|family must).*");
        }
    }

    /** Gaps 0.1, 3.9, 0.2: tau4 = 3 (0.1 - 7.8 + 0.2)/(0.3 + 15.6 + 0.6), below what any distribution has. */
    @Test
    void twoPairsOfValuesHaveLMomentsNoDistributionHas() {
        double[] pairs = {5, 5.1, 9, 9.2};
        LMoments m = LMoments.ofSample(pairs);
        assertThat(m.tau4()).isCloseTo(-22.5 / 16.5, within(1e-13));
        assertThat(LMoments.ofSample(1, 1, 2, 2).tau4()).isEqualTo(-1.5);
        Gumbel gumbel = (Gumbel)
                Fit.of(DistributionFamily.GUMBEL, FitMethod.L_MOMENTS, pairs).distribution();
        assertThat(gumbel.scale).isCloseTo(m.lambda2() / Math.log(2), within(1e-14));
        assertThat(gumbel.lMoments().lambda1()).isCloseTo(7.075, within(1e-14));
        assertThat(LikelihoodFit.of(DistributionFamily.GUMBEL, pairs).logLikelihood())
                .isGreaterThan(gumbel.logLikelihood(pairs));
        assertThatExceptionOfType(NoFitException.class)
                .isThrownBy(() -> Fit.of(DistributionFamily.KAPPA, FitMethod.L_MOMENTS, 5, 5.1, 5.15, 9, 9.2))
                .withMessageStartingWith("tau3 and tau4 must be those of a kappa distribution");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LMoments.of(10, 1, 0, -1.6))
                .withMessage("tau4 must be in [-1.5, 1], was -1.6");
    }

    /** All equal but one: L-skewness of 1, which no family with a shape has, and those without do not use. */
    @ParameterizedTest
    @MethodSource("allButKappa")
    void oneValueApartIsFittedByTheFamiliesWithoutAShape(DistributionFamily family) {
        if (family.parameterCount() == 2) {
            assertThat(Fit.of(family, FitMethod.L_MOMENTS, 20, 20, 20, 35).returnLevel(10))
                    .isFinite();
        } else {
            assertThatExceptionOfType(NoFitException.class)
                    .isThrownBy(() -> Fit.of(family, FitMethod.L_MOMENTS, 20, 20, 20, 35))
                    .withMessageMatching(
                            "tau3 must be inside \\(-1, 1\\) for a family with a shape, was (1|0\\.9999.*)");
        }
    }

    /** Of 1000 samples of each size none is refused by a family that needs no fourth moment. */
    @ParameterizedTest
    @MethodSource("allButKappa")
    void everySmallSampleIsFittedByLMoments(DistributionFamily family) {
        Random random = new Random(5);
        Gumbel parent = Gumbel.of(60, 8);
        for (int n = 4; n <= 8; n++) {
            for (int i = 0; i < 1000; i++) {
                double[] x = new double[n];
                for (int j = 0; j < n; j++) {
                    x[j] = parent.quantile(random.nextDouble(1e-12, 1));
                }
                assertThat(Fit.of(family, FitMethod.L_MOMENTS, x).returnLevel(10))
                        .isFinite();
            }
        }
    }

    /** Closed forms: the smallest value and the mean above it. */
    @Test
    void exponentialByLikelihood() {
        LikelihoodFit fit = LikelihoodFit.of(DistributionFamily.EXPONENTIAL, 12, 10, 11, 15);
        assertThat(fit.distribution()).isEqualTo(Exponential.of(10, 2));
        assertThat(fit.standardErrors()).containsEntry("xi", 0.5).containsEntry("alpha", 1.0);
        assertThat(fit.logLikelihood()).isCloseTo(-4 * Math.log(2) - 4, within(1e-14));
        // x = xi + alpha ln T, so its variance is 0.25 + (ln T)^2.
        assertThat(fit.returnLevelStandardError(10)).isCloseTo(Math.hypot(0.5, Math.log(10)), within(1e-8));
    }

    /** The threshold is known, so it adds nothing to the error: x = 10 + alpha ln T if k were 0 and known. */
    @Test
    void theErrorOfPeaksCountsTheEstimatedParametersOnly() {
        LikelihoodFit fit =
                LikelihoodFit.of(GeneralizedPareto.above(10), sample(GeneralizedPareto.of(10, 4, 0.1), 400));
        assertThat(fit.covariance()).hasSize(2);
        double error = fit.quantileStandardError(0.9);
        double scale = fit.standardErrors().getOrDefault("alpha", Double.NaN);
        assertThat(error).isBetween(0.2 * scale, 3 * scale);
    }

    /** Moments of the fitted distribution by the trapezoidal rule on the normal variate are those of the sample. */
    @ParameterizedTest
    @ValueSource(strings = {"GENERALIZED_LOGISTIC", "GENERALIZED_NORMAL", "GENERALIZED_PARETO", "GEV", "PEARSON_III"})
    void aFitByMomentsHasTheMoments(DistributionFamily family) {
        double[] mild = {21, 30, 18.5, 25, 33, 23, 28, 26, 24, 27, 22};
        SampleMoments wanted = SampleMoments.of(mild);
        Distribution fitted = Fit.of(family, FitMethod.MOMENTS, mild).distribution();
        double[] sums = new double[4];
        double step = 1.0 / 256;
        for (double z = -9; z <= 9; z += step) {
            double x = z < 0
                    ? fitted.quantile(StandardNormal.cdf(z))
                    : fitted.quantileOfExceedance(StandardNormal.exceedance(z));
            double weight = Math.exp(StandardNormal.logDensity(z)) * step;
            double deviation = x - wanted.mean();
            for (int r = 0; r < 4; r++) {
                sums[r] += weight * Math.pow(deviation, r);
            }
        }
        assertThat(sums[1]).isCloseTo(0, within(1e-9));
        assertThat(Math.sqrt(sums[2])).isCloseTo(wanted.standardDeviation(), within(1e-8));
        assertThat(sums[3] / Math.pow(sums[2], 1.5)).isCloseTo(wanted.skew(), within(1e-6));
    }

    @Test
    void plottingPositionsAreSymmetricAndRefuseBadRanks() {
        for (PlottingPosition position : PlottingPosition.values()) {
            double[] all = position.nonExceedances(7);
            for (int i = 0; i < 7; i++) {
                assertThat(all[i] + all[6 - i]).isCloseTo(1, within(1e-15));
            }
        }
        assertThat(PlottingPosition.WEIBULL.nonExceedance(3, 9)).isEqualTo(0.3);
        assertThat(PlottingPosition.WEIBULL.nonExceedance(Integer.MAX_VALUE, Integer.MAX_VALUE))
                .isCloseTo(1, within(1e-9))
                .isLessThan(1);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PlottingPosition.HAZEN.nonExceedance(0, 9))
                .withMessage("rank must be in [1, 9], was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PlottingPosition.HAZEN.nonExceedance(1, 0))
                .withMessage("size must be at least 1, was 0");
        for (int size : new int[] {0, -1, Integer.MAX_VALUE}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> PlottingPosition.HAZEN.nonExceedances(size))
                    .withMessage("size must be in [1, 100000000], was " + size);
        }
    }

    private static double[] sample(Distribution distribution, int size) {
        Random random = new Random(42);
        double[] sample = new double[size];
        for (int i = 0; i < size; i++) {
            sample[i] = distribution.quantile(random.nextDouble(1e-12, 1));
        }
        return sample;
    }
}
