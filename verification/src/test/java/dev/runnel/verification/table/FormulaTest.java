package dev.runnel.verification.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FormulaTest {
    private static final Map<String, Double> CELLS = Map.of("a", 3.0, "b_2", 0.5, "e", 7.0);

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1 + 2 * 3 | 7",
                "(1 + 2) * 3 | 9",
                "8 / 4 / 2 | 1",
                "7 - 4 - 2 | 1",
                "2 ^ 3 ^ 2 | 512",
                "-2 ^ 2 | -4",
                "2 ^ -1 | 0.5",
                "2 * -3 | -6",
                "a * b_2 | 1.5",
                "1.5e-3 * 2E+3 | 3",
                ".5 + 2. | 2.5",
                "sqrt(a + 1) | 2",
                "ln(exp(2)) | 2",
                "tan(atan(0.5)) | 0.5",
                "sin(radians(30)) + cos(radians(60)) | 1",
                "pi | 3.141592653589793",
                "e + 1 | 8",
            })
    void arithmetic(String text, double expected) {
        assertThat(Formula.parse(text).value(CELLS::get))
                .isEqualTo(expected, Offset.offset(1e-15 * Math.abs(expected)));
    }

    @Test
    void knowsItsColumns() {
        assertThat(Formula.parse("a * sqrt(b_2) + pi").names()).containsExactlyInAnyOrder("a", "b_2");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "1 +", "(1", "1 2", "a b", "1.2.3", "a $ b", "* 2", "sqrt 2"})
    void refusesWhatIsNoFormula(String text) {
        assertThatThrownBy(() -> Formula.parse(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must be a formula of columns, numbers")
                .hasMessageContaining("\"" + text + "\" stops at character ");
    }
}
