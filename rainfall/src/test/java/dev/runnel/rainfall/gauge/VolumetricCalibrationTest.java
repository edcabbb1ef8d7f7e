package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.junit.jupiter.api.Test;

class VolumetricCalibrationTest {
    /** A gauge of 400 cm2 that tips every 0.21 mm and loses 0.4 s, run at five rates. */
    private static VolumetricCalibration runs() {
        VolumetricCalibration test = VolumetricCalibration.ofFunnel(400);
        for (double intensity : new double[] {5, 20, 60, 120, 250}) {
            double gap = 3600 * 0.21 / intensity + 0.4;
            int tips = 40;
            test = test.withRun(intensity * 400 * tips * gap / 36_000, tips, tips * gap);
        }
        return test;
    }

    @Test
    void findsTheLostTimeAndTheTip() {
        VolumetricCalibration.Fit fit = runs().fitLostTime();
        assertThat(fit.tipMm()).isCloseTo(0.21, within(1e-12));
        assertThat(((LostTime) fit.calibration()).seconds()).isCloseTo(0.4, within(1e-10));
        assertThat(fit.rSquared()).isCloseTo(1, within(1e-12));
        assertThat(fit.worstPercent()).isLessThan(1e-8);
    }

    /** I = 5.1, 20.9, 62.4, 130.2, 287 on Ir = 5, 20, 60, 120, 250 by NumPy 2.4.6 (polyfit, weights 1/I). */
    @Test
    void fitsCurvesAsAnotherLibrary() {
        double[] recorded = {5, 20, 60, 120, 250};
        double[] truth = {5.1, 20.9, 62.4, 130.2, 287};
        VolumetricCalibration test = VolumetricCalibration.ofFunnel(400);
        for (int i = 0; i < truth.length; i++) {
            double seconds = 3600 * 0.2 * 50 / recorded[i];
            test = test.withRun(truth[i] * 400 * seconds / 36_000, 50, seconds);
        }
        VolumetricCalibration.Fit linear = test.fitLinear(0.2);
        assertThat(linear.bucket().trueMmPerHour(100)).isCloseTo(108.21677861537451, within(1e-9));
        assertThat(linear.rSquared()).isCloseTo(0.9950708730344016, within(1e-10));
        VolumetricCalibration.Fit quadratic = test.fitQuadratic(0.2);
        assertThat(quadratic.bucket().trueMmPerHour(100)).isCloseTo(107.29906373005545, within(1e-9));
        assertThat(quadratic.worstPercent()).isCloseTo(1.2775913275453687, within(1e-7));
        VolumetricCalibration.Fit power = test.fitPower(0.2);
        assertThat(power.bucket().trueMmPerHour(100)).isCloseTo(108.95556239126374, within(1e-9));
        assertThat(power.calibration().covers(251, 0.2)).isFalse();
    }

    /** 535 mL through 214 cm2 are 25 mm: 125 tips of 0.2 mm (an open monitoring-station manual, static test). */
    @Test
    void staticTest() {
        assertThat(VolumetricCalibration.ofFunnel(214).withRun(535, 125, 3600).tipMm())
                .isCloseTo(0.2, within(1e-15));
        assertThat(VolumetricCalibration.ofFunnel(214)
                        .withRun(535, 120, 3600)
                        .withRun(535, 130, 3600)
                        .tipMm())
                .isCloseTo(0.2, within(1e-15));
    }

    /** Recomputed by hand: 0.2, 0.204 and 0.199 mm from 100 tips each. */
    @Test
    void staticTestSaysHowTheRunsAgree() {
        VolumetricCalibration test = VolumetricCalibration.ofFunnel(400)
                .withRun(800, 100, 7200)
                .withRun(816, 100, 7300)
                .withRun(796, 100, 7100);
        VolumetricCalibration.StaticFit fit = test.fitStatic();
        assertThat(fit.tipMm()).isCloseTo(0.201, within(1e-15));
        assertThat(fit.standardDeviationMm()).isCloseTo(Math.sqrt(14e-6 / 2), within(1e-15));
        assertThat(fit.standardErrorMm()).isCloseTo(Math.sqrt(14e-6 / 6), within(1e-15));
        assertThat(fit.worstPercent()).isCloseTo(100 * 0.003 / 0.201, within(1e-10));
        assertThat(fit).hasToString("StaticFit[0.201 mm a tip, standard error 0.00153 mm, worst 1.49 %]");
        assertThatThrownBy(() -> VolumetricCalibration.ofFunnel(400)
                        .withRun(800, 100, 7200)
                        .fitStatic())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("runs must be at least 2, was 1");
    }

    /** A gauge that loses at high rate only: a line through I itself would be 14 % low in the slowest run and in all drizzle. */
    @Test
    void aLineLeavesSlowTipsAlone() {
        VolumetricCalibration test = VolumetricCalibration.ofFunnel(400)
                .withRun(322, 40, 5800)
                .withRun(326, 40, 1170)
                .withRun(331, 40, 595)
                .withRun(342, 40, 307);
        VolumetricCalibration.Fit fit = test.fitLinear(0.2);
        // NumPy 2.4.6: relative errors -0.00322, 0.01839, 0.00714, -0.02325.
        assertThat(fit.worstPercent()).isCloseTo(2.325, within(0.001));
        CalibrationCurve curve = (CalibrationCurve) fit.calibration();
        assertThat(curve.staticFactor()).isCloseTo(322 / 320.0, within(1e-12));
        TippingBucket gauge = TippingBucket.ofTip(0.2).withCalibration(curve);
        Instant noon = Instant.parse("2026-03-01T12:00:00Z");
        double[] depths = gauge.tipDepths(Tips.of(noon, noon.plusSeconds(3600), noon.plusSeconds(7200)));
        assertThat(depths).containsExactly(new double[] {0.20125, 0.20125, 0.20125}, within(0.0001));
    }

    /** Runs whose tips stand for 0.2, 0.02 and 1.7 mm are no gauge. */
    @Test
    void refusesALineThatDoesNotFit() {
        VolumetricCalibration test = VolumetricCalibration.ofFunnel(400);
        double[] recorded = {5, 10, 12};
        double[] truth = {5, 1, 100};
        for (int i = 0; i < truth.length; i++) {
            double seconds = 3600 * 0.2 * 50 / recorded[i];
            test = test.withRun(truth[i] * 400 * seconds / 36_000, 50, seconds);
        }
        VolumetricCalibration strange = test;
        assertThatThrownBy(() -> strange.fitLinear(0.2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("curve must be greater than 0 and finite (mm/h) over its range, was -");
    }

    @Test
    void refusesSlipsOfUnit() {
        assertThatThrownBy(() -> VolumetricCalibration.ofFunnel(0.04))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("funnelCm2 must be in [20, 10000] cm2, was 0.04");
        assertThatThrownBy(() -> VolumetricCalibration.ofFunnel(400).withRun(0.32, 40, 5800))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("10 volumeMl / (funnelCm2 tips) must be in [0.01, 5] mm, was 2.0");
    }

    @Test
    void refusesTooFewRuns() {
        VolumetricCalibration one = VolumetricCalibration.ofFunnel(400).withRun(80, 10, 100);
        assertThatThrownBy(() -> VolumetricCalibration.ofFunnel(400).tipMm())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("runs must be at least 1, was 0");
        assertThatThrownBy(one::fitLostTime)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("runs must be at least 3, was 1");
        assertThatThrownBy(() -> one.withRun(80, 10, 100).withRun(80, 10, 100).fitLinear(0.2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("runs must have at least 2 different rates, had fewer");
        assertThatThrownBy(() -> one.withRun(-1, 10, 100))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("volumeMl must be greater than 0 and finite (mL), was -1");
    }
}
