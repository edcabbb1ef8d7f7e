package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Roots;

/**
 * The root of the equation of Colebrook and White without iteration and with one logarithm, read from a table.
 *
 * <p>With a = k/(3.7 D), C = 2.51 · 2/ln 10 and 1/√f = (2/ln 10) X the equation is X = −ln(a + (C/Re) X), of which
 *
 * <pre>
 * X = ln(Re/C) − ln w     w + ln w = z     z = a Re/C + ln(Re/C)
 * </pre>
 *
 * <p>is the solution: w is Wright's omega function, and its logarithm is held as pieces. Where walls are rough, X is a small
 * difference of two large logarithms. So what both tables hold has no digits below 2<sup>−38</sup>, sums of it are exact, and
 * the rest is small: X has an error of 3e-16 and half a unit of its last digit.
 */
final class ColebrookRoot {
    /** 1/√f over X. */
    static final double TO_LOGARITHM = 2 / Math.log(10);

    /** What the double above lacks of 2/ln 10. */
    private static final double TO_LOGARITHM_REST = 0x1.32a6ab7555f5ap-53;

    private static final double FACTOR = Math.log(10) / 2 * (Math.log(10) / 2);

    /** Of k/D in z. */
    private static final double PER_ROUGHNESS = 1 / (3.7 * 2.51 * TO_LOGARITHM);

    /** ln 2, the first part without digits below 2^-38. */
    private static final double LN2_HIGH = 0x1.62e42fefap-1;

    private static final double LN2_LOW = 0x1.cf79abc9e3b3ap-40;

    /** ln C, in two parts as well. */
    private static final double LNC_HIGH = 0x1.8f0d3007p-1;

    private static final double LNC_LOW = 0x1.bb82737ae5e7fp-42;

    /** Rows of i near 1/m and ln(1/i) − ln C, of 256 parts of the mantissa m. */
    private static final double[] LOGARITHM = Pieces.read("reynolds-log.csv");

    private static final int LOG_SHIFT = 52 - 8;

    /** Pieces of ln w, 32 an octave of z: the middle and the coefficients. */
    private static final double[] LOG_OMEGA = Pieces.read("log-omega.csv");

    private static final int OMEGA_SHIFT = 52 - 5;
    private static final int FIRST_OMEGA = (2 + 1023) << 5;
    private static final int TERMS = 9;

    /** Reynolds' numbers between which z is one of the pieces, whatever the wall. */
    private static final long LEAST = Double.doubleToRawLongBits(0x1p7);

    private static final long LARGEST = Double.doubleToRawLongBits(0x1p30);
    private static final long TURBULENT = Double.doubleToRawLongBits(DarcyFriction.TURBULENT_LIMIT);

    /** More than that of a smooth wall at the largest of numbers, 610. */
    private static final double LARGEST_ROOT = 700;

    private static final long FRACTION = (1L << 52) - 1;
    private static final long ONE = Double.doubleToRawLongBits(1);

    private ColebrookRoot() {}

    /**
     * Whether {@link #root} has the answer; not if one of both is no number. Numbers above 0 are in the order of their bits,
     * and those below and those that are none beyond either end: one jump instead of four.
     */
    static boolean isInside(double reynolds, double relativeRoughness) {
        return isInside(reynolds, relativeRoughness, LEAST);
    }

    /** The same of Reynolds' numbers from that of turbulent flow on. */
    static boolean isTurbulentInside(double reynolds, double relativeRoughness) {
        return isInside(reynolds, relativeRoughness, TURBULENT);
    }

    private static boolean isInside(double reynolds, double relativeRoughness, long least) {
        long re = Double.doubleToRawLongBits(reynolds);
        long wall = Double.doubleToRawLongBits(relativeRoughness);
        return (re - least | LARGEST - re | wall | ONE - wall) >= 0;
    }

    /** The friction factor of Re > 0 and k/D in [0, 1]. */
    static double factor(double reynolds, double relativeRoughness) {
        return isInside(reynolds, relativeRoughness)
                ? ofRoot(root(reynolds, relativeRoughness))
                : square(bySearch(reynolds, relativeRoughness));
    }

    /** 1/√f of Re > 0 and k/D in [0, 1]. */
    static double inverseRoot(double reynolds, double relativeRoughness) {
        return isInside(reynolds, relativeRoughness)
                ? inverseRootOf(root(reynolds, relativeRoughness))
                : bySearch(reynolds, relativeRoughness);
    }

    /** 1/√f of X, with one rounding. */
    private static double inverseRootOf(double x) {
        return Math.fma(x, TO_LOGARITHM, x * TO_LOGARITHM_REST);
    }

    /** The friction factor of X. */
    static double ofRoot(double x) {
        return FACTOR / (x * x);
    }

    private static double square(double inverseRoot) {
        return 1 / (inverseRoot * inverseRoot);
    }

    /** X of what is {@linkplain #isInside inside}. */
    static double root(double reynolds, double relativeRoughness) {
        long bits = Double.doubleToRawLongBits(reynolds);
        double high = high(bits);
        double low = withRest(rest(bits), exponent(bits) * LN2_LOW);

        // The piece is that of z without its last part, so that it is found early; it reaches a little further.
        double z = Math.fma(relativeRoughness * PER_ROUGHNESS, reynolds, high);
        double[] c = LOG_OMEGA;
        int i = TERMS * ((int) (Double.doubleToRawLongBits(z) >>> OMEGA_SHIFT) - FIRST_OMEGA);
        double u = (z - c[i]) + low;
        double square = u * u;
        double last = Math.fma(Math.fma(c[i + 8], u, c[i + 7]), square, Math.fma(c[i + 6], u, c[i + 5]));
        double inner = Math.fma(last, square, Math.fma(c[i + 4], u, c[i + 3]));
        return (high - c[i + 1]) + Math.fma(Math.fma(inner, u, c[i + 2]), -u, low);
    }

    /** The natural logarithm of a normal positive number within 2e-16 and half a unit of its last digit. */
    static double logarithm(double x) {
        long bits = Double.doubleToRawLongBits(x);
        return high(bits) + LNC_HIGH + withRest(rest(bits), Math.fma(exponent(bits), LN2_LOW, LNC_LOW));
    }

    /** The same within 3e-9, sooner. */
    static double roughLogarithm(double x) {
        long bits = Double.doubleToRawLongBits(x);
        double r = rest(bits);
        return high(bits) + (LNC_HIGH + Math.fma(-0.5 * r, r, r));
    }

    private static double exponent(long bits) {
        return (int) (bits >>> 52) - 1023;
    }

    private static int row(long bits) {
        return 2 * (int) ((bits >>> LOG_SHIFT) & 0xff);
    }

    /** The logarithm over C without its last part and that of {@link #rest}; a sum without a rounding. */
    private static double high(long bits) {
        return Math.fma(exponent(bits), LN2_HIGH, LOGARITHM[row(bits) + 1]);
    }

    /** r of the mantissa (1 + r)/i, at most 1/511. */
    private static double rest(long bits) {
        return Math.fma(Double.longBitsToDouble(bits & FRACTION | ONE), LOGARITHM[row(bits)], -1);
    }

    /** ln(1 + r) and something smaller yet, in the order in which the parts become known: r last. */
    private static double withRest(double r, double small) {
        double square = r * r;
        double end = Math.fma(Math.fma(0.2, r, -0.25), square, Math.fma(1.0 / 3, r, -0.5));
        return Math.fma(end, square, small + r);
    }

    /** The same root where the pieces end, of x + 2 lg(a + 2.51 x/Re) = 0, whose left side rises. */
    private static double bySearch(double reynolds, double relativeRoughness) {
        double a = relativeRoughness / 3.7;
        double b = 2.51 / reynolds;
        return Roots.between(x -> x + 2 * Math.log10(a + b * x), Double.MIN_NORMAL, LARGEST_ROOT);
    }
}
