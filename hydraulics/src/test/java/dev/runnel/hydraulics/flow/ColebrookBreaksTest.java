package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Where the law of Colebrook and White bends, and what its slowest wall gives. */
class ColebrookBreaksTest {
    private static final double GRAVITY = 9.81;
    private static final double VISCOSITY = 1e-6;

    private static ColebrookWhite law(double roughness) {
        return ColebrookWhite.ofRoughness(roughness).withViscosity(VISCOSITY);
    }

    private static double reynolds(CrossSection section, double depth, ColebrookWhite law, double gradient) {
        double radius = section.hydraulicRadius(depth);
        return 4 * radius * law.velocity(radius, gradient, GRAVITY) / VISCOSITY;
    }

    /** A pipe of 300 mm, 1 in 10 000: laminar flow, V = g S R²/(2ν), ends at R³ = 1000 ν²/(g S); the wall is as rough as 4R at ks/4. */
    @Test
    void aCommonWall() {
        CrossSection pipe = CircularSection.ofDiameter(0.3);
        double[] depths = law(5e-4).breakDepths(pipe, 1e-4, GRAVITY);
        assertThat(depths).hasSize(3);
        double laminarEnd = Math.cbrt(1000 * VISCOSITY * VISCOSITY / (GRAVITY * 1e-4));
        assertThat(pipe.hydraulicRadius(depths[0])).isCloseTo(laminarEnd, within(1e-11));
        assertThat(reynolds(pipe, depths[1], law(5e-4), 1e-4)).isCloseTo(4000, within(1e-6));
        assertThat(pipe.hydraulicRadius(depths[2])).isCloseTo(1.25e-4, within(1e-15));
        assertThat(law(0).breakDepths(pipe, 1e-4, GRAVITY))
                .as("a smooth wall is never as rough as deep")
                .hasSize(2);
    }

    @Test
    void withoutAGradientNothingFlows() {
        CrossSection pipe = CircularSection.ofDiameter(0.3);
        for (double none : new double[] {0, -1e-4, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> law(5e-4).breakDepths(pipe, none, GRAVITY))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("gradient must be greater than 0 and finite");
        }
    }

    /** Steep and flat, so that the transition lies in films and in half a pipe. */
    @Test
    void anyGradient() {
        CrossSection pipe = CircularSection.ofDiameter(0.5);
        for (double gradient : new double[] {1e-6, 1e-3, 0.5}) {
            double[] depths = law(0).breakDepths(pipe, gradient, GRAVITY);
            assertThat(depths).hasSize(2);
            assertThat(reynolds(pipe, depths[0], law(0), gradient)).isCloseTo(2000, within(1e-6));
            assertThat(reynolds(pipe, depths[1], law(0), gradient)).isCloseTo(4000, within(1e-6));
        }
    }

    /** ks/4R is above 0.0253 at the end of laminar flow, which comes at √(0.95 · 256 000/f) then, f that of Re = 4000. */
    @Test
    void aVeryRoughWall() {
        CrossSection pipe = CircularSection.ofDiameter(0.3);
        ColebrookWhite law = law(3e-3);
        double[] depths = law.breakDepths(pipe, 1e-4, GRAVITY);
        double radius = pipe.hydraulicRadius(depths[0]);
        double relative = 3e-3 / (4 * radius);
        assertThat(relative).isGreaterThan(0.05);
        double start = Math.sqrt(0.95 * 256_000 / DarcyFriction.colebrookWhite(4000, relative));
        assertThat(start).isLessThan(1900);
        assertThat(reynolds(pipe, depths[0], law, 1e-4)).isCloseTo(start, within(1e-6));
        assertThat(reynolds(pipe, depths[1], law, 1e-4)).isCloseTo(4000, within(1e-6));
    }

    /** R = b y/(b + 2y) comes near b/2 and never gets there: no depth for what lies beyond. */
    @Test
    void anOpenChannelHasABoundOfItsRadius() {
        CrossSection channel = RectangularSection.open(0.05);
        double[] depths = law(0).breakDepths(channel, 1e-4, GRAVITY);
        assertThat(depths).hasSize(2);
        double laminarEnd = Math.cbrt(1000 * VISCOSITY * VISCOSITY / (GRAVITY * 1e-4));
        assertThat(depths[0]).isCloseTo(laminarEnd * 0.05 / (0.05 - 2 * laminarEnd), within(1e-11));
        assertThat(reynolds(channel, depths[1], law(0), 1e-4)).isCloseTo(4000, within(1e-6));
        assertThat(law(0).breakDepths(channel, 1e-6, GRAVITY)).isEmpty();
        assertThat(law(0.1).breakDepths(channel, 0.5, GRAVITY))
                .as("a wall as rough as the widest radius")
                .hasSize(2);
    }

    @Test
    void theSlowestWallIsAsRoughAsTheSectionIsDeep() {
        ColebrookWhite law = law(1e-3);
        double slowest = law(0.4).velocity(0.1, 0.002, GRAVITY);
        assertThat(law.slowest(0.1, 0.002, GRAVITY)).isEqualTo(slowest);
        assertThat(law.fastest(0.1, 0.002, GRAVITY)).isEqualTo(law(0).velocity(0.1, 0.002, GRAVITY));
        assertThat(slowest).isLessThan(0.5 * law.velocity(0.1, 0.002, GRAVITY));
        // In deep water too: 1/√f = −2 lg(1/3.7 + 2.51/K) with k/4R = 1.
        double scale = Math.sqrt(8 * GRAVITY * 0.002 * 2);
        double inverseRoot = -2 * Math.log10(1 / 3.7 + 2.51 * VISCOSITY / (8 * scale));
        assertThat(law.slowest(2, 0.002, GRAVITY)).isCloseTo(scale * inverseRoot, within(1e-12));
        // On either side of the slowest: a wall nearly as rough as deep, and none.
        assertThat(law.fittedTo(1.0001 * slowest, 0.1, 0.002, GRAVITY).roughness())
                .isBetween(0.39, 0.4);
        assertThatThrownBy(() -> law.fittedTo(0.9999 * slowest, 0.1, 0.002, GRAVITY))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageEndingWith(
                        String.format(Locale.ROOT, "one as rough as the section is deep %.4f m/s", slowest));
    }

    @Test
    void roughestWallAndHash() {
        assertThat(ColebrookWhite.ofRoughness(0.5).roughness()).isEqualTo(0.5);
        assertThatThrownBy(() -> ColebrookWhite.ofRoughness(Math.nextUp(0.5)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("roughness must be in [0, 0.5] m, was 0.5");
        assertThat(law(1e-3)).hasSameHashCodeAs(law(1e-3));
        assertThat(law(1e-3).hashCode()).isNotEqualTo(law(2e-3).hashCode());
        assertThat(law(1e-3).hashCode())
                .isNotEqualTo(law(1e-3).withViscosity(2e-6).hashCode());
    }

    /** Laminar flow in a pipe by Hagen and Poiseuille at any Re; the bulk form wants arrays of one length. */
    @Test
    void frictionFactorsBesideTheTransition() {
        assertThat(DarcyFriction.laminar(16)).isEqualTo(4);
        assertThat(DarcyFriction.laminar(6400)).isEqualTo(0.01);
        assertThatThrownBy(() -> DarcyFriction.laminar(0)).hasMessageStartingWith("reynolds must be greater than 0");
        // So fast that only the wall counts: 1/√f = 2 lg(3.7 D/k).
        assertThat(DarcyFriction.factor(1e15, 0.01)).isCloseTo(1 / Math.pow(2 * Math.log10(370), 2), within(1e-13));
        assertThatThrownBy(() -> DarcyFriction.factor(new double[2], 0.01, new double[3]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("factor must have length 2, was 3");
        assertThatThrownBy(() -> DarcyFriction.factor(new double[3], 0.01, new double[2]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("factor must have length 3, was 2");
    }
}
