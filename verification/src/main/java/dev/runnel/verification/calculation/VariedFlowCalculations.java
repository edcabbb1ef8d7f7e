package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.Backwater;
import dev.runnel.hydraulics.flow.CleansingCriterion;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.DepthSteps;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.JumpPlace;
import dev.runnel.hydraulics.flow.LocalLoss;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.flow.Reach;
import dev.runnel.hydraulics.flow.Station;
import dev.runnel.hydraulics.flow.VariedFlow;
import java.util.List;

/** Gradually varied flow by depth steps, and local losses. */
final class VariedFlowCalculations {
    private static final String PROFILE = "discharge control from_outlet length gradient n " + Sections.INPUTS;

    private static final String STEP = "discharge from_depth to_depth gradient n gravity " + Sections.INPUTS;

    private static final String JUMP = "discharge inlet_depth outlet_depth length gradient n " + Sections.INPUTS;

    private VariedFlowCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of("hydraulics", "varied-flow.step-length", "m", STEP, in -> step(in).distance()),
                Calculation.of("hydraulics", "varied-flow.step-invert", "m", STEP, in -> step(in).invert()),
                Calculation.of("hydraulics", "varied-flow.friction-slope", "m/m", STEP, in -> step(in).frictionSlope()),
                Calculation.of(
                        "hydraulics",
                        "local-loss.enlargement",
                        "m",
                        "upstream_area downstream_area velocity",
                        in -> LocalLoss.enlargement(in.number("upstream_area"), in.number("downstream_area"))
                                .head(in.number("velocity"))),
                Calculation.of(
                        "hydraulics", "varied-flow.depth", "m", PROFILE, VariedFlowCalculations::depthFarFromControl),
                Calculation.of("hydraulics", "varied-flow.jump-place", "m", JUMP, in -> jump(in).distance()),
                Calculation.of(
                        "hydraulics",
                        "varied-flow.depth-before-jump",
                        "m",
                        JUMP,
                        in -> jump(in).jump().upstreamDepth()),
                Calculation.of(
                        "hydraulics",
                        "backwater.length",
                        "m",
                        "raised_depth rise discharge gradient n " + Sections.INPUTS,
                        in -> Backwater.of(conduit(in), in.number("discharge"))
                                .length(in.number("raised_depth"), in.number("rise"))),
                Calculation.of(
                        "hydraulics",
                        "backwater.depth-upstream",
                        "m",
                        "raised_depth distance discharge gradient n " + Sections.INPUTS,
                        in -> Backwater.of(conduit(in), in.number("discharge"))
                                .depthUpstream(in.number("raised_depth"), in.number("distance"))),
                Calculation.of(
                        "hydraulics",
                        "backwater.raised-depth",
                        "m",
                        "distance rise discharge gradient n " + Sections.INPUTS,
                        VariedFlowCalculations::raisedAgain),
                Calculation.of(
                        "hydraulics",
                        "cleansing.gradient-for-velocity",
                        "m/m",
                        "velocity discharge n " + Sections.INPUTS,
                        in -> CleansingCriterion.velocity(in.number("velocity"))
                                .minimumGradient(level(in), in.number("discharge"))
                                .value()),
                Calculation.of(
                        "hydraulics",
                        "cleansing.gradient-for-shear-stress",
                        "m/m",
                        "stress discharge n " + Sections.INPUTS,
                        in -> CleansingCriterion.shearStress(in.number("stress"))
                                .minimumGradient(level(in), in.number("discharge"))
                                .value()));
    }

    /** Depth at the end of a reach that is not the control: the inlet of slow flow, the outlet of fast flow. */
    private static double depthFarFromControl(Inputs in) {
        Reach reach = Reach.of(
                Sections.of(in), Gradient.of(in.number("gradient")), Manning.of(in.number("n")), in.number("length"));
        VariedFlow flow = VariedFlow.of(reach, in.number("discharge"));
        boolean fromOutlet = in.number("from_outlet") == 1;
        return fromOutlet
                ? flow.withOutletDepth(in.number("control")).profile().inlet().depth()
                : flow.withInletDepth(in.number("control")).profile().outlet().depth();
    }

    /** The one jump between fast flow from the inlet and slow flow from the outlet. */
    private static JumpPlace jump(Inputs in) {
        Reach reach = Reach.of(
                Sections.of(in), Gradient.of(in.number("gradient")), Manning.of(in.number("n")), in.number("length"));
        return VariedFlow.of(reach, in.number("discharge"))
                .withInletDepth(in.number("inlet_depth"))
                .withOutletDepth(in.number("outlet_depth"))
                .profile()
                .jumps()
                .get(0);
    }

    /** From the end of the backwater down to the place that raises it. */
    private static double raisedAgain(Inputs in) {
        Backwater backwater = Backwater.of(conduit(in), in.number("discharge"));
        return backwater.raisedDepth(backwater.normalDepth() + in.number("rise"), in.number("distance"));
    }

    private static Conduit conduit(Inputs in) {
        return Conduit.of(Sections.of(in), Gradient.of(in.number("gradient")), Manning.of(in.number("n")));
    }

    /** Any gradient: the one sought takes its place. */
    private static Conduit level(Inputs in) {
        return Conduit.of(Sections.of(in), Gradient.of(0.01), Manning.of(in.number("n")));
    }

    /** Returns the second station of one depth step. */
    private static Station step(Inputs in) {
        Reach reach = Reach.of(Sections.of(in), Gradient.of(in.number("gradient")), Manning.of(in.number("n")), 1000)
                .withGravity(in.number("gravity"));
        double[] depths = {in.number("from_depth"), in.number("to_depth")};
        return DepthSteps.through(reach, in.number("discharge"), depths).get(1);
    }
}
