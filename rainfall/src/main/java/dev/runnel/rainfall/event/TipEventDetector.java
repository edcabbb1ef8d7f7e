package dev.runnel.rainfall.event;

import dev.runnel.internal.StateText;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Separates tips into events as they arrive. Made by {@link EventSeparation#ofTips}. Not thread-safe. Holds the tips of
 * the longest duration of which the peak is measured, and no more.
 *
 * <p>Peaks count the tips in half-open windows that begin with a tip; they carry the rounding to whole tips, which matters
 * where few tips fall into the window. To have peaks from tips spread over the time between them, make a series of
 * {@linkplain TippingBucket#depth depths} first.
 *
 * <p>A gauge that was out of work has told nothing in the meantime, and its silence would pass for a dry spell. Finish the
 * machine where the outage begins and start a new one where it ends; events at both edges then say that they are open. In a
 * whole record {@link EventSeparation#separate(dev.runnel.rainfall.gauge.Tips, Interval, TippingBucket,
 * java.util.Collection)} knows outages and goes on over them.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class TipEventDetector implements Machine<TipCount, RainfallEvent, TextState> {
    private final TippingBucket bucket;
    private final EventSeparation separation;
    private final long gap;
    private final EventBook book;

    private boolean hasBegun;
    private boolean hasEnded;
    private long recordStart;
    private long now;

    /** The instant of the last tips, and how many there were; they are measured once all of them are known. */
    private long group;

    private int inGroup;

    /** The last tip before that instant. */
    private boolean hasBefore;

    private long before;

    /** The last tip before the event in progress. */
    private boolean hasRainedBefore;

    private long rainBefore;

    TipEventDetector(TipSeparation rule) {
        this.bucket = rule.bucket();
        this.separation = rule.separation();
        this.gap = separation.minimumInterEvent().toNanos();
        this.book = new EventBook(separation, separation.tipDurations(), 0);
    }

    TipEventDetector(TipSeparation rule, StateText state) {
        this.bucket = rule.bucket();
        this.separation = rule.separation();
        this.gap = separation.minimumInterEvent().toNanos();
        EventBook.requireSame("tip", bucket.tipMm(), state.number("tip"));
        this.book = new EventBook(separation, separation.tipDurations(), 0, state);
        hasBegun = state.has("now");
        recordStart = hasBegun ? state.count("record-start") : 0;
        now = hasBegun ? state.count("now") : 0;
        inGroup = state.index("in-group");
        group = inGroup > 0 ? state.count("group") : 0;
        hasBefore = state.has("before");
        before = hasBefore ? state.count("before") : 0;
        hasRainedBefore = state.has("rain-before");
        rainBefore = hasRainedBefore ? state.count("rain-before") : 0;
        boolean isOrdered = recordStart <= now
                && inGroup >= 0
                && (inGroup == 0 || (hasBegun && group >= recordStart && group <= now && now - group < gap))
                && (!hasBefore || (before <= now && before >= recordStart && (inGroup == 0 || before < group)))
                && (!hasRainedBefore || rainBefore <= now)
                && (!book.isOpen() || (inGroup > 0 && hasBefore && book.to() == before && group - before < gap));
        if (!isOrdered) {
            throw new IllegalArgumentException(
                    "state must be that of a machine of the same rule, whose times of tips these cannot be");
        }
    }

    @Override
    public TextState state() {
        requireOpen();
        StateText state = StateText.of(TipSeparation.NAME, 1).with("tip", bucket.tipMm());
        if (hasBegun) {
            state.with("record-start", recordStart).with("now", now);
        }
        state.with("in-group", inGroup);
        if (inGroup > 0) {
            state.with("group", group);
        }
        if (hasBefore) {
            state.with("before", before);
        }
        if (hasRainedBefore) {
            state.with("rain-before", rainBefore);
        }
        return TextState.of(book.into(state).toString());
    }

    /**
     * Takes what the gauge tells.
     *
     * @param count number of tips at an instant
     * @return the event that is now known to be over and is deep enough, if there is one
     * @throws IllegalArgumentException if its time does not come after all that the machine was told
     */
    @Override
    public List<RainfallEvent> next(TipCount count) {
        requireOpen();
        long time = EpochNanos.of(count.time());
        if (hasBegun && time <= now) {
            throw new IllegalArgumentException(
                    "time must be after " + EpochNanos.toInstant(now) + ", was " + count.time());
        }
        Optional<RainfallEvent> ended = advance(time);
        if (count.tips() > 0) {
            take(time, count.tips());
        }
        return ended.stream().toList();
    }

    /**
     * Takes the next tip. Tips at one instant may come one after the other.
     *
     * @param tip its instant, not before anything this machine was told
     * @return the event that is now known to be over and is deep enough, if there is one
     * @throws IllegalArgumentException if the tip goes back in time
     * @throws IllegalStateException if the record has ended
     */
    public Optional<RainfallEvent> nextTip(Instant tip) {
        Objects.requireNonNull(tip, "tip");
        return nextTip(EpochNanos.of(tip));
    }

    /**
     * Takes the next tip without making an object of its instant.
     *
     * @param epochNanos ns since 1970-01-01T00:00:00Z, not before anything this machine was told
     * @return the event that is now known to be over and is deep enough, if there is one
     * @throws IllegalArgumentException if the tip goes back in time
     * @throws IllegalStateException if the record has ended
     */
    public Optional<RainfallEvent> nextTip(long epochNanos) {
        Optional<RainfallEvent> ended = advance(epochNanos);
        take(epochNanos, 1);
        return ended;
    }

    /**
     * Tells the machine that the gauge was at work until an instant and has not tipped again. The first call before any
     * tip says when the record begins.
     *
     * @param time the instant, not before anything this machine was told
     * @return the event that is now known to be over and is deep enough, if there is one
     * @throws IllegalArgumentException if the time goes back
     * @throws IllegalStateException if the record has ended
     */
    public Optional<RainfallEvent> advanceTo(Instant time) {
        return advance(EpochNanos.of(time));
    }

    private Optional<RainfallEvent> advance(long time) {
        requireOpen();
        if (hasBegun && time < now) {
            throw new IllegalArgumentException(
                    "time must not be before " + EpochNanos.toInstant(now) + ", was " + EpochNanos.toInstant(time));
        }
        if (!hasBegun) {
            recordStart = time;
            hasBegun = true;
        }
        now = time;
        // A difference that overflows is centuries long.
        boolean isOver = inGroup > 0 && (time - group >= gap || time - group < 0);
        return isOver ? end(false) : Optional.empty();
    }

    private void take(long time, int tips) {
        if (inGroup > 0 && group != time) {
            measureGroup();
        }
        group = time;
        inGroup = Math.addExact(inGroup, tips);
    }

    /** Gives the last tips their depth: the time since the tip before them sets intensity and so calibration. */
    private void measureGroup() {
        if (!book.isOpen()) {
            hasRainedBefore = hasBefore;
            rainBefore = before;
        }
        double sinceTipBefore = hasBefore ? (group - before) / (double) inGroup : Double.POSITIVE_INFINITY;
        double depth = bucket.depthOfTip(sinceTipBefore);
        for (int i = 0; i < inGroup; i++) {
            book.add(group, group, depth);
        }
        hasBefore = true;
        before = group;
        inGroup = 0;
    }

    private Optional<RainfallEvent> end(boolean openAtEnd) {
        measureGroup();
        long dry = book.from() - (hasRainedBefore ? rainBefore : recordStart);
        return book.close(
                new Antecedent(Duration.ofNanos(dry), !hasRainedBefore, 0),
                new RainfallEvent.Completeness(0, 0, !hasRainedBefore && dry < gap, openAtEnd));
    }

    /**
     * Ends the record.
     *
     * @return the event in progress, if there is one and it is deep enough
     */
    @Override
    public List<RainfallEvent> finish() {
        requireOpen();
        hasEnded = true;
        return inGroup > 0 ? end(true).stream().toList() : List.of();
    }

    private void requireOpen() {
        if (hasEnded) {
            throw new IllegalStateException("the record must not have ended, but finish() was called before");
        }
    }

    /**
     * Returns the number of events dropped so far for want of depth.
     *
     * @return count
     */
    public int droppedEvents() {
        return book.droppedEvents();
    }

    /**
     * Returns the depth of the events dropped so far.
     *
     * @return depth, mm
     */
    public double droppedMm() {
        return book.droppedMm();
    }

    /** How many tips are held. */
    int held() {
        return book.held();
    }

    @Override
    public String toString() {
        return "TipEventDetector["
                + (inGroup == 0
                        ? "no event in progress]"
                        : "event in progress, last tip " + EpochNanos.toInstant(group) + "]");
    }
}
