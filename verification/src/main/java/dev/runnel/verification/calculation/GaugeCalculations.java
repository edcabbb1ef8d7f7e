package dev.runnel.verification.calculation;

import dev.runnel.rainfall.gauge.LostTime;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.VolumetricCalibration;
import java.time.Duration;
import java.util.List;

/** Tipping-bucket gauges. */
final class GaugeCalculations {
    private static final String RUNS = "funnel_cm2 volumes_ml tips seconds tip_mm form";

    private GaugeCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of(
                        "rainfall",
                        "gauge.intensity",
                        "mm/h",
                        "tip_mm seconds",
                        in -> TippingBucket.ofTip(in.number("tip_mm"))
                                .recordedMmPerHour(Duration.ofNanos(Math.round(in.number("seconds") * 1e9)))),
                Calculation.of(
                        "rainfall",
                        "gauge.tip-depth",
                        "mm",
                        "volume_ml funnel_cm2",
                        in -> TippingBucket.ofVolume(in.number("volume_ml"), in.number("funnel_cm2"))
                                .tipMm()),
                Calculation.of(
                        "rainfall",
                        "gauge.lost-time.recorded",
                        "mm/h",
                        "lost_seconds tip_mm true_intensity",
                        in -> LostTime.ofSeconds(in.number("lost_seconds"))
                                .recordedMmPerHour(
                                        TippingBucket.ofTip(in.number("tip_mm")), in.number("true_intensity"))),
                Calculation.of(
                        "rainfall",
                        "gauge.lost-time.factor",
                        "1",
                        "lost_seconds tip_mm recorded_intensity",
                        in -> LostTime.ofSeconds(in.number("lost_seconds"))
                                .factor(in.number("recorded_intensity"), in.number("tip_mm"))),
                Calculation.of(
                        "rainfall",
                        "gauge.calibration.corrected",
                        "mm/h",
                        RUNS + " recorded_intensity",
                        in -> fit(in).bucket().trueMmPerHour(in.number("recorded_intensity"))),
                Calculation.of("rainfall", "gauge.calibration.r-squared", "1", RUNS, in -> fit(in).rSquared()),
                Calculation.of("rainfall", "gauge.calibration.tip", "mm", RUNS, in -> fit(in).tipMm()));
    }

    static VolumetricCalibration.Fit fit(Inputs in) {
        double[] volumes = in.sample("volumes_ml");
        double[] tips = in.sample("tips");
        double[] seconds = in.sample("seconds");
        VolumetricCalibration test = VolumetricCalibration.ofFunnel(in.number("funnel_cm2"));
        for (int i = 0; i < volumes.length; i++) {
            test = test.withRun(volumes[i], (int) tips[i], seconds[i]);
        }
        String form = in.text("form");
        return switch (form) {
            case "lost-time" -> test.fitLostTime();
            case "linear" -> test.fitLinear(in.number("tip_mm"));
            case "quadratic" -> test.fitQuadratic(in.number("tip_mm"));
            case "power" -> test.fitPower(in.number("tip_mm"));
            default -> throw new IllegalArgumentException("no such form: " + form);
        };
    }
}
