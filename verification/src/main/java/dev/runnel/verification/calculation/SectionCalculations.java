package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.section.CircularSection;
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
                inBulk("section.bulk-area", "m2", CrossSection::area, 0),
                inBulk("section.bulk-perimeter", "m", CrossSection::wettedPerimeter, 1),
                inBulk("section.bulk-hydraulic-radius", "m", CrossSection::hydraulicRadius, 2),
                inBulk("section.bulk-top-width", "m", CrossSection::topWidth, 3),
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

    /** One of the four properties of a depth; a circle also gives all at once, and then must give the same. */
    private static Calculation inBulk(String name, String unit, Bulk question, int place) {
        return inBulk(name, unit, "depth", (section, given, answers) -> {
            question.ask(section, given, answers);
            if (section instanceof CircularSection circle) {
                double[][] four = new double[4][1];
                circle.properties(given, four[0], four[1], four[2], four[3]);
                if (four[place][0] != answers[0]) {
                    throw new IllegalStateException("alone " + answers[0] + ", among four " + four[place][0]);
                }
            }
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
