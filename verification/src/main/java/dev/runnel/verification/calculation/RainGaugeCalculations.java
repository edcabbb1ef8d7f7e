package dev.runnel.verification.calculation;

import static dev.runnel.verification.calculation.RainInputs.START;
import static dev.runnel.verification.calculation.RainInputs.bucket;
import static dev.runnel.verification.calculation.RainInputs.minutes;
import static dev.runnel.verification.calculation.RainInputs.rainfall;
import static dev.runnel.verification.calculation.RainInputs.seconds;
import static dev.runnel.verification.calculation.RainInputs.series;
import static dev.runnel.verification.calculation.RainInputs.tips;

import dev.runnel.rainfall.gauge.RainUnits;
import dev.runnel.rainfall.gauge.SteppedGauge;
import dev.runnel.rainfall.gauge.TipChecks;
import dev.runnel.rainfall.gauge.TipFlag;
import dev.runnel.rainfall.gauge.TipResolution;
import dev.runnel.rainfall.gauge.TipSpreading;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.rainfall.gauge.VolumetricCalibration;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.util.List;
import java.util.Locale;

/** What is calculated of the rain of one gauge: tips, steps, units, resolution. */
final class RainGaugeCalculations {
    private static final String TIPS = "tip_seconds tip_mm lost_seconds? spreading cap_seconds? record_seconds"
            + " step_seconds outage_from? outage_to? step";

    private RainGaugeCalculations() {}

    static List<Calculation> all() {
        return List.of(
                rainfall("gauge.tips.step-depth", "mm", TIPS, in -> laidOut(in).value(in.integer("step"))),
                rainfall(
                        "gauge.tips.added",
                        "mm",
                        "tip_seconds tip_mm lost_seconds?",
                        in -> bucket(in).summary(tips(in)).addedMm()),
                rainfall(
                        "gauge.counts.step-depth",
                        "mm",
                        "counts tip_mm lost_seconds? step_seconds step",
                        in -> bucket(in)
                                .depthOfCounts(
                                        RegularSeries.of(START, seconds(in, "step_seconds"), in.sample("counts")))
                                .value(in.integer("step"))),
                rainfall(
                        "gauge.tips.of-counts",
                        "tips",
                        "counts",
                        in -> Tips.ofCounts(series(in.sample("counts"))).size()),
                rainfall(
                        "gauge.tips.of-depths",
                        "tips",
                        "depths tip_mm",
                        in -> Tips.ofDepths(series(in.sample("depths")), bucket(in))
                                .size()),
                rainfall(
                        "gauge.checks.flagged",
                        "tips",
                        "tip_seconds tip_mm clock_seconds flag",
                        in -> TipChecks.of(bucket(in))
                                .withClock(seconds(in, "clock_seconds"))
                                .review(tips(in))
                                .count(TipFlag.valueOf(in.text("flag").toUpperCase(Locale.ROOT)))),
                rainfall(
                        "rain-units.intensity",
                        "mm/h",
                        "depth step_seconds",
                        in -> RainUnits.intensity(
                                        RegularSeries.of(START, seconds(in, "step_seconds"), in.number("depth")))
                                .value(0)),
                rainfall(
                        "rain-units.depth",
                        "mm",
                        "intensity step_seconds",
                        in -> RainUnits.depth(
                                        RegularSeries.of(START, seconds(in, "step_seconds"), in.number("intensity")))
                                .value(0)),
                rainfall(
                        "rain-units.in-steps",
                        "mm",
                        "depths step_seconds new_seconds step",
                        in -> RainUnits.inSteps(
                                        RegularSeries.of(START, seconds(in, "step_seconds"), in.sample("depths")),
                                        seconds(in, "new_seconds"))
                                .depth()
                                .value(in.integer("step"))),
                rainfall(
                        "gauge.stepped.depth",
                        "mm",
                        "minutes values kind step_minutes stamp step",
                        in -> stepped(in).value(in.integer("step"))),
                rainfall(
                        "gauge.resolution.step",
                        "mm/h",
                        "tip_mm window_seconds",
                        in -> TipResolution.of(bucket(in)).stepMmPerHour(seconds(in, "window_seconds"))),
                rainfall(
                        "gauge.resolution.uncertainty",
                        "mm/h",
                        "tip_mm window_seconds",
                        in -> TipResolution.of(bucket(in)).standardUncertaintyMmPerHour(seconds(in, "window_seconds"))),
                rainfall(
                        "gauge.resolution.window",
                        "s",
                        "tip_mm intensity share",
                        in -> TipResolution.of(bucket(in))
                                        .windowFor(in.number("intensity"), in.number("share"))
                                        .toNanos()
                                / 1e9),
                rainfall(
                        "gauge.resolution.least",
                        "mm",
                        "tip_mm tips",
                        in -> TipResolution.of(bucket(in)).leastMm(in.integer("tips"))),
                rainfall(
                        "gauge.resolution.most",
                        "mm",
                        "tip_mm tips",
                        in -> TipResolution.of(bucket(in)).mostMm(in.integer("tips"))),
                rainfall(
                        "gauge.resolution.depth-uncertainty",
                        "mm",
                        "tip_mm",
                        in -> TipResolution.of(bucket(in)).standardUncertaintyMm()),
                rainfall(
                        "gauge.tips.step-depth-without-outage",
                        "mm",
                        TIPS,
                        in -> bucket(in)
                                .depth(
                                        tips(in),
                                        Interval.of(START, seconds(in, "record_seconds")),
                                        seconds(in, "step_seconds"),
                                        spreading(in))
                                .value(in.integer("step"))),
                rainfall("gauge.calibration.static-tip", "mm", "funnel_cm2 volumes_ml tips", in -> {
                    VolumetricCalibration test = VolumetricCalibration.ofFunnel(in.number("funnel_cm2"));
                    double[] tips = in.sample("tips");
                    for (int i = 0; i < tips.length; i++) {
                        test = test.withRun(in.sample("volumes_ml")[i], (int) tips[i], 60 * (i + 1));
                    }
                    return test.fitStatic().tipMm();
                }));
    }

    private static TipSpreading spreading(Inputs in) {
        Duration cap = in.has("cap_seconds") ? seconds(in, "cap_seconds") : Duration.ofHours(1);
        return switch (in.text("spreading")) {
            case "count" -> TipSpreading.COUNT;
            case "interval" -> TipSpreading.interval(cap);
            case "smooth" -> TipSpreading.smooth(cap);
            default -> throw new IllegalArgumentException("spreading must be count, interval or smooth");
        };
    }

    private static RegularSeries laidOut(Inputs in) {
        Interval record = Interval.of(START, seconds(in, "record_seconds"));
        List<Interval> outages = in.has("outage_from") && in.number("outage_to") > 0
                ? List.of(Interval.of(START.plus(seconds(in, "outage_from")), START.plus(seconds(in, "outage_to"))))
                : List.of();
        return bucket(in)
                .record(tips(in), record, seconds(in, "step_seconds"), spreading(in), outages)
                .depth();
    }

    private static RegularSeries stepped(Inputs in) {
        double[] minutes = in.sample("minutes");
        double[] values = in.sample("values");
        SeriesBuilder readings = Series.builder();
        for (int i = 0; i < minutes.length; i++) {
            readings.add(START.plusSeconds(Math.round(minutes[i] * 60)), values[i]);
        }
        Duration step = minutes(in, "step_minutes");
        SteppedGauge gauge =
                in.text("kind").equals("intensity") ? SteppedGauge.ofIntensity(step) : SteppedGauge.ofDepth(step);
        return (in.text("stamp").equals("end") ? gauge.withStampAtEnd() : gauge)
                .withDryWithoutReading()
                .record(readings.build())
                .depth();
    }
}
