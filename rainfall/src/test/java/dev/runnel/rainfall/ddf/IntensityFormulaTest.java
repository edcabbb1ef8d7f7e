package dev.runnel.rainfall.ddf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class IntensityFormulaTest {
    private static final Duration FIVE_MINUTES = Duration.ofMinutes(5);
    private static final Duration DAY = Duration.ofDays(1);

    /** Instruction technique 77-284 (1977), zone 1, ten years, worked example: 1.4397 mm/min at 10.9218 min. */
    @Test
    void montanaAgreesWithTheInstruction() {
        IntensityFormula zone1 = IntensityFormula.montana(5.9, 0.59, FIVE_MINUTES, Duration.ofHours(2));
        assertThat(zone1.intensityMmPerHour(Duration.ofNanos(Math.round(10.9218 * 60e9))) / 60)
                .isCloseTo(1.4397, within(1e-4));
    }

    /** ASTEE, Memento technique 2017, table 31, coefficients for five years; depths recomputed elsewhere. */
    @ParameterizedTest
    @CsvSource({"30, 23.058610105695514", "60, 26.875760049910014", "120, 31.324805569349046", "240, 36.51035141463121"
    })
    void montanaDepths(long minutes, double depth) {
        IntensityFormula fiveYears =
                IntensityFormula.montana(10.874, 0.779, Duration.ofMinutes(30), Duration.ofHours(6));
        assertThat(fiveYears.depthMm(Duration.ofMinutes(minutes))).isCloseTo(depth, within(1e-12));
    }

    /** Chow, Maidment and Mays (1988), example 14.4.1: i = 96.6/(T^0.97 + 13.90) in/h, printed to 0.001 (from memory). */
    @ParameterizedTest
    @CsvSource({"10, 4.158", "20, 3.002", "30, 2.357", "40, 1.943", "60, 1.443", "90, 1.044", "120, 0.820"})
    void kimijimaAgreesWithChow(long minutes, double inchesPerHour) {
        IntensityFormula denver =
                IntensityFormula.kimijima(96.6 * 25.4, 13.90, 0.97, FIVE_MINUTES, Duration.ofHours(2));
        assertThat(denver.intensityMmPerHour(Duration.ofMinutes(minutes)) / 25.4)
                .isCloseTo(inchesPerHour, within(0.0006));
    }

    @Test
    void talbotAndSherman() {
        assertThat(IntensityFormula.talbot(5000, 35, FIVE_MINUTES, DAY).intensityMmPerHour(Duration.ofMinutes(65)))
                .isEqualTo(50);
        assertThat(IntensityFormula.sherman(800, 4, 0.5, FIVE_MINUTES, DAY).intensityMmPerHour(Duration.ofMinutes(60)))
                .isCloseTo(100, within(1e-12));
    }

    private static List<Duration> toADay(DdfTable table) {
        return table.durations().stream().filter(d -> d.compareTo(DAY) <= 0).toList();
    }

    /** KOSTRA-DWD-2010R, cell 42016; coefficients found elsewhere with 40 digits. */
    @ParameterizedTest
    @CsvSource({
        "2, BERNARD, 345.86782726055, 0, 0.725187777503389, 0.108155269554995",
        "2, SHERMAN, 651.460153236245, 7.49511744565199, 0.829047226232935, 0.0124548442067229",
        "2, KIMIJIMA, 736.674764268268, 5.16090312014146, 0.846172293773727, 0.0176318271138638",
        "10, TALBOT, 3514.67889023524, 63.8990026170958, 1, 0.34018196536106",
        "10, SHERMAN, 909.814643909823, 6.39216315772713, 0.814580278029522, 0.0112254250189213"
    })
    void fitsAgreeWithAnotherProgram(double years, IntensityFormula.Form form, double a, double b, double n, double rms)
            throws IOException {
        DdfTable table = DdfTableTest.kostra();
        List<Duration> durations = toADay(table);
        double[] depths =
                durations.stream().mapToDouble(d -> table.depthMm(d, years)).toArray();
        IntensityFit fit = IntensityFit.of(form, durations, depths);
        assertThat(fit.formula().a()).isCloseTo(a, within(1e-8 * a));
        assertThat(fit.formula().b()).isCloseTo(b, within(1e-8 * Math.abs(b)));
        assertThat(fit.formula().n()).isCloseTo(n, within(1e-8 * n));
        assertThat(fit.rmsPercent()).isCloseTo(100 * rms, within(1e-8));
    }

    /**
     * Invented depths about which the sum of squares is so flat that a search on it alone ends up to 8e-8 from the least;
     * coefficients from another program, that solves for the zero of the gradient with 40 digits.
     */
    @ParameterizedTest
    @CsvSource({
        "KIMIJIMA, 5 10 15 30 60 120 180 360, 9.3 17.2 23.8 33.2 50.0 77.3 100.0 127.4, 998.38440469550783, 5.8143242534532242, 0.62734171078304969",
        "SHERMAN, 5 10 15 30 60 120, 27.4 46.5 64.7 100.4 131.7 178.0, 4596.78138829081, 22.498052651329964, 0.79757960659384237",
        "KIMIJIMA, 5 10 15 30 60 120 180 360, 10.3 17.9 22.9 36.9 48.5 77.3 85.9 112.9, 1274.455109149567, 7.1557657817095256, 0.69545371734077596",
        "SHERMAN, 5 10 15 30 60 120, 7.8 12.1 13.5 17.5 22.1 28.3, 451.2371680544594, 3.5489151889561679, 0.72235574673099604"
    })
    void fitsEndAtTheLeastSumOfSquares(
            IntensityFormula.Form form, String minutes, String depthsMm, double a, double b, double n) {
        List<Duration> durations = Arrays.stream(minutes.split(" "))
                .map(text -> Duration.ofMinutes(Long.parseLong(text)))
                .toList();
        double[] depths = Arrays.stream(depthsMm.split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
        IntensityFormula formula = IntensityFit.of(form, durations, depths).formula();
        assertThat(formula.a()).isCloseTo(a, within(1e-12 * a));
        assertThat(formula.b()).isCloseTo(b, within(1e-12 * b));
        assertThat(formula.n()).isCloseTo(n, within(1e-12 * n));
    }

    @Test
    void formulaeMakeARelation() throws IOException {
        DdfTable table = DdfTableTest.kostra();
        List<Duration> durations = toADay(table);
        Map<Double, IntensityFormula> byYears = new HashMap<>();
        for (double years : new double[] {1, 5, 30}) {
            byYears.put(
                    years,
                    IntensityFit.of(
                                    IntensityFormula.Form.SHERMAN,
                                    durations,
                                    durations.stream()
                                            .mapToDouble(d -> table.depthMm(d, years))
                                            .toArray())
                            .formula());
        }
        FormulaDdf relation = FormulaDdf.of(ReturnPeriodBasis.PEAKS_OVER_THRESHOLD, byYears);
        double depth = relation.depthMm(Duration.ofMinutes(50), 12);
        assertThat(relation.returnPeriod(Duration.ofMinutes(50), depth).years()).isCloseTo(12, within(1e-11));
        assertThat(depth).isCloseTo(table.depthMm(Duration.ofMinutes(50), 12), within(2.0));
        assertThat(relation)
                .hasToString("FormulaDdf[3 return periods 1 to 30 years, 5 min to 1 d, peaks over threshold]");
        assertThatThrownBy(() -> relation.depthMm(Duration.ofDays(2), 5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must be in [5 min, 1 d], was 2 d");
    }

    @Test
    void refusesFormulaeThatCross() {
        Map<Double, IntensityFormula> crossing = Map.of(
                2.0, IntensityFormula.bernard(300, 0.6, FIVE_MINUTES, DAY),
                10.0, IntensityFormula.bernard(600, 0.9, FIVE_MINUTES, DAY));
        assertThatThrownBy(() -> FormulaDdf.of(ReturnPeriodBasis.ANNUAL_MAXIMUM, crossing))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("depth must not fall with return period, below ");
        assertThatThrownBy(() -> FormulaDdf.of(ReturnPeriodBasis.ANNUAL_MAXIMUM, Map.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("byYears must hold at least one formula, held none");
    }

    @Test
    void refusesWhatIsNoFormula() {
        assertThatThrownBy(() -> IntensityFormula.bernard(300, 1.1, FIVE_MINUTES, DAY))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("depth must not fall with duration, does at 5 min in IntensityFormula[");
        assertThatThrownBy(() -> IntensityFormula.sherman(300, 10, 1.2, FIVE_MINUTES, DAY))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("depth must not fall with duration, does at 1 d");
        assertThatThrownBy(() -> IntensityFormula.sherman(300, -5, 0.8, FIVE_MINUTES, DAY))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("b must leave the intensity finite at 5 min, was -5");
        assertThatThrownBy(() -> IntensityFormula.talbot(-1, 5, FIVE_MINUTES, DAY))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a must be greater than 0 and finite, was -1");
        assertThatThrownBy(() -> IntensityFit.of(IntensityFormula.Form.SHERMAN, List.of(FIVE_MINUTES, DAY), 5, 50))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("durations must be at least 4, was 2");
    }

    @ParameterizedTest
    @EnumSource
    void depthsThatAreAllEqualFollowEveryForm(IntensityFormula.Form form) {
        List<Duration> durations = List.of(FIVE_MINUTES, Duration.ofMinutes(17), Duration.ofMinutes(31), DAY);
        IntensityFit fit = IntensityFit.of(form, durations, 12.7, 12.7, 12.7, 12.7);
        assertThat(fit.formula().depthMm(Duration.ofHours(3))).isCloseTo(12.7, within(1e-12));
        assertThat(fit.rmsPercent()).isLessThan(1e-12);
    }

    @Test
    void anIntensityThatDoesNotFallFollowsNoTalbotFormula() {
        List<Duration> durations = List.of(FIVE_MINUTES, Duration.ofMinutes(10), Duration.ofMinutes(30));
        for (double[] depths : new double[][] {{5, 10, 30}, {0.5, 1, 3}, {5, 12, 50}}) {
            assertThatThrownBy(() -> IntensityFit.of(IntensityFormula.Form.TALBOT, durations, depths))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("depthsMm must be those of a falling intensity, no TALBOT formula follows them");
        }
    }
}
