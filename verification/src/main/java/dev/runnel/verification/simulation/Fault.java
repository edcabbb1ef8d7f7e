package dev.runnel.verification.simulation;

import org.apache.commons.math3.util.FastMath;

/**
 * One fault of one site.
 *
 * @param kind what
 * @param severity how much; as a share of the usual depth (obstruction, sediment, offset, drift over its ramp), of the
 *     flow, of the velocity or of the readings; hours for clocks; the factor of a unit
 * @param begin days from the start of the record
 * @param ramp days until it is fully there; 0 for a step
 * @param end days from the start of the record; infinite if it stays to the end
 * @param period days from one clearing to the next, for the recurring one; else 0
 */
record Fault(FaultKind kind, double severity, double begin, double ramp, double end, double period) {
    static final Fault NONE = new Fault(FaultKind.NONE, 0, Double.POSITIVE_INFINITY, 0, Double.POSITIVE_INFINITY, 0);
    private static final double HOUR = 1 / 24.0;

    boolean isNone() {
        return kind == FaultKind.NONE;
    }

    /** From 0, not there, to 1, fully there. */
    double strength(double day) {
        if (day < begin || day >= end) {
            return 0;
        }
        if (kind == FaultKind.RECURRING) {
            // Each cycle is a little longer or shorter than the one before; never the same by chance alone.
            double cycle = (day - begin) / period;
            double wobble = 0.1 * FastMath.sin(2.4 * FastMath.floor(cycle) + 1);
            double within = (cycle - FastMath.floor(cycle)) / (1 - FastMath.abs(wobble));
            return within >= 1 ? 0 : FastMath.min(1, within / 0.7);
        }
        double grown = ramp > 0 ? FastMath.min(1, (day - begin) / ramp) : 1;
        double left = end - day;
        return kind == FaultKind.BLOCKAGE_RELEASED && left < HOUR ? grown * left / HOUR : grown;
    }
}
