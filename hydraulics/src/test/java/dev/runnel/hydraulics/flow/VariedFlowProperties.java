package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
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

    /** Whatever the chain: a depth everywhere, and the energy balance over two steps unless there is a jump or a corner. */
    @Property(tries = 300)
    void everyChainHasAProfileThatKeepsTheEnergyBalance(@ForAll("flows") VariedFlow flow) {
        List<Station> stations = flow.profile().stations();
        assertThat(stations).hasSize(402);
        for (int i = 0; i + 2 < stations.size(); i++) {
            Station upper = stations.get(i);
            Station middle = stations.get(i + 1);
            Station lower = stations.get(i + 2);
            assertThat(lower.depth()).isPositive().isFinite();
            if (upper.reach() != lower.reach() || !isSmooth(upper, middle) || !isSmooth(middle, lower)) {
                continue;
            }
            double dx = lower.distance() - upper.distance();
            double ends = (upper.frictionSlope() + lower.frictionSlope()) / 2;
            if (Math.abs(ends - middle.frictionSlope()) > 0.1 * ends) {
                // Friction turns within two steps: three points do not tell its integral, whatever the profile.
                continue;
            }
            double simpson = (ends + 2 * middle.frictionSlope()) / 3 * dx;
            // Between stations friction lies between theirs, and so Simpson's rule errs by 5/12 of these steps at most.
            double steps = Math.abs(upper.frictionSlope() - middle.frictionSlope())
                    + Math.abs(middle.frictionSlope() - lower.frictionSlope());
            double balance = upper.energyLevel() - lower.energyLevel() - simpson;
            double energy = Math.abs(upper.energyLevel()) + upper.depth() + simpson;
            assertThat(balance).isCloseTo(0, within(1e-8 * energy + 5.0 / 12 * steps * dx));
        }
    }

    /** Of one regime, away from critical depth, with no corner of the section between. */
    private static boolean isSmooth(Station upper, Station lower) {
        double least = Math.min(upper.depth(), lower.depth());
        double most = Math.max(upper.depth(), lower.depth());
        for (double level : upper.reach().section().breakDepths()) {
            if (level >= least * (1 - 1e-9) && level <= most * (1 + 1e-9)) {
                return false;
            }
        }
        return upper.froudeNumber() > 1 == lower.froudeNumber() > 1
                && Math.abs(upper.froudeNumber() - 1) > 0.05
                && Math.abs(lower.froudeNumber() - 1) > 0.05;
    }

    /** The stations are only places where the answer is given: another step changes nothing. */
    @Property(tries = 100)
    void depthDoesNotDependOnTheStep(@ForAll("parts") double part, @ForAll("gradients") double gradient) {
        var conduit = Conduit.of(CircularSection.ofDiameter(0.6), Gradient.of(gradient), Manning.of(0.013));
        double discharge = part * conduit.fullBore().discharge();
        double exact = Backwater.of(conduit, discharge).depthUpstream(0.58, 40);
        for (double step : new double[] {40, 4, 0.7}) {
            double depth = VariedFlow.of(Reach.of(conduit, 40), discharge)
                    .withOutletDepth(0.58)
                    .withStep(step)
                    .profile()
                    .inlet()
                    .depth();
            assertThat(depth).isCloseTo(exact, within(1e-9 * exact));
        }
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
