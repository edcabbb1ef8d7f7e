package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Looks for spikes as a {@link SpikeCheck} does, and asks the companion of the same time whether it moved as well: a false
 * echo moves the depth alone, the stroke of a pump moves depth and velocity. A spike that the companion shares is unusual at
 * most. Without a companion the verdict is that of the spike check. Immutable and thread-safe.
 *
 * <p>The share of a reading is |x - m|/max(|x|, |m|), m the mean of its two neighbours; that of its companion the lesser of
 * those against each of its own two, of which one may have dropped out. The companion moved if its share is above 0.15 and
 * above 0.4 of the reading's; a companion of exactly 0 says nothing. These limits are chosen here.
 *
 * @param spike the check of the readings alone
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record SharedSpikeCheck(SpikeCheck spike) implements PairCheck {
    private static final String STATE = "shared-spike-check";

    /**
     * Checks that nothing is missing.
     *
     * @param spike the check of the readings alone
     */
    public SharedSpikeCheck {
        Objects.requireNonNull(spike, "spike");
    }

    /**
     * Returns the check.
     *
     * @param spike the check of the readings alone
     * @return the check
     */
    public static SharedSpikeCheck of(SpikeCheck spike) {
        return new SharedSpikeCheck(spike);
    }

    @Override
    public String name() {
        return spike.name();
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start() {
        return SpikePairMachine.over(SpikeWindow.of(this), STATE);
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start(TextState state) {
        return SpikePairMachine.over(SpikeWindow.of(this), STATE, state);
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
        return "SharedSpikeCheck[" + spike + "]";
    }
}
