package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import java.time.Instant;
import java.util.List;

/** A check that judges each reading of a pair at once. */
abstract class PairMachine extends CheckMachine<ReadingPair, QualityFlag> {
    PairMachine(MachineClock clock) {
        super(clock);
    }

    @Override
    final Instant time(ReadingPair pair) {
        return pair.time();
    }

    @Override
    final List<QualityFlag> take(ReadingPair pair) {
        if (!pair.reading().quality().isUsable()) {
            passOver();
            return List.of(QualityFlag.unusable(pair.reading()));
        }
        if (!pair.companion().quality().isUsable()) {
            passOver();
            return List.of(QualityFlag.notEvaluated(pair.time(), "no usable companion"));
        }
        return List.of(
                judge(pair.time(), pair.reading().value(), pair.companion().value()));
    }

    /** Judges a reading by its companion, both usable, and takes note of them. */
    abstract QualityFlag judge(Instant time, double value, double companion);

    /** Takes note that one of them was not usable. */
    void passOver() {}
}
