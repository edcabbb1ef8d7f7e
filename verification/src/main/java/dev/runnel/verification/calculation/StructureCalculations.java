package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.structure.ApproachChannel;
import dev.runnel.hydraulics.structure.BarScreen;
import dev.runnel.hydraulics.structure.BarShape;
import dev.runnel.hydraulics.structure.CrumpWeir;
import dev.runnel.hydraulics.structure.CulvertEdge;
import dev.runnel.hydraulics.structure.CulvertInlet;
import dev.runnel.hydraulics.structure.FlapValve;
import dev.runnel.hydraulics.structure.FreeJet;
import dev.runnel.hydraulics.structure.FreeOutfall;
import dev.runnel.hydraulics.structure.LargeOrifice;
import dev.runnel.hydraulics.structure.Orifice;
import dev.runnel.hydraulics.structure.ParshallFlume;
import dev.runnel.hydraulics.structure.RatedDischarge;
import dev.runnel.hydraulics.structure.SluiceGate;
import dev.runnel.hydraulics.structure.UprightTank;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** Orifices, gates, outfalls, flaps and screens. Bare formulas, as printed examples go beyond the limits. */
final class StructureCalculations {
    private static final String SCREEN = "bars thickness gap angle velocity";
    private static final String LARGE = "head width opening coefficient";

    private static final String CRUMP = "width crest_height tailwater";

    private StructureCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "orifice.discharge",
                        "m3/s",
                        "head diameter? width? height? coefficient",
                        in -> orifice(in).formula(orifice(in).aboveLowestPoint(in.number("head")))),
                of("orifice.large.discharge", "m3/s", LARGE, in -> large(in).formula(in.number("head"))),
                of(
                        "orifice.large.drowned-discharge",
                        "m3/s",
                        LARGE + " tailwater",
                        in -> large(in).discharge(in.number("head"), in.number("tailwater"))),
                of(
                        "gate.sluice.discharge",
                        "m3/s",
                        "width opening contraction depth tailwater",
                        in -> in.number("tailwater") > 0
                                ? gate(in).discharge(in.number("depth"), in.number("tailwater"))
                                : gate(in).discharge(in.number("depth"))),
                of(
                        "gate.sluice.depth",
                        "m",
                        "width opening contraction discharge tailwater",
                        in -> gate(in).head(in.number("discharge"), in.number("tailwater"))),
                of(
                        "outfall.discharge",
                        "m3/s",
                        "form size depth",
                        in -> outfall(in).formula(in.number("depth"))),
                of(
                        "tank.emptying-time",
                        "s",
                        "area opening coefficient from to gravity",
                        in -> UprightTank.ofPlanArea(in.number("area"))
                                .withGravity(in.number("gravity"))
                                .emptyingTimeOnCentre(
                                        Orifice.ofWidthAndHeight(in.number("opening"), 1)
                                                .withCoefficient(in.number("coefficient")),
                                        in.number("from"),
                                        in.number("to"))),
                of(
                        "tank.emptying-time-by-quadrature",
                        "s",
                        "area width opening coefficient from to",
                        in -> UprightTank.ofPlanArea(in.number("area"))
                                .emptyingTime(large(in), in.number("from"), in.number("to"))),
                of(
                        "culvert.headwater",
                        "m",
                        "edge gradient discharge " + Sections.INPUTS,
                        in -> culvert(in).headwater(in.number("discharge"))),
                of(
                        "culvert.discharge",
                        "m3/s",
                        "edge gradient headwater " + Sections.INPUTS,
                        in -> culvert(in).discharge(in.number("headwater"))),
                of(
                        "culvert.is-drowned",
                        "1",
                        "edge gradient discharge " + Sections.INPUTS,
                        in -> culvert(in).isDrowned(in.number("discharge")) ? 1 : 0),
                of(
                        "gate.sluice.modular-tailwater",
                        "m",
                        "width opening contraction depth",
                        in -> gate(in).modularTailwater(in.number("depth"))),
                of(
                        "gate.sluice.modular-limit",
                        "1",
                        "width opening contraction depth",
                        in -> gate(in).modularLimit(in.number("depth")).orElseThrow()),
                of(
                        "tank.round-emptying-time",
                        "s",
                        "diameter bore coefficient from to",
                        in -> UprightTank.ofDiameter(in.number("diameter"))
                                .emptyingTimeOnCentre(
                                        Orifice.circular(in.number("bore")).withCoefficient(in.number("coefficient")),
                                        in.number("from"),
                                        in.number("to"))),
                of(
                        "flume.parshall.discharge-by-unit",
                        "m3/s",
                        "unit throat head",
                        in -> ("feet".equals(in.text("unit"))
                                        ? ParshallFlume.ofFeet(in.number("throat"))
                                        : ParshallFlume.ofInches(in.number("throat")))
                                .formula(in.number("head"))),
                of(
                        "weir.crump.head",
                        "m",
                        CRUMP + " discharge",
                        in -> crump(in)
                                .under(in.number("tailwater"))
                                .evaluateDischarge(in.number("discharge"))
                                .head()),
                of(
                        "weir.crump.rated-head",
                        "m",
                        CRUMP + " head",
                        in -> rated(in).head()),
                of(
                        "weir.crump.rated-discharge",
                        "m3/s",
                        CRUMP + " head",
                        in -> rated(in).discharge()),
                of(
                        "weir.crump.rated-ratio-is-infinite",
                        "1",
                        CRUMP + " head",
                        in -> rated(in).breaches().stream().anyMatch(each -> Double.isInfinite(each.value())) ? 1 : 0),
                of(
                        "weir.crump.is-drowned",
                        "1",
                        CRUMP + " head",
                        in -> crump(in).isDrowned(in.number("head"), in.number("tailwater")) ? 1 : 0),
                of(
                        "weir.crump.within-drowned-law",
                        "1",
                        CRUMP + " head",
                        in -> crump(in).drownedLimit(in.number("tailwater")).isMet(in.number("head")) ? 1 : 0),
                of("jet.reach", "m", "velocity drop gravity", in -> jet(in).reach(in.number("drop"))),
                of("jet.drop", "m", "velocity distance gravity", in -> jet(in).drop(in.number("distance"))),
                of(
                        "jet.standard-reach",
                        "m",
                        "velocity drop",
                        in -> FreeJet.of(in.number("velocity")).reach(in.number("drop"))),
                of(
                        "jet.standard-velocity",
                        "m/s",
                        "distance drop",
                        in -> FreeJet.throughDistanceAndDrop(in.number("distance"), in.number("drop"))
                                .velocity()),
                of(
                        "screen.shape-factor",
                        "1",
                        "bars",
                        in -> BarShape.valueOf(in.text("bars")).factor()),
                of(
                        "jet.discharge",
                        "m3/s",
                        "distance drop area gravity",
                        in -> FreeJet.throughDistanceAndDrop(
                                        in.number("distance"), in.number("drop"), in.number("gravity"))
                                .discharge(in.number("area"))),
                of(
                        "flap.head-loss",
                        "m",
                        "diameter velocity",
                        in -> FlapValve.ofDiameter(in.number("diameter")).headLoss(in.number("velocity"))),
                of("flap.slow-velocity", "m/s", "diameter loss", in -> flap(in).velocities(in.number("loss"))[0]),
                of("flap.fast-velocity", "m/s", "diameter loss", in -> flap(in).velocities(in.number("loss"))[1]),
                of("flap.worst-velocity", "m/s", "diameter", in -> flap(in).worstVelocity()),
                of(
                        "flap.loss-coefficient",
                        "1",
                        "diameter velocity",
                        in -> flap(in).lossCoefficient(in.number("velocity"))),
                of(
                        "screen.blinding",
                        "1",
                        SCREEN + " loss",
                        in -> screen(in)
                                .blinding(in.number("loss"), in.number("velocity"))
                                .fraction()),
                of(
                        "screen.is-below-clean",
                        "1 or 0",
                        SCREEN + " loss",
                        in -> screen(in)
                                        .blinding(in.number("loss"), in.number("velocity"))
                                        .isBelowClean()
                                ? 1
                                : 0),
                of(
                        "screen.head-loss",
                        "m",
                        SCREEN + " blinded?",
                        in -> screen(in)
                                .withBlindedFraction(in.number("blinded", 0))
                                .headLoss(in.number("velocity"))));
    }

    private static BarScreen screen(Inputs in) {
        BarScreen screen = BarScreen.ofBarsAndGaps(
                BarShape.valueOf(in.text("bars").toUpperCase(Locale.ROOT).replace('-', '_')),
                in.number("thickness"),
                in.number("gap"));
        // What is usual is left as it comes.
        return in.number("angle") == 90 ? screen : screen.withInclination(in.number("angle"));
    }

    private static CulvertInlet culvert(Inputs in) {
        String edge = in.text("edge").toUpperCase(Locale.ROOT).replace('-', '_');
        CulvertInlet level = CulvertInlet.of((ClosedSection) Sections.of(in), CulvertEdge.valueOf(edge));
        return in.number("gradient") == 0 ? level : level.withGradient(in.number("gradient"));
    }

    private static FreeJet jet(Inputs in) {
        FreeJet jet = FreeJet.of(in.number("velocity"));
        return in.number("gravity") == 9.80665 ? jet : jet.withGravity(in.number("gravity"));
    }

    private static CrumpWeir crump(Inputs in) {
        return CrumpWeir.of(ApproachChannel.ofWidth(in.number("width")).withCrestHeight(in.number("crest_height")));
    }

    private static RatedDischarge rated(Inputs in) {
        return crump(in).under(in.number("tailwater")).evaluate(in.number("head"));
    }

    private static SluiceGate gate(Inputs in) {
        SluiceGate gate = SluiceGate.ofWidthAndOpening(in.number("width"), in.number("opening"));
        return in.number("contraction") == 0.61 ? gate : gate.withContraction(in.number("contraction"));
    }

    private static FlapValve flap(Inputs in) {
        return FlapValve.ofDiameter(in.number("diameter"));
    }

    private static FreeOutfall outfall(Inputs in) {
        double size = in.number("size");
        return switch (in.text("form")) {
            case "rectangular" -> FreeOutfall.rectangular(size);
            case "circular" -> FreeOutfall.circular(size);
            case "critical" -> FreeOutfall.of(CircularSection.ofDiameter(size), 0.75);
            default ->
                throw new IllegalArgumentException(
                        "form must be rectangular, circular or critical, was " + in.text("form"));
        };
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static Orifice orifice(Inputs in) {
        Orifice orifice = in.has("diameter")
                ? Orifice.circular(in.number("diameter"))
                : Orifice.ofWidthAndHeight(in.number("width"), in.number("height"));
        return orifice.withCoefficient(in.number("coefficient"));
    }

    private static LargeOrifice large(Inputs in) {
        return LargeOrifice.ofWidthAndOpening(in.number("width"), in.number("opening"))
                .withCoefficient(in.number("coefficient"));
    }
}
