package dev.runnel.rainfall.event;

import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The deepest windows of an event while its rain arrives. Holds the rain of the longest window, no more.
 *
 * <p>A deepest window can be moved until it begins with rain or, if a fraction of a step counts, ends with rain; only these
 * are tried. Depths are differences of running sums that carry their rounding (Neumaier), so that the depth of a window
 * does not depend on what fell before it. Windows whose depths differ by less than 1e-12 of them are equally deep; the
 * earliest counts.
 */
final class PeakTracker {
    static final double SAME = 1e-12;

    private final List<Duration> durations;
    private final long step;
    /** Of each duration, its whole steps, ns, and the fraction of a step that is left. */
    private final long[] whole;

    private final double[] fraction;

    private long[] times = new long[32];
    private double[] depths = new double[32];
    private double[] sums = new double[32];
    private double[] losses = new double[32];
    private int size;

    /** The running sum and what rounding took from it. */
    private double sum;

    private double lost;
    private long start;

    /** Of each duration, the first rain whose window is not over, and the first within the window that ends now. */
    private final int[] opening;

    private final int[] closing;
    private final double[] best;
    private final double[] bestDepth;
    private final long[] bestStart;

    /** Takes rain in steps of the given length, or at instants if that is 0. */
    PeakTracker(List<Duration> durations, long step) {
        this.durations = durations;
        this.step = step;
        int count = durations.size();
        this.whole = new long[count];
        this.fraction = new double[count];
        for (int i = 0; i < count; i++) {
            long length = durations.get(i).toNanos();
            whole[i] = step == 0 ? length : length / step * step;
            fraction[i] = step == 0 ? 0 : (length % step) / (double) step;
        }
        this.opening = new int[count];
        this.closing = new int[count];
        this.best = new double[count];
        this.bestDepth = new double[count];
        this.bestStart = new long[count];
    }

    List<Duration> durations() {
        return durations;
    }

    /** Takes rain that comes after all before it. */
    void add(long time, double depth) {
        if (size == 0) {
            start = time;
            Arrays.fill(bestStart, time);
        } else if (times[size - 1] == time) {
            depths[size - 1] += depth;
            addToSum(depth);
            return;
        }
        if (size == times.length) {
            makeRoom();
        }
        for (int i = 0; i < whole.length; i++) {
            int from = opening[i];
            if (from < size && time - times[from] >= whole[i]) {
                close(i, time, depth);
            }
        }
        times[size] = time;
        depths[size] = depth;
        sums[size] = sum;
        losses[size] = lost;
        size++;
        addToSum(depth);
        for (int i = 0; i < whole.length; i++) {
            if (fraction[i] > 0) {
                endWith(i, time);
            }
        }
    }

    /** Judges the windows that are over when rain comes at a time. Without fractions the first holds all others. */
    private void close(int i, long time, double depth) {
        int from = opening[i];
        if (fraction[i] == 0) {
            propose(i, times[from], from, size, 0);
        }
        while (from < size && time - times[from] >= whole[i]) {
            if (fraction[i] > 0) {
                double part = time - times[from] == whole[i] ? fraction[i] * depth : 0;
                propose(i, times[from], from, size, part);
            }
            from++;
        }
        opening[i] = from;
    }

    /** Judges the window that ends with the rain at a time and begins with a fraction of a step. */
    private void endWith(int i, long time) {
        int from = closing[i];
        while (time - times[from] > whole[i]) {
            from++;
        }
        closing[i] = from;
        boolean isCut = time - times[from] == whole[i] && whole[i] > 0;
        double part = isCut ? fraction[i] * depths[from] : 0;
        long begin = Math.max(start, time + step - durations.get(i).toNanos());
        propose(i, begin, isCut ? from + 1 : from, size, part);
    }

    /** Proposes the rain from one index to now, not beyond the running sum, and a part of a step beside it. */
    private void propose(int i, long begin, int from, int to, double part) {
        double sumBefore = from < to ? sums[from] : sum;
        double lostBefore = from < to ? losses[from] : lost;
        double value = sum - sumBefore + part;
        boolean isDeeper = value > best[i] * (1 + SAME);
        if (isDeeper || (begin < bestStart[i] && value >= best[i] * (1 - SAME))) {
            best[i] = value;
            bestDepth[i] = (sum - sumBefore) + (lost - lostBefore) + part;
            bestStart[i] = begin;
        }
    }

    private void addToSum(double depth) {
        double next = sum + depth;
        lost += sum >= depth ? (sum - next) + depth : (depth - next) + sum;
        sum = next;
    }

    /** Forgets the rain before every window, and gets more room only if that was little. */
    private void makeRoom() {
        int first = firstNeeded();
        if (first <= size / 2) {
            int room = size + size / 2 + 8;
            times = Arrays.copyOf(times, room);
            depths = Arrays.copyOf(depths, room);
            sums = Arrays.copyOf(sums, room);
            losses = Arrays.copyOf(losses, room);
        }
        if (first > 0) {
            size -= first;
            System.arraycopy(times, first, times, 0, size);
            System.arraycopy(depths, first, depths, 0, size);
            System.arraycopy(sums, first, sums, 0, size);
            System.arraycopy(losses, first, losses, 0, size);
            for (int i = 0; i < whole.length; i++) {
                opening[i] -= first;
                closing[i] = Math.max(0, closing[i] - first);
            }
        }
    }

    private int firstNeeded() {
        int first = Math.max(0, size - 1);
        for (int i = 0; i < whole.length; i++) {
            first = Math.min(first, fraction[i] > 0 ? Math.min(opening[i], closing[i]) : opening[i]);
        }
        return first;
    }

    /** Returns how much rain is held. */
    int size() {
        return size;
    }

    /** Ends the event, forgets it, and returns its peaks in the order of the durations. */
    List<PeakDepth> finish(boolean isAtLeast) {
        List<PeakDepth> peaks = new ArrayList<>(durations.size());
        for (int i = 0; i < whole.length; i++) {
            if (opening[i] < size) {
                propose(i, times[opening[i]], opening[i], size, 0);
            }
            peaks.add(new PeakDepth(
                    durations.get(i), Math.max(0, bestDepth[i]), EpochNanos.toInstant(bestStart[i]), isAtLeast));
        }
        reset();
        return List.copyOf(peaks);
    }

    /** Forgets the event. */
    void reset() {
        size = 0;
        sum = 0;
        lost = 0;
        Arrays.fill(opening, 0);
        Arrays.fill(closing, 0);
        Arrays.fill(best, 0);
        Arrays.fill(bestDepth, 0);
    }

    /** Writes what is held and what was found. */
    StateText into(StateText state) {
        int first = firstNeeded();
        return state.with("rain-start", start)
                .with("rain-times", Arrays.copyOfRange(times, first, size))
                .with("rain-depths", Arrays.copyOfRange(depths, first, size))
                .with("rain-sums", Arrays.copyOfRange(sums, first, size))
                .with("rain-losses", Arrays.copyOfRange(losses, first, size))
                .with("rain-sum", sum)
                .with("rain-lost", lost)
                .with("best", best)
                .with("best-depths", bestDepth)
                .with("best-starts", bestStart);
    }

    /** Reads what {@link #into} wrote. */
    void from(StateText state) {
        times = state.counts("rain-times");
        depths = state.numbers("rain-depths");
        sums = state.numbers("rain-sums");
        losses = state.numbers("rain-losses");
        size = times.length;
        require(
                (size > 0 || durations.isEmpty())
                        && depths.length == size
                        && sums.length == size
                        && losses.length == size,
                "rain-times");
        start = state.count("rain-start");
        sum = finite(state.number("rain-sum"), "rain-sum");
        lost = finite(state.number("rain-lost"), "rain-lost");
        for (int k = 0; k < size; k++) {
            require(times[k] > (k == 0 ? start - 1 : times[k - 1]), "rain-times");
            require(depths[k] > 0 && depths[k] < Double.POSITIVE_INFINITY, "rain-depths");
            require(sums[k] >= (k == 0 ? 0 : sums[k - 1]) && sums[k] <= sum, "rain-sums");
            finite(losses[k], "rain-losses");
        }
        copy(state.numbers("best"), best, "best");
        copy(state.numbers("best-depths"), bestDepth, "best-depths");
        long[] starts = state.counts("best-starts");
        require(starts.length == bestStart.length, "best-starts");
        System.arraycopy(starts, 0, bestStart, 0, starts.length);
        long now = size == 0 ? 0 : times[size - 1];
        for (int i = 0; i < whole.length; i++) {
            opening[i] = 0;
            while (opening[i] < size - 1 && now - times[opening[i]] >= whole[i]) {
                opening[i]++;
            }
        }
        // The next rain moves them on.
        Arrays.fill(closing, 0);
    }

    private static void copy(double[] from, double[] to, String key) {
        require(from.length == to.length, key);
        for (int i = 0; i < to.length; i++) {
            require(from[i] >= 0 && from[i] < Double.POSITIVE_INFINITY, key);
            to[i] = from[i];
        }
    }

    private static double finite(double value, String key) {
        require(Double.isFinite(value), key);
        return value;
    }

    private static void require(boolean isGood, String key) {
        if (!isGood) {
            throw new IllegalArgumentException(
                    "state must be that of a machine of the same rule, whose " + key + " this cannot be");
        }
    }
}
