package dev.runnel.rainfall.ddf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReturnPeriodTest {
    private static final ReturnPeriodBasis ANNUAL = ReturnPeriodBasis.ANNUAL_MAXIMUM;
    private static final ReturnPeriodBasis PEAKS = ReturnPeriodBasis.PEAKS_OVER_THRESHOLD;

    /** Langbein (1949), table of the paper, figures from memory; each agrees to its last printed digit. */
    @ParameterizedTest
    @CsvSource({
        "0.5, 1.16, 0.005",
        "1, 1.58, 0.005",
        "1.45, 2.00, 0.01",
        "2, 2.54, 0.005",
        "5, 5.52, 0.005",
        "10, 10.5, 0.05",
        "50, 50.5, 0.05",
        "100, 100.5, 0.05"
    })
    void convertsAsLangbein(double peaks, double annual, double tolerance) {
        assertThat(PEAKS.convert(peaks, ANNUAL)).isCloseTo(annual, within(tolerance));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.2, 1, 3.7, 100, 12345, 1e6})
    void convertsBack(double peaks) {
        double annual = PEAKS.convert(peaks, ANNUAL);
        // Near one year the annual series has lost most of the answer: 1 - 1/T is all that is left of it.
        double lost = Math.ulp(annual) / (annual - 1);
        assertThat(ANNUAL.convert(annual, PEAKS)).isCloseTo(peaks, within(peaks * (1e-14 + 2 * lost)));
        assertThat(PEAKS.convert(peaks, PEAKS)).isEqualTo(peaks);
    }

    /** For rare rain Ta - Tp tends to a half; 1/(12 Tp) is the next term of the series. */
    @Test
    void keepsItsDigitsForRareRain() {
        assertThat(PEAKS.convert(1e6, ANNUAL)).isCloseTo(1e6 + 0.5 + 1 / 12e6, within(1e-9));
    }

    @Test
    void convertsBoundsToo() {
        ReturnPeriod above = new ReturnPeriod(ReturnPeriod.Standing.ABOVE, 2, PEAKS).withBasis(ANNUAL);
        assertThat(above.isAbove()).isTrue();
        assertThat(above.toText()).isEqualTo("rarer than 1 in 2.54 years");
    }

    @Test
    void whatCannotBeToldFromOneYearIsNamedAsItWasGiven() {
        ReturnPeriod often = new ReturnPeriod(ReturnPeriod.Standing.WITHIN, 0.02, PEAKS);
        assertThatThrownBy(() -> often.withBasis(ANNUAL))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("years must be so long that as annual maximum it can be told from one year, about 0.03"
                        + " years, was 0.02 (years, peaks over threshold)");
        assertThat(often.withBasis(PEAKS)).isEqualTo(often);
    }

    @Test
    void refusesReturnPeriodsThatCannotBe() {
        assertThatThrownBy(() -> ANNUAL.convert(1, PEAKS))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("years must be above 1 (years, annual maximum) and finite, was 1");
        assertThatThrownBy(() -> PEAKS.convert(0, ANNUAL))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("years must be above 0 (years, peaks over threshold) and finite, was 0");
        assertThatThrownBy(() -> new ReturnPeriod(ReturnPeriod.Standing.WITHIN, Double.NaN, PEAKS))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageEndingWith("was NaN");
    }
}
