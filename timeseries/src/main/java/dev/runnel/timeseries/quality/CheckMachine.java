package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.TextState;
import java.time.Instant;
import java.util.List;

/** What the machines of all checks do alike: order of time, end of the record, state. */
abstract class CheckMachine<I, O> implements Machine<I, O, TextState> {
    private final MachineClock clock;

    CheckMachine(MachineClock clock) {
        this.clock = clock;
    }

    @Override
    public final List<O> next(I input) {
        long time = EpochNanos.of(time(input));
        clock.requireAfter(time);
        List<O> known = take(input);
        clock.moveTo(time);
        return known;
    }

    @Override
    public final List<O> finish() {
        clock.end();
        return end();
    }

    @Override
    public final TextState state() {
        return TextState.of(clock.into(keep()).toString());
    }

    @Override
    public final String toString() {
        return getClass().getSimpleName() + "[" + clock + "]";
    }

    /** The time of an input. */
    abstract Instant time(I input);

    /** Takes an input whose time is in order. Whatever is refused is refused before anything changes. */
    abstract List<O> take(I input);

    /** What was still owed. */
    List<O> end() {
        return List.of();
    }

    /** The text of the state, but for the time of the last input. */
    abstract StateText keep();
}
