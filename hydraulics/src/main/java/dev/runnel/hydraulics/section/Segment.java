package dev.runnel.hydraulics.section;

/**
 * The segment of a circle of diameter 1 cut off at the height w, 0 ≤ w ≤ 1/2.
 *
 * <p>Area and first moment are integrals of the chord 2 √(t (1 − t)). With √(1 − t) = Σ c<sub>k</sub> t<sup>k</sup> they
 * are
 *
 * <pre>
 * area   = 2 w^(3/2) Σ c_k w^k / (k + 3/2)
 * moment = 2 w^(5/2) Σ c_k w^k / ((k + 3/2)(k + 5/2))      (about the chord)
 * </pre>
 *
 * which has no cancellation; above {@link #SERIES_LIMIT} the closed form loses less than a digit and is used.
 */
final class Segment {
    /** Up to here the series reaches 1e-17 with {@link #TERMS} terms. */
    static final double SERIES_LIMIT = 0.15;

    private static final int TERMS = 18;
    private static final double[] AREA = new double[TERMS];
    private static final double[] MOMENT = new double[TERMS];

    static {
        double c = 1;
        for (int k = 0; k < TERMS; k++) {
            AREA[k] = 2 * c / (k + 1.5);
            MOMENT[k] = 2 * c / ((k + 1.5) * (k + 2.5));
            c *= (k - 0.5) / (k + 1);
        }
    }

    private Segment() {}

    /** Half of the angle that the chord subtends at the centre, φ = 2 asin √w, rad. */
    static double halfAngle(double w) {
        return 2 * Math.asin(Math.sqrt(w));
    }

    /** Area. */
    static double area(double w) {
        if (w <= SERIES_LIMIT) {
            return w * Math.sqrt(w) * sum(AREA, w);
        }
        // sin φ = 2 √(w (1 − w)) and cos φ = 1 − 2w: no sine is needed.
        return (halfAngle(w) - 2 * Math.sqrt(w * (1 - w)) * (1 - 2 * w)) / 4;
    }

    /** First moment of the area about the chord, for w up to {@link #SERIES_LIMIT}. */
    static double moment(double w) {
        return w * w * Math.sqrt(w) * sum(MOMENT, w);
    }

    /**
     * Height of the segment that has an area, 0 ≤ area ≤ π/8. With u = √w the cube root of the area is nearly a straight
     * line, so Newton's method on it from its tangent at 0 needs 3 or 4 steps, whatever the area.
     */
    static double depthForArea(double area) {
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

    private static double sum(double[] coefficients, double w) {
        double sum = 0;
        for (int k = TERMS - 1; k >= 0; k--) {
            sum = sum * w + coefficients[k];
        }
        return sum;
    }
}
