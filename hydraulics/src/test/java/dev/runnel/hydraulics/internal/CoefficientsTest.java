package dev.runnel.hydraulics.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The tables themselves are read where they are used. */
class CoefficientsTest {
    @Test
    void readsAllNumbersAfterTheFirstEmptyLine() {
        assertThat(Coefficients.read(CoefficientsTest.class, "three.doubles")).containsExactly(1.5, -2.25, 1e-300);
    }

    @Test
    void namesATableThatIsNotThere() {
        assertThatThrownBy(() -> Coefficients.read(CoefficientsTest.class, "none.doubles"))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("no table none.doubles beside dev.runnel.hydraulics.internal.CoefficientsTest");
    }

    /** A number cut short; no empty line, so that all is head; an empty line and nothing after it. */
    @ParameterizedTest
    @ValueSource(strings = {"short.doubles", "headless.doubles", "empty.doubles"})
    void refusesWhatIsNoTable(String name) {
        assertThatThrownBy(() -> Coefficients.read(CoefficientsTest.class, name))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("table " + name + " holds no whole numbers");
    }
}
