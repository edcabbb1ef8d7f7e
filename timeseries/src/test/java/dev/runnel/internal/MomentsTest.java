package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class MomentsTest {
    /** 2, 4, 4, 4, 5, 5, 7, 9: mean 5, squares 32. */
    @Test
    void byHand() {
        double[] values = {2, 4, 4, 4, 5, 5, 7, 9};
        assertThat(Moments.mean(values)).isEqualTo(5);
        assertThat(Moments.squares(values)).isEqualTo(32);
        assertThat(Moments.variance(values)).isCloseTo(32 / 7.0, within(1e-15));
        assertThat(Moments.deviation(values)).isCloseTo(Math.sqrt(32 / 7.0), within(1e-15));
    }

    @Test
    void levelFarFromZeroCostsNoDigits() {
        assertThat(Moments.variance(1e9 + 1, 1e9 + 2, 1e9 + 3)).isEqualTo(1);
        assertThat(Moments.mean(Double.NaN, 1)).isNaN();
    }
}
