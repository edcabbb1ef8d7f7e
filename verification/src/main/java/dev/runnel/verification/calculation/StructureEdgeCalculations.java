package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import dev.runnel.hydraulics.structure.ApplicationLimit;
import dev.runnel.hydraulics.structure.ApproachChannel;
import dev.runnel.hydraulics.structure.BarScreen;
import dev.runnel.hydraulics.structure.BarShape;
import dev.runnel.hydraulics.structure.BroadCrestedWeir;
import dev.runnel.hydraulics.structure.CipollettiWeir;
import dev.runnel.hydraulics.structure.CrumpWeir;
import dev.runnel.hydraulics.structure.FiniteCrestWeir;
import dev.runnel.hydraulics.structure.FreeOutfall;
import dev.runnel.hydraulics.structure.HeadDischarge;
import dev.runnel.hydraulics.structure.KhafagiFlume;
import dev.runnel.hydraulics.structure.LargeOrifice;
import dev.runnel.hydraulics.structure.LongThroatedFlume;
import dev.runnel.hydraulics.structure.Orifice;
import dev.runnel.hydraulics.structure.ParshallFlume;
import dev.runnel.hydraulics.structure.RatedDischarge;
import dev.runnel.hydraulics.structure.RectangularWeir;
import dev.runnel.hydraulics.structure.RehbockWeir;
import dev.runnel.hydraulics.structure.SluiceGate;
import dev.runnel.hydraulics.structure.TailwaterDischarge;
import dev.runnel.hydraulics.structure.Throat;
import dev.runnel.hydraulics.structure.VNotchWeir;
import dev.runnel.hydraulics.structure.Villemonte;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** What every structure answers: its limits, its edges, its tailwater, its inverse, and a record of heads at once. */
final class StructureEdgeCalculations {
    private static final String STRUCTURE = "kind size length width crest_height";

    private StructureEdgeCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "orifice.round.discharge",
                        "m3/s",
                        "diameter opening coefficient head",
                        in -> round(in).discharge(in.number("head"))),
                of(
                        "orifice.round.drowned-discharge",
                        "m3/s",
                        "diameter opening coefficient head tailwater",
                        in -> round(in).discharge(in.number("head"), in.number("tailwater"))),
                of(
                        "screen.upright-loss",
                        "m",
                        "bars thickness gap velocity",
                        in -> BarScreen.ofBarsAndGaps(
                                        BarShape.valueOf(in.text("bars")), in.number("thickness"), in.number("gap"))
                                .headLoss(in.number("velocity"))),
                of(
                        "structure.limit.value",
                        "1",
                        STRUCTURE + " head tailwater which",
                        in -> limit(in).value(head(in))),
                of(
                        "structure.limit.least",
                        "1",
                        STRUCTURE + " head tailwater which",
                        in -> limit(in).from()),
                of(
                        "structure.limit.greatest",
                        "1",
                        STRUCTURE + " head tailwater which",
                        in -> limit(in).to()),
                of(
                        "structure.limit.is-of",
                        "1",
                        STRUCTURE + " head tailwater which author",
                        in -> limit(in).source().contains(in.text("author")) ? 1 : 0),
                of(
                        "structure.discharge",
                        "m3/s",
                        STRUCTURE + " head tailwater",
                        in -> rated(in).discharge()),
                of(
                        "structure.outside",
                        "1",
                        STRUCTURE + " head tailwater",
                        in -> rated(in).breaches().size()),
                of(
                        "structure.is-drowned",
                        "1",
                        STRUCTURE + " head tailwater",
                        in -> rated(in).isDrowned() ? 1 : 0),
                of(
                        "structure.head",
                        "m",
                        STRUCTURE + " tailwater discharge",
                        in -> under(in)
                                .evaluateDischarge(in.number("discharge"))
                                .head()),
                of("structure.highest-head", "m", STRUCTURE, in -> structure(in).highestHead()),
                of(
                        "structure.uncertainty",
                        "1",
                        STRUCTURE + " head",
                        in -> structure(in).coefficientUncertainty(head(in)).orElseThrow()),
                of(
                        "structure.at-gravity.discharge",
                        "m3/s",
                        STRUCTURE + " head tailwater gravity",
                        in -> elsewhere(in).evaluate(head(in)).discharge()),
                of(
                        "structure.at-gravity.head",
                        "m",
                        STRUCTURE + " tailwater gravity discharge",
                        in -> elsewhere(in)
                                .evaluateDischarge(in.number("discharge"))
                                .head()),
                of(
                        "structure.drowned-share",
                        "1",
                        "submergence exponent",
                        in -> Villemonte.reduction(in.number("submergence"), in.number("exponent"))),
                of(
                        "structure.modular-share",
                        "1",
                        STRUCTURE + " head",
                        in -> structure(in).modularLimit(head(in)).orElseThrow()),
                of("structure.many.discharge", "m3/s", STRUCTURE + " heads tailwaters place", in -> many(in)[0]),
                of("structure.record.flagged", "1", STRUCTURE + " heads tailwater", in -> {
                    double[] heads = in.sample("heads");
                    return under(in).evaluate(heads, new double[heads.length], new boolean[heads.length]);
                }),
                of("structure.many.flagged", "1", STRUCTURE + " heads tailwaters place", in -> many(in)[1]),
                of("structure.many.drowned", "1", STRUCTURE + " heads tailwaters place", in -> many(in)[2]));
    }

    private static LargeOrifice round(Inputs in) {
        return LargeOrifice.circular(in.number("diameter"))
                .closedTo(in.number("opening"))
                .withCoefficient(in.number("coefficient"));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static double head(Inputs in) {
        return in.number("head");
    }

    private static HeadDischarge under(Inputs in) {
        HeadDischarge structure = structure(in);
        return structure instanceof TailwaterDischarge drownable ? drownable.under(in.number("tailwater")) : structure;
    }

    /** The same structure where gravity is another. */
    private static HeadDischarge elsewhere(Inputs in) {
        double gravity = in.number("gravity");
        return in.number("tailwater") > 0
                ? ((TailwaterDischarge) structure(in)).atGravity(gravity).under(in.number("tailwater"))
                : structure(in).atGravity(gravity);
    }

    private static RatedDischarge rated(Inputs in) {
        return under(in).evaluate(head(in));
    }

    private static ApplicationLimit limit(Inputs in) {
        HeadDischarge structure = structure(in);
        List<ApplicationLimit> limits = in.number("tailwater") > 0
                ? ((TailwaterDischarge) structure).limits(in.number("tailwater"))
                : structure.limits();
        return limits.get(in.integer("which"));
    }

    /** The discharge at one place of a record, how many readings are flagged and how many are drowned. */
    private static double[] many(Inputs in) {
        double[] heads = in.sample("heads");
        double[] discharges = new double[heads.length];
        boolean[] outside = new boolean[heads.length];
        int flagged;
        int drowned = 0;
        if ("-".equals(in.text("tailwaters"))) {
            flagged = structure(in).evaluate(heads, discharges, outside);
        } else {
            boolean[] isDrowned = new boolean[heads.length];
            flagged = ((TailwaterDischarge) structure(in))
                    .evaluate(heads, in.sample("tailwaters"), discharges, isDrowned, outside);
            for (boolean each : isDrowned) {
                drowned += each ? 1 : 0;
            }
        }
        return new double[] {discharges[in.integer("place")], flagged, drowned};
    }

    private static HeadDischarge structure(Inputs in) {
        double size = in.number("size");
        double length = in.number("length");
        return switch (in.text("kind")) {
            case "cipolletti" -> CipollettiWeir.ofCrestLength(size, channel(in));
            case "plate" ->
                size == in.number("width")
                        ? RectangularWeir.fullWidth(channel(in))
                        : RectangularWeir.contracted(size, channel(in));
            case "rehbock" -> RehbockWeir.of(channel(in));
            case "notch" -> VNotchWeir.ofAngle(size, channel(in));
            case "square" -> BroadCrestedWeir.squareEdged(length, channel(in));
            case "round" -> BroadCrestedWeir.roundNosed(length, channel(in));
            case "finite" -> FiniteCrestWeir.ofCrestLength(length, channel(in));
            case "crump" -> CrumpWeir.of(channel(in));
            case "flume-rectangular" ->
                LongThroatedFlume.of(Throat.rectangular(size), length).inChannel(channel(in));
            case "flume-in-circle" ->
                LongThroatedFlume.of(Throat.rectangular(size), length)
                        .in(CircularSection.ofDiameter(in.number("width")), in.number("crest_height"));
            case "khafagi" -> KhafagiFlume.ofThroat(size);
            case "parshall" -> ParshallFlume.ofThroat(size);
            case "gate" -> SluiceGate.ofWidthAndOpening(in.number("width"), size);
            case "orifice" -> Orifice.circular(size);
            case "opening" -> LargeOrifice.ofWidthAndOpening(in.number("width"), size);
            case "round-opening" ->
                length > 0 ? LargeOrifice.circular(size).closedTo(length) : LargeOrifice.circular(size);
            case "brink-rectangular" -> FreeOutfall.rectangular(size);
            case "broad-known" -> BroadCrestedWeir.ofCoefficient(size, channel(in));
            case "brink-round" -> FreeOutfall.circular(size);
            case "brink-open" -> FreeOutfall.of(TrapezoidalSection.ofBedWidthAndSideSlope(size, length), 0.75);
            case "orifice-rectangular" -> Orifice.ofWidthAndHeight(in.number("width"), size);
            case "flume-still" -> LongThroatedFlume.of(Throat.rectangular(size), length);
            case "flume-in-open" ->
                LongThroatedFlume.of(Throat.rectangular(size), length)
                        .in(
                                TrapezoidalSection.ofBedWidthAndSideSlope(in.number("width"), 1),
                                in.number("crest_height"));
            case "brink-critical" -> FreeOutfall.of(CircularSection.ofDiameter(size), 0.75);
            default -> throw new IllegalArgumentException("kind must be a known structure, was " + in.text("kind"));
        };
    }

    private static ApproachChannel channel(Inputs in) {
        ApproachChannel level = ApproachChannel.ofWidth(in.number("width"));
        double crestHeight = in.number("crest_height");
        return crestHeight == 0 ? level : level.withCrestHeight(crestHeight);
    }
}
