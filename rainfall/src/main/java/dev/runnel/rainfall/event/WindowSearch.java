package dev.runnel.rainfall.event;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.Arrays;

/**
 * Finds the deepest window of a record by prefix sums. A window that is deepest can be moved until it begins with a wet
 * step or ends with one, so only these are tried; the depth of the winner is then summed anew, free of the rounding of long
 * prefixes.
 *
 * <p>Wet steps are looked at in blocks. All windows that begin in a block lie between its first step and the end of its last
 * window, and cannot be deeper than the rain between them: prefix sums of rain never fall, in floating point neither. A block
 * that cannot win is passed over. What the window of the duration before holds is known from the beginning, since rain that
 * was heavy for half an hour is often so for an hour.
 */
final class WindowSearch {
    private static final int BLOCK = 32;

    private final RegularSeries rain;
    private final int size;
    private final double[] prefix;
    private final int[] wet;
    private final long start;
    private final long step;

    /** Step in which the deepest window of the duration before begins. */
    private int hint;

    private final boolean hasMissing;

    /** Takes a record of depths, mm, NaN for missing; refuses one that is negative. */
    WindowSearch(RegularSeries rain) {
        this.rain = rain;
        this.size = rain.size();
        this.start = EpochNanos.of(rain.start());
        this.step = rain.step().toNanos();
        this.prefix = new double[size + 1];
        int[] found = new int[Math.max(16, size / 8)];
        int count = 0;
        boolean isMissing = false;
        double sum = 0;
        for (int i = 0; i < size; i++) {
            double depth = rain.value(i);
            if (depth > 0) {
                if (count == found.length) {
                    found = Arrays.copyOf(found, Math.min(size, 2 * count));
                }
                found[count++] = i;
                sum += depth;
            } else if (depth != 0) {
                isMissing = true;
                if (depth < 0) {
                    throw Rain.negative("rain", "mm", depth, i, rain.time(i));
                }
            }
            prefix[i + 1] = sum;
        }
        this.hasMissing = isMissing;
        this.wet = Arrays.copyOf(found, count);
        this.hint = count == 0 ? 0 : wet[0];
    }

    boolean hasMissing() {
        return hasMissing;
    }

    PeakDepth peak(Duration duration) {
        long window = duration.toNanos();
        if (window / step >= size) {
            return new PeakDepth(duration, depthOf(0, size), EpochNanos.toInstant(start));
        }
        int whole = (int) (window / step);
        long rest = window % step;
        if (rest == 0) {
            int first = deepest(whole);
            hint = Math.max(0, first);
            double depth = depthOf(Math.max(0, first), Math.min(size, first + whole));
            return new PeakDepth(duration, depth, EpochNanos.toInstant(start + step * Math.max(0, first)));
        }
        return peakWithFraction(duration, whole, rest / (double) step);
    }

    /** First step of the earliest deepest window of whole steps; 0 without rain. */
    private int deepest(int whole) {
        int n = size;
        double least = prefix[Math.min(n, hint + whole)] - prefix[hint];
        double best = 0;
        int first = 0;
        int inside = countUpTo(n - whole);
        for (int from = 0; from < inside; from += BLOCK) {
            int to = Math.min(inside, from + BLOCK);
            double most = prefix[wet[to - 1] + whole] - prefix[wet[from]];
            if (most <= best || most < least) {
                continue;
            }
            for (int at = from; at < to; at++) {
                int i = wet[at];
                double depth = prefix[i + whole] - prefix[i];
                if (depth > best) {
                    best = depth;
                    first = i;
                }
            }
        }
        // Of the windows that reach beyond the record the first holds all others.
        if (inside < wet.length && prefix[n] - prefix[wet[inside]] > best) {
            first = wet[inside];
        }
        return first;
    }

    /** Number of wet steps up to a step, that one included. */
    private int countUpTo(int last) {
        int found = Arrays.binarySearch(wet, last);
        return found >= 0 ? found + 1 : -found - 1;
    }

    private PeakDepth peakWithFraction(Duration duration, int whole, double fraction) {
        double best = 0;
        int first = 0;
        boolean isBefore = false;
        for (int from = 0; from < wet.length; from += BLOCK) {
            int to = Math.min(wet.length, from + BLOCK);
            if (sum(wet[from] - whole, wet[to - 1] + whole + 1) <= best) {
                continue;
            }
            for (int at = from; at < to; at++) {
                int i = wet[at];
                double after = sum(i, i + whole) + fraction * depth(i + whole);
                if (after > best) {
                    best = after;
                    first = i;
                    isBefore = false;
                }
                double before = sum(i + 1 - whole, i + 1) + fraction * depth(i - whole);
                if (before > best) {
                    best = before;
                    first = i + 1 - whole;
                    isBefore = true;
                }
            }
        }
        return found(duration, first, whole, isBefore, fraction);
    }

    private PeakDepth found(Duration duration, int first, int whole, boolean fractionBefore, double fraction) {
        CompensatedSum sum = new CompensatedSum();
        for (int i = Math.max(0, first); i < Math.min(size, first + whole); i++) {
            sum.add(depth(i));
        }
        sum.add(fraction * depth(fractionBefore ? first - 1 : first + whole));
        long at = start + step * first;
        if (fractionBefore) {
            at = Math.max(start, at - duration.toNanos() % step);
        }
        return new PeakDepth(duration, sum.value(), EpochNanos.toInstant(Math.max(start, at)));
    }

    /** The depth of whole steps, summed anew. */
    private double depthOf(int from, int to) {
        CompensatedSum sum = new CompensatedSum();
        for (int i = from; i < to; i++) {
            sum.add(depth(i));
        }
        return sum.value();
    }

    private double sum(int from, int to) {
        return prefix[Math.min(size, to)] - prefix[Math.max(0, from)];
    }

    private double depth(int index) {
        return index < 0 || index >= size || Double.isNaN(rain.value(index)) ? 0 : rain.value(index);
    }
}
