package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.rating.RatingCurve;
import dev.runnel.hydraulics.rating.RatingFit;
import dev.runnel.hydraulics.structure.ApproachChannel;
import dev.runnel.hydraulics.structure.RectangularWeir;
import dev.runnel.hydraulics.uncertainty.MeasurementModel;
import dev.runnel.hydraulics.uncertainty.Propagation;
import dev.runnel.hydraulics.uncertainty.Simulation;
import dev.runnel.hydraulics.uncertainty.UncertainInput;
import dev.runnel.hydraulics.uncertainty.VolumeUncertainty;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** Rating curves and uncertainties. The measurement models are the printed examples' own. */
final class RatingCalculations {
    private static final String CURVE = "stages discharges uncertainties? offset";
    private static final String GAUGE = "part";
    private static final String SUM = "deviations shape";
    private static final String VOLUME = "flows step random common memory";
    private static final String WEIR =
            "width crest_height head width_uncertainty head_uncertainty coefficient_uncertainty";
    private static final int TRIALS = 400_000;

    /** Two sources print the same sums. */
    private static final Map<String, Double> DRAWN_ENDS = KeptAnswers.map();

    private static final LastAnswer<Simulation> LAST_LOSS = new LastAnswer<>();

    private RatingCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("rating.stage", "m", CURVE + " discharge", in -> curve(in).stage(in.number("discharge"))),
                of(
                        "rating.extrapolated",
                        "m3/s",
                        CURVE + " stage",
                        in -> curve(in).extrapolated(in.number("stage"))),
                of(
                        "rating.fitted-offset",
                        "m",
                        "stages discharges",
                        in -> fitted(in).segments().get(0).offset()),
                of(
                        "rating.fitted-offset.exponent",
                        "1",
                        "stages discharges",
                        in -> fitted(in).segments().get(0).exponent()),
                of(
                        "rating.fitted-offset.standard-error",
                        "1",
                        "stages discharges",
                        in -> fitted(in).standardError()),
                of(
                        "uncertainty.readings.value",
                        "1",
                        "readings half_width",
                        in -> readings(in).value()),
                of(
                        "uncertainty.readings.standard",
                        "1",
                        "readings half_width",
                        in -> readings(in).standardUncertainty()),
                of(
                        "rating.constant",
                        "m3/s",
                        CURVE,
                        in -> curve(in).segments().get(0).constant()),
                of(
                        "rating.exponent",
                        "1",
                        CURVE,
                        in -> curve(in).segments().get(0).exponent()),
                of("rating.standard-error", "1", CURVE, in -> curve(in).standardError()),
                of("rating.discharge", "m3/s", CURVE + " stage", in -> curve(in).discharge(in.number("stage"))),
                of(
                        "rating.confidence.lower",
                        "m3/s",
                        CURVE + " stage",
                        in -> curve(in).confidence(in.number("stage"), 0.95).lower()),
                of(
                        "rating.confidence.upper",
                        "m3/s",
                        CURVE + " stage",
                        in -> curve(in).confidence(in.number("stage"), 0.95).upper()),
                of(
                        "rating.prediction.lower",
                        "m3/s",
                        CURVE + " stage",
                        in -> curve(in).prediction(in.number("stage"), 0.95).lower()),
                of(
                        "rating.prediction.upper",
                        "m3/s",
                        CURVE + " stage",
                        in -> curve(in).prediction(in.number("stage"), 0.95).upper()),
                of(
                        "rating.uncertainty",
                        "1",
                        CURVE + " stage stage_uncertainty",
                        in -> curve(in).relativeUncertainty(in.number("stage"), in.number("stage_uncertainty"))),
                of(
                        "rating.break",
                        "m",
                        "stages discharges",
                        in -> joined(in).segments().get(1).fromStage()),
                of(
                        "rating.break.lower-exponent",
                        "1",
                        "stages discharges",
                        in -> joined(in).segments().get(0).exponent()),
                of(
                        "rating.break.upper-exponent",
                        "1",
                        "stages discharges",
                        in -> joined(in).segments().get(1).exponent()),
                of(
                        "uncertainty.end-gauge.value",
                        "nm",
                        "",
                        in -> endGauge().propagated().value()),
                of(
                        "uncertainty.end-gauge.standard",
                        "nm",
                        "",
                        in -> endGauge().propagated().standardUncertainty()),
                of(
                        "uncertainty.end-gauge.second-order",
                        "nm",
                        "",
                        in -> endGauge().secondOrderUncertainty()),
                of(
                        "uncertainty.end-gauge.contribution",
                        "nm",
                        GAUGE,
                        in -> endGauge()
                                .propagated()
                                .contributions()
                                .get(in.integer("part"))
                                .amount()),
                of(
                        "uncertainty.end-gauge.degrees-of-freedom",
                        "1",
                        "",
                        in -> endGauge().propagated().effectiveDegreesOfFreedom()),
                of(
                        "uncertainty.end-gauge.coverage-factor",
                        "1",
                        "probability",
                        in -> endGauge().propagated().coverageFactor(in.number("probability"))),
                of(
                        "uncertainty.impedance.value",
                        "ohm",
                        GAUGE,
                        in -> impedance(in).value()),
                of(
                        "uncertainty.impedance.standard",
                        "ohm",
                        GAUGE,
                        in -> impedance(in).standardUncertainty()),
                of(
                        "uncertainty.sum.standard",
                        "1",
                        SUM,
                        in -> sum(in).propagated().standardUncertainty()),
                of(
                        "uncertainty.sum.expanded",
                        "1",
                        SUM,
                        in -> sum(in).propagated().expanded(0.95)),
                of("uncertainty.sum.simulated-end", "1", SUM, RatingCalculations::drawnEnd),
                of(
                        "uncertainty.loss.simulated-mean",
                        "1e-6",
                        "x1",
                        in -> drawnLoss(in).mean()),
                of(
                        "uncertainty.loss.simulated-standard",
                        "1e-6",
                        "x1",
                        in -> drawnLoss(in).standardUncertainty()),
                of(
                        "uncertainty.loss.simulated-end",
                        "1e-6",
                        "x1",
                        in -> drawnLoss(in).shortestInterval(0.95)[1]),
                of("uncertainty.weir.discharge", "m3/s", WEIR, in -> weir(in).value()),
                of("uncertainty.weir.standard", "m3/s", WEIR, in -> weir(in).standardUncertainty()),
                of(
                        "uncertainty.weir.share-of-head",
                        "1",
                        WEIR,
                        in -> weir(in).contributions().get(1).share()),
                of("uncertainty.volume", "m3", VOLUME, in -> volume(in).volume()),
                of("uncertainty.volume.random", "m3", VOLUME, in -> volume(in).random()),
                of("uncertainty.volume.common", "m3", VOLUME, in -> volume(in).common()));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static RatingCurve curve(Inputs in) {
        RatingFit fit = RatingFit.of(in.sample("stages"), in.sample("discharges"));
        return (in.has("uncertainties") ? fit.withUncertainty(in.sample("uncertainties")) : fit)
                .withOffset(in.number("offset"));
    }

    private static RatingCurve fitted(Inputs in) {
        return RatingFit.of(in.sample("stages"), in.sample("discharges")).fittingOffset();
    }

    private static Propagation readings(Inputs in) {
        return MeasurementModel.of(
                        x -> x[0] + x[1],
                        UncertainInput.ofReadings("readings", in.sample("readings")),
                        UncertainInput.triangular("offset", 0, in.number("half_width")))
                .propagated();
    }

    private static RatingCurve joined(Inputs in) {
        return RatingFit.of(in.sample("stages"), in.sample("discharges")).searchingBreaks(0, 0);
    }

    /** JCGM 100, H.1: lengths in nm. */
    private static MeasurementModel endGauge() {
        return MeasurementModel.of(
                x -> x[0] + x[1] + x[2] + x[3] - x[0] * (x[7] * (x[5] + x[6]) + x[4] * x[8]),
                UncertainInput.normal("standard", 50_000_623, 25).withDegreesOfFreedom(18),
                UncertainInput.normal("difference", 215, 5.8).withDegreesOfFreedom(24),
                UncertainInput.normal("comparator, random", 0, 3.9).withDegreesOfFreedom(5),
                UncertainInput.normal("comparator, systematic", 0, 6.7).withDegreesOfFreedom(8),
                UncertainInput.rectangular("expansion", 11.5e-6, 2e-6),
                UncertainInput.normal("temperature", -0.1, 0.2),
                UncertainInput.arcsine("swing", 0, 0.5),
                UncertainInput.rectangular("difference of expansion", 0, 1e-6).withDegreesOfFreedom(50),
                UncertainInput.rectangular("difference of temperature", 0, 0.05).withDegreesOfFreedom(2));
    }

    /** JCGM 100, H.2: resistance, reactance and impedance from voltage, current and phase. */
    private static Propagation impedance(Inputs in) {
        List<ToDoubleFunction<double[]>> parts =
                List.of(x -> x[0] / x[1] * Math.cos(x[2]), x -> x[0] / x[1] * Math.sin(x[2]), x -> x[0] / x[1]);
        return MeasurementModel.of(
                        parts.get(in.integer("part")),
                        UncertainInput.normal("V", 4.9990, 0.0032),
                        UncertainInput.normal("I", 0.0196610, 0.0000095),
                        UncertainInput.normal("phase", 1.04446, 0.00075))
                .withCorrelation("V", "I", -0.36)
                .withCorrelation("V", "phase", 0.86)
                .withCorrelation("I", "phase", -0.65)
                .propagated();
    }

    private static MeasurementModel sum(Inputs in) {
        double[] deviations = in.sample("deviations");
        UncertainInput[] inputs = new UncertainInput[deviations.length];
        for (int i = 0; i < inputs.length; i++) {
            inputs[i] = "normal".equals(in.text("shape"))
                    ? UncertainInput.normal("x" + i, 0, deviations[i])
                    : UncertainInput.rectangular("x" + i, 0, deviations[i] * Math.sqrt(3));
        }
        return MeasurementModel.of(x -> Arrays.stream(x).sum(), inputs);
    }

    private static double drawnEnd(Inputs in) {
        return DRAWN_ENDS.computeIfAbsent(
                in.text("shape") + Arrays.toString(in.sample("deviations")),
                key -> sum(in).simulated(TRIALS, 101).interval(0.95)[1]);
    }

    private static Simulation drawnLoss(Inputs in) {
        return LAST_LOSS.of(in, List.of("x1"), () -> loss(in).simulated(TRIALS, 7));
    }

    private static MeasurementModel loss(Inputs in) {
        return MeasurementModel.of(
                x -> 1e6 * (x[0] * x[0] + x[1] * x[1]),
                UncertainInput.normal("x1", in.number("x1"), 0.005),
                UncertainInput.normal("x2", 0, 0.005));
    }

    private static Propagation weir(Inputs in) {
        return MeasurementModel.of(
                        x -> x[2]
                                * RectangularWeir.fullWidth(ApproachChannel.ofWidth(x[0])
                                                .withCrestHeight(in.number("crest_height")))
                                        .discharge(x[1]),
                        UncertainInput.normal("width", in.number("width"), in.number("width_uncertainty")),
                        UncertainInput.normal("head", in.number("head"), in.number("head_uncertainty")),
                        UncertainInput.normal("coefficient", 1, in.number("coefficient_uncertainty")))
                .propagated();
    }

    private static VolumeUncertainty volume(Inputs in) {
        return VolumeUncertainty.of(
                in.sample("flows"),
                in.number("step"),
                VolumeUncertainty.FlowErrors.ofRandom(in.number("random"))
                        .withCommon(in.number("common"))
                        .withMemory(in.number("memory")));
    }
}
