package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Segment;
import dev.runnel.internal.Roots;

/**
 * The depth of a laminar discharge in the lower half of a circle. Laminar flow has the velocity g S R²/(2ν), on any wall: in
 * the units of {@link CircleColebrook}
 *
 * <pre>
 * a ρ² = (2/ln 10) (64/2.51) β q      Re = ρ³ (2.51/(8β))²
 * </pre>
 *
 * <p>and the left side is 16/27 x^(7/2) (1 − 37/30 x + ...): its power 2/7 is nearly straight, and the first term alone gives a
 * depth that is too little. Below the middle the discharge rises under every law of friction, so that a laminar depth there is
 * the only one.
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

    private LaminarFilm() {}

    /** a ρ² at a part x of the diameter. */
    private static double moved(double x) {
        double area = Segment.area(x);
        double radius = radius(x);
        return area * radius * radius;
    }

    private static double radius(double x) {
        return Segment.area(x) / Segment.halfAngle(x);
    }

    private static double straightened(double moved) {
        return Math.pow(moved, 2.0 / 7);
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
        double straight = straightened(wanted);
        double x =
                Roots.between(each -> straightened(moved(each)) - straight, straightened(27.0 / 16 * wanted), MIDDLE);
        return isLaminar(alpha, beta, radius(x)) ? x : -1;
    }

    private static boolean isLaminar(double alpha, double beta, double radius) {
        return reynolds(beta, radius)
                <= SURELY
                        * DarcyFriction.Transition.of(Math.min(3.7 * alpha / radius, 1))
                                .start();
    }
}
