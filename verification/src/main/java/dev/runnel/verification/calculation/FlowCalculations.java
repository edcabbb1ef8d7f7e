package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.Channels;
import dev.runnel.hydraulics.flow.Chezy;
import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Conduits;
import dev.runnel.hydraulics.flow.CriticalFlow;
import dev.runnel.hydraulics.flow.DarcyFriction;
import dev.runnel.hydraulics.flow.FlowState;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.flow.ReservoirInlet;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Uniform and critical flow in a conduit; without a depth it runs full. */
final class FlowCalculations {
    private static final double STANDARD_GRAVITY = 9.80665;

    private FlowCalculations() {}

    static List<Calculation> all() {
        return List.of(
                atDepth("flow.velocity", "m/s", FlowState::velocity),
                atDepth("flow.discharge", "m3/s", FlowState::discharge),
                atDepth("flow.froude-number", "1", FlowState::froudeNumber),
                atDepth("flow.velocity-head", "m", FlowState::velocityHead),
                atDepth("flow.specific-energy", "m", FlowState::specificEnergy),
                inBulk("flow.bulk-velocity", "m/s", "depth", Conduit::velocity),
                inBulk("flow.bulk-discharge", "m3/s", "depth", Conduit::discharge),
                inBulk("flow.bulk-normal-depth", "m", "discharge", Conduit::normalDepth),
                inBulk("flow.bulk-critical-depth", "m", "discharge", Conduit::criticalDepth),
                Calculation.of(
                        "hydraulics",
                        "resistance.fitted-n",
                        "s/m^(1/3)",
                        "velocity radius gradient",
                        in -> Manning.of(0.05)
                                .fittedTo(
                                        in.number("velocity"),
                                        in.number("radius"),
                                        in.number("gradient"),
                                        STANDARD_GRAVITY)
                                .n()),
                Calculation.of(
                        "hydraulics",
                        "resistance.fitted-roughness",
                        "m",
                        "velocity radius gradient gravity viscosity",
                        in -> ColebrookWhite.ofRoughnessMm(1)
                                .withViscosity(in.number("viscosity"))
                                .fittedTo(
                                        in.number("velocity"),
                                        in.number("radius"),
                                        in.number("gradient"),
                                        in.number("gravity"))
                                .roughness()),
                atDepth("flow.shear-stress", "Pa", FlowState::shearStress),
                ofConduit(
                        "flow.depth-of-maximum-discharge",
                        "m",
                        conduit -> conduit.maximum().depth()),
                ofConduit(
                        "flow.maximum-discharge",
                        "m3/s",
                        conduit -> conduit.maximum().discharge()),
                ofConduit(
                        "flow.depth-of-maximum-velocity",
                        "m",
                        conduit -> conduit.maximumVelocity().depth()),
                ofConduit(
                        "flow.maximum-velocity",
                        "m/s",
                        conduit -> conduit.maximumVelocity().velocity()),
                Calculation.of(
                        "hydraulics",
                        "flow.normal-depth",
                        "m",
                        "discharge gradient " + inputs(),
                        in -> conduit(in).normalDepth(in.number("discharge"))),
                Calculation.of(
                        "hydraulics",
                        "flow.gradient",
                        "m/m",
                        "discharge depth? " + inputs(),
                        in -> sloped(in, 1)
                                .gradientForDischargeAtDepth(
                                        in.number("discharge"), Sections.depth(in, Sections.of(in)))
                                .value()),
                Calculation.of(
                        "hydraulics",
                        "flow.diameter-at-filling",
                        "m",
                        "discharge fullness gradient n",
                        in -> Conduits.atFullness(in.number("fullness"))
                                .carrying(
                                        in.number("discharge"),
                                        Gradient.of(in.number("gradient")),
                                        Manning.of(in.number("n")))
                                .section()
                                .height()),
                Calculation.of(
                        "hydraulics",
                        "flow.diameter-at-velocity",
                        "m",
                        "velocity fullness gradient " + Resistances.INPUTS,
                        in -> Conduits.atFullness(in.number("fullness"))
                                .flowingAt(
                                        in.number("velocity"), Gradient.of(in.number("gradient")), Resistances.of(in))
                                .section()
                                .height()),
                Calculation.of(
                        "hydraulics",
                        "flow.diameter-by-continuity",
                        "m",
                        "discharge velocity fullness",
                        in -> Conduits.atFullness(in.number("fullness"))
                                .sectionOfDischargeAndVelocity(in.number("discharge"), in.number("velocity"))
                                .height()),
                Calculation.of(
                        "hydraulics",
                        "flow.width",
                        "m",
                        "discharge depth side_slope gradient " + Resistances.INPUTS,
                        in -> channel(in).section().topWidth(0)),
                Calculation.of(
                        "hydraulics",
                        "resistance.chezy-c",
                        "m^(1/2)/s",
                        "velocity radius gradient",
                        in -> Chezy.of(50)
                                .fittedTo(
                                        in.number("velocity"),
                                        in.number("radius"),
                                        in.number("gradient"),
                                        STANDARD_GRAVITY)
                                .c()),
                Calculation.of(
                        "hydraulics",
                        "inlet.depth",
                        "m",
                        "head loss gradient " + inputs(),
                        in -> inlet(in).depth(in.number("head"))),
                Calculation.of(
                        "hydraulics",
                        "inlet.discharge",
                        "m3/s",
                        "head loss gradient " + inputs(),
                        in -> inlet(in).discharge(in.number("head"))),
                Calculation.of(
                        "hydraulics",
                        "flow.critical-depth",
                        "m",
                        "discharge gravity? " + Sections.INPUTS,
                        in -> critical(in).depth(in.number("discharge"))),
                Calculation.of(
                        "hydraulics",
                        "flow.critical-discharge",
                        "m3/s",
                        "depth gravity? " + Sections.INPUTS,
                        in -> critical(in).discharge(in.number("depth"))),
                Calculation.of(
                        "hydraulics",
                        "flow.critical-depth-for-energy",
                        "m",
                        "energy gravity? " + Sections.INPUTS,
                        in -> critical(in).depthForEnergy(in.number("energy"))),
                Calculation.of(
                        "hydraulics",
                        "flow.discharge-for-energy",
                        "m3/s",
                        "energy gravity? " + Sections.INPUTS,
                        in -> critical(in).dischargeForEnergy(in.number("energy"))),
                Calculation.of(
                        "hydraulics",
                        "friction.darcy-factor",
                        "1",
                        "reynolds relative_roughness",
                        in -> DarcyFriction.factor(in.number("reynolds"), in.number("relative_roughness"))),
                Calculation.of(
                        "hydraulics",
                        "resistance.velocity",
                        "m/s",
                        "radius gradient gravity? " + Resistances.INPUTS,
                        in -> Resistances.of(in).velocity(in.number("radius"), in.number("gradient"), gravity(in))),
                Calculation.of(
                        "hydraulics",
                        "resistance.gradient",
                        "m/m",
                        "velocity radius gravity? " + Resistances.INPUTS,
                        in -> Resistances.of(in).gradient(in.number("velocity"), in.number("radius"), gravity(in))),
                Calculation.of(
                        "hydraulics",
                        "resistance.standard-velocity",
                        "m/s",
                        "radius gradient " + Resistances.INPUTS,
                        in -> Resistances.of(in).velocity(in.number("radius"), in.number("gradient"))),
                Calculation.of(
                        "hydraulics",
                        "resistance.standard-gradient",
                        "m/m",
                        "velocity radius " + Resistances.INPUTS,
                        in -> Resistances.of(in).gradient(in.number("velocity"), in.number("radius"))));
    }

    private static String inputs() {
        return "gravity? " + Sections.INPUTS + " " + Resistances.INPUTS;
    }

    private static Calculation atDepth(String name, String unit, ToDoubleFunction<FlowState> question) {
        return Calculation.of("hydraulics", name, unit, "gradient depth? " + inputs(), in -> {
            Conduit conduit = conduit(in);
            return question.applyAsDouble(conduit.at(Sections.depth(in, conduit.section())));
        });
    }

    /** The same through arrays, as records are computed. */
    private static Calculation inBulk(String name, String unit, String input, Bulk question) {
        return Calculation.of("hydraulics", name, unit, input + " gradient " + inputs(), in -> {
            // A record asks the same again and again: the last answer comes from what was kept, if anything is.
            double[] given = new double[12];
            Arrays.fill(given, in.number(input));
            double[] answers = new double[given.length];
            question.ask(conduit(in), given, answers);
            return answers[answers.length - 1];
        });
    }

    @FunctionalInterface
    private interface Bulk {
        void ask(Conduit conduit, double[] given, double[] answers);
    }

    private static Calculation ofConduit(String name, String unit, ToDoubleFunction<Conduit> question) {
        return Calculation.of(
                "hydraulics", name, unit, "gradient " + inputs(), in -> question.applyAsDouble(conduit(in)));
    }

    private static Conduit conduit(Inputs in) {
        return sloped(in, in.number("gradient"));
    }

    private static Conduit sloped(Inputs in, double gradient) {
        return Conduit.of(Sections.of(in), Gradient.of(gradient), Resistances.of(in))
                .withGravity(gravity(in));
    }

    private static ReservoirInlet inlet(Inputs in) {
        return ReservoirInlet.into(conduit(in)).withEntranceLoss(in.number("loss"));
    }

    private static Conduit channel(Inputs in) {
        double discharge = in.number("discharge");
        double depth = in.number("depth");
        Gradient gradient = Gradient.of(in.number("gradient"));
        return in.number("side_slope") == 0
                ? Channels.ofDischargeAndDepth(discharge, depth).rectangular(gradient, Resistances.of(in))
                : Channels.ofDischargeAndDepth(discharge, depth)
                        .trapezoidal(in.number("side_slope"), gradient, Resistances.of(in));
    }

    private static CriticalFlow critical(Inputs in) {
        return CriticalFlow.of(Sections.of(in)).withGravity(gravity(in));
    }

    private static double gravity(Inputs in) {
        return in.number("gravity", STANDARD_GRAVITY);
    }
}
