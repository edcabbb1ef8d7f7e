package dev.runnel.rainfall.gauge;

import java.util.Arrays;

/**
 * The times in which the bucket filled and what they brought: one for each instant at which it tipped. Several tips at one
 * instant, as a coarse clock writes them, are one filling of that many buckets.
 */
record Fillings(long[] from, long[] to, double[] depths, int size) {
    static Fillings of(TippingBucket bucket, Tips tips, TipSpreading spreading, long recordStart) {
        long[] from = new long[tips.size()];
        long[] to = new long[tips.size()];
        double[] depths = bucket.tipDepths(tips);
        int size = 0;
        long previous = Long.MIN_VALUE;
        for (int i = 0; i < tips.size(); ) {
            int next = tips.endOfInstant(i);
            to[size] = tips.epochNanos(i);
            from[size] = Math.max(recordStart, spreading.start(previous, to[size]));
            depths[size] = depths[i] * (next - i);
            previous = to[size];
            size++;
            i = next;
        }
        return new Fillings(Arrays.copyOf(from, size), Arrays.copyOf(to, size), Arrays.copyOf(depths, size), size);
    }
}
