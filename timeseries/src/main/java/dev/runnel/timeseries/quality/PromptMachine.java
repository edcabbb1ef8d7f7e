package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.timeseries.Reading;
import java.util.List;

/** A check that judges each reading at once, by what came before it. */
abstract class PromptMachine extends ReadingMachine<QualityFlag> {
    PromptMachine(MachineClock clock) {
        super(clock);
    }

    @Override
    final List<QualityFlag> take(Reading reading) {
        if (!reading.quality().isUsable()) {
            passOver(reading);
            return List.of(QualityFlag.unusable(reading));
        }
        return List.of(judge(reading));
    }

    /**
     * Takes note of a usable reading that passes beyond doubt, without making an object of it: most readings do. False
     * leaves everything as it was, and {@link #judge} says.
     */
    boolean passes(double value) {
        return false;
    }

    /** Judges a usable reading and takes note of it. */
    abstract QualityFlag judge(Reading reading);

    /** Takes note that a reading had no usable value. */
    void passOver(Reading reading) {}
}
