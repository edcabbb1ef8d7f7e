package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LikelihoodFitTest {
    private static final Map<String, double[]> SAMPLES = Map.of(
            "skewed", new double[] {21.4, 30.2, 18.8, 25.1, 41.7, 22.9, 28.0, 19.5},
            "even", new double[] {24.0, 33.5, 27.2, 29.9, 36.8, 31.4, 22.6, 35.1, 28.3, 30.7},
            "capped", new double[] {27.7, 32.2, 42.4, 37.9, 22.4, 36.2, 38.3, 29.0, 35.9, 39.1, 42.8, 36.9},
            "crowded",
                    new double[] {36.2, 25.3, 34.7, 33.7, 31.3, 25.0, 23.8, 35.7, 29.1, 19.3, 17.6, 34.7, 34.3, 25.5});

    /** Expected values: simplex searches with SciPy 1.17 from twelve starts, all of which end at the one maximum. */
    @ParameterizedTest
    @CsvSource({
        "skewed, GEV, -25.034499855272458, -0.467136699",
        "skewed, GENERALIZED_NORMAL, -24.63823596759164, -1.137838894",
        "even, GEV, -28.55582475208881, 0.485206063",
        "even, PEARSON_III, -28.799322730054595, -0.534788828",
        "even, GENERALIZED_LOGISTIC, -29.159598223249315, 0.084872261",
        "even, GENERALIZED_NORMAL, -28.82160378249611, 0.124208399",
        "capped, GENERALIZED_LOGISTIC, -37.54586798765516, 0.303634665",
        "capped, GENERALIZED_NORMAL, -37.2678319178584, 0.461130866",
        "crowded, GENERALIZED_LOGISTIC, -43.637758670661746, 0.75816476",
        "crowded, GENERALIZED_NORMAL, -43.19132176664774, 1.018046657"
    })
    void theMaximumOfASmallSample(String sample, DistributionFamily family, double logLikelihood, double shape) {
        LikelihoodFit fit = LikelihoodFit.of(family, sample(sample));
        assertThat(fit.logLikelihood()).isCloseTo(logLikelihood, within(1e-10));
        double[] parameters = fit.distribution().parameters().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        assertThat(parameters[2]).isCloseTo(shape, within(1e-6));
    }

    /** In SciPy, too, all twelve starts end where the density at the bound ceases to be finite. */
    @ParameterizedTest
    @CsvSource({
        "skewed, PEARSON_III",
        "skewed, GENERALIZED_LOGISTIC",
        "capped, GEV",
        "capped, PEARSON_III",
        "crowded, GEV",
        "crowded, PEARSON_III"
    })
    void aSampleWithoutAMaximumInsideIsRefused(String sample, DistributionFamily family) {
        assertThatExceptionOfType(NoFitException.class)
                .isThrownBy(() -> LikelihoodFit.of(family, sample(sample)))
                .withMessageStartingWith("sample must have a likelihood with a maximum inside the range of the shape");
    }

    /** Fifty fits or more of 150 samples, and of each its errors are of the size of the scatter, and no
     * point near it has a greater likelihood. */
    @ParameterizedTest
    @ValueSource(strings = {"GEV", "PEARSON_III", "LOG_PEARSON_III", "GENERALIZED_LOGISTIC", "GENERALIZED_NORMAL"})
    void whatIsReturnedIsAMaximum(DistributionFamily family) {
        Random random = new Random(7000);
        Gev parent = Gev.of(30, 8, -0.1);
        int fitted = 0;
        for (int i = 0; i < 150; i++) {
            double[] x = new double[10 + i % 11];
            for (int j = 0; j < x.length; j++) {
                x[j] = parent.quantile(random.nextDouble(1e-12, 1));
            }
            LikelihoodFit fit;
            try {
                fit = LikelihoodFit.of(family, x);
            } catch (NoFitException refused) {
                assertThat(refused).hasMessageStartingWith("sample must have a likelihood with a maximum");
                continue;
            }
            fitted++;
            double unit = fit.distribution().parameters().getOrDefault("alpha", 1.0);
            assertThat(fit.standardErrors().getOrDefault("xi", unit) / unit).isBetween(0.02, 50.0);
            assertNothingHigherNear(fit, x, random);
        }
        assertThat(fitted).isBetween(50, 150);
    }

    /** Two maxima: the smaller one lies where the L-skewness of the sample points. Found by a grid of shape and location. */
    @Test
    void ofTwoMaximaTheGreater() {
        double[] x = {
            41.430738857499875,
            41.041317676313305,
            50.52151599233384,
            27.588755747742642,
            49.87530215999638,
            54.75612938752541,
            25.92584953001223,
            24.652131775424504
        };
        LikelihoodFit fit = LikelihoodFit.of(DistributionFamily.GENERALIZED_NORMAL, x);
        assertThat(fit.logLikelihood()).isCloseTo(-30.592709445289, within(1e-9));
        assertThat(fit.distribution().parameters().get("k")).isCloseTo(0.4393283848, within(1e-8));
    }

    /** The one maximum lies near the end of the range of the shape, and only a start on that side leads there. */
    @Test
    void aMaximumNearTheEndOfTheRange() {
        double[] x = {
            32.49287152522457,
            34.84926080080114,
            42.2610025256716,
            45.68242044792342,
            21.931888311989955,
            32.54530203252834,
            27.712005569187525,
            31.66009766604716,
            41.13025424876402,
            44.144028223066734
        };
        LikelihoodFit fit = LikelihoodFit.of(DistributionFamily.GEV, x);
        assertThat(fit.distribution().parameters().get("k")).isCloseTo(0.84483, within(1e-5));
    }

    /** Wherever a search begins, parameters are the same to 1e-8 of their size and errors to 1e-4, or it finds a smaller maximum. */
    @ParameterizedTest
    @ValueSource(
            strings = {"GEV", "PEARSON_III", "LOG_PEARSON_III", "GENERALIZED_LOGISTIC", "GENERALIZED_NORMAL", "PEAKS"})
    void theAnswerDoesNotDependOnTheStart(String name) {
        boolean isOfPeaks = name.equals("PEAKS");
        DistributionFamily family = isOfPeaks ? GeneralizedPareto.above(10) : DistributionFamily.named(name);
        Distribution parent = isOfPeaks ? GeneralizedPareto.of(10, 8, -0.1) : Gev.of(30, 8, -0.1);
        Random random = new Random(29);
        int compared = 0;
        for (int i = 0; i < 25; i++) {
            double[] x = new double[6 + i % 9];
            for (int j = 0; j < x.length; j++) {
                x[j] = parent.quantile(random.nextDouble(1e-12, 1));
            }
            LikelihoodFit fit;
            try {
                fit = LikelihoodFit.of(family, x);
            } catch (NoFitException refused) {
                continue;
            }
            double[] at = family.valuesOf(fit.distribution());
            double[] errors = errors(fit);
            double[] units = new double[at.length];
            for (int j = 0; j < at.length; j++) {
                units[j] = family.parameters().get(j).hasUnit() ? scaleOf(family, at) : 1;
            }
            LikelihoodSearch search = new LikelihoodSearch(x, family, units);
            for (int s = 0; s < 6; s++) {
                double[] start = at.clone();
                for (int j = 0; j < start.length; j++) {
                    start[j] += 1.5 * errors[j] * random.nextGaussian();
                }
                Optional<LikelihoodSearch.Maximum> again = search.from(start, Optional.empty());
                if (again.isEmpty()) {
                    continue;
                }
                assertThat(again.get().logLikelihood()).isLessThan(fit.logLikelihood() + 1e-9);
                if (again.get().logLikelihood() > fit.logLikelihood() - 1e-6) {
                    double[] found = family.valuesOf(again.get().distribution());
                    for (int j = 0; j < at.length; j++) {
                        assertThat(found[j]).isCloseTo(at[j], within(1e-8 * units[j]));
                        assertThat(Math.sqrt(again.get().covariance().getEntry(j, j)) / errors[j])
                                .isCloseTo(1, within(1e-4));
                    }
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(15);
    }

    private static double scaleOf(DistributionFamily family, double[] at) {
        double scale = 1;
        for (int i = 0; i < at.length; i++) {
            scale = family.parameters().get(i).isScale() ? at[i] : scale;
        }
        return scale;
    }

    private static double[] errors(LikelihoodFit fit) {
        return fit.standardErrors().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
    }

    private static void assertNothingHigherNear(LikelihoodFit fit, double[] x, Random random) {
        double[] p = fit.distribution().parameters().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        double[] errors = errors(fit);
        for (int k = 0; k < 100; k++) {
            double size = Math.pow(10, -4 + 3.3 * random.nextDouble());
            double[] near = p.clone();
            for (int j = 0; j < near.length; j++) {
                near[j] += size * errors[j] * random.nextGaussian();
            }
            assertThat(fit.family().with(near).logLikelihood(x)).isLessThan(fit.logLikelihood() + 1e-10);
        }
    }

    private static double[] sample(String name) {
        return Objects.requireNonNull(SAMPLES.get(name), name);
    }

    /** x(F) = u + a (1 - y^k) / k with y = -ln F; its slopes by u, a and k are written out here. */
    @Test
    void errorOfAQuantileIsThatOfItsSlopes() {
        LikelihoodFit fit = LikelihoodFit.of(DistributionFamily.GEV, sample("skewed"));
        double[] at = fit.distribution().parameters().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        double a = at[1];
        double k = at[2];
        for (double probability : new double[] {0.2, 0.9, 0.99}) {
            double y = -Math.log(probability);
            double power = Math.pow(y, k);
            double[] slopes = {
                1, (1 - power) / k, -a * (1 - power) / (k * k) - a * power * Math.log(y) / k,
            };
            double variance = 0;
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j < 3; j++) {
                    variance += slopes[i] * fit.covariance().get(i).get(j) * slopes[j];
                }
            }
            assertThat(fit.quantileStandardError(probability)).isCloseTo(Math.sqrt(variance), withinPercentage(1e-4));
        }
        assertThat(fit.returnLevelStandardError(100)).isCloseTo(fit.quantileStandardError(0.99), within(1e-9));
        assertThat(fit.standardErrors().values().stream().toList().get(2))
                .isEqualTo(Math.sqrt(fit.covariance().get(2).get(2)));
    }

    /** Peaks come with a rate of their own, so that years say nothing of them. */
    @Test
    void fitOfPeaksHasNoYears() {
        LikelihoodFit peaks = LikelihoodFit.of(GeneralizedPareto.above(15), sample("skewed"));
        String refusal = "family must be one of annual maxima for a return period in years, was ";
        assertThatIllegalArgumentException()
                .isThrownBy(() -> peaks.returnLevelStandardError(10))
                .withMessageStartingWith(refusal);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> peaks.returnLevelByProfile(10, 0.9))
                .withMessageStartingWith(refusal);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> peaks.returnPeriodByProfile(40, 0.9))
                .withMessageStartingWith(refusal);
        assertThat(peaks.quantileStandardError(0.9)).isPositive();
    }

    @Test
    void itReadsAsWhatWasFittedToHowMany() {
        double[] sample = sample("skewed");
        LikelihoodFit fit = LikelihoodFit.of(DistributionFamily.GEV, sample);
        double logLikelihood = Arrays.stream(sample)
                .map(fit.distribution()::density)
                .map(Math::log)
                .sum();
        assertThat(fit.toString())
                .startsWith(fit.distribution() + " fitted to 8 values by maximum likelihood, ln L "
                        + BigDecimal.valueOf(logLikelihood).round(new MathContext(6)) + ", standard errors xi ");
    }
}
