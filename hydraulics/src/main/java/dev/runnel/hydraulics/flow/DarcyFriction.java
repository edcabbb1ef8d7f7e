package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Bulk;
import dev.runnel.internal.Require;
import org.apiguardian.api.API;

/**
 * The friction factor f of Darcy and Weisbach, h = f (L/D) V²/(2g), from Reynolds' number and relative roughness.
 *
 * <pre>
 * Re ≤ 2000            f = 64/Re                                         (laminar)
 * 2000 &lt; Re &lt; 4000     straight line between the two ends                (transition: a convention, no law)
 * Re ≥ 4000            1/√f = −2 lg( k/(3.7 D) + 2.51/(Re √f) )          (turbulent)
 * </pre>
 *
 * <p>Source: C. F. Colebrook, J. Inst. Civil Engrs 11 (1939); limits 2000 and 4000 common practice. In the transition
 * the flow itself is undecided and f uncertain by tens of per cent. {@link ColebrookWhite} makes another choice there, so
 * that a velocity stays a smooth function of the gradient.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class DarcyFriction {
    /** Largest Reynolds' number of laminar flow. */
    public static final double LAMINAR_LIMIT = 2000;

    /** Least Reynolds' number of turbulent flow. */
    public static final double TURBULENT_LIMIT = 4000;

    private DarcyFriction() {}

    /**
     * Returns the friction factor.
     *
     * @param reynolds Reynolds' number V D/ν; greater than 0, finite
     * @param relativeRoughness k/D; in [0, 1]; the equation is meant for up to 0.05
     * @return f; relative error below 2e-15
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double factor(double reynolds, double relativeRoughness) {
        if (reynolds <= LAMINAR_LIMIT) {
            Require.inRange("relativeRoughness", relativeRoughness, 0, 1, "");
            return laminar(reynolds);
        }
        if (reynolds < TURBULENT_LIMIT) {
            double from = laminar(LAMINAR_LIMIT);
            double to = colebrookWhite(TURBULENT_LIMIT, relativeRoughness);
            return from + (to - from) * (reynolds - LAMINAR_LIMIT) / (TURBULENT_LIMIT - LAMINAR_LIMIT);
        }
        return colebrookWhite(reynolds, relativeRoughness);
    }

    /**
     * Returns the friction factor of laminar flow, 64/Re, whatever Re is.
     *
     * @param reynolds Reynolds' number; greater than 0, finite
     * @return f
     * @throws IllegalArgumentException if {@code reynolds} is not
     */
    public static double laminar(double reynolds) {
        return 64 / Require.positive("reynolds", reynolds, "");
    }

    /**
     * Returns the friction factor of Colebrook and White, whatever Re is.
     *
     * @param reynolds Reynolds' number; greater than 0, finite
     * @param relativeRoughness k/D; in [0, 1]
     * @return f; relative error below 2e-15
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public static double colebrookWhite(double reynolds, double relativeRoughness) {
        Require.positive("reynolds", reynolds, "");
        Require.inRange("relativeRoughness", relativeRoughness, 0, 1, "");
        double inverseRoot = Friction.colebrookWhite(reynolds, relativeRoughness);
        return 1 / (inverseRoot * inverseRoot);
    }

    /**
     * Writes the friction factor for each Reynolds' number, bit for bit as {@link #factor(double, double)}.
     *
     * @param reynolds Reynolds' numbers; NaN for missing; not modified
     * @param relativeRoughness k/D; in [0, 1]
     * @param factor results; same length, overwritten
     * @throws IllegalArgumentException if the lengths differ or an argument is out of range; names the index
     */
    public static void factor(double[] reynolds, double relativeRoughness, double[] factor) {
        Bulk.apply("reynolds", reynolds, "factor", factor, re -> factor(re, relativeRoughness));
    }
}
