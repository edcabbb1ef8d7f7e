package dev.runnel.hydraulics.internal;

import org.apiguardian.api.API;

/**
 * The segment of a circle of diameter 1 cut off at the height w, 0 ≤ w ≤ 1/2.
 *
 * <p>Area and angle are w<sup>3/2</sup> and w<sup>1/2</sup> times functions that are analytic for |w| &lt; 1, which
 * {@link SegmentPolynomials} holds to the last digit: no cancellation in thin films, no inverse sine (on JDK 17 a native
 * call), and operations of which a loop can be made into vectors. The first term is added last, so that the rounding of the
 * rest, which is a small part of the whole, hardly counts.
 *
 * <p>The first moment is an integral of the chord 2 √(t (1 − t)). With √(1 − t) = Σ c<sub>k</sub> t<sup>k</sup> it is
 *
 * <pre>
 * moment = 2 w^(5/2) Σ c_k w^k / ((k + 3/2)(k + 5/2))      (about the chord)
 * </pre>
 *
 * which has no cancellation either; above {@link #SERIES_LIMIT} the closed form loses less than a digit and is used.
 */
@API(status = API.Status.INTERNAL)
public final class Segment {
    /** Up to here the series of the moment reaches 1e-17 with {@link #TERMS} terms. */
    public static final double SERIES_LIMIT = 0.15;

    private static final int TERMS = 18;
    private static final double[] MOMENT = new double[TERMS];

    static {
        double c = 1;
        for (int k = 0; k < TERMS; k++) {
            MOMENT[k] = 2 * c / ((k + 1.5) * (k + 2.5));
            c *= (k - 0.5) / (k + 1);
        }
    }

    private Segment() {}

    /**
     * Returns half of the angle that the chord subtends at the centre, φ = 2 asin √w.
     *
     * @param w height of the segment, in [0, 1/2]
     * @return angle, rad; relative error below 4e-16
     */
    public static double halfAngle(double w) {
        return Math.sqrt(w) * Math.fma(anglePolynomial(w), w, 2);
    }

    /**
     * Returns the area, (φ − sin φ cos φ)/4.
     *
     * @param w height of the segment, in [0, 1/2]
     * @return area; relative error below 5e-16
     */
    public static double area(double w) {
        return areaPlus(w, 0);
    }

    /**
     * Returns the area and a number with one rounding.
     *
     * @param w height of the segment, in [0, 1/2]
     * @param more number
     * @return sum
     */
    static double areaPlus(double w, double more) {
        return Math.fma(Math.sqrt(w) * w, Math.fma(areaPolynomial(w), w, 4.0 / 3), more);
    }

    /**
     * Even and odd powers apart: half as long to wait, and one operation more than Horner's scheme. With many more a loop body
     * would not be made into vectors.
     */
    private static double areaPolynomial(double w) {
        double square = w * w;
        double even = SegmentPolynomials.A14;
        even = Math.fma(even, square, SegmentPolynomials.A12);
        even = Math.fma(even, square, SegmentPolynomials.A10);
        even = Math.fma(even, square, SegmentPolynomials.A8);
        even = Math.fma(even, square, SegmentPolynomials.A6);
        even = Math.fma(even, square, SegmentPolynomials.A4);
        even = Math.fma(even, square, SegmentPolynomials.A2);
        even = Math.fma(even, square, SegmentPolynomials.A0);
        double odd = SegmentPolynomials.A15;
        odd = Math.fma(odd, square, SegmentPolynomials.A13);
        odd = Math.fma(odd, square, SegmentPolynomials.A11);
        odd = Math.fma(odd, square, SegmentPolynomials.A9);
        odd = Math.fma(odd, square, SegmentPolynomials.A7);
        odd = Math.fma(odd, square, SegmentPolynomials.A5);
        odd = Math.fma(odd, square, SegmentPolynomials.A3);
        odd = Math.fma(odd, square, SegmentPolynomials.A1);
        return Math.fma(odd, w, even);
    }

    private static double anglePolynomial(double w) {
        double square = w * w;
        double even = SegmentPolynomials.P16;
        even = Math.fma(even, square, SegmentPolynomials.P14);
        even = Math.fma(even, square, SegmentPolynomials.P12);
        even = Math.fma(even, square, SegmentPolynomials.P10);
        even = Math.fma(even, square, SegmentPolynomials.P8);
        even = Math.fma(even, square, SegmentPolynomials.P6);
        even = Math.fma(even, square, SegmentPolynomials.P4);
        even = Math.fma(even, square, SegmentPolynomials.P2);
        even = Math.fma(even, square, SegmentPolynomials.P0);
        double odd = SegmentPolynomials.P17;
        odd = Math.fma(odd, square, SegmentPolynomials.P15);
        odd = Math.fma(odd, square, SegmentPolynomials.P13);
        odd = Math.fma(odd, square, SegmentPolynomials.P11);
        odd = Math.fma(odd, square, SegmentPolynomials.P9);
        odd = Math.fma(odd, square, SegmentPolynomials.P7);
        odd = Math.fma(odd, square, SegmentPolynomials.P5);
        odd = Math.fma(odd, square, SegmentPolynomials.P3);
        odd = Math.fma(odd, square, SegmentPolynomials.P1);
        return Math.fma(odd, w, even);
    }

    /**
     * Returns the first moment of the area about the chord.
     *
     * @param w height of the segment, up to {@link #SERIES_LIMIT}
     * @return moment
     */
    public static double moment(double w) {
        double sum = 0;
        for (int k = TERMS - 1; k >= 0; k--) {
            sum = sum * w + MOMENT[k];
        }
        return w * w * Math.sqrt(w) * sum;
    }

    /**
     * Returns the height of the segment that has an area. With u = √w the cube root of the area is nearly a straight
     * line, so Newton's method on it from its tangent at 0 needs no more than 4 steps, whatever the area.
     *
     * @param area area, in [0, π/8]
     * @return height of the segment
     */
    public static double depthForArea(double area) {
        if (area == 0) {
            return 0;
        }
        double target = Math.cbrt(area);
        double u = Math.min(Math.cbrt(0.75 * area), Math.sqrt(0.5));
        for (int i = 0; i < 4; i++) {
            double w = u * u;
            double root = Math.cbrt(area(w));
            // d(area)/du = 2 √(w (1 − w)) · 2u
            double step = (root - target) * 3 * root * root / (4 * w * Math.sqrt(1 - w));
            u = Math.min(u - step, Math.sqrt(0.5));
            if (Math.abs(step) <= 1e-16 * u) {
                break;
            }
        }
        return u * u;
    }
}
