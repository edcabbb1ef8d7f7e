package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;

/** The section that the inputs describe. */
final class Sections {
    /** The inputs {@link #of} knows. */
    static final String INPUTS = "shape? diameter?";

    private Sections() {}

    static CrossSection of(Inputs in) {
        String shape = in.has("shape") ? in.text("shape") : "circular";
        return switch (shape) {
            case "circular" -> CircularSection.ofDiameter(in.number("diameter"));
            default -> throw new IllegalArgumentException("shape must be circular, was \"" + shape + "\"");
        };
    }

    /** Returns the depth that is asked for, the full height if there is none. */
    static double depth(Inputs in, CrossSection section) {
        return in.has("depth") ? in.number("depth") : section.height();
    }
}
