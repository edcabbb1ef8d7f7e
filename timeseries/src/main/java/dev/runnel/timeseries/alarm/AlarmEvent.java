package dev.runnel.timeseries.alarm;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * One alarm, from onset to return to normal. Immutable and thread-safe.
 *
 * @param onset first reading beyond the limit
 * @param activation reading at which the alarm became active, at least the on-delay after the onset
 * @param peak value furthest beyond the limit, from onset on
 * @param peakTime when the peak was first read
 * @param cleared first reading of those that led to the return; empty while the alarm is active
 * @param returned reading at which the alarm returned to normal; empty while it is active
 * @param unobserved time since the onset that lies in gaps longer than the maximum gap
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record AlarmEvent(
        Instant onset,
        Instant activation,
        double peak,
        Instant peakTime,
        Optional<Instant> cleared,
        Optional<Instant> returned,
        Duration unobserved) {
    /**
     * Checks that the end is known in both ways or in neither.
     *
     * @param onset first reading beyond the limit
     * @param activation reading at which the alarm became active
     * @param peak value furthest beyond the limit
     * @param peakTime when the peak was first read
     * @param cleared first reading of those that led to the return
     * @param returned reading at which the alarm returned to normal
     * @param unobserved time in long gaps
     * @throws IllegalArgumentException if only one of {@code cleared} and {@code returned} is present
     */
    public AlarmEvent {
        Objects.requireNonNull(onset, "onset");
        Objects.requireNonNull(activation, "activation");
        Objects.requireNonNull(peakTime, "peakTime");
        Objects.requireNonNull(unobserved, "unobserved");
        if (cleared.isPresent() != returned.isPresent()) {
            throw new IllegalArgumentException(
                    "cleared must be present if and only if returned is, was " + cleared + " with " + returned);
        }
    }

    /**
     * Tells whether the alarm has not returned to normal.
     *
     * @return true if it is still active
     */
    public boolean isActive() {
        return returned.isEmpty();
    }

    /**
     * Returns the time beyond the limit: from onset to the first reading that led to the return.
     *
     * @return the interval; empty while the alarm is active
     */
    public Optional<Interval> interval() {
        return cleared.map(end -> Interval.of(onset, end));
    }

    @Override
    public String toString() {
        return "AlarmEvent[onset " + onset + ", active " + activation + ", "
                + returned.map(time -> "returned " + time).orElse("still active") + ", peak "
                + Text.significant(peak, 6) + " at " + peakTime
                + (unobserved.isZero() ? "" : ", unobserved " + Text.duration(unobserved)) + "]";
    }
}
