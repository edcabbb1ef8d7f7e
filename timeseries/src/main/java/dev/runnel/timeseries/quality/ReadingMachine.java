package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.timeseries.Reading;
import java.time.Instant;

/** A machine that takes readings. */
abstract class ReadingMachine<O> extends CheckMachine<Reading, O> {
    ReadingMachine(MachineClock clock) {
        super(clock);
    }

    @Override
    final Instant time(Reading reading) {
        return reading.time();
    }
}
