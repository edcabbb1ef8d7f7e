package dev.runnel.timeseries.alarm;

import dev.runnel.timeseries.Reading;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * What reaches an alarm at one instant: a reading, the mere passing of time, or what a person or a condition does.
 * Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class AlarmInput {
    /** The kinds of input. */
    enum Kind {
        READING,
        TICK,
        ACKNOWLEDGE,
        SHELVE,
        UNSHELVE,
        CONDITION_ON,
        CONDITION_OFF
    }

    private final Kind kind;
    private final Instant time;
    private final Optional<Reading> reading;
    private final Instant until;

    private AlarmInput(Kind kind, Instant time, Optional<Reading> reading, Instant until) {
        this.kind = kind;
        this.time = time;
        this.reading = reading;
        this.until = until;
    }

    private static AlarmInput of(Kind kind, Instant time) {
        return new AlarmInput(kind, time, Optional.empty(), Instant.MAX);
    }

    /**
     * Returns a reading.
     *
     * @param reading the reading
     * @return the input
     */
    public static AlarmInput of(Reading reading) {
        return new AlarmInput(Kind.READING, reading.time(), Optional.of(reading), Instant.MAX);
    }

    /**
     * Returns the passing of time: nothing came until then.
     *
     * @param time the instant
     * @return the input
     */
    public static AlarmInput tick(Instant time) {
        Objects.requireNonNull(time, "time");
        return of(Kind.TICK, time);
    }

    /**
     * Returns that a person has seen the alarm.
     *
     * @param time the instant
     * @return the input
     */
    public static AlarmInput acknowledge(Instant time) {
        Objects.requireNonNull(time, "time");
        return of(Kind.ACKNOWLEDGE, time);
    }

    /**
     * Returns that a person puts the alarm away for a limited time.
     *
     * @param time the instant
     * @param until when it comes back by itself; after {@code time}
     * @return the input
     * @throws IllegalArgumentException if the end does not come after the time
     */
    public static AlarmInput shelve(Instant time, Instant until) {
        Objects.requireNonNull(time, "time");
        if (!until.isAfter(time)) {
            throw new IllegalArgumentException("until must be after time, " + time + ", was " + until);
        }
        return new AlarmInput(Kind.SHELVE, time, Optional.empty(), until);
    }

    /**
     * Returns that a person brings the alarm back.
     *
     * @param time the instant
     * @return the input
     */
    public static AlarmInput unshelve(Instant time) {
        Objects.requireNonNull(time, "time");
        return of(Kind.UNSHELVE, time);
    }

    /**
     * Returns that the condition begins or ends by which the alarm is suppressed by design, for example rain.
     *
     * @param time the instant
     * @param isOn whether it holds from now on
     * @return the input
     */
    public static AlarmInput condition(Instant time, boolean isOn) {
        Objects.requireNonNull(time, "time");
        return of(isOn ? Kind.CONDITION_ON : Kind.CONDITION_OFF, time);
    }

    Kind kind() {
        return kind;
    }

    Optional<Reading> reading() {
        return reading;
    }

    Instant until() {
        return until;
    }

    /**
     * Returns when it came.
     *
     * @return the instant
     */
    public Instant time() {
        return time;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof AlarmInput that
                && kind == that.kind
                && time.equals(that.time)
                && reading.equals(that.reading)
                && until.equals(that.until);
    }

    @Override
    public int hashCode() {
        return Objects.hash(kind, time, reading, until);
    }

    @Override
    public String toString() {
        return reading.map(Reading::toString).orElse(time + " " + kind);
    }
}
