package dev.runnel.hydraulics.internal;

import org.apiguardian.api.API;

/**
 * The segment of a circle of diameter 1 cut off at the height w, 0 ≤ w ≤ 1/2.
 *
 * <p>Area and angle are w<sup>3/2</sup> and w<sup>1/2</sup> times functions that are analytic for |w| &lt; 1, which
 * {@link SegmentPolynomials} holds to the last digit: no cancellation in thin films, no inverse sine (on JDK 17 a native
 * call), and operations of which a loop can be made into vectors. First term and rest are added last, so that the rounding
 * of the polynomial, which is a small part of the whole, hardly counts.
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
        double root = Math.sqrt(w);
        return Math.fma(root * w, anglePolynomial(w), root + root);
    }

    /**
     * Returns the area, (φ − sin φ cos φ)/4.
     *
     * @param w height of the segment, in [0, 1/2]
     * @return area; relative error below 5e-16
     */
    public static double area(double w) {
        double cubed = Math.sqrt(w) * w;
        return Math.fma(cubed * w, areaPolynomial(w), cubed * (4.0 / 3));
    }

    /** Horner's scheme, which has the fewest operations: a longer loop body would not be made into vectors. */
    private static double areaPolynomial(double w) {
        double sum = SegmentPolynomials.A16;
        sum = Math.fma(sum, w, SegmentPolynomials.A15);
        sum = Math.fma(sum, w, SegmentPolynomials.A14);
        sum = Math.fma(sum, w, SegmentPolynomials.A13);
        sum = Math.fma(sum, w, SegmentPolynomials.A12);
        sum = Math.fma(sum, w, SegmentPolynomials.A11);
        sum = Math.fma(sum, w, SegmentPolynomials.A10);
        sum = Math.fma(sum, w, SegmentPolynomials.A9);
        sum = Math.fma(sum, w, SegmentPolynomials.A8);
        sum = Math.fma(sum, w, SegmentPolynomials.A7);
        sum = Math.fma(sum, w, SegmentPolynomials.A6);
        sum = Math.fma(sum, w, SegmentPolynomials.A5);
        sum = Math.fma(sum, w, SegmentPolynomials.A4);
        sum = Math.fma(sum, w, SegmentPolynomials.A3);
        sum = Math.fma(sum, w, SegmentPolynomials.A2);
        sum = Math.fma(sum, w, SegmentPolynomials.A1);
        sum = Math.fma(sum, w, SegmentPolynomials.A0);
        return sum;
    }

    private static double anglePolynomial(double w) {
        double sum = SegmentPolynomials.P17;
        sum = Math.fma(sum, w, SegmentPolynomials.P16);
        sum = Math.fma(sum, w, SegmentPolynomials.P15);
        sum = Math.fma(sum, w, SegmentPolynomials.P14);
        sum = Math.fma(sum, w, SegmentPolynomials.P13);
        sum = Math.fma(sum, w, SegmentPolynomials.P12);
        sum = Math.fma(sum, w, SegmentPolynomials.P11);
        sum = Math.fma(sum, w, SegmentPolynomials.P10);
        sum = Math.fma(sum, w, SegmentPolynomials.P9);
        sum = Math.fma(sum, w, SegmentPolynomials.P8);
        sum = Math.fma(sum, w, SegmentPolynomials.P7);
        sum = Math.fma(sum, w, SegmentPolynomials.P6);
        sum = Math.fma(sum, w, SegmentPolynomials.P5);
        sum = Math.fma(sum, w, SegmentPolynomials.P4);
        sum = Math.fma(sum, w, SegmentPolynomials.P3);
        sum = Math.fma(sum, w, SegmentPolynomials.P2);
        sum = Math.fma(sum, w, SegmentPolynomials.P1);
        sum = Math.fma(sum, w, SegmentPolynomials.P0);
        return sum;
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
     * line, so Newton's method on it from its tangent at 0 needs 3 or 4 steps, whatever the area.
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
        for (int i = 0; i < 12; i++) {
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
