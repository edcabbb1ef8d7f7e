package dev.runnel.timeseries.alarm;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.time.Instant;
import org.apiguardian.api.API;

/**
 * What an alarm looks at: the readings themselves, or a figure made of them. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class AlarmSignal {
    /** The kinds of signal. */
    enum Kind {
        VALUE,
        RATE,
        DEVIATION,
        UNCHANGED,
        SILENCE,
        BAD_QUALITY
    }

    /**
     * What is expected at a time, for example from a dry-weather profile.
     *
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    @FunctionalInterface
    public interface Expected {
        /**
         * Returns what is expected.
         *
         * @param time the instant
         * @return in the unit of the readings; NaN if nothing is expected
         */
        double at(Instant time);
    }

    private static final AlarmSignal VALUE = new AlarmSignal(Kind.VALUE, 0, time -> Double.NaN);

    private final Kind kind;
    private final long per;
    private final Expected expected;

    private AlarmSignal(Kind kind, long per, Expected expected) {
        this.kind = kind;
        this.per = per;
        this.expected = expected;
    }

    /**
     * Returns the readings themselves: high, high-high, low and low-low alarms.
     *
     * @return the signal
     */
    public static AlarmSignal value() {
        return VALUE;
    }

    /**
     * Returns the change from one usable reading to the next, over a time.
     *
     * @param per the time to which changes are brought; greater than 0
     * @return the signal, positive where readings rise
     * @throws IllegalArgumentException if the time is not greater than 0
     */
    public static AlarmSignal rateOfChange(Duration per) {
        return new AlarmSignal(Kind.RATE, EpochNanos.positive("per", per), VALUE.expected);
    }

    /**
     * Returns the difference to what is expected.
     *
     * @param expected what is expected at a time
     * @return the signal, positive where readings are higher
     */
    public static AlarmSignal deviationFrom(Expected expected) {
        return new AlarmSignal(Kind.DEVIATION, 0, expected);
    }

    /**
     * Returns for how long the value has not changed, s: a stale value.
     *
     * @return the signal
     */
    public static AlarmSignal unchanged() {
        return new AlarmSignal(Kind.UNCHANGED, 0, VALUE.expected);
    }

    /**
     * Returns for how long no usable reading has come, s. It grows with {@linkplain AlarmInput#tick ticks} and with
     * readings that are not usable.
     *
     * @return the signal
     */
    public static AlarmSignal silence() {
        return new AlarmSignal(Kind.SILENCE, 0, VALUE.expected);
    }

    /**
     * Returns 1 for a reading that is not usable and 0 for one that is.
     *
     * @return the signal
     */
    public static AlarmSignal badQuality() {
        return new AlarmSignal(Kind.BAD_QUALITY, 0, VALUE.expected);
    }

    Kind kind() {
        return kind;
    }

    double perNanos() {
        return per;
    }

    double expected(Instant time) {
        return expected.at(time);
    }

    @Override
    public String toString() {
        return switch (kind) {
            case VALUE -> "value";
            case RATE -> "change in " + Text.duration(Duration.ofNanos(per));
            case DEVIATION -> "deviation";
            case UNCHANGED -> "seconds unchanged";
            case SILENCE -> "seconds of silence";
            case BAD_QUALITY -> "bad quality";
        };
    }
}
