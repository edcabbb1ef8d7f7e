package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CalibrationTest {
    /** Worked by hand from Δt = 3600 d/I + τ, the sum of filling and lost time. */
    @ParameterizedTest
    @CsvSource({
        "0.2, 0.45, 100, 7.65",
        "0.2, 0.45, 200, 4.05",
        "0.254, 0.45, 50, 18.738",
        "0.5, 0.5, 5, 360.5",
        "0.5, 0.5, 200, 9.5"
    })
    void lostTimeUndoesWhatTheBucketDid(double tip, double lost, double truth, double interval) {
        LostTime calibration = LostTime.ofSeconds(lost);
        double recorded = TippingBucket.ofTip(tip).recordedMmPerHour(Duration.ofNanos(Math.round(interval * 1e9)));
        assertThat(TippingBucket.ofTip(tip).withCalibration(calibration).trueMmPerHour(recorded))
                .isCloseTo(truth, within(1e-10 * truth));
        assertThat(calibration.recordedMmPerHour(TippingBucket.ofTip(tip), truth))
                .isCloseTo(recorded, within(1e-12 * truth));
    }

    /** Duchon, Fiebrich and Grimsley (2014), abstract: 0.98 % of a bucket lost at 19.9 mm/h with τ = 0.450 s. */
    @Test
    void lostShareOfOneBucketAgreesWithDuchonAndOthers() {
        double tip = 0.254;
        double recorded = LostTime.ofSeconds(0.450).recordedMmPerHour(TippingBucket.ofTip(tip), 19.9);
        assertThat(19.9 / recorded - 1).isCloseTo(0.0098, within(0.00005));
    }

    @Test
    void lostTimeStopsWhereHalfIsLost() {
        LostTime calibration = LostTime.ofSeconds(0.5);
        assertThat(calibration.highestMmPerHour(0.2)).isEqualTo(720);
        assertThat(calibration.factor(720, 0.2)).isEqualTo(2);
        assertThat(calibration.factor(7200, 0.2)).isEqualTo(2);
        assertThat(calibration.factor(Double.POSITIVE_INFINITY, 0.2)).isEqualTo(2);
        assertThat(calibration.covers(720, 0.2)).isTrue();
        assertThat(calibration.covers(720.1, 0.2)).isFalse();
    }

    @Test
    void noLostTimeChangesNothing() {
        LostTime none = LostTime.ofSeconds(0);
        assertThat(none.factor(500, 0.2)).isEqualTo(1);
        assertThat(none.factor(Double.POSITIVE_INFINITY, 0.2)).isEqualTo(1);
        assertThat(Calibration.none().factor(Double.POSITIVE_INFINITY, 0.2)).isEqualTo(1);
        assertThat(Calibration.none().covers(1e9, 0.2)).isTrue();
    }

    @Test
    void curvesFollowTheirFormula() {
        assertThat(TippingBucket.ofTip(0.2)
                        .withCalibration(CalibrationCurve.linear(-0.5, 1.08, 5, 300))
                        .trueMmPerHour(50))
                .isCloseTo(53.5, within(1e-12));
        assertThat(TippingBucket.ofTip(0.2)
                        .withCalibration(CalibrationCurve.quadratic(0.2, 0.98, 0.0006, 5, 300))
                        .trueMmPerHour(100))
                .isCloseTo(104.2, within(1e-12));
        assertThat(TippingBucket.ofTip(0.2)
                        .withCalibration(CalibrationCurve.power(0.9, 1.05, 5, 300))
                        .trueMmPerHour(100))
                .isCloseTo(0.9 * Math.pow(100, 1.05), within(1e-12));
    }

    @Test
    void curvesKeepTheFactorOfTheirUpperLimitAndGoToTheStaticOne() {
        CalibrationCurve curve = CalibrationCurve.linear(-0.5, 1.08, 5, 300);
        assertThat(curve.factor(5, 0.2)).isCloseTo(0.98, within(1e-12));
        assertThat(curve.factor(2.5, 0.2)).isCloseTo(0.99, within(1e-12));
        assertThat(curve.factor(0, 0.2)).isEqualTo(1);
        CalibrationCurve measured = curve.withStaticFactor(1.01);
        assertThat(measured.factor(0, 0.2)).isEqualTo(1.01);
        assertThat(measured.factor(2.5, 0.2)).isCloseTo(0.995, within(1e-12));
        assertThat(measured.factor(5, 0.2)).isEqualTo(curve.factor(5, 0.2));
        assertThat(measured).isNotEqualTo(curve);
        assertThat(measured).hasToString("CalibrationCurve[I = -0.5 + 1.08 Ir, Ir 5 to 300 mm/h, 1.01 for slow tips]");
        assertThat(curve.lowestMmPerHour(0.2)).isEqualTo(5);
        assertThat(curve.highestMmPerHour(0.2)).isEqualTo(300);
        assertThat(curve.factor(Double.POSITIVE_INFINITY, 0.2)).isEqualTo(curve.factor(300, 0.2));
        assertThat(curve.covers(4.99, 0.2)).isFalse();
        assertThat(curve.covers(5, 0.2)).isTrue();
        assertThat(curve.covers(300, 0.2)).isTrue();
        assertThat(curve.covers(301, 0.2)).isFalse();
    }

    @Test
    void refusesWhatIsNoCalibration() {
        assertThatThrownBy(() -> LostTime.ofSeconds(-0.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("seconds must be in [0, 5] s, was -0.1");
        assertThatThrownBy(() -> LostTime.ofSeconds(45))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("seconds must be in [0, 5] s, was 45");
        assertThatThrownBy(() -> CalibrationCurve.linear(0, 1, 5, 300).withStaticFactor(101))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("staticFactor must be in [0.5, 2], was 101");
        assertThatThrownBy(() -> CalibrationCurve.linear(-6, 1, 5, 300))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "curve must be greater than 0 and finite (mm/h) over its range, was -1 at a recorded 5 mm/h");
        assertThatThrownBy(() -> CalibrationCurve.quadratic(90, -2, 0.01, 5, 300))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("was -10 at a recorded 100 mm/h");
        assertThatThrownBy(() -> CalibrationCurve.power(1, Double.NaN, 5, 300))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("b must be finite, was NaN");
        assertThatThrownBy(() -> CalibrationCurve.power(1, 1, 300, 5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("highestMmPerHour must be in [300,");
    }

    @Test
    void readsWell() {
        assertThat(LostTime.ofSeconds(0.45)).hasToString("LostTime[0.45 s]");
        assertThat(CalibrationCurve.quadratic(0.2, 0.98, 0.0006, 5, 300))
                .hasToString("CalibrationCurve[I = 0.2 + 0.98 Ir + 0.0006 Ir^2, Ir 5 to 300 mm/h]");
        assertThat(CalibrationCurve.power(0.9, 1.05, 5, 300))
                .hasToString("CalibrationCurve[I = 0.9 Ir^1.05, Ir 5 to 300 mm/h]")
                .isEqualTo(CalibrationCurve.power(0.9, 1.05, 5, 300))
                .isNotEqualTo(CalibrationCurve.power(0.9, 1.05, 5, 301));
        assertThat(TippingBucket.ofTip(0.2).withCalibration(LostTime.ofSeconds(0.45)))
                .hasToString("TippingBucket[0.2 mm, LostTime[0.45 s]]")
                .isEqualTo(TippingBucket.ofVolume(8, 400).withCalibration(LostTime.ofSeconds(0.45)));
    }
}
