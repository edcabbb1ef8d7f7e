package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.TextState;
import java.time.Instant;
import java.util.List;

/** Judges the readings of a window of pairs as soon as their neighbours are known. */
final class SpikePairMachine extends CheckMachine<ReadingPair, QualityFlag> {
    private final String state;
    private final SpikeWindow window;

    private SpikePairMachine(String state, MachineClock clock, SpikeWindow window) {
        super(clock);
        this.state = state;
        this.window = window;
    }

    /** A machine that begins, with a window that holds nothing. */
    static SpikePairMachine over(SpikeWindow window, String state) {
        return new SpikePairMachine(state, new MachineClock(), window);
    }

    /** A machine that goes on where another one stood, whose state has a name. */
    static SpikePairMachine over(SpikeWindow window, String state, TextState from) {
        StateText text = StateText.parse(state, 1, from.toText());
        window.read(text, state);
        return new SpikePairMachine(state, MachineClock.from(text), window);
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
