package dev.runnel.verification.calculation;

import dev.runnel.rainfall.gauge.LostTime;
import dev.runnel.rainfall.gauge.TippingBucket;
import java.time.Duration;
import java.util.List;

/** Tipping-bucket gauges. */
final class GaugeCalculations {
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
                                .recordedMmPerHour(in.number("true_intensity"), in.number("tip_mm"))),
                Calculation.of(
                        "rainfall",
                        "gauge.lost-time.factor",
                        "1",
                        "lost_seconds tip_mm recorded_intensity",
                        in -> LostTime.ofSeconds(in.number("lost_seconds"))
                                .factor(in.number("recorded_intensity"), in.number("tip_mm"))));
    }
}
