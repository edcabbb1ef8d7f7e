package dev.runnel.rainfall.frequency;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;

/** The search for the greatest windows of a record that keep a separation. */
final class PeakWindows {
    /** Depths that differ by less than one of these are equal: far above rounding, far below a tip; chosen here. */
    private static final double UNITS_IN_A_MM = 1e8;

    private PeakWindows() {}

    /** Returns the greatest wet windows, the greatest first, as many at most. */
    static List<PeakDepth> greatest(RegularSeries rain, Duration duration, Duration separation, int most) {
        return greatest(rain, duration, separation, 1, most);
    }

    /** Returns the wet windows as deep as the threshold or deeper, the greatest first. */
    static List<PeakDepth> reaching(RegularSeries rain, Duration duration, Duration separation, double threshold) {
        return greatest(rain, duration, separation, Math.max(1, units(threshold)), Integer.MAX_VALUE);
    }

    private static List<PeakDepth> greatest(
            RegularSeries rain, Duration duration, Duration separation, long leastUnits, int most) {
        EpochNanos.positive("duration", duration);
        EpochNanos.nonNegative("separation", separation);
        long step = rain.step().toNanos();
        if (duration.toNanos() % step != 0) {
            throw new IllegalArgumentException("duration must be a whole number of steps of "
                    + Text.exactDuration(rain.step()) + ", was " + Text.exactDuration(duration));
        }
        int length = (int) Math.min(duration.toNanos() / step, Integer.MAX_VALUE);
        double[] depths = sums(rain, length);
        long apart = length + (separation.toNanos() + step - 1) / step;
        TreeSet<Integer> taken = new TreeSet<>();
        List<PeakDepth> windows = new ArrayList<>();
        for (int at : greatestFirst(depths, leastUnits)) {
            Integer before = taken.floor(at);
            Integer after = taken.ceiling(at);
            if ((before == null || at - before >= apart) && (after == null || after - at >= apart)) {
                taken.add(at);
                windows.add(new PeakDepth(duration, depths[at], rain.time(at)));
                if (windows.size() == most) {
                    break;
                }
            }
        }
        return windows;
    }

    private static int[] greatestFirst(double[] depths, long leastUnits) {
        return IntStream.range(0, depths.length)
                .filter(i -> units(depths[i]) >= leastUnits)
                .boxed()
                .sorted(Comparator.<Integer>comparingLong(i -> -units(depths[i]))
                        .thenComparing(i -> i))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** Tells whether a depth exceeds a threshold by more than rounding: depths of a bucket are often equal. */
    static boolean isAbove(double depth, double threshold) {
        return units(depth) > units(threshold);
    }

    private static long units(double depthMm) {
        return Math.round(depthMm * UNITS_IN_A_MM);
    }

    /**
     * Returns the depth of the window that starts at each step, missing steps without rain. Sums over 1, 2, 4, ... steps
     * are put together, so that nothing is subtracted and no digit lost.
     */
    private static double[] sums(RegularSeries rain, int length) {
        double[] power = new double[rain.size()];
        for (int i = 0; i < power.length; i++) {
            power[i] = rain.value(i) > 0 ? rain.value(i) : 0;
        }
        double[] sums = new double[Math.max(rain.size() - length + 1, 0)];
        int done = 0;
        for (int width = 1; width <= length && sums.length > 0; width *= 2) {
            if ((length & width) != 0) {
                for (int i = 0; i < sums.length; i++) {
                    sums[i] += power[i + done];
                }
                done += width;
            }
            for (int i = 0; i + width < power.length; i++) {
                power[i] += power[i + width];
            }
        }
        return sums;
    }
}
