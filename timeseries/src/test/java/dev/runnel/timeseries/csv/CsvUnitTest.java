package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

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
}
