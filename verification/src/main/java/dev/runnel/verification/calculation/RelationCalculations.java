package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.BoundaryShear;
import dev.runnel.hydraulics.flow.CleansingCriterion;
import dev.runnel.hydraulics.flow.CompositeManning;
import dev.runnel.hydraulics.flow.Compounding;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.CriticalFlow;
import dev.runnel.hydraulics.flow.DarcyFriction;
import dev.runnel.hydraulics.flow.FittableResistance;
import dev.runnel.hydraulics.flow.FlowState;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.ReservoirInlet;
import dev.runnel.hydraulics.flow.RoughnessByDepth;
import dev.runnel.hydraulics.flow.SectionFlow;
import dev.runnel.hydraulics.flow.VariableManning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.SlottedSection;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Small relations of flow in a conduit: other branches, limits, units, shares of the bed. */
final class RelationCalculations {
    private static final double STANDARD_GRAVITY = 9.80665;
    private static final String CONDUIT = "gradient " + Sections.INPUTS + " " + Resistances.INPUTS;
    private static final String LAW = "radius gradient gravity? " + Resistances.INPUTS;
    private static final String LAW_IN_SECTION = "gradient gravity? " + Sections.INPUTS + " " + Resistances.INPUTS;
    private static final String BANDED =
            "method bed_n wall_n change upper_n second_change? highest_n? depth? bed " + Sections.INPUTS;
    private static final String SLOT = "slot " + Sections.INPUTS;

    private RelationCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "gradient.of-unit",
                        "m/m",
                        "kind value length",
                        in -> gradient(in).value()),
                of(
                        "flow.fullness",
                        "1",
                        "depth " + CONDUIT,
                        in -> conduit(in).at(in.number("depth")).fullness()),
                of(
                        "flow.highest-normal-depth",
                        "m",
                        "discharge " + CONDUIT,
                        in -> last(conduit(in).normalDepths(in.number("discharge")))),
                of(
                        "flow.count-of-normal-depths",
                        "1",
                        "discharge " + CONDUIT,
                        in -> conduit(in).normalDepths(in.number("discharge")).length),
                of(
                        "flow.critical-velocity",
                        "m/s",
                        "depth " + Sections.INPUTS,
                        in -> CriticalFlow.of(Sections.of(in)).velocity(in.number("depth"))),
                of(
                        "friction.turbulent-factor",
                        "1",
                        "reynolds relative_roughness",
                        in -> DarcyFriction.colebrookWhite(in.number("reynolds"), in.number("relative_roughness"))),
                of("friction.laminar-factor", "1", "reynolds", in -> DarcyFriction.laminar(in.number("reynolds"))),
                of(
                        "resistance.fastest",
                        "m/s",
                        LAW,
                        in -> law(in).fastest(in.number("radius"), in.number("gradient"), gravity(in))),
                of("resistance.break-depths", "m, each times its place", LAW_IN_SECTION, in -> {
                    double sum = 0;
                    double[] breaks =
                            Resistances.of(in).breakDepths(Sections.of(in), in.number("gradient"), gravity(in));
                    for (int i = 0; i < breaks.length; i++) {
                        sum += (i + 1) * breaks[i];
                    }
                    return sum;
                }),
                of(
                        "resistance.slowest",
                        "m/s",
                        LAW,
                        in -> law(in).slowest(in.number("radius"), in.number("gradient"), gravity(in))),
                of(
                        "cleansing.discharge-for-velocity",
                        "m3/s",
                        "velocity " + CONDUIT,
                        in -> CleansingCriterion.velocity(in.number("velocity")).minimumDischarge(conduit(in))),
                of(
                        "cleansing.discharge-for-shear-stress",
                        "m3/s",
                        "stress " + CONDUIT,
                        in -> CleansingCriterion.shearStress(in.number("stress"))
                                .minimumDischarge(conduit(in))),
                of("momentum.lower-depth", "m", "momentum discharge " + Sections.INPUTS, in -> momenta(in)[0]),
                of("momentum.upper-depth", "m", "momentum discharge " + Sections.INPUTS, in -> last(momenta(in))),
                of(
                        "inlet.plain-depth",
                        "m",
                        "head " + CONDUIT,
                        in -> ReservoirInlet.into(conduit(in)).depth(in.number("head"))),
                of(
                        "inlet.is-control",
                        "1",
                        "head loss " + CONDUIT,
                        in -> ReservoirInlet.into(conduit(in))
                                        .withEntranceLoss(in.number("loss"))
                                        .isControl(in.number("head"))
                                ? 1
                                : 0),
                of("roughness.banded", "s/m^(1/3)", BANDED, in -> banded(in).n(silted(in), in.number("depth"))),
                of(
                        "roughness.banded-discharge",
                        "m3/s",
                        "gradient " + BANDED,
                        in -> bandedConduit(in).discharge(in.number("depth"))),
                of(
                        "roughness.banded-depth",
                        "m",
                        "discharge gradient " + BANDED,
                        in -> bandedConduit(in).normalDepth(in.number("discharge"))),
                of(
                        "roughness.bed-shear",
                        "Pa",
                        "gradient " + BANDED,
                        in -> BoundaryShear.onBed(bandedConduit(in), in.number("depth"))),
                of(
                        "roughness.mean-shear",
                        "Pa",
                        "gradient " + BANDED,
                        in -> BoundaryShear.mean(bandedConduit(in), in.number("depth"))),
                of(
                        "roughness.by-fullness-depth",
                        "m",
                        "discharge " + BY_FULLNESS,
                        in -> byFullness(in).normalDepth(in.number("discharge"))),
                ofState("roughness.by-fullness-discharge", "m3/s", FlowState::discharge),
                ofState("roughness.by-fullness-velocity", "m/s", FlowState::velocity),
                of(
                        "section.slotted.area",
                        "m2",
                        "depth " + SLOT,
                        in -> slotted(in).area(in.number("depth"))),
                of(
                        "section.slotted.perimeter",
                        "m",
                        "depth " + SLOT,
                        in -> slotted(in).wettedPerimeter(in.number("depth"))),
                of(
                        "section.slotted.centroid-depth",
                        "m",
                        "depth " + SLOT,
                        in -> slotted(in).centroidDepth(in.number("depth"))),
                of(
                        "section.slotted.depth-for-area",
                        "m",
                        "area " + SLOT,
                        in -> slotted(in).depthForArea(in.number("area"))));
    }

    private static final String BY_FULLNESS = "diameter gradient n fullnesses ratios";

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static Calculation ofState(String name, String unit, ToDoubleFunction<FlowState> question) {
        return of(
                name,
                unit,
                "depth " + BY_FULLNESS,
                in -> question.applyAsDouble(byFullness(in).at(in.number("depth"))));
    }

    private static Gradient gradient(Inputs in) {
        return switch (in.text("kind")) {
            case "ratio" -> Gradient.ofRatio(in.number("value"), in.number("length"));
            case "percent" -> Gradient.ofPercent(in.number("value"));
            case "per-mille" -> Gradient.ofPerMille(in.number("value"));
            default ->
                throw new IllegalArgumentException("kind must be ratio, percent or per-mille, was " + in.text("kind"));
        };
    }

    private static Conduit conduit(Inputs in) {
        return Conduit.of(Sections.of(in), Gradient.of(in.number("gradient")), Resistances.of(in));
    }

    private static FittableResistance law(Inputs in) {
        return (FittableResistance) Resistances.of(in);
    }

    private static double gravity(Inputs in) {
        return in.number("gravity", STANDARD_GRAVITY);
    }

    private static double[] momenta(Inputs in) {
        return SectionFlow.of(Sections.of(in), in.number("discharge")).depthsForMomentum(in.number("momentum"));
    }

    private static double last(double[] depths) {
        return depths[depths.length - 1];
    }

    private static CrossSection silted(Inputs in) {
        return in.number("bed") > 0 ? Sections.of(in).withSediment(in.number("bed")) : Sections.of(in);
    }

    private static CompositeManning banded(Inputs in) {
        CompositeManning once = CompositeManning.ofBedAndWalls(
                        Compounding.valueOf(in.text("method")), in.number("bed_n"), in.number("wall_n"))
                .above(in.number("change"), in.number("upper_n"));
        return in.has("second_change") ? once.above(in.number("second_change"), in.number("highest_n")) : once;
    }

    private static Conduit bandedConduit(Inputs in) {
        return Conduit.of(silted(in), Gradient.of(in.number("gradient")), banded(in));
    }

    private static Conduit byFullness(Inputs in) {
        return Conduit.of(
                CircularSection.ofDiameter(in.number("diameter")),
                Gradient.of(in.number("gradient")),
                VariableManning.of(in.number("n"), RoughnessByDepth.of(in.sample("fullnesses"), in.sample("ratios"))));
    }

    private static SlottedSection slotted(Inputs in) {
        return SlottedSection.ofWidth((ClosedSection) Sections.of(in), in.number("slot"));
    }
}
