package dev.runnel.verification.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LimitsTest {
    /** With all or none the score interval has a closed form, n / (n + z²). */
    @Test
    void sharesHaveWilsonLimits() {
        double z2 = 1.959963984540054 * 1.959963984540054;

        assertThat(Limits.ofShare(240, 240).lower()).isCloseTo(240 / (240 + z2), within(1e-9));
        assertThat(Limits.ofShare(240, 240).upper()).isCloseTo(1, within(1e-9));
        assertThat(Limits.ofShare(0, 8).upper()).isCloseTo(z2 / (8 + z2), within(1e-9));
        assertThat(Limits.ofShare(0, 0)).isEqualTo(new Limits(0, 1));
    }

    /** Wilson (1927): the limits p solve (p̂ − p)² = z² p (1 − p) / n. */
    @Test
    void wilsonLimitsSolveTheirEquation() {
        double z2 = 1.959963984540054 * 1.959963984540054;
        Limits limits = Limits.ofShare(7, 30);

        for (double p : new double[] {limits.lower(), limits.upper()}) {
            assertThat((7 / 30.0 - p) * (7 / 30.0 - p)).isCloseTo(z2 * p * (1 - p) / 30, within(1e-9));
        }
    }

    /** No event: the upper limit is −ln 0.025; in general the tails of Poisson sums are 2.5 %. */
    @Test
    void ratesHaveExactLimits() {
        assertThat(Limits.ofRate(0, 2).lower()).isZero();
        assertThat(Limits.ofRate(0, 2).upper()).isCloseTo(-Math.log(0.025) / 2, within(1e-8));

        Limits ten = Limits.ofRate(10, 1);
        assertThat(poissonUpTo(9, ten.lower())).isCloseTo(0.975, within(1e-6));
        assertThat(poissonUpTo(10, ten.upper())).isCloseTo(0.025, within(1e-6));
    }

    private static double poissonUpTo(int n, double mean) {
        double term = Math.exp(-mean);
        double sum = term;
        for (int k = 1; k <= n; k++) {
            term *= mean / k;
            sum += term;
        }
        return sum;
    }
}
