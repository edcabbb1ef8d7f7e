package dev.runnel.timeseries.change;

import java.util.Arrays;

/**
 * The last readings of an odd number, kept in order of value while the window moves: one comes, the oldest goes, and only
 * the values between the two move by a place. From the order the median is read, and the median distance from it is found
 * by halving, since the distances to the left and to the right of the median each rise.
 *
 * <p>A step costs two searches and one copy of the values between: less than a sort by the number of readings or so.
 */
final class SortedWindow {
    private final int half;
    private final double[] recent;
    private final double[] sorted;
    private int count;
    /** Place of the oldest in {@link #recent}. */
    private int oldest;

    /**
     * A window without readings.
     *
     * @param half readings on either side of the middle one
     */
    SortedWindow(int half) {
        this.half = half;
        this.recent = new double[2 * half + 1];
        this.sorted = new double[2 * half + 1];
    }

    boolean isFull() {
        return count == recent.length;
    }

    int size() {
        return count;
    }

    /** Takes a value in, finite; when the window is full the oldest goes. */
    void add(double value) {
        // -0.0 is 0.0 here.
        double x = value + 0.0;
        if (count < recent.length) {
            int at = placeOf(x, count);
            System.arraycopy(sorted, at, sorted, at + 1, count - at);
            sorted[at] = x;
            recent[count++] = x;
            return;
        }
        double gone = recent[oldest];
        recent[oldest] = x;
        oldest = oldest + 1 == recent.length ? 0 : oldest + 1;
        int from = placeOf(gone, count);
        if (x >= gone) {
            int to = placeOf(x, count) - 1;
            move(from + 1, from, to - from);
            sorted[Math.max(to, from)] = x;
        } else {
            int to = placeOf(x, count);
            move(to, to + 1, from - to);
            sorted[to] = x;
        }
    }

    /** Short ways are the rule, for which a call of the copy proper would take longer. */
    private void move(int from, int to, int length) {
        if (length > 0) {
            System.arraycopy(sorted, from, sorted, to, length);
        }
    }

    /** How many of the first values are less; without a jump that the processor would have to guess. */
    private int placeOf(double x, int size) {
        double[] values = sorted;
        int base = 0;
        int left = size;
        while (left > 1) {
            int middle = left >>> 1;
            base = values[base + middle - 1] < x ? base + middle : base;
            left -= middle;
        }
        return left == 1 && values[base] < x ? base + 1 : base;
    }

    /** The median of a full window. */
    double median() {
        return sorted[half];
    }

    /** The value in the middle of a full window by time. */
    double middle() {
        int at = oldest + half;
        return recent[at >= recent.length ? at - recent.length : at];
    }

    /** The median of the distances from the median, of a full window. */
    double medianDistance() {
        double median = sorted[half];
        // Of the half + 1 least distances one is that of the median itself; low of the others lie to the left.
        int low = 0;
        int high = half;
        while (low < high) {
            int left = (low + high) >>> 1;
            if (median - sorted[half - left - 1] < sorted[half + half - left] - median) {
                low = left + 1;
            } else {
                high = left;
            }
        }
        return Math.max(median - sorted[half - low], sorted[half + half - low] - median);
    }

    /**
     * What the median distance is at least: of the least distances, which follow each other, half or more lie to one side of
     * the median, and the farthest of these is no nearer than the one in the middle of that side.
     */
    double leastMedianDistance() {
        double median = sorted[half];
        int near = half + 1 >>> 1;
        return Math.min(median - sorted[half - near], sorted[half + near] - median);
    }

    /** The values, the oldest first. */
    double[] values() {
        double[] values = new double[count];
        System.arraycopy(recent, oldest, values, 0, count - oldest);
        System.arraycopy(recent, 0, values, count - oldest, oldest);
        return values;
    }

    @Override
    public String toString() {
        return "SortedWindow" + Arrays.toString(Arrays.copyOf(sorted, count));
    }
}
