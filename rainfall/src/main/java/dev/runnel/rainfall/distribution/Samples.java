package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
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
        boolean differs = false;
        for (int i = 0; i < n; i++) {
            differs |= Require.finite("sample[" + i + "]", sample[i], "") != sample[0];
        }
        if (!differs) {
            throw new IllegalArgumentException(
                    "sample must not be all equal, was " + n + " times " + Text.number(sample[0]));
        }
    }
}
