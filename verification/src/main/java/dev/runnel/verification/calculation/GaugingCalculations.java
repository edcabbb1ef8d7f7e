package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.evidence.GaugingCheck;
import dev.runnel.hydraulics.gauging.BenchCheck;
import dev.runnel.hydraulics.gauging.CalibrationData;
import dev.runnel.hydraulics.gauging.CurrentMeter;
import dev.runnel.hydraulics.gauging.FittedCalibration;
import dev.runnel.hydraulics.gauging.GaugingBudget;
import dev.runnel.hydraulics.gauging.IndexVelocity;
import dev.runnel.hydraulics.gauging.LogLaw;
import dev.runnel.hydraulics.gauging.PointRule;
import dev.runnel.hydraulics.gauging.PowerLaw;
import dev.runnel.hydraulics.gauging.SectionTraverse;
import dev.runnel.hydraulics.gauging.VelocityAreaGauging;
import dev.runnel.hydraulics.gauging.Vertical;
import dev.runnel.hydraulics.gauging.WaterEdge;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.Egg;
import dev.runnel.hydraulics.section.RectangularSection;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Gaugings, velocity profiles, calibration fits, bench checks and the check of a monitor against gaugings. */
final class GaugingCalculations {
    private static final String GAUGING = "near near_depth? far far_depth? distances depths velocities";
    private static final String METER =
            "pitch start_up? second_from? second_pitch? second_start_up? revolutions seconds";
    private static final String FIT = "x y ux? uy? degree?";
    private static final String CHECK = "hand monitor";
    private static final String BENCH = "references readings reference_uncertainty";
    private static final String BENCH_TERMS = BENCH + " tolerance share level?";
    private static final String BENCH_LEVEL = BENCH + " tolerance share level";
    private static final String TRAVERSE = "section size depth m heights velocities";

    private GaugingCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "gauging.mean-velocity",
                        "m/s",
                        GAUGING,
                        in -> gauging(in).midSection().meanVelocity()),
                of(
                        "gauging.greatest-share",
                        "1",
                        GAUGING,
                        in -> gauging(in).midSection().greatestShare()),
                of(
                        "profile.power.through",
                        "1",
                        "z1 v1 z2 v2",
                        in -> PowerLaw.throughHeightsAndVelocities(
                                        in.number("z1"), in.number("z2"), in.number("v1"), in.number("v2"))
                                .m()),
                of(
                        "profile.index.uncertainty",
                        "m/s",
                        "x y index",
                        in -> IndexVelocity.fitted(in.sample("x"), in.sample("y"))
                                .uncertainty(in.number("index"))),
                of(
                        "calibration.response-uncertainty",
                        "1",
                        FIT + " stimulus stimulus_uncertainty",
                        in -> curve(in).responseUncertainty(in.number("stimulus"), in.number("stimulus_uncertainty"))),
                of(
                        "gauging.meter.velocity",
                        "m/s",
                        METER,
                        in -> meter(in)
                                .velocityOfRevolutionsAndSeconds(in.number("revolutions"), in.number("seconds"))),
                of(
                        "gauging.vertical.velocity",
                        "m/s",
                        "rule velocities",
                        in -> PointRule.valueOf(in.text("rule")).mean(in.sample("velocities"))),
                of(
                        "gauging.mid-section.discharge",
                        "m3/s",
                        GAUGING,
                        in -> gauging(in).midSection().discharge()),
                of(
                        "gauging.triangles.discharge",
                        "m3/s",
                        GAUGING,
                        in -> gauging(in).midSectionWithTriangles().discharge()),
                of(
                        "gauging.mean-section.discharge",
                        "m3/s",
                        GAUGING,
                        in -> gauging(in).meanSection().discharge()),
                of(
                        "gauging.mean-section.area",
                        "m2",
                        GAUGING,
                        in -> gauging(in).meanSection().area()),
                of(
                        "gauging.uncertainty",
                        "1",
                        GAUGING + " exposure?",
                        in -> exposed(in).standard()),
                of(
                        "profile.power.mean-to-centre",
                        "1",
                        "m? reynolds?",
                        in -> power(in).meanToCentre()),
                of("profile.power.mean-to-surface", "1", "m", in -> power(in).meanToSurface()),
                of(
                        "profile.power.mean-to-point",
                        "1",
                        "m height",
                        in -> power(in).meanToPoint(in.number("height"))),
                of("profile.log.mean-to-centre", "1", "friction_factor", in -> log(in).meanToCentre()),
                of("profile.log.mean-to-surface", "1", "friction_factor", in -> log(in).meanToSurface()),
                of(
                        "profile.log.mean-to-point",
                        "1",
                        "friction_factor height",
                        in -> log(in).meanToPoint(in.number("height"))),
                of(
                        "profile.traverse.mean",
                        "m/s",
                        TRAVERSE,
                        in -> SectionTraverse.of(section(in), in.number("depth"))
                                .withBedLaw(PowerLaw.of(in.number("m")))
                                .mean(in.sample("heights"), in.sample("velocities"))),
                of(
                        "profile.index.mean",
                        "m/s",
                        "x y index",
                        in -> IndexVelocity.fitted(in.sample("x"), in.sample("y"))
                                .mean(in.number("index"))),
                of(
                        "calibration.coefficient",
                        "1",
                        FIT + " place",
                        in -> curve(in).coefficients()[in.integer("place")]),
                of(
                        "calibration.uncertainty",
                        "1",
                        FIT + " place",
                        in -> curve(in).uncertainty(in.integer("place"))),
                of("calibration.covariance", "1", FIT, in -> curve(in).covariance(0, 1)),
                of("calibration.chi-squared", "1", FIT, in -> curve(in).chiSquared()),
                of("calibration.residual-deviation", "1", FIT, in -> curve(in).residualDeviation()),
                of(
                        "calibration.stimulus",
                        "1",
                        FIT + " response",
                        in -> curve(in).stimulus(in.number("response"))),
                of(
                        "calibration.stimulus-uncertainty",
                        "1",
                        FIT + " response response_uncertainty",
                        in -> curve(in).stimulusUncertainty(in.number("response"), in.number("response_uncertainty"))),
                of(
                        "calibration.response",
                        "1",
                        FIT + " stimulus",
                        in -> curve(in).response(in.number("stimulus"))),
                of("bench.bias", "1", BENCH, in -> bench(in).bias()),
                of("bench.linearity", "1", BENCH, in -> bench(in).linearity()),
                of("bench.repeatability", "1", BENCH, in -> bench(in).repeatability()),
                of(
                        "bench.expanded-uncertainty",
                        "1",
                        BENCH,
                        in -> bench(in).levels().get(0).expandedUncertainty()),
                of(
                        "bench.level.bias",
                        "1",
                        BENCH_LEVEL,
                        in -> terms(in).levels().get(in.integer("level")).bias()),
                of(
                        "bench.level.deviation",
                        "1",
                        BENCH_LEVEL,
                        in -> terms(in).levels().get(in.integer("level")).repeatability()),
                of(
                        "bench.level.expanded",
                        "1",
                        BENCH_LEVEL,
                        in -> terms(in).levels().get(in.integer("level")).expandedUncertainty()),
                of(
                        "bench.level.verdict",
                        "0 within, 1 outside, 2 undecided",
                        BENCH_LEVEL,
                        in -> terms(in)
                                .levels()
                                .get(in.integer("level"))
                                .verdict()
                                .ordinal()),
                of(
                        "bench.verdict",
                        "0 within, 1 outside, 2 undecided",
                        BENCH_TERMS,
                        in -> terms(in).verdict().ordinal()),
                of("gauging.check.bias", "1", CHECK, in -> check(in).bias().value()),
                of(
                        "gauging.check.bias.lower",
                        "1",
                        CHECK,
                        in -> check(in).bias().lower()),
                of(
                        "gauging.check.bias.upper",
                        "1",
                        CHECK,
                        in -> check(in).bias().upper()),
                of(
                        "gauging.check.ratio",
                        "1",
                        CHECK,
                        in -> check(in).ratio().orElseThrow().value()),
                of(
                        "gauging.check.ratio.lower",
                        "1",
                        CHECK,
                        in -> check(in).ratio().orElseThrow().lower()),
                of(
                        "gauging.check.ratio.upper",
                        "1",
                        CHECK,
                        in -> check(in).ratio().orElseThrow().upper()),
                of(
                        "gauging.check.agreement.lower",
                        "1",
                        CHECK,
                        in -> check(in).limitsOfAgreement().lower()),
                of(
                        "gauging.check.agreement.upper",
                        "1",
                        CHECK,
                        in -> check(in).limitsOfAgreement().upper()));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static CurrentMeter meter(Inputs in) {
        CurrentMeter plain = CurrentMeter.ofPitch(in.number("pitch"));
        CurrentMeter meter = in.has("start_up") ? plain.withStartUp(in.number("start_up")) : plain;
        return in.has("second_from")
                ? meter.from(
                        in.number("second_from"),
                        CurrentMeter.ofPitch(in.number("second_pitch")).withStartUp(in.number("second_start_up")))
                : meter;
    }

    private static WaterEdge edge(Inputs in, String name) {
        double depth = in.number(name + "_depth", 0);
        return depth > 0 ? WaterEdge.wall(in.number(name), depth) : WaterEdge.bank(in.number(name));
    }

    private static VelocityAreaGauging gauging(Inputs in) {
        double[] distances = in.sample("distances");
        double[] depths = in.sample("depths");
        double[] velocities = in.sample("velocities");
        List<Vertical> verticals = new ArrayList<>();
        for (int i = 0; i < distances.length; i++) {
            verticals.add(Vertical.of(distances[i], depths[i], PointRule.ONE, velocities[i]));
        }
        return VelocityAreaGauging.of(edge(in, "near"), verticals, edge(in, "far"));
    }

    private static GaugingBudget exposed(Inputs in) {
        GaugingBudget usual = gauging(in).midSection().budget();
        return in.has("exposure") ? usual.withExposure(in.number("exposure")) : usual;
    }

    private static PowerLaw power(Inputs in) {
        return in.has("reynolds") ? PowerLaw.ofReynolds(in.number("reynolds")) : PowerLaw.of(in.number("m"));
    }

    private static LogLaw log(Inputs in) {
        return LogLaw.ofFriction(in.number("friction_factor"));
    }

    private static CrossSection section(Inputs in) {
        double size = in.number("size");
        return switch (in.text("section")) {
            case "circle" -> CircularSection.ofDiameter(size);
            case "box" -> RectangularSection.open(size);
            case "egg" -> Egg.normal(size);
            default ->
                throw new IllegalArgumentException("section must be circle, box or egg, was " + in.text("section"));
        };
    }

    private static FittedCalibration curve(Inputs in) {
        CalibrationData data = CalibrationData.of(in.sample("x"), in.sample("y"));
        if (in.has("uy")) {
            data = data.withResponseUncertainty(in.sample("uy"));
        }
        if (in.has("ux")) {
            data = data.withStimulusUncertainty(in.sample("ux"));
        }
        return in.number("degree", 1) == 2 ? data.quadratic() : data.line();
    }

    private static BenchCheck bench(Inputs in) {
        return BenchCheck.of(
                in.sample("references"),
                in.sample("readings"),
                BenchCheck.Terms.ofTolerance(1, "m").withReferenceUncertainty(in.number("reference_uncertainty")));
    }

    private static BenchCheck terms(Inputs in) {
        return BenchCheck.of(
                in.sample("references"),
                in.sample("readings"),
                new BenchCheck.Terms(
                        "m", in.number("reference_uncertainty"), in.number("tolerance"), in.number("share")));
    }

    private static GaugingCheck check(Inputs in) {
        return GaugingCheck.of(in.sample("hand"), in.sample("monitor"));
    }
}
