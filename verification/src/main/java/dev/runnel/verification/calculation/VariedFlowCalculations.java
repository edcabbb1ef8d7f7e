package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.DepthSteps;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.LocalLoss;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.flow.Reach;
import dev.runnel.hydraulics.flow.Station;
import java.util.List;

/** Gradually varied flow by depth steps, and local losses. */
final class VariedFlowCalculations {
    private static final String STEP = "discharge from_depth to_depth gradient n gravity " + Sections.INPUTS;

    private VariedFlowCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of("hydraulics", "varied-flow.step-length", "m", STEP, in -> step(in).distance()),
                Calculation.of("hydraulics", "varied-flow.friction-slope", "m/m", STEP, in -> step(in).frictionSlope()),
                Calculation.of(
                        "hydraulics",
                        "local-loss.enlargement",
                        "m",
                        "upstream_area downstream_area velocity",
                        in -> LocalLoss.enlargement(in.number("upstream_area"), in.number("downstream_area"))
                                .head(in.number("velocity"))));
    }

    /** Returns the second station of one depth step. */
    private static Station step(Inputs in) {
        Reach reach = Reach.of(Sections.of(in), Gradient.of(in.number("gradient")), Manning.of(in.number("n")), 1000)
                .withGravity(in.number("gravity"));
        double[] depths = {in.number("from_depth"), in.number("to_depth")};
        return DepthSteps.through(reach, in.number("discharge"), depths).get(1);
    }
}
