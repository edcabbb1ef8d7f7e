package dev.runnel.rainfall.event;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;

/**
 * Finds the deepest window by prefix sums. A window that is deepest can be moved until it begins with a wet step or ends
 * with one, so only these are tried; the depth of the winner is then summed anew, free of the rounding of long prefixes.
 */
final class WindowSearch {
    private final double[] depths;
    private final double[] prefix;
    private final int[] wet;
    private final long start;
    private final long step;

    /** Takes depths in mm, NaN for missing, in steps of the given length from the given start. */
    WindowSearch(double[] depths, long start, long step) {
        this.depths = depths;
        this.start = start;
        this.step = step;
        this.prefix = new double[depths.length + 1];
        int count = 0;
        for (int i = 0; i < depths.length; i++) {
            prefix[i + 1] = prefix[i] + depth(i);
            if (depths[i] > 0) {
                count++;
            }
        }
        this.wet = new int[count];
        for (int i = 0, at = 0; i < depths.length; i++) {
            if (depths[i] > 0) {
                wet[at++] = i;
            }
        }
    }

    PeakDepth peak(Duration duration) {
        long window = duration.toNanos();
        if (window / step >= depths.length) {
            return new PeakDepth(duration, CompensatedSum.of(depths, 0, depths.length), EpochNanos.toInstant(start));
        }
        int whole = (int) (window / step);
        double fraction = (window % step) / (double) step;
        double best = 0;
        int first = 0;
        boolean fractionBefore = false;
        for (int i : wet) {
            double after = sum(i, i + whole) + fraction * depth(i + whole);
            if (after > best) {
                best = after;
                first = i;
                fractionBefore = false;
            }
            if (fraction > 0) {
                double before = sum(i + 1 - whole, i + 1) + fraction * depth(i - whole);
                if (before > best) {
                    best = before;
                    first = i + 1 - whole;
                    fractionBefore = true;
                }
            }
        }
        return found(duration, first, whole, fractionBefore, fraction);
    }

    private PeakDepth found(Duration duration, int first, int whole, boolean fractionBefore, double fraction) {
        CompensatedSum sum = new CompensatedSum();
        for (int i = Math.max(0, first); i < Math.min(depths.length, first + whole); i++) {
            sum.add(depth(i));
        }
        sum.add(fraction * depth(fractionBefore ? first - 1 : first + whole));
        long at = start + step * first;
        if (fractionBefore) {
            at = Math.max(start, at - duration.toNanos() % step);
        }
        return new PeakDepth(duration, sum.value(), EpochNanos.toInstant(Math.max(start, at)));
    }

    private double sum(int from, int to) {
        return prefix[Math.min(depths.length, to)] - prefix[Math.max(0, from)];
    }

    private double depth(int index) {
        return index < 0 || index >= depths.length || Double.isNaN(depths[index]) ? 0 : depths[index];
    }
}
