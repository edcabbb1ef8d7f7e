package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Bulk;
import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The friction factor f of Darcy and Weisbach, h = f (L/D) V²/(2g), from Reynolds' number and relative roughness: the one
 * law of friction of this library, which {@link ColebrookWhite} follows too.
 *
 * <pre>
 * Re ≤ Rs              f = 64/Re                                         (laminar)
 * Rs &lt; Re &lt; 4000       straight line between the two ends                (transition: a convention, no law)
 * Re ≥ 4000            1/√f = −2 lg( k/(3.7 D) + 2.51/(Re √f) )          (turbulent)
 * </pre>
 *
 * <p>Rs is 2000, and less where the wall is rougher than k/D ≈ 0.025: Rs = √(0.95 · 256000/f₄), f₄ the turbulent factor at
 * Re = 4000. So f never rises faster than in proportion to Re, and the velocity in a section never falls while it fills.
 *
 * <p>Source: C. F. Colebrook, J. Inst. Civil Engrs 11 (1939); limits 2000 and 4000 common practice, the lower limit on very
 * rough walls chosen here. In the transition the flow itself is undecided and f uncertain by tens of per cent.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class DarcyFriction {
    /** Largest Reynolds' number of laminar flow, less on very rough walls. */
    public static final double LAMINAR_LIMIT = 2000;

    /** Least Reynolds' number of turbulent flow. */
    public static final double TURBULENT_LIMIT = 4000;

    /** How steeply the transition may rise at its start, as a power of Re; chosen here: a little below 1. */
    private static final double STEEPEST = 0.95;

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
        if (ColebrookRoot.isTurbulentInside(reynolds, relativeRoughness)) {
            return ColebrookRoot.ofRoot(ColebrookRoot.root(reynolds, relativeRoughness));
        }
        Require.positive("reynolds", reynolds, "");
        Require.inRange("relativeRoughness", relativeRoughness, 0, 1, "");
        if (reynolds >= TURBULENT_LIMIT) {
            return ColebrookRoot.factor(reynolds, relativeRoughness);
        }
        return Transition.of(relativeRoughness).factor(reynolds);
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
        return ColebrookRoot.factor(reynolds, relativeRoughness);
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
        Objects.requireNonNull(reynolds, "reynolds");
        Objects.requireNonNull(factor, "factor");
        Require.sameLength("factor", reynolds.length, factor.length);
        for (int i = 0; i < reynolds.length; i++) {
            double re = reynolds[i];
            factor[i] = ColebrookRoot.isTurbulentInside(re, relativeRoughness)
                    ? ColebrookRoot.ofRoot(ColebrookRoot.root(re, relativeRoughness))
                    : Bulk.at("reynolds", reynolds, i, each -> factor(each, relativeRoughness));
        }
    }

    /**
     * 1/√f from K = Re √f &gt; 0, that is from the gradient, and the relative roughness in [0, 1]: explicit except in the
     * transition.
     */
    static double inverseRootFromKarman(double karman, double relativeRoughness) {
        double turbulent = -2 * Math.log10(relativeRoughness / 3.7 + 2.51 / karman);
        if (turbulent * karman >= TURBULENT_LIMIT) {
            return turbulent;
        }
        return Transition.of(relativeRoughness).inverseRootFromKarman(karman);
    }

    /** 1/√f from Re &gt; 0 and the relative roughness in [0, 1]; the inverse of {@link #inverseRootFromKarman}. */
    static double inverseRootFromReynolds(double reynolds, double relativeRoughness) {
        if (reynolds >= TURBULENT_LIMIT) {
            return ColebrookRoot.inverseRoot(reynolds, relativeRoughness);
        }
        return Transition.of(relativeRoughness).inverseRoot(reynolds);
    }

    /** Flow below Re = 4000 along a wall: laminar up to {@code start}, then f = a + b Re. */
    record Transition(double start, double a, double b) {
        /** Beyond the factor of k/D = 1 at Re = 4000, 0.777. */
        private static final double ROUGHEST = 10;

        static Transition of(double relativeRoughness) {
            return ofTurbulent(ColebrookRoot.factor(TURBULENT_LIMIT, relativeRoughness));
        }

        /** From the factor at Re = 4000. */
        private static Transition ofTurbulent(double factor) {
            double start = Math.min(LAMINAR_LIMIT, Math.sqrt(STEEPEST * 64 * TURBULENT_LIMIT / factor));
            double slope = (factor - 64 / start) / (TURBULENT_LIMIT - start);
            return new Transition(start, factor - slope * TURBULENT_LIMIT, slope);
        }

        double factor(double reynolds) {
            return reynolds <= start ? 64 / reynolds : a + b * reynolds;
        }

        double inverseRoot(double reynolds) {
            return reynolds <= start ? Math.sqrt(reynolds / 64) : 1 / Math.sqrt(a + b * reynolds);
        }

        /** 1/√f = Re/K from K² = f Re², whose right side rises. */
        double inverseRootFromKarman(double karman) {
            double square = karman * karman;
            return square <= 64 * start
                    ? karman / 64
                    : Roots.between(re -> (a + b * re) * re * re - square, start, TURBULENT_LIMIT) / karman;
        }

        /** The factor at Re = 4000 of the wall on which f stands at a Reynolds' number below, f above 64/Re. */
        static double turbulentFactor(double reynolds, double factor) {
            // factor = f_s + (f4 − f_s)(Re − Rs)/(4000 − Rs) with Rs from f4 rises with f4.
            return Roots.between(f4 -> ofTurbulent(f4).factor(reynolds) - factor, 64 / TURBULENT_LIMIT, ROUGHEST);
        }
    }
}
