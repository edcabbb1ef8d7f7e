package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.LocalLoss;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.flow.ProfileType;
import dev.runnel.hydraulics.flow.Reach;
import dev.runnel.hydraulics.flow.Station;
import dev.runnel.hydraulics.flow.VariedFlow;
import dev.runnel.hydraulics.flow.WaterProfile;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.RectangularSection;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** The line of the water through several reaches, with drops and losses between them; and the class of one profile. */
final class ChainCalculations {
    private static final String CHAIN =
            "shape sizes lengths gradients roughnesses drops losses discharge outlet_depth? inlet_depth? outlet_invert? step?";

    private ChainCalculations() {}

    static List<Calculation> all() {
        return List.of(
                atInlet("chain.inlet.depth", "m", Station::depth),
                atInlet("chain.inlet.level", "m", Station::level),
                atInlet("chain.inlet.energy-level", "m", Station::energyLevel),
                atInlet("chain.inlet.velocity", "m/s", Station::velocity),
                atInlet("chain.inlet.froude-number", "1", Station::froudeNumber),
                atInlet("chain.inlet.friction-slope", "m/m", Station::frictionSlope),
                of("chain.outlet.depth", "m", CHAIN, in -> profile(in).outlet().depth()),
                of("chain.outlet.level", "m", CHAIN, in -> profile(in).outlet().level()),
                of("chain.depth", "m", "distance " + CHAIN, in -> profile(in).depthAt(in.number("distance"))),
                of("chain.pressurised-length", "m", CHAIN, in -> profile(in).pressurisedLength()),
                of(
                        "varied-flow.class",
                        "1",
                        "depth gradient n discharge " + Sections.INPUTS,
                        ChainCalculations::profileClass));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static Calculation atInlet(String name, String unit, ToDoubleFunction<Station> question) {
        return of(name, unit, CHAIN, in -> question.applyAsDouble(profile(in).inlet()));
    }

    private static WaterProfile profile(Inputs in) {
        double[] sizes = in.sample("sizes");
        double[] lengths = in.sample("lengths");
        double[] gradients = in.sample("gradients");
        double[] roughnesses = in.sample("roughnesses");
        double[] drops = in.sample("drops");
        double[] losses = in.sample("losses");
        List<Reach> reaches = new ArrayList<>();
        for (int i = 0; i < sizes.length; i++) {
            var section = "circular".equals(in.text("shape"))
                    ? CircularSection.ofDiameter(sizes[i])
                    : RectangularSection.open(sizes[i]);
            Reach reach = Reach.of(section, Gradient.of(gradients[i]), Manning.of(roughnesses[i]), lengths[i]);
            // What is 0 is left as it comes.
            reach = drops[i] == 0 ? reach : reach.withDrop(drops[i]);
            reaches.add(losses[i] == 0 ? reach : reach.withLoss(LocalLoss.of(losses[i])));
        }
        VariedFlow flow = VariedFlow.of(reaches, in.number("discharge"));
        if (in.has("outlet_depth") && in.number("outlet_depth") > 0) {
            flow = flow.withOutletDepth(in.number("outlet_depth"));
        }
        if (in.has("inlet_depth") && in.number("inlet_depth") > 0) {
            flow = flow.withInletDepth(in.number("inlet_depth"));
        }
        if (in.number("outlet_invert", 0) != 0) {
            flow = flow.withOutletInvert(in.number("outlet_invert"));
        }
        return (in.has("step") && in.number("step") > 0 ? flow.withStep(in.number("step")) : flow).profile();
    }

    /** Ten for mild, twenty steep, thirty critical, forty level, fifty adverse, and the zone; 0 for uniform flow. */
    private static double profileClass(Inputs in) {
        Reach reach = Reach.of(Sections.of(in), Gradient.of(in.number("gradient")), Manning.of(in.number("n")), 1);
        ProfileType type = ProfileType.ofDischargeAndDepth(reach, in.number("discharge"), in.number("depth"));
        return type == ProfileType.UNIFORM
                ? 0
                : 10 * (1 + "MSCHA".indexOf(type.name().charAt(0)))
                        + Character.digit(type.name().charAt(1), 10);
    }
}
