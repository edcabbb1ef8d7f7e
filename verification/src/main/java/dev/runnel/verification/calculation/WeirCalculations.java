package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.structure.ApproachChannel;
import dev.runnel.hydraulics.structure.CoefficientWeir;
import dev.runnel.hydraulics.structure.RectangularWeir;
import dev.runnel.hydraulics.structure.RehbockWeir;
import dev.runnel.hydraulics.structure.VNotchWeir;
import java.util.List;

/** Thin-plate weirs. Printed tables go beyond the limits of application, so the bare formulas are compared. */
final class WeirCalculations {
    private static final String RECTANGULAR = "crest_length channel_width crest_height";
    private static final String NOTCH = "angle vertex_height channel_width";

    private static final String SIMPLE =
            "angle? crest_length? side_slope? coefficient? contractions? approach_width? crest_height?";

    private WeirCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of(
                        "hydraulics",
                        "weir.rectangular.coefficient",
                        "1",
                        "head " + RECTANGULAR,
                        in -> rectangular(in).coefficient(in.number("head"))),
                Calculation.of(
                        "hydraulics",
                        "weir.v-notch.discharge",
                        "m3/s",
                        "head " + NOTCH,
                        in -> notch(in).formula(in.number("head"))),
                Calculation.of(
                        "hydraulics",
                        "weir.v-notch.coefficient",
                        "1",
                        "head " + NOTCH,
                        in -> notch(in).coefficient(in.number("head"))),
                Calculation.of(
                        "hydraulics",
                        "weir.v-notch.head-correction",
                        "m",
                        NOTCH,
                        in -> notch(in).headCorrection()),
                Calculation.of(
                        "hydraulics",
                        "weir.by-coefficient.discharge",
                        "m3/s",
                        "head " + SIMPLE,
                        in -> byCoefficient(in).formula(in.number("head"))),
                Calculation.of(
                        "hydraulics",
                        "weir.by-coefficient.within-limits",
                        "m3/s",
                        "head " + SIMPLE,
                        in -> byCoefficient(in).discharge(in.number("head"))),
                Calculation.of(
                        "hydraulics",
                        "weir.by-coefficient.head",
                        "m",
                        "discharge " + SIMPLE,
                        in -> byCoefficient(in).head(in.number("discharge"))),
                Calculation.of(
                        "hydraulics",
                        "weir.rehbock.discharge",
                        "m3/s",
                        "head channel_width crest_height",
                        in -> RehbockWeir.of(ApproachChannel.ofWidth(in.number("channel_width"))
                                        .withCrestHeight(in.number("crest_height")))
                                .formula(in.number("head"))));
    }

    /** A weir of a constant coefficient: a crest, a notch or both; without a coefficient that of Francis or of a notch. */
    private static CoefficientWeir byCoefficient(Inputs in) {
        CoefficientWeir weir;
        if (in.has("angle")) {
            CoefficientWeir usual = CoefficientWeir.vNotch(in.number("angle"));
            weir = in.has("coefficient") ? usual.withCoefficient(in.number("coefficient")) : usual;
        } else if (in.has("coefficient")) {
            weir = CoefficientWeir.rectangular(in.number("crest_length"))
                    .withSideSlope(in.number("side_slope", 0))
                    .withCoefficient(in.number("coefficient"));
        } else {
            weir = CoefficientWeir.rectangular(in.number("crest_length"));
        }
        if (in.has("contractions")) {
            weir = weir.withEndContractions(in.integer("contractions"));
        }
        return in.has("approach_width")
                ? weir.withApproach(
                        ApproachChannel.ofWidth(in.number("approach_width")).withCrestHeight(in.number("crest_height")))
                : weir;
    }

    private static RectangularWeir rectangular(Inputs in) {
        double length = in.number("crest_length");
        double width = in.number("channel_width");
        double height = in.number("crest_height");
        return length == width
                ? RectangularWeir.fullWidth(ApproachChannel.ofWidth(width).withCrestHeight(height))
                : RectangularWeir.contracted(
                        length, ApproachChannel.ofWidth(width).withCrestHeight(height));
    }

    private static VNotchWeir notch(Inputs in) {
        return VNotchWeir.ofAngle(
                in.number("angle"),
                ApproachChannel.ofWidth(in.number("channel_width")).withCrestHeight(in.number("vertex_height")));
    }
}
