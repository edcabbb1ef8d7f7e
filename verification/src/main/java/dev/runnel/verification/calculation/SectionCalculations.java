package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.section.CrossSection;
import java.util.List;
import java.util.function.ToDoubleBiFunction;

/** Geometry of wetted sections; without a depth the section is full. */
final class SectionCalculations {
    private SectionCalculations() {}

    static List<Calculation> all() {
        return List.of(
                ofDepth("section.area", "m2", CrossSection::area),
                ofDepth("section.perimeter", "m", CrossSection::wettedPerimeter),
                ofDepth("section.hydraulic-radius", "m", CrossSection::hydraulicRadius),
                ofDepth("section.top-width", "m", CrossSection::topWidth),
                ofDepth("section.hydraulic-depth", "m", CrossSection::hydraulicDepth),
                ofDepth("section.centroid-depth", "m", CrossSection::centroidDepth),
                Calculation.of(
                        "hydraulics",
                        "section.height",
                        "m",
                        Sections.INPUTS,
                        in -> Sections.of(in).height()),
                Calculation.of(
                        "hydraulics",
                        "section.depth-for-area",
                        "m",
                        "area " + Sections.INPUTS,
                        in -> Sections.of(in).depthForArea(in.number("area"))));
    }

    private static Calculation ofDepth(String name, String unit, ToDoubleBiFunction<CrossSection, Double> question) {
        return Calculation.of("hydraulics", name, unit, "depth? " + Sections.INPUTS, in -> {
            CrossSection section = Sections.of(in);
            return question.applyAsDouble(section, Sections.depth(in, section));
        });
    }
}
