package dev.runnel.hydraulics.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** A bore of 0.6 m: the formulas of the half angle at depths where they cancel little, and the loops against one depth. */
class CircleLoopsTest {
    private static final double BORE = 0.6;
    private static final double INVERSE = 1 / BORE;
    private static final double SQUARE = BORE * BORE;
    private static final double[] DEPTHS = {0.05, 0.17, 0.3, 0.42, 0.56, 0.599};
    private static final double INFINITY = Double.POSITIVE_INFINITY;
    private static final double GAP = Double.NaN;

    private static double halfAngle(double depth) {
        return Math.acos(1 - 2 * depth / BORE);
    }

    @Test
    void oneDepth() {
        for (double depth : DEPTHS) {
            double half = halfAngle(depth);
            double area = SQUARE / 4 * (half - Math.sin(half) * Math.cos(half));
            assertThat(CircleLoops.area(depth, BORE, INVERSE, SQUARE)).isCloseTo(area, within(2e-14 * area));
            assertThat(CircleLoops.perimeter(depth, BORE, INVERSE)).isCloseTo(BORE * half, within(1e-14));
            assertThat(CircleLoops.width(depth, BORE)).isCloseTo(BORE * Math.sin(half), within(1e-14));
        }
        assertThat(CircleLoops.area(BORE, BORE, INVERSE, SQUARE)).isCloseTo(Math.PI * SQUARE / 4, within(1e-16));
        assertThat(CircleLoops.area(0, BORE, INVERSE, SQUARE)).isZero();
        assertThat(CircleLoops.area(-0.01, BORE, INVERSE, SQUARE)).isNaN();
        assertThat(CircleLoops.area(0.61, BORE, INVERSE, SQUARE)).isNaN();
        assertThat(CircleLoops.width(0.61, BORE)).isNaN();
    }

    /** Each loop from the second to the last but one, the same bits as one by one; what lies outside stays. */
    @Test
    void loopsAreThatOneByOne() {
        int size = DEPTHS.length;
        double[] area = untouched(size);
        double[] perimeter = untouched(size);
        double[] radius = untouched(size);
        double[] width = untouched(size);
        CircleLoops.area(DEPTHS, area, 1, size - 1, BORE, INVERSE, SQUARE);
        CircleLoops.perimeter(DEPTHS, perimeter, 1, size - 1, BORE, INVERSE);
        CircleLoops.radius(DEPTHS, radius, 1, size - 1, BORE, INVERSE, SQUARE);
        CircleLoops.width(DEPTHS, width, 1, size - 1, BORE);
        double[][] all = {untouched(size), untouched(size), untouched(size), untouched(size)};
        CircleLoops.all(DEPTHS, all[0], all[1], all[2], all[3], 1, size - 1, BORE, INVERSE, SQUARE);
        double[] velocity = {1, 2, 3, 4, 5, 6};
        double[] discharge = untouched(size);
        CircleLoops.discharge(DEPTHS, velocity, discharge, 1, size - 1, BORE, 0.5);
        for (int i = 0; i < size; i++) {
            boolean inside = i > 0 && i < size - 1;
            double oneArea = CircleLoops.area(DEPTHS[i], BORE, INVERSE, SQUARE);
            double onePerimeter = CircleLoops.perimeter(DEPTHS[i], BORE, INVERSE);
            assertThat(area[i]).isEqualTo(inside ? oneArea : 7);
            assertThat(perimeter[i]).isEqualTo(inside ? onePerimeter : 7);
            assertThat(radius[i]).isEqualTo(inside ? oneArea / onePerimeter : 7);
            assertThat(width[i]).isEqualTo(inside ? CircleLoops.width(DEPTHS[i], BORE) : 7);
            assertThat(discharge[i]).isEqualTo(inside ? 0.5 * velocity[i] * oneArea : 7);
        }
        assertThat(all[0]).containsExactly(area);
        assertThat(all[1]).containsExactly(perimeter);
        assertThat(all[2]).containsExactly(radius);
        assertThat(all[3]).containsExactly(width);
    }

    private static double[] untouched(int size) {
        double[] values = new double[size];
        Arrays.fill(values, 7);
        return values;
    }

    @Test
    void aDrySectionHasNoRadius() {
        double[] radius = {7};
        CircleLoops.radius(new double[] {0}, radius, 0, 1, BORE, INVERSE, SQUARE);
        assertThat(radius).containsExactly(0);
        double[] discharge = {7};
        CircleLoops.discharge(new double[] {0}, new double[] {-1}, discharge, 0, 1, BORE, 1);
        assertThat(Double.doubleToRawLongBits(discharge[0])).as("no −0").isZero();
    }

    /** At every place of a four and of what is left over, alone and all together. */
    @Test
    void findsWhatIsNotFinite() {
        double[] bad = {GAP, INFINITY, -INFINITY};
        for (int size = 0; size < 11; size++) {
            for (int place = 0; place < size; place++) {
                double[] values = new double[size];
                Arrays.fill(values, -3);
                values[place] = bad[place % 3];
                assertThat(notFinite(values, 0, size)).containsExactly(place);
            }
            double[] all = new double[size];
            Arrays.fill(all, GAP);
            assertThat(notFinite(all, 0, size)).hasSize(size);
            assertThat(notFinite(new double[size], 0, size)).isEmpty();
        }
        double[] values = {GAP, GAP, 1, GAP, 1, 1, 1, INFINITY, 1, GAP, GAP};
        assertThat(notFinite(values, 1, 10)).containsExactly(1, 3, 7, 9);
        assertThat(notFinite(values, 2, 9)).containsExactly(3, 7);
        // Finite each, and a sum that is not: none.
        assertThat(notFinite(new double[] {1e308, 1e308, 1e308, 1e308, Double.MAX_VALUE}, 0, 5))
                .isEmpty();
    }

    private static int[] notFinite(double[] values, int from, int to) {
        int[] places = new int[values.length];
        int count = CircleLoops.notFinite(values, from, to, places, new int[values.length / 4 + 1]);
        return Arrays.copyOf(places, count);
    }

    @Test
    void findsZerosAndWhatIsNotFinite() {
        double[] values = {0.0, 1, -0.0, Double.MIN_VALUE, -1, INFINITY, -Double.MAX_VALUE, GAP, -INFINITY, -GAP, 2, 0};
        assertThat(zeroOrNotFinite(values, 1, 11)).containsExactly(2, 5, 7, 8, 9);
        assertThat(zeroOrNotFinite(values, 3, 8)).containsExactly(5, 7);
        double[] bad = {0, -0.0, GAP, -INFINITY};
        for (int size = 0; size < 11; size++) {
            for (int place = 0; place < size; place++) {
                double[] one = new double[size];
                Arrays.fill(one, place % 2 == 0 ? 3 : -3);
                one[place] = bad[place % 4];
                assertThat(zeroOrNotFinite(one, 0, size)).containsExactly(place);
            }
            assertThat(zeroOrNotFinite(new double[size], 0, size)).hasSize(size);
        }
        // Neither 0 nor infinite each, and a product that is: none.
        assertThat(zeroOrNotFinite(new double[] {1e-200, 1e-200, 1, 1, 1e200, 1e200, -1, 1, 1e-320}, 0, 9))
                .isEmpty();
    }

    private static int[] zeroOrNotFinite(double[] values, int from, int to) {
        int[] places = new int[values.length];
        int count = CircleLoops.zeroOrNotFinite(values, from, to, places, new int[values.length / 4 + 1]);
        return Arrays.copyOf(places, count);
    }

    /** Powers of two: each number is in the sum or is not. */
    @Test
    void sumsWhatLiesBetween() {
        double[] values = new double[30];
        for (int i = 0; i < values.length; i++) {
            values[i] = 1L << i;
        }
        for (int from = 0; from < 3; from++) {
            for (int to = from; to < values.length; to++) {
                assertThat(CircleLoops.sum(values, from, to)).isEqualTo((double) ((1L << to) - (1L << from)));
            }
        }
        values[13] = GAP;
        assertThat(CircleLoops.sum(values, 2, 20)).isNaN();
        assertThat(CircleLoops.sum(values, 14, 20)).isNotNaN();
    }
}
