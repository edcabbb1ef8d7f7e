package dev.runnel.rainfall.gauge;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.util.Arrays;
import java.util.List;

/**
 * The times in which the bucket filled and what they brought: one for each instant at which it tipped. Several tips at one
 * instant, as a coarse clock writes them, are one filling of that many buckets.
 */
record Fillings(long[] from, long[] to, double[] depths, int size) {
    /** Fillings of tips whose gauge was at work from an instant on. */
    static Fillings of(TippingBucket bucket, Tips tips, TipSpreading spreading, long workStart) {
        long[] from = new long[tips.size()];
        long[] to = new long[tips.size()];
        double[] depths = bucket.tipDepths(tips);
        int size = 0;
        long previous = Long.MIN_VALUE;
        for (int i = 0; i < tips.size(); ) {
            int next = tips.endOfInstant(i);
            long following = next < tips.size() ? tips.epochNanos(next) : Long.MAX_VALUE;
            to[size] = tips.epochNanos(i);
            from[size] = Math.max(workStart, spreading.start(previous, to[size], following));
            depths[size] = depths[i] * (next - i);
            previous = to[size];
            size++;
            i = next;
        }
        return new Fillings(Arrays.copyOf(from, size), Arrays.copyOf(to, size), Arrays.copyOf(depths, size), size);
    }

    /** Fillings of the tips in some stretches of work; no filling reaches out of its stretch, tips outside have none. */
    static Fillings of(TippingBucket bucket, Tips tips, TipSpreading spreading, List<Interval> stretches) {
        Fillings all = new Fillings(new long[tips.size()], new long[tips.size()], new double[tips.size()], 0);
        for (Interval stretch : stretches) {
            all = all.with(of(bucket, tips.slice(stretch), spreading, EpochNanos.of(stretch.start())));
        }
        return all;
    }

    /** Fillings followed by more, in place; the arrays have room for both. */
    private Fillings with(Fillings more) {
        System.arraycopy(more.from, 0, from, size, more.size);
        System.arraycopy(more.to, 0, to, size, more.size);
        System.arraycopy(more.depths, 0, depths, size, more.size);
        return new Fillings(from, to, depths, size + more.size);
    }
}
