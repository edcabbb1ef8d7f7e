package dev.runnel.timeseries.balance;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * Counts spills one discharge after another. Not thread-safe.
 *
 * @see SpillCount#start()
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SpillCounter implements Machine<Interval, Interval, TextState> {
    private static final String STATE = "spill-count";

    private final SpillCount rule;
    private final MachineClock clock;
    private long count;
    private long discharges;
    private long duration;

    /** End of the last block counted, and of the last discharge; of none before the first. */
    private long blockEnd;

    private long lastEnd;

    SpillCounter(SpillCount rule) {
        this.rule = rule;
        this.clock = new MachineClock();
    }

    SpillCounter(SpillCount rule, TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        this.rule = rule;
        this.clock = MachineClock.from(text);
        count = text.count("count");
        discharges = text.count("discharges");
        duration = text.count("duration");
        blockEnd = text.count("blockend");
        lastEnd = text.count("end");
    }

    /**
     * Takes the next discharge.
     *
     * @param discharge not empty; at or after the end of the one before
     * @return the blocks that it makes count, in order of time; empty if it falls into a block counted before
     * @throws IllegalArgumentException if it is empty or starts before the one before it ends
     * @throws IllegalStateException after {@link #finish}
     */
    @Override
    public List<Interval> next(Interval discharge) {
        if (discharge.isEmpty()) {
            throw new IllegalArgumentException("discharge must not be empty, was " + discharge);
        }
        long start = EpochNanos.of(discharge.start());
        long end = EpochNanos.of(discharge.end());
        clock.requireAfter(start);
        if (count > 0 && start < lastEnd) {
            throw new IllegalArgumentException("discharge must not start before the one before it ends, at "
                    + EpochNanos.toInstant(lastEnd) + ", was " + discharge);
        }
        clock.moveTo(start);
        if (count > 0 && rule.mergeGap() > 0 && start - lastEnd <= rule.mergeGap()) {
            start = lastEnd;
        } else {
            discharges++;
        }
        List<Interval> counted = new ArrayList<>();
        if (count == 0 || start >= later(blockEnd, rule.nextBlock())) {
            // The first of all, or a whole block passed dry: a new sequence.
            countBlock(start, rule.firstBlock(), counted);
        } else if (start >= blockEnd) {
            countBlock(blockEnd, rule.nextBlock(), counted);
        }
        while (end > blockEnd) {
            countBlock(blockEnd, rule.nextBlock(), counted);
        }
        duration += end - start;
        lastEnd = end;
        return counted;
    }

    private void countBlock(long start, long length, List<Interval> counted) {
        blockEnd = later(start, length);
        count++;
        counted.add(Interval.of(EpochNanos.toInstant(start), EpochNanos.toInstant(blockEnd)));
    }

    /** A block may reach beyond the last instant that can be counted; it then ends there. */
    private static long later(long time, long length) {
        return time > Long.MAX_VALUE - length ? Long.MAX_VALUE : time + length;
    }

    /**
     * Returns what the counter came to so far.
     *
     * @return the tally
     */
    public SpillTally tally() {
        return new SpillTally(count, discharges, Duration.ofNanos(duration));
    }

    /**
     * Ends the list of discharges. Nothing is still open: each block is given when it begins to count.
     *
     * @return nothing
     * @throws IllegalStateException if called a second time
     */
    @Override
    public List<Interval> finish() {
        clock.end();
        return List.of();
    }

    @Override
    public TextState state() {
        return TextState.of(clock.into(StateText.of(STATE, 1)
                        .with("count", count)
                        .with("discharges", discharges)
                        .with("duration", duration)
                        .with("blockend", blockEnd)
                        .with("end", lastEnd))
                .toString());
    }

    @Override
    public String toString() {
        return "SpillCounter[" + rule + ", " + tally() + "]";
    }
}
