package dev.runnel.internal;

import java.time.Instant;
import org.apiguardian.api.API;

/**
 * What every machine needs to know of its record: the time of the last input, and whether the record has ended. It
 * words the refusals, so that all machines refuse alike. Not thread-safe.
 *
 * <p>A machine calls {@link #requireAfter} before it changes anything, {@link #moveTo} once the input is taken, and
 * {@link #requireOpen} before it tells its state.
 */
@API(status = API.Status.INTERNAL)
public final class MachineClock {
    private static final String LAST = "last";
    private static final long PER_SECOND = 1_000_000_000L;

    private boolean begun;
    private boolean ended;
    private long last;

    /** Makes the clock of a record that has not begun. */
    public MachineClock() {}

    /**
     * Makes the clock of a record that goes on.
     *
     * @param state text of a state that {@link #into} wrote to
     * @return the clock
     * @throws IllegalArgumentException if the time is no whole number
     */
    public static MachineClock from(StateText state) {
        MachineClock clock = new MachineClock();
        if (state.has(LAST)) {
            clock.moveTo(state.count(LAST));
        }
        return clock;
    }

    /**
     * Adds the time of the last input to the text of a state; nothing if there was none.
     *
     * @param state the text
     * @return the same text
     * @throws IllegalStateException if the record has ended
     */
    public StateText into(StateText state) {
        requireOpen();
        return begun ? state.with(LAST, last) : state;
    }

    /**
     * Checks that the next input may come: that the record is open and the time is after that of the last input.
     *
     * @param time time of the next input, ns since 1970-01-01T00:00:00Z
     * @throws IllegalStateException if the record has ended
     * @throws IllegalArgumentException if the time is not after the last
     */
    public void requireAfter(long time) {
        requireOpen();
        if (begun && time <= last) {
            throw new IllegalArgumentException("time must be after " + instant(last) + ", was " + instant(time));
        }
    }

    /**
     * Takes note of an input.
     *
     * @param time its time, ns since 1970-01-01T00:00:00Z
     */
    public void moveTo(long time) {
        begun = true;
        last = time;
    }

    /**
     * Checks that the record has not ended.
     *
     * @throws IllegalStateException if it has
     */
    public void requireOpen() {
        if (ended) {
            throw new IllegalStateException("the record must not have ended, but finish() was called before");
        }
    }

    /**
     * Ends the record.
     *
     * @throws IllegalStateException if it has ended before
     */
    public void end() {
        requireOpen();
        ended = true;
    }

    /**
     * Tells whether there was an input.
     *
     * @return true after the first
     */
    public boolean hasBegun() {
        return begun;
    }

    /**
     * Returns the time of the last input; only once there was one.
     *
     * @return ns since 1970-01-01T00:00:00Z
     */
    public long last() {
        return last;
    }

    /** In words, for the machines' own. */
    @Override
    public String toString() {
        return (begun ? "taken up to " + instant(last) : "nothing taken yet") + (ended ? ", ended" : "");
    }

    private static Instant instant(long nanos) {
        return Instant.ofEpochSecond(Math.floorDiv(nanos, PER_SECOND), Math.floorMod(nanos, PER_SECOND));
    }
}
