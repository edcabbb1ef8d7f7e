package dev.runnel.timeseries.alarm;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import dev.runnel.timeseries.alarm.AlarmChange.State;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * An {@link Alarm} that takes one input after another. Not thread-safe.
 *
 * @see Alarm#start()
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class AlarmMachine implements Machine<AlarmInput, AlarmChange, TextState> {
    private static final String STATE = "alarm";

    private final Alarm alarm;
    private final MachineClock clock;
    private final AlarmMonitor monitor;

    /** The alarm that the last input ended. */
    private Optional<AlarmEvent> justEnded = Optional.empty();

    private State state = State.NORMAL;
    private boolean acknowledged;
    private boolean waiting;
    private boolean condition;
    private long shelvedUntil = Long.MIN_VALUE;

    /** The last usable reading, and when its value last changed. */
    private boolean begun;

    private long lastTime;
    private double lastValue;
    private long changedAt;

    AlarmMachine(Alarm alarm) {
        this.alarm = alarm;
        clock = new MachineClock();
        monitor = alarm.limit().start();
    }

    AlarmMachine(Alarm alarm, TextState kept) {
        StateText text = StateText.parse(STATE, 1, kept.toText());
        this.alarm = alarm;
        clock = MachineClock.from(text);
        monitor = alarm.limit().start(TextState.of(text.text("monitor")));
        state = text.constant("state", State.class);
        acknowledged = text.flag("acknowledged");
        waiting = text.flag("waiting");
        condition = text.flag("condition");
        shelvedUntil = text.count("shelved");
        begun = text.flag("begun");
        lastTime = text.count("time");
        lastValue = text.number("value");
        changedAt = text.count("changed");
    }

    /**
     * Takes the next input.
     *
     * @param input at a time after that of the input before
     * @return the change of state that it made, if any
     * @throws IllegalArgumentException if the time does not increase
     * @throws IllegalStateException after {@link #finish}
     */
    @Override
    public List<AlarmChange> next(AlarmInput input) {
        long time = EpochNanos.of(input.time());
        clock.requireAfter(time);
        justEnded = Optional.empty();
        switch (input.kind()) {
            case READING -> take(time, input.reading().orElseThrow());
            case TICK -> {
                if (alarm.signal().kind() == AlarmSignal.Kind.SILENCE && begun) {
                    feed(time, (time - lastTime) / 1e9);
                }
            }
            case ACKNOWLEDGE -> {
                acknowledged = monitor.isActive();
                waiting = false;
            }
            case SHELVE -> shelvedUntil = nanos(input.until());
            case UNSHELVE -> shelvedUntil = Long.MIN_VALUE;
            case CONDITION_ON -> condition = true;
            case CONDITION_OFF -> condition = false;
        }
        clock.moveTo(time);
        return change(input.time(), time);
    }

    private static long nanos(Instant until) {
        return until.isAfter(EpochNanos.toInstant(Long.MAX_VALUE)) ? Long.MAX_VALUE : EpochNanos.of(until);
    }

    private void take(long time, Reading reading) {
        boolean usable = reading.quality().isUsable();
        double value = reading.value();
        double signal = switch (alarm.signal().kind()) {
            case VALUE -> usable ? value : Double.NaN;
            case DEVIATION -> usable ? value - alarm.signal().expected(reading.time()) : Double.NaN;
            case RATE ->
                usable && begun
                        ? (value - lastValue)
                                / (time - lastTime)
                                * alarm.signal().perNanos()
                        : Double.NaN;
            case UNCHANGED -> usable ? (begun && value == lastValue ? (time - changedAt) / 1e9 : 0) : Double.NaN;
            case SILENCE -> usable || !begun ? 0 : (time - lastTime) / 1e9;
            case BAD_QUALITY -> usable ? 0 : 1;
        };
        if (usable) {
            changedAt = begun && value == lastValue ? changedAt : time;
            lastValue = value;
            lastTime = time;
            begun = true;
        }
        feed(time, signal);
    }

    private void feed(long time, double signal) {
        if (monitor.next(time, signal)) {
            if (monitor.isActive()) {
                acknowledged = false;
                waiting = true;
            } else {
                justEnded = monitor.latest();
            }
        }
    }

    private State stateAt(long time) {
        if (time < shelvedUntil) {
            return State.SHELVED;
        }
        if (condition) {
            return State.SUPPRESSED;
        }
        if (monitor.isActive()) {
            return acknowledged ? State.ACKNOWLEDGED : State.UNACKNOWLEDGED;
        }
        return waiting && alarm.isLatching() ? State.RETURNED_UNACKNOWLEDGED : State.NORMAL;
    }

    private List<AlarmChange> change(Instant instant, long time) {
        State now = stateAt(time);
        if (now == state) {
            return List.of();
        }
        state = now;
        boolean hidden = now == State.SHELVED || now == State.SUPPRESSED;
        Optional<AlarmEvent> event = monitor.isActive() ? monitor.active() : justEnded;
        return List.of(new AlarmChange(instant, now, hidden ? Optional.empty() : event));
    }

    /**
     * Returns where the alarm stands.
     *
     * @return the state after the last input
     */
    public State alarmState() {
        return state;
    }

    Optional<AlarmEvent> justEnded() {
        return justEnded;
    }

    Optional<AlarmEvent> active() {
        return monitor.active();
    }

    /**
     * Ends the record.
     *
     * @return nothing: the state says what is still open
     * @throws IllegalStateException if called a second time
     */
    @Override
    public List<AlarmChange> finish() {
        clock.end();
        return List.of();
    }

    @Override
    public TextState state() {
        return TextState.of(clock.into(StateText.of(STATE, 1)
                        .with("state", state.name())
                        .with("acknowledged", acknowledged)
                        .with("waiting", waiting)
                        .with("condition", condition)
                        .with("shelved", shelvedUntil)
                        .with("begun", begun)
                        .with("time", lastTime)
                        .with("value", lastValue)
                        .with("changed", changedAt)
                        .with("monitor", monitor.state().toText()))
                .toString());
    }

    @Override
    public String toString() {
        return "AlarmMachine[" + alarm + ", " + state + "]";
    }
}
