package dev.runnel.hydraulics.internal;

import org.apiguardian.api.API;

/**
 * The loops over many depths of one circle, written so that the compiler turns each into vector instructions: no branch,
 * no call that is not inlined, and a body short enough to be unrolled. A longer one, such as all properties at once, stays
 * scalar and takes six times as long: measure after any change here. What is needed of one depth is in methods of their own,
 * which the sections call too, so that one depth and many give the same bits.
 *
 * <p>The smaller of water and air is computed, and the other is the difference: with F the whole and S the smaller part,
 * |t − S| is F − S or S to the last bit where t is F above the middle and 0 below. With b 0 above and huge below,
 * t = (b + F) − b, since F is lost in what is huge. A missing depth (NaN) passes through all of it, and a depth out of range
 * becomes NaN as the root of a negative number; {@link #sum} finds both. A depth above the soffit by no more than its last
 * digit may count as at the soffit, which it is but for rounding.
 */
@API(status = API.Status.INTERNAL)
public final class CircleLoops {
    /** Makes any difference of two depths in an allowed bore so large that a number near 1 is lost in it. */
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
            area[i] = area(depth[i], diameter, inverse, square);
        }
    }

    /**
     * Returns the area at one depth; without a jump, which a processor would guess wrongly at every other of random depths.
     *
     * @param depth depth, m
     * @param diameter diameter D, m
     * @param inverse 1/D
     * @param square D²
     * @return area, m²
     */
    public static double area(double depth, double diameter, double inverse, double square) {
        double twice = depth + depth;
        double below = diameter - twice;
        double size = Math.abs(below);
        double smaller = Segment.area(least(twice, below - size, inverse));
        double huge = (below + size) * STEEP;
        return square * Math.abs((huge + Math.PI / 4) - huge - smaller);
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
            perimeter[i] = perimeter(depth[i], diameter, inverse);
        }
    }

    /**
     * Returns the wetted perimeter at one depth, likewise without a jump.
     *
     * @param depth depth, m
     * @param diameter diameter D, m
     * @param inverse 1/D
     * @return perimeter, m
     */
    public static double perimeter(double depth, double diameter, double inverse) {
        double twice = depth + depth;
        double below = diameter - twice;
        double size = Math.abs(below);
        double smaller = Segment.halfAngle(least(twice, below - size, inverse));
        double huge = (below + size) * STEEP;
        return diameter * Math.abs((huge + Math.PI) - huge - smaller);
    }

    /**
     * The smaller one of depth and air, over the diameter: 2y, or above the middle 2y − 2 (2y − D), where both differences are
     * exact, so that it has one rounding down to the last film of either. Additions, since they have units of the processor of
     * their own: those of products are what these loops wait for, and a minimum takes six operations.
     */
    private static double least(double twice, double twiceMissing, double inverse) {
        return (twice + twiceMissing) * (0.5 * inverse);
    }

    /**
     * Writes surface widths.
     *
     * @param depth depths, m
     * @param width widths, m; not the same array as {@code depth}
     * @param from first index
     * @param to index after the last
     * @param diameter diameter D, m
     */
    public static void width(double[] depth, double[] width, int from, int to, double diameter) {
        for (int i = from; i < to; i++) {
            width[i] = width(depth[i], diameter);
        }
    }

    /**
     * Returns the surface width at one depth: no difference of near numbers but the air, which is exact where it is small.
     *
     * @param depth depth, m
     * @param diameter diameter D, m
     * @return width, m
     */
    public static double width(double depth, double diameter) {
        return 2 * Math.sqrt(depth * (diameter - depth));
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
     * Writes hydraulic radii, 0 for a dry section.
     *
     * @param area areas, m²
     * @param perimeter perimeters, m
     * @param radius radii, m; not the same array as one of the others
     * @param from first index
     * @param to index after the last
     */
    public static void quotient(double[] area, double[] perimeter, double[] radius, int from, int to) {
        for (int i = from; i < to; i++) {
            radius[i] = area[i] / Math.max(perimeter[i], Double.MIN_NORMAL);
        }
    }

    /**
     * Finds the numbers that are none, or not finite, without a jump, which would be guessed wrongly at each: first the fours
     * whose sum is not finite, and those one by one.
     *
     * @param values values
     * @param from first index
     * @param to index after the last
     * @param places where they are, from index 0 on; overwritten; as long as there are values
     * @param fours overwritten; a quarter as long
     * @return how many there are
     */
    public static int notFinite(double[] values, int from, int to, int[] places, int[] fours) {
        int odd = 0;
        int rest = from + (to - from & -4);
        for (int i = from; i < rest; i += 4) {
            fours[odd] = i;
            odd += isNotFinite((values[i] + values[i + 1]) + (values[i + 2] + values[i + 3]));
        }
        int count = 0;
        for (int k = 0; k < odd; k++) {
            int i = fours[k];
            places[count] = i;
            count += isNotFinite(values[i]);
            places[count] = i + 1;
            count += isNotFinite(values[i + 1]);
            places[count] = i + 2;
            count += isNotFinite(values[i + 2]);
            places[count] = i + 3;
            count += isNotFinite(values[i + 3]);
        }
        for (int i = rest; i < to; i++) {
            places[count] = i;
            count += isNotFinite(values[i]);
        }
        return count;
    }

    /**
     * Finds the numbers that are not in (0, ∞), without a jump, likewise: first the fours of which one is not. Numbers above 0
     * are in the order of their bits, and those below and those that are none beyond either end.
     *
     * @param values values
     * @param from first index
     * @param to index after the last
     * @param places where they are, from index 0 on; overwritten; as long as there are values
     * @param fours overwritten; a quarter as long
     * @return how many there are
     */
    public static int notPositive(double[] values, int from, int to, int[] places, int[] fours) {
        int odd = 0;
        int rest = from + (to - from & -4);
        for (int i = from; i < rest; i += 4) {
            fours[odd] = i;
            long low = outside(values[i]) | outside(values[i + 1]);
            long high = outside(values[i + 2]) | outside(values[i + 3]);
            odd += (int) ((low | high) >>> 63);
        }
        int count = 0;
        for (int k = 0; k < odd; k++) {
            int i = fours[k];
            places[count] = i;
            count += (int) (outside(values[i]) >>> 63);
            places[count] = i + 1;
            count += (int) (outside(values[i + 1]) >>> 63);
            places[count] = i + 2;
            count += (int) (outside(values[i + 2]) >>> 63);
            places[count] = i + 3;
            count += (int) (outside(values[i + 3]) >>> 63);
        }
        for (int i = rest; i < to; i++) {
            places[count] = i;
            count += (int) (outside(values[i]) >>> 63);
        }
        return count;
    }

    /** Negative if a number is not in (0, ∞). */
    private static long outside(double value) {
        long bits = Double.doubleToRawLongBits(value);
        return bits - 1 | EXPONENT - 1 - bits;
    }

    /** 1 if the exponent is all ones, else 0. */
    private static int isNotFinite(double value) {
        return (int) ((Double.doubleToRawLongBits(value) & EXPONENT) + LOWEST_OF_EXPONENT >>> 63);
    }

    /**
     * Returns the sum: NaN if one of the values is. Four sums at once, each of four values added in pairs, since one sum would
     * wait for each addition.
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
        int i = from;
        for (; i + 16 <= to; i += 16) {
            a += (values[i] + values[i + 1]) + (values[i + 2] + values[i + 3]);
            b += (values[i + 4] + values[i + 5]) + (values[i + 6] + values[i + 7]);
            c += (values[i + 8] + values[i + 9]) + (values[i + 10] + values[i + 11]);
            d += (values[i + 12] + values[i + 13]) + (values[i + 14] + values[i + 15]);
        }
        for (; i < to; i++) {
            a += values[i];
        }
        return a + b + c + d;
    }
}
