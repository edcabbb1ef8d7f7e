package dev.runnel.hydraulics.gauging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;

/** Printed figures of ISO/TS 28037 (2010). */
class CalibrationTest {
    private static final double[] X = {1, 2, 3, 4, 5, 6};

    /** Clause 6.3, equal weights. */
    @Test
    void equalWeights() {
        FittedCalibration line = CalibrationData.of(X, new double[] {3.3, 5.6, 7.1, 9.3, 10.7, 12.1})
                .withResponseUncertainty(0.5)
                .line();
        assertThat(line.coefficients()[0]).isCloseTo(1.867, within(0.0005));
        assertThat(line.coefficients()[1]).isCloseTo(1.757, within(0.0005));
        assertThat(line.uncertainty(1)).isCloseTo(0.120, within(0.0005));
        assertThat(line.covariance(0, 1)).isCloseTo(-0.050, within(0.0005));
        assertThat(line.stimulus(10.5)).isCloseTo(4.913, within(0.0005));
        assertThat(line.stimulusUncertainty(10.5, 0.5)).isCloseTo(0.322, within(0.0005));
        assertThat(line.response(3.5)).isCloseTo(8.0167, within(0.0001));
        assertThat(line.isConsistent()).isTrue();
    }

    @Test
    void unequalWeights() {
        FittedCalibration line = CalibrationData.of(X, new double[] {3.2, 4.3, 7.6, 8.6, 11.7, 12.8})
                .withResponseUncertainty(new double[] {0.5, 0.5, 0.5, 1, 1, 1})
                .line();
        assertThat(line.coefficients()[0]).isCloseTo(0.885, within(0.0005));
        assertThat(line.uncertainty(0)).isCloseTo(0.530, within(0.0005));
        assertThat(line.coefficients()[1]).isCloseTo(2.057, within(0.0005));
        assertThat(line.covariance(0, 1)).isCloseTo(-0.082, within(0.0005));
        assertThat(line.chiSquared()).isCloseTo(4.131, within(0.0005));
        assertThat(line.stimulus(10.5)).isCloseTo(4.674, within(0.0005));
    }

    /** Clause 7.4. The printed slope 2.159 is cut, not rounded: 2.15966. */
    @Test
    void uncertaintyInBothAxes() {
        FittedCalibration line = CalibrationData.of(
                        new double[] {1.2, 1.9, 2.9, 4.0, 4.7, 5.9}, new double[] {3.4, 4.4, 7.2, 8.5, 10.8, 13.5})
                .withResponseUncertainty(new double[] {0.2, 0.2, 0.2, 0.4, 0.4, 0.4})
                .withStimulusUncertainty(0.2)
                .line();
        assertThat(line.coefficients()[0]).isCloseTo(0.5788, within(0.00005));
        assertThat(line.coefficients()[1]).isCloseTo(2.15966, within(0.000005));
        assertThat(line.chiSquared()).isCloseTo(2.743, within(0.0005));
        assertThat(line.uncertainty(1)).isCloseTo(0.1355, within(0.0005));
        assertThat(line.covariance(0, 1)).isCloseTo(-0.0577, within(0.0005));
    }

    /** Annex E, unknown common variance. */
    @Test
    void noUncertaintiesGiven() {
        FittedCalibration line = CalibrationData.of(X, new double[] {3.014, 5.225, 7.004, 9.061, 11.201, 12.762})
                .line();
        assertThat(line.coefficients()[0]).isCloseTo(1.172, within(0.0005));
        assertThat(line.coefficients()[1]).isCloseTo(1.964, within(0.0005));
        assertThat(line.uncertainty(1)).isCloseTo(0.041, within(0.0005));
        assertThat(line.residualDeviation()).isCloseTo(0.171, within(0.0005));
        assertThat(line.toString())
                .startsWith("FittedCalibration[a = 1.172 ± 0.16, b = 1.9636 ± 0.041, sum of squares ");
    }

    @Test
    void quadraticThroughItsOwnPoints() {
        double[] x = {0, 1, 2, 3, 5, 8};
        double[] y = new double[6];
        for (int i = 0; i < 6; i++) {
            y[i] = 0.3 + 1.2 * x[i] - 0.04 * x[i] * x[i];
        }
        FittedCalibration plain = CalibrationData.of(x, y).quadratic();
        assertThat(plain.coefficients()[2]).isCloseTo(-0.04, within(1e-12));
        FittedCalibration both = CalibrationData.of(x, y)
                .withResponseUncertainty(0.1)
                .withStimulusUncertainty(0.2)
                .quadratic();
        assertThat(both.coefficients()[1]).isCloseTo(1.2, within(1e-10));
        assertThat(both.stimulus(both.response(4.4))).isCloseTo(4.4, within(1e-12));
        assertThatThrownBy(() -> both.stimulus(1000)).hasMessageStartingWith("response must be reached by the curve");
    }

    /** With no uncertainty in x the search in both axes is the weighted fit; with a scale of all uncertainties nothing moves. */
    @Test
    void limitingCases() {
        double[] y = {3.2, 4.3, 7.6, 8.6, 11.7, 12.8};
        CalibrationData data = CalibrationData.of(X, y).withResponseUncertainty(0.4);
        assertThat(data.withStimulusUncertainty(0).line().coefficients())
                .containsExactly(data.line().coefficients(), within(1e-12));
        FittedCalibration small = data.withStimulusUncertainty(0.3).quadratic();
        FittedCalibration large = CalibrationData.of(X, y)
                .withResponseUncertainty(4)
                .withStimulusUncertainty(3)
                .quadratic();
        assertThat(large.coefficients()).containsExactly(small.coefficients(), within(1e-8));
        assertThat(large.uncertainty(1)).isCloseTo(10 * small.uncertainty(1), within(1e-6));
    }

    @Test
    void refusesWhatDeterminesNothing() {
        assertThatThrownBy(() -> CalibrationData.of(new double[] {2, 2, 2}, new double[] {1, 2, 3})
                        .line())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("stimulus must have more than 1 different values to determine the curve");
        assertThatThrownBy(() -> CalibrationData.of(new double[2], new double[2]))
                .hasMessageStartingWith("count of pairs must be in [3, ");
        assertThatThrownBy(() -> CalibrationData.of(X, X).withStimulusUncertainty(0.1))
                .hasMessageStartingWith("uncertainty of the responses must be given before");
        assertThatThrownBy(() -> CalibrationData.of(X, X).withResponseUncertainty(0))
                .hasMessage("uncertainty[0] must be greater than 0 and finite, was 0");
    }

    @Test
    void benchCheck() {
        double[] reference = {0.1, 0.1, 0.1, 0.3, 0.3, 0.3, 0.6, 0.6, 0.6};
        double[] reading = {0.101, 0.102, 0.103, 0.301, 0.302, 0.303, 0.610, 0.611, 0.612};
        BenchCheck.Terms terms = BenchCheck.Terms.ofTolerance(0.005, "m").withReferenceUncertainty(0.0005);
        BenchCheck check = BenchCheck.of(reference, reading, terms);
        assertThat(check.levels()).hasSize(3);
        assertThat(check.levels().get(0).bias()).isCloseTo(0.002, within(1e-15));
        assertThat(check.levels().get(0).repeatability()).isCloseTo(0.001, within(1e-15));
        assertThat(check.levels().get(0).expandedUncertainty())
                .isCloseTo(2 * Math.sqrt(0.0005 * 0.0005 + 1e-6 / 3), within(1e-15));
        assertThat(check.repeatability()).isCloseTo(0.001, within(1e-15));
        assertThat(check.bias()).isCloseTo(0.005, within(1e-15));
        // means 0.102, 0.302, 0.611 over 0.1, 0.3, 0.6 by hand: slope 1.01895, greatest residual -0.00226 at 0.3
        assertThat(check.linearity()).isCloseTo(0.00237, within(0.0002));
        assertThat(check.levels().get(0).verdict()).isEqualTo(ToleranceVerdict.WITHIN);
        assertThat(check.levels().get(2).verdict()).isEqualTo(ToleranceVerdict.OUTSIDE);
        assertThat(check.verdict()).isEqualTo(ToleranceVerdict.OUTSIDE);
        assertThat(BenchCheck.of(reference, reading, terms.plusShare(0.011)).verdict())
                .isEqualTo(ToleranceVerdict.UNDECIDED);
        assertThat(BenchCheck.of(reference, reading, terms.plusShare(0.02)).verdict())
                .isEqualTo(ToleranceVerdict.WITHIN);
        assertThat(check.toCsv())
                .startsWith("reference,readings,bias,")
                .hasLineCount(4)
                .contains(",OUTSIDE\n");
        assertThat(check.certificate("level sensor 7", LocalDate.of(2026, 3, 4)))
                .startsWith("Bench check of level sensor 7\nDay            2026-03-04\nUnit           m\n")
                .contains("0.6: 3 readings, bias 0.011 ± 0.0015 (k = 2), OUTSIDE");
        assertThatThrownBy(() -> BenchCheck.of(new double[] {1, 1, 1}, new double[] {1, 1, 1}, terms))
                .hasMessage("count of levels must be at least 3, was 1");
    }
}
