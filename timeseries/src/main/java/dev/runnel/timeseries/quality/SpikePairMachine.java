package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import java.time.Instant;
import java.util.List;

/** Judges the readings of a window of pairs as soon as their neighbours are known. */
final class SpikePairMachine extends CheckMachine<ReadingPair, QualityFlag> {
    private final String state;
    private final SpikeWindow window;

    SpikePairMachine(String state, MachineClock clock, SpikeWindow window) {
        super(clock);
        this.state = state;
        this.window = window;
    }

    @Override
    Instant time(ReadingPair pair) {
        return pair.time();
    }

    @Override
    List<QualityFlag> take(ReadingPair pair) {
        window.add(pair);
        return window.judgeWhatIsKnown(false);
    }

    @Override
    List<QualityFlag> end() {
        return window.judgeWhatIsKnown(true);
    }

    @Override
    StateText keep() {
        return window.into(StateText.of(state, 1));
    }
}
