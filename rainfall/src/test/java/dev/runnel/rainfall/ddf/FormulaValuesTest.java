package dev.runnel.rainfall.ddf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What stands on a limit, what is refused, and what is equal to what. */
class FormulaValuesTest {
    private static final Duration FIVE = Duration.ofMinutes(5);
    private static final Duration HOUR = Duration.ofHours(1);
    private static final Duration DAY = Duration.ofDays(1);
    private static final IntensityFormula SHERMAN = IntensityFormula.sherman(800, 4, 0.5, FIVE, DAY);

    @Test
    void formulaeAreEqualByTheirParts() {
        assertThat(SHERMAN).isEqualTo(IntensityFormula.sherman(800, 4, 0.5, FIVE, DAY));
        for (IntensityFormula other : List.of(
                IntensityFormula.kimijima(800, 4, 0.5, FIVE, DAY),
                IntensityFormula.sherman(801, 4, 0.5, FIVE, DAY),
                IntensityFormula.sherman(800, 5, 0.5, FIVE, DAY),
                IntensityFormula.sherman(800, 4, 0.6, FIVE, DAY),
                IntensityFormula.sherman(800, 4, 0.5, HOUR, DAY),
                IntensityFormula.sherman(800, 4, 0.5, FIVE, HOUR))) {
            assertThat(SHERMAN).isNotEqualTo(other);
            assertThat(SHERMAN.hashCode()).isNotEqualTo(other.hashCode());
        }
        assertThat(SHERMAN).isNotEqualTo("SHERMAN");
        assertThat(SHERMAN.hashCode())
                .isEqualTo(IntensityFormula.sherman(800, 4, 0.5, FIVE, DAY).hashCode());
        assertThat(IntensityFormula.sherman(800, 0, 0.5, FIVE, DAY))
                .isNotEqualTo(IntensityFormula.sherman(800, -0.0, 0.5, FIVE, DAY));
    }

    /** Depth rises while t (1 - n) + b, or t^n (1 - n) + b, is 0 or more: for n = 1.5 and b = 30 until t = 60, or 60 = t^1.5. */
    @Test
    void aFormulaMayRiseToItsVeryEndAndNoFarther() {
        assertThatCode(() -> IntensityFormula.sherman(800, 30, 1.5, FIVE, HOUR)).doesNotThrowAnyException();
        assertThatThrownBy(() -> IntensityFormula.sherman(800, 30, 1.5, FIVE, HOUR.plusMinutes(1)))
                .hasMessageStartingWith("depth must not fall with duration, does at 1 h 1 min in IntensityFormula");
        assertThatThrownBy(() -> IntensityFormula.sherman(800, 2, 1.5, FIVE, HOUR))
                .hasMessageStartingWith("depth must not fall with duration, does at 5 min in IntensityFormula");
        Duration root = Duration.ofSeconds((long) Math.floor(60 * Math.pow(60, 1 / 1.5)));
        assertThatCode(() -> IntensityFormula.kimijima(800, 30, 1.5, FIVE, root))
                .doesNotThrowAnyException();
        assertThatThrownBy(() -> IntensityFormula.kimijima(800, 30, 1.5, FIVE, root.plusSeconds(2)))
                .hasMessageStartingWith("depth must not fall with duration");
        // One duration alone is a range, and for n = 1 depth does not change.
        assertThatCode(() -> IntensityFormula.bernard(800, 1, FIVE, FIVE)).doesNotThrowAnyException();
        assertThatThrownBy(() -> IntensityFormula.bernard(800, 1, FIVE, FIVE.minusNanos(1)))
                .hasMessageStartingWith("longest must not be shorter than 5 min");
        // t^n + b must be above 0 at its start, not t + b.
        assertThatThrownBy(() -> IntensityFormula.kimijima(800, -3, 0.5, FIVE, HOUR))
                .hasMessage("b must leave the intensity finite at 5 min, was -3");
        assertThatThrownBy(() -> IntensityFormula.talbot(800, -5, FIVE, HOUR))
                .hasMessage("b must leave the intensity finite at 5 min, was -5");
    }

    /** Intensities on 3000/(t + 20) and 500 t^-0.6 themselves. */
    @Test
    void aFitFindsTheFormulaItsDepthsFollow() {
        List<Duration> durations = List.of(FIVE, Duration.ofMinutes(20), HOUR, Duration.ofHours(3));
        double[] talbot = {10, 25, 37.5, 45};
        IntensityFit fit = IntensityFit.of(IntensityFormula.Form.TALBOT, durations, talbot);
        assertThat(fit.formula().intensityMmPerHour(Duration.ofMinutes(40))).isCloseTo(50, within(1e-9));
        assertThat(fit.rmsPercent()).isCloseTo(0, within(1e-9));
        assertThat(fit.toString()).startsWith("IntensityFit[IntensityFormula[i = 3000/(t + 20) mm/h");
        double[] bernard = durations.stream()
                .mapToDouble(d -> 500 * Math.pow(d.toSeconds() / 60.0, 0.4) / 60)
                .toArray();
        assertThat(IntensityFit.of(IntensityFormula.Form.BERNARD, durations, bernard)
                        .formula()
                        .intensityMmPerHour(Duration.ofMinutes(40)))
                .isCloseTo(500 * Math.pow(40, -0.6), within(1e-9));
        assertThatThrownBy(() -> IntensityFit.of(IntensityFormula.Form.TALBOT, durations, 1, 2, 3))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> IntensityFit.of(
                        IntensityFormula.Form.TALBOT, List.of(FIVE, HOUR, Duration.ofMinutes(20), DAY), talbot))
                .hasMessage("duration must be longer than 1 h before it, was 20 min");
        // Three suffice for two parameters, four are needed for three.
        assertThatCode(() -> IntensityFit.of(IntensityFormula.Form.TALBOT, durations.subList(0, 3), 10, 25, 37.5))
                .doesNotThrowAnyException();
        assertThatThrownBy(() -> IntensityFit.of(IntensityFormula.Form.SHERMAN, durations.subList(0, 3), 10, 25, 37.5))
                .hasMessage("durations must be at least 4, was 3");
    }

    private static DdfTable table(double... depths) {
        return DdfTable.of(ReturnPeriodBasis.ANNUAL_MAXIMUM, List.of(FIVE, HOUR), new double[] {2, 10}, new double[][] {
            {depths[0], depths[1]}, {depths[2], depths[3]}
        });
    }

    @Test
    void tablesMayStandStillButNotFall() {
        assertThatCode(() -> table(5, 5, 5, 5)).doesNotThrowAnyException();
        assertThatThrownBy(() -> table(5, 4.999, 6, 7))
                .hasMessageStartingWith("depth must not fall with return period");
        assertThatThrownBy(() -> table(5, 8, 4.999, 9)).hasMessageStartingWith("depth must not fall with duration");
        assertThatThrownBy(() -> table(0, 8, 9, 9))
                .hasMessageStartingWith("depth must be greater than 0 and finite (mm)");
        assertThatThrownBy(() -> table(1, 8, 9, Double.POSITIVE_INFINITY))
                .hasMessageStartingWith("depth must be greater than 0 and finite (mm)");
        for (double[] years : new double[][] {{10, 10}, {10, 9}}) {
            assertThatThrownBy(() -> DdfTable.of(
                            ReturnPeriodBasis.ANNUAL_MAXIMUM, List.of(FIVE), years, new double[][] {{5, 6}}))
                    .hasMessageStartingWith("return period must be above 10 years before it");
        }
        assertThatThrownBy(() -> DdfTable.of(
                        ReturnPeriodBasis.ANNUAL_MAXIMUM, List.of(FIVE, FIVE), new double[] {2}, new double[][] {
                            {5}, {6}
                        }))
                .hasMessage("duration must be longer than 5 min before it, was 5 min");
        assertThatThrownBy(() -> DdfTable.of(
                        ReturnPeriodBasis.ANNUAL_MAXIMUM, List.of(Duration.ZERO), new double[] {2}, new double[][] {{5}
                        }))
                .hasMessageStartingWith("duration must be ");
        assertThatThrownBy(() ->
                        DdfTable.of(ReturnPeriodBasis.ANNUAL_MAXIMUM, List.of(), new double[] {2}, new double[][] {}))
                .hasMessage("table must have at least one duration and one return period, had 0 and 1");
        assertThatThrownBy(() -> DdfTable.of(
                        ReturnPeriodBasis.ANNUAL_MAXIMUM, List.of(FIVE, HOUR), new double[] {2}, new double[][] {{5}}))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void tablesAreEqualByTheirParts() {
        DdfTable table = table(5, 8, 9, 15);
        assertThat(table)
                .isEqualTo(table(5, 8, 9, 15))
                .isNotEqualTo(table(5, 8, 9, 16))
                .isNotEqualTo("table");
        assertThat(table).isNotEqualTo(table.withProvenance("elsewhere"));
        assertThat(table.hashCode())
                .isEqualTo(table(5, 8, 9, 15).hashCode())
                .isNotEqualTo(table(5, 8, 9, 16).hashCode());
    }

    @Test
    void aBandKnowsItsConfidence() {
        DdfBand band = DdfBand.of(table(5, 8, 9, 15), table(4, 7, 8, 14), table(6, 9, 10, 16), 0.9);
        assertThat(band.confidence()).isEqualTo(0.9);
        assertThat(band.toString()).startsWith("DdfBand[DdfTable[").endsWith(", limits at 90 %]");
        assertThat(band.returnPeriod(HOUR, 12).toString()).startsWith("Rarity[").endsWith(", annual maximum]");
        for (double outside : new double[] {0, 1}) {
            assertThatThrownBy(() -> DdfBand.of(table(5, 8, 9, 15), table(4, 7, 8, 14), table(6, 9, 10, 16), outside))
                    .hasMessageStartingWith("confidence must be inside (0, 1), was ");
        }
    }

    @Test
    void formulaeOfSeveralReturnPeriodsMustShareADuration() {
        IntensityFormula early = IntensityFormula.talbot(2000, 20, FIVE, HOUR);
        IntensityFormula late = IntensityFormula.talbot(2600, 20, HOUR, DAY);
        FormulaDdf relation = FormulaDdf.of(ReturnPeriodBasis.ANNUAL_MAXIMUM, Map.of(2.0, early, 10.0, late));
        assertThat(relation.depthMm(HOUR, 10)).isCloseTo(32.5, within(1e-12));
        assertThatThrownBy(() -> FormulaDdf.of(
                        ReturnPeriodBasis.ANNUAL_MAXIMUM,
                        Map.of(2.0, early, 10.0, IntensityFormula.talbot(2600, 20, HOUR.plusNanos(1), DAY))))
                .hasMessageStartingWith("formulae must share durations");
        assertThatThrownBy(() -> FormulaDdf.of(ReturnPeriodBasis.ANNUAL_MAXIMUM, Map.of(1.0, early)))
                .isInstanceOf(IllegalArgumentException.class);
        // Equal curves may stand on each other; one that falls with the return period may not.
        assertThatCode(() -> FormulaDdf.of(ReturnPeriodBasis.ANNUAL_MAXIMUM, Map.of(2.0, early, 10.0, early)))
                .doesNotThrowAnyException();
        IntensityFormula lower = IntensityFormula.talbot(1999, 20, FIVE, HOUR);
        assertThatThrownBy(() -> FormulaDdf.of(ReturnPeriodBasis.ANNUAL_MAXIMUM, Map.of(2.0, early, 10.0, lower)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void upliftsAreAboveTheLossOfAll() {
        assertThatThrownBy(() -> new ClimateUplift("scenario", -100))
                .hasMessageStartingWith("percent must be above -100");
        assertThatThrownBy(() -> new ClimateUplift("scenario", Double.POSITIVE_INFINITY))
                .hasMessageStartingWith("percent must be above -100");
        assertThat(new ClimateUplift("scenario", -99.9).percent()).isEqualTo(-99.9);
    }
}
