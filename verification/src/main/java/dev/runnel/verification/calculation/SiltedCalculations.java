package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.CompositeManning;
import dev.runnel.hydraulics.flow.Compounding;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.DividedChannel;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.flow.RoughnessByDepth;
import dev.runnel.hydraulics.flow.VariableManning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleBiFunction;
import java.util.function.ToDoubleFunction;

/** Sections above a bed of sediment, divided channels, and roughness that depends on where the water stands. */
final class SiltedCalculations {
    private SiltedCalculations() {}

    static List<Calculation> all() {
        return List.of(
                geometry("sediment.area", "m2", in -> silted(in).area(in.number("depth"))),
                geometry("sediment.perimeter", "m", in -> silted(in).wettedPerimeter(in.number("depth"))),
                geometry("sediment.hydraulic-radius", "m", in -> silted(in).hydraulicRadius(in.number("depth"))),
                geometry("sediment.centroid-depth", "m", in -> silted(in).centroidDepth(in.number("depth"))),
                geometry("sediment.top-width", "m", in -> silted(in).topWidth(in.number("depth"))),
                geometry("sediment.level-above-invert", "m", in -> silted(in).levelAboveInvert(in.number("depth"))),
                Calculation.of(
                        "hydraulics",
                        "sediment.depth-above-bed",
                        "m",
                        "bed level " + Sections.INPUTS,
                        in -> silted(in).depthAboveBed(in.number("level"))),
                Calculation.of(
                        "hydraulics",
                        "sediment.depth-for-area",
                        "m",
                        "bed area " + Sections.INPUTS,
                        in -> silted(in).depthForArea(in.number("area"))),
                owned("sediment.own-area", "m2", CrossSection::area),
                owned("sediment.own-perimeter", "m", CrossSection::wettedPerimeter),
                owned("sediment.own-top-width", "m", CrossSection::topWidth),
                owned("sediment.own-centroid-depth", "m", CrossSection::centroidDepth),
                Calculation.of(
                        "hydraulics",
                        "sediment.own-normal-depth",
                        "m",
                        "bed discharge gradient n " + Sections.INPUTS,
                        in -> conduit(OwnSection.of(Sections.of(in)).withSediment(in.number("bed")), in)
                                .normalDepth(in.number("discharge"))),
                Calculation.of(
                        "hydraulics",
                        "flow.own-asked-again",
                        "1",
                        "discharge gradient n " + Sections.INPUTS,
                        SiltedCalculations::askedAgain),
                Calculation.of(
                        "hydraulics",
                        "sediment.own-depth-for-area",
                        "m",
                        "bed area " + Sections.INPUTS,
                        in -> OwnSection.of(Sections.of(in))
                                .withSediment(in.number("bed"))
                                .depthForArea(in.number("area"))),
                Calculation.of(
                        "hydraulics",
                        "roughness.composite",
                        "s/m^(1/3)",
                        "method bed_n wall_n depth bed " + Sections.INPUTS,
                        in -> composite(in).n(silted(in), in.number("depth"))),
                Calculation.of(
                        "hydraulics",
                        "roughness.compounded",
                        "s/m^(1/3)",
                        "method parts perimeters radii radius",
                        in -> Compounding.valueOf(in.text("method"))
                                .n(
                                        in.sample("parts"),
                                        in.sample("perimeters"),
                                        in.sample("radii"),
                                        in.number("radius"))),
                geometry("sediment.break-depths", "m, each times its place", in -> {
                    double sum = 0;
                    double[] breaks = silted(in).breakDepths();
                    for (int i = 0; i < breaks.length; i++) {
                        sum += (i + 1) * breaks[i];
                    }
                    return sum;
                }),
                Calculation.of(
                        "hydraulics",
                        "roughness.composite-velocity",
                        "m/s",
                        "method bed_n wall_n depth bed gradient " + Sections.INPUTS,
                        in -> Conduit.of(silted(in), Gradient.of(in.number("gradient")), composite(in))
                                .velocity(in.number("depth"))),
                Calculation.of(
                        "hydraulics",
                        "divided-channel.discharge",
                        "m3/s",
                        "places levels roughnesses scale level gradient",
                        in -> divided(in).discharge(in.number("level"), Gradient.of(in.number("gradient")))),
                Calculation.of(
                        "hydraulics",
                        "divided-channel.area",
                        "m2",
                        "places levels roughnesses scale level",
                        in -> divided(in).area(in.number("level"))),
                Calculation.of(
                        "hydraulics",
                        "roughness.by-fullness-velocity-ratio",
                        "1",
                        "fullness",
                        in -> velocityRatio(in.number("fullness"))));
    }

    private static Conduit conduit(CrossSection section, Inputs in) {
        return Conduit.of(section, Gradient.of(in.number("gradient")), Manning.of(in.number("n")));
    }

    /** How often a section is asked for the normal depth of a discharge by a conduit that was asked for nearly the same before. */
    private static double askedAgain(Inputs in) {
        OwnSection section = OwnSection.of(Sections.of(in));
        Conduit conduit = conduit(section, in);
        double discharge = in.number("discharge");
        conduit.normalDepth(discharge);
        int before = section.asked();
        conduit.normalDepth(Math.nextUp(discharge));
        return section.asked() - before;
    }

    /** Velocity over that of the full circle, n falling as the pipe fills; size, gradient and n play no part. */
    private static double velocityRatio(double fullness) {
        Conduit pipe = Conduit.of(
                CircularSection.ofDiameter(1),
                Gradient.of(0.01),
                VariableManning.of(0.013, RoughnessByDepth.asce1970()));
        return pipe.velocity(fullness) / pipe.fullBore().velocity();
    }

    /** With wetted interfaces; places and levels are lists, joined by _, in the unit of the scale. */
    private static DividedChannel divided(Inputs in) {
        double scale = in.number("scale");
        return DividedChannel.ofSurvey(
                        list(in.text("places"), scale), list(in.text("levels"), scale), list(in.text("roughnesses"), 1))
                .withWettedInterfaces();
    }

    private static double[] list(String text, double scale) {
        return Arrays.stream(text.split("_"))
                .mapToDouble(each -> Double.parseDouble(each) * scale)
                .toArray();
    }

    private static Calculation geometry(String name, String unit, ToDoubleFunction<Inputs> question) {
        return Calculation.of("hydraulics", name, unit, "bed depth " + Sections.INPUTS, question);
    }

    /** The same where the section is of a class that the library does not know. */
    private static Calculation owned(String name, String unit, ToDoubleBiFunction<CrossSection, Double> question) {
        return geometry(
                name,
                unit,
                in -> question.applyAsDouble(
                        OwnSection.of(Sections.of(in)).withSediment(in.number("bed")), in.number("depth")));
    }

    private static CrossSection silted(Inputs in) {
        return Sections.of(in).withSediment(in.number("bed"));
    }

    private static CompositeManning composite(Inputs in) {
        return CompositeManning.ofBedAndWalls(
                Compounding.valueOf(in.text("method")), in.number("bed_n"), in.number("wall_n"));
    }
}
