package dev.runnel.hydraulics.evidence;

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
        return Arrays.stream(values).filter(x -> !Double.isNaN(x)).toArray();
    }

    /** Quantile of sorted values by linear interpolation; NaN of none. */
    static double quantile(double[] sorted, double probability) {
        if (sorted.length == 0) {
            return Double.NaN;
        }
        double at = probability * (sorted.length - 1);
        int below = (int) at;
        int next = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (at - below) * (sorted[next] - sorted[below]);
    }

    /** Median distance from the median over 0.6745; NaN of none. */
    static double scatter(double... values) {
        double[] known = known(values);
        double middle = of(known);
        return of(Arrays.stream(known).map(x -> Math.abs(x - middle)).toArray()) / NORMAL_MAD;
    }

    /** Variance with divisor n - 1; NaN of fewer than two. */
    static double variance(double... values) {
        double[] known = known(values);
        if (known.length < 2) {
            return Double.NaN;
        }
        double mean = Arrays.stream(known).average().orElseThrow();
        return Arrays.stream(known).map(x -> (x - mean) * (x - mean)).sum() / (known.length - 1);
    }
}
