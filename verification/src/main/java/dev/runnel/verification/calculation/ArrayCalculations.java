package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Many depths at once in a circle: arrays of one value with another among them, so that each place can be asked for. */
final class ArrayCalculations {
    private static final String ARRAY = "diameter usual count other at place";
    private static final String LAW = " gradient n";

    /** Writes an answer for each number. */
    @FunctionalInterface
    private interface Door {
        void write(double[] given, double[] answers);
    }

    private ArrayCalculations() {}

    static List<Calculation> all() {
        return List.of(
                section("area", (circle, given) -> asked(given, circle::area)),
                section("perimeter", (circle, given) -> asked(given, circle::wettedPerimeter)),
                section("hydraulic-radius", (circle, given) -> asked(given, circle::hydraulicRadius)),
                section("top-width", (circle, given) -> asked(given, circle::topWidth)),
                section("all.area", (circle, given) -> properties(circle, given)[0]),
                section("all.perimeter", (circle, given) -> properties(circle, given)[1]),
                section("all.hydraulic-radius", (circle, given) -> properties(circle, given)[2]),
                section("all.top-width", (circle, given) -> properties(circle, given)[3]),
                flow("discharge", (pipe, given) -> asked(given, pipe::discharge)),
                flow("velocity", (pipe, given) -> asked(given, pipe::velocity)),
                flow("normal-depth", (pipe, given) -> asked(given, pipe::normalDepth)),
                flow("critical-depth", (pipe, given) -> asked(given, pipe::criticalDepth)),
                flow("discharge-where-defined", (pipe, given) -> asked(given, pipe::dischargeWhereDefined)),
                flow("velocity-where-defined", (pipe, given) -> asked(given, pipe::velocityWhereDefined)),
                flow("normal-depth-where-defined", (pipe, given) -> asked(given, pipe::normalDepthWhereDefined)),
                of(
                        "flow.array.undefined-depths",
                        "1",
                        ARRAY + LAW,
                        in -> pipe(in).dischargeWhereDefined(given(in, ""), new double[in.integer("count")])),
                of(
                        "flow.array.undefined-discharges",
                        "1",
                        ARRAY + LAW,
                        in -> pipe(in).normalDepthWhereDefined(given(in, ""), new double[in.integer("count")])),
                of(
                        "monitor.array.flow",
                        "m3/s",
                        ARRAY + LAW + " usual_velocity other_velocity",
                        ArrayCalculations::monitored));
    }

    private interface Question<T> {
        double[] answers(T asked, double[] given);
    }

    private static Calculation section(String name, Question<CircularSection> question) {
        return of(
                "section.array." + name,
                "m or m2",
                ARRAY,
                in -> place(in, question.answers(circle(in), given(in, ""))));
    }

    private static Calculation flow(String name, Question<Conduit> question) {
        return of(
                "flow.array." + name,
                "m or m3/s",
                ARRAY + LAW,
                in -> place(in, question.answers(pipe(in), given(in, ""))));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static double place(Inputs in, double[] answers) {
        return answers[in.integer("place")];
    }

    private static double[] asked(double[] given, Door door) {
        double[] answers = new double[given.length];
        door.write(given, answers);
        return answers;
    }

    private static double[][] properties(CircularSection circle, double[] given) {
        double[][] answers = new double[4][given.length];
        circle.properties(given, answers[0], answers[1], answers[2], answers[3]);
        return answers;
    }

    private static double monitored(Inputs in) {
        double[] flows = new double[in.integer("count")];
        PipeMonitor.of(pipe(in)).flow(given(in, ""), given(in, "_velocity"), flows);
        return place(in, flows);
    }

    private static CircularSection circle(Inputs in) {
        return CircularSection.ofDiameter(in.number("diameter"));
    }

    private static Conduit pipe(Inputs in) {
        return Conduit.of(circle(in), Gradient.of(in.number("gradient")), Manning.of(in.number("n")));
    }

    /** The usual value everywhere but at one place. */
    private static double[] given(Inputs in, String of) {
        double[] values = new double[in.integer("count")];
        Arrays.fill(values, in.number("usual" + of));
        values[in.integer("at")] = in.number("other" + of);
        return values;
    }
}
