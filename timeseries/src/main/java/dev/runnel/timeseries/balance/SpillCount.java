package dev.runnel.timeseries.balance;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.util.List;
import org.apiguardian.api.API;

/**
 * Counts the spills of an overflow by the 12/24-hour rule; the package page states it. Immutable and thread-safe.
 * {@link #count(List)} counts a list of discharges, {@link #start()} one after another, with the same result.
 *
 * <p>A sensor that chatters makes many short discharges of one. Merging those that are closer than a gap is not part of
 * the rule; it is off unless {@linkplain #withMergeGap set}, and the gaps then count as discharge.
 *
 * <p>A count over a year is the count of that year's discharges: cut those that run over its ends first, and say so, for
 * the rule does not tell whether a sequence runs over 31 December. Local permits decide what counts as a spill.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SpillCount implements Rule<Interval, Interval, TextState> {
    private static final SpillCount TWELVE_TWENTY_FOUR =
            new SpillCount(Duration.ofHours(12).toNanos(), Duration.ofHours(24).toNanos(), 0);

    private final long firstBlock;
    private final long nextBlock;
    private final long mergeGap;

    private SpillCount(long firstBlock, long nextBlock, long mergeGap) {
        this.firstBlock = firstBlock;
        this.nextBlock = nextBlock;
        this.mergeGap = mergeGap;
    }

    /**
     * Returns the rule with a first block of 12 hours and following blocks of 24.
     *
     * @return the rule, without merging
     */
    public static SpillCount twelveTwentyFour() {
        return TWELVE_TWENTY_FOUR;
    }

    /**
     * Returns the rule with discharges merged that are close together.
     *
     * @param mergeGap longest time between the end of one and the start of the next that makes them one; 0 or longer
     * @return the new rule
     * @throws IllegalArgumentException if it is negative
     */
    public SpillCount withMergeGap(Duration mergeGap) {
        return new SpillCount(firstBlock, nextBlock, EpochNanos.nonNegative("mergeGap", mergeGap));
    }

    /**
     * Counts the spills of a list of discharges.
     *
     * @param discharges when the overflow discharged, in order of time, none empty, none overlapping
     * @return the tally
     * @throws IllegalArgumentException if a discharge is empty or starts before the one before it ends
     */
    public SpillTally count(List<Interval> discharges) {
        SpillCounter counter = start();
        discharges.forEach(counter::next);
        return counter.tally();
    }

    /**
     * Starts a counter that takes one discharge after another and gives the blocks that it makes count.
     *
     * @return a new counter
     */
    @Override
    public SpillCounter start() {
        return new SpillCounter(this);
    }

    @Override
    public SpillCounter start(TextState state) {
        return new SpillCounter(this, state);
    }

    @Override
    public TextState parseState(String text) {
        TextState state = TextState.of(text);
        start(state);
        return state;
    }

    long firstBlock() {
        return firstBlock;
    }

    long nextBlock() {
        return nextBlock;
    }

    long mergeGap() {
        return mergeGap;
    }

    @Override
    public String toString() {
        return "SpillCount[first block " + Text.duration(Duration.ofNanos(firstBlock)) + ", next "
                + Text.duration(Duration.ofNanos(nextBlock)) + ", merge gap "
                + Text.duration(Duration.ofNanos(mergeGap)) + "]";
    }
}
