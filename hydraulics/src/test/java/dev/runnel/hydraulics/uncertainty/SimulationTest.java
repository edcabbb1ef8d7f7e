package dev.runnel.hydraulics.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Handfuls of trials, whose figures can be counted off. */
class SimulationTest {
    @Test
    void placesAreCountedInOrder() {
        Simulation five = Simulation.of(new double[] {5, 1, 4, 2, 3});
        assertThat(five.trials()).isEqualTo(5);
        assertThat(five.mean()).isEqualTo(3);
        assertThat(five.standardUncertainty()).isCloseTo(Math.sqrt(2.5), within(1e-15));
        assertThat(five.quantile(0)).isEqualTo(1);
        assertThat(five.quantile(0.5)).isEqualTo(3);
        assertThat(five.quantile(1)).isEqualTo(5);
        assertThat(five.interval(0.5)).containsExactly(2, 4);
        assertThat(five).hasToString("Simulation[3, u 1.6, 95 % 1 to 5, 5 trials]");
        assertThatThrownBy(() -> five.quantile(1.01)).hasMessage("probability must be in [0, 1], was 1.01");
        assertThatThrownBy(() -> five.quantile(-0.01)).hasMessage("probability must be in [0, 1], was -0.01");
        for (double wrong : new double[] {0, 1, Double.NaN}) {
            assertThatThrownBy(() -> five.interval(wrong))
                    .hasMessageStartingWith("probability must be greater than 0 and less than 1, was ");
            assertThatThrownBy(() -> five.shortestInterval(wrong))
                    .hasMessageStartingWith("probability must be greater than 0 and less than 1, was ");
        }
    }

    /** Wherever the trials crowd, at the ends too; of two as short the lower one. */
    @Test
    void theShortestInterval() {
        assertThat(Simulation.of(new double[] {0, 1, 1.1, 1.2, 5}).shortestInterval(0.4))
                .containsExactly(1, 1.2);
        assertThat(Simulation.of(new double[] {0, 5, 6}).shortestInterval(0.4)).containsExactly(5, 6);
        assertThat(Simulation.of(new double[] {1, 2, 3}).shortestInterval(0.4)).containsExactly(1, 2);
        assertThat(Simulation.of(new double[] {1, 2, 3}).shortestInterval(0.99)).containsExactly(1, 3);
    }

    /** JCGM 101, 8.2: ends of both ways and how far they may differ. */
    @Test
    void validationComparesTheEnds() {
        Propagation law = new Propagation(10, 1, Double.POSITIVE_INFINITY, List.of());
        Validation high = Validation.of(law, Simulation.of(new double[] {8, 10, 12.1}), 2);
        assertThat(high.low()).isCloseTo(0.040036, within(1e-6));
        assertThat(high.high()).isCloseTo(0.140036, within(1e-6));
        assertThat(high.tolerance()).isCloseTo(0.05, within(1e-15));
        assertThat(high.isValid()).isFalse();
        assertThat(Validation.of(law, Simulation.of(new double[] {8, 10, 12.1}), 1)
                        .isValid())
                .isTrue();
        Validation low = Validation.of(law, Simulation.of(new double[] {7, 10, 12}), 2);
        assertThat(low.high()).isLessThan(0.05);
        assertThat(low.isValid()).isFalse();
        assertThat(low).hasToString("Validation[NOT valid: ends differ by 1.04 and 0.04, allowed 0.05]");
        assertThat(new Validation(law, high.simulation(), 0.05, 0.05, 0.05).isValid())
                .isTrue();
    }

    /** JCGM 101, 7.9.4: at least 10 000 trials, and at least 100/(1 − p). */
    @Test
    void sizesOfBlocks() {
        assertThat(new Stabilisation(0.95, 1).blockSize()).isEqualTo(10_000);
        assertThat(new Stabilisation(0.995, 1).blockSize()).isEqualTo(20_000);
        assertThat(new Stabilisation(0.998, 1).blockSize()).isEqualTo(50_000);
    }

    /** Means 2 and 6, deviations 1 and 2, ends 1 to 3 and 4 to 8: twice the deviation of an average of two is their distance. */
    @Test
    void errorsOfTheAveragesOfBlocks() {
        Stabilisation two = blocks(new double[] {1, 2, 3}, new double[] {4, 6, 8});
        StabilisedSimulation result = two.result();
        assertThat(result.meanError()).isCloseTo(4, within(1e-14));
        assertThat(result.uncertaintyError()).isCloseTo(1, within(1e-14));
        assertThat(result.lowError()).isCloseTo(3, within(1e-14));
        assertThat(result.highError()).isCloseTo(5, within(1e-14));
        assertThat(result.simulation().mean()).isEqualTo(4);
        assertThat(result.simulation().standardUncertainty()).isCloseTo(Math.sqrt(34.0 / 5), within(1e-14));
        assertThat(result.tolerance()).isEqualTo(0.5);
        assertThat(two.isStable()).isFalse();
        assertThat(blocks(new double[] {1, 2, 3}).isStable()).isFalse();
        assertThat(blocks(new double[] {1, 2, 3}, new double[] {1, 2, 3}).isStable())
                .isTrue();
    }

    /** √120.8 is above 10 and √88.2 below: deviations of all trials, put together from those within and between blocks. */
    @Test
    void theDeviationOfAllTrialsDecidesTheTolerance() {
        assertThat(blocks(new double[] {-1, 0, 1}, new double[] {19, 20, 21})
                        .result()
                        .tolerance())
                .isEqualTo(5);
        double[] wide = {-10.5, 0, 10.5};
        assertThat(blocks(wide, wide.clone()).result().tolerance()).isEqualTo(0.5);
    }

    @Test
    void eachErrorMustBeSmallEnough() {
        Simulation any = Simulation.of(new double[] {1, 2, 3});
        assertThat(new StabilisedSimulation(any, 0.95, 2, 0.5, 0.5, 0.5, 0.5, 0.5).isStable())
                .isTrue();
        for (int wrong = 0; wrong < 4; wrong++) {
            double[] errors = {0.5, 0.5, 0.5, 0.5};
            errors[wrong] = 0.51;
            assertThat(new StabilisedSimulation(any, 0.95, 2, 0.5, errors[0], errors[1], errors[2], errors[3])
                            .isStable())
                    .isFalse();
        }
    }

    private static Stabilisation blocks(double[]... trials) {
        Stabilisation stabilisation = new Stabilisation(0.95, 1);
        for (double[] each : trials) {
            stabilisation.add(each);
        }
        return stabilisation;
    }
}
