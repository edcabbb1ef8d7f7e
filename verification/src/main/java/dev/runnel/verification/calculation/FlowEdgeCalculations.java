package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.CleansingCriterion;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.DividedChannel;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.flow.Reach;
import dev.runnel.hydraulics.flow.SectionFlow;
import dev.runnel.hydraulics.flow.VariedFlow;
import dev.runnel.hydraulics.flow.WaterProfile;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.ProfileSection;
import dev.runnel.hydraulics.section.Wall;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** Walls of arcs upside down, records with gaps, places along a profile, channels with dry banks; see {@link Books}. */
final class FlowEdgeCalculations {
    private static final String WALL = "wall turned";
    private static final String RECORD = "record gradient n " + Sections.INPUTS;
    private static final String LONG = "values size gradient " + Resistances.INPUTS + " " + Sections.INPUTS;
    private static final String REACHES =
            "lengths gradients drops discharge outlet_depth outlet_invert n " + Sections.INPUTS;

    private FlowEdgeCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("wall.area", "m2", WALL + " depth", in -> section(in).area(in.number("depth"))),
                of("wall.perimeter", "m", WALL + " depth", in -> section(in).wettedPerimeter(in.number("depth"))),
                of("wall.top-width", "m", WALL + " depth", in -> section(in).topWidth(in.number("depth"))),
                of(
                        "wall.centroid-depth",
                        "m",
                        WALL + " depth",
                        in -> section(in).centroidDepth(in.number("depth"))),
                of("wall.depth-for-area", "m", WALL + " area", in -> section(in).depthForArea(in.number("area"))),
                of("long-record.area", "m2", LONG, in -> lengthened(in, Conduit::section, CrossSection::area)),
                of(
                        "long-record.perimeter",
                        "m",
                        LONG,
                        in -> lengthened(in, Conduit::section, CrossSection::wettedPerimeter)),
                of(
                        "long-record.radius",
                        "m",
                        LONG,
                        in -> lengthened(in, Conduit::section, CrossSection::hydraulicRadius)),
                of("long-record.width", "m", LONG, in -> lengthened(in, Conduit::section, CrossSection::topWidth)),
                of("long-record.discharge", "m3/s", LONG, in -> lengthened(in, pipe -> pipe, Conduit::discharge)),
                of("long-record.velocity", "m/s", LONG, in -> lengthened(in, pipe -> pipe, Conduit::velocity)),
                of("long-record.normal-depth", "m", LONG, in -> lengthened(in, pipe -> pipe, Conduit::normalDepth)),
                of("long-record.critical-depth", "m", LONG, in -> lengthened(in, pipe -> pipe, Conduit::criticalDepth)),
                of(
                        "cleansing.velocity-is-met",
                        "1 or 0",
                        "velocity depth gradient n " + Sections.INPUTS,
                        in -> CleansingCriterion.velocity(in.number("velocity"))
                                        .isMetBy(conduit(in).at(in.number("depth")))
                                ? 1
                                : 0),
                of(
                        "energy.count-of-depths",
                        "depths",
                        "energy discharge " + Sections.INPUTS,
                        in -> SectionFlow.of(Sections.of(in), in.number("discharge"))
                                .depthsForEnergy(in.number("energy"))
                                .length),
                of("wall.height", "m", WALL, in -> section(in).height()),
                of(
                        "walls.height",
                        "m",
                        "left right",
                        in -> ProfileSection.between(wall(in, "left"), wall(in, "right"))
                                .height()),
                of("flow.record.depth", "m", RECORD, in -> {
                    double[] depths = new double[in.sample("record").length];
                    conduit(in).normalDepthWhereDefined(in.sample("record"), depths);
                    return known(depths);
                }),
                of(
                        "flow.record.without-depth",
                        "readings",
                        RECORD,
                        in -> conduit(in)
                                .normalDepthWhereDefined(in.sample("record"), new double[in.sample("record").length])),
                of("flow.record.velocity", "m/s", RECORD, in -> {
                    double[] velocities = new double[in.sample("record").length];
                    conduit(in).velocityWhereDefined(in.sample("record"), velocities);
                    return known(velocities);
                }),
                of(
                        "flow.record.without-velocity",
                        "readings",
                        RECORD,
                        in -> conduit(in)
                                .velocityWhereDefined(in.sample("record"), new double[in.sample("record").length])),
                of(
                        "varied-flow.profile.depth-at",
                        "m",
                        REACHES + " distance",
                        in -> profile(in).depthAt(in.number("distance"))),
                of(
                        "varied-flow.profile.inlet-invert",
                        "m",
                        REACHES,
                        in -> profile(in).inlet().invert()),
                of(
                        "divided-channel.plain-discharge",
                        "m3/s",
                        "places levels roughnesses level gradient",
                        in -> DividedChannel.ofSurvey(
                                        in.sample("places"), in.sample("levels"), in.sample("roughnesses"))
                                .discharge(in.number("level"), Gradient.of(in.number("gradient")))),
                of(
                        "divided-channel.wetted-discharge",
                        "m3/s",
                        "places levels roughnesses level gradient",
                        in -> DividedChannel.ofSurvey(
                                        in.sample("places"), in.sample("levels"), in.sample("roughnesses"))
                                .withWettedInterfaces()
                                .discharge(in.number("level"), Gradient.of(in.number("gradient")))));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    @FunctionalInterface
    private interface Bulk<T> {
        void ask(T asked, double[] given, double[] answers);
    }

    /** Values over and over until there are so many, asked at once: more than any block that a loop takes in one go. */
    private static <T> double lengthened(Inputs in, Function<Conduit, T> part, Bulk<T> question) {
        double[] values = in.sample("values");
        double[] given = new double[in.integer("size")];
        for (int i = 0; i < given.length; i++) {
            given[i] = values[i % values.length];
        }
        double[] answers = new double[given.length];
        question.ask(
                part.apply(Conduit.of(Sections.of(in), Gradient.of(in.number("gradient")), Resistances.of(in))),
                given,
                answers);
        return known(answers);
    }

    private static double known(double[] values) {
        List<Double> list = new ArrayList<>();
        for (double value : values) {
            list.add(Double.isNaN(value) ? 0 : value);
        }
        return Books.sum(list, value -> value);
    }

    /** A wall as {@code 0 0; line x y; arc x y cx cy}, turned upside down so many times, and its mirror image. */
    private static ProfileSection section(Inputs in) {
        Wall wall = wall(in, "wall");
        for (int i = 0; i < in.integer("turned"); i++) {
            wall = wall.inverted();
        }
        return wall.mirrored();
    }

    private static Wall wall(Inputs in, String name) {
        String[] pieces = in.text(name).split(";");
        double[] foot = numbers(pieces[0]);
        Wall wall = Wall.from(foot[0], foot[1]);
        for (int i = 1; i < pieces.length; i++) {
            double[] to = numbers(pieces[i]);
            wall = to.length == 2 ? wall.lineTo(to[0], to[1]) : wall.arcTo(to[0], to[1], to[2], to[3]);
        }
        return wall;
    }

    private static double[] numbers(String piece) {
        List<Double> numbers = new ArrayList<>();
        for (String word : piece.strip().split(" ")) {
            if (!word.equals("line") && !word.equals("arc")) {
                numbers.add(Double.valueOf(word));
            }
        }
        return numbers.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static Conduit conduit(Inputs in) {
        return Conduit.of(Sections.of(in), Gradient.of(in.number("gradient")), Manning.of(in.number("n")));
    }

    private static WaterProfile profile(Inputs in) {
        CrossSection section = Sections.of(in);
        double[] lengths = in.sample("lengths");
        double[] gradients = in.sample("gradients");
        double[] drops = in.sample("drops");
        List<Reach> reaches = new ArrayList<>();
        for (int i = 0; i < lengths.length; i++) {
            Reach reach = Reach.of(section, Gradient.of(gradients[i]), Manning.of(in.number("n")), lengths[i]);
            reaches.add(drops[i] > 0 ? reach.withDrop(drops[i]) : reach);
        }
        VariedFlow flow = VariedFlow.of(reaches, in.number("discharge")).withOutletDepth(in.number("outlet_depth"));
        double invert = in.number("outlet_invert");
        return (invert == 0 ? flow : flow.withOutletInvert(invert)).profile();
    }
}
