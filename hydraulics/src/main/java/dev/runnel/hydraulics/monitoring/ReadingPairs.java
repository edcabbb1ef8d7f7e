package dev.runnel.hydraulics.monitoring;

import dev.runnel.internal.SeriesArrays;
import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import java.util.Arrays;

/**
 * Depth and velocity readings side by side; missing where one of the two has none. The arrays may be those of a series and
 * are not to be modified.
 *
 * @param clock a series with the instants of the pairs, which the results share
 */
record ReadingPairs(
        Series clock,
        double[] depths,
        double[] velocities,
        byte[] depthQualities,
        byte[] velocityQualities,
        int depthsAlone,
        int velocitiesAlone) {
    private static final int NONE = -1;

    /** Pairs readings of the same instant; every instant of either record is kept. */
    static ReadingPairs atSameInstants(Series depth, Series velocity) {
        if (depth.hasTimesOf(velocity)) {
            // As a monitor with one clock delivers them: nothing is to be merged.
            return of(depth, velocity, 0, 0);
        }
        int capacity = Math.addExact(depth.size(), velocity.size());
        long[] times = new long[capacity];
        int[] depthIndex = new int[capacity];
        int[] velocityIndex = new int[capacity];
        int size = 0;
        int d = 0;
        int v = 0;
        int depthsAlone = 0;
        int velocitiesAlone = 0;
        while (d < depth.size() || v < velocity.size()) {
            boolean takeDepth =
                    v == velocity.size() || d < depth.size() && depth.epochNanos(d) <= velocity.epochNanos(v);
            boolean takeVelocity =
                    d == depth.size() || v < velocity.size() && velocity.epochNanos(v) <= depth.epochNanos(d);
            times[size] = takeDepth ? depth.epochNanos(d) : velocity.epochNanos(v);
            depthIndex[size] = takeDepth ? d++ : NONE;
            velocityIndex[size] = takeVelocity ? v++ : NONE;
            depthsAlone += takeVelocity ? 0 : 1;
            velocitiesAlone += takeDepth ? 0 : 1;
            size++;
        }
        double[] depths = values(depth, depthIndex, size);
        return new ReadingPairs(
                Series.of(Arrays.copyOf(times, size), depths),
                depths,
                values(velocity, velocityIndex, size),
                qualities(depth, depthIndex, size),
                qualities(velocity, velocityIndex, size),
                depthsAlone,
                velocitiesAlone);
    }

    /** Gives each depth reading the velocity that the rule finds for its time. */
    static ReadingPairs atDepthTimes(Series depth, Series velocity, Alignment rule) {
        Series aligned = rule.align(depth, velocity);
        ReadingPairs same = atSameInstants(depth, velocity);
        return of(depth, aligned, same.depthsAlone, same.velocitiesAlone);
    }

    private static ReadingPairs of(Series depth, Series velocity, int depthsAlone, int velocitiesAlone) {
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        return new ReadingPairs(
                depth,
                keeper.values(depth),
                keeper.values(velocity),
                keeper.qualities(depth),
                keeper.qualities(velocity),
                depthsAlone,
                velocitiesAlone);
    }

    /** The pairs from one position to another, as if there were no others; counts of readings alone are for the whole only. */
    ReadingPairs between(int from, int to) {
        double[] someDepths = Arrays.copyOfRange(depths, from, to);
        return new ReadingPairs(
                Series.of(Arrays.copyOfRange(clock.toEpochNanos(), from, to), someDepths),
                someDepths,
                Arrays.copyOfRange(velocities, from, to),
                Arrays.copyOfRange(depthQualities, from, to),
                Arrays.copyOfRange(velocityQualities, from, to),
                0,
                0);
    }

    int size() {
        return depths.length;
    }

    private static double[] values(Series series, int[] index, int size) {
        double[] values = new double[size];
        for (int i = 0; i < size; i++) {
            values[i] = index[i] == NONE ? Double.NaN : series.value(index[i]);
        }
        return values;
    }

    private static byte[] qualities(Series series, int[] index, int size) {
        byte[] qualities = new byte[size];
        for (int i = 0; i < size; i++) {
            qualities[i] = (index[i] == NONE ? Quality.MISSING : series.quality(index[i])).toCode();
        }
        return qualities;
    }
}
