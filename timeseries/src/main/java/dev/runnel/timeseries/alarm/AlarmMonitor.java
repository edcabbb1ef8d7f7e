package dev.runnel.timeseries.alarm;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.alarm.AlarmState.Phase;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * An alarm that takes one reading after another. Not thread-safe.
 *
 * <p>Its whole memory is an {@link AlarmState}: keep that, and {@link ThresholdAlarm#monitor(AlarmState)} goes on where
 * this monitor stopped.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class AlarmMonitor {
    private final ThresholdAlarm alarm;
    private Phase phase;
    private long lastTime;
    private long onset;
    private long activation;
    private long clearing;
    private double peak;
    private long peakTime;
    private long unobserved;
    private long readings;
    private long unusable;
    private long longGaps;

    AlarmMonitor(ThresholdAlarm alarm, AlarmState state) {
        this.alarm = alarm;
        phase = state.phase();
        lastTime = state.lastTimeNanos();
        onset = state.onsetNanos();
        activation = state.activationNanos();
        clearing = state.clearingNanos();
        peak = state.peak();
        peakTime = state.peakTimeNanos();
        unobserved = state.unobservedNanos();
        readings = state.readings();
        unusable = state.unusable();
        longGaps = state.longGaps();
    }

    /**
     * Takes the next reading.
     *
     * @param reading at a time after that of the last usable reading
     * @return the alarm, if this reading made it active or returned it to normal
     * @throws IllegalArgumentException if the time does not increase
     */
    public Optional<AlarmEvent> next(Reading reading) {
        long time = EpochNanos.of(reading.time());
        if (readings > 0 && time <= lastTime) {
            throw new IllegalArgumentException(
                    "time must be after " + EpochNanos.toInstant(lastTime) + ", was " + reading.time());
        }
        if (!reading.quality().isUsable()) {
            unusable++;
            return Optional.empty();
        }
        if (readings > 0 && Long.compareUnsigned(time - lastTime, alarm.maximumGap()) > 0) {
            passGap(time);
        }
        lastTime = time;
        readings++;
        return switch (phase) {
            case NORMAL -> begin(time, reading.value());
            case PENDING -> pending(time, reading.value());
            case ACTIVE, CLEARING -> active(time, reading.value());
        };
    }

    /** What lies in the gap is unknown: an alarm stays, a delay does not run on. */
    private void passGap(long time) {
        longGaps++;
        if (phase == Phase.PENDING) {
            phase = Phase.NORMAL;
        } else if (phase == Phase.CLEARING) {
            phase = Phase.ACTIVE;
        }
        if (phase == Phase.ACTIVE) {
            unobserved += time - lastTime;
        }
    }

    private Optional<AlarmEvent> begin(long time, double value) {
        if (!alarm.isBeyond(value)) {
            return Optional.empty();
        }
        phase = Phase.PENDING;
        onset = time;
        peak = value;
        peakTime = time;
        unobserved = 0;
        return activateIfDue(time);
    }

    private Optional<AlarmEvent> pending(long time, double value) {
        if (!alarm.isBeyond(value)) {
            phase = Phase.NORMAL;
            return Optional.empty();
        }
        raisePeak(time, value);
        return activateIfDue(time);
    }

    private Optional<AlarmEvent> activateIfDue(long time) {
        if (time - onset < alarm.onDelay()) {
            return Optional.empty();
        }
        phase = Phase.ACTIVE;
        activation = time;
        return active();
    }

    private Optional<AlarmEvent> active(long time, double value) {
        raisePeak(time, value);
        if (!alarm.isBack(value)) {
            phase = Phase.ACTIVE;
            return Optional.empty();
        }
        if (phase == Phase.ACTIVE) {
            phase = Phase.CLEARING;
            clearing = time;
        }
        if (time - clearing < alarm.offDelay()) {
            return Optional.empty();
        }
        phase = Phase.NORMAL;
        return Optional.of(event(Optional.of(EpochNanos.toInstant(clearing)), Optional.of(EpochNanos.toInstant(time))));
    }

    private void raisePeak(long time, double value) {
        if (alarm.isFurther(value, peak)) {
            peak = value;
            peakTime = time;
        }
    }

    /**
     * Returns the alarm that is active now.
     *
     * @return the alarm as far as it is known; empty if none is active
     */
    public Optional<AlarmEvent> active() {
        return phase == Phase.ACTIVE || phase == Phase.CLEARING
                ? Optional.of(event(Optional.empty(), Optional.empty()))
                : Optional.empty();
    }

    private AlarmEvent event(Optional<Instant> cleared, Optional<Instant> returned) {
        return new AlarmEvent(
                EpochNanos.toInstant(onset),
                EpochNanos.toInstant(activation),
                peak,
                EpochNanos.toInstant(peakTime),
                cleared,
                returned,
                Duration.ofNanos(unobserved));
    }

    /**
     * Returns all that the monitor remembers.
     *
     * @return the state after the last reading
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public AlarmState state() {
        boolean begun = phase != Phase.NORMAL;
        boolean active = phase == Phase.ACTIVE || phase == Phase.CLEARING;
        return new AlarmState(
                phase,
                lastTime,
                begun ? onset : 0,
                active ? activation : 0,
                phase == Phase.CLEARING ? clearing : 0,
                begun ? peak : 0,
                begun ? peakTime : 0,
                begun ? unobserved : 0,
                readings,
                unusable,
                longGaps);
    }

    @Override
    public String toString() {
        return "AlarmMonitor[" + alarm + ", " + phase.name().toLowerCase(java.util.Locale.ROOT) + ", " + readings
                + " readings, " + unusable + " unusable, " + longGaps + " long gaps]";
    }
}
