package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class KappaBoundTest {
    /** 20,000 random members: no density is NaN at the lower bound or a step beside it, and no quantile lies below it. */
    @Test
    void nothingBreaksAtTheLowerBound() {
        SplittableRandom random = new SplittableRandom(4);
        for (int i = 0; i < 20_000; i++) {
            double h = random.nextDouble(0.01, 2);
            Kappa kappa =
                    Kappa.of(random.nextDouble(-50, 50), random.nextDouble(0.1, 20), random.nextDouble(-0.9, 1.5), h);
            double bound = kappa.lowerBound();
            assertThat(kappa.density(bound)).isNotNaN().isGreaterThanOrEqualTo(0);
            assertThat(kappa.density(Math.nextUp(bound))).isNotNaN().isGreaterThanOrEqualTo(0);
            assertThat(kappa.density(Math.nextDown(bound))).isNotNaN().isGreaterThanOrEqualTo(0);
            assertThat(kappa.cdf(bound)).isBetween(0.0, 1e-3);
            for (double p : new double[] {1e-300, 1e-20, 1e-9}) {
                assertThat(kappa.quantile(p)).isGreaterThanOrEqualTo(bound).isLessThanOrEqualTo(kappa.upperBound());
            }
        }
        // h = 1 is the generalised Pareto distribution, with the density 1/alpha at its bound.
        assertThat(Kappa.of(10, 4, 0.2, 1).density(10)).isEqualTo(0.25);
    }
}
