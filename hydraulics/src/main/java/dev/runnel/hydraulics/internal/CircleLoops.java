package dev.runnel.hydraulics.internal;

import org.apiguardian.api.API;

/**
 * The loops over many depths of one circle, written so that the compiler turns each into vector instructions: no branch,
 * no call that is not inlined, and a body short enough to be unrolled. A body of more than 60 nodes of the compiler
 * ({@code -XX:LoopUnrollLimit}) stays scalar and takes five times as long; {@link #discharge} has 59, and one operation more
 * is too much: measure after any change here. What is needed of one depth is in methods of their own, which the sections call
 * too, so that one depth and many give the same bits.
 *
 * <p>The smaller of water and air is computed, and the other is the difference: with F the whole and S the smaller part,
 * |S − t| is F − S or S to the last bit where t is F above the middle and 0 below. With b 0 above and huge below,
 * −t = (b − F) − b, since F is lost in what is huge. A missing depth (NaN) passes through all of it, and a depth out of range
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
     * Returns the area at one depth.
     *
     * @param depth depth, m
     * @param diameter diameter D, m
     * @param inverse 1/D
     * @param square D²
     * @return area, m²
     */
    public static double area(double depth, double diameter, double inverse, double square) {
        return square * unitArea(depth, diameter, inverse);
    }

    /**
     * The area over D²; without a jump, which a processor would guess wrongly at every other of random depths. Twice the
     * smaller one of depth and air is 2y, or above the middle 2y + 2 (D − 2y), where both sums are exact, so that its share of
     * the diameter is right down to the last film of either; a minimum would take six operations.
     */
    private static double unitArea(double depth, double diameter, double inverse) {
        double below = Math.fma(-2, depth, diameter);
        double size = Math.abs(below);
        double w = Math.fma(2, depth, below - size) * (0.5 * inverse);
        double huge = (below + size) * STEEP;
        return Math.abs(Segment.areaPlus(w, (huge - Math.PI / 4) - huge));
    }

    /**
     * Writes discharges, factor times velocity times area, −0.0 as 0.0. In one loop, since the processor multiplies while it
     * waits for roots and for the memory.
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
        double inverse = 1 / diameter;
        double square = diameter * diameter;
        for (int i = from; i < to; i++) {
            discharge[i] = Math.fma(factor * velocity[i], area(depth[i], diameter, inverse, square), 0.0);
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
        unitArea(depth, perimeter, from, to, diameter, inverse);
        for (int i = from; i < to; i++) {
            perimeter[i] = perimeter(depth[i], perimeter[i], width(depth[i], diameter), diameter, inverse);
        }
    }

    /**
     * Returns the wetted perimeter at one depth.
     *
     * @param depth depth, m
     * @param diameter diameter D, m
     * @param inverse 1/D
     * @return perimeter, m
     */
    public static double perimeter(double depth, double diameter, double inverse) {
        return perimeter(depth, unitArea(depth, diameter, inverse), width(depth, diameter), diameter, inverse);
    }

    /**
     * The area under the arc is that of the sector, D P/4, less that of the triangle between surface and centre,
     * T (D/2 − y)/2. So P = 4 A/D + T (1 − 2y/D), where nothing cancels below the middle, and above it a fifth at most.
     */
    private static double perimeter(double depth, double unitArea, double width, double diameter, double inverse) {
        return Math.fma(width, (diameter - (depth + depth)) * inverse, 4 * diameter * unitArea);
    }

    private static void unitArea(double[] depth, double[] unitArea, int from, int to, double diameter, double inverse) {
        for (int i = from; i < to; i++) {
            unitArea[i] = unitArea(depth[i], diameter, inverse);
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
     * Writes hydraulic radii.
     *
     * @param depth depths, m
     * @param radius radii, m; not the same array as {@code depth}
     * @param from first index
     * @param to index after the last
     * @param diameter diameter D, m
     * @param inverse 1/D
     * @param square D²
     */
    public static void radius(
            double[] depth, double[] radius, int from, int to, double diameter, double inverse, double square) {
        unitArea(depth, radius, from, to, diameter, inverse);
        for (int i = from; i < to; i++) {
            double unit = radius[i];
            double width = width(depth[i], diameter);
            radius[i] = radius(square * unit, perimeter(depth[i], unit, width, diameter, inverse));
        }
    }

    /** 0 for a dry section: the least normal number is lost in any perimeter but 0, and costs less than a maximum. */
    private static double radius(double area, double perimeter) {
        return area / (perimeter + Double.MIN_NORMAL);
    }

    /**
     * Writes all of these. Two loops, since one would be too long: the areas over D², and all else from them.
     *
     * @param depth depths, m; the five arrays are different ones
     * @param area areas, m²
     * @param perimeter perimeters, m
     * @param radius radii, m
     * @param width widths, m
     * @param from first index
     * @param to index after the last
     * @param diameter diameter D, m
     * @param inverse 1/D
     * @param square D²
     */
    public static void all(
            double[] depth,
            double[] area,
            double[] perimeter,
            double[] radius,
            double[] width,
            int from,
            int to,
            double diameter,
            double inverse,
            double square) {
        unitArea(depth, area, from, to, diameter, inverse);
        for (int i = from; i < to; i++) {
            double unit = area[i];
            double surface = width(depth[i], diameter);
            double wetted = perimeter(depth[i], unit, surface, diameter, inverse);
            double flow = square * unit;
            area[i] = flow;
            perimeter[i] = wetted;
            radius[i] = radius(flow, wetted);
            width[i] = surface;
        }
    }

    /**
     * Finds the numbers that are none, or not finite, without a jump that depends on them: an index is always written, and
     * only the place for the next one moves on or does not. Most fours have a finite sum, and so have no such number; only the
     * other fours are looked at one by one. Without them the whole takes half as long again.
     *
     * @param values values
     * @param from first index
     * @param to index after the last
     * @param places where they are, from index 0 on; overwritten; as long as there are values
     * @param fours where the fours begin that are looked at; overwritten; a quarter as long
     * @return how many there are
     */
    public static int notFinite(double[] values, int from, int to, int[] places, int[] fours) {
        int endOfFours = from + (to - from & -4);
        int lookedAt = 0;
        for (int i = from; i < endOfFours; i += 4) {
            fours[lookedAt] = i;
            lookedAt += isNotFinite((values[i] + values[i + 1]) + (values[i + 2] + values[i + 3]));
        }
        int count = 0;
        for (int k = 0; k < lookedAt; k++) {
            count = notFinite(values, fours[k], fours[k] + 4, places, count);
        }
        return notFinite(values, endOfFours, to, places, count);
    }

    private static int notFinite(double[] values, int from, int to, int[] places, int found) {
        int count = found;
        for (int i = from; i < to; i++) {
            places[count] = i;
            count += isNotFinite(values[i]);
        }
        return count;
    }

    /** 1 if the exponent is all ones, else 0. */
    private static int isNotFinite(double value) {
        return (int) ((Double.doubleToRawLongBits(value) & EXPONENT) + LOWEST_OF_EXPONENT >>> 63);
    }

    /**
     * Finds the numbers that are none, not finite, or 0, without a jump, likewise. Most fours have a product that is finite and
     * not 0, and so have no such number.
     *
     * @param values values
     * @param from first index
     * @param to index after the last
     * @param places where they are, from index 0 on; overwritten; as long as there are values
     * @param fours where the fours begin that are looked at; overwritten; a quarter as long
     * @return how many there are
     */
    public static int zeroOrNotFinite(double[] values, int from, int to, int[] places, int[] fours) {
        int endOfFours = from + (to - from & -4);
        int lookedAt = 0;
        for (int i = from; i < endOfFours; i += 4) {
            fours[lookedAt] = i;
            lookedAt += isZeroOrNotFinite((values[i] * values[i + 1]) * (values[i + 2] * values[i + 3]));
        }
        int count = 0;
        for (int k = 0; k < lookedAt; k++) {
            count = zeroOrNotFinite(values, fours[k], fours[k] + 4, places, count);
        }
        return zeroOrNotFinite(values, endOfFours, to, places, count);
    }

    private static int zeroOrNotFinite(double[] values, int from, int to, int[] places, int found) {
        int count = found;
        for (int i = from; i < to; i++) {
            places[count] = i;
            count += isZeroOrNotFinite(values[i]);
        }
        return count;
    }

    /** Numbers without their sign are in the order of their bits: 0 is below the least of them, and what is none above all. */
    private static int isZeroOrNotFinite(double value) {
        long bits = Double.doubleToRawLongBits(value) & Long.MAX_VALUE;
        return (int) ((bits - 1 | EXPONENT - 1 - bits) >>> 63);
    }

    /**
     * Returns the sum: NaN if one of the values is. Two sums at once, each of four values added in pairs, since one sum would
     * wait for each addition.
     *
     * @param values values
     * @param from first index
     * @param to index after the last
     * @return sum, of no other use
     */
    public static double sum(double[] values, int from, int to) {
        double one = 0;
        double other = 0;
        int i = from;
        for (; i + 8 <= to; i += 8) {
            one += (values[i] + values[i + 1]) + (values[i + 2] + values[i + 3]);
            other += (values[i + 4] + values[i + 5]) + (values[i + 6] + values[i + 7]);
        }
        for (; i < to; i++) {
            one += values[i];
        }
        return one + other;
    }
}
