package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;

/** The one check of a sample: large enough, finite, not all equal. */
final class Samples {
    private Samples() {}

    /** Compares the values themselves: a deviation from their rounded mean need not be 0 where they are all equal. */
    static void check(double[] sample, int smallest) {
        int n = sample.length;
        if (n < smallest) {
            throw new IllegalArgumentException("sample must have at least " + smallest + " values, had " + n);
        }
        for (int i = 0; i < n; i++) {
            if (!Double.isFinite(sample[i])) {
                throw new IllegalArgumentException("sample[" + i + "] must be finite, was " + Text.number(sample[i]));
            }
        }
        if (areAllEqual(sample)) {
            throw new IllegalArgumentException(
                    "sample must not be all equal, was " + n + " times " + Text.number(sample[0]));
        }
    }

    static boolean areAllEqual(double[] sample) {
        for (double value : sample) {
            if (value != sample[0]) {
                return false;
            }
        }
        return true;
    }
}
