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

    /** Below this Reynolds' number flow is laminar on every wall: Rs of k/D = 1 is 559. */
    private static final double SURELY_LAMINAR = 500;

    /** How steeply the transition may rise at its start, as a power of Re; chosen here: a little below 1. */
    private static final double STEEPEST = 0.95;

    private static final double TO_LOGARITHM = 2 / Math.log(10);
    private static final double[] LOG_OMEGA = Pieces.read("log-omega.csv");
    private static final int FIRST_OCTAVE = 2;
    private static final double LEAST_Z = 0x1p2;
    private static final double LARGEST_Z = 0x1p27;

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
        Require.positive("reynolds", reynolds, "");
        Require.inRange("relativeRoughness", relativeRoughness, 0, 1, "");
        if (reynolds <= SURELY_LAMINAR) {
            return 64 / reynolds;
        }
        if (reynolds >= TURBULENT_LIMIT) {
            return square(colebrookWhiteRoot(reynolds, relativeRoughness));
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
        return square(colebrookWhiteRoot(reynolds, relativeRoughness));
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
        Bulk.apply("reynolds", reynolds, "factor", factor, re -> factor(re, relativeRoughness));
    }

    private static double square(double inverseRoot) {
        return 1 / (inverseRoot * inverseRoot);
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
        if (karman * karman <= 64 * SURELY_LAMINAR) {
            return karman / 64;
        }
        return Transition.of(relativeRoughness).reynoldsFromKarman(karman) / karman;
    }

    /** 1/√f from Re &gt; 0 and the relative roughness in [0, 1]; the inverse of {@link #inverseRootFromKarman}. */
    static double inverseRootFromReynolds(double reynolds, double relativeRoughness) {
        if (reynolds >= TURBULENT_LIMIT) {
            return colebrookWhiteRoot(reynolds, relativeRoughness);
        }
        if (reynolds <= SURELY_LAMINAR) {
            return Math.sqrt(reynolds / 64);
        }
        return 1 / Math.sqrt(Transition.of(relativeRoughness).factor(reynolds));
    }

    /**
     * The root x of x + 2 lg(k/3.7 + 2.51 x/Re) = 0. With X = x ln(10)/2, a = k/3.7 and b = 2.51 · 2/(ln(10) Re), the inner
     * part is b w with w + ln w = a/b − ln b, and X = −ln b − ln w: Wright's omega function, of which the logarithm is held
     * as pieces. The last digits, which that difference loses on rough walls, come back from the equation itself, in
     * which an error of x shrinks by X at least. So two logarithms and no iteration are left.
     */
    static double colebrookWhiteRoot(double reynolds, double relativeRoughness) {
        double a = relativeRoughness / 3.7;
        double b = 2.51 * TO_LOGARITHM / reynolds;
        double logB = Math.log(b);
        double z = a / b - logB;
        if (!(z >= LEAST_Z && z < LARGEST_Z)) {
            return byNewton(reynolds, relativeRoughness);
        }
        double logOmega = Pieces.ten(LOG_OMEGA, Pieces.octavePiece(z, FIRST_OCTAVE), Pieces.octaveOffset(z));
        double near = -TO_LOGARITHM * (logB + logOmega);
        return -2 * Math.log10(a + 2.51 * near / reynolds);
    }

    /**
     * The same root where the pieces end: for Reynolds' numbers below 40 or so or far beyond those of any pipe. The left
     * side rises and is concave, so Newton's method converges from every start on the low side of the root after at most
     * one step across; 5 steps do from the start used.
     */
    private static double byNewton(double reynolds, double relativeRoughness) {
        double a = relativeRoughness / 3.7;
        double b = 2.51 / reynolds;
        double x = 4;
        for (int i = 0; i < 60; i++) {
            double inner = a + b * x;
            double step = (x + 2 * Math.log10(inner)) / (1 + TO_LOGARITHM * b / inner);
            // A long step from far above could leave the domain; a tenth of the way is still progress.
            x = Math.max(x - step, 0.1 * x);
            if (Math.abs(step) <= 2e-16 * x) {
                break;
            }
        }
        return x;
    }

    /** Flow below Re = 4000 along a wall: laminar up to {@code start}, then f = a + b Re. */
    record Transition(double start, double a, double b) {
        /** Beyond the factor of k/D = 1 at Re = 4000, 0.777. */
        private static final double ROUGHEST = 10;

        static Transition of(double relativeRoughness) {
            return ofTurbulent(square(colebrookWhiteRoot(TURBULENT_LIMIT, relativeRoughness)));
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

        /** Re from K² = f Re². The right side is convex and rises, so Newton's method from above never oversteps. */
        double reynoldsFromKarman(double karman) {
            double square = karman * karman;
            if (square <= 64 * start) {
                return square / 64;
            }
            double reynolds = TURBULENT_LIMIT;
            for (int i = 0; i < 60; i++) {
                double excess = (a + b * reynolds) * reynolds * reynolds - square;
                double step = excess / ((2 * a + 3 * b * reynolds) * reynolds);
                reynolds -= step;
                if (Math.abs(step) <= 2e-16 * reynolds) {
                    break;
                }
            }
            return reynolds;
        }

        /**
         * The factor at Re = 4000 of the wall on which f stands at a Reynolds' number below, f above 64/Re: the start is
         * 2000 where the line through there stays below the steepest allowed, else it follows from the line itself.
         */
        static double turbulentFactor(double reynolds, double factor) {
            if (reynolds > LAMINAR_LIMIT) {
                double share = (TURBULENT_LIMIT - LAMINAR_LIMIT) / (reynolds - LAMINAR_LIMIT);
                double usual = 64 / LAMINAR_LIMIT + (factor - 64 / LAMINAR_LIMIT) * share;
                if (usual > 0 && ofTurbulent(usual).start() == LAMINAR_LIMIT) {
                    return usual;
                }
            }
            // factor = f_s + (f4 − f_s)(Re − Rs)/(4000 − Rs) with Rs from f4 rises with f4.
            return Roots.between(f4 -> ofTurbulent(f4).factor(reynolds) - factor, 64 / TURBULENT_LIMIT, ROUGHEST);
        }
    }
}
