package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.gauging.CalibrationData;
import dev.runnel.hydraulics.gauging.CurrentMeter;
import dev.runnel.hydraulics.gauging.GaugedDischarge;
import dev.runnel.hydraulics.gauging.GaugingBudget;
import dev.runnel.hydraulics.gauging.GaugingSheet;
import dev.runnel.hydraulics.gauging.IndexVelocity;
import dev.runnel.hydraulics.gauging.PointRule;
import dev.runnel.hydraulics.gauging.PowerLaw;
import dev.runnel.hydraulics.gauging.SectionTraverse;
import dev.runnel.hydraulics.gauging.VelocityFactor;
import dev.runnel.hydraulics.section.CircularSection;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Sheets of gaugings, the rules of points, their budget term by term, and the factors of a sensor. */
final class GaugingSheetCalculations {
    private static final String SHEET = "sheet pitch? start_up?";
    private static final String BUDGET = SHEET + " systematic width depth exposure";
    private static final String LINE = "x y index";

    private GaugingSheetCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("gauging.sheet.mid-section", "m3/s", SHEET, in -> mid(in).discharge()),
                of(
                        "gauging.sheet.mean-section",
                        "m3/s",
                        SHEET,
                        in -> GaugingSheetCalculations.mean(in).discharge()),
                of("gauging.sheet.area", "m2", SHEET, in -> mid(in).area()),
                of("gauging.sheet.factor", "1", SHEET + " read", in -> mid(in).factorFor(in.number("read"))),
                of("gauging.budget.verticals", "1", BUDGET, in -> budget(in).ofVerticals()),
                of("gauging.budget.strips", "1", BUDGET, in -> budget(in).ofStrips()),
                of("gauging.budget.standard", "1", BUDGET, in -> budget(in).standard()),
                of("gauging.budget.expanded", "1", BUDGET, in -> budget(in).expanded()),
                of("gauging.rule.depth", "1", "rule place", in -> rule(in).relativeDepths()[in.integer("place")]),
                of("gauging.rule.uncertainty", "1", "rule", in -> rule(in).profileUncertainty()),
                of("velocity-factor.usual", "1", "of", in -> usual(in).factor()),
                of(
                        "velocity-factor.usual-uncertainty",
                        "1",
                        "of",
                        in -> usual(in).standardUncertainty()),
                of("profile.index.factor", "1", LINE, in -> index(in).factor()),
                of(
                        "profile.index.factor-uncertainty",
                        "1",
                        LINE,
                        in -> index(in).standardUncertainty()),
                of(
                        "profile.traverse.mean-to-greatest",
                        "1",
                        "diameter depth m heights velocities",
                        in -> SectionTraverse.of(CircularSection.ofDiameter(in.number("diameter")), in.number("depth"))
                                .withBedLaw(PowerLaw.of(in.number("m")))
                                .meanToGreatest(in.sample("heights"), in.sample("velocities"))),
                of(
                        "calibration.is-consistent",
                        "1 or 0",
                        "x y uy",
                        in -> CalibrationData.of(in.sample("x"), in.sample("y"))
                                        .withResponseUncertainty(in.sample("uy"))
                                        .line()
                                        .isConsistent()
                                ? 1
                                : 0));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static GaugedDischarge mid(Inputs in) {
        return in.has("pitch")
                ? GaugingSheet.parse(in.text("sheet"), meter(in)).midSection()
                : GaugingSheet.parse(in.text("sheet")).midSection();
    }

    private static GaugedDischarge mean(Inputs in) {
        return in.has("pitch")
                ? GaugingSheet.parse(in.text("sheet"), meter(in)).meanSection()
                : GaugingSheet.parse(in.text("sheet")).meanSection();
    }

    private static CurrentMeter meter(Inputs in) {
        CurrentMeter meter = CurrentMeter.ofPitch(in.number("pitch"));
        return in.number("start_up", 0) == 0 ? meter : meter.withStartUp(in.number("start_up"));
    }

    private static GaugingBudget budget(Inputs in) {
        return mid(in).budget()
                .withSystematic(in.number("systematic"))
                .withWidth(in.number("width"))
                .withDepth(in.number("depth"))
                .withExposure(in.number("exposure"));
    }

    private static PointRule rule(Inputs in) {
        return PointRule.valueOf(in.text("rule"));
    }

    private static VelocityFactor usual(Inputs in) {
        return switch (in.text("of")) {
            case "greatest" -> VelocityFactor.ofGreatest();
            case "surface" -> VelocityFactor.ofSurface();
            case "centre" -> VelocityFactor.ofPipeCentre();
            default ->
                throw new IllegalArgumentException("of must be greatest, surface or centre, was " + in.text("of"));
        };
    }

    private static VelocityFactor index(Inputs in) {
        return IndexVelocity.fitted(in.sample("x"), in.sample("y")).factorAt(in.number("index"));
    }
}
