package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class QuantileIntegralTest {
    /** Of a Gumbel distribution ln 2, ln(9/8)/ln 2 and (16 ln 2 - 10 ln 3)/ln 2, wherever it lies: no digits are lost to the place. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1, -1000, 1e6})
    void lMomentsOfADistributionFarFromZero(double location) {
        LMoments moments = QuantileIntegral.lMoments(Gumbel.of(location, 1));
        double two = Math.log(2);
        assertThat(moments.lambda2()).isCloseTo(two, within(1e-11));
        assertThat(moments.tau3()).isCloseTo(Math.log(9.0 / 8) / two, within(2e-11));
        assertThat(moments.tau4()).isCloseTo((16 * two - 10 * Math.log(3)) / two, within(1e-11));
    }
}
