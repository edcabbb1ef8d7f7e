package dev.runnel.rainfall.event;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * The deepest windows of the events of a whole record, from its steps: what {@link PeakTracker} finds while the rain arrives, bit for
 * bit, for durations of whole steps. The arrays are used again for the next event.
 */
final class EventPeaks {
    private final RegularSeries rain;
    private final long start;
    private final long step;
    private final List<Duration> durations;
    private final int[] windows;

    private double[] depths = new double[256];
    private double[] sums = new double[256];
    private double[] losses = new double[256];

    private EventPeaks(RegularSeries rain, List<Duration> durations) {
        this.rain = rain;
        this.start = EpochNanos.of(rain.start());
        this.step = rain.step().toNanos();
        this.durations = durations;
        this.windows = durations.stream()
                .mapToInt(duration -> (int) Math.min(Integer.MAX_VALUE, duration.toNanos() / step))
                .toArray();
    }

    /** Whether all durations are whole numbers of steps. */
    static boolean canMeasure(List<Duration> durations, long step) {
        return durations.stream().allMatch(duration -> duration.toNanos() % step == 0);
    }

    /** Takes a record, mm in each step, NaN for missing. */
    static EventPeaks of(RegularSeries rain, List<Duration> durations) {
        return new EventPeaks(rain, durations);
    }

    /** Returns the peaks of the event from one step to another, the latter not included, both ends wet. */
    List<PeakDepth> between(int from, int to, boolean isAtLeast) {
        int size = to - from;
        if (size >= sums.length) {
            depths = new double[2 * size];
            sums = new double[2 * size];
            losses = new double[2 * size];
        }
        double sum = 0;
        double lost = 0;
        for (int i = 0; i < size; i++) {
            double value = rain.value(from + i);
            double depth = value > 0 ? value : 0;
            depths[i] = depth;
            double next = sum + depth;
            lost += sum >= depth ? (sum - next) + depth : (depth - next) + sum;
            sum = next;
            sums[i + 1] = sum;
            losses[i + 1] = lost;
        }
        List<PeakDepth> peaks = new ArrayList<>(windows.length);
        for (int k = 0; k < windows.length; k++) {
            int window = Math.min(windows[k], size);
            int at = deepest(size, window);
            int end = Math.min(size, at + window);
            double depth = (sums[end] - sums[at]) + (losses[end] - losses[at]);
            peaks.add(new PeakDepth(
                    durations.get(k),
                    Math.max(0, depth),
                    EpochNanos.toInstant(start + step * (from + (long) at)),
                    isAtLeast));
        }
        return List.copyOf(peaks);
    }

    private int deepest(int size, int window) {
        double limit = 0;
        int best = 0;
        int last = size - window;
        for (int i = 0; i < last; i++) {
            double depth = sums[i + window] - sums[i];
            if (depth > limit && depths[i] > 0) {
                limit = depth * (1 + PeakTracker.SAME);
                best = i;
            }
        }
        // Of the windows that reach to the end of the event or beyond, the first that begins with rain holds all
        // others.
        int first = last;
        while (!(depths[first] > 0)) {
            first++;
        }
        return sums[size] - sums[first] > limit ? first : best;
    }
}
