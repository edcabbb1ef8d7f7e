package dev.runnel.timeseries.quality;

import dev.runnel.internal.Moments;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;

/** The values of a time just past, in a ring that grows. */
final class Recent {
    private static final int MOST = 1_000_000;

    private long[] times = new long[64];
    private double[] values = new double[64];
    private int first;
    private int size;

    /** Reads what {@link #into} wrote. */
    static Recent from(StateText text, String name) {
        long[] times = text.counts(name + "times");
        double[] values = text.numbers(name + "values");
        Require.sameLength("state: " + name + "values", times.length, values.length);
        Recent recent = new Recent();
        for (int i = 0; i < times.length; i++) {
            recent.add(times[i], Require.finite("state: " + name + "values", values[i], ""));
        }
        return recent;
    }

    /** A time before another one, but never before the first that can be counted. */
    static long before(long time, long span) {
        return time < Long.MIN_VALUE + span ? Long.MIN_VALUE : time - span;
    }

    StateText into(StateText text, String name) {
        long[] keptTimes = new long[size];
        double[] keptValues = new double[size];
        for (int i = 0; i < size; i++) {
            keptTimes[i] = time(i);
            keptValues[i] = value(i);
        }
        return text.with(name + "times", keptTimes).with(name + "values", keptValues);
    }

    void add(long time, double value) {
        if (size == MOST) {
            throw new IllegalArgumentException("window must hold at most " + MOST + " readings, had more");
        }
        if (size == times.length) {
            long[] moreTimes = new long[2 * size];
            double[] moreValues = new double[2 * size];
            for (int i = 0; i < size; i++) {
                moreTimes[i] = time(i);
                moreValues[i] = value(i);
            }
            times = moreTimes;
            values = moreValues;
            first = 0;
        }
        int at = (first + size++) & (times.length - 1);
        times[at] = time;
        values[at] = value;
    }

    /** Forgets what is older than a time. */
    void dropBefore(long time) {
        while (size > 0 && times[first] < time) {
            dropFirst();
        }
    }

    void dropFirst() {
        first = (first + 1) & (times.length - 1);
        size--;
    }

    void clear() {
        first = 0;
        size = 0;
    }

    int size() {
        return size;
    }

    long time(int index) {
        return times[(first + index) & (times.length - 1)];
    }

    double value(int index) {
        return values[(first + index) & (times.length - 1)];
    }

    double range() {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < size; i++) {
            least = Math.min(least, value(i));
            most = Math.max(most, value(i));
        }
        return most - least;
    }

    /** The standard deviation of the sample, divisor n − 1; of 2 values or more. */
    double standardDeviation() {
        double[] sample = new double[size];
        for (int i = 0; i < size; i++) {
            sample[i] = value(i);
        }
        return Moments.deviation(sample);
    }
}
