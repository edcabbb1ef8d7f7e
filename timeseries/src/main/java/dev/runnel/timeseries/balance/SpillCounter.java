package dev.runnel.timeseries.balance;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * Counts spills one discharge after another. Not thread-safe.
 *
 * <p>With a merge gap a discharge counts only when it is known to be over: when the next one comes later than the gap, or
 * at the end of the list.
 *
 * @see SpillCount#start()
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SpillCounter implements Machine<Interval, Interval, TextState> {
    private static final String STATE = "spill-count";
    private static final long DAY = 86_400_000_000_000L;

    /** Events that one discharge may count as; chosen here: 19 years of events of 10 minutes. More would be a slip of units. */
    private static final long MOST_OF_ONE = 1_000_000;

    private final SpillCount rule;
    private final MachineClock clock;
    private long count;
    private long discharges;
    private long duration;

    /** The discharge that may still grow by merging; none if its end is not after its start. */
    private long openStart = Long.MIN_VALUE;

    private long openEnd = Long.MIN_VALUE;

    /** End of the last block, start of the last event, or the day after the last that counted; once something counted. */
    private long mark;

    /** End of the last discharge that was counted. */
    private long lastEnd = Long.MIN_VALUE;

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
        openStart = text.count("openstart");
        openEnd = text.count("openend");
        mark = text.count("mark");
        lastEnd = text.count("end");
    }

    /**
     * Takes the next discharge.
     *
     * @param discharge not empty; at or after the end of the one before
     * @return the blocks, events or days that are now known to count, in order of time; often none
     * @throws IllegalArgumentException if it is empty or starts before the one before it ends, or would count as a million events or
     *     more, for which a longest event is far too short, or all discharges last more than 292 years
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
        if (clock.hasBegun() && start < Math.max(openEnd, lastEnd)) {
            throw new IllegalArgumentException("discharge must not start before the one before it ends, at "
                    + EpochNanos.toInstant(Math.max(openEnd, lastEnd)) + ", was " + discharge);
        }
        boolean merged = rule.mergeGap() > 0 && openEnd > openStart && start <= later(openEnd, rule.mergeGap());
        requireCountable(merged ? openStart : start, end, discharge);
        requireSummable(merged ? openStart : start, merged, end, discharge);
        clock.moveTo(start);
        if (rule.mergeGap() == 0) {
            return take(start, end);
        }
        if (merged) {
            openEnd = end;
            return List.of();
        }
        List<Interval> counted = flush();
        openStart = start;
        openEnd = end;
        return counted;
    }

    private void requireCountable(long start, long end, Interval discharge) {
        if (rule.way() == SpillCount.Way.EVENTS && (end - start < 0 || (end - start) / rule.next() >= MOST_OF_ONE)) {
            throw new IllegalArgumentException("discharge must make fewer than " + MOST_OF_ONE + " events of at most "
                    + Text.duration(Duration.ofNanos(rule.next())) + ", was " + discharge
                    + (EpochNanos.of(discharge.start()) == start
                            ? ""
                            : ", merged from " + EpochNanos.toInstant(start)));
        }
    }

    /** The time above the crest is counted in nanoseconds, which hold 292 years. */
    private void requireSummable(long start, boolean merged, long end, Interval discharge) {
        long open = rule.mergeGap() > 0 && !merged && openEnd > openStart ? openEnd - openStart : 0;
        try {
            Math.addExact(duration, Math.addExact(open, Math.subtractExact(end, start)));
        } catch (ArithmeticException e) {
            throw new IllegalArgumentException(
                    "discharges must last at most 292 years in all, did longer with " + discharge, e);
        }
    }

    private List<Interval> flush() {
        return openEnd > openStart ? take(openStart, openEnd) : List.of();
    }

    private List<Interval> take(long start, long end) {
        List<Interval> counted = new ArrayList<>();
        switch (rule.way()) {
            case BLOCKS -> blocks(start, end, counted);
            case EVENTS -> events(start, end, counted);
            case DAYS, DAYS_SHORT_ONES_ONCE -> days(start, end, counted);
        }
        discharges++;
        duration += end - start;
        lastEnd = end;
        return counted;
    }

    private void blocks(long start, long end, List<Interval> counted) {
        if (count == 0 || start >= later(mark, rule.next())) {
            // The first of all, or a whole block passed dry: a new sequence.
            block(start, rule.first(), counted);
        } else if (start >= mark) {
            block(mark, rule.next(), counted);
        }
        while (end > mark) {
            block(mark, rule.next(), counted);
        }
    }

    private void block(long start, long length, List<Interval> counted) {
        mark = later(start, length);
        add(start, mark, counted);
    }

    private void events(long start, long end, List<Interval> counted) {
        boolean apart = count == 0 || start >= later(lastEnd, rule.first()) || start >= later(mark, rule.next());
        if (apart) {
            mark = start;
            add(start, end, counted);
        }
        while (end > later(mark, rule.next())) {
            mark = later(mark, rule.next());
            add(mark, end, counted);
        }
    }

    private void days(long start, long end, List<Interval> counted) {
        LocalDate day = date(start);
        boolean once = rule.way() == SpillCount.Way.DAYS_SHORT_ONES_ONCE && end - start < DAY;
        LocalDate last = once ? day : date(end - 1);
        for (; !day.isAfter(last); day = day.plusDays(1)) {
            long from = EpochNanos.of(day.atStartOfDay(rule.zone()).toInstant());
            long to = EpochNanos.of(day.plusDays(1).atStartOfDay(rule.zone()).toInstant());
            if (count == 0 || from >= mark) {
                mark = to;
                add(from, to, counted);
            }
        }
    }

    private LocalDate date(long time) {
        return EpochNanos.toInstant(time).atZone(rule.zone()).toLocalDate();
    }

    private void add(long start, long end, List<Interval> counted) {
        count++;
        counted.add(Interval.of(EpochNanos.toInstant(start), EpochNanos.toInstant(end)));
    }

    /** A block may reach beyond the last instant that can be counted; it then ends there. */
    private static long later(long time, long length) {
        return time > Long.MAX_VALUE - length ? Long.MAX_VALUE : time + length;
    }

    /**
     * Returns what the counter came to so far; with a merge gap the last discharge is in it only after {@link #finish}.
     *
     * @return the tally
     */
    public SpillTally tally() {
        return new SpillTally(count, discharges, Duration.ofNanos(duration));
    }

    /**
     * Ends the list of discharges.
     *
     * @return what the last discharge makes count, if merging held it back
     * @throws IllegalStateException if called a second time
     */
    @Override
    public List<Interval> finish() {
        clock.end();
        return flush();
    }

    @Override
    public TextState state() {
        return TextState.of(clock.into(StateText.of(STATE, 1)
                        .with("count", count)
                        .with("discharges", discharges)
                        .with("duration", duration)
                        .with("openstart", openStart)
                        .with("openend", openEnd)
                        .with("mark", mark)
                        .with("end", lastEnd))
                .toString());
    }

    @Override
    public String toString() {
        return "SpillCounter[" + rule + ", " + tally() + "]";
    }
}
