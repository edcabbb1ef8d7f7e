package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Depths of laminar flow in a circle without a search, against the law itself and the general search. */
class LaminarFilmTest {
    private static final int PIPES = 400;

    private final SplittableRandom random = new SplittableRandom(20261130);

    private double between(double least, double most) {
        return least * Math.pow(most / least, random.nextDouble());
    }

    /** Pipes of which some are laminar, some turbulent when full, on walls from smooth to rougher than the film is deep. */
    private Conduit pipe() {
        return Conduit.of(
                CircularSection.ofDiameter(between(0.01, 1)),
                Gradient.of(between(1e-5, 1e-2)),
                ColebrookWhite.ofRoughness(random.nextInt(8) == 0 ? 0 : between(1e-7, 1e-3)));
    }

    private static double reynolds(Conduit pipe, double depth) {
        return 4
                * pipe.section().hydraulicRadius(depth)
                * pipe.velocity(depth)
                / ((ColebrookWhite) pipe.resistance()).viscosity();
    }

    @Test
    void depthGivesItsDischargeBackAndIsThatOfTheSearch() {
        int films = 0;
        for (int i = 0; i < PIPES; i++) {
            Conduit pipe = pipe();
            double diameter = ((CircularSection) pipe.section()).diameter();
            double discharge = pipe.discharge(diameter * between(3e-3, 0.6));
            ColebrookPipe numbers = ColebrookPipe.of(
                    (CircularSection) pipe.section(),
                    (ColebrookWhite) pipe.resistance(),
                    pipe.gradient().value(),
                    pipe.gravity());
            double part = LaminarFilm.part(numbers.alpha, numbers.beta, discharge * numbers.perUnit);
            double depth = pipe.normalDepth(discharge);

            assertThat(pipe.discharge(depth) / discharge).isCloseTo(1, within(1e-12));
            assertThat(depth / pipe.curves().discharge().lowestDepthFor(discharge))
                    .isCloseTo(1, within(1e-12));
            assertThat(pipe.normalDepths(discharge)[0]).isEqualTo(depth);
            if (part > 0) {
                films++;
                assertThat(depth).isEqualTo(diameter * part);
                assertThat(reynolds(pipe, depth)).isLessThanOrEqualTo(DarcyFriction.LAMINAR_LIMIT);
            } else if (depth < 0.5 * diameter) {
                double relative = ((ColebrookWhite) pipe.resistance()).roughness()
                        / (4 * pipe.section().hydraulicRadius(depth));
                assertThat(reynolds(pipe, depth))
                        .isGreaterThan(0.998
                                * DarcyFriction.Transition.of(Math.min(relative, 1))
                                        .start());
            }
        }
        assertThat(films).isBetween(PIPES / 4, PIPES - PIPES / 4);
    }

    @Test
    void laminarLimitIsFullOnWallsThatAreNotVeryRough() {
        for (double relative : new double[] {0, 1e-6, 0.01, 0.025}) {
            assertThat(DarcyFriction.Transition.of(relative).start()).isEqualTo(DarcyFriction.LAMINAR_LIMIT);
        }
        assertThat(DarcyFriction.Transition.of(0.026).start()).isLessThan(DarcyFriction.LAMINAR_LIMIT);
    }

    @Test
    void slowPipeHasItsCrestAndRefusesMore() {
        Conduit pipe =
                Conduit.of(CircularSection.ofDiameter(0.02), Gradient.of(1e-5), ColebrookWhite.ofRoughness(1e-5));
        FlowState most = pipe.maximum();

        assertThat(most.discharge()).isGreaterThan(pipe.discharge(0.999 * most.depth()));
        assertThat(most.discharge()).isGreaterThan(pipe.fullBore().discharge());
        assertThat(pipe.normalDepth(0)).isZero();
        assertThat(pipe.normalDepths(pipe.fullBore().discharge() * 1.0001)).hasSize(2);
        assertThatThrownBy(() -> pipe.normalDepth(1.001 * most.discharge())).isInstanceOf(NoSolutionException.class);
    }
}
