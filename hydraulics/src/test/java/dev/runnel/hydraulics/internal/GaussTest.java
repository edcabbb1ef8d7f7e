package dev.runnel.hydraulics.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class GaussTest {
    /** 48 points integrate a polynomial of degree 95 exactly, and not one of 96. */
    @Test
    void exactUpToItsDegree() {
        assertThat(Gauss.integrate(x -> Math.pow(x, 94), -1, 1)).isCloseTo(2 / 95.0, within(1e-15));
        assertThat(Gauss.integrate(x -> Math.pow(x, 95), 0, 1)).isCloseTo(1 / 96.0, within(1e-15));
    }

    @Test
    void anyInterval() {
        assertThat(Gauss.integrate(Math::exp, 2, 5)).isCloseTo(Math.exp(5) - Math.exp(2), within(2e-13));
        assertThat(Gauss.integrate(Math::exp, 5, 2)).isCloseTo(Math.exp(2) - Math.exp(5), within(2e-13));
        assertThat(Gauss.integrate(x -> 3, -1, 6)).isCloseTo(21, within(1e-13));
        assertThat(Gauss.integrate(Math::exp, 2, 2)).isZero();
    }
}
