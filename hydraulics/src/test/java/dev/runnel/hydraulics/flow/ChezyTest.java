package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ChezyTest {
    /** 50 √(0.36 · 0.0025) = 50 · 0.03. */
    @Test
    void byHand() {
        var law = Chezy.of(50);
        assertThat(law.velocity(0.36, 0.0025)).isCloseTo(1.5, within(1e-15));
        assertThat(law.gradient(1.5, 0.36)).isCloseTo(0.0025, within(1e-17));
        assertThat(law.fittedTo(3, 0.36, 0.0025, 9.81).c()).isCloseTo(100, within(1e-12));
        assertThat(law.velocity(0, 0.01)).isZero();
        assertThat(law).isEqualTo(Chezy.of(50)).hasSameHashCodeAs(Chezy.of(50)).hasToString("Chezy[C = 50]");
    }

    /** 100 ft^(1/2)/s at R = 4 ft and 1/10000 is 2 ft/s. */
    @Test
    void feet() {
        assertThat(Chezy.ofFeet(100).velocity(4 * 0.3048, 1e-4)).isCloseTo(2 * 0.3048, within(1e-15));
    }

    @Test
    void refusesWhatNoWallHas() {
        assertThatThrownBy(() -> Chezy.of(0.013))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("c must be in [0.5, 300] m^(1/2)/s, was 0.013");
        assertThatThrownBy(() -> Chezy.of(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Chezy.ofFeet(1000)).hasMessageContaining("ft^(1/2)/s");
        assertThatThrownBy(() -> Chezy.of(50).velocity(-1, 0.1)).hasMessageContaining("hydraulicRadius");
    }
}
