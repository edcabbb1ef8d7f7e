package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;

class CsvUnitTest {
    @Test
    void convertsUnitsByTheirExactFactors() {
        assertThat(CsvUnit.parse("mm").toSi(123)).isEqualTo(0.123);
        assertThat(CsvUnit.parse("l/s")).isEqualTo(CsvUnit.LITRE_PER_SECOND);
        assertThat(CsvUnit.parse("m³/h").toSi(3600)).isEqualTo(1);
        assertThat(CsvUnit.parse("ft").toSi(10)).isEqualTo(3.048);
        assertThat(CsvUnit.MEGALITRE_PER_DAY.toSi(86.4)).isEqualTo(1);
        assertThat(CsvUnit.MILLIMETRE.fromSi(0.123)).isEqualTo(123);
        assertThat(CsvUnit.parse("")).isEqualTo(CsvUnit.AS_WRITTEN);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvUnit.parse("furlong"))
                .withMessage(
                        "symbol must be one of mm, cm, m, in, ft, mm/s, cm/s, m/s, ft/s, L/s, m3/s, m3/h, m3/d, ML/d, "
                                + "ft3/s, US gal/min, %, was furlong");
    }

    /** Expected values are the decimals themselves, as the compiler rounds them. */
    @Test
    void convertsANumberAsItWasWritten() {
        assertThat(CsvUnit.MILLIMETRE.toSi(new BigDecimal("700"))).isEqualTo(0.7);
        assertThat(CsvUnit.MILLIMETRE.toSi(new BigDecimal("2.1"))).isEqualTo(0.0021);
        assertThat(CsvUnit.INCH.toSi(new BigDecimal("0.7"))).isEqualTo(0.01778);
        assertThat(CsvUnit.FOOT.toSi(new BigDecimal("0.1"))).isEqualTo(0.03048);
        assertThat(CsvUnit.FOOT_PER_SECOND.toSi(new BigDecimal("-0.3"))).isEqualTo(-0.09144);
        assertThat(CsvUnit.CUBIC_METRE_PER_HOUR.toSi(new BigDecimal("5.4"))).isEqualTo(0.0015);
        assertThat(CsvUnit.AS_WRITTEN.toSi(new BigDecimal("1e-2147483647"))).isZero();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvUnit.METRE.toSi(new BigDecimal("1e2147483647")))
                .withMessage("written must be within the range of a double, was 1E+2147483647");
    }
}
