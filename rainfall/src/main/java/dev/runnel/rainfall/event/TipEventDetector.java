package dev.runnel.rainfall.event;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.io.Serializable;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Separates tips into events as they arrive. Holds the tips of the event in progress and a few counts. Not thread-safe.
 *
 * <p>Made by {@link EventSeparation#tipDetector}, whose rules hold. Peaks count the tips in half-open windows that begin
 * with a tip; they carry the rounding to whole tips, which matters where few tips fall into the window. To have peaks
 * from tips spread over the time between them, make a series of {@linkplain TippingBucket#depth depths} first.
 *
 * <p>Its whole memory is a {@link State}: keep that, and {@link EventSeparation#tipDetector(TippingBucket, State)} goes on
 * where this machine stopped, also in the middle of a storm.
 *
 * <p>A gauge that was out of work has told nothing in the meantime, and its silence would pass for a dry spell. Finish the
 * machine where the outage begins and start a new one where it ends; events at both edges then say that they are open. In a
 * whole record {@link EventSeparation#separate(dev.runnel.rainfall.gauge.Tips, Interval, TippingBucket,
 * java.util.Collection)} knows outages and goes on over them.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class TipEventDetector {
    private static final long UNKNOWN = Long.MIN_VALUE;

    private final EventSeparation rule;
    private final TippingBucket bucket;
    private final List<Duration> durations;
    private final long gap;
    private final CompensatedSum dropped;

    private long[] current;
    private int size;
    private int droppedEvents;
    private boolean finished;

    private long recordStart = UNKNOWN;
    private long now = UNKNOWN;
    private long lastTip = UNKNOWN;
    private long tipBeforeEvent = UNKNOWN;

    /**
     * All that a detector remembers: serialisable as it is or field by field. Times are ns since 1970-01-01T00:00:00Z. Immutable
     * and thread-safe.
     *
     * <p>Experimental: what a detector has to remember may change with what it can do.
     *
     * @param begun whether it was told of any tip or time
     * @param recordStartNanos the first of them; meaningful if {@code begun}
     * @param nowNanos the last of them; meaningful if {@code begun}
     * @param tipped whether there was a tip before the event in progress, or any tip if no event is in progress
     * @param tipBeforeNanos the last such tip; meaningful if {@code tipped}
     * @param tipsNanos tips of the event in progress; empty if there is none
     * @param droppedEvents events dropped so far
     * @param droppedMm their depth, mm
     * @param droppedLostMm what rounding took from it, mm
     * @serial exclude
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record State(
            boolean begun,
            long recordStartNanos,
            long nowNanos,
            boolean tipped,
            long tipBeforeNanos,
            List<Long> tipsNanos,
            int droppedEvents,
            double droppedMm,
            double droppedLostMm)
            implements Serializable {
        static final State INITIAL = new State(false, 0, 0, false, 0, List.of(), 0, 0, 0);

        /**
         * Copies the list.
         *
         * @param begun whether it was told of any tip or time
         * @param recordStartNanos the first of them
         * @param nowNanos the last of them
         * @param tipped whether there was a tip before the event in progress
         * @param tipBeforeNanos the last such tip
         * @param tipsNanos tips of the event in progress
         * @param droppedEvents events dropped so far
         * @param droppedMm their depth, mm
         * @param droppedLostMm what rounding took from it, mm
         */
        public State {
            tipsNanos = List.copyOf(tipsNanos);
        }
    }

    TipEventDetector(EventSeparation rule, TippingBucket bucket, State state, List<Duration> durations) {
        this.rule = rule;
        this.bucket = bucket;
        this.durations = durations;
        this.gap = rule.minimumInterEvent().toNanos();
        dropped = CompensatedSum.ofParts(state.droppedMm(), state.droppedLostMm());
        droppedEvents = state.droppedEvents();
        recordStart = state.begun() ? state.recordStartNanos() : UNKNOWN;
        now = state.begun() ? state.nowNanos() : UNKNOWN;
        tipBeforeEvent = state.tipped() ? state.tipBeforeNanos() : UNKNOWN;
        size = state.tipsNanos().size();
        current = Arrays.copyOf(
                state.tipsNanos().stream().mapToLong(Long::longValue).toArray(), Math.max(64, size));
        lastTip = size > 0 ? current[size - 1] : tipBeforeEvent;
        requireConsistent(state);
    }

    private void requireConsistent(State state) {
        boolean ordered = size == 0 || (tipBeforeEvent <= current[0] && recordStart <= current[0]);
        for (int i = 1; i < size; i++) {
            ordered &= current[i] >= current[i - 1] && current[i] - current[i - 1] < gap;
        }
        if (!ordered || lastTip > now || (size > 0 && now - lastTip >= gap)) {
            throw new IllegalArgumentException(
                    "state must be that of a detector with the same rule, " + rule + ", was " + state);
        }
    }

    /**
     * Returns all that the detector remembers.
     *
     * @return the state after the last tip or time
     * @throws IllegalStateException if the record was finished
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public State state() {
        requireOpen();
        boolean begun = now != UNKNOWN;
        long before = size > 0 ? tipBeforeEvent : lastTip;
        boolean tipped = before != UNKNOWN;
        return new State(
                begun,
                begun ? recordStart : 0,
                begun ? now : 0,
                tipped,
                tipped ? before : 0,
                Arrays.stream(current, 0, size).boxed().toList(),
                droppedEvents,
                dropped.sum(),
                dropped.lost());
    }

    /**
     * Takes the next tip.
     *
     * @param tip its instant, not before anything this machine was told
     * @return the event that is now known to be over and is deep enough, if there is one
     * @throws IllegalArgumentException if the tip goes back in time
     * @throws IllegalStateException if the record was finished
     */
    public Optional<RainfallEvent> next(Instant tip) {
        return next(EpochNanos.of(tip));
    }

    /**
     * Takes the next tip without making an object of its instant.
     *
     * @param epochNanos ns since 1970-01-01T00:00:00Z, not before anything this machine was told
     * @return the event that is now known to be over and is deep enough, if there is one
     * @throws IllegalArgumentException if the tip goes back in time
     * @throws IllegalStateException if the record was finished
     */
    public Optional<RainfallEvent> next(long epochNanos) {
        Optional<RainfallEvent> ended = advance(epochNanos);
        if (size == 0) {
            tipBeforeEvent = lastTip;
        }
        if (size == current.length) {
            current = Arrays.copyOf(current, size + (size >> 1));
        }
        current[size++] = epochNanos;
        lastTip = epochNanos;
        return ended;
    }

    /**
     * Tells the machine that the gauge was at work until an instant and has not tipped again. The first call before any
     * tip says when the record begins.
     *
     * @param time the instant, not before anything this machine was told
     * @return the event that is now known to be over and is deep enough, if there is one
     * @throws IllegalArgumentException if the time goes back
     * @throws IllegalStateException if the record was finished
     */
    public Optional<RainfallEvent> advanceTo(Instant time) {
        return advance(EpochNanos.of(time));
    }

    private Optional<RainfallEvent> advance(long time) {
        requireOpen();
        if (time < now) {
            throw new IllegalArgumentException(
                    "time must not be before " + EpochNanos.toInstant(now) + ", was " + EpochNanos.toInstant(time));
        }
        if (now == UNKNOWN) {
            recordStart = time;
        }
        now = time;
        return size > 0 && time - lastTip >= gap ? end(false) : Optional.empty();
    }

    /**
     * Ends the record; nothing may follow.
     *
     * @return the event in progress, if there is one and it is deep enough
     * @throws IllegalStateException if the record was finished already
     */
    public Optional<RainfallEvent> finish() {
        requireOpen();
        finished = true;
        return size == 0 ? Optional.empty() : end(true);
    }

    private void requireOpen() {
        if (finished) {
            throw new IllegalStateException("the record was finished");
        }
    }

    private Optional<RainfallEvent> end(boolean openAtEnd) {
        double[] depths = depths();
        double depth = CompensatedSum.of(depths, 0, size);
        Optional<RainfallEvent> event = Optional.empty();
        if (rule.keeps(depth)) {
            event = Optional.of(measured(depths, depth, openAtEnd));
        } else {
            droppedEvents++;
            dropped.add(depth);
        }
        size = 0;
        return event;
    }

    /** The tip before the event is needed too: it sets the intensity, and so the calibration, of the first one. */
    private double[] depths() {
        if (tipBeforeEvent == UNKNOWN) {
            return bucket.tipDepths(Tips.ofEpochNanos(Arrays.copyOf(current, size)));
        }
        long[] times = new long[size + 1];
        times[0] = tipBeforeEvent;
        System.arraycopy(current, 0, times, 1, size);
        return Arrays.copyOfRange(bucket.tipDepths(Tips.ofEpochNanos(times)), 1, size + 1);
    }

    private RainfallEvent measured(double[] depths, double depth, boolean openAtEnd) {
        boolean rainedBefore = tipBeforeEvent != UNKNOWN;
        long dry = current[0] - (rainedBefore ? tipBeforeEvent : recordStart);
        return new RainfallEvent(
                Interval.of(EpochNanos.toInstant(current[0]), EpochNanos.toInstant(current[size - 1])),
                depth,
                durations.stream().map(duration -> peak(depths, duration)).toList(),
                new Antecedent(Duration.ofNanos(dry), !rainedBefore, 0),
                new RainfallEvent.Completeness(0, 0, !rainedBefore && dry < gap, openAtEnd));
    }

    private PeakDepth peak(double[] depths, Duration duration) {
        long window = duration.toNanos();
        double running = 0;
        double best = 0;
        int bestFrom = 0;
        int bestTo = 0;
        int to = 0;
        for (int from = 0; from < size; from++) {
            while (to < size && current[to] - current[from] < window) {
                running += depths[to++];
            }
            // A hair's breadth more is rounding of the running sum, not a deeper window.
            if (running > best * (1 + 1e-12)) {
                best = running;
                bestFrom = from;
                bestTo = to;
            }
            running -= depths[from];
        }
        return new PeakDepth(
                duration, CompensatedSum.of(depths, bestFrom, bestTo), EpochNanos.toInstant(current[bestFrom]));
    }

    /**
     * Returns the number of events dropped so far for want of depth.
     *
     * @return count
     */
    public int droppedEvents() {
        return droppedEvents;
    }

    /**
     * Returns the depth of the events dropped so far.
     *
     * @return depth, mm
     */
    public double droppedMm() {
        return dropped.value();
    }

    @Override
    public String toString() {
        return "TipEventDetector[" + (size == 0 ? "no event in progress]" : size + " tips in progress]");
    }
}
