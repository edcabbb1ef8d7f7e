package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import org.apiguardian.api.API;

/**
 * How the depth of a tip is laid out in time. Immutable and thread-safe.
 *
 * <p>{@link #COUNT} puts the whole tip into the step in which it happened: simple, and in light rain a series of lone
 * spikes. {@link #INTERVAL} spreads it evenly over the time since the tip before, in which the bucket filled. Spreading
 * improves intensities over a minute or so considerably, most in light to moderate rain (Stagnaro, Colli, Lanza and
 * Chan 2016, Atmospheric Measurement Techniques 9, which takes rain as steady between tips).
 *
 * <p>{@link #SMOOTH} lets the intensity change without jumps: the running depth is a cubic between tips that keeps every tip
 * and never falls, with the slopes of Steffen (1990), A simple method for monotonic interpolation in one dimension,
 * Astronomy and Astrophysics 239, 443-450, and no intensity where a row of tips begins or ends. It was chosen because it needs
 * no parameter, conserves each tip and cannot make negative rain. It looks better than even spreading; whether it is nearer
 * to the rain depends on the rain.
 *
 * <p>The first tip of a spell, after a gap longer than a cap, 60 min by default (common practice), has no start: nobody knows
 * when the bucket began to fill, nor how much was left in it. It is taken to be as fast as the tip that follows it, so that a
 * downpour begins as one, and spread over the time to the next tip, though never over more than the cap (our choice). Only a tip
 * with no other near on either side is spread over the whole cap: it may begin an event that much before its instant, or
 * join it to the one before. A shorter cap, or {@link #COUNT}, keeps it in place.
 *
 * <p>Tips at one instant, as a logger with a coarse clock writes them, filled one after the other: their depths together
 * are spread over the time since the tip before them.
 *
 * <p>What this is not: for a gauge with a siphon, whose tips follow the rhythm of the siphon; use {@link #COUNT} and a
 * step of many tips there.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class TipSpreading {
    /** The whole tip in the step in which it happened. */
    public static final TipSpreading COUNT = new TipSpreading(0, false);

    /** Evenly over the time since the tip before, but over no more than 60 min. */
    public static final TipSpreading INTERVAL = interval(Duration.ofMinutes(60));

    /** Along a smooth curve over the time since the tip before, but over no more than 60 min. */
    public static final TipSpreading SMOOTH = smooth(Duration.ofMinutes(60));

    private final long cap;
    private final boolean smooth;

    private TipSpreading(long cap, boolean smooth) {
        this.cap = cap;
        this.smooth = smooth;
    }

    /**
     * Returns the spreading over the time since the tip before, with a cap of one's own.
     *
     * @param cap longest time over which a tip is spread; greater than 0
     * @return the spreading
     * @throws IllegalArgumentException if the cap is not greater than 0
     */
    public static TipSpreading interval(Duration cap) {
        return new TipSpreading(EpochNanos.positive("cap", cap), false);
    }

    /**
     * Returns the smooth spreading with a cap of one's own.
     *
     * @param cap longest time over which a tip is spread; greater than 0
     * @return the spreading
     * @throws IllegalArgumentException if the cap is not greater than 0
     */
    public static TipSpreading smooth(Duration cap) {
        return new TipSpreading(EpochNanos.positive("cap", cap), true);
    }

    /**
     * Returns the longest time over which a tip is spread.
     *
     * @return the cap; 0 if tips are counted where they happened
     */
    public Duration cap() {
        return Duration.ofNanos(cap);
    }

    boolean isSmooth() {
        return smooth;
    }

    /**
     * Start of the time over which a tip is spread: the tip before, or if that is further away than the cap, as long before the
     * tip as the next one comes after it, but no more than the cap. The least and the greatest long stand for no tip.
     */
    long start(long previous, long tip, long next) {
        long earliest = orLeast(tip, cap);
        if (previous >= earliest) {
            return previous;
        }
        // An overflow, of tips centuries apart, is as far away as none.
        long pace = next - tip < 0 ? Long.MAX_VALUE : next - tip;
        return Math.max(earliest, orLeast(tip, pace));
    }

    private static long orLeast(long tip, long before) {
        long time = tip - before;
        return time <= tip ? time : Long.MIN_VALUE;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TipSpreading that && cap == that.cap && smooth == that.smooth;
    }

    @Override
    public int hashCode() {
        return 31 * Long.hashCode(cap) + Boolean.hashCode(smooth);
    }

    @Override
    public String toString() {
        if (cap == 0) {
            return "TipSpreading[counted in its step]";
        }
        return "TipSpreading[" + (smooth ? "smoothly " : "") + "over the time since the tip before, at most "
                + Text.duration(cap())
                + "]";
    }
}
