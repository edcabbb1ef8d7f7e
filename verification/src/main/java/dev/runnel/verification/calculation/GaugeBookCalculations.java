package dev.runnel.verification.calculation;

import static dev.runnel.verification.calculation.RainInputs.START;
import static dev.runnel.verification.calculation.RainInputs.bucket;
import static dev.runnel.verification.calculation.RainInputs.minutes;
import static dev.runnel.verification.calculation.RainInputs.rainfall;
import static dev.runnel.verification.calculation.RainInputs.seconds;
import static dev.runnel.verification.calculation.RainInputs.tips;

import dev.runnel.rainfall.gauge.DoubleMass;
import dev.runnel.rainfall.gauge.StepRecord;
import dev.runnel.rainfall.gauge.SteppedGauge;
import dev.runnel.rainfall.gauge.TipResolution;
import dev.runnel.rainfall.gauge.TipSpreading;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Whole records of rain gauges, see {@link Books}, and what shuffling says of a break. */
final class GaugeBookCalculations {
    private static final String STEPPED = "minutes values kind step_minutes stamp dry from_minutes to_minutes";
    private static final String BARE = "tip_seconds tip_mm spreading cap_seconds step_seconds";

    private GaugeBookCalculations() {}

    static List<Calculation> all() {
        return List.of(
                stepped("depth", "mm", record -> known(record.depth())),
                stepped("start", "min", record -> minute(record.depth())),
                stepped("size", "steps", record -> record.depth().size()),
                stepped("missing", "steps", StepRecord::missing),
                stepped("filled-dry", "steps", StepRecord::filledDry),
                stepped("aside", "readings", StepRecord::aside),
                stepped("aside-depth", "mm", StepRecord::asideMm),
                rainfall("gauge.bare-tips.depth", "mm", BARE, in -> known(bare(in))),
                rainfall("gauge.bare-tips.start", "min", BARE, in -> minute(bare(in))),
                rainfall("gauge.bare-tips.size", "steps", BARE, in -> bare(in).size()),
                rainfall(
                        "gauge.resolution.clock-uncertainty",
                        "mm/h",
                        "tip_mm seconds clock_seconds",
                        in -> TipResolution.of(bucket(in))
                                .standardUncertaintyMmPerHour(seconds(in, "seconds"), seconds(in, "clock_seconds"))),
                rainfall(
                        "gauge.double-mass.chance",
                        "1",
                        "gauge_mm reference_mm least shuffles",
                        in -> DoubleMass.of(in.sample("gauge_mm"), in.sample("reference_mm"))
                                .chanceOfBreak(in.integer("least"), in.integer("shuffles"), 1)));
    }

    private static Calculation stepped(String name, String unit, ToDoubleFunction<StepRecord> measure) {
        return rainfall("gauge.stepped-book." + name, unit, STEPPED, in -> measure.applyAsDouble(stepped(in)));
    }

    private static double known(RegularSeries rain) {
        List<Double> depths = Arrays.stream(rain.toValues()).boxed().toList();
        return Books.sum(depths, depth -> Double.isNaN(depth) ? 0 : depth);
    }

    private static double minute(RegularSeries rain) {
        return Duration.between(START, rain.start()).toNanos() / 60e9;
    }

    private static StepRecord stepped(Inputs in) {
        double[] minutes = in.sample("minutes");
        double[] values = in.sample("values");
        SeriesBuilder readings = Series.builder();
        for (int i = 0; i < minutes.length; i++) {
            readings.add(START.plusNanos(Math.round(minutes[i] * 60e9)), values[i]);
        }
        Duration step = minutes(in, "step_minutes");
        SteppedGauge gauge =
                in.text("kind").equals("intensity") ? SteppedGauge.ofIntensity(step) : SteppedGauge.ofDepth(step);
        gauge = in.text("stamp").equals("end") ? gauge.withStampAtEnd() : gauge;
        gauge = in.number("dry") > 0 ? gauge.withDryWithoutReading() : gauge;
        return in.number("to_minutes") > in.number("from_minutes")
                ? gauge.record(
                        readings.build(),
                        Interval.of(START.plus(minutes(in, "from_minutes")), START.plus(minutes(in, "to_minutes"))))
                : gauge.record(readings.build());
    }

    private static RegularSeries bare(Inputs in) {
        TipSpreading spreading = in.text("spreading").equals("count")
                ? TipSpreading.COUNT
                : TipSpreading.interval(seconds(in, "cap_seconds"));
        return bucket(in).depth(tips(in), seconds(in, "step_seconds"), spreading);
    }
}
