package dev.runnel.hydraulics.gauging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;

/** Fits small enough to be inverted by hand, and what a bench check says of them. */
class CalibrationEdgesTest {
    /** 1 + x + 2x² through −1, 0, 0, 1 with u = 1: covariances ½, −½ and 1 of the ends, ½ of the slope. */
    @Test
    void aQuadraticInvertedByHand() {
        CalibrationData data = CalibrationData.of(new double[] {-1, 0, 1, 0}, new double[] {2, 1, 4, 1})
                .withResponseUncertainty(1);
        FittedCalibration curve = data.quadratic();
        assertThat(curve.coefficients()).containsExactly(new double[] {1, 1, 2}, within(1e-12));
        assertThat(curve.covariance(0, 0)).isCloseTo(0.5, within(1e-12));
        assertThat(curve.covariance(0, 2)).isCloseTo(-0.5, within(1e-12));
        assertThat(curve.covariance(2, 2)).isCloseTo(1, within(1e-12));
        assertThat(curve.uncertainty(1)).isCloseTo(Math.sqrt(0.5), within(1e-12));
        assertThat(curve.response(2)).isCloseTo(11, within(1e-12));
        // of the curve 1/2 - x²/2 + x⁴ = 14.5 at 2, where the slope is 9
        assertThat(curve.responseUncertainty(2, 0)).isCloseTo(Math.sqrt(14.5), within(1e-11));
        assertThat(curve.responseUncertainty(2, 0.1)).isCloseTo(Math.sqrt(14.5 + 0.81), within(1e-11));
        assertThat(curve.stimulus(11)).isCloseTo(2, within(1e-12));
        assertThat(curve.stimulusUncertainty(11, 0.3)).isCloseTo(Math.sqrt(14.5 + 0.09) / 9, within(1e-11));
        assertThat(curve.degreesOfFreedom()).isEqualTo(1);
        assertThat(curve.residuals()).containsExactly(new double[4], within(1e-12));
        assertThat(data).hasToString("CalibrationData[4 pairs, u(y) given]");
        assertThat(data.withStimulusUncertainty(0)).hasToString("CalibrationData[4 pairs, u(y) given, u(x) given]");
        assertThatThrownBy(() -> curve.covariance(3, 0)).hasMessage("i must be in [0, 2], was 3");
        assertThatThrownBy(() -> curve.covariance(0, -1)).hasMessage("k must be in [0, 2], was -1");
        assertThatThrownBy(() -> curve.responseUncertainty(Double.NaN, 0)).hasMessageStartingWith("stimulus must be ");
        assertThatThrownBy(() -> curve.responseUncertainty(0, -1))
                .hasMessageStartingWith("stimulusUncertainty must be ");
        assertThatThrownBy(() -> curve.stimulusUncertainty(11, -1))
                .hasMessageStartingWith("responseUncertainty must be ");
    }

    /** 5 − 2x, read backwards: uncertainties stay positive. */
    @Test
    void aFallingLine() {
        double[] x = {0, 1, 2, 4};
        double[] y = {5, 3, 1, -3};
        FittedCalibration line =
                CalibrationData.of(x, y).withResponseUncertainty(0.2).line();
        assertThat(line.stimulus(1)).isCloseTo(2, within(1e-12));
        // Σx = 7, Σx² = 21, n = 4: var(x) = 0.04 (1/4 + (x − 1.75)²/8.75)
        double ofCurve = 0.04 * (0.25 + 0.0625 / 8.75);
        assertThat(line.stimulusUncertainty(1, 0.2)).isCloseTo(Math.sqrt(ofCurve + 0.04) / 2, within(1e-12));
        assertThat(line.residuals()).containsExactly(new double[4], within(1e-12));
    }

    /** Residuals ±1 with u 0.4: χ² = 4/0.16 = 25 for 2 degrees of freedom, beyond 5.99; without u nothing is said. */
    @Test
    void consistency() {
        double[] x = {-1, -1, 1, 1};
        double[] y = {0, 2, 4, 6};
        CalibrationData data = CalibrationData.of(x, y);
        FittedCalibration strict = data.withResponseUncertainty(0.4).line();
        assertThat(strict.chiSquared()).isCloseTo(25, within(1e-10));
        assertThat(strict.degreesOfFreedom()).isEqualTo(2);
        assertThat(strict.isConsistent()).isFalse();
        assertThat(strict.residuals()).containsExactly(new double[] {-1, 1, -1, 1}, within(1e-12));
        assertThat(strict.toString()).endsWith(", chi2 25 for 2 degrees of freedom]");
        assertThat(data.withResponseUncertainty(0.9).line().isConsistent()).isTrue();
        FittedCalibration free = data.line();
        assertThat(free.isConsistent()).isTrue();
        assertThat(free.chiSquared()).isCloseTo(4, within(1e-12));
        // s² = 2, and of the slope s²/Σx² = 1/2
        assertThat(free.residualDeviation()).isCloseTo(Math.sqrt(2), within(1e-12));
        assertThat(free.uncertainty(1)).isCloseTo(Math.sqrt(0.5), within(1e-12));
        assertThat(free)
                .isEqualTo(CalibrationData.of(x, y).line())
                .hasSameHashCodeAs(CalibrationData.of(x, y).line())
                .isNotEqualTo(strict)
                .isNotEqualTo(CalibrationData.of(x, new double[] {0, 2, 4, 7}).line());
        assertThat(free.hashCode())
                .isNotEqualTo(
                        CalibrationData.of(x, new double[] {0, 2, 4, 7}).line().hashCode());
    }

    /** Uncertainties a and b of slope 1 add as squares: χ² of a pair off the line by d is d²/(a² + b²). */
    @Test
    void bothAxesTakeTheirShare() {
        double[] x = {0, 1, 2, 3};
        double[] y = {0.5, 0.5, 1.5, 3.5};
        FittedCalibration line = CalibrationData.of(x, y)
                .withResponseUncertainty(0.3)
                .withStimulusUncertainty(0.4)
                .line();
        // the slope that all shares leave: stationary where a line of slope b has the least Σd²/(0.09 + 0.16 b²)
        double slope = line.coefficients()[1];
        assertThat(distance(x, y, line.coefficients())).isCloseTo(line.chiSquared(), within(1e-9));
        for (double by : new double[] {-1e-3, 1e-3}) {
            double[] turned = {line.coefficients()[0] - 1.5 * by, slope + by};
            assertThat(distance(x, y, turned)).isGreaterThan(line.chiSquared());
            double[] lifted = {line.coefficients()[0] + by, slope};
            assertThat(distance(x, y, lifted)).isGreaterThan(line.chiSquared());
        }
    }

    private static double distance(double[] x, double[] y, double[] line) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            double d = y[i] - line[0] - line[1] * x[i];
            sum += d * d / (0.09 + line[1] * line[1] * 0.16);
        }
        return sum;
    }

    @Test
    void refusals() {
        double[] x = {1, 2, 3};
        CalibrationData data = CalibrationData.of(x, x).withResponseUncertainty(1);
        assertThatThrownBy(data::quadratic).hasMessage("count of pairs must be at least 4, was 3");
        assertThatThrownBy(() -> data.withStimulusUncertainty(-1))
                .hasMessage("uncertainty[0] must be 0 or greater and finite, was -1");
        assertThatThrownBy(() -> data.withStimulusUncertainty(new double[] {0, 0, 1e101}))
                .hasMessageStartingWith("uncertainty[2] must be 0 or greater and finite, was ");
        assertThatThrownBy(() -> data.withStimulusUncertainty(new double[2]))
                .hasMessage("uncertainty must have length 3, was 2");
        assertThatThrownBy(() -> CalibrationData.of(x, new double[2])).hasMessage("response must have length 3, was 2");
        assertThatThrownBy(() -> CalibrationData.of(x, new double[] {1, Double.NaN, 2}))
                .hasMessageStartingWith("response[1] must be in ");
        assertThatThrownBy(() -> CalibrationData.of(new double[] {1, 2, 1e101}, x))
                .hasMessageStartingWith("stimulus[2] must be in ");
    }

    @Test
    void verdictsAtTheirLimits() {
        assertThat(ToleranceVerdict.of(0.75, 0.25, 1)).isEqualTo(ToleranceVerdict.WITHIN);
        assertThat(ToleranceVerdict.of(-0.75, 0.26, 1)).isEqualTo(ToleranceVerdict.UNDECIDED);
        assertThat(ToleranceVerdict.of(1.25, 0.25, 1)).isEqualTo(ToleranceVerdict.UNDECIDED);
        assertThat(ToleranceVerdict.of(-1.26, 0.25, 1)).isEqualTo(ToleranceVerdict.OUTSIDE);
    }

    /** Levels read once take the scatter of those read twice: √2e-4 of the readings 2.01 and 2.03 at 2. */
    @Test
    void aBenchCheckWithSingleReadings() {
        BenchCheck.Terms terms = new BenchCheck.Terms("m/s", 0.003, 0, 0.02);
        BenchCheck check = BenchCheck.of(new double[] {1, 2, 2, 3}, new double[] {1.01, 2.01, 2.03, 3}, terms);
        double pooled = Math.sqrt(2e-4);
        assertThat(check.repeatability()).isCloseTo(pooled, within(1e-12));
        assertThat(check.bias()).isCloseTo(0.01, within(1e-12));
        assertThat(check.linearity()).isCloseTo(0.01, within(1e-12));
        BenchLevel once = check.levels().get(0);
        assertThat(once.readings()).isEqualTo(1);
        assertThat(once.repeatability()).isZero();
        assertThat(once.toString()).startsWith("BenchLevel[1");
        assertThat(once.expandedUncertainty()).isCloseTo(2 * Math.hypot(0.003, pooled), within(1e-12));
        assertThat(check.levels().get(1).expandedUncertainty()).isCloseTo(2 * Math.hypot(0.003, 0.01), within(1e-12));
        assertThat(check.levels())
                .extracting(BenchLevel::verdict)
                .containsExactly(ToleranceVerdict.UNDECIDED, ToleranceVerdict.UNDECIDED, ToleranceVerdict.WITHIN);
        assertThat(check.verdict()).isEqualTo(ToleranceVerdict.UNDECIDED);
        assertThat(check)
                .hasToString("BenchCheck[3 levels, bias 0.01 m/s, linearity 0.01, repeatability 0.0141, UNDECIDED]");
        assertThat(check.certificate("meter\n7", LocalDate.of(2026, 3, 4))).isEqualTo("""
                        Bench check of meter 7
                        Day            2026-03-04
                        Unit           m/s
                        Tolerance      2 % of the reference
                        Bias           0.01
                        Linearity      0.01
                        Repeatability  0.01414
                        Verdict        UNDECIDED

                        1: 1 reading, bias 0.01 ± 0.029 (k = 2), UNDECIDED
                        2: 2 readings, bias 0.02 ± 0.021 (k = 2), UNDECIDED
                        3: 1 reading, bias 0 ± 0.029 (k = 2), WITHIN

                        The uncertainty counts in the verdict: WITHIN and OUTSIDE hold with it added or taken off.
                        """);
        assertThat(check.toCsv().lines().toList().get(3))
                .startsWith("3,1,0,0,0.0289")
                .endsWith(",WITHIN");
    }

    /** Nothing read twice: nothing is known of scatter, and only the reference is uncertain. */
    @Test
    void aBenchCheckWithoutRepeats() {
        BenchCheck.Terms terms = BenchCheck.Terms.ofTolerance(0.02, "m").withReferenceUncertainty(0.001);
        BenchCheck check = BenchCheck.of(new double[] {0, 1, 2}, new double[] {0.01, 1.01, 2.01}, terms);
        assertThat(check.repeatability()).isZero();
        assertThat(check.levels().get(1).expandedUncertainty()).isCloseTo(0.002, within(1e-15));
        assertThat(check.verdict()).isEqualTo(ToleranceVerdict.WITHIN);
        assertThat(check.certificate("a", LocalDate.EPOCH)).contains("\nTolerance      0.02 m\n");
        assertThat(BenchCheck.of(new double[] {0, 1, 2}, new double[] {0.01, 1.01, 2.01}, terms.plusShare(0.01))
                        .certificate("a", LocalDate.EPOCH))
                .contains("\nTolerance      0.02 m + 1 % of the reference\n");
        assertThatThrownBy(() -> new BenchCheck.Terms("m", 0, 0, 0))
                .hasMessage("tolerance must allow some error, was 0");
        assertThatThrownBy(() -> new BenchCheck.Terms("m", -1, 1, 0))
                .hasMessageStartingWith("referenceUncertainty must be ");
        assertThatThrownBy(() -> new BenchCheck.Terms("m", 0, -1, 0.5)).hasMessageStartingWith("tolerance must be ");
        assertThatThrownBy(() -> terms.plusShare(1.1)).hasMessage("relativeTolerance must be in [0, 1], was 1.1");
        assertThatThrownBy(() -> BenchCheck.Terms.ofTolerance(0, "m")).hasMessageStartingWith("tolerance must be ");
        assertThatThrownBy(() -> BenchCheck.of(new double[] {0, 1, 2}, new double[] {0, 1, Double.NaN}, terms))
                .hasMessageStartingWith("reading[2] must be ");
        assertThatThrownBy(() -> BenchCheck.of(new double[] {0, 1}, new double[] {0, 1}, terms))
                .hasMessageStartingWith("count of readings must be in [3, ");
    }
}
