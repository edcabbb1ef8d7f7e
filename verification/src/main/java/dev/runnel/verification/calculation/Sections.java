package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.Egg;
import dev.runnel.hydraulics.section.Horseshoe;
import dev.runnel.hydraulics.section.MouthSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import dev.runnel.hydraulics.section.USection;

/** The section that the inputs describe: a {@code shape}, circular if none is named, and its measures. */
final class Sections {
    /** The inputs {@link #of} knows. */
    static final String INPUTS = "shape? diameter? width? side_slope? height?";

    private Sections() {}

    static CrossSection of(Inputs in) {
        String shape = in.has("shape") ? in.text("shape") : "circular";
        return switch (shape) {
            case "circular" -> CircularSection.ofDiameter(in.number("diameter"));
            case "rectangular" -> RectangularSection.open(in.number("width"));
            case "box" -> RectangularSection.box(in.number("width"), in.number("height"));
            case "trapezoidal" -> TrapezoidalSection.of(in.number("width"), in.number("side_slope"));
            case "egg" -> Egg.normal(in.number("width"));
            case "widened-egg" -> Egg.widened(in.number("width"));
            case "depressed-egg" -> Egg.depressed(in.number("width"));
            case "sharp-egg" -> Egg.sharp(in.number("width"));
            case "inverted-egg" -> Egg.inverted(in.number("width"));
            case "horseshoe" -> Horseshoe.ofDiameter(in.number("diameter"));
            case "mouth" -> MouthSection.ofWidth(in.number("width"));
            case "u" -> USection.open(in.number("width"));
            default ->
                throw new IllegalArgumentException("shape must be one of circular, rectangular, box, trapezoidal, egg,"
                        + " widened-egg, depressed-egg, sharp-egg, inverted-egg, horseshoe, mouth, u, was \"" + shape
                        + "\"");
        };
    }

    /** Returns the depth that is asked for, the full height if there is none. */
    static double depth(Inputs in, CrossSection section) {
        return in.has("depth") ? in.number("depth") : section.height();
    }
}
