package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class LawProperties {
    @Provide
    Arbitrary<LawByRadius> laws() {
        return Pipes.laws();
    }

    @Provide
    Arbitrary<Double> radii() {
        return Pipes.logUniform(1e-7, 5);
    }

    @Provide
    Arbitrary<Double> gradients() {
        return Pipes.logUniform(1e-6, 1);
    }

    @Property(tries = 5000)
    void gradientIsTheInverseOfVelocity(
            @ForAll("laws") LawByRadius law, @ForAll("radii") double radius, @ForAll("gradients") double gradient) {
        double velocity = law.velocity(radius, gradient);
        assertThat(velocity).isPositive();
        assertThat(law.gradient(velocity, radius)).isCloseTo(gradient, within(1e-13 * gradient));
    }

    @Property(tries = 2000)
    void velocityRisesWithRadiusAndGradient(
            @ForAll("laws") LawByRadius law, @ForAll("radii") double radius, @ForAll("gradients") double gradient) {
        double velocity = law.velocity(radius, gradient);
        assertThat(law.velocity(radius * 1.0001, gradient)).isGreaterThan(velocity);
        assertThat(law.velocity(radius, gradient * 1.0001)).isGreaterThan(velocity);
    }

    /** Residual of the implicit equation itself, over the whole chart and beyond. */
    @Property(tries = 5000)
    void colebrookWhiteSatisfiesItsEquation(@ForAll("reynolds") double reynolds, @ForAll("relative") double relative) {
        double x = ColebrookRoot.inverseRoot(reynolds, relative);
        double right = -2 * Math.log10(relative / 3.7 + 2.51 * x / reynolds);
        // The right side moves at most as much as x itself, times the amplification of the logarithm near 1.
        assertThat(right).isCloseTo(x, within(4e-16 * (1 + Math.abs(x))));
    }

    /** Laminar, in transition or turbulent: the fitted law has the gauged velocity, and its roughness where there is one. */
    @Property(tries = 3000)
    void roughnessComesBackFromItsVelocity(
            @ForAll("radii") double radius, @ForAll("gradients") double gradient, @ForAll("relative") double relative) {
        ColebrookWhite law = ColebrookWhite.ofRoughness(Math.min(4 * radius * Math.min(relative, 0.99), 0.5));
        double velocity = law.velocity(radius, gradient);
        ColebrookWhite smooth = ColebrookWhite.ofRoughness(0);
        ColebrookWhite fitted = smooth.fittedTo(velocity, radius, gradient, Gravity.STANDARD);
        assertThat(fitted.velocity(radius, gradient)).isCloseTo(velocity, within(2e-9 * velocity));
        double reynolds = 4 * radius * velocity / law.viscosity();
        if (reynolds > 4000 && relative > 1e-4) {
            assertThat(fitted.roughness()).isCloseTo(law.roughness(), within(1e-9 * law.roughness()));
        }
    }

    @Provide
    Arbitrary<Double> reynolds() {
        return Pipes.logUniform(4, 1e9);
    }

    @Provide
    Arbitrary<Double> relative() {
        return Arbitraries.oneOf(Arbitraries.just(0.0), Pipes.logUniform(1e-9, 1));
    }
}
