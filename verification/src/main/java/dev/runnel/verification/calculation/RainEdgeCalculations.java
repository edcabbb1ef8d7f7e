package dev.runnel.verification.calculation;

import static dev.runnel.verification.calculation.RainInputs.START;
import static dev.runnel.verification.calculation.RainInputs.bucket;
import static dev.runnel.verification.calculation.RainInputs.minutes;
import static dev.runnel.verification.calculation.RainInputs.network;
import static dev.runnel.verification.calculation.RainInputs.rain;
import static dev.runnel.verification.calculation.RainInputs.rainfall;
import static dev.runnel.verification.calculation.RainInputs.tips;

import dev.runnel.rainfall.areal.Catchment;
import dev.runnel.rainfall.areal.CatchmentCells;
import dev.runnel.rainfall.areal.Location;
import dev.runnel.rainfall.areal.RainGrid;
import dev.runnel.rainfall.event.DryGaps;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.SlidingMaximum;
import dev.runnel.rainfall.event.SnowRecord;
import dev.runnel.rainfall.event.SnowRule;
import dev.runnel.rainfall.event.StormAssessment;
import dev.runnel.rainfall.event.StormCriteria;
import dev.runnel.rainfall.event.StormProfile;
import dev.runnel.rainfall.frequency.DurationPeaks;
import dev.runnel.rainfall.gauge.CalibrationCurve;
import dev.runnel.rainfall.gauge.TipChecks;
import dev.runnel.rainfall.gauge.TipFlag;
import dev.runnel.rainfall.gauge.TipReview;
import dev.runnel.rainfall.gauge.TipSummary;
import dev.runnel.rainfall.gauge.VolumetricCalibration;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;

/** Whole answers about rain, see {@link Books}, for tables that go to the edges: what is left of a step, ties, gaps. */
final class RainEdgeCalculations {
    private static final String GAPS = "tip_seconds convention";
    private static final String STORMS =
            "gauges step_minutes inter_event_minutes depth_mm intensity over_minutes spread";
    private static final String SNOW =
            "depths step_minutes temperature_minutes celsius snow_below rain_above melt_above degree_day";
    private static final String CURVE = "form a b c lowest highest static_factor";
    private static final String CHECKS = "tip_seconds tip_mm clock_seconds ceiling flag";
    private static final String PEAKS = "depths step_minutes window_minutes separation_minutes";
    private static final String TEST = "funnel_cm2 volumes_ml tips";

    private RainEdgeCalculations() {}

    static List<Calculation> all() {
        return List.of(
                rainfall(
                        "dry-gaps.of-tips.variation",
                        "1",
                        GAPS,
                        in -> Books.sum(candidates(in), DryGaps.Candidate::coefficientOfVariation)),
                rainfall(
                        "dry-gaps.of-tips.minimum",
                        "h",
                        GAPS,
                        in -> Books.sum(candidates(in), each -> each.minimum().toNanos() / 3.6e12)),
                rainfall("dry-gaps.of-tips.kept", "gaps", GAPS, in -> Books.sum(candidates(in), each -> each.gaps())),
                rainfall(
                        "storm.assessed.start",
                        "min",
                        STORMS,
                        in -> Books.sum(
                                assessed(in), each -> minute(each.storm().start()))),
                rainfall(
                        "storm.assessed.end",
                        "min",
                        STORMS,
                        in -> Books.sum(
                                assessed(in), each -> minute(each.storm().end()))),
                rainfall(
                        "storm.assessed.met",
                        "storms",
                        STORMS,
                        in -> Books.sum(assessed(in), each -> each.isSuitable() ? 1 : 0)),
                rainfall(
                        "storm.profile.peak",
                        "min",
                        "depths step_minutes",
                        in -> StormProfile.of(rain(in)).timeToPeak().toNanos() / 60e9),
                rainfall(
                        "event.peak-start",
                        "min",
                        "depths step_minutes window_minutes",
                        in -> minute(SlidingMaximum.of(minutes(in, "window_minutes"))
                                .peaks(rain(in))
                                .get(0)
                                .start())),
                rainfall("snow.book.rain", "mm", SNOW, in -> known(snow(in).rain())),
                rainfall("snow.book.snow", "mm", SNOW, in -> known(snow(in).snow())),
                rainfall("snow.book.melt", "mm", SNOW, in -> known(snow(in).melt())),
                rainfall("snow.book.lying", "mm", SNOW, in -> known(snow(in).lying())),
                rainfall("snow.book.unknown", "steps", SNOW, in -> snow(in).unknown()),
                rainfall(
                        "gauge.curve.factor",
                        "1",
                        CURVE + " recorded",
                        in -> curve(in).factor(in.number("recorded"), 0.2)),
                rainfall(
                        "gauge.curve.covers",
                        "1 or 0",
                        CURVE + " recorded",
                        in -> curve(in).covers(in.number("recorded"), 0.2) ? 1 : 0),
                rainfall(
                        "gauge.summary.beyond",
                        "tips",
                        CURVE + " tip_seconds tip_mm",
                        in -> summary(in).beyondCalibration()),
                rainfall(
                        "gauge.summary.below",
                        "tips",
                        CURVE + " tip_seconds tip_mm",
                        in -> summary(in).belowCalibration()),
                rainfall(
                        "gauge.summary.above",
                        "tips",
                        CURVE + " tip_seconds tip_mm",
                        in -> summary(in).aboveCalibration()),
                rainfall(
                        "gauge.summary.coincident",
                        "tips",
                        CURVE + " tip_seconds tip_mm",
                        in -> summary(in).coincident()),
                rainfall(
                        "gauge.summary.depth",
                        "mm",
                        CURVE + " tip_seconds tip_mm",
                        in -> summary(in).depthMm()),
                rainfall("gauge.checks.book", "tips", CHECKS, RainEdgeCalculations::flagged),
                rainfall(
                        "gauge.checks.frost",
                        "tips",
                        "tip_seconds tip_mm temperature_seconds celsius limit back_seconds flag",
                        in -> flagged(
                                in,
                                TipChecks.of(bucket(in))
                                        .withTemperature(
                                                temperatures(in, "temperature_seconds", 1e9),
                                                in.number("limit"),
                                                RainInputs.seconds(in, "back_seconds")))),
                rainfall(
                        "gauge.calibration.static-deviation",
                        "mm",
                        TEST,
                        in -> test(in).fitStatic().standardDeviationMm()),
                rainfall(
                        "gauge.calibration.static-error",
                        "mm",
                        TEST,
                        in -> test(in).fitStatic().standardErrorMm()),
                rainfall(
                        "gauge.calibration.static-worst",
                        "%",
                        TEST,
                        in -> test(in).fitStatic().worstPercent()),
                rainfall(
                        "peaks.windows.starts",
                        "min",
                        PEAKS + " threshold",
                        in -> Books.sum(above(in), each -> minute(each.start()))),
                rainfall(
                        "peaks.windows.depths",
                        "mm",
                        PEAKS + " threshold",
                        in -> Books.sum(above(in), each -> each.depthMm())),
                rainfall(
                        "peaks.windows.equal",
                        "1",
                        PEAKS + " threshold",
                        in -> peaks(in).equalToThreshold(minutes(in, "window_minutes"))),
                rainfall(
                        "areal.grid.covered",
                        "1",
                        "corner cell columns rows catchment",
                        in -> cells(in).coveredShare()),
                rainfall(
                        "areal.grid.cells",
                        "cells",
                        "corner cell columns rows catchment",
                        in -> cells(in).size()));
    }

    private static double minute(Instant time) {
        return Duration.between(START, time).toNanos() / 60e9;
    }

    private static double known(RegularSeries rain) {
        List<Double> depths = Arrays.stream(rain.toValues()).boxed().toList();
        return Books.sum(depths, depth -> Double.isNaN(depth) ? 0 : depth);
    }

    private static List<DryGaps.Candidate> candidates(Inputs in) {
        return DryGaps.of(tips(in))
                .candidates(DryGaps.Convention.valueOf(in.text("convention").toUpperCase(Locale.ROOT)));
    }

    private static List<StormAssessment> assessed(Inputs in) {
        StormCriteria criteria = StormCriteria.ofDepthAndIntensity(
                        "table", in.number("depth_mm"), in.number("intensity"), minutes(in, "over_minutes"))
                .withMaximumSpread(in.number("spread"));
        return criteria.assess(
                EventSeparation.of(minutes(in, "inter_event_minutes")), network(in, minutes(in, "step_minutes")));
    }

    private static SnowRecord snow(Inputs in) {
        return SnowRule.standard()
                .withSnowBelowAndRainAbove(in.number("snow_below"), in.number("rain_above"))
                .withMeltAbove(in.number("melt_above"))
                .withDegreeDayFactor(in.number("degree_day"))
                .mark(rain(in), temperatures(in, "temperature_minutes", 60e9));
    }

    private static CalibrationCurve curve(Inputs in) {
        double a = in.number("a");
        double b = in.number("b");
        double lowest = in.number("lowest");
        double highest = in.number("highest");
        CalibrationCurve curve = switch (in.text("form")) {
            case "linear" -> CalibrationCurve.linear(a, b, lowest, highest);
            case "quadratic" -> CalibrationCurve.quadratic(a, b, in.number("c"), lowest, highest);
            default -> CalibrationCurve.power(a, b, lowest, highest);
        };
        return curve.withStaticFactor(in.number("static_factor"));
    }

    private static TipSummary summary(Inputs in) {
        return bucket(in).withCalibration(curve(in)).summary(tips(in));
    }

    private static double flagged(Inputs in) {
        return flagged(
                in,
                TipChecks.of(bucket(in))
                        .withClock(RainInputs.seconds(in, "clock_seconds"))
                        .withCeiling(in.number("ceiling")));
    }

    /** The places of the tips with a flag, summed. */
    private static double flagged(Inputs in, TipChecks checks) {
        TipFlag flag = TipFlag.valueOf(in.text("flag").toUpperCase(Locale.ROOT));
        TipReview review = checks.review(tips(in));
        List<Double> marks = new ArrayList<>();
        for (int i = 0; i < review.tips().size(); i++) {
            marks.add(review.flags(i).contains(flag) ? 1.0 : 0.0);
        }
        return Books.sum(marks, mark -> mark);
    }

    private static Series temperatures(Inputs in, String times, double nanosPerUnit) {
        double[] at = in.sample(times);
        double[] celsius = in.sample("celsius");
        SeriesBuilder air = Series.builder();
        for (int i = 0; i < at.length; i++) {
            air.add(START.plusNanos(Math.round(at[i] * nanosPerUnit)), celsius[i]);
        }
        return air.build();
    }

    private static VolumetricCalibration test(Inputs in) {
        VolumetricCalibration test = VolumetricCalibration.ofFunnel(in.number("funnel_cm2"));
        double[] tips = in.sample("tips");
        for (int i = 0; i < tips.length; i++) {
            test = test.withRun(in.sample("volumes_ml")[i], (int) tips[i], 60 * (i + 1));
        }
        return test;
    }

    private static List<dev.runnel.rainfall.event.PeakDepth> above(Inputs in) {
        return peaks(in).windows(minutes(in, "window_minutes"));
    }

    private static DurationPeaks peaks(Inputs in) {
        TreeMap<Duration, Double> thresholds = new TreeMap<>();
        thresholds.put(minutes(in, "window_minutes"), in.number("threshold"));
        return DurationPeaks.from(rain(in), thresholds, minutes(in, "separation_minutes"));
    }

    private static CatchmentCells cells(Inputs in) {
        String[] corner = in.text("corner").split(" ");
        return RainGrid.from(
                        Location.of(Double.parseDouble(corner[0]), Double.parseDouble(corner[1])), in.number("cell"))
                .withColumns(in.integer("columns"))
                .withRows(in.integer("rows"))
                .over(Catchment.parse(in.text("catchment")));
    }
}
