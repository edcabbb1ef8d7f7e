package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CellTextTest {
    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '|',
            value = {
                "=1+1,'=1+1",
                "+cmd,'+cmd",
                "-5 mm at the sensor,'-5 mm at the sensor",
                "@SUM(A1),'@SUM(A1)",
                "'=1+1,''=1+1",
                "'quoted',|'quoted'|",
                "a=b,a=b",
                "-,'-"
            })
    void aTextThatLooksLikeAFormulaGetsAnApostrophe(String text, String cell) {
        assertThat(CellText.written(text)).isEqualTo(cell);
        assertThat(CellText.read(cell)).isEqualTo(text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"-0.35", "+3", "-1.5E-7", "-Infinity", "0.4", "2026-03-01T00:00:00Z", ""})
    void aNumberStaysAsItIs(String number) {
        assertThat(CellText.written(number)).isEqualTo(number);
        assertThat(CellText.read(number)).isEqualTo(number);
    }
}
