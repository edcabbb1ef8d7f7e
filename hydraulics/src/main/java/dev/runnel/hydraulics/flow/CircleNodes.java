package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Segment;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;

/**
 * The unit circle as power series of h = x − x₀ about fixed depths x₀, the nodes: what a law that depends on the hydraulic
 * radius ρ needs of it, a √ρ, 1/ρ and ρ^(−3/2). They are the same for every pipe, and found where one first asks.
 *
 * <p>The width 2 √(x (1 − x)) is the derivative of the area and twice the inverse of that of the perimeter, so their series
 * follow from its own; area and perimeter at the node itself have full relative precision.
 */
final class CircleNodes {
    /** Coefficients of each series: powers 0 to 6. */
    static final int TERMS = 7;

    /** All nodes, one after another; a node is not there before the x₀ at its first place is. */
    static final double[] SERIES;

    /** Length of a node. */
    static final int LINE = 24;

    /** Where in a node the series begin. */
    static final int CONVEYANCE = 1;

    static final int INVERSE_RADIUS = CONVEYANCE + TERMS;
    static final int INVERSE_RADIUS_POWER = INVERSE_RADIUS + TERMS;

    /** Nodes of an octave below the middle, of a unit above, and of a unit where the crest is near. */
    private static final int PER_OCTAVE = 128;

    private static final int LOWER_SHIFT = 52 - 7;
    private static final int PER_UNIT = 1024;
    private static final int PER_UNIT_OF_TOP = 4096;
    private static final double TOP = 0.8125;
    private static final int FIRST_OCTAVE = -11;
    private static final int LOWER = PER_OCTAVE * (-1 - FIRST_OCTAVE);
    private static final long FIRST = (long) (FIRST_OCTAVE + 1023) << 7;
    private static final int MIDDLE = LOWER + (int) ((TOP - 0.5) * PER_UNIT);
    private static final int NODES = MIDDLE + (int) ((1 - TOP) * PER_UNIT_OF_TOP);

    private static final VarHandle PLACE = MethodHandles.arrayElementVarHandle(double[].class);

    static {
        SERIES = new double[NODES * LINE];
    }

    private CircleNodes() {}

    /** The node next to a depth, -1 for a film so thin or air so little that there is none. */
    static int nearest(double x) {
        if (x < 0.5) {
            long place = (Double.doubleToRawLongBits(x) >>> LOWER_SHIFT) - FIRST;
            return place >= 0 ? (int) place : -1;
        }
        if (x < TOP) {
            return LOWER + (int) ((x - 0.5) * PER_UNIT);
        }
        return x < 1 ? MIDDLE + (int) ((x - TOP) * PER_UNIT_OF_TOP) : -1;
    }

    /** Where in {@link #SERIES} a node lies, which is there from now on. */
    static int line(int node) {
        int at = node * LINE;
        if ((double) PLACE.getAcquire(SERIES, at) == 0) {
            compute(depth(node), at);
        }
        return at;
    }

    private static double depth(int node) {
        if (node >= MIDDLE) {
            return TOP + (node - MIDDLE + 0.5) / PER_UNIT_OF_TOP;
        }
        if (node >= LOWER) {
            return 0.5 + (node - LOWER + 0.5) / PER_UNIT;
        }
        double mantissa = 1 + (node % PER_OCTAVE + 0.5) / PER_OCTAVE;
        return Math.scalb(mantissa, FIRST_OCTAVE + node / PER_OCTAVE);
    }

    private static void compute(double x, int at) {
        double[] root = new double[TERMS];
        double[] inverseRoot = new double[TERMS];
        double[] square = {x * (1 - x), 1 - 2 * x, -1, 0, 0, 0, 0};
        root[0] = Math.sqrt(square[0]);
        inverseRoot[0] = 1 / root[0];
        for (int k = 1; k < TERMS; k++) {
            double sum = square[k];
            for (int m = 1; m < k; m++) {
                sum -= root[m] * root[k - m];
            }
            root[k] = sum / (2 * root[0]);
            double product = 0;
            for (int m = 1; m <= k; m++) {
                product += root[m] * inverseRoot[k - m];
            }
            inverseRoot[k] = -product / root[0];
        }
        boolean low = x <= 0.5;
        double[] area = new double[TERMS];
        double[] perimeter = new double[TERMS];
        area[0] = low ? Segment.area(x) : Math.PI / 4 - Segment.area(1 - x);
        perimeter[0] = low ? Segment.halfAngle(x) : Math.PI - Segment.halfAngle(1 - x);
        for (int k = 1; k < TERMS; k++) {
            area[k] = 2 * root[k - 1] / k;
            perimeter[k] = inverseRoot[k - 1] / k;
        }
        double[] radius = product(area, power(perimeter, -1));
        System.arraycopy(product(area, power(radius, 0.5)), 0, SERIES, at + CONVEYANCE, TERMS);
        System.arraycopy(power(radius, -1), 0, SERIES, at + INVERSE_RADIUS, TERMS);
        System.arraycopy(power(radius, -1.5), 0, SERIES, at + INVERSE_RADIUS_POWER, TERMS);
        // Last, so that whoever sees it sees the series.
        PLACE.setRelease(SERIES, at, x);
    }

    private static double[] product(double[] a, double[] b) {
        double[] c = new double[TERMS];
        for (int k = 0; k < TERMS; k++) {
            for (int m = 0; m <= k; m++) {
                c[k] += a[m] * b[k - m];
            }
        }
        return c;
    }

    /** A power of a series, from a b' = e a' b of b = a^e. */
    private static double[] power(double[] a, double exponent) {
        double[] b = new double[TERMS];
        b[0] = exponent == 0.5 ? Math.sqrt(a[0]) : exponent == -1 ? 1 / a[0] : 1 / (a[0] * Math.sqrt(a[0]));
        for (int k = 1; k < TERMS; k++) {
            double sum = 0;
            for (int m = 1; m <= k; m++) {
                sum += (exponent * m - (k - m)) * a[m] * b[k - m];
            }
            b[k] = sum / (k * a[0]);
        }
        return b;
    }
}
