package dev.runnel.timeseries.alarm;

import java.io.Serializable;
import org.apiguardian.api.API;

/**
 * All that an {@link AlarmMonitor} remembers between two readings: small, and serialisable as it is or field by field.
 * Immutable and thread-safe. Times are ns since 1970-01-01T00:00:00Z; those that the phase does not need are 0.
 *
 * <p>Experimental: what a monitor has to remember may change with what it can do.
 *
 * @param phase where the alarm stands
 * @param lastTimeNanos time of the last usable reading; meaningful if {@code readings} is greater than 0
 * @param onsetNanos first reading beyond the limit; not in {@link Phase#NORMAL}
 * @param activationNanos reading that made the alarm active; only in {@link Phase#ACTIVE} and {@link Phase#CLEARING}
 * @param clearingNanos first reading that cleared; only in {@link Phase#CLEARING}
 * @param peak value furthest beyond the limit since the onset
 * @param peakTimeNanos when it was read
 * @param unobservedNanos time since the onset in gaps longer than the maximum, ns
 * @param readings usable readings so far
 * @param unusable missing and suspect readings so far, which said nothing
 * @param longGaps gaps longer than the maximum so far
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record AlarmState(
        Phase phase,
        long lastTimeNanos,
        long onsetNanos,
        long activationNanos,
        long clearingNanos,
        double peak,
        long peakTimeNanos,
        long unobservedNanos,
        long readings,
        long unusable,
        long longGaps)
        implements Serializable {
    /**
     * Where an alarm stands.
     *
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public enum Phase {
        /** Not beyond the limit. */
        NORMAL,
        /** Beyond the limit, the on-delay running. */
        PENDING,
        /** In alarm. */
        ACTIVE,
        /** Still in alarm, the off-delay running. */
        CLEARING
    }

    static final AlarmState INITIAL = new AlarmState(Phase.NORMAL, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);

    /**
     * Tells whether the alarm is active.
     *
     * @return true in {@link Phase#ACTIVE} and {@link Phase#CLEARING}
     */
    public boolean isActive() {
        return phase == Phase.ACTIVE || phase == Phase.CLEARING;
    }
}
