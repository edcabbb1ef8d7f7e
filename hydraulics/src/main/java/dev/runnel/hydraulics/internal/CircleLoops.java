package dev.runnel.hydraulics.internal;

import org.apiguardian.api.API;

/**
 * The loops over many depths of one circle, written so that the compiler turns each into vector instructions: no branch,
 * no call that is not inlined, and a body short enough to be unrolled. A longer one, such as all properties at once, stays
 * scalar and takes six times as long, and so did, on JDK 17, the same line with the mask before the polynomial: measure
 * after any change here.
 *
 * <p>The smaller of water and air is computed, and the other is the difference: with m = 1 above the middle and 0 below,
 * |m F − S| is F − S or S to the last bit, as in the scalar form. The mask m comes from d − min(d, D − d), which is 0 below
 * the middle and at least one unit in the last place above. A missing depth (NaN) passes through all of it, and a depth
 * out of range becomes NaN as the root of a negative number; {@link #sum} finds both.
 */
@API(status = API.Status.INTERNAL)
public final class CircleLoops {
    /** Bigger than the inverse of any difference of two depths that a diameter in its allowed range can have. */
    private static final double STEEP = 1e200;

    private static final long LOWEST_OF_EXPONENT = 1L << 52;
    private static final long EXPONENT = 0x7ff * LOWEST_OF_EXPONENT;

    private CircleLoops() {}

    /**
     * Writes areas.
     *
     * @param depth depths, m
     * @param area areas, m²; not the same array as {@code depth}
     * @param from first index
     * @param to index after the last
     * @param diameter diameter D, m
     * @param inverse 1/D
     * @param square D²
     */
    public static void area(
            double[] depth, double[] area, int from, int to, double diameter, double inverse, double square) {
        for (int i = from; i < to; i++) {
            double d = depth[i];
            double least = Math.min(d, diameter - d);
            double smaller = Segment.area(least * inverse);
            double above = Math.min(1, (d - least) * STEEP);
            area[i] = square * Math.abs(above * (Math.PI / 4) - smaller);
        }
    }

    /**
     * Writes discharges, factor times velocity times area, −0.0 as 0.0.
     *
     * @param depth depths, m
     * @param velocity velocities, m/s
     * @param discharge discharges, m³/s; not the same array as one of the others
     * @param from first index
     * @param to index after the last
     * @param diameter diameter D, m
     * @param factor of the velocity
     */
    public static void discharge(
            double[] depth, double[] velocity, double[] discharge, int from, int to, double diameter, double factor) {
        area(depth, discharge, from, to, diameter, 1 / diameter, diameter * diameter);
        for (int i = from; i < to; i++) {
            discharge[i] = factor * velocity[i] * discharge[i] + 0.0;
        }
    }

    /**
     * Writes wetted perimeters.
     *
     * @param depth depths, m
     * @param perimeter perimeters, m; not the same array as {@code depth}
     * @param from first index
     * @param to index after the last
     * @param diameter diameter D, m
     * @param inverse 1/D
     */
    public static void perimeter(
            double[] depth, double[] perimeter, int from, int to, double diameter, double inverse) {
        for (int i = from; i < to; i++) {
            double d = depth[i];
            double least = Math.min(d, diameter - d);
            double smaller = Segment.halfAngle(least * inverse);
            double above = Math.min(1, (d - least) * STEEP);
            perimeter[i] = diameter * Math.abs(above * Math.PI - smaller);
        }
    }

    /**
     * Writes surface widths.
     *
     * @param depth depths, m
     * @param width widths, m; not the same array as {@code depth}
     * @param from first index
     * @param to index after the last
     * @param diameter diameter D, m
     * @param inverse 1/D
     */
    public static void width(double[] depth, double[] width, int from, int to, double diameter, double inverse) {
        for (int i = from; i < to; i++) {
            double d = depth[i];
            double w = Math.min(d, diameter - d) * inverse;
            width[i] = 2 * diameter * Math.sqrt(w * (1 - w));
        }
    }

    /**
     * Areas from an index on become hydraulic radii, with the perimeters from index 0 on; the area of a dry section is 0,
     * and so is its radius.
     *
     * @param area areas, m²; overwritten with the radii, m
     * @param from first index of the areas
     * @param perimeter perimeters, m
     * @param count how many
     */
    public static void quotient(double[] area, int from, double[] perimeter, int count) {
        for (int i = 0; i < count; i++) {
            area[from + i] /= Math.max(perimeter[i], Double.MIN_NORMAL);
        }
    }

    /**
     * Finds the numbers that are none, or not finite, without a jump, which would be guessed wrongly at each.
     *
     * @param values values
     * @param from first index
     * @param to index after the last
     * @param places where they are, from index 0 on; overwritten
     * @return how many there are
     */
    public static int notFinite(double[] values, int from, int to, int[] places) {
        int count = 0;
        for (int i = from; i < to; i++) {
            places[count] = i;
            // The exponent is all ones.
            count += (int) ((Double.doubleToRawLongBits(values[i]) & EXPONENT) + LOWEST_OF_EXPONENT >>> 63);
        }
        return count;
    }

    /**
     * Returns the sum: NaN if one of the values is. Eight sums at once, since one sum would wait for each addition.
     *
     * @param values values
     * @param from first index
     * @param to index after the last
     * @return sum, of no other use
     */
    public static double sum(double[] values, int from, int to) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        double e = 0;
        double f = 0;
        double g = 0;
        double h = 0;
        int i = from;
        for (; i + 8 <= to; i += 8) {
            a += values[i];
            b += values[i + 1];
            c += values[i + 2];
            d += values[i + 3];
            e += values[i + 4];
            f += values[i + 5];
            g += values[i + 6];
            h += values[i + 7];
        }
        for (; i < to; i++) {
            a += values[i];
        }
        return a + b + c + d + e + f + g + h;
    }
}
