package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Segment;

/**
 * The depth of a laminar discharge in the lower half of a circle. Laminar flow has the velocity g S R²/(2ν), on any wall: in
 * the units of {@link CircleColebrook}
 *
 * <pre>
 * a ρ² = (2/ln 10) (64/2.51) β q      Re = ρ³ (2.51/(8β))²
 * </pre>
 *
 * <p>and the left side is 16/27 x^(7/2) (1 − 37/30 x + ...), whose inverse is a start for Newton's method. Below the middle the
 * discharge rises under every law of friction, so that a laminar depth there is the only one.
 */
final class LaminarFilm {
    private static final double PER_BETA = ColebrookRoot.TO_LOGARITHM * 64 / 2.51;

    private static final double MIDDLE = 0.5;

    /** a ρ² at the middle. */
    private static final double AT_MIDDLE = Math.PI / 8 / 16;

    /** With less, powers of the depth would lose digits. */
    private static final double LEAST = 1e-200;

    /** Reynolds' numbers so close to the end of laminar flow are left to the law itself. */
    private static final double SURELY = 0.999;

    /** Newton's next step would be the square of this one. */
    private static final double SHORT = 1e-8;

    private static final int MOST_STEPS = 8;

    private LaminarFilm() {}

    /** y/D nearly: a few terms of the inverse, too little by 2 % at the middle, and below it ever closer, by (y/D)⁴. */
    static double start(double beta, double q) {
        double film = Math.pow(27.0 / 16 * PER_BETA * beta * q, 2.0 / 7);
        return film * (1 + film * (37.0 / 105 + film * (674.0 / 2205 + film * (132583.0 / 385875))));
    }

    /** Reynolds' number of laminar flow at a hydraulic radius. */
    private static double reynolds(double beta, double radius) {
        double perBeta = 2.51 / (8 * beta);
        return radius * radius * radius * perBeta * perBeta;
    }

    /** y/D of a discharge, −1 where it does not run laminar, or not in the lower half. */
    static double part(double alpha, double beta, double q) {
        double wanted = PER_BETA * beta * q;
        if (!(wanted > LEAST && wanted < AT_MIDDLE)) {
            return -1;
        }
        double x = Math.min(start(beta, q), MIDDLE);
        for (int i = 0; i < MOST_STEPS; i++) {
            double area = Segment.area(x);
            double perimeter = Segment.halfAngle(x);
            double radius = area / perimeter;
            double halfWidth = Math.sqrt(x * (1 - x));
            double excess = 1 - wanted / (area * radius * radius);
            // ln(a³/p²) by x, with a' = 2h and p' = 1/h.
            double step = excess / (6 * halfWidth / area - 2 / (halfWidth * perimeter));
            x = Math.min(x - step, MIDDLE);
            if (Math.abs(step) <= SHORT * x) {
                return isLaminar(alpha, beta, radius) ? x : -1;
            }
        }
        return -1;
    }

    private static boolean isLaminar(double alpha, double beta, double radius) {
        return reynolds(beta, radius) <= SURELY * DarcyFriction.laminarEnd(Math.min(3.7 * alpha / radius, 1));
    }
}
