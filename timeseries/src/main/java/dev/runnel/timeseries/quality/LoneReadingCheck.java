package dev.runnel.timeseries.quality;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Looks for readings that stand alone: one leaps and the next is back, while the companion of the same time stands still. So
 * a false echo of a depth beside a steady velocity is told, and a velocity that dropped out beside a steady depth, also where
 * readings are so far apart that a {@link SpikeCheck} would take a storm for a spike. What stands alone fails; all else
 * passes. Immutable and thread-safe.
 *
 * <p>The share of a reading is |x - m|/max(|x|, |m|), m the mean of its two neighbours; that of its companion the lesser of
 * those against each of its own two, of which one may have dropped out. A reading stands alone if its deviation |x - m| is
 * above the limit, its share above 0.5, that of its companion below 0.2 of it, and its neighbours differ by a quarter of the
 * deviation or less. A reading beside one with a larger deviation is spared, and the neighbours are the nearest usable
 * readings with at most ten others between. A companion of exactly 0 says nothing, and where there is none, nothing is judged.
 * These limits are chosen here.
 *
 * @param above deviation above which a reading may stand alone, in its unit; 0 or greater, finite
 * @param maximumGap longest time to a neighbour; greater than 0
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record LoneReadingCheck(double above, Duration maximumGap) implements PairCheck {
    private static final String STATE = "lone-reading-check";

    /**
     * Checks the limits.
     *
     * @param above deviation above which a reading may stand alone
     * @param maximumGap longest time to a neighbour
     * @throws IllegalArgumentException if the deviation is negative or not finite, or the gap is not greater than 0
     */
    public LoneReadingCheck {
        Require.nonNegative("above", above, "");
        EpochNanos.positive("maximumGap", maximumGap);
    }

    /**
     * Returns the check.
     *
     * @param above deviation above which a reading may stand alone, in its unit; 0 or greater, finite
     * @param maximumGap longest time to a neighbour; greater than 0
     * @return the check
     * @throws IllegalArgumentException if the deviation is negative or not finite, or the gap is not greater than 0
     */
    public static LoneReadingCheck of(double above, Duration maximumGap) {
        return new LoneReadingCheck(above, maximumGap);
    }

    /** How far readings are off their neighbours, which the window reckons. */
    SpikeCheck spike() {
        return SpikeCheck.of(above, above).withMaximumGap(maximumGap).withNeighboursSpared();
    }

    @Override
    public String name() {
        return "lone reading";
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
        return "LoneReadingCheck[above " + Text.significant(above, 6) + ", neighbours within "
                + Text.duration(maximumGap) + "]";
    }
}
