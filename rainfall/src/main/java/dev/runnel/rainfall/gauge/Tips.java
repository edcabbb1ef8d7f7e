package dev.runnel.rainfall.gauge;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The instants at which a bucket tipped, in order. Immutable and thread-safe.
 *
 * <p>Tips at one and the same instant are kept: a logger with a coarse clock writes them in heavy rain. They are
 * {@linkplain #coincident() counted}, since a bouncing switch writes them too.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Tips {
    private static final Tips NONE = new Tips(new long[0]);

    private final long[] times;

    private Tips(long[] times) {
        this.times = times;
    }

    /**
     * Returns a record without tips.
     *
     * @return no tips
     */
    public static Tips none() {
        return NONE;
    }

    /**
     * Returns the tips at the given instants.
     *
     * @param times instants, none before the one it follows
     * @return the tips
     * @throws IllegalArgumentException if an instant lies before the one it follows, or outside 1677 to 2262
     */
    public static Tips of(Instant... times) {
        return of(Arrays.asList(times));
    }

    /**
     * Returns the tips at the given instants.
     *
     * @param times instants, none before the one it follows
     * @return the tips
     * @throws IllegalArgumentException if an instant lies before the one it follows, or outside 1677 to 2262
     */
    public static Tips of(List<Instant> times) {
        return new Tips(checked(times.stream().mapToLong(EpochNanos::of).toArray()));
    }

    /**
     * Returns the tips at the given instants, without making objects.
     *
     * @param epochNanos ns since 1970-01-01T00:00:00Z, none before the one it follows; copied
     * @return the tips
     * @throws IllegalArgumentException if an instant lies before the one it follows
     */
    public static Tips ofEpochNanos(long... epochNanos) {
        return new Tips(checked(epochNanos.clone()));
    }

    private static long[] checked(long[] times) {
        for (int i = 1; i < times.length; i++) {
            if (times[i] < times[i - 1]) {
                throw new IllegalArgumentException(
                        "tips must be in order of time, was " + EpochNanos.toInstant(times[i]) + " at index " + i
                                + " after " + EpochNanos.toInstant(times[i - 1]));
            }
        }
        return times;
    }

    /**
     * Returns the number of tips.
     *
     * @return count, coincident tips included
     */
    public int size() {
        return times.length;
    }

    /**
     * Tells whether there is no tip.
     *
     * @return true if the size is 0
     */
    public boolean isEmpty() {
        return times.length == 0;
    }

    /**
     * Returns the instant of one tip.
     *
     * @param index position, 0 to size - 1
     * @return the instant
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public Instant time(int index) {
        return EpochNanos.toInstant(times[index]);
    }

    /**
     * Returns the instant of one tip without making an object.
     *
     * @param index position, 0 to size - 1
     * @return ns since 1970-01-01T00:00:00Z
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public long epochNanos(int index) {
        return times[index];
    }

    /**
     * Returns all instants.
     *
     * @return ns since 1970-01-01T00:00:00Z; a copy
     */
    public long[] toEpochNanos() {
        return times.clone();
    }

    /**
     * Returns the number of tips at the very instant of the tip before.
     *
     * @return count; 0 if all instants differ
     */
    public int coincident() {
        int count = 0;
        for (int i = 1; i < times.length; i++) {
            if (times[i] == times[i - 1]) {
                count++;
            }
        }
        return count;
    }

    /** Index after the last tip at the instant of the given one. */
    int endOfInstant(int index) {
        int end = index + 1;
        while (end < times.length && times[end] == times[index]) {
            end++;
        }
        return end;
    }

    /**
     * Returns the tips inside an interval.
     *
     * @param interval half-open: a tip at its end is left out
     * @return the slice, possibly empty
     */
    public Tips slice(Interval interval) {
        Objects.requireNonNull(interval, "interval");
        return new Tips(Arrays.copyOfRange(times, firstAtOrAfter(interval.start()), firstAtOrAfter(interval.end())));
    }

    private int firstAtOrAfter(Instant time) {
        int low = 0;
        int high = times.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (time(middle).isBefore(time)) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Tips that && Arrays.equals(times, that.times);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(times);
    }

    @Override
    public String toString() {
        if (isEmpty()) {
            return "Tips[none]";
        }
        return "Tips[" + size() + " tips, " + time(0) + " to " + time(size() - 1) + ", " + coincident()
                + " coincident]";
    }
}
