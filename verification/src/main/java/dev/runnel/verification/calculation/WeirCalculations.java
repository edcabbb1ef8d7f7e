package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.structure.CipollettiWeir;
import dev.runnel.hydraulics.structure.RectangularWeir;
import dev.runnel.hydraulics.structure.SubmergedWeir;
import dev.runnel.hydraulics.structure.VNotchWeir;
import java.util.List;

/** Thin-plate weirs. Printed tables go beyond the limits of application, so the bare formulas are compared. */
final class WeirCalculations {
    private static final String RECTANGULAR = "crest_length channel_width crest_height";
    private static final String NOTCH = "angle vertex_height channel_width";

    private WeirCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of(
                        "hydraulics",
                        "weir.rectangular.discharge",
                        "m3/s",
                        "head " + RECTANGULAR,
                        in -> rectangular(in).formula(in.number("head"))),
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
                        "weir.cipolletti.discharge",
                        "m3/s",
                        "head " + RECTANGULAR,
                        in -> CipollettiWeir.of(
                                        in.number("crest_length"),
                                        in.number("channel_width"),
                                        in.number("crest_height"))
                                .formula(in.number("head"))),
                Calculation.of(
                        "hydraulics",
                        "weir.submergence-reduction",
                        "1",
                        "submergence exponent",
                        in -> SubmergedWeir.reduction(in.number("submergence"), in.number("exponent"))));
    }

    private static RectangularWeir rectangular(Inputs in) {
        double length = in.number("crest_length");
        double width = in.number("channel_width");
        double height = in.number("crest_height");
        return length == width
                ? RectangularWeir.fullWidth(width, height)
                : RectangularWeir.contracted(length, width, height);
    }

    private static VNotchWeir notch(Inputs in) {
        return VNotchWeir.of(in.number("angle"), in.number("vertex_height"), in.number("channel_width"));
    }
}
