package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvInstants;
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
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Tips {
    /** Tips in one reading: years of the heaviest rain; chosen here. */
    private static final int MOST_IN_A_READING = 1_000_000;

    /** How far a count may lie from a whole number, as depths are written with few digits; chosen here. */
    private static final double OFF_WHOLE = 0.05;

    /** What a quotient of decimals may be off by rounding, as a share; 0.95 of 1 mm is a tip within 5 %. */
    private static final double ROUNDING = 4 * Math.ulp(1.0);

    private static final Tips NONE = new Tips(new long[0]);

    /** Tips that counts or depths may stand for: 20 km of rain in tips of 0.2 mm, 800 MB (chosen here). */
    private static final int MOST_TIPS = 100_000_000;

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
        Objects.requireNonNull(times, "times");
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

    /**
     * Returns the tips of a file.
     *
     * @param lines instants read from it, one a tip; what became of its lines is in their report
     * @return the tips
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public static Tips from(CsvInstants lines) {
        return new Tips(lines.toEpochNanos());
    }

    /**
     * Returns the tips of a record that says how many there were at, or since the reading before, each reading. They stand at the
     * time of the reading: give {@link TipChecks#withClock} the time from reading to reading, and for a record in equal
     * steps take {@link TippingBucket#depthOfCounts} instead.
     *
     * @param counts number of tips of each reading; whole numbers, 0 or greater
     * @return the tips
     * @throws IllegalArgumentException if a number is negative, not whole, above 1 000 000, missing or suspect
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public static Tips ofCounts(Series counts) {
        Objects.requireNonNull(counts, "counts");
        return counted(counts, 1, "counts", "");
    }

    /**
     * Returns the tips of a record that says what depth fell at, or since the reading before, each reading: 0.4 mm are two tips of
     * 0.2 mm.
     *
     * @param depthsMm depth of each reading, mm; 0 or greater, whole tips within 5 % of a tip, for rounding in the file
     * @param bucket the gauge; the depth of a tip is the nominal one that the logger counts with
     * @return the tips, at the times of the readings; as for {@link #ofCounts}
     * @throws IllegalArgumentException if a depth is negative, no whole number of tips or of more than 1 000 000, missing or
     *     suspect
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public static Tips ofDepths(Series depthsMm, TippingBucket bucket) {
        Objects.requireNonNull(depthsMm, "depthsMm");
        return counted(depthsMm, bucket.tipMm(), "depthsMm", " tips of " + Text.number(bucket.tipMm()) + " mm");
    }

    private static Tips counted(Series readings, double unit, String name, String what) {
        double[] values = readings.toUsableValues();
        int[] counts = new int[values.length];
        long total = 0;
        for (int i = 0; i < values.length; i++) {
            double count = Math.rint(values[i] / unit);
            double allowed = OFF_WHOLE + ROUNDING * Math.max(1, count);
            if (!(count >= 0 && count <= MOST_IN_A_READING && Math.abs(values[i] / unit - count) <= allowed)) {
                throw new IllegalArgumentException(name + " must be whole numbers from 0 to " + MOST_IN_A_READING + what
                        + ", was "
                        + (Double.isNaN(values[i]) ? "missing or suspect" : Text.number(values[i])) + " at index " + i
                        + ", " + readings.time(i));
            }
            counts[i] = (int) count;
            total += counts[i];
        }
        if (total > MOST_TIPS) {
            throw new IllegalArgumentException(
                    name + " must be at most " + MOST_TIPS + what + " together, were " + total);
        }
        long[] tips = new long[(int) total];
        int size = 0;
        for (int i = 0; i < counts.length; i++) {
            Arrays.fill(tips, size, size + counts[i], readings.epochNanos(i));
            size += counts[i];
        }
        return new Tips(tips);
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
     * Returns all instants.
     *
     * @return instants in order of time; a new list
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public List<Instant> toInstants() {
        return Arrays.stream(times).mapToObj(EpochNanos::toInstant).toList();
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

    /** Instant of the tips after those at the instant of the given one; the greatest long if there are none. */
    long followingInstant(int index) {
        int next = endOfInstant(index);
        return next < times.length ? times[next] : Long.MAX_VALUE;
    }

    /** All instants, not to be changed. */
    long[] times() {
        return times;
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
