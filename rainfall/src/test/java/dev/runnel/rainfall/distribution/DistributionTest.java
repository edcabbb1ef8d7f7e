package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DistributionTest {
    @Test
    void aShapeNearZeroJoinsTheLimit() {
        double gumbel = Gumbel.of(30, 8).returnLevel(1000);
        assertThat(Gev.of(30, 8, 1e-12).returnLevel(1000)).isCloseTo(gumbel, within(1e-8));
        assertThat(Gev.of(30, 8, 1e-12).lMoments().lambda1())
                .isCloseTo(Gumbel.of(30, 8).lMoments().lambda1(), within(1e-10));
        assertThat(Gev.of(30, 8, 1e-12).lMoments().tau4())
                .isCloseTo(Gumbel.of(30, 8).lMoments().tau4(), within(1e-10));
    }

    @Test
    void pearsonIsTheNormalWithoutSkew() {
        assertThat(PearsonIII.of(0, 1, 0).quantileOfExceedance(0.01))
                .isEqualTo(Normal.of(0, 1).quantileOfExceedance(0.01));
        assertThat(PearsonIII.of(0, 1, 0).density(0.3))
                .isEqualTo(Normal.of(0, 1).density(0.3));
    }

    /** The skews at which the method changes, for the variate, the density and the L-moments. */
    @ParameterizedTest
    @ValueSource(doubles = {0.02, NearNormalPearson.SMALL_SKEW, 0.2})
    void pearsonDoesNotJumpWhereTheMethodChanges(double skew) {
        PearsonIII below = PearsonIII.of(0, 1, Math.nextDown(skew));
        PearsonIII above = PearsonIII.of(0, 1, Math.nextUp(skew));
        for (double p = 1e-6; p < 1; p = Math.min(p * 3, p + 0.1)) {
            assertThat(above.quantile(p)).isCloseTo(below.quantile(p), within(2e-13));
            double x = above.quantileOfExceedance(p);
            assertThat(above.quantileOfExceedance(p)).isCloseTo(below.quantileOfExceedance(p), within(2e-13));
            assertThat(above.exceedance(x) / below.exceedance(x)).isCloseTo(1, within(1e-13));
            assertThat(above.logDensity(x)).isCloseTo(below.logDensity(x), within(1e-12));
        }
        assertThat(above.lMoments().lambda2()).isCloseTo(below.lMoments().lambda2(), within(1e-13));
        assertThat(above.lMoments().tau3()).isCloseTo(below.lMoments().tau3(), within(1e-13));
        assertThat(above.lMoments().tau4()).isCloseTo(below.lMoments().tau4(), within(1e-13));
    }

    /** A probability near 1 says as much as its double holds, which is more than the other tail's rounding. */
    @Test
    void pearsonSolvesForTheNearerTail() {
        for (double skew : new double[] {0.01, 0.6, 4}) {
            PearsonIII pearson = PearsonIII.of(0, 1, skew);
            double nearOne = 1 - 0x1p-20;
            assertThat(pearson.quantile(nearOne)).isCloseTo(pearson.quantileOfExceedance(0x1p-20), within(1e-15));
        }
    }

    /** Expected values: Gamma functions to 60 digits, with mpmath. */
    @ParameterizedTest
    @CsvSource({
        "-0.3, 13.483552403221149, 2.43404532310337294",
        "-0.019, 1.2576088529035851, 1.31571754599737435",
        "-1e-3, 1.14552602793463617, 1.28423085502769671",
        "-1e-6, 1.13955306602934115, 1.28255150771311066",
        "0, 1.13954709940464866, 1.28254983016186416",
        "1e-9, 1.13954709343803626, 1.28254982848431632",
        "0.0199, 1.02540466768664537, 1.25049710489567138",
        "0.3, -0.0687420994209670608, 0.98917304720894257",
        "1, -2.0, 1.0"
    })
    void momentsOfExtremeValues(double shape, double skew, double deviation) {
        assertThat(PowerMoments.GEV.skew(shape)).isCloseTo(skew, within(1e-12));
        assertThat(PowerMoments.GEV.deviation(shape)).isCloseTo(deviation, within(1e-13));
    }

    /** Expected values: the quantile function to 60 digits, with mpmath; F^h is beyond a double from 1e-257 on. */
    @ParameterizedTest
    @CsvSource({
        "0.5, -1.2, 1e-90, -1.4605934866804362798e+55",
        "0.5, -1.2, 1e-200, -1.4605934866804280766e+121",
        "0.5, -1.2, 1e-260, -1.4605934866804236141e+157",
        "0.5, -1.2, 1e-300, -1.4605934866804205713e+181",
        "0.02, -3, 1e-30, -24259.79967565035105",
        "0.02, -3, 1e-260, -1557821043909628821.8",
        "-0.1, -1.2, 1e-30, -49.979535171401583313"
    })
    void kappaFarDownItsLowerTail(double k, double h, double p, double expected) {
        Kappa kappa = Kappa.of(30, 8, k, h);
        double x = kappa.quantile(p);
        assertThat(x / expected).isCloseTo(1, within(1e-12));
        assertThat(kappa.cdf(expected) / p).isCloseTo(1, within(1e-11));
        assertThat(kappa.logDensity(expected)).isFinite();
    }

    @Test
    void outsideTheBoundsNothingIsLeft() {
        Gev bounded = Gev.of(30, 8, 0.4);
        assertThat(bounded.upperBound()).isEqualTo(50);
        assertThat(bounded.exceedance(50)).isZero();
        assertThat(bounded.exceedance(51)).isZero();
        assertThat(bounded.returnPeriod(51)).isInfinite();
        assertThat(bounded.density(51)).isZero();
        GeneralizedPareto pareto = GeneralizedPareto.of(30, 8, -0.1);
        assertThat(pareto.lowerBound()).isEqualTo(30);
        assertThat(pareto.cdf(29)).isZero();
        assertThat(pareto.density(29)).isZero();
        PearsonIII mirrored = PearsonIII.of(30, 8, -2);
        assertThat(mirrored.upperBound()).isEqualTo(38);
        assertThat(mirrored.exceedance(39)).isZero();
        assertThat(mirrored.cdf(39)).isEqualTo(1);
    }

    @Test
    void refusesBadInput() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Gumbel.of(30, 0))
                .withMessage("scale must be greater than 0 and finite, was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Gev.of(30, 8, Double.NaN))
                .withMessage("shape must be finite, was NaN");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Gumbel.of(30, 8).quantile(1))
                .withMessage("probability must be inside (0, 1), was 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Gumbel.of(30, 8).returnLevel(1))
                .withMessage("years must be greater than 1 and finite among annual maxima, was 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Gumbel.of(30, 8).cdf(Double.NaN))
                .withMessage("x must be finite, was NaN");
        assertThatExceptionOfType(IllegalStateException.class)
                .isThrownBy(() -> Gev.of(30, 8, -1).lMoments())
                .withMessage("L-moments exist for shape above -1, was -1");
    }

    @Test
    void refusesSamplesThatSayNothing() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LMoments.ofSample(1, 2, 3))
                .withMessage("sample must have at least 4 values, had 3");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LMoments.ofSample(2, 2, 2, 2, 2))
                .withMessage("sample must not be all equal, was 5 times 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LMoments.ofSample(1, 2, Double.NaN, 4))
                .withMessage("sample[2] must be finite, was NaN");
    }

    /** The mean of ten times 25.4, as it is summed, is not 25.4, so that their deviation from it is not 0. */
    @Test
    void momentsOfEqualValuesAreRefusedWhateverTheirMean() {
        double[] equal = new double[10];
        Arrays.fill(equal, 25.4);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SampleMoments.of(equal))
                .withMessage("sample must not be all equal, was 10 times 25.4");
    }

    /** Worked by hand: 1, 2, 4, 9 has b0 = 4, b1 = 37/12, b2 = 31/12, b3 = 9/4. */
    @Test
    void lMomentsOfASmallSampleByHand() {
        LMoments m = LMoments.ofSample(9, 2, 1, 4);
        assertThat(m.lambda1()).isCloseTo(4, within(1e-15));
        assertThat(m.lambda2()).isCloseTo(13.0 / 6, within(1e-15));
        assertThat(m.tau3() * m.lambda2()).isCloseTo(1.0, within(1e-14));
        assertThat(m.tau4() * m.lambda2()).isCloseTo(0.5, within(1e-14));
    }
}
