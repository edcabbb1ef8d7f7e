package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

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

    @Test
    void aLargeSampleGivesBackItsQuantiles() {
        double[] sample = WAKEBY.sample(50_000, 4);
        Fit fit = Fit.of(DistributionFamily.WAKEBY, FitMethod.L_MOMENTS, sample);
        assertThat(fit.quantile(0.5)).isCloseTo(WAKEBY.quantile(0.5), within(0.1));
        assertThat(fit.returnLevel(100)).isCloseTo(WAKEBY.returnLevel(100), within(1.0));
    }

    @Test
    void refusesBadInput() {
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
