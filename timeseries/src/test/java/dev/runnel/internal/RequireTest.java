package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RequireTest {
    @Test
    void returnsWhatIsAllowed() {
        assertThat(Require.finite("x", -1, "m")).isEqualTo(-1);
        assertThat(Require.positive("x", Double.MIN_VALUE, "m")).isEqualTo(Double.MIN_VALUE);
        assertThat(Require.nonNegative("x", 0, "m")).isZero();
        assertThat(Require.inRange("x", 2, 1, 2, "m")).isEqualTo(2);
        assertThat(Require.atLeast("n", 1, 1)).isEqualTo(1);
        Require.sameLength("b", 2, 2);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesWhatIsNotPositive(double value) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Require.positive("depth", value, "m"))
                .withMessage("depth must be greater than 0 and finite (m), was " + Text.number(value));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e-300, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesWhatIsNegative(double value) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Require.nonNegative("depth", value, ""))
                .withMessage("depth must be 0 or greater and finite, was " + Text.number(value));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.46, -0.1, Double.NaN})
    void refusesWhatIsOutOfRange(double value) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Require.inRange("depth", value, 0, 0.45, "m"))
                .withMessage("depth must be in [0, 0.45] m, was " + Text.number(value));
    }

    @Test
    void refusesTheRest() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Require.finite("x", Double.NaN, "m"))
                .withMessage("x must be finite (m), was NaN");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Require.atLeast("n", 0, 1))
                .withMessage("n must be at least 1, was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Require.sameLength("b", 2, 3))
                .withMessage("b must have length 2, was 3");
    }
}
