package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class InterpolationTest {
    private static final double[] X = {1, 2, 4};
    private static final double[] Y = {10, 30, 20};

    @Test
    void lineThroughTwoPoints() {
        assertThat(Interpolation.between(2.5, 2, 30, 4, 20)).isCloseTo(27.5, within(1e-14));
        assertThat(Interpolation.between(4, 2, 0.1, 4, 0.3)).isEqualTo(0.3);
        assertThat(Interpolation.between(2, 2, 0.1, 4, 0.3)).isEqualTo(0.1);
    }

    @Test
    void tableIsHeldAtItsEnds() {
        assertThat(Interpolation.held(X, Y, 0)).isEqualTo(10);
        assertThat(Interpolation.held(X, Y, 2)).isEqualTo(30);
        assertThat(Interpolation.held(X, Y, 3)).isCloseTo(25, within(1e-14));
        assertThat(Interpolation.held(X, Y, 5)).isEqualTo(20);
    }

    @Test
    void tableIsProlongedBeyondItsEnds() {
        assertThat(Interpolation.prolonged(X, Y, 0)).isCloseTo(-10, within(1e-14));
        assertThat(Interpolation.prolonged(X, Y, 1)).isEqualTo(10);
        assertThat(Interpolation.prolonged(X, Y, 6)).isCloseTo(10, within(1e-14));
    }

    @Test
    void placeAmongOrderedValuesIsHeldWithinThem() {
        assertThat(Interpolation.ranked(X, 0.25)).isCloseTo(1.25, within(1e-14));
        assertThat(Interpolation.ranked(X, 1)).isEqualTo(2);
        assertThat(Interpolation.ranked(X, 1.5)).isCloseTo(3, within(1e-14));
        assertThat(Interpolation.ranked(X, -1)).isEqualTo(1);
        assertThat(Interpolation.ranked(X, 9)).isEqualTo(4);
        assertThat(Interpolation.ranked(new double[] {7}, 0.4)).isEqualTo(7);
    }
}
