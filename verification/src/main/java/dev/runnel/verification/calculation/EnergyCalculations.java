package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.SectionFlow;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Specific energy, momentum, alternate and conjugate depths, and the jump, for a discharge in a section. */
final class EnergyCalculations {
    private static final String FLOW = "discharge gravity? " + Sections.INPUTS;

    private EnergyCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("energy.specific", "m", "depth ", in -> flow(in).specificEnergy(in.number("depth"))),
                of("energy.minimum", "m", "", in -> flow(in).minimumEnergy()),
                of("energy.froude-number", "1", "depth ", in -> flow(in).froudeNumber(in.number("depth"))),
                of("energy.first-critical-depth", "m", "", in -> flow(in).criticalDepths()[0]),
                of("energy.second-critical-depth", "m", "", in -> flow(in).criticalDepths()[1]),
                of("energy.last-critical-depth", "m", "", in -> last(flow(in).criticalDepths())),
                of("energy.alternate-depth", "m", "depth ", in -> flow(in).alternateDepth(in.number("depth"))),
                of("energy.lower-depth", "m", "energy ", in -> flow(in).depthsForEnergy(in.number("energy"))[0]),
                of("energy.upper-depth", "m", "energy ", in -> last(flow(in).depthsForEnergy(in.number("energy")))),
                of("momentum.function", "m3", "depth ", in -> flow(in).momentum(in.number("depth"))),
                of("jump.conjugate-depth", "m", "depth ", in -> flow(in).conjugateDepth(in.number("depth"))),
                of(
                        "jump.energy-loss",
                        "m",
                        "depth ",
                        in -> flow(in).jump(in.number("depth")).energyLoss()),
                of(
                        "jump.length",
                        "m",
                        "depth ",
                        in -> flow(in).jump(in.number("depth")).length()),
                of(
                        "jump.is-filling",
                        "1 or 0",
                        "depth ",
                        in -> flow(in).jump(in.number("depth")).isFilling() ? 1 : 0),
                of(
                        "jump.length-by-rise",
                        "m",
                        "multiple depth ",
                        in -> flow(in).jump(in.number("depth")).lengthByRise(in.number("multiple"))),
                of(
                        "jump.power",
                        "W",
                        "depth ",
                        in -> flow(in).jump(in.number("depth")).power()));
    }

    private static Calculation of(String name, String unit, String more, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, more + FLOW, body);
    }

    private static SectionFlow flow(Inputs in) {
        SectionFlow flow = SectionFlow.of(Sections.of(in), in.number("discharge"));
        return in.has("gravity") ? flow.withGravity(in.number("gravity")) : flow;
    }

    private static double last(double[] depths) {
        return depths[depths.length - 1];
    }
}
