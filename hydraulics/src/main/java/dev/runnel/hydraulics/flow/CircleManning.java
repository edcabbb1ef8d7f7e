package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Bulk;
import dev.runnel.hydraulics.section.CircularSection;
import java.util.function.DoubleUnaryOperator;

/**
 * Uniform flow by Manning's law in a circle. Depth over diameter and discharge over that of the full bore are then one
 * curve for all pipes, and so is its inverse; both are piecewise polynomials, computed once for all.
 *
 * <p>The variables are those in which the curve is tame: a part of an octave for small values, where it is a power law over
 * any number of decades; t = √(1 − y/D) near the soffit, where the round crown is smooth in t only; and for the inverse
 * s = ±√(1 − Q/Qmax), in which the depth runs straight through the crest. Relative error of the discharge below 1e-15; the
 * discharge of a depth found is the one asked for within 1e-14.
 */
final class CircleManning implements UniformCurve {
    /** Place of the largest discharge and its part of the full-bore discharge: zero of the derivative, at 60 digits. */
    private static final double MOST = 1.075706129400464771490365;

    private static final double PER_MOST = 1 / MOST;

    private static final double CREST_AIR_ROOT = 0.2486338348644305124772035;

    /** Place of the largest hydraulic radius, and so of the largest velocity: (1 − cos(θ/2))/2 with θ = tan θ. */
    static final double FASTEST = 0.81280312733986099;

    /** Below these the pieces end; such films are computed from the law itself. */
    private static final int FIRST_OCTAVE = -20;

    private static final double FILM = 0x1p-20;
    private static final int FIRST_DISCHARGE_OCTAVE = -44;
    private static final double FILM_DISCHARGE = 0x1p-44;

    /** Q/Qfull = c x^(13/6) in the limit of thin films: (16/(3π))^(5/3) (2/π)^(−2/3). */
    private static final double FILM_FACTOR = Math.pow(16 / (3 * Math.PI), 5.0 / 3) * Math.pow(Math.PI / 2, 2.0 / 3);

    private static final ChosenPieces DISCHARGE =
            ChosenPieces.read("circle-manning.csv", FIRST_OCTAVE, "circle-manning-air.csv");
    private static final ChosenPieces DEPTH =
            ChosenPieces.read("circle-manning-depth.csv", FIRST_DISCHARGE_OCTAVE, "circle-manning-crest.csv");
    private static final double[] ABOVE_CREST = Pieces.read("circle-manning-above.csv");
    private static final int BLOCK = 1024;
    private static final int ABOVE_PIECES = 34;

    private static final CircularSection UNIT = CircularSection.ofDiameter(1);

    private final double diameter;
    private final double inverse;
    private final double full;
    private final double perFull;
    private final double most;
    private final double crest;

    private CircleManning(double diameter, double full) {
        this.diameter = diameter;
        this.inverse = 1 / diameter;
        this.full = full;
        this.perFull = 1 / full;
        this.crest = depthUnder(CREST_AIR_ROOT);
        this.most = discharge(crest);
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
        boolean apart = depth != discharge;
        for (int from = 0; from < depth.length; from += BLOCK) {
            int to = from + Math.min(BLOCK, depth.length - from);
            if (apart) {
                airRoots(depth, discharge, from, to);
            }
            for (int i = from; i < to; i++) {
                double d = depth[i];
                discharge[i] = d >= 0 && d <= diameter
                        ? full * ratio(d * inverse, apart ? discharge[i] : airRoot(d))
                        : Bulk.at("depths", depth, i, other);
            }
        }
    }

    /** Roots in a loop of their own become vectors; in the other one each would wait for the one before. */
    private void airRoots(double[] depth, double[] root, int from, int to) {
        for (int i = from; i < to; i++) {
            root[i] = airRoot(depth[i]);
        }
    }

    private double airRoot(double depth) {
        return Math.sqrt((diameter - depth) * inverse);
    }

    /** Writes the lowest depth of each discharge; what is not in [0, most) is left to another form. */
    void lowestDepths(double[] discharge, double[] depth, DoubleUnaryOperator other) {
        boolean apart = depth != discharge;
        for (int from = 0; from < depth.length; from += BLOCK) {
            int to = from + Math.min(BLOCK, depth.length - from);
            if (apart) {
                crestRoots(discharge, depth, from, to);
            }
            for (int i = from; i < to; i++) {
                double q = discharge[i];
                depth[i] = q >= 0 && q < most
                        ? lowestDepth(q * perFull, apart ? depth[i] : crestRoot(q * perFull))
                        : Bulk.at("discharges", discharge, i, other);
            }
        }
    }

    private void crestRoots(double[] discharge, double[] root, int from, int to) {
        double part = perFull;
        for (int i = from; i < to; i++) {
            root[i] = crestRoot(discharge[i] * part);
        }
    }

    /** s of a part Q/Qfull. */
    private static double crestRoot(double q) {
        return Math.sqrt(Math.max(1 - q * PER_MOST, 0));
    }

    /** y/D below the crest of a part Q/Qfull of the full-bore discharge, in [0, 1]; a start for other laws. */
    static double lowestPart(double q) {
        if (q < FILM_DISCHARGE) {
            return filmDepth(q);
        }
        double value = DEPTH.value(q, crestRoot(q));
        return q < 0.5 ? value : 1 - value * value;
    }

    /** Q/Qfull from the part of the diameter that is water, and the root of the part that is air. */
    private static double ratio(double x, double airRoot) {
        if (x < FILM) {
            return filmRatio(x);
        }
        return airRoot == 0 ? 1 : DISCHARGE.value(x, airRoot);
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
        double q = discharge * perFull;
        return lowestDepth(q, crestRoot(q));
    }

    private double lowestDepth(double q, double s) {
        if (q < FILM_DISCHARGE) {
            return diameter * filmDepth(q);
        }
        double value = DEPTH.value(q, s);
        // Which one it is changes at random from one discharge to the next: both, and a choice without a jump.
        return ChosenPieces.choose(q, diameter * value, depthUnder(Math.max(value, CREST_AIR_ROOT)));
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
