package dev.runnel.timeseries.alarm;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * An alarm that takes one reading after another. Not thread-safe.
 *
 * <p>It has three doors. {@link #next(Reading)} answers with an event; {@link #next(long, double)} makes no object, and
 * {@link #latest()} then tells the event; {@link #next(long[], double[], int, int)} takes whole arrays.
 *
 * @see ThresholdAlarm#start()
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class AlarmMonitor implements Machine<Reading, AlarmEvent, TextState> {
    private static final String STATE = "threshold-alarm";

    /** Where the alarm stands. */
    private enum Phase {
        /** Not beyond the limit. */
        NORMAL,
        /** Beyond the limit, the on-delay running. */
        PENDING,
        /** In alarm. */
        ACTIVE,
        /** Still in alarm, the off-delay running. */
        CLEARING
    }

    private final ThresholdAlarm alarm;

    /** 1 for a high alarm, −1 for a low one: times this, both are high alarms. */
    private final double sign;

    private final double limit;
    private final double back;
    private final long onDelay;
    private final long offDelay;
    private final long maximumGap;

    /** The clock words refusals; while the record is open only {@link #last} is kept up to date. */
    private final MachineClock clock;

    /** Readings up to this time are refused: the last one, or all of them once the record has ended. */
    private long last;

    private boolean begun;

    private Phase phase = Phase.NORMAL;
    private long lastUsable;
    private long readings;
    private long unusable;
    private long longGaps;

    /** Of the alarm that is pending, active or clearing; in the normal phase of none. */
    private long onset;

    private long activation;
    private long clearing;
    private double peak;
    private long peakTime;
    private long unobserved;

    private Optional<AlarmEvent> returned = Optional.empty();

    AlarmMonitor(ThresholdAlarm alarm) {
        this(alarm, new MachineClock());
    }

    private AlarmMonitor(ThresholdAlarm alarm, MachineClock clock) {
        this.alarm = alarm;
        sign = alarm.isHigh() ? 1 : -1;
        limit = sign * alarm.limit();
        back = limit - alarm.deadband();
        onDelay = alarm.onDelay();
        offDelay = alarm.offDelay();
        maximumGap = alarm.maximumGap();
        this.clock = clock;
        begun = clock.hasBegun();
        last = begun ? clock.last() : Long.MIN_VALUE;
    }

    AlarmMonitor(ThresholdAlarm alarm, TextState state) {
        this(alarm, StateText.parse(STATE, 1, state.toText()));
    }

    private AlarmMonitor(ThresholdAlarm alarm, StateText state) {
        this(alarm, MachineClock.from(state));
        phase = state.constant("phase", Phase.class);
        lastUsable = state.count("usable");
        readings = state.count("readings");
        unusable = state.count("unusable");
        longGaps = state.count("gaps");
        if (phase != Phase.NORMAL) {
            onset = state.count("onset");
            peak = state.number("peak");
            peakTime = state.count("peaktime");
            unobserved = state.count("unobserved");
        }
        if (isActive()) {
            activation = state.count("activation");
        }
        if (phase == Phase.CLEARING) {
            clearing = state.count("clearing");
        }
    }

    /**
     * Takes the next reading.
     *
     * @param reading at a time after that of the reading before
     * @return the alarm, if this reading made it active or returned it to normal
     * @throws IllegalArgumentException if the time does not increase
     * @throws IllegalStateException after {@link #finish}
     */
    @Override
    public List<AlarmEvent> next(Reading reading) {
        double value = reading.quality().isUsable() ? reading.value() : Double.NaN;
        return next(EpochNanos.of(reading.time()), value) ? List.of(latest().orElseThrow()) : List.of();
    }

    /**
     * Takes the next reading and makes no object.
     *
     * @param epochNanos its time, ns since 1970-01-01T00:00:00Z, after that of the reading before
     * @param value its value in the unit of the limit, finite; NaN if it is missing or not usable
     * @return true if this reading made the alarm active or returned it to normal; {@link #latest()} tells which
     * @throws IllegalArgumentException if the time does not increase
     * @throws IllegalStateException after {@link #finish}
     */
    public boolean next(long epochNanos, double value) {
        if (epochNanos <= last) {
            refuse(epochNanos);
        }
        last = epochNanos;
        begun = true;
        if (Double.isNaN(value)) {
            unusable++;
            return false;
        }
        if (readings > 0 && Long.compareUnsigned(epochNanos - lastUsable, maximumGap) > 0) {
            passGap(epochNanos);
        }
        lastUsable = epochNanos;
        readings++;
        double signed = sign * value;
        if (phase == Phase.NORMAL) {
            return signed > limit && begin(epochNanos, signed);
        }
        return phase == Phase.PENDING ? pending(epochNanos, signed) : active(epochNanos, signed);
    }

    /**
     * Takes readings up to the first that makes the alarm active or returns it to normal, and makes no object: the form for
     * long records, several times as fast as one by one.
     *
     * @param epochNanos times, ns since 1970-01-01T00:00:00Z, each after the one before; not modified
     * @param values values in the unit of the limit, NaN for missing or not usable; same length; not modified
     * @param from index of the first reading to take
     * @param to index after the last, not above the length
     * @return index of the reading that changed the alarm, after which to go on; -1 if none did and all are taken
     * @throws IllegalArgumentException if lengths differ, the indexes are out of them, or a time does not increase; the
     *     readings before that one are taken
     * @throws IllegalStateException after {@link #finish}
     */
    public int next(long[] epochNanos, double[] values, int from, int to) {
        Require.sameLength("values", epochNanos.length, values.length);
        Require.inRange("to", to, 0, values.length, "");
        Require.inRange("from", from, 0, to, "");
        int i = from;
        while (i < to) {
            if (phase == Phase.NORMAL && begun && last == lastUsable && readings > 0) {
                i = passNormal(epochNanos, values, i, to);
                if (i == to) {
                    break;
                }
            }
            if (next(epochNanos[i], values[i])) {
                return i;
            }
            i++;
        }
        return -1;
    }

    /** Takes the readings that change nothing in the normal phase; stops at the first that needs a closer look. */
    private int passNormal(long[] epochNanos, double[] values, int from, int to) {
        long before = last;
        int i = from;
        long gap = maximumGap + Long.MIN_VALUE;
        while (i < to) {
            long time = epochNanos[i];
            // As unsigned numbers 1 to the maximum gap, and nothing else, is less than the gap once 1 is taken off.
            if (!(sign * values[i] <= limit) || time - before - 1 + Long.MIN_VALUE >= gap) {
                break;
            }
            before = time;
            i++;
        }
        if (i > from) {
            readings += i - from;
            last = before;
            lastUsable = before;
        }
        return i;
    }

    private void refuse(long time) {
        clock.requireOpen();
        if (begun) {
            clock.moveTo(last);
            clock.requireAfter(time);
        }
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
            unobserved += time - lastUsable;
        }
    }

    private boolean begin(long time, double signed) {
        phase = Phase.PENDING;
        onset = time;
        peak = signed;
        peakTime = time;
        unobserved = 0;
        return activateIfDue(time);
    }

    private boolean pending(long time, double signed) {
        if (!(signed > limit)) {
            phase = Phase.NORMAL;
            return false;
        }
        raisePeak(time, signed);
        return activateIfDue(time);
    }

    private boolean activateIfDue(long time) {
        if (time - onset < onDelay) {
            return false;
        }
        phase = Phase.ACTIVE;
        activation = time;
        return true;
    }

    private boolean active(long time, double signed) {
        raisePeak(time, signed);
        if (signed > back) {
            phase = Phase.ACTIVE;
            return false;
        }
        if (phase == Phase.ACTIVE) {
            phase = Phase.CLEARING;
            clearing = time;
        }
        if (time - clearing < offDelay) {
            return false;
        }
        phase = Phase.NORMAL;
        returned = Optional.of(
                event(Optional.of(EpochNanos.toInstant(clearing)), Optional.of(EpochNanos.toInstant(time))));
        return true;
    }

    private void raisePeak(long time, double signed) {
        if (signed > peak) {
            peak = signed;
            peakTime = time;
        }
    }

    /**
     * Tells whether the alarm is active.
     *
     * @return true from the reading that made it active to the one that returned it to normal
     */
    public boolean isActive() {
        return phase == Phase.ACTIVE || phase == Phase.CLEARING;
    }

    /**
     * Returns the alarm that is active now.
     *
     * @return the alarm as far as it is known; empty if none is active
     */
    public Optional<AlarmEvent> active() {
        return isActive() ? Optional.of(event(Optional.empty(), Optional.empty())) : Optional.empty();
    }

    /**
     * Returns the alarm that is active now, else the last one that this monitor saw return to normal.
     *
     * @return the alarm; empty if there was none since this monitor was started
     */
    public Optional<AlarmEvent> latest() {
        return isActive() ? active() : returned;
    }

    private AlarmEvent event(Optional<Instant> cleared, Optional<Instant> end) {
        return new AlarmEvent(
                EpochNanos.toInstant(onset),
                EpochNanos.toInstant(activation),
                sign * peak,
                EpochNanos.toInstant(peakTime),
                cleared,
                end,
                Duration.ofNanos(unobserved));
    }

    /**
     * Ends the record.
     *
     * @return the alarm that is still active, if one is
     * @throws IllegalStateException if called a second time
     */
    @Override
    public List<AlarmEvent> finish() {
        clock.end();
        last = Long.MAX_VALUE;
        return active().map(List::of).orElse(List.of());
    }

    @Override
    public TextState state() {
        clock.requireOpen();
        if (begun) {
            clock.moveTo(last);
        }
        StateText text = clock.into(StateText.of(STATE, 1).with("phase", phase.name()));
        text.with("usable", lastUsable)
                .with("readings", readings)
                .with("unusable", unusable)
                .with("gaps", longGaps);
        if (phase != Phase.NORMAL) {
            text.with("onset", onset)
                    .with("peak", peak)
                    .with("peaktime", peakTime)
                    .with("unobserved", unobserved);
        }
        if (isActive()) {
            text.with("activation", activation);
        }
        if (phase == Phase.CLEARING) {
            text.with("clearing", clearing);
        }
        return TextState.of(text.toString());
    }

    @Override
    public String toString() {
        return "AlarmMonitor[" + alarm + ", " + phase.name().toLowerCase(Locale.ROOT) + ", " + readings + " readings, "
                + unusable + " unusable, " + longGaps + " long gaps]";
    }
}
