package dev.runnel.hydraulics.monitoring;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import java.util.Arrays;

/** Depth and velocity readings of the same instant side by side; missing where a record has none at that instant. */
final class ReadingPairs {
    final long[] times;
    final double[] depths;
    final double[] velocities;
    final byte[] depthQualities;
    final byte[] velocityQualities;
    final int depthsAlone;
    final int velocitiesAlone;

    ReadingPairs(Series depth, Series velocity) {
        int capacity = Math.addExact(depth.size(), velocity.size());
        long[] time = new long[capacity];
        int[] depthIndex = new int[capacity];
        int[] velocityIndex = new int[capacity];
        int size = 0;
        int d = 0;
        int v = 0;
        int depthOnly = 0;
        int velocityOnly = 0;
        while (d < depth.size() || v < velocity.size()) {
            long atDepth = d < depth.size() ? depth.epochNanos(d) : Long.MAX_VALUE;
            long atVelocity = v < velocity.size() ? velocity.epochNanos(v) : Long.MAX_VALUE;
            boolean takeDepth = v == velocity.size() || d < depth.size() && atDepth <= atVelocity;
            boolean takeVelocity = d == depth.size() || v < velocity.size() && atVelocity <= atDepth;
            time[size] = takeDepth ? atDepth : atVelocity;
            depthIndex[size] = takeDepth ? d++ : -1;
            velocityIndex[size] = takeVelocity ? v++ : -1;
            depthOnly += takeVelocity ? 0 : 1;
            velocityOnly += takeDepth ? 0 : 1;
            size++;
        }
        times = Arrays.copyOf(time, size);
        depths = new double[size];
        velocities = new double[size];
        depthQualities = new byte[size];
        velocityQualities = new byte[size];
        depthsAlone = depthOnly;
        velocitiesAlone = velocityOnly;
        for (int i = 0; i < size; i++) {
            depths[i] = depthIndex[i] < 0 ? Double.NaN : depth.value(depthIndex[i]);
            velocities[i] = velocityIndex[i] < 0 ? Double.NaN : velocity.value(velocityIndex[i]);
            depthQualities[i] = qualityOf(depth, depthIndex[i]);
            velocityQualities[i] = qualityOf(velocity, velocityIndex[i]);
        }
    }

    int size() {
        return times.length;
    }

    private static byte qualityOf(Series series, int index) {
        return (index < 0 ? Quality.MISSING : series.quality(index)).toCode();
    }
}
