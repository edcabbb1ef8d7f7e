package dev.runnel.rainfall.distribution;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * L-moments of a sample drawn anew from itself with replacement, without sorting what is drawn: how often each value of the
 * sorted sample comes up is enough. With R<sub>j</sub> of the n values drawn below the j-th and the gaps d<sub>j</sub> of the
 * sorted sample, summation by parts turns n b<sub>r</sub> into x<sub>n</sub> S<sub>r</sub>(n) - &Sigma; d<sub>j</sub>
 * S<sub>r</sub>(R<sub>j</sub>), where S<sub>r</sub>(R) is the sum of the weights of the R smallest ranks: a table.
 */
final class Resampling {
    /** Share of the mean below which a second L-moment is rounding; chosen here. */
    private static final double ROUNDING = 1e-13;

    private final int n;
    private final double lowest;

    /** d<sub>j</sub> between the j-th value and the one before it, 0 for the first. */
    private final double[] gaps;

    /** S<sub>0</sub> to S<sub>3</sub> over n, four in a row for each R from 0 to n. */
    private final double[] sums;

    /**
     * Prepares it.
     *
     * @param sample at least 4 finite values, not all equal; not modified
     */
    Resampling(double[] sample) {
        n = sample.length;
        double[] sorted = sample.clone();
        Arrays.sort(sorted);
        lowest = sorted[0];
        gaps = new double[n];
        for (int j = 1; j < n; j++) {
            gaps[j] = sorted[j] - sorted[j - 1];
        }
        sums = new double[4 * (n + 1)];
        for (int r = 0; r <= n; r++) {
            double product = r;
            for (int k = 0; k < 4; k++) {
                // The sum of i (i - 1) ... over i below r, with k factors, is r (r - 1) ... (r - k)/(k + 1).
                sums[4 * r + k] = product / ((k + 1.0) * n);
                product *= (r - k - 1.0) / (n - k - 1.0);
            }
        }
    }

    /** Counts one draw. Two indices come from the halves of each random number, uniform but for n/2^32. */
    int[] draw(SplittableRandom random) {
        int[] counts = new int[n];
        for (int i = 0; i < n; i += 2) {
            long bits = random.nextLong();
            counts[(int) ((bits >>> 32) * n >>> 32)]++;
            if (i + 1 < n) {
                counts[(int) ((bits & 0xffffffffL) * n >>> 32)]++;
            }
        }
        return counts;
    }

    /**
     * Returns the L-moments of a draw.
     *
     * @throws NoFitException if all values of it are equal
     */
    LMoments lMoments(int[] counts) {
        int below = 0;
        double t0 = 0;
        double t1 = 0;
        double t2 = 0;
        double t3 = 0;
        for (int j = 1; j < n; j++) {
            below += counts[j - 1];
            double gap = gaps[j];
            int at = 4 * below;
            // From the lowest value, so that what is summed is the part above each gap.
            t0 += gap * (sums[4 * n] - sums[at]);
            t1 += gap * (sums[4 * n + 1] - sums[at + 1]);
            t2 += gap * (sums[4 * n + 2] - sums[at + 2]);
            t3 += gap * (sums[4 * n + 3] - sums[at + 3]);
        }
        double l2 = 2 * t1 - t0;
        // All equal leaves rounding only.
        if (!(l2 > ROUNDING * (Math.abs(t0) + Math.abs(lowest)))) {
            throw new NoFitException("resample must not be all equal");
        }
        return LMoments.ofParts(lowest + t0, l2, 6 * t2 - 6 * t1 + t0, 20 * t3 - 30 * t2 + 12 * t1 - t0);
    }
}
