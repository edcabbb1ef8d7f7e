package dev.runnel.timeseries.balance;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Counts the spills of an overflow by one of the published rules; the package page states them. Immutable and thread-safe.
 * {@link #count(List)} counts a list of discharges, {@link #start()} one after another, with the same result.
 *
 * <p>A sensor that chatters makes many short discharges of one. Merging those that are closer than a gap is not part of
 * any rule; it is off unless {@linkplain #withMergeGap set}, and the gaps then count as discharge.
 *
 * <p>A count over a year is the count of that year's discharges: {@linkplain Discharges#within cut} those that run over its
 * ends first, and say so, for no rule tells whether a sequence runs over 31 December. Local permits decide what counts as
 * a spill.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SpillCount implements Rule<Interval, Interval, TextState> {
    /** How discharges become spills. */
    enum Way {
        BLOCKS,
        EVENTS,
        DAYS,
        DAYS_SHORT_ONES_ONCE
    }

    private static final long HOUR = 3_600_000_000_000L;
    private static final SpillCount TWELVE_TWENTY_FOUR =
            new SpillCount(Way.BLOCKS, 12 * HOUR, 24 * HOUR, ZoneOffset.UTC, 0);

    private final Way way;
    private final long first;
    private final long next;
    private final ZoneId zone;
    private final long mergeGap;

    private SpillCount(Way way, long first, long next, ZoneId zone, long mergeGap) {
        this.way = way;
        this.first = first;
        this.next = next;
        this.zone = zone;
        this.mergeGap = mergeGap;
    }

    /**
     * Returns the 12/24-hour rule: blocks of 12 hours, then of 24.
     *
     * @return the rule, without merging
     */
    public static SpillCount twelveTwentyFour() {
        return TWELVE_TWENTY_FOUR;
    }

    /**
     * Returns the rule that counts events parted by a time without discharge.
     *
     * @param apart shortest time without discharge that parts two events; greater than 0
     * @return the rule; an event has no longest duration
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public static SpillCount eventsApart(Duration apart) {
        return new SpillCount(Way.EVENTS, EpochNanos.positive("apart", apart), Long.MAX_VALUE, ZoneOffset.UTC, 0);
    }

    /**
     * Returns the rule of events with a longest duration: an event that lasts longer counts once more from there.
     *
     * @param longest longest duration of an event; greater than 0, and longer than a millionth of every discharge
     * @return the new rule
     * @throws IllegalArgumentException if it is not greater than 0, or this rule does not count events
     */
    public SpillCount withLongestEvent(Duration longest) {
        if (way != Way.EVENTS) {
            throw new IllegalArgumentException("a longest event must belong to a rule of events, was " + this);
        }
        return new SpillCount(way, first, EpochNanos.positive("longest", longest), zone, mergeGap);
    }

    /**
     * Returns the rule that counts local days with any discharge.
     *
     * @param zone zone of the days
     * @return the rule
     */
    public static SpillCount days(ZoneId zone) {
        Objects.requireNonNull(zone, "zone");
        return new SpillCount(Way.DAYS, 0, 0, zone, 0);
    }

    /**
     * Returns the rule of days in which a discharge of less than 24 hours counts on the day of its start only, though it
     * runs over midnight.
     *
     * @return the new rule
     * @throws IllegalArgumentException if this rule does not count days
     */
    public SpillCount withShortOnesOnce() {
        if (way != Way.DAYS && way != Way.DAYS_SHORT_ONES_ONCE) {
            throw new IllegalArgumentException("short discharges once must belong to a rule of days, was " + this);
        }
        return new SpillCount(Way.DAYS_SHORT_ONES_ONCE, first, next, zone, mergeGap);
    }

    /**
     * Returns the rule with discharges merged that are close together.
     *
     * @param mergeGap longest time between the end of one and the start of the next that makes them one; 0 or longer
     * @return the new rule
     * @throws IllegalArgumentException if it is negative
     */
    public SpillCount withMergeGap(Duration mergeGap) {
        return new SpillCount(way, first, next, zone, EpochNanos.nonNegative("mergeGap", mergeGap));
    }

    /**
     * Counts the spills of a list of discharges.
     *
     * @param discharges when the overflow discharged, in order of time, none empty, none overlapping
     * @return the tally
     * @throws IllegalArgumentException if a discharge is empty, starts before the one before it ends, or would count as a million
     *     events or more
     */
    public SpillTally count(List<Interval> discharges) {
        SpillCounter counter = start();
        discharges.forEach(counter::next);
        counter.finish();
        return counter.tally();
    }

    /**
     * Starts a counter that takes one discharge after another and gives the blocks, events or days that it makes count.
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
        return TextState.readBy(text, this::start);
    }

    Way way() {
        return way;
    }

    /** The first block, or the time that parts events. */
    long first() {
        return first;
    }

    /** The following blocks, or the longest event. */
    long next() {
        return next;
    }

    ZoneId zone() {
        return zone;
    }

    long mergeGap() {
        return mergeGap;
    }

    private static String duration(long nanos) {
        return Text.duration(Duration.ofNanos(nanos));
    }

    @Override
    public String toString() {
        String rule = switch (way) {
            case BLOCKS -> "first block " + duration(first) + ", next " + duration(next);
            case EVENTS ->
                "events " + duration(first) + " apart"
                        + (next == Long.MAX_VALUE ? "" : ", of at most " + duration(next));
            case DAYS -> "days in " + zone;
            case DAYS_SHORT_ONES_ONCE -> "days in " + zone + ", discharges under 1 d once";
        };
        return "SpillCount[" + rule + ", merge gap " + duration(mergeGap) + "]";
    }
}
