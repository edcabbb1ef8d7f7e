package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Bulk;
import java.util.function.DoubleUnaryOperator;

/**
 * The critical depth of a circle: with q = Q/√(g D⁵), one curve for all pipes, as piecewise polynomials computed once for
 * all.
 *
 * <p>In r = √q the depth over diameter is r times a smooth function, down to the thinnest film; in z = 1/q² the root of the
 * air above the water, √(1 − y/D), is z times one, up to the last film of air. Relative error of the depth below 1e-15.
 */
final class CircleCritical {
    private static final double[] DEPTH = Pieces.read("circle-critical-depth.csv");
    private static final double[] AIR_ROOT = Pieces.read("circle-critical-air.csv");

    /** Up to here in r; the other curve begins a little before. */
    private static final double LAST = 28.0 / 32;

    private CircleCritical() {}

    /** Discharge that counts as 1, √(g D⁵), m³/s. */
    static double unit(double diameter, double gravity) {
        return Math.sqrt(gravity * diameter) * diameter * diameter;
    }

    /** The critical depth, m. */
    static double depth(double discharge, double diameter, double unit) {
        double q = discharge / unit;
        double r = Math.sqrt(q);
        if (r < LAST) {
            int piece = (int) (r * 32);
            return diameter * (r * Pieces.ten(DEPTH, piece, r - (piece + 0.5) / 32));
        }
        double z = 1 / (q * q);
        int piece = (int) (z * 16);
        double t = z * Pieces.ten(AIR_ROOT, piece, z - (piece + 0.5) / 16);
        return Math.fma(-diameter * t, t, diameter);
    }

    /** Writes the critical depth of each discharge; what is not in [0, ∞) is left to another form. */
    static void depths(double[] discharge, double[] depth, double diameter, double unit, DoubleUnaryOperator other) {
        for (int i = 0; i < discharge.length; i++) {
            double q = discharge[i];
            depth[i] = q >= 0 && q < Double.POSITIVE_INFINITY
                    ? depth(q, diameter, unit)
                    : Bulk.at("discharges", discharge, i, other);
        }
    }
}
