package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Searches for heads and states, on functions whose roots are known. */
class SearchTest {
    private static double squareRoot(double target, double highest) {
        return Inverse.increasing(x -> x * x, highest, "discharge", target, "m3/s");
    }

    @Test
    void increasingFunctionsAreInverted() {
        assertThat(squareRoot(4, 10)).isCloseTo(2, within(1e-15));
        assertThat(squareRoot(1, 10)).isCloseTo(1, within(1e-15));
        assertThat(squareRoot(2, 10)).isCloseTo(Math.sqrt(2), within(1e-15));
        assertThat(squareRoot(0.04, 0.5)).isCloseTo(0.2, within(1e-15));
        assertThat(squareRoot(0.25, 0.5)).isCloseTo(0.5, within(1e-15));
        assertThat(squareRoot(100, 10)).isCloseTo(10, within(1e-14));
        assertThat(squareRoot(1e-58, 10)).isCloseTo(1e-29, within(1e-42));
        assertThatThrownBy(() -> squareRoot(101, 10))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("discharge must be reached at a head of at most 10 m, was 101 m3/s");
        assertThatThrownBy(() -> squareRoot(1e-70, 10))
                .hasMessage("discharge must be reached at a head of at least 1.0E-30 m, was 1.0E-70 m3/s");
    }

    /** From 1 up to the critical state: the root below the highest sixteenth at which there is an excess. */
    @Test
    void theSubcriticalRoot() {
        assertThat(Subcritical.root(x -> x - 3, 1, 9)).isCloseTo(3, within(1e-12));
        // at 9 the excess has gone again, at 8.5 it is there
        assertThat(Subcritical.root(x -> (x - 3) * (8.6 - x), 1, 9)).isCloseTo(3, within(1e-12));
        // there from 1.2 to 1.7: only the lowest sixteenth, at 1.5, has it
        assertThat(Subcritical.root(x -> (x - 1.2) * (1.7 - x), 1, 9)).isCloseTo(1.2, within(1e-12));
        assertThat(Subcritical.root(x -> -x, 1, 9)).isNaN();
        // at the beginning alone: no root above it
        assertThat(Subcritical.root(x -> 1 - x, 1, 9)).isNaN();
    }

    @Test
    void theHighestPossible() {
        double found = Subcritical.highest(1, 10, x -> x <= 4.2);
        assertThat(found).isLessThanOrEqualTo(4.2).isCloseTo(4.2, within(1e-8));
        assertThat(Subcritical.highest(1, 10, x -> true)).isEqualTo(10);
        assertThat(Subcritical.highest(1, 10, x -> false)).isNaN();
        assertThat(Subcritical.highest(1, 10, x -> x <= 1)).isEqualTo(1);
        assertThat(Subcritical.highest(1e-6, 1e4, x -> x < 2e-6)).isCloseTo(2e-6, within(4e-15));
    }
}
