package dev.runnel.verification.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ToleranceTest {
    @ParameterizedTest
    @CsvSource({
        "0.5 digit, 0.0360, 5.0E-5",
        "0.5 digit, 120, 0.5",
        "1 digit, 1.20E-3, 1.0E-5",
        "0.2 %, -50, 0.1",
        "1e-3 relative, 20, 0.02",
        "0.25, 3, 0.25",
        "0, 3, 0",
        "0.5 digit or 0.1 %, 100.0, 0.1",
        "0.5 digit or 0.1 %, 1.0, 0.05",
    })
    void theLargestTermCounts(String text, String printed, double allowed) {
        assertThat(Tolerance.parse(text).allowed(printed, column -> Double.NaN)).isEqualTo(allowed);
    }

    @Test
    void aColumnCanGiveIt() {
        assertThat(Tolerance.parse("column tol").allowed("3.1", column -> column.equals("tol") ? 0.07 : Double.NaN))
                .isEqualTo(0.07);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "digit", "0.5 digits", "much", "0.5 digit and 1 %", "1 mm"})
    void refusesWhatItDoesNotKnow(String text) {
        assertThatThrownBy(() -> Tolerance.parse(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must be terms such as");
    }

    @ParameterizedTest
    @ValueSource(strings = {"-1 digit", "NaN", "-0.1 %"})
    void refusesNegativeTolerances(String text) {
        assertThatThrownBy(() -> Tolerance.parse(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("tolerance must be 0 or greater");
    }
}
