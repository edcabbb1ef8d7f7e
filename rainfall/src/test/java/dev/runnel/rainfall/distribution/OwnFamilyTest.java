package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** A distribution that the library does not know: Rayleigh's, F = 1 - exp(-x^2/(2 sigma^2)). */
class OwnFamilyTest {
    private static final DistributionFamily RAYLEIGH = DistributionFamily.of(
                    "RAYLEIGH", p -> new Rayleigh(p[0]), Parameter.scale("sigma"))
            .withLMoments(m -> new Rayleigh(m.lambda1() / Math.sqrt(Math.PI / 2)))
            .withMoments(m -> new Rayleigh(m.mean() / Math.sqrt(Math.PI / 2)))
            .withLikelihood();

    private record Rayleigh(double sigma) implements Distribution {
        @Override
        public double cdf(double x) {
            return x <= 0 ? 0 : -Math.expm1(-x * x / (2 * sigma * sigma));
        }

        @Override
        public double quantile(double probability) {
            return sigma * Math.sqrt(-2 * Math.log1p(-probability));
        }

        @Override
        public double logDensity(double x) {
            return x <= 0 ? Double.NEGATIVE_INFINITY : Math.log(x / (sigma * sigma)) - x * x / (2 * sigma * sigma);
        }

        @Override
        public Map<String, Double> parameters() {
            return Map.of("sigma", sigma);
        }
    }

    /** Mean sigma sqrt(pi/2), variance (2 - pi/2) sigma^2, L-scale sigma (sqrt(pi/2) - sqrt(pi)/2): closed forms. */
    @Test
    void whatIsNotGivenIsIntegrated() {
        Rayleigh three = new Rayleigh(3);
        assertThat(three.mean()).isCloseTo(3 * Math.sqrt(Math.PI / 2), within(1e-9));
        assertThat(three.variance()).isCloseTo(9 * (2 - Math.PI / 2), within(1e-9));
        assertThat(three.lMoments().lambda2())
                .isCloseTo(3 * (Math.sqrt(Math.PI / 2) - Math.sqrt(Math.PI) / 2), within(1e-9));
        // A Weibull distribution of exponent 2: by the L-moments of its powers of 2, 3 and 4 to -1/2.
        double two = 1 - Math.sqrt(0.5);
        double third = 1 - Math.sqrt(1 / 3.0);
        assertThat(three.lMoments().tau3()).isCloseTo(3 - 2 * third / two, within(1e-9));
        assertThat(three.lMoments().tau4()).isCloseTo(6 + (5 * 0.5 - 10 * third) / two, within(1e-9));
        assertThat(three.exceedance(4)).isCloseTo(Math.exp(-16.0 / 18), within(1e-15));
        assertThat(three.lowerBound()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(three.upperBound()).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(three.returnLevel(100)).isCloseTo(3 * Math.sqrt(2 * Math.log(100)), within(1e-12));
    }

    /** The maximum of the likelihood is sigma^2 = mean square/2, its standard error sigma/sqrt(4 n). */
    @Test
    void isFittedByEveryMethodAndResampled() {
        double[] sample = new Rayleigh(3).sample(400, 7);
        double squares = 0;
        for (double x : sample) {
            squares += x * x;
        }
        double sigma = Math.sqrt(squares / 800);
        LikelihoodFit likely = LikelihoodFit.of(RAYLEIGH, sample);
        assertThat(likely.distribution().parameters())
                .hasEntrySatisfying("sigma", value -> assertThat(value).isCloseTo(sigma, within(1e-7)));
        assertThat(likely.standardErrors())
                .hasEntrySatisfying(
                        "sigma", value -> assertThat(value).isCloseTo(sigma / Math.sqrt(1600), within(1e-5)));
        for (FitMethod method : FitMethod.values()) {
            Fit fit = Fit.of(RAYLEIGH, method, sample);
            assertThat(fit.returnLevel(50)).isCloseTo(new Rayleigh(3).returnLevel(50), within(0.5));
            Bootstrap.Interval interval = Bootstrap.of(100, 1).returnLevel(fit, sample, 50);
            assertThat(interval.lower()).isLessThan(fit.returnLevel(50));
            assertThat(interval.upper()).isGreaterThan(fit.returnLevel(50));
            assertThat(interval.failed()).isZero();
        }
    }

    @Test
    void refusesWhatItHasNot() {
        DistributionFamily bare = DistributionFamily.of("BARE", p -> new Rayleigh(p[0]), Parameter.scale("sigma"));
        for (FitMethod method : FitMethod.values()) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Fit.of(bare, method, 1, 2, 3, 4))
                    .withMessage("family must not be BARE for a fit by " + method.toText());
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> bare.with(1, 2))
                .withMessage("values must be those of [sigma], had 2 of them");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DistributionFamily.of("NONE", p -> new Rayleigh(1)))
                .withMessage("parameters must be one or more with different names, were []");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DistributionFamily.named("Rayleigh"))
                .withMessageStartingWith("name must be one of [EXPONENTIAL, GUMBEL, ");
        assertThat(DistributionFamily.named("log-Pearson III")).isSameAs(DistributionFamily.LOG_PEARSON_III);
    }

    /** A mistake in a fit is a mistake, and is not counted as a replicate that could not be fitted. */
    @Test
    void aMistakeIsNotTakenForNoFit() {
        DistributionFamily faulty = DistributionFamily.of("FAULTY", p -> new Rayleigh(p[0]), Parameter.scale("sigma"))
                .withLMoments(m -> {
                    throw new IllegalArgumentException("a mistake");
                });
        Fit fit = Fit.from(faulty, FitMethod.L_MOMENTS, 20, 3);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Bootstrap.of(50, 1).returnLevel(fit, new double[20], 10))
                .withMessageContaining("a mistake");
        DistributionFamily never = DistributionFamily.of("NEVER", p -> new Rayleigh(p[0]), Parameter.scale("sigma"))
                .withLMoments(m -> {
                    throw new NoFitException("none");
                });
        assertThatExceptionOfType(NoFitException.class)
                .isThrownBy(() -> Fit.of(never, FitMethod.L_MOMENTS, 1, 2, 3, 4));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Bootstrap.of(50, 1)
                        .returnLevel(Fit.from(never, FitMethod.L_MOMENTS, 20, 3), new double[20], 10))
                .withMessage("sample must allow at least 20 replicates to be fitted, 0 were");
    }

    /** Of a Gumbel distribution a negative size of the sample, or a distribution of another family, cannot be stated. */
    @Test
    void aFitFromElsewhereIsChecked() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.from(DistributionFamily.GUMBEL, FitMethod.L_MOMENTS, -3, 1, 1))
                .withMessage("sample must have more values than GUMBEL has parameters, 2, had -3");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.from(DistributionFamily.GUMBEL, FitMethod.L_MOMENTS, 30, 1, 1, 1))
                .withMessage("values must be those of [xi, alpha], had 3 of them");
    }
}
