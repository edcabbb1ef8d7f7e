package dev.runnel.verification.simulation;

import org.apache.commons.math3.util.FastMath;

/** Random processes over the steps of a record. */
final class Wanders {
    private Wanders() {}

    /**
     * A first-order autoregressive process with knots every so many minutes, straight lines between them, and a standard
     * deviation {@code sd} at the knots.
     */
    static double[] autoregressive(Grid grid, Draws draws, double knotMinutes, double correlation, double sd) {
        double[] values = new double[grid.size()];
        double fresh = FastMath.sqrt(1 - correlation * correlation);
        double last = draws.normal();
        double next = correlation * last + fresh * draws.normal();
        // No site has its knots on the hour.
        double knot = -draws.uniform(0, knotMinutes);
        for (int i = 0; i < values.length; i++) {
            double minute = (double) i * grid.minutes();
            while (minute >= knot + knotMinutes) {
                knot += knotMinutes;
                last = next;
                next = correlation * last + fresh * draws.normal();
            }
            values[i] = sd * (last + (next - last) * (minute - knot) / knotMinutes);
        }
        return values;
    }

    /** What a chain of equal linear reservoirs lets out when it is given {@code inflow}; nothing is lost. */
    static double[] routed(double[] inflow, double stepHours, double storageHours, int reservoirs) {
        double keep = FastMath.exp(-stepHours / storageHours);
        double[] flow = inflow.clone();
        for (int k = 0; k < reservoirs; k++) {
            double out = 0;
            for (int i = 0; i < flow.length; i++) {
                out = keep * out + (1 - keep) * flow[i];
                flow[i] = out;
            }
        }
        return flow;
    }
}
