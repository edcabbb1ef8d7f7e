package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.RectangularSection;
import org.junit.jupiter.api.Test;

/** Laws and what belongs to them as values: equal by all that they hold, and on both sides of the limits of what they hold. */
class LawValuesTest {
    private static void assertValue(Object value, Object same, Object... others) {
        assertThat(value).isEqualTo(same).hasSameHashCodeAs(same).isNotEqualTo("law");
        for (Object other : others) {
            assertThat(value).isNotEqualTo(other);
            assertThat(value.hashCode()).isNotEqualTo(other.hashCode());
        }
    }

    @Test
    void equalByAllTheyHold() {
        assertValue(Manning.of(0.013), Manning.of(0.013), Manning.of(0.014));
        assertValue(Chezy.of(60), Chezy.of(60), Chezy.of(61));
        assertValue(Gradient.of(0.01), Gradient.ofPercent(1), Gradient.of(0.02));
        var law = CompositeManning.ofBedAndWalls(Compounding.PAVLOVSKIJ, 0.03, 0.012)
                .above(0.3, 0.02);
        assertValue(
                law,
                CompositeManning.ofBedAndWalls(Compounding.PAVLOVSKIJ, 0.03, 0.012)
                        .above(0.3, 0.02),
                CompositeManning.ofBedAndWalls(Compounding.LOTTER, 0.03, 0.012).above(0.3, 0.02),
                CompositeManning.ofBedAndWalls(Compounding.PAVLOVSKIJ, 0.03, 0.012)
                        .above(0.4, 0.02),
                CompositeManning.ofBedAndWalls(Compounding.PAVLOVSKIJ, 0.03, 0.012)
                        .above(0.3, 0.03),
                CompositeManning.ofBedAndWalls(Compounding.PAVLOVSKIJ, 0.03, 0.012));
        var curve = RoughnessByDepth.of(new double[] {0.2, 0.8}, new double[] {1.2, 1});
        assertValue(
                curve,
                RoughnessByDepth.of(new double[] {0.2, 0.8}, new double[] {1.2, 1}),
                RoughnessByDepth.of(new double[] {0.2, 0.9}, new double[] {1.2, 1}),
                RoughnessByDepth.of(new double[] {0.2, 0.8}, new double[] {1.3, 1}),
                RoughnessByDepth.asce1970());
        assertValue(
                VariableManning.of(0.013, curve),
                VariableManning.of(0.013, RoughnessByDepth.of(new double[] {0.2, 0.8}, new double[] {1.2, 1})),
                VariableManning.of(0.014, curve),
                VariableManning.of(0.013, RoughnessByDepth.asce1970()));
    }

    @Test
    void roughnessOnItsLimits() {
        for (double n : new double[] {0.001, 0.013, 1}) {
            assertThat(Manning.of(n).n()).isEqualTo(n);
        }
        assertThatThrownBy(() -> Manning.of(Math.nextDown(0.001)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("n must be in [0.001, 1] s/m^(1/3), was 9.99")
                .hasMessageNotContaining("Strickler");
        assertThatThrownBy(() -> Manning.of(Math.nextUp(1.0))).hasMessageEndingWith("use Manning.ofStrickler");
        assertThat(Manning.ofStrickler(1).n()).isEqualTo(1);
        assertThat(Manning.ofStrickler(1000).n()).isEqualTo(0.001);
        for (double k : new double[] {Math.nextDown(1.0), Math.nextUp(1000.0)}) {
            assertThatThrownBy(() -> Manning.ofStrickler(k))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("k must be in [1, 1000] m^(1/3)/s, was ");
        }
    }

    /** 0.5 to 300 m^(1/2)/s, in feet over √0.3048: 0.9057 to 543.4. */
    @Test
    void coefficientsInFeetOnTheirLimits() {
        assertThat(Chezy.ofFeet(0.906).c()).isCloseTo(0.5002, within(5e-5));
        assertThat(Chezy.ofFeet(543).c()).isCloseTo(299.78, within(0.005));
        for (double c : new double[] {0.905, 544}) {
            assertThatThrownBy(() -> Chezy.ofFeet(c))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("c must be in [0.905")
                    .hasMessageContaining(", 543.3");
        }
        assertThatThrownBy(() -> Chezy.of(60).gradient(-1, 0.2))
                .hasMessageStartingWith("velocity must be 0 or greater");
        assertThatThrownBy(() -> Chezy.of(60).gradient(1, 0)).hasMessageStartingWith("hydraulicRadius must be ");
    }

    @Test
    void cornersOfACurveOfRoughness() {
        var curve = RoughnessByDepth.of(new double[] {0.2, 0.8}, new double[] {1.2, 1});
        var law = VariableManning.of(0.013, curve);
        assertThat(law.breakDepths(CircularSection.ofDiameter(0.5), 0.01, 9.81)).containsExactly(0.1, 0.4);
    }

    @Test
    void compoundingOfRadiiIsChecked() {
        double[] two = {0.01, 0.02};
        assertThatThrownBy(() -> Compounding.LOTTER.n(two, two, new double[3], 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("radius must have length 2, was 3");
        assertThatThrownBy(() -> Compounding.LOTTER.n(two, two, two, 0))
                .hasMessageStartingWith("wholeRadius must be greater than 0");
        assertThatThrownBy(() -> Compounding.LOTTER.n(two, two, new double[] {1, 0}, 1))
                .hasMessageStartingWith("radius[1] must be greater than 0");
    }

    @Test
    void textOnTheSteepestAndOfASurveyThatBeginsElsewhere() {
        assertThat(Gradient.of(1)).hasToString("Gradient[1 m/m, 1 in 1]");
        assertThat(DividedChannel.ofSurvey(new double[] {2, 3, 7}, new double[] {1, 0, 1}, new double[] {0.02, 0.02}))
                .hasToString("DividedChannel[3 points, 5 m wide]");
    }

    /** Met by just the minimum, not by the last digit less. */
    @Test
    void aRuleIsMetByItsMinimum() {
        var state = Conduit.of(CircularSection.ofDiameter(0.3), Gradient.of(0.005), Manning.of(0.013))
                .at(0.1);
        assertThat(CleansingCriterion.velocity(state.velocity()).isMetBy(state)).isTrue();
        assertThat(CleansingCriterion.velocity(Math.nextUp(state.velocity())).isMetBy(state))
                .isFalse();
        assertThat(CleansingCriterion.shearStress(state.shearStress()).isMetBy(state))
                .isTrue();
        assertThat(CleansingCriterion.shearStress(Math.nextUp(state.shearStress()))
                        .isMetBy(state))
                .isFalse();
    }

    /** An inlet whose uniform depth is the critical one is just a control; on a gradient a little less it is none. */
    @Test
    void theInletControlsFromTheCriticalGradientOn() {
        var flat = Conduit.of(RectangularSection.open(1), Gradient.of(0.001), Manning.of(0.013));
        assertThat(ReservoirInlet.into(flat).isControl(0)).isTrue();
        double head = 0.6;
        // Without loss the critical depth of a rectangle is two thirds of the head.
        double critical = 0.4;
        double velocity = Math.sqrt(9.80665 * critical);
        double slope = Manning.of(0.013).gradient(velocity, critical / (1 + 2 * critical));
        assertThat(ReservoirInlet.into(flat.withGradient(Gradient.of(1.0001 * slope)))
                        .isControl(head))
                .isTrue();
        assertThat(ReservoirInlet.into(flat.withGradient(Gradient.of(0.9999 * slope)))
                        .isControl(head))
                .isFalse();
    }

    /**
     * Numbers of a pipe just on this side of each limit, and just beyond: a wall four tenths as rough as 4R of the full bore
     * (ks/D = 0.4), and twice the least Reynolds' number of turbulent flow there.
     */
    @Test
    void pipesThatAreSurelyTurbulent() {
        assertThat(pipe(0.3999, 1).isTurbulent()).isTrue();
        assertThat(pipe(0.4001, 1).isTurbulent()).isFalse();
        // The gradient at which Re of the full bore is 8000, by the law itself.
        for (double relative : new double[] {0, 0.001, 0.05}) {
            var law = ColebrookWhite.ofRoughness(relative * 0.3).withViscosity(1e-6);
            double gradient = law.gradient(8000 * 1e-6 / 0.3, 0.3 / 4, 9.81);
            var section = CircularSection.ofDiameter(0.3);
            assertThat(ColebrookPipe.of(section, law, 1.0001 * gradient, 9.81).isTurbulent())
                    .isTrue();
            assertThat(ColebrookPipe.of(section, law, 0.9999 * gradient, 9.81).isTurbulent())
                    .isFalse();
        }
        // So small or so large that powers of them would lose digits, and a film that no wall makes turbulent.
        ColebrookPipe usual = pipe(0.001, 1);
        for (double perUnit : new double[] {1e-201, 1e201}) {
            assertThat(ColebrookPipe.ofNumbers(0.3, usual.alpha, usual.beta, perUnit)
                            .isTurbulent())
                    .isFalse();
        }
        assertThat(ColebrookPipe.ofNumbers(0.3, usual.alpha, 1e-201, 1).isTurbulent())
                .isFalse();
        assertThat(ColebrookPipe.ofNumbers(0.3, usual.alpha, 1e-199, 1).isTurbulent())
                .isTrue();
        assertThat(ColebrookPipe.ofNumbers(0.3, usual.alpha, 0.011, 1).isTurbulent())
                .isFalse();
    }

    private static ColebrookPipe pipe(double relative, double gradient) {
        return ColebrookPipe.of(
                CircularSection.ofDiameter(0.3), ColebrookWhite.ofRoughness(relative * 0.3), gradient, 9.81);
    }

    /** Q over a √ρ (−L) with a = π/4, ρ = 1/4 and the logarithm itself: what the pipe is scaled by, from the full bore. */
    @Test
    void numbersOfAPipeAreThoseOfItsFullBore() {
        var law = ColebrookWhite.ofRoughness(0.0015).withViscosity(1e-6);
        ColebrookPipe pipe = ColebrookPipe.of(CircularSection.ofDiameter(0.3), law, 0.01, 9.81);
        double scale = Math.sqrt(8 * 9.81 * 0.01 * 0.3);
        assertThat(pipe.alpha).isCloseTo(0.0015 / (14.8 * 0.3), within(1e-18));
        assertThat(pipe.beta).isCloseTo(2.51e-6 / (4 * 0.3 * scale), within(1e-20));
        double log = Math.log(4 * pipe.alpha + 8 * pipe.beta);
        assertThat(pipe.lambda).isCloseTo(1 / log, within(1e-9));
        assertThat(pipe.smooth).isCloseTo(8 * pipe.beta / (4 * pipe.alpha + 8 * pipe.beta), within(1e-15));
        assertThat(pipe.full).isCloseTo(-log * Math.PI / 8, within(1e-8));
        double discharge = Math.PI * 0.09 / 4 * law.velocity(0.075, 0.01, 9.81);
        assertThat(pipe.full / pipe.perUnit).isCloseTo(discharge, within(1e-8 * discharge));
        // A cell tells the depth, and a pipe that is not surely turbulent none.
        Conduit conduit = Conduit.of(CircularSection.ofDiameter(0.3), Gradient.of(0.01), law)
                .withGravity(9.81);
        assertThat(pipe.depthOnce(0.5 * discharge)).isCloseTo(conduit.normalDepth(0.5 * discharge), within(1e-15));
        assertThat(pipe(0.5, 1).depthOnce(0.01)).isNaN();
    }
}
