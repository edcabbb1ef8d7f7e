package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Looks for spikes as a {@link SpikeCheck} does, and asks the companion of the same time whether it moved as well: a false
 * echo moves the depth alone, the stroke of a pump moves depth and velocity. A spike that the companion shares is unusual at
 * most. Where the companion stood still, neighbours may be further away. Without a companion the verdict is that of the spike
 * check. Immutable and thread-safe.
 *
 * <p>The share of a reading is |x - m|/max(|x|, |m|), m the mean of its two neighbours; that of its companion the lesser of
 * those against each of its own two, of which one may have dropped out. The companion moved if its share is above 0.15 and above 0.4 of the reading's; it stood still if its share is below 0.2 of
 * the reading's. A companion of exactly 0 says nothing. Between neighbours that are too far for the spike check, but not for
 * this one, a reading is judged only if it stands alone: the companion stood still, the reading's share is above 0.5, and the
 * neighbours differ by a quarter of the deviation or less. These limits are chosen here.
 *
 * @param spike the check of the readings alone
 * @param farGap longest time to a neighbour where the companion is known; greater than 0
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record SharedSpikeCheck(SpikeCheck spike, Duration farGap) implements PairCheck {
    private static final String STATE = "shared-spike-check";

    /**
     * Checks the longest time.
     *
     * @param spike the check of the readings alone
     * @param farGap longest time to a neighbour where the companion is known
     * @throws IllegalArgumentException if the time is not greater than 0
     */
    public SharedSpikeCheck {
        Objects.requireNonNull(spike, "spike");
        EpochNanos.positive("farGap", farGap);
    }

    /**
     * Returns the check.
     *
     * @param spike the check of the readings alone
     * @param farGap longest time to a neighbour where the companion is known; greater than 0
     * @return the check
     * @throws IllegalArgumentException if the time is not greater than 0
     */
    public static SharedSpikeCheck of(SpikeCheck spike, Duration farGap) {
        return new SharedSpikeCheck(spike, farGap);
    }

    @Override
    public String name() {
        return spike.name();
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start() {
        return new SharedSpikeMachine(new MachineClock(), SpikeWindow.of(this));
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start(TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        SpikeWindow window = SpikeWindow.of(this);
        window.read(text, STATE);
        return new SharedSpikeMachine(MachineClock.from(text), window);
    }

    /** Checks a record at once, without an object for each reading. */
    @Override
    public QualityFlags apply(Series checked, Series companion) {
        Objects.requireNonNull(checked, "checked");
        Objects.requireNonNull(companion, "companion");
        return SpikeWindow.of(this, checked, Alignment.exact().align(checked, companion))
                .judgeAll(name());
    }

    @Override
    public String toString() {
        return "SharedSpikeCheck[" + spike + ", beside a companion neighbours within " + Text.duration(farGap) + "]";
    }

    private static final class SharedSpikeMachine extends CheckMachine<ReadingPair, QualityFlag> {
        private final SpikeWindow window;

        SharedSpikeMachine(MachineClock clock, SpikeWindow window) {
            super(clock);
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
            return window.into(StateText.of(STATE, 1));
        }
    }
}
