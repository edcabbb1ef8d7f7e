package dev.runnel.hydraulics.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** JCGM 101, 7.9. */
class StabilisedSimulationTest {
    private static MeasurementModel of(UncertainInput... inputs) {
        return MeasurementModel.of(x -> Arrays.stream(x).sum(), inputs);
    }

    /** Half a unit of the second digit of u = 6 is 0.05; the exact ends are 3 ± 1.959964 · 6. */
    @Test
    void stopsWhenTheFiguresAreKnown() {
        StabilisedSimulation result = of(UncertainInput.normal("x", 3, 6)).simulatedUntilStable(2, 0.95, 1);
        assertThat(result.isStable()).isTrue();
        assertThat(result.tolerance()).isCloseTo(0.05, within(1e-15));
        assertThat(result.simulation().trials()).isEqualTo(10_000 * result.blocks());
        assertThat(result.simulation().interval(0.95)[0]).isCloseTo(3 - 1.959964 * 6, within(0.075));
        assertThat(result.highError()).isLessThanOrEqualTo(0.05).isPositive();
        assertThat(result.toString()).startsWith("StabilisedSimulation[stable after " + result.blocks() + " blocks, ");
    }

    @Test
    void fewerDigitsNeedFewerBlocksAndTheSeedDecides() {
        MeasurementModel model = of(UncertainInput.rectangular("x", 0, 10), UncertainInput.normal("y", 0, 3));
        StabilisedSimulation rough = model.simulatedUntilStable(1, 0.95, 1);
        StabilisedSimulation fine = model.simulatedUntilStable(2, 0.95, 1);
        assertThat(rough.blocks()).isEqualTo(2).isLessThan(fine.blocks());
        assertThat(model.simulatedUntilStable(2, 0.95, 1)).hasToString(fine.toString());
        assertThat(model.simulatedUntilStable(1, 0.999, 1).simulation().trials())
                .isEqualTo(200_000);
    }

    /** A result without scatter is known at once; one whose tail has no variance never, and says so. */
    @Test
    void saysWhetherItBecameStable() {
        StabilisedSimulation still = of(UncertainInput.normal("x", 3, 0)).simulatedUntilStable(3, 0.95, 1);
        assertThat(still.isStable()).isTrue();
        assertThat(still.simulation().mean()).isEqualTo(3);
        StabilisedSimulation wild =
                of(UncertainInput.normal("x", 0, 1).withDegreesOfFreedom(1)).simulatedUntilStable(3, 0.9999, 1);
        assertThat(wild.isStable()).isFalse();
        assertThat(wild.simulation().trials()).isEqualTo(10_000_000);
        assertThat(wild.toString()).startsWith("StabilisedSimulation[NOT stable after 10 blocks");
    }

    @Test
    void refusesWhatTheStandardDoesNotHave() {
        MeasurementModel model = of(UncertainInput.normal("x", 3, 6));
        assertThatThrownBy(() -> model.simulatedUntilStable(0, 0.95, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("significantDigits must be in [1, 3], was 0");
        assertThatThrownBy(() -> model.simulatedUntilStable(1, Double.NaN, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("probability must be in [0.5, 0.9999], was NaN");
    }
}
