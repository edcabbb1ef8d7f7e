package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.gauging.PowerLaw;
import dev.runnel.hydraulics.gauging.VelocityFactor;
import dev.runnel.hydraulics.rating.RatingCurve;
import dev.runnel.hydraulics.rating.RatingFit;
import dev.runnel.hydraulics.rating.RatingSegment;
import dev.runnel.hydraulics.rating.RatingTable;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Factors from a velocity read to the mean, and what a rating curve says besides a discharge. */
final class FactorCalculations {
    private static final String POINT = "m height";
    private static final String CURVE = "stages discharges offset";
    private static final String SEGMENTS = "stages discharges offsets breaks";
    private static final String FITTED = "stages discharges stage";

    private FactorCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "velocity-factor.at-point.mean",
                        "m/s",
                        "read " + POINT,
                        in -> atPoint(in).mean(in.number("read"))),
                of(
                        "velocity-factor.at-point.relative",
                        "1",
                        POINT,
                        in -> atPoint(in).relativeUncertainty()),
                of(
                        "velocity-factor.at-centre.mean",
                        "m/s",
                        "read m",
                        in -> PowerLaw.of(in.number("m")).atCentre().mean(in.number("read"))),
                of(
                        "velocity-factor.at-centre.relative",
                        "1",
                        "m",
                        in -> PowerLaw.of(in.number("m")).atCentre().relativeUncertainty()),
                of(
                        "rating.searched-segments",
                        "1",
                        CURVE,
                        in -> RatingFit.of(in.sample("stages"), in.sample("discharges"))
                                .searchingSegments(in.number("offset"))
                                .segments()
                                .size()),
                of("rating.information-criterion", "1", CURVE, in -> curve(in).informationCriterion()),
                of("rating.many-discharges", "m3/s", CURVE + " stage", in -> {
                    double[] discharges = new double[1];
                    curve(in).evaluate(new double[] {in.number("stage")}, discharges, new boolean[1]);
                    return discharges[0];
                }),
                of("rating.is-gauged", "1", CURVE + " stage", in -> {
                    boolean[] outside = new boolean[1];
                    curve(in).evaluate(new double[] {in.number("stage")}, new double[1], outside);
                    return outside[0] ? 0 : 1;
                }),
                of("rating.flagged", "stages", CURVE + " record", in -> {
                    double[] record = in.sample("record");
                    return curve(in).evaluate(record, new double[record.length], new boolean[record.length]);
                }),
                of(
                        "rating.segmented.constant",
                        "m3/s at 1 m",
                        SEGMENTS + " which",
                        in -> segment(in).constant()),
                of(
                        "rating.segmented.exponent",
                        "1",
                        SEGMENTS + " which",
                        in -> segment(in).exponent()),
                of(
                        "rating.segmented.offset",
                        "m",
                        SEGMENTS + " which",
                        in -> segment(in).offset()),
                of(
                        "rating.segmented.from",
                        "m",
                        SEGMENTS + " which",
                        in -> segment(in).fromStage()),
                of(
                        "rating.segmented.discharge",
                        "m3/s",
                        SEGMENTS + " stage",
                        in -> segmented(in).discharge(in.number("stage"))),
                of(
                        "rating.segmented.uncertainty",
                        "1",
                        SEGMENTS + " stage stage_uncertainty",
                        in -> segmented(in).relativeUncertainty(in.number("stage"), in.number("stage_uncertainty"))),
                of(
                        "rating.segmented.standard-error",
                        "1",
                        SEGMENTS,
                        in -> segmented(in).standardError()),
                of(
                        "rating.fitted-offset.lower",
                        "m3/s",
                        FITTED,
                        in -> fitted(in).confidence(in.number("stage"), 0.95).lower()),
                of(
                        "rating.fitted-offset.upper",
                        "m3/s",
                        FITTED,
                        in -> fitted(in).confidence(in.number("stage"), 0.95).upper()),
                of(
                        "rating.fitted-offset.discharge",
                        "m3/s",
                        FITTED,
                        in -> fitted(in).discharge(in.number("stage"))),
                of(
                        "rating.table.rows",
                        "1",
                        CURVE + " from to step",
                        in -> table(in).stages().length),
                of(
                        "rating.table.discharge",
                        "m3/s",
                        "stage from to step " + CURVE,
                        in -> table(in).discharge(in.number("stage"))));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static VelocityFactor atPoint(Inputs in) {
        return PowerLaw.of(in.number("m")).atPoint(in.number("height"));
    }

    private static RatingCurve fitted(Inputs in) {
        return RatingFit.of(in.sample("stages"), in.sample("discharges")).fittingOffset();
    }

    private static RatingCurve segmented(Inputs in) {
        double[] breaks = "-".equals(in.text("breaks")) ? new double[0] : in.sample("breaks");
        return RatingFit.of(in.sample("stages"), in.sample("discharges")).segmented(in.sample("offsets"), breaks);
    }

    private static RatingSegment segment(Inputs in) {
        return segmented(in).segments().get(in.integer("which"));
    }

    private static RatingCurve curve(Inputs in) {
        return RatingFit.of(in.sample("stages"), in.sample("discharges")).withOffset(in.number("offset"));
    }

    private static RatingTable table(Inputs in) {
        return curve(in).table(in.number("from"), in.number("to"), in.number("step"));
    }
}
