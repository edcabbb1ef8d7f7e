package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.water.Water;
import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.DoubleStream;
import org.apiguardian.api.API;

/**
 * The law of Colebrook and White for part-full sections, the diameter replaced by 4R. Immutable and thread-safe.
 *
 * <pre>
 * V = √(8 g R S)/√f     1/√f = −2 lg( ks/(3.7 · 4R) + 2.51/K )     K = Re √f = 4R √(8 g R S)/ν
 * </pre>
 *
 * <p>Source: C. F. Colebrook, Turbulent flow in pipes, J. Inst. Civil Engrs 11 (1939), constants 3.7 and 2.51 for full
 * pipes. The equation is for turbulent flow and ks/4R up to about 0.05; outside, where it would return nonsense or even
 * a negative velocity, this class carries on as follows, so that every depth has a velocity and every discharge a depth:
 *
 * <ul>
 *   <li>Below Re = 4R V/ν = 4000 friction follows {@link DarcyFriction}: a straight line down to Re ≈ 2000, laminar flow,
 *       f = 64/Re and V = g S R²/(2ν), below.
 *   <li>ks/4R is held at 1 where the film is thinner than the roughness allows (R below ks/4). What runs there runs
 *       between the grains; the figure is only a smooth continuation.
 * </ul>
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class ColebrookWhite implements FittableResistance {
    /** By how much of itself a velocity may miss that of laminar flow and still be it; chosen here. */
    private static final double LAMINAR_SLACK = 1e-9;

    /** Temperature assumed unless stated, °C. */
    private static final double DEFAULT_CELSIUS = 15;

    /** Computed once: it takes longer than the depth of a discharge. */
    private static final double DEFAULT_VISCOSITY =
            Water.atTemperature(DEFAULT_CELSIUS).kinematicViscosity();

    /** Chosen here: boulders; and below nearly every roughness in millimetres. */
    private static final double LARGEST_ROUGHNESS = 0.5;

    /** K of turbulent flow on every wall: it is 3520 at most where that begins. */
    private static final double SURELY_TURBULENT = 5000;

    private final double roughness;
    private final double viscosity;

    private ColebrookWhite(double roughness, double viscosity) {
        this.roughness = roughness;
        this.viscosity = viscosity;
    }

    /**
     * Returns the law for a roughness, with the viscosity of water at 15 °C.
     *
     * @param roughness equivalent sand roughness ks, m (not mm); in [0, 0.5]; 0.00006 to 0.006 in most sewers
     * @return the law
     * @throws IllegalArgumentException if {@code roughness} is not
     */
    public static ColebrookWhite ofRoughness(double roughness) {
        Require.nonNegative("roughness", roughness, "m");
        if (roughness > LARGEST_ROUGHNESS) {
            throw new IllegalArgumentException("roughness must be in [0, " + Text.number(LARGEST_ROUGHNESS)
                    + "] m, was " + Text.number(roughness) + ": for millimetres use ColebrookWhite.ofRoughnessMm");
        }
        return new ColebrookWhite(roughness, DEFAULT_VISCOSITY);
    }

    /**
     * Returns the law for a roughness in millimetres, with the viscosity of water at 15 °C.
     *
     * @param roughnessMm equivalent sand roughness ks, mm; in [0, 500]
     * @return the law
     * @throws IllegalArgumentException if {@code roughnessMm} is not
     */
    public static ColebrookWhite ofRoughnessMm(double roughnessMm) {
        return ofRoughness(Require.nonNegative("roughnessMm", roughnessMm, "mm") / 1000);
    }

    /**
     * Returns a copy with the viscosity of water at a temperature.
     *
     * @param celsius temperature, °C; in [−20, 110], see {@link Water}
     * @return the copy
     * @throws IllegalArgumentException if {@code celsius} is outside
     */
    public ColebrookWhite atTemperature(double celsius) {
        return withViscosity(Water.atTemperature(celsius).kinematicViscosity());
    }

    /**
     * Returns a copy with a kinematic viscosity, for liquids other than water and to follow printed tables.
     *
     * @param viscosity kinematic viscosity ν, m²/s; greater than 0, finite
     * @return the copy
     * @throws IllegalArgumentException if {@code viscosity} is not
     */
    public ColebrookWhite withViscosity(double viscosity) {
        return new ColebrookWhite(roughness, Require.positive("viscosity", viscosity, "m2/s"));
    }

    /**
     * Returns the roughness.
     *
     * @return equivalent sand roughness ks, m
     */
    public double roughness() {
        return roughness;
    }

    /**
     * Returns the viscosity.
     *
     * @return kinematic viscosity ν, m²/s
     */
    public double viscosity() {
        return viscosity;
    }

    @Override
    public double velocity(double hydraulicRadius, double gradient, double gravity) {
        Require.nonNegative("hydraulicRadius", hydraulicRadius, "m");
        Require.nonNegative("gradient", gradient, "m/m");
        Require.positive("gravity", gravity, "m/s2");
        if (hydraulicRadius == 0 || gradient == 0) {
            return 0;
        }
        double scale = Math.sqrt(8 * gravity * gradient * hydraulicRadius);
        double karman = 4 * hydraulicRadius * scale / viscosity;
        return scale * DarcyFriction.inverseRootFromKarman(karman, relativeRoughness(hydraulicRadius));
    }

    @Override
    public double gradient(double velocity, double hydraulicRadius, double gravity) {
        Require.nonNegative("velocity", velocity, "m/s");
        Require.positive("hydraulicRadius", hydraulicRadius, "m");
        Require.positive("gravity", gravity, "m/s2");
        if (velocity == 0) {
            return 0;
        }
        double reynolds = 4 * hydraulicRadius * velocity / viscosity;
        double inverseRoot = DarcyFriction.inverseRootFromReynolds(reynolds, relativeRoughness(hydraulicRadius));
        double scale = velocity / inverseRoot;
        return scale * scale / (8 * gravity * hydraulicRadius);
    }

    /**
     * {@inheritDoc}
     *
     * <p>Where the flow is not laminar a rougher wall is always slower, so that one roughness has the velocity and no other.
     * But between Re = 2000 and 4000 the velocity says little of it: just above 2000 all walls have nearly the same, and an
     * error of a per cent makes the roughness several times as large. The roughness of laminar flow is this one where it
     * keeps the flow laminar, else 0.
     */
    @Override
    public ColebrookWhite fittedTo(double velocity, double hydraulicRadius, double gradient, double gravity) {
        Require.positive("velocity", velocity, "m/s");
        Require.positive("hydraulicRadius", hydraulicRadius, "m");
        Require.positive("gradient", gradient, "m/m");
        Require.positive("gravity", gravity, "m/s2");
        double scale = Math.sqrt(8 * gravity * gradient * hydraulicRadius);
        double karman = 4 * hydraulicRadius * scale / viscosity;
        double reynolds = 4 * hydraulicRadius * velocity / viscosity;
        if (Math.abs(scale * karman / 64 / velocity - 1) <= LAMINAR_SLACK && reynolds <= DarcyFriction.LAMINAR_LIMIT) {
            // Every wall that keeps the flow laminar has this velocity; a rougher one than that has not.
            double own = velocity(hydraulicRadius, gradient, gravity);
            return Math.abs(own / velocity - 1) <= LAMINAR_SLACK ? this : new ColebrookWhite(0, viscosity);
        }
        double smooth = fastest(hydraulicRadius, gradient, gravity);
        double relative = relativeRoughness(reynolds, karman);
        // A hair below 0 is a smooth wall gauged exactly.
        if (velocity > smooth * (1 + 1e-12) || relative > 1) {
            double roughest = slowest(hydraulicRadius, gradient, gravity);
            throw new NoSolutionException("no roughness gives a velocity of " + Text.number(velocity)
                    + " m/s at a hydraulic radius of " + Text.number(hydraulicRadius) + " m and a gradient of "
                    + Text.number(gradient) + ": a smooth wall gives " + Text.significant(smooth, 4)
                    + " m/s, one as rough as the section is deep " + Text.significant(roughest, 4) + " m/s");
        }
        return new ColebrookWhite(Math.max(relative, 0) * 4 * hydraulicRadius, viscosity);
    }

    @Override
    public double fastest(double hydraulicRadius, double gradient, double gravity) {
        return new ColebrookWhite(0, viscosity).velocity(hydraulicRadius, gradient, gravity);
    }

    @Override
    public double slowest(double hydraulicRadius, double gradient, double gravity) {
        return new ColebrookWhite(4 * hydraulicRadius, viscosity).velocity(hydraulicRadius, gradient, gravity);
    }

    /** The law solved for k/4R, with 1/√f = Re/K, in the transition taken from the turbulent end of the line. */
    private static double relativeRoughness(double reynolds, double karman) {
        double inverseRoot = reynolds / karman;
        double turbulent = reynolds;
        if (reynolds < DarcyFriction.TURBULENT_LIMIT) {
            double factor = 1 / (inverseRoot * inverseRoot);
            inverseRoot = 1 / Math.sqrt(DarcyFriction.Transition.turbulentFactor(reynolds, factor));
            turbulent = DarcyFriction.TURBULENT_LIMIT;
        }
        return 3.7 * (Math.pow(10, -inverseRoot / 2) - 2.51 * inverseRoot / turbulent);
    }

    /**
     * {@inheritDoc}
     *
     * <p>Where laminar gives way to turbulent flow, and where ks/4R leaves its bound of 1.
     *
     * @throws IllegalArgumentException if {@code gradient} or {@code gravity} is not greater than 0 and finite
     */
    @Override
    public double[] breakDepths(CrossSection section, double gradient, double gravity) {
        Objects.requireNonNull(section, "section");
        Require.positive("gradient", gradient, "");
        Require.positive("gravity", gravity, "m/s2");
        InvertibleCurve radii = InvertibleCurve.of(section, section.breakDepths(), section::hydraulicRadius);
        // In an open section the radius may have a bound that no depth reaches; a kilometre of water is deep enough.
        double most = Double.isInfinite(section.height()) ? section.hydraulicRadius(1000) : Double.POSITIVE_INFINITY;
        double perRadius = 4 * Math.sqrt(8 * gravity * gradient) / viscosity;
        double laminarEnd = radiusWhere(
                perRadius,
                (karman, relative) -> karman * karman / 64
                        - DarcyFriction.Transition.of(relative).start());
        double turbulentStart = radiusWhere(
                perRadius,
                (karman, relative) ->
                        karman * DarcyFriction.inverseRootFromKarman(karman, relative) - DarcyFriction.TURBULENT_LIMIT);
        return DoubleStream.of(laminarEnd, turbulentStart, roughness / 4)
                .filter(radius -> radius > 0 && radius < most)
                .flatMap(radius -> Arrays.stream(radii.depthsFor(radius)))
                .toArray();
    }

    /** Hydraulic radius at which something that K and k/4R decide is 0; K grows with R^1.5. */
    private double radiusWhere(double perRadius, DoubleBinaryOperator excess) {
        return Roots.overDecades(
                radius -> excess.applyAsDouble(perRadius * radius * Math.sqrt(radius), relativeRoughness(radius)),
                Math.pow(SURELY_TURBULENT / perRadius, 2.0 / 3));
    }

    private double relativeRoughness(double hydraulicRadius) {
        return Math.min(roughness / (4 * hydraulicRadius), 1);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ColebrookWhite
                && Double.compare(roughness, ((ColebrookWhite) other).roughness) == 0
                && Double.compare(viscosity, ((ColebrookWhite) other).viscosity) == 0;
    }

    @Override
    public int hashCode() {
        return 31 * Double.hashCode(roughness) + Double.hashCode(viscosity);
    }

    @Override
    public String toString() {
        return "ColebrookWhite[ks = " + Text.significant(roughness * 1000, 4) + " mm, viscosity "
                + Text.significant(viscosity, 4) + " m2/s]";
    }
}
