package dev.runnel.verification.simulation;

import java.util.Arrays;
import org.apache.commons.math3.util.FastMath;

/** Rain as pulses of constant intensity, which any grid can be filled with. Times in minutes from the start. */
final class Rain {
    private double[] from = new double[256];
    private double[] to = new double[256];
    private double[] depth = new double[256];
    private int size;

    /** Adds a pulse of a depth in mm. */
    void add(double start, double minutes, double mm) {
        if (!(minutes > 0 && mm > 0)) {
            return;
        }
        if (size == from.length) {
            from = Arrays.copyOf(from, 2 * size);
            to = Arrays.copyOf(to, 2 * size);
            depth = Arrays.copyOf(depth, 2 * size);
        }
        from[size] = start;
        to[size] = start + minutes;
        depth[size++] = mm;
    }

    /** Depth of each step, mm; what falls before the first or after the last step is left out. */
    double[] onto(int minutes, int steps) {
        double[] rain = new double[steps];
        for (int p = 0; p < size; p++) {
            int last = (int) FastMath.min(steps - 1L, (long) (to[p] / minutes));
            for (int i = FastMath.max(0, (int) (from[p] / minutes)); i <= last; i++) {
                double shared = FastMath.min(to[p], (i + 1.0) * minutes) - FastMath.max(from[p], (double) i * minutes);
                rain[i] += shared > 0 ? depth[p] * shared / (to[p] - from[p]) : 0;
            }
        }
        return rain;
    }

    /** What a gauge of tipping buckets would say: whole tips, nothing lost but what stays in the bucket. */
    static double[] tipped(double[] rain, double tip, double factor) {
        double[] tipped = new double[rain.length];
        double held = 0;
        for (int i = 0; i < rain.length; i++) {
            held += rain[i] * factor;
            double tips = FastMath.floor(held / tip + 1e-9);
            // Rounded, since 3 × 0.2 is not 0.6.
            tipped[i] = FastMath.rint(tips * tip * 1000) / 1000;
            held -= tips * tip;
        }
        return tipped;
    }
}
