package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProfileLikelihoodTest {
    /** Annual maxima of 30 years with two high ones, mm, invented. The upper limits lie far from where the curvature points. */
    private static final double[] THIRTY_YEARS = {
        23.1, 18.4, 44.7, 20.9, 31.2, 26.8, 75.3, 17.2, 35.6, 28.4, 22.7, 40.1, 19.6, 25.5, 33.0, 112.4, 21.4, 29.9,
        38.2, 24.3, 16.8, 52.6, 27.3, 30.4, 20.1, 61.0, 34.2, 18.9, 23.8, 46.5
    };

    /** Expected values: profiles by simplex searches with SciPy from many starts at every level, densities written anew. */
    @ParameterizedTest
    @CsvSource({
        "EXPONENTIAL, 0.033333333333333333, 60.77487046, 97.09759821",
        "EXPONENTIAL, 0.5, 25.76186079, 33.16425281",
        "GUMBEL, 0.033333333333333333, 53.83327286, 76.08178615",
        "GUMBEL, 0.5, 26.98844382, 34.70440241",
        "GEV, 0.033333333333333333, 60.28323970, 238.40062922",
        "GEV, 0.5, 23.97790603, 31.21139476",
        "GENERALIZED_LOGISTIC, 0.033333333333333333, 64.67793852, 250.06347240"
    })
    void theLimitsOfARecordWithTwoHighYears(DistributionFamily family, double exceedance, double lower, double upper) {
        ConfidenceInterval limits = LikelihoodFit.of(family, THIRTY_YEARS).levelByProfile(exceedance, 0.9);
        assertThat(limits.lower() / lower).isCloseTo(1, within(1e-6));
        assertThat(limits.upper() / upper).isCloseTo(1, within(1e-6));
    }

    /** Every record that can be fitted has limits, on both sides of its estimate, whatever the family. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "EXPONENTIAL",
                "GUMBEL",
                "NORMAL",
                "LOG_NORMAL",
                "GEV",
                "GENERALIZED_LOGISTIC",
                "GENERALIZED_NORMAL",
                "LOG_PEARSON_III"
            })
    void aRecordThatCanBeFittedHasLimits(String name) {
        DistributionFamily family = DistributionFamily.named(name);
        Random random = new Random(20);
        int limited = 0;
        for (int record = 0; record < 20; record++) {
            double[] x = random.doubles(30)
                    .map(u -> 20 + 8 * (Math.pow(-Math.log(u), -0.2) - 1) / 0.2)
                    .toArray();
            LikelihoodFit fit;
            try {
                fit = LikelihoodFit.of(family, x);
            } catch (NoFitException noMaximum) {
                continue;
            }
            ConfidenceInterval limits = fit.levelByProfile(1 / 30.0, 0.9);
            assertThat(limits.lower()).isLessThan(limits.estimate());
            assertThat(limits.upper()).isGreaterThan(limits.estimate()).isFinite();
            limited++;
        }
        assertThat(limited).isGreaterThan(15);
    }

    /**
     * At the limits of short samples the greatest likelihood, the level held, lies on the line: looked for over a grid of all
     * shapes and scales, and in its highest cell by golden sections. Limits in the wrong place would have more, or less.
     */
    @ParameterizedTest
    @CsvSource({"GEV, -0.1", "GEV, 0.2", "GENERALIZED_LOGISTIC, -0.1", "GENERALIZED_NORMAL, -0.1"})
    void theLimitsOfAShortSample(DistributionFamily family, double shape) {
        double end = family == DistributionFamily.GENERALIZED_NORMAL ? 2 - 1e-8 : 1 - 1e-8;
        Random random = new Random(17);
        int limits = 0;
        for (int i = 0; i < 8; i++) {
            double[] x =
                    random.doubles(9).map(u -> Gev.of(30, 8, shape).quantile(u)).toArray();
            LikelihoodFit fit;
            try {
                fit = LikelihoodFit.of(family, x);
            } catch (NoFitException noMaximum) {
                continue;
            }
            ConfidenceInterval interval = fit.levelByProfile(1 / 30.0, 0.9);
            double scale = fit.distribution().parameters().getOrDefault("alpha", 1.0);
            for (double limit : new double[] {interval.lower(), interval.upper()}) {
                double greatest = highest(
                        k -> highest(
                                a -> held(family, x, limit, Math.exp(a), k),
                                Math.log(scale) - 4,
                                Math.log(scale) + 5,
                                45),
                        -end,
                        end,
                        60);
                assertThat(greatest - fit.logLikelihood()).isCloseTo(-0.5 * 2.7055434540954, within(5e-5));
                limits++;
            }
        }
        assertThat(limits).isGreaterThan(6);
    }

    private static double held(DistributionFamily family, double[] x, double level, double scale, double shape) {
        double atZero = family.with(0, scale, shape).quantileOfExceedance(1 / 30.0);
        double reached = family.with(level - atZero, scale, shape).logLikelihood(x);
        return Double.isNaN(reached) ? -1e300 : Math.max(-1e300, reached);
    }

    private static double highest(DoubleUnaryOperator f, double from, double to, int cells) {
        int best = 0;
        double highest = Double.NEGATIVE_INFINITY;
        double width = (to - from) / cells;
        for (int i = 0; i <= cells; i++) {
            double value = f.applyAsDouble(from + i * width);
            if (value > highest) {
                highest = value;
                best = i;
            }
        }
        double a = Math.max(from, from + (best - 1) * width);
        double b = Math.min(to, from + (best + 1) * width);
        double golden = (Math.sqrt(5) - 1) / 2;
        for (int i = 0; i < 60; i++) {
            double left = b - golden * (b - a);
            double right = a + golden * (b - a);
            if (f.applyAsDouble(left) > f.applyAsDouble(right)) {
                b = right;
            } else {
                a = left;
            }
        }
        return Math.max(highest, f.applyAsDouble(0.5 * (a + b)));
    }

    private static final double[] EVEN = {24.0, 33.5, 27.2, 29.9, 36.8, 31.4, 22.6, 35.1, 28.3, 30.7};

    /**
     * Of a normal sample the likelihood with a mean held at m is lower by n/2 ln(1 + (m - mean)^2 / s^2), s^2 being the mean square
     * about the mean: it has fallen by half a quantile q of chi-square at m = mean +- s sqrt(exp(q / n) - 1).
     */
    @Test
    void limitsOfAMeanOfANormalSampleHaveAForm() {
        LikelihoodFit fit = LikelihoodFit.of(DistributionFamily.NORMAL, EVEN);
        double mean = Arrays.stream(EVEN).average().orElseThrow();
        double square = Arrays.stream(EVEN).map(x -> (x - mean) * (x - mean)).sum() / EVEN.length;
        // Quantiles of chi-square of one degree of freedom are squares of normal ones: 1.6448536 and 1.9599640.
        double[] normal = {1.6448536269514722, 1.959963984540054};
        double[] confidence = {0.9, 0.95};
        for (int i = 0; i < 2; i++) {
            double away = Math.sqrt(square * Math.expm1(normal[i] * normal[i] / EVEN.length));
            ConfidenceInterval limits = fit.levelByProfile(0.5, confidence[i]);
            assertThat(limits.estimate()).isCloseTo(mean, within(1e-6));
            assertThat(limits.lower()).isCloseTo(mean - away, within(1e-5));
            assertThat(limits.upper()).isCloseTo(mean + away, within(1e-5));
            assertThat(limits.confidence()).isEqualTo(confidence[i]);
        }
    }

    /** A level is the lower limit at the longest return period that it may have, and the upper one at the shortest. */
    @ParameterizedTest
    @ValueSource(strings = {"GUMBEL", "NORMAL", "GEV"})
    void limitsOfAReturnPeriodAreThoseOfTheLevel(DistributionFamily family) {
        LikelihoodFit fit = LikelihoodFit.of(family, EVEN);
        for (double level : new double[] {32, 36.5}) {
            ConfidenceInterval years = fit.returnPeriodByProfile(level, 0.8);
            assertThat(years.estimate()).isCloseTo(1 / fit.distribution().exceedance(level), within(1e-9));
            assertThat(years.lower()).isBetween(1.0, years.estimate());
            assertThat(years.upper()).isGreaterThan(years.estimate());
            assertThat(fit.returnLevelByProfile(years.lower(), 0.8).upper()).isCloseTo(level, within(1e-3));
            if (Double.isFinite(years.upper())) {
                assertThat(fit.returnLevelByProfile(years.upper(), 0.8).lower()).isCloseTo(level, within(1e-3));
            }
        }
        assertThat(fit.returnPeriodByProfile(32, 0.8).upper()).isFinite();
    }

    @Test
    void levelsThatTheFitCannotReachAreRefused() {
        LikelihoodFit fit = LikelihoodFit.of(DistributionFamily.GEV, EVEN);
        double bound = fit.distribution().quantile(1 - 1e-16) + 5;
        assertThatIllegalArgumentException()
                .isThrownBy(() -> fit.returnPeriodByProfileOf(bound, 0.9))
                .withMessageStartingWith("level must be inside the bounds of the fitted distribution, was ");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> fit.levelByProfile(0.5, 1))
                .withMessageContaining("confidence");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> fit.levelByProfile(1, 0.9))
                .withMessageContaining("exceedance");
    }
}
