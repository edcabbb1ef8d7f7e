package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.gauging.PowerLaw;
import dev.runnel.hydraulics.gauging.VelocityFactor;
import dev.runnel.hydraulics.rating.RatingCurve;
import dev.runnel.hydraulics.rating.RatingFit;
import dev.runnel.hydraulics.rating.RatingTable;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Factors from a velocity read to the mean, and what a rating curve says besides a discharge. */
final class FactorCalculations {
    private static final String POINT = "m height";
    private static final String CURVE = "stages discharges offset";

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

    private static RatingCurve curve(Inputs in) {
        return RatingFit.of(in.sample("stages"), in.sample("discharges")).withOffset(in.number("offset"));
    }

    private static RatingTable table(Inputs in) {
        return curve(in).table(in.number("from"), in.number("to"), in.number("step"));
    }
}
