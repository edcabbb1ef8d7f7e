package dev.runnel.timeseries.balance;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.io.Serializable;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * Counts spills one discharge after another. Not thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class SpillCounter {
    /**
     * All that a counter remembers: small, and serialisable as it is or field by field. Times are ns since
     * 1970-01-01T00:00:00Z.
     *
     * <p>Experimental: what a counter has to remember may change with what it can do.
     *
     * @param count blocks counted so far
     * @param discharges discharges so far, after merging
     * @param durationNanos time of discharge so far, ns
     * @param blockEndNanos end of the last block counted; meaningful if {@code count} is greater than 0
     * @param lastEndNanos end of the last discharge; meaningful if {@code count} is greater than 0
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record State(long count, long discharges, long durationNanos, long blockEndNanos, long lastEndNanos)
            implements Serializable {
        static final State INITIAL = new State(0, 0, 0, 0, 0);
    }

    private final SpillCount rule;
    private long count;
    private long discharges;
    private long duration;
    private long blockEnd;
    private long lastEnd;

    SpillCounter(SpillCount rule, State state) {
        this.rule = rule;
        count = state.count();
        discharges = state.discharges();
        duration = state.durationNanos();
        blockEnd = state.blockEndNanos();
        lastEnd = state.lastEndNanos();
    }

    /**
     * Takes the next discharge.
     *
     * @param discharge not empty; at or after the end of the one before
     * @return the blocks that it makes count, in order of time; empty if it falls into a block counted before
     * @throws IllegalArgumentException if it is empty or starts before the one before it ends
     */
    public List<Interval> next(Interval discharge) {
        if (discharge.isEmpty()) {
            throw new IllegalArgumentException("discharge must not be empty, was " + discharge);
        }
        long start = EpochNanos.of(discharge.start());
        long end = EpochNanos.of(discharge.end());
        if (count > 0 && start < lastEnd) {
            throw new IllegalArgumentException("discharge must not start before the one before it ends, at "
                    + EpochNanos.toInstant(lastEnd) + ", was " + discharge);
        }
        if (count > 0 && rule.mergeGap() > 0 && start - lastEnd <= rule.mergeGap()) {
            start = lastEnd;
        } else {
            discharges++;
        }
        List<Interval> counted = new ArrayList<>();
        if (count == 0 || start >= blockEnd + rule.nextBlock()) {
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
        blockEnd = start + length;
        count++;
        counted.add(Interval.of(EpochNanos.toInstant(start), EpochNanos.toInstant(blockEnd)));
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
     * Returns all that the counter remembers.
     *
     * @return the state after the last discharge
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public State state() {
        return new State(count, discharges, duration, blockEnd, lastEnd);
    }

    @Override
    public String toString() {
        return "SpillCounter[" + rule + ", " + tally() + "]";
    }
}
