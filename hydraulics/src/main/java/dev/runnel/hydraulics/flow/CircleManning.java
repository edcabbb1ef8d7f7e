package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Bulk;
import dev.runnel.hydraulics.section.CircularSection;
import java.util.function.DoubleUnaryOperator;

/**
 * Uniform flow by Manning's law in a circle. Depth over diameter and discharge over that of the full bore are then one
 * curve for all pipes, and so is its inverse; both are piecewise polynomials, computed once for all.
 *
 * <p>Both are {@link CrestPieces}: the discharge with t = √(1 − y/D), since the round crown is smooth in t only, and the depth
 * with s = ±√(1 − Q/Qmax), in which it runs straight through the crest. Relative error of the discharge below 1e-15; the
 * discharge of a depth found is the one asked for within 1e-14.
 */
final class CircleManning implements UniformCurve {
    /** Place of the largest discharge and its part of the full-bore discharge: zero of the derivative, at 60 digits. */
    private static final double MOST = 1.075706129400464771490365;

    private static final double PER_MOST = 1 / MOST;

    private static final double CREST_AIR_ROOT = 0.2486338348644305124772035;

    /** Place of the largest hydraulic radius, and so of the largest velocity: (1 − cos(θ/2))/2 with θ = tan θ. */
    static final double FASTEST = 0.81280312733986099;

    /** Where the pieces end; thinner films are computed from the law itself, y/D below 1e-6. */
    private static final int FIRST_OCTAVE = -22;

    private static final int FIRST_DISCHARGE_OCTAVE = -47;

    /** Q/Qfull = c x^(13/6) in the limit of thin films: (16/(3π))^(5/3) (2/π)^(−2/3). */
    private static final double FILM_FACTOR = Math.pow(16 / (3 * Math.PI), 5.0 / 3) * Math.pow(Math.PI / 2, 2.0 / 3);

    private static final CrestPieces DISCHARGE = CrestPieces.read("circle-manning.doubles", FIRST_OCTAVE);
    private static final CrestPieces DEPTH = CrestPieces.read("circle-manning-depth.doubles", FIRST_DISCHARGE_OCTAVE);
    private static final double[] ABOVE_CREST = Pieces.read("circle-manning-above.csv");
    private static final int BLOCK = 1024;
    private static final int ABOVE_PIECES = 34;

    private static final CircularSection UNIT = CircularSection.ofDiameter(1);

    private final double diameter;
    private final double inverse;
    private final double full;
    private final double most;
    private final double perMost;
    private final double crest;

    private CircleManning(double diameter, double full) {
        this.diameter = diameter;
        this.inverse = 1 / diameter;
        this.full = full;
        this.crest = depthUnder(CREST_AIR_ROOT);
        this.most = discharge(crest);
        this.perMost = 1 / most;
    }

    static CircleManning of(CircularSection section, Manning law, double gradient) {
        double diameter = section.diameter();
        double full = section.fullArea() * law.velocity(diameter / 4, gradient);
        return new CircleManning(diameter, full);
    }

    @Override
    public double discharge(double depth) {
        return full * ratio(depth * inverse, airRoot(depth));
    }

    /** Writes the discharge of each depth; what is not in [0, D] is left to another form. */
    void discharges(double[] depth, double[] discharge, DoubleUnaryOperator other) {
        if (depth == discharge) {
            Bulk.apply("depths", depth, "discharges", discharge, other);
            return;
        }
        for (int from = 0; from < depth.length; from += BLOCK) {
            int to = from + Math.min(BLOCK, depth.length - from);
            depthVariables(depth, discharge, from, to);
            for (int i = from; i < to; i++) {
                double v = discharge[i];
                int piece = DISCHARGE.piece(v);
                discharge[i] = DISCHARGE.isInside(piece)
                        ? full * DISCHARGE.value(piece, v)
                        : Bulk.at("depths", depth, i, other);
            }
        }
    }

    private void depthVariables(double[] depth, double[] variable, int from, int to) {
        for (int i = from; i < to; i++) {
            double d = depth[i];
            variable[i] = CrestPieces.variable(d * inverse, airRoot(d));
        }
    }

    private double airRoot(double depth) {
        return Math.sqrt((diameter - depth) * inverse);
    }

    /** Writes the lowest depth of each discharge; what is not in [0, most) is left to another form. */
    void lowestDepths(double[] discharge, double[] depth, DoubleUnaryOperator other) {
        if (discharge == depth) {
            Bulk.apply("discharges", discharge, "depths", depth, other);
            return;
        }
        for (int from = 0; from < depth.length; from += BLOCK) {
            int to = from + Math.min(BLOCK, depth.length - from);
            dischargeVariables(discharge, depth, from, to);
            for (int i = from; i < to; i++) {
                double v = depth[i];
                int piece = DEPTH.piece(v);
                depth[i] = DEPTH.isInside(piece)
                        ? diameter * DEPTH.value(piece, v)
                        : Bulk.at("discharges", discharge, i, other);
            }
        }
    }

    private void dischargeVariables(double[] discharge, double[] variable, int from, int to) {
        double part = perMost;
        for (int i = from; i < to; i++) {
            double x = discharge[i] * part;
            variable[i] = CrestPieces.variable(x, Math.sqrt(1 - x));
        }
    }

    /** y/D below the crest of a part Q/Qmax, in [0, 1] but for rounding. */
    private static double lowestOfMost(double x) {
        double v = CrestPieces.variable(x, Math.sqrt(Math.max(1 - x, 0)));
        int piece = DEPTH.piece(v);
        return piece < 0 ? filmDepth(x * MOST) : DEPTH.valueUpTo(piece, v);
    }

    /** Q/Qfull from the part of the diameter that is water, and the root of the part that is air. */
    private static double ratio(double x, double airRoot) {
        if (airRoot == 0) {
            return 1;
        }
        double v = CrestPieces.variable(x, airRoot);
        int piece = DISCHARGE.piece(v);
        return piece < 0 ? filmRatio(x) : DISCHARGE.valueUpTo(piece, v);
    }

    private static double filmRatio(double x) {
        double root = Math.cbrt(4 * UNIT.hydraulicRadius(x));
        return UNIT.area(x) / (Math.PI / 4) * (root * root);
    }

    @Override
    public double lowestDepth(double discharge) {
        if (!(discharge < most)) {
            return discharge == most ? crest : Double.NaN;
        }
        return Math.min(diameter * lowestOfMost(discharge * perMost), crest);
    }

    @Override
    public double[] depths(double discharge) {
        double lowest = lowestDepth(discharge);
        if (Double.isNaN(lowest)) {
            return new double[0];
        }
        boolean single = discharge < full || discharge == most;
        double upper = single ? Double.NaN : upperDepth(discharge / full);
        return upper > lowest ? new double[] {lowest, upper} : new double[] {lowest};
    }

    private double upperDepth(double q) {
        double s = Math.sqrt(Math.max(1 - q * PER_MOST, 0));
        // A piece further would be above full bore: s is there at its largest but for rounding.
        int fromCrest = Math.min((int) (s * 128), ABOVE_PIECES - 1);
        double t = Pieces.ten(ABOVE_CREST, ABOVE_PIECES - 1 - fromCrest, (fromCrest + 0.5) / 128 - s);
        return q == 1 ? diameter : depthUnder(Math.max(t, 0));
    }

    /** The inverse of c x^(13/6) (1 + ...), whose dots the curve itself provides; they are below 1e-6 here. */
    private static double filmDepth(double q) {
        if (q == 0) {
            return 0;
        }
        double x = Math.pow(q / FILM_FACTOR, 6.0 / 13);
        for (int i = 0; i < 2; i++) {
            x *= 1 + 6.0 / 13 * (q / filmRatio(x) - 1);
        }
        return x;
    }

    private double depthUnder(double airRoot) {
        return Math.fma(-diameter * airRoot, airRoot, diameter);
    }

    @Override
    public double depthOfMostDischarge() {
        return crest;
    }

    @Override
    public double depthOfMostVelocity() {
        return FASTEST * diameter;
    }
}
