package dev.runnel.hydraulics.internal;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** The tables themselves are read where they are used. */
class CoefficientsTest {
    @Test
    void namesATableThatIsNotThere() {
        assertThatThrownBy(() -> Coefficients.read(CoefficientsTest.class, "none.doubles"))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("no table none.doubles beside dev.runnel.hydraulics.internal.CoefficientsTest");
    }

    @Test
    void refusesWhatIsNoTable() {
        assertThatThrownBy(() -> Coefficients.read(CoefficientsTest.class, "short.doubles"))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("table short.doubles holds no whole numbers");
    }
}
