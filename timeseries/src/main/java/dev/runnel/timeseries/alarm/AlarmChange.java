package dev.runnel.timeseries.alarm;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * A change of state of an alarm. Immutable and thread-safe.
 *
 * @param time when
 * @param state the state that it went into
 * @param event the alarm that is active now, or that ended with this very change; empty if there is none, or it is hidden
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record AlarmChange(Instant time, State state, Optional<AlarmEvent> event) {
    /**
     * Checks that nothing is missing.
     *
     * @param time when
     * @param state the state that it went into
     * @param event the alarm that is active now, or that ended with this very change; empty if there is none, or it is hidden
     */
    public AlarmChange {
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(state, "state");
        Objects.requireNonNull(event, "event");
    }

    /**
     * States of an alarm, in the words of ANSI/ISA-18.2 and IEC 62682.
     *
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public enum State {
        /** Nothing is wrong. */
        NORMAL,
        /** In alarm, and nobody has said that it was seen. */
        UNACKNOWLEDGED,
        /** In alarm, and seen. */
        ACKNOWLEDGED,
        /** Back to normal before anybody had seen it; with latching until it is acknowledged. */
        RETURNED_UNACKNOWLEDGED,
        /** Put away by a person for a limited time. */
        SHELVED,
        /** Hidden by design while a stated condition holds. */
        SUPPRESSED
    }

    @Override
    public String toString() {
        return time + " " + state + event.map(each -> " " + each).orElse("");
    }
}
