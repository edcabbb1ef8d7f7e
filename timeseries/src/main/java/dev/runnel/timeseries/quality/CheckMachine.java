package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import java.util.List;

/** What the machines of all checks do alike: order of time, end of the record, state. */
abstract class CheckMachine<O> implements Machine<Reading, O, TextState> {
    private final MachineClock clock;

    CheckMachine(MachineClock clock) {
        this.clock = clock;
    }

    @Override
    public final List<O> next(Reading reading) {
        long time = EpochNanos.of(reading.time());
        clock.requireAfter(time);
        List<O> known = take(reading);
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

    /** Takes a reading whose time is in order. Whatever is refused is refused before anything changes. */
    abstract List<O> take(Reading reading);

    /** What was still owed. */
    List<O> end() {
        return List.of();
    }

    /** The text of the state, but for the time of the last reading. */
    abstract StateText keep();
}
