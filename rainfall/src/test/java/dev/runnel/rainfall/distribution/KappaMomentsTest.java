package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** L-moments of kappa distributions: of the distributions it holds, by quadrature of its quantiles, and where there are none. */
class KappaMomentsTest {
    private static void assertMoments(
            LMoments m, double lambda1, double lambda2, double tau3, double tau4, double error) {
        assertThat(m.lambda1()).isCloseTo(lambda1, within(error));
        assertThat(m.lambda2()).isCloseTo(lambda2, within(error));
        assertThat(m.tau3()).isCloseTo(tau3, within(error));
        assertThat(m.tau4()).isCloseTo(tau4, within(error));
    }

    /** Without a shape: Gumbel's, the exponential and the logistic distribution. */
    @Test
    void withoutAShape() {
        double two = Math.log(2);
        double three = Math.log(3);
        assertMoments(
                Kappa.of(0, 1, 0, 0).lMoments(),
                0.5772156649015329,
                two,
                2 * three / two - 3,
                16 - 10 * three / two,
                1e-13);
        assertMoments(Kappa.of(0, 1, 0, 1).lMoments(), 1, 0.5, 1.0 / 3, 1.0 / 6, 1e-13);
        assertMoments(Kappa.of(0, 1, 0, -1).lMoments(), 0, 1, 0, 1.0 / 6, 1e-13);
    }

    @ParameterizedTest
    @CsvSource({
        "0, -3",
        "0, -1.7",
        "0, 0.4",
        "0.2, -3",
        "0.2, -4",
        "-0.2, -3",
        "-0.4, -0.6",
        "0.3, 0.05",
        "0.3, 1e-3",
        "-0.1, -0.08",
        "1.4, 0.5",
        "2.6, 0.9",
        "-0.05, 1.8",
        "0.1, 1e-18"
    })
    void byQuadratureOfTheQuantiles(double k, double h) {
        Kappa kappa = Kappa.of(0, 1, k, h);
        LMoments m = QuantileIntegral.lMoments(kappa);
        assertMoments(kappa.lMoments(), m.lambda1(), m.lambda2(), m.tau3(), m.tau4(), 1e-11);
    }

    @Test
    void whereThereAreNone() {
        for (double[] none : new double[][] {{-1, 0.5}, {-1, -0.5}, {0.5, -2}, {2, -0.5}}) {
            assertThatIllegalStateException()
                    .isThrownBy(() -> Kappa.of(0, 1, none[0], none[1]).lMoments())
                    .withMessageStartingWith(
                            "L-moments exist for k above -1 and, if h is negative, k h above -1; k was ");
        }
        assertThat(Kappa.of(0, 1, 0.499, -2).lMoments().lambda2()).isPositive();
        assertThat(Kappa.of(0, 1, -0.999, 0.5).lMoments().lambda2()).isPositive();
    }

    /** A generalised logistic distribution has the largest L-kurtosis, (5 tau3^2 + 1)/6, and is none itself. */
    @Test
    void fits() {
        assertThatExceptionOfType(NoFitException.class)
                .isThrownBy(() -> DistributionFamily.KAPPA.fromLMoments(LMoments.of(10, 2, 0.2, 0.21)))
                .withMessage("tau4 must be below (5 tau3^2 + 1)/6 = 0.2 for a kappa distribution, was 0.21");
        assertThatExceptionOfType(NoFitException.class)
                .isThrownBy(() -> DistributionFamily.KAPPA.fromLMoments(LMoments.of(10, 2, 0, 1.0 / 6)))
                .withMessageStartingWith("tau4 must be below (5 tau3^2 + 1)/6 = 0.166667 for a kappa distribution");
        for (double[] shapes : new double[][] {{0.1, 0.3}, {-0.2, -0.7}, {0.3, 0.95}, {-0.25, 0.2}, {0.25, -0.9}}) {
            Distribution found = DistributionFamily.KAPPA.fromLMoments(
                    Kappa.of(30, 8, shapes[0], shapes[1]).lMoments());
            assertThat(found.parameters().get("k")).isCloseTo(shapes[0], within(1e-8));
            assertThat(found.parameters().get("h")).isCloseTo(shapes[1], within(1e-8));
            assertThat(found.parameters().get("xi")).isCloseTo(30, within(1e-6));
            assertThat(found.parameters().get("alpha")).isCloseTo(8, within(1e-6));
        }
    }
}
