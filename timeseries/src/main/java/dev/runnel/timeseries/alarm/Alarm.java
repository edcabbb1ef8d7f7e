package dev.runnel.timeseries.alarm;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The settings of a whole alarm: what it looks at, its limit with deadband and delays, and whether it latches. Immutable
 * and thread-safe.
 *
 * <p>Several limits on one signal, such as high and high-high, are several alarms. An alarm that is shelved, or suppressed
 * because a stated condition holds, is still worked out; it is shown when the shelf runs out or the condition ends while
 * it is active. A latching alarm that has returned to normal stays until it is acknowledged; without latching it then
 * goes to normal by itself.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Alarm implements Rule<AlarmInput, AlarmChange, TextState> {
    private final String name;
    private final AlarmSignal signal;
    private final ThresholdAlarm limit;
    private final boolean latching;

    private Alarm(String name, AlarmSignal signal, ThresholdAlarm limit, boolean latching) {
        this.name = name;
        this.signal = signal;
        this.limit = limit;
        this.latching = latching;
    }

    /**
     * Returns an alarm.
     *
     * @param name what it is called, for example {@code depth high-high}
     * @param signal what it looks at
     * @param limit limit, deadband and delays, in the unit of the signal
     * @return the alarm, without latching
     */
    public static Alarm of(String name, AlarmSignal signal, ThresholdAlarm limit) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(signal, "signal");
        Objects.requireNonNull(limit, "limit");
        return new Alarm(name, signal, limit, false);
    }

    /**
     * Returns the alarm as one that stays until it is acknowledged.
     *
     * @return the new alarm
     */
    public Alarm withLatching() {
        return new Alarm(name, signal, limit, true);
    }

    /**
     * Returns what the alarm is called.
     *
     * @return its name
     */
    public String name() {
        return name;
    }

    /**
     * Tells what this setting would have raised in a record, with nobody there and no condition: ask it of last year
     * before it is set.
     *
     * @param series the readings
     * @return each alarm once, with its end as far as it is known
     */
    public List<AlarmEvent> trial(Series series) {
        return trial(series, List.of());
    }

    /**
     * Tells what this setting would have raised in a record and shown, while some condition held at times.
     *
     * @param series the readings
     * @param suppressed when the condition held, in order of time, none overlapping; what begins and ends in one of them is
     *     not shown
     * @return each alarm that would have been shown once, with its end as far as it is known
     */
    public List<AlarmEvent> trial(Series series, List<Interval> suppressed) {
        Objects.requireNonNull(suppressed, "suppressed");
        AlarmMachine machine = start();
        List<AlarmEvent> events = new ArrayList<>();
        for (int i = 0; i < series.size(); i++) {
            machine.next(AlarmInput.of(series.get(i)));
            machine.justEnded().ifPresent(events::add);
        }
        machine.active().ifPresent(events::add);
        return events.stream()
                .filter(event -> suppressed.stream()
                        .noneMatch(each -> each.contains(event.activation())
                                && event.returned().isPresent()
                                && !event.returned().get().isAfter(each.end())))
                .toList();
    }

    @Override
    public AlarmMachine start() {
        return new AlarmMachine(this);
    }

    @Override
    public AlarmMachine start(TextState state) {
        Objects.requireNonNull(state, "state");
        return new AlarmMachine(this, state);
    }

    @Override
    public TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }

    AlarmSignal signal() {
        return signal;
    }

    ThresholdAlarm limit() {
        return limit;
    }

    boolean isLatching() {
        return latching;
    }

    @Override
    public String toString() {
        return "Alarm[" + name + ": " + signal + ", " + limit + (latching ? ", latching" : "") + "]";
    }
}
