package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.structure.ApproachChannel;
import dev.runnel.hydraulics.structure.ApproachVelocity;
import dev.runnel.hydraulics.structure.BarScreen;
import dev.runnel.hydraulics.structure.BarShape;
import dev.runnel.hydraulics.structure.BroadCrestedWeir;
import dev.runnel.hydraulics.structure.CipollettiWeir;
import dev.runnel.hydraulics.structure.CoefficientWeir;
import dev.runnel.hydraulics.structure.CrumpWeir;
import dev.runnel.hydraulics.structure.FiniteCrestWeir;
import dev.runnel.hydraulics.structure.LongThroatedFlume;
import dev.runnel.hydraulics.structure.Orifice;
import dev.runnel.hydraulics.structure.RectangularWeir;
import dev.runnel.hydraulics.structure.ScreenedWeir;
import dev.runnel.hydraulics.structure.SideWeir;
import dev.runnel.hydraulics.structure.SideWeirProfile;
import dev.runnel.hydraulics.structure.SluiceGate;
import dev.runnel.hydraulics.structure.TailwaterDischarge;
import dev.runnel.hydraulics.structure.Throat;
import dev.runnel.hydraulics.structure.VNotchWeir;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** Broad and triangular crests, drowned plates, side weirs and weirs behind a screen. */
final class CrestCalculations {
    private static final String CREST = "head width crest_height";
    private static final String SIDE = "section size sill length coefficient depth discharge";
    private static final String SCREENED = CREST + " bars thickness gap blinded";

    private CrestCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "weir.side.downstream-depth",
                        "m",
                        SIDE,
                        in -> side(in).fromUpstreamDepthAndDischarge(in.number("depth"), in.number("discharge"))
                                .downstreamDepth()),
                of(
                        "weir.side.split-depth",
                        "m",
                        "section size sill length coefficient inflow ratio",
                        in -> side(in).split(in.number("inflow"), depth -> in.number("ratio") * depth)
                                .downstreamDepth()),
                of("weir.side.spill", "m3/s", SIDE, in -> profile(in).spill()),
                of(
                        "weir.rectangular.exponent",
                        "1",
                        CREST,
                        in -> RectangularWeir.fullWidth(channel(in)).exponent(in.number("head"))),
                of(
                        "weir.rectangular.uncertainty",
                        "1",
                        CREST + " head_uncertainty",
                        in -> RectangularWeir.fullWidth(channel(in))
                                .relativeUncertainty(in.number("head"), in.number("head_uncertainty"))),
                of("structure.approach-velocity", "1", "ratio", in -> ApproachVelocity.coefficient(in.number("ratio"))),
                of(
                        "structure.modular-limit",
                        "1",
                        "kind size length width crest_height head",
                        in -> limited(in).modularLimit(in.number("head")).orElseThrow()),
                of(
                        "weir.broad-crested.discharge",
                        "m3/s",
                        "head width approach_width crest_height coefficient",
                        in -> BroadCrestedWeir.ofCoefficient(
                                        in.number("coefficient"),
                                        ApproachChannel.ofWidth(in.number("approach_width"))
                                                .withCrestHeight(in.number("crest_height")))
                                .withCrestWidth(in.number("width"))
                                .formula(in.number("head"))),
                of(
                        "weir.round-nosed.coefficient",
                        "1",
                        CREST + " crest_length roughness",
                        in -> BroadCrestedWeir.roundNosed(
                                        in.number("crest_length"), in.number("roughness"), channel(in))
                                .coefficient(in.number("head"))),
                of(
                        "weir.broad-crested.standard-discharge",
                        "m3/s",
                        "form crest_length tailwater? " + CREST,
                        in -> under(
                                in,
                                "round".equals(in.text("form"))
                                        ? BroadCrestedWeir.roundNosed(in.number("crest_length"), channel(in))
                                        : BroadCrestedWeir.squareEdged(in.number("crest_length"), channel(in)))),
                of(
                        "weir.finite-crest.discharge",
                        "m3/s",
                        CREST + " crest_length",
                        in -> FiniteCrestWeir.ofCrestLength(in.number("crest_length"), channel(in))
                                .formula(in.number("head"))),
                of(
                        "weir.finite-crest.coefficient",
                        "1",
                        CREST + " crest_length",
                        in -> FiniteCrestWeir.ofCrestLength(in.number("crest_length"), channel(in))
                                .coefficient(in.number("head"))),
                of(
                        "weir.crump.discharge",
                        "m3/s",
                        CREST + " tailwater? tapping?",
                        in -> in.number("tapping", 0) > 0
                                ? CrumpWeir.of(channel(in))
                                        .dischargeByCrestTapping(in.number("head"), in.number("tapping"))
                                : under(in, CrumpWeir.of(channel(in)))),
                of(
                        "weir.cipolletti.discharge",
                        "m3/s",
                        "crest_length " + CREST,
                        in -> CipollettiWeir.ofCrestLength(in.number("crest_length"), channel(in))
                                .formula(in.number("head"))),
                of("weir.drowned-ratio", "1", "kind size head tailwater", in -> {
                    TailwaterDischarge plate = plate(in);
                    return plate.discharge(in.number("head"), in.number("tailwater"))
                            / plate.discharge(in.number("head"));
                }),
                of(
                        "weir.side.spilling-discharge",
                        "m3/s",
                        SIDE,
                        in -> profile(in).upstreamDischarge()),
                of("weir.side.upstream-depth", "m", SIDE, in -> profile(in).upstreamDepth()),
                of(
                        "weir.side.length",
                        "m",
                        SIDE + " spill",
                        in -> side(in).lengthFromDepthAndDischargeToSpill(
                                        in.number("depth"), in.number("discharge"), in.number("spill"))),
                of("weir.side.coefficient", "1", "froude", in -> SideWeir.coefficient(in.number("froude"))),
                of(
                        "weir.screened.discharge",
                        "m3/s",
                        SCREENED,
                        in -> screened(in).formula(in.number("head"))),
                of(
                        "weir.screened.head-behind",
                        "m",
                        SCREENED,
                        in -> screened(in).weirHead(in.number("head"))),
                of(
                        "weir.screened.blinding",
                        "1",
                        SCREENED + " head_behind",
                        in -> screened(in)
                                .blinding(in.number("head"), in.number("head_behind"))
                                .fraction()));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static ApproachChannel channel(Inputs in) {
        return ApproachChannel.ofWidth(in.number("width")).withCrestHeight(in.number("crest_height"));
    }

    private static TailwaterDischarge limited(Inputs in) {
        double size = in.number("size");
        double length = in.number("length");
        return switch (in.text("kind")) {
            case "crump" -> CrumpWeir.of(channel(in));
            case "square" -> BroadCrestedWeir.squareEdged(length, channel(in));
            case "round" -> BroadCrestedWeir.roundNosed(length, channel(in));
            case "rectangular" ->
                LongThroatedFlume.of(Throat.rectangular(size), length).inChannel(channel(in));
            case "u" -> LongThroatedFlume.of(Throat.uShaped(size), length).inChannel(channel(in));
            case "gate" -> SluiceGate.ofWidthAndOpening(in.number("width"), size);
            case "orifice" -> Orifice.circular(size);
            default -> throw new IllegalArgumentException("kind must be a known structure, was " + in.text("kind"));
        };
    }

    private static double under(Inputs in, TailwaterDischarge weir) {
        double tailwater = in.number("tailwater", 0);
        return tailwater > 0 ? weir.formula(in.number("head"), tailwater) : weir.formula(in.number("head"));
    }

    private static TailwaterDischarge plate(Inputs in) {
        ApproachChannel channel = ApproachChannel.ofWidth(3).withCrestHeight(1);
        double size = in.number("size");
        return switch (in.text("kind")) {
            case "crest" -> RectangularWeir.contracted(size, channel);
            case "notch" -> VNotchWeir.ofAngle(size, channel);
            case "trapezoid" -> CoefficientWeir.rectangular(0.4).withSideSlope(size);
            default ->
                throw new IllegalArgumentException("kind must be crest, notch or trapezoid, was " + in.text("kind"));
        };
    }

    private static SideWeir side(Inputs in) {
        CrossSection section = "circle".equals(in.text("section"))
                ? CircularSection.ofDiameter(in.number("size"))
                : RectangularSection.open(in.number("size"));
        SideWeir side = SideWeir.ofSillAndLength(section, in.number("sill"), in.number("length"));
        // 0 stands for the coefficient that the weir comes with.
        return in.number("coefficient") > 0 ? side.withCoefficient(in.number("coefficient")) : side;
    }

    private static SideWeirProfile profile(Inputs in) {
        return side(in).fromDownstreamDepthAndDischarge(in.number("depth"), in.number("discharge"));
    }

    private static ScreenedWeir screened(Inputs in) {
        BarShape bars =
                BarShape.valueOf(in.text("bars").toUpperCase(Locale.ROOT).replace('-', '_'));
        BarScreen screen = BarScreen.ofBarsAndGaps(bars, in.number("thickness"), in.number("gap"));
        return ScreenedWeir.of(RectangularWeir.fullWidth(channel(in)), screen, channel(in))
                .withBlindedFraction(in.number("blinded"));
    }
}
