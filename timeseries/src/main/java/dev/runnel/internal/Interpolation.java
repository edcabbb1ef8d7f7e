package dev.runnel.internal;

import java.util.Arrays;
import org.apiguardian.api.API;

/** Straight lines between the points of a table: the one place where they are drawn. */
@API(status = API.Status.INTERNAL)
public final class Interpolation {
    private Interpolation() {}

    /**
     * Returns the value at a place of the line through two points.
     *
     * @param x place
     * @param x0 place of one point
     * @param y0 value of one point
     * @param x1 place of the other point, not that of the first
     * @param y1 value of the other point
     * @return value; exactly {@code y0} at {@code x0} and {@code y1} at {@code x1}
     */
    public static double between(double x, double x0, double y0, double x1, double y1) {
        return x == x1 ? y1 : y0 + (x - x0) / (x1 - x0) * (y1 - y0);
    }

    /**
     * Returns the value at a place among ordered values, by a straight line between two of them.
     *
     * @param sorted values, not falling; at least one; not modified
     * @param position place counted from 0; held within the places there are; not NaN
     * @return value; at a whole place exactly that of the array
     */
    public static double ranked(double[] sorted, double position) {
        double held = Math.max(0, Math.min(sorted.length - 1, position));
        int below = (int) held;
        if (below == held) {
            return sorted[below];
        }
        return between(held, below, sorted[below], below + 1, sorted[below + 1]);
    }

    /**
     * Returns the value of a table, the first value before its first place and the last after its last.
     *
     * @param xs places, strictly rising; at least one; not modified
     * @param ys values, as many; not modified
     * @param x place; not NaN
     * @return value; at a place of the table exactly that of the table
     */
    public static double held(double[] xs, double[] ys, double x) {
        int found = Arrays.binarySearch(xs, x);
        if (found >= 0) {
            return ys[found];
        }
        int above = -found - 1;
        if (above == 0 || above == xs.length) {
            return ys[Math.min(above, xs.length - 1)];
        }
        return between(x, xs[above - 1], ys[above - 1], xs[above], ys[above]);
    }

    /**
     * Returns the value of a table, its first and its last piece prolonged beyond its ends.
     *
     * @param xs places, strictly rising; at least two; not modified
     * @param ys values, as many; not modified
     * @param x place; not NaN
     * @return value; at a place of the table exactly that of the table
     */
    public static double prolonged(double[] xs, double[] ys, double x) {
        int found = Arrays.binarySearch(xs, x);
        if (found >= 0) {
            return ys[found];
        }
        int above = Math.min(Math.max(-found - 1, 1), xs.length - 1);
        return between(x, xs[above - 1], ys[above - 1], xs[above], ys[above]);
    }
}
