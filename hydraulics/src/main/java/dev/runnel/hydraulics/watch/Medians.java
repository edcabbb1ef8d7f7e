package dev.runnel.hydraulics.watch;

import dev.runnel.internal.Interpolation;
import dev.runnel.internal.Moments;
import java.util.Arrays;

/** Medians and scatters of small arrays that may hold missing values. */
final class Medians {
    private static final double NORMAL_MAD = 0.6744897501960817;

    private Medians() {}

    /** Median of the values that are not NaN; NaN if there are none. */
    static double of(double... values) {
        double[] sorted = known(values);
        Arrays.sort(sorted);
        return quantile(sorted, 0.5);
    }

    static double[] known(double... values) {
        double[] known = new double[values.length];
        int used = 0;
        for (double each : values) {
            if (!Double.isNaN(each)) {
                known[used++] = each;
            }
        }
        return used == known.length ? known : Arrays.copyOf(known, used);
    }

    /** Quantile of sorted values by linear interpolation; NaN of none. */
    static double quantile(double[] sorted, double probability) {
        if (sorted.length == 0) {
            return Double.NaN;
        }
        return Interpolation.ranked(sorted, probability * (sorted.length - 1));
    }

    /** Median distance from the median over 0.6745; NaN of none. */
    static double scatter(double... values) {
        double[] known = known(values);
        double middle = of(known);
        for (int i = 0; i < known.length; i++) {
            known[i] = Math.abs(known[i] - middle);
        }
        return of(known) / NORMAL_MAD;
    }

    /** Variance with divisor n - 1; NaN of fewer than two. */
    static double variance(double... values) {
        double[] known = known(values);
        return known.length < 2 ? Double.NaN : Moments.variance(known);
    }
}
