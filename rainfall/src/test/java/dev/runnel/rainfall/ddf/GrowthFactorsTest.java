package dev.runnel.rainfall.ddf;

import static dev.runnel.rainfall.ddf.ReturnPeriodBasis.ANNUAL_MAXIMUM;
import static dev.runnel.rainfall.ddf.ReturnPeriodBasis.PEAKS_OVER_THRESHOLD;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class GrowthFactorsTest {
    private static final String OWN = """
            # invented
            m5_mm,2M,1M,M2,M10,100
            5,0.5,0.6,0.7,1.2,1.8
            50,0.6,0.7,0.8,1.1,
            """;

    static Stream<GrowthFactors> shipped() {
        return Stream.of(
                GrowthFactors.floodStudiesEnglandAndWalesShort(),
                GrowthFactors.floodStudiesEnglandAndWales(),
                GrowthFactors.floodStudiesScotlandAndNorthernIreland());
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void whatIsFromMemorySaysSo(GrowthFactors factors) {
        assertThat(factors.provenance()).endsWith("from memory, unconfirmed");
        assertThat(factors.toString()).contains("from memory, unconfirmed");
    }

    /** Table 2.7 of the Flood Studies Report, from memory. */
    @ParameterizedTest
    @CsvSource({"10, 1.21, 1.18", "100, 1.91, 1.97", "2, 0.70, 0.75", "1000, 3.09, 3.25"})
    void annualMaximaComeBackFromTheTable(double years, double englandAndWales, double scotlandAndNorthernIreland) {
        assertThat(GrowthFactors.floodStudiesEnglandAndWales().fromM5(10).factor(years, ANNUAL_MAXIMUM))
                .isEqualTo(englandAndWales);
        assertThat(GrowthFactors.floodStudiesScotlandAndNorthernIreland()
                        .fromM5(10)
                        .factor(years, ANNUAL_MAXIMUM))
                .isEqualTo(scotlandAndNorthernIreland);
    }

    @Test
    void subAnnualDepthsArePeaksOverThreshold() {
        GrowthFactors factors = GrowthFactors.floodStudiesEnglandAndWales();
        assertThat(factors.fromM5(10).factor(0.5, PEAKS_OVER_THRESHOLD)).isEqualTo(0.43);
        assertThat(factors.fromM5(10).factor(1, PEAKS_OVER_THRESHOLD)).isEqualTo(0.61);
        assertThat(factors.fromM5(10).factor(5, ANNUAL_MAXIMUM)).isEqualTo(1);
        assertThatThrownBy(() -> factors.fromM5(10).factor(1, ANNUAL_MAXIMUM))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("years must be above 1 (years, annual maximum) and finite, was 1");
    }

    /**
     * Twice a year, once a year and M2 against ln T: the slope changes less if M2 is 1.44 years of peaks over threshold, as by
     * Langbein, than if it were two, in every row of both tables.
     */
    @Test
    void frequentAndRareDepthsLieOnOneScale() {
        int rows = 0;
        for (GrowthFactors factors : new GrowthFactors[] {
            GrowthFactors.floodStudiesEnglandAndWales(), GrowthFactors.floodStudiesScotlandAndNorthernIreland()
        }) {
            for (double m5 : new double[] {0.5, 2, 5, 10, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200, 500, 1000}) {
                double once = factors.fromM5(m5).factor(1, PEAKS_OVER_THRESHOLD);
                double m2 = factors.fromM5(m5).factor(2, ANNUAL_MAXIMUM);
                double below = (once - factors.fromM5(m5).factor(0.5, PEAKS_OVER_THRESHOLD)) / Math.log(2);
                double byLangbein = (m2 - once) / -Math.log(Math.log(2)) / below;
                double asTwoYears = (m2 - once) / Math.log(2) / below;
                assertThat(Math.abs(Math.log(byLangbein))).isLessThan(Math.abs(Math.log(asTwoYears)));
                rows++;
            }
        }
        assertThat(rows).isEqualTo(32);
    }

    /** Both tables were remembered apart; that they agree is evidence for both and for Langbein's relation between them. */
    @Test
    void shortTableIsTheFloodStudiesReportInPeaksOverThreshold() {
        GrowthFactors z2 = GrowthFactors.floodStudiesEnglandAndWalesShort();
        GrowthFactors report = GrowthFactors.floodStudiesEnglandAndWales();
        int within001 = 0;
        int all = 0;
        for (double m5 : new double[] {5, 10, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200}) {
            for (double years : new double[] {1, 2, 3, 4, 5, 10, 20, 50, 100}) {
                double difference = report.fromM5(m5).factor(years, PEAKS_OVER_THRESHOLD)
                        - z2.fromM5(m5).factor(years, PEAKS_OVER_THRESHOLD);
                assertThat(difference).isBetween(-0.014, 0.014);
                within001 += Math.abs(difference) <= 0.0101 ? 1 : 0;
                all++;
            }
        }
        assertThat(all).isEqualTo(108);
        assertThat(within001).isEqualTo(104);
    }

    @Test
    void readsATableOfTheUser(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("own.csv"), OWN);
        GrowthFactors own = GrowthFactors.read(file, "copy of the report");
        assertThat(own)
                .hasToString(
                        "GrowthFactors[copy of the report, 0.5 to 100 years, peaks over threshold, M5 5 to 50 mm]");
        assertThat(own.fromM5(27.5).factor(10, ANNUAL_MAXIMUM)).isCloseTo(1.15, within(1e-15));
        assertThat(own.fromM5(5).factor(100, PEAKS_OVER_THRESHOLD)).isEqualTo(1.8);
        assertThat(own.years()).hasSize(6);
        assertThatThrownBy(() -> own.fromM5(27.5).factor(100, PEAKS_OVER_THRESHOLD))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "growth factor must not be blank in the table, is for 100 years, peaks over threshold, and M5"
                                + " of 27.5 mm");
        assertThatThrownBy(() -> own.fromM5(4).factor(10, ANNUAL_MAXIMUM))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("m5Mm must be in [5, 50] mm, was 4");
        assertThatThrownBy(() -> GrowthFactors.read(folder.resolve("none.csv"), "x"))
                .isInstanceOf(java.io.UncheckedIOException.class)
                .hasMessageContaining("none.csv");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | text: must hold a line such as m5_mm,2M,1M,M2,M10,M100, was empty",
                "m5,M10 | 'text line 1, column 1: must be m5_mm, was ''m5'''",
                "m5_mm | 'text line 1, column 1: must be followed by return periods, a line such as"
                        + " m5_mm,2M,1M,M2,M10,M100'",
                "m5_mm,M1 | 'text line 1, column 2: M1 must be above 1 (years, annual maximum) and finite, was 1'",
                "m5_mm,0M | 'text line 1, column 2: 0M must be above 0 (years, peaks over threshold) and finite, was"
                        + " Infinity'",
                "m5_mm,T5 | 'text line 1, column 2: return period must be such as 2M (twice a year), M10 (years, annual"
                        + " maxima) or 10 (years, peaks over threshold), was ''T5'''",
                "m5_mm,M10,9 | 'text line 1, column 3: return period must be rarer than M10 before it, was 9'",
                "m5_mm,M10 | text: must hold at least one line of factors, had none",
                "m5_mm,M10#5 | 'text line 2, column 1: must be the last of 2 columns, as in the first line'",
                "m5_mm,M10#5,x | 'text line 2, column 2: must be a number, was ''x'''",
                "m5_mm,M10#0,1.2 | 'text line 2, column 1: must be above 0 and finite, was 0'",
                "m5_mm,M10#5,1.2#5,1.2 | 'text line 3, column 1: must be above 5 and finite, was 5'",
                "m5_mm,M10#5,0.9 | 'text line 2, column 2: growth factor must be above 1 and finite, was 0.9'",
                "m5_mm,M2#5,1.1 | 'text line 2, column 2: growth factor must be above 0 and below 1, being more frequent"
                        + " than M5, was 1.1'",
                "m5_mm,M5#5,1.1 | 'text line 2, column 2: growth factor must be 1 for M5, was 1.1'",
                "m5_mm,M10,M20#5,1.2,1.1 | 'text line 2, column 3: growth factor must be above 1.2 and finite, was 1.1'",
                "m5_mm,M10#5,2#6,1.2 | 'text line 3, column 2: depth must not fall as M5 rises, below 10 mm in the line"
                        + " before, was 7.199999999999999 mm'"
            })
    void saysWhereATableIsWrong(String text, String message) {
        assertThatThrownBy(() -> GrowthFactors.parse(text.replace('#', '\n'), "x"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }

    @Test
    void wantsToKnowWhereFactorsComeFrom() {
        assertThatThrownBy(() -> GrowthFactors.parse(OWN, " "))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("provenance must say where the factors come from, was blank");
    }
}
