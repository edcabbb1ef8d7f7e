package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FitTest {
    private static final double[] SAMPLE = sample(Gev.of(30, 8, -0.1), 60);

    @ParameterizedTest
    @EnumSource(
            value = DistributionFamily.class,
            names = {"GUMBEL", "GEV", "GENERALIZED_LOGISTIC", "GENERALIZED_NORMAL", "NORMAL", "LOG_NORMAL"})
    void noNeighbourHasAGreaterLikelihood(DistributionFamily family) {
        LikelihoodFit fit = LikelihoodFit.of(family, SAMPLE);
        double[] p = fit.distribution().parameters().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        for (int i = 0; i < p.length; i++) {
            for (double move : new double[] {-1e-3, 1e-3}) {
                double[] near = p.clone();
                near[i] += move;
                assertThat(made(family, near).logLikelihood(SAMPLE)).isLessThan(fit.logLikelihood());
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
        GeneralizedPareto fitted =
                (GeneralizedPareto) LikelihoodFit.ofPeaks(10, peaks).distribution();
        assertThat(fitted.scale).isCloseTo(4, within(0.3));
        assertThat(fitted.shape).isCloseTo(0.1, within(0.06));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LikelihoodFit.ofPeaks(10, 11, 10, 12, 13))
                .withMessage("peaks must be above threshold 10.0, was 10.0");
    }

    @Test
    void refusesWhatCannotBeFitted() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.of(DistributionFamily.KAPPA, FitMethod.L_MOMENTS, 1, 2, 3, 4))
                .withMessage("sample must have more values than KAPPA has parameters, 4, had 4");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.of(DistributionFamily.KAPPA, FitMethod.MOMENTS, SAMPLE))
                .withMessageStartingWith("family must be EXPONENTIAL, GUMBEL");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.of(DistributionFamily.PEARSON_III, FitMethod.MAXIMUM_LIKELIHOOD, SAMPLE))
                .withMessageStartingWith("family must be GUMBEL, GEV");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.of(DistributionFamily.LOG_NORMAL, FitMethod.L_MOMENTS, 1, 2, 0, 4))
                .withMessage("sample[2] must be greater than 0 and finite, was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fit.of(DistributionFamily.GUMBEL, FitMethod.MOMENTS, 5, 5, 5, 5))
                .withMessage("sample must not be all equal, was 4 times 5");
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
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PlottingPosition.HAZEN.nonExceedance(0, 9))
                .withMessage("rank must be in [1, 9], was 0");
    }

    private static Distribution made(DistributionFamily family, double[] p) {
        return switch (family) {
            case GUMBEL -> Gumbel.of(p[0], p[1]);
            case GEV -> Gev.of(p[0], p[1], p[2]);
            case GENERALIZED_LOGISTIC -> GeneralizedLogistic.of(p[0], p[1], p[2]);
            case GENERALIZED_NORMAL -> GeneralizedNormal.of(p[0], p[1], p[2]);
            case NORMAL -> Normal.of(p[0], p[1]);
            default -> LogNormal.of(p[0], p[1]);
        };
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
