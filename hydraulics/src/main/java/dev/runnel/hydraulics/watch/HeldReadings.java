package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.Arrays;

/**
 * Readings whose stamps leap ahead, held until more of them say the same: a single false stamp must not make the watch deaf
 * until that time comes.
 */
final class HeldReadings {
    /** A stamp so far ahead of the last is held; chosen here, as are all limits of this class. */
    private static final long LEAP = 3 * SiteHour.NANOS;

    /** Readings, and the time they span, that confirm a leap. */
    private static final int LEAST = 4;

    private static final long LEAST_SPAN = SiteHour.NANOS;

    /** So many are enough whatever they span. */
    private static final int MOST = 3600;

    private long[] times = new long[16];
    private double[] values = new double[48];
    private int count;

    /** Takes a held reading. */
    interface Taker {
        void take(long time, double depth, double velocity, double rain);
    }

    static boolean leaps(long last, long time) {
        return time - last > LEAP;
    }

    /** Whether a stamp goes so far back behind the first of those held that they cannot have been the begin of a record. */
    boolean leapsBack(long time) {
        return first() - time > LEAP;
    }

    boolean isEmpty() {
        return count == 0;
    }

    int count() {
        return count;
    }

    long first() {
        return times[0];
    }

    long last() {
        return times[count - 1];
    }

    void add(long time, double depth, double velocity, double rain) {
        if (count == times.length) {
            times = Arrays.copyOf(times, 2 * count);
            values = Arrays.copyOf(values, 6 * count);
        }
        times[count] = time;
        values[3 * count] = depth;
        values[3 * count + 1] = velocity;
        values[3 * count + 2] = rain;
        count++;
    }

    boolean isConfirmed() {
        return count >= MOST || count >= LEAST && last() - first() >= LEAST_SPAN;
    }

    /** Gives all that is held, in order, and holds nothing any more. */
    void give(Taker taker) {
        for (int i = 0; i < count; i++) {
            taker.take(times[i], values[3 * i], values[3 * i + 1], values[3 * i + 2]);
        }
        count = 0;
    }

    void drop() {
        count = 0;
    }

    void write(StateText text) {
        text.with("heldTimes", Arrays.copyOf(times, count)).with("heldValues", Arrays.copyOf(values, 3 * count));
    }

    void read(StateText text) {
        long[] found = text.counts("heldTimes");
        double[] with = text.numbers("heldValues");
        if (with.length != 3 * found.length) {
            throw new IllegalArgumentException(
                    "state heldValues must hold " + 3 * found.length + " values, was " + with.length + " values");
        }
        for (int i = 0; i < found.length; i++) {
            add(found[i], with[3 * i], with[3 * i + 1], with[3 * i + 2]);
        }
    }
}
