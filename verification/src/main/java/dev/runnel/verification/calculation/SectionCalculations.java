package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.ProfileSection;
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
                inBulk("section.bulk-area", "m2", "depth", CrossSection::area),
                inBulk("section.bulk-perimeter", "m", "depth", CrossSection::wettedPerimeter),
                inBulk("section.bulk-hydraulic-radius", "m", "depth", CrossSection::hydraulicRadius),
                inBulk("section.bulk-top-width", "m", "depth", CrossSection::topWidth),
                inBulk("section.bulk-depth-for-area", "m", "area", CrossSection::depthForArea),
                Calculation.of(
                        "hydraulics",
                        "section.widest",
                        "m",
                        Sections.INPUTS,
                        in -> ((ProfileSection) Sections.of(in)).width()),
                Calculation.of(
                        "hydraulics",
                        "section.depth-for-area",
                        "m",
                        "area " + Sections.INPUTS,
                        in -> Sections.of(in).depthForArea(in.number("area"))));
    }

    /** The same through arrays, as records are computed. */
    private static Calculation inBulk(String name, String unit, String input, Bulk question) {
        return Calculation.of("hydraulics", name, unit, input + " " + Sections.INPUTS, in -> {
            double[] answers = new double[1];
            question.ask(Sections.of(in), new double[] {in.number(input)}, answers);
            return answers[0];
        });
    }

    @FunctionalInterface
    private interface Bulk {
        void ask(CrossSection section, double[] given, double[] answers);
    }

    private static Calculation ofDepth(String name, String unit, ToDoubleBiFunction<CrossSection, Double> question) {
        return Calculation.of("hydraulics", name, unit, "depth? " + Sections.INPUTS, in -> {
            CrossSection section = Sections.of(in);
            return question.applyAsDouble(section, Sections.depth(in, section));
        });
    }
}
