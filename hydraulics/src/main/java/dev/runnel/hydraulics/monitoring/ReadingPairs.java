package dev.runnel.hydraulics.monitoring;

import dev.runnel.internal.QualityCodes;
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
        QualityCodes depthQualities,
        QualityCodes velocityQualities,
        int depthsAlone,
        int velocitiesAlone) {
    /** Pairs readings of the same instant; every instant of either record is kept. */
    static ReadingPairs atSameInstants(Series depth, Series velocity) {
        if (depth.hasTimesOf(velocity)) {
            // As a monitor with one clock delivers them: nothing is to be merged.
            return of(depth, velocity, 0, 0);
        }
        long[] times = union(depth, velocity);
        Column depths = Column.of(depth, times);
        Column velocities = Column.of(velocity, times);
        Object clock = SeriesArrays.keeper().ofRightReadings(times, depths.values, depths.qualities);
        return new ReadingPairs(
                (Series) clock,
                depths.values,
                velocities.values,
                QualityCodes.of(depths.qualities, depths.values),
                QualityCodes.of(velocities.qualities, velocities.values),
                times.length - velocity.size(),
                times.length - depth.size());
    }

    /** Every instant of either record, once. */
    private static long[] union(Series depth, Series velocity) {
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        long[] ofDepth = keeper.times(depth);
        long[] ofVelocity = keeper.times(velocity);
        long[] times = new long[Math.addExact(ofDepth.length, ofVelocity.length) - common(ofDepth, ofVelocity)];
        int d = 0;
        int v = 0;
        for (int i = 0; i < times.length; i++) {
            boolean takeDepth = v == ofVelocity.length || d < ofDepth.length && ofDepth[d] <= ofVelocity[v];
            boolean takeVelocity = d == ofDepth.length || v < ofVelocity.length && ofVelocity[v] <= ofDepth[d];
            times[i] = takeDepth ? ofDepth[d] : ofVelocity[v];
            d += takeDepth ? 1 : 0;
            v += takeVelocity ? 1 : 0;
        }
        return times;
    }

    /** How many instants two records share. */
    private static int common(long[] one, long[] other) {
        int common = 0;
        int next = 0;
        for (long time : one) {
            while (next < other.length && other[next] < time) {
                next++;
            }
            common += next < other.length && other[next] == time ? 1 : 0;
        }
        return common;
    }

    /** The readings of a record at instants among which all its own are; missing at the others. */
    private record Column(double[] values, byte[] qualities) {
        static Column of(Series series, long[] times) {
            SeriesArrays.Keeper keeper = SeriesArrays.keeper();
            long[] ownTimes = keeper.times(series);
            double[] ownValues = keeper.values(series);
            byte[] ownQualities = keeper.qualities(series);
            double[] values = new double[times.length];
            byte[] qualities = new byte[times.length];
            byte missing = Quality.MISSING.toCode();
            int next = 0;
            for (int i = 0; i < times.length; i++) {
                boolean isThere = next < ownTimes.length && ownTimes[next] == times[i];
                values[i] = isThere ? ownValues[next] : Double.NaN;
                qualities[i] = isThere ? ownQualities[next] : missing;
                next += isThere ? 1 : 0;
            }
            return new Column(values, qualities);
        }
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
                keeper.codes(depth),
                keeper.codes(velocity),
                depthsAlone,
                velocitiesAlone);
    }

    /** The pairs from one position to another, as if there were no others; counts of readings alone are for the whole only. */
    ReadingPairs between(int from, int to) {
        double[] someDepths = Arrays.copyOfRange(depths, from, to);
        double[] someVelocities = Arrays.copyOfRange(velocities, from, to);
        return new ReadingPairs(
                Series.of(Arrays.copyOfRange(clock.toEpochNanos(), from, to), someDepths),
                someDepths,
                someVelocities,
                depthQualities.between(from, to, someDepths),
                velocityQualities.between(from, to, someVelocities),
                0,
                0);
    }

    int size() {
        return depths.length;
    }
}
