package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CircularSection;
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
    private static final int TERMS = 7;

    /** All nodes, one after another; a node is not there before the x₀ at its first place is. */
    static final double[] SERIES;

    /** Length of a node. */
    private static final int LINE = 22;

    /** Where in a node the series begin. */
    static final int CONVEYANCE = 1;

    static final int INVERSE_RADIUS = CONVEYANCE + TERMS;
    static final int INVERSE_RADIUS_POWER = INVERSE_RADIUS + TERMS;

    /**
     * Nodes lie evenly in ln(x/(1 − x)), each {@link #STEP} of it one: by parts of the depth in thin films, and by parts of the air
     * where the crest is near. What numbers them is smooth, so that it can itself be told by a polynomial.
     */
    private static final double STEP = 0.005;

    /** From x = 4.5e-4 to 0.938: up to there the discharge of every pipe rises that is turbulent when full. */
    private static final double FIRST = -7.7;

    static final int NODES = 2083;

    private static final VarHandle PLACE = MethodHandles.arrayElementVarHandle(double[].class);

    private static final CircularSection UNIT = CircularSection.ofDiameter(1);

    static {
        SERIES = new double[NODES * LINE];
    }

    private CircleNodes() {}

    /** The depth of a number: that of the node next to it and a fraction. */
    static double depth(double number) {
        double e = Math.exp(Math.fma(number, STEP, FIRST));
        return e / (1 + e);
    }

    /** The node next to the depth of a number, -1 for a film so thin or air so little that there is none. */
    static int ofNumber(double number) {
        return number >= 0 && number < NODES ? (int) number : -1;
    }

    /** Where in {@link #SERIES} a node lies, which is there from now on. */
    static int line(int node) {
        int at = node * LINE;
        if ((double) PLACE.getAcquire(SERIES, at) == 0) {
            compute(depth(node + 0.5), at);
        }
        return at;
    }

    private static void compute(double x, int at) {
        // x (1 - x)
        double[] square = new double[TERMS];
        square[0] = x * (1 - x);
        square[1] = 1 - 2 * x;
        square[2] = -1;
        double[] root = power(square, 0.5);
        double[] inverseRoot = power(square, -0.5);
        double[] area = new double[TERMS];
        double[] perimeter = new double[TERMS];
        area[0] = UNIT.area(x);
        perimeter[0] = UNIT.wettedPerimeter(x);
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
        b[0] = Math.pow(a[0], exponent);
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
