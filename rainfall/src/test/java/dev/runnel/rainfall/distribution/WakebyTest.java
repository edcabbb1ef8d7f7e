package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WakebyTest {
    private static final Wakeby WAKEBY = Wakeby.of(2, 30, 7, 4, 0.15);

    @Test
    void probabilityIsTheInverseOfTheQuantile() {
        for (double p : new double[] {1e-6, 1e-4, 0.03, 0.4, 0.8, 0.999}) {
            assertThat(WAKEBY.cdf(WAKEBY.quantile(p)) / p).isCloseTo(1, within(1e-9));
            assertThat(WAKEBY.exceedance(WAKEBY.quantileOfExceedance(p)) / p).isCloseTo(1, within(1e-12));
        }
        double h = 1e-5;
        assertThat(WAKEBY.density(9)).isCloseTo((WAKEBY.cdf(9 + h) - WAKEBY.cdf(9 - h)) / (2 * h), within(1e-8));
        assertThat(WAKEBY.cdf(2)).isZero();
        assertThat(WAKEBY.logDensity(1.9)).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(WAKEBY.upperBound()).isInfinite();
    }

    /** A heavy tail far out, where Newton's method alone would creep: x = 2 (exp(0.4 s) - 1)/0.4 and the like, solved by hand. */
    @Test
    void probabilityIsFoundFarOut() {
        for (double delta : new double[] {0.1, 0.4, 0.95, 4}) {
            Wakeby heavy = Wakeby.of(5, 0, 0, 2, delta);
            for (double s : new double[] {1e-9, 0.3, 3, 19, 120, 170}) {
                double x = 5 + 2 * Math.expm1(delta * s) / delta;
                if (Double.isFinite(x)) {
                    double solved = Math.log1p((x - 5) * delta / 2) / delta;
                    assertThat(-Math.log(heavy.exceedance(x)) / solved).isCloseTo(1, within(1e-12 + 1e-15 / s));
                }
            }
        }
    }

    /** alpha = 0: a generalised Pareto distribution of shape -delta. */
    @Test
    void theGeneralisedParetoIsInIt() {
        Wakeby wakeby = Wakeby.of(10, 0, 0, 5, -0.2);
        GeneralizedPareto pareto = GeneralizedPareto.of(10, 5, 0.2);
        assertThat(wakeby.quantile(0.7)).isCloseTo(pareto.quantile(0.7), within(1e-13));
        assertThat(wakeby.upperBound()).isEqualTo(pareto.upperBound());
        assertThat(wakeby.exceedance(40)).isZero();
        assertThat(wakeby.variance()).isCloseTo(pareto.variance(), within(1e-12));
        assertThat(wakeby.lMoments().tau4()).isCloseTo(pareto.lMoments().tau4(), within(1e-14));
    }

    /** L-moments by their definition, integrated over the quantiles, give the parameters back. */
    @Test
    void theFitGivesBackItsParameters() {
        double[] lambda = new double[5];
        double step = 1.0 / 64;
        for (double z = -36; z <= 36; z += step) {
            double f = StandardNormal.cdf(z);
            double x = z < 0 ? WAKEBY.quantile(f) : WAKEBY.quantileOfExceedance(StandardNormal.exceedance(z));
            double weight = Math.exp(StandardNormal.logDensity(z)) * step;
            lambda[0] += weight * x;
            lambda[1] += weight * x * (2 * f - 1);
            lambda[2] += weight * x * (6 * f * f - 6 * f + 1);
            lambda[3] += weight * x * (20 * f * f * f - 30 * f * f + 12 * f - 1);
            lambda[4] += weight * x * (70 * f * f * f * f - 140 * f * f * f + 90 * f * f - 20 * f + 1);
        }
        assertThat(WAKEBY.lMoments().lambda1()).isCloseTo(lambda[0], within(1e-10));
        assertThat(WAKEBY.lMoments().lambda2()).isCloseTo(lambda[1], within(1e-10));
        assertThat(WAKEBY.lMoments().tau3()).isCloseTo(lambda[2] / lambda[1], within(1e-10));
        assertThat(WAKEBY.lMoments().tau4()).isCloseTo(lambda[3] / lambda[1], within(1e-10));
        double[] got = Wakeby.ofLMoments(lambda).parameters().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        assertThat(got).containsExactly(new double[] {2, 30, 7, 4, 0.15}, within(1e-7));
    }

    /** Integrals of the quantile over the probability, at points spaced evenly in the standard normal variate (scipy 1.17). */
    @ParameterizedTest
    @CsvSource({
        "30, 7, 4, 0.15, 10.45588235294, 37.06974982762",
        "5, 0, 4, 0.1, 11.44444444444, 99.07407407407",
        "5, 0.5, 3, -0.25, 7.733333333333, 18.53841269841"
    })
    void meanAndVariance(double alpha, double beta, double gamma, double delta, double mean, double variance) {
        Wakeby wakeby = Wakeby.of(2, alpha, beta, gamma, delta);
        assertThat(wakeby.mean()).isCloseTo(mean, within(1e-10));
        assertThat(wakeby.variance()).isCloseTo(variance, within(1e-9));
    }

    /** A tail counts only where its term is there: of order 1 for the mean, of 1/2 for the variance. */
    @Test
    void heavyTailsHaveNoMeanOrVariance() {
        assertThat(Wakeby.of(2, 5, 1, 3, 1).mean()).isInfinite();
        assertThat(Wakeby.of(2, 5, 1, 3, 0.99).mean()).isCloseTo(2 + 2.5 + 300, within(1e-9));
        assertThat(Wakeby.of(2, 5, 1, 0, 1).mean()).isEqualTo(4.5);
        assertThat(Wakeby.of(2, 5, -1, 0, 0).mean()).isInfinite();
        assertThat(Wakeby.of(2, 0, -1, 3, 0.5).mean()).isEqualTo(8);
        assertThat(Wakeby.of(2, 5, 1, 3, 0.5).variance()).isInfinite();
        assertThat(Wakeby.of(2, 5, 1, 0, 0.5).variance()).isCloseTo(25 / 12.0, within(1e-12));
        assertThat(Wakeby.of(2, 5, -0.5, 0, 0).variance()).isInfinite();
        assertThat(Wakeby.of(2, 0, -0.5, 3, 0).variance()).isCloseTo(9, within(1e-12));
        assertThat(Wakeby.of(2, 0, 0.5, 3, -0.5).variance()).isCloseTo(4 / 2.0, within(1e-12));
        // x = 2 + 5 (1 - (1 - F)): uniform, whatever the exponent of the term that is not there.
        LMoments uniform = Wakeby.of(2, 5, 1, 0, 3).lMoments();
        assertThat(uniform.lambda1()).isEqualTo(4.5);
        assertThat(uniform.lambda2()).isCloseTo(5 / 6.0, within(1e-15));
        assertThat(uniform.tau3()).isZero();
        for (Wakeby heavy : new Wakeby[] {Wakeby.of(2, 5, 1, 3, 1), Wakeby.of(2, 5, -1, 0, 0.5)}) {
            assertThatIllegalStateException()
                    .isThrownBy(heavy::lMoments)
                    .withMessageStartingWith("L-moments exist for beta above -1 and delta below 1, were ");
        }
    }

    /** L-moments of a sample by their definition: the mean over all subsets of five of their ordered values. */
    @Test
    void theFitOfASampleTakesItsLMoments() {
        int n = 12;
        double[] sample = new double[n];
        for (int i = 0; i < n; i++) {
            // Not in order.
            sample[i * 5 % n] = WAKEBY.quantile((i + 0.35) / n);
        }
        double[] ordered = sample.clone();
        Arrays.sort(ordered);
        double[] lambda = new double[5];
        int subsets = 0;
        for (int mask = 0; mask < 1 << n; mask++) {
            if (Integer.bitCount(mask) == 5) {
                double[] x = new double[5];
                int at = 0;
                for (int i = 0; i < n; i++) {
                    if ((mask >> i & 1) == 1) {
                        x[at++] = ordered[i];
                    }
                }
                subsets++;
                // Of five ordered values: means over their subsets of 1 to 5.
                lambda[0] += (x[0] + x[1] + x[2] + x[3] + x[4]) / 5;
                lambda[1] += (-4 * x[0] - 2 * x[1] + 2 * x[3] + 4 * x[4]) / 20;
                lambda[2] += (6 * x[0] - 3 * x[1] - 6 * x[2] - 3 * x[3] + 6 * x[4]) / 30;
                lambda[3] += (-4 * x[0] + 8 * x[1] - 8 * x[3] + 4 * x[4]) / 20;
                lambda[4] += (x[0] - 4 * x[1] + 6 * x[2] - 4 * x[3] + x[4]) / 5;
            }
        }
        for (int r = 0; r < 5; r++) {
            lambda[r] /= subsets;
        }
        LMoments four = LMoments.ofSample(sample);
        assertThat(four.lambda2()).isCloseTo(lambda[1], within(1e-12));
        assertThat(four.tau3()).isCloseTo(lambda[2] / lambda[1], within(1e-12));
        assertThat(four.tau4()).isCloseTo(lambda[3] / lambda[1], within(1e-12));
        assertThat(Fit.of(DistributionFamily.WAKEBY, FitMethod.L_MOMENTS, sample)
                        .distribution()
                        .parameters()
                        .values()
                        .stream()
                        .mapToDouble(Double::doubleValue)
                        .toArray())
                .containsExactly(
                        Wakeby.ofLMoments(lambda).parameters().values().stream()
                                .mapToDouble(Double::doubleValue)
                                .toArray(),
                        within(1e-6));
    }

    @Test
    void aLargeSampleGivesBackItsQuantiles() {
        double[] sample = WAKEBY.sample(50_000, 4);
        Fit fit = Fit.of(DistributionFamily.WAKEBY, FitMethod.L_MOMENTS, sample);
        assertThat(fit.quantile(0.5)).isCloseTo(WAKEBY.quantile(0.5), within(0.1));
        assertThat(fit.returnLevel(100)).isCloseTo(WAKEBY.returnLevel(100), within(1.0));
    }

    @Test
    void refusesBadInput() {
        assertThat(Wakeby.of(0, -3, 1, 3, 0.1).quantile(0.5)).isPositive();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Wakeby.of(0, 0, 1, 0, 0.1))
                .withMessage("alpha + gamma must be 0 or greater, gamma greater than 0 where it is 0, were 0 and 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Wakeby.of(0, -3, 1, 2.9, 0.1))
                .withMessageEndingWith("were -3 and 2.9");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Wakeby.of(0, 3, -0.5, 2, 0.5))
                .withMessage("beta + delta must be greater than 0, was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Wakeby.ofLMoments(1, 2, 3, 4))
                .withMessage("lambda must be five L-moments, were 4");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Wakeby.of(0, -3, 1, 2, 0.1))
                .withMessageStartingWith("alpha + gamma must be 0 or greater");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Wakeby.of(0, 3, -1, 2, 0.5))
                .withMessage("beta + delta must be greater than 0, was -0.5");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DistributionFamily.WAKEBY.fromLMoments(LMoments.of(10, 2, 0.1, 0.1)))
                .withMessage(
                        "family must not be WAKEBY for a fit by L-moments from four of them; fit the sample itself");
        assertThatExceptionOfType(NoFitException.class)
                .isThrownBy(() -> Wakeby.ofLMoments(10, 2, 1.99, 0.1, 0))
                .withMessageStartingWith("L-moments must be those of a Wakeby distribution");
    }
}
