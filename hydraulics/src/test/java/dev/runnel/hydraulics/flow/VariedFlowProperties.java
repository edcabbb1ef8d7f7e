package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.Shapes;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class VariedFlowProperties {
    @Provide
    Arbitrary<VariedFlow> flows() {
        Arbitrary<Double> gradients =
                Arbitraries.oneOf(Pipes.logUniform(1e-4, 0.05), Arbitraries.of(0.0, -0.001, -0.01));
        Arbitrary<Double> depths = Arbitraries.doubles().between(0.05, 3).ofScale(6);
        return Combinators.combine(
                        Shapes.all(), Shapes.all(), gradients, gradients, Pipes.logUniform(0.05, 3), depths, depths)
                .as((one, other, first, second, flow, outlet, inlet) -> {
                    double size = Math.min(scale(one), scale(other));
                    double discharge = flow * Math.sqrt(Gravity.STANDARD * size) * size * size * 0.2;
                    return VariedFlow.of(List.of(reach(one, first, 100), reach(other, second, 60)), discharge)
                            .withOutletDepth(outlet * size)
                            .withInletDepth(inlet * size);
                });
    }

    private static double scale(CrossSection section) {
        return Double.isFinite(section.height()) ? section.height() : Math.max(section.topWidth(0.1), 0.1);
    }

    private static Reach reach(CrossSection section, double gradient, double sizes) {
        double length = sizes * scale(section);
        return Reach.of(section, Gradient.of(gradient), Manning.of(0.013), length)
                .withDrop(0.02 * scale(section));
    }

    /** Whatever the chain: a depth everywhere, and the energy balance between stations unless there is a jump. */
    @Property(tries = 300)
    void everyChainHasAProfileThatKeepsTheEnergyBalance(@ForAll("flows") VariedFlow flow) {
        WaterProfile profile = flow.profile();
        List<Station> stations = profile.stations();
        assertThat(stations).hasSize(402);
        int free = 0;
        for (int i = 1; i < stations.size(); i++) {
            Station upper = stations.get(i - 1);
            Station lower = stations.get(i);
            assertThat(lower.depth()).isPositive().isFinite();
            double dx = lower.distance() - upper.distance();
            boolean control = Math.abs(upper.froudeNumber() - 1) < 1e-6 || Math.abs(lower.froudeNumber() - 1) < 1e-6;
            boolean changes = upper.froudeNumber() > 1 != lower.froudeNumber() > 1;
            if (upper.reach() != lower.reach() || control || changes) {
                continue;
            }
            double friction = (upper.frictionSlope() + lower.frictionSlope()) / 2 * dx;
            double balance = upper.energyLevel() - lower.energyLevel() - friction;
            // A level soffit or bench lets the friction slope jump, and a step can end on the jump.
            double jump = Math.abs(upper.frictionSlope() - lower.frictionSlope()) * dx;
            double energy = Math.abs(upper.energyLevel()) + upper.depth() + friction;
            assertThat(balance).isCloseTo(0, within(1e-11 * energy + (atCorner(upper) || atCorner(lower) ? jump : 0)));
            free++;
        }
        assertThat(free).isPositive();
    }

    private static boolean atCorner(Station station) {
        for (double level : station.reach().section().breakDepths()) {
            if (Math.abs(station.depth() - level) < 1e-9 * Math.max(level, station.depth())) {
                return true;
            }
        }
        return false;
    }

    /** Halving the step changes a backwater by less and less: second order. */
    @Property(tries = 100)
    void backwaterConvergesWithTheStep(@ForAll("parts") double part, @ForAll("gradients") double gradient) {
        var conduit = Conduit.of(
                dev.runnel.hydraulics.section.CircularSection.ofDiameter(0.6),
                Gradient.of(gradient),
                Manning.of(0.013));
        double discharge = part * conduit.fullBore().discharge();
        double exact = Backwater.of(conduit, discharge).depthUpstream(0.58, 40);
        double coarse = error(conduit, discharge, 4, exact);
        double fine = error(conduit, discharge, 1, exact);
        assertThat(fine).isLessThan(Math.max(coarse / 8, 1e-7));
    }

    private static double error(Conduit conduit, double discharge, double step, double exact) {
        double depth = VariedFlow.of(Reach.of(conduit, 40), discharge)
                .withOutletDepth(0.58)
                .withStep(step)
                .profile()
                .inlet()
                .depth();
        return Math.abs(depth - exact);
    }

    @Provide
    Arbitrary<Double> parts() {
        return Arbitraries.doubles().between(0.2, 0.9).ofScale(6);
    }

    @Provide
    Arbitrary<Double> gradients() {
        return Pipes.logUniform(5e-4, 2e-3);
    }
}
