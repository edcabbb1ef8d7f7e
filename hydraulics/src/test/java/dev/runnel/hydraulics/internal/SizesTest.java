package dev.runnel.hydraulics.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class SizesTest {
    @Test
    void lengthsUpToTheirLimits() {
        for (double length : new double[] {1e-6, 0.45, 1e6}) {
            assertThat(Sizes.length("width", length)).isEqualTo(length);
            assertThat(Sizes.lengthOrNone("sill", length)).isEqualTo(length);
        }
        assertThat(Sizes.lengthOrNone("sill", 0)).isZero();
    }

    @Test
    void beyondThemTheyAreNamed() {
        assertThatThrownBy(() -> Sizes.length("width", 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("width must be in [")
                .hasMessageEndingWith(" m, was 0");
        assertThatThrownBy(() -> Sizes.length("width", Math.nextDown(1e-6))).hasMessageContaining("width must be in");
        assertThatThrownBy(() -> Sizes.length("width", Math.nextUp(1e6))).hasMessageContaining("width must be in");
        assertThatThrownBy(() -> Sizes.length("width", Double.NaN)).hasMessageEndingWith("was NaN");
        assertThatThrownBy(() -> Sizes.lengthOrNone("sill", -1e-9)).hasMessageContaining("sill must be in [0, ");
        assertThatThrownBy(() -> Sizes.lengthOrNone("sill", Math.nextUp(1e6))).hasMessageContaining("sill must be in");
        assertThatThrownBy(() -> Sizes.lengthOrNone("sill", Double.NaN)).hasMessageEndingWith("was NaN");
    }
}
