package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class DistributionTest {
    @Test
    void aShapeNearZeroJoinsTheLimit() {
        double gumbel = Gumbel.of(30, 8).quantileOfReturnPeriod(1000);
        assertThat(Gev.of(30, 8, 1e-12).quantileOfReturnPeriod(1000)).isCloseTo(gumbel, within(1e-8));
        assertThat(Gev.of(30, 8, 1e-12).lMoments().lambda1())
                .isCloseTo(Gumbel.of(30, 8).lMoments().lambda1(), within(1e-10));
        assertThat(Gev.of(30, 8, 1e-12).lMoments().tau4())
                .isCloseTo(Gumbel.of(30, 8).lMoments().tau4(), within(1e-10));
    }

    @Test
    void pearsonJoinsTheNormalAsTheSkewGoes() {
        double below = PearsonIII.of(0, 1, 2.9999e-5).quantileOfExceedance(0.01);
        double above = PearsonIII.of(0, 1, 3.0001e-5).quantileOfExceedance(0.01);
        assertThat(above - below).isCloseTo(0, within(1e-8));
        assertThat(PearsonIII.of(0, 1, 0).quantileOfExceedance(0.01))
                .isEqualTo(Normal.of(0, 1).quantileOfExceedance(0.01));
        assertThat(PearsonIII.of(0, 1, 0).density(0.3))
                .isEqualTo(Normal.of(0, 1).density(0.3));
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
                .withMessage("nonExceedance must be inside (0, 1), was 1.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Gumbel.of(30, 8).quantileOfReturnPeriod(1))
                .withMessage("years must be greater than 1 and finite among annual maxima, was 1.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Gumbel.of(30, 8).cdf(Double.NaN))
                .withMessage("x must be finite, was NaN");
        assertThatExceptionOfType(IllegalStateException.class)
                .isThrownBy(() -> Gev.of(30, 8, -1).lMoments())
                .withMessage("L-moments exist for shape above -1, was -1.0");
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
