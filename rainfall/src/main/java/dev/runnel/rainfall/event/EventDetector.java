package dev.runnel.rainfall.event;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.io.Serializable;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Separates a record of fixed steps into events as it arrives. Holds the steps of the event in progress and a few
 * counts. Not thread-safe.
 *
 * <p>Made by {@link EventSeparation#detector}, whose rules hold. Its whole memory is a {@link State}: keep that, and
 * {@link EventSeparation#detector(State)} goes on where this machine stopped, also in the middle of a storm.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class EventDetector {
    private final EventSeparation rule;
    private final long start;
    private final long step;
    private final List<Duration> durations;
    private final long dryStepsToEnd;

    private long steps;
    private int missingSteps;
    private int droppedEvents;
    private final CompensatedSum dropped;
    private final CompensatedSum stray;
    private boolean finished;

    /** First step after the last event, kept or not; 0 as long as none has ended. */
    private long dryFrom;

    /** Missing steps between there and the event in progress, or now. */
    private int missingBefore;

    private double[] current = new double[64];
    private int size;
    private int wetSize;

    /**
     * All that a detector remembers: serialisable as it is or field by field. Times are ns since 1970-01-01T00:00:00Z. Immutable
     * and thread-safe.
     *
     * <p>Experimental: what a detector has to remember may change with what it can do.
     *
     * @param startNanos start of the first step
     * @param stepNanos length of a step, ns
     * @param steps steps taken so far
     * @param dryFromStep first step after the last event that has ended; 0 if none has
     * @param missingBefore missing steps between there and the event in progress, or the last step if there is none
     * @param depthsMm depths of all steps since the event in progress began, mm, NaN for missing; empty if there is none
     * @param missingSteps missing steps so far
     * @param droppedEvents events dropped so far
     * @param droppedMm their depth, mm
     * @param droppedLostMm what rounding took from it, mm
     * @param strayMm rain outside every event so far, mm
     * @param strayLostMm what rounding took from it, mm
     * @serial exclude
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record State(
            long startNanos,
            long stepNanos,
            long steps,
            long dryFromStep,
            int missingBefore,
            List<Double> depthsMm,
            int missingSteps,
            int droppedEvents,
            double droppedMm,
            double droppedLostMm,
            double strayMm,
            double strayLostMm)
            implements Serializable {
        /**
         * Copies the list.
         *
         * @param startNanos start of the first step
         * @param stepNanos length of a step, ns
         * @param steps steps taken so far
         * @param dryFromStep first step after the last event that has ended
         * @param missingBefore missing steps between there and the event in progress
         * @param depthsMm depths since the event in progress began, mm
         * @param missingSteps missing steps so far
         * @param droppedEvents events dropped so far
         * @param droppedMm their depth, mm
         * @param droppedLostMm what rounding took from it, mm
         * @param strayMm rain outside every event so far, mm
         * @param strayLostMm what rounding took from it, mm
         */
        public State {
            depthsMm = List.copyOf(depthsMm);
        }

        static State initial(long startNanos, long stepNanos) {
            return new State(startNanos, stepNanos, 0, 0, 0, List.of(), 0, 0, 0, 0, 0, 0);
        }
    }

    EventDetector(EventSeparation rule, State state, List<Duration> durations) {
        this.rule = rule;
        this.start = state.startNanos();
        this.step = state.stepNanos();
        this.durations = durations;
        this.dryStepsToEnd = -Math.floorDiv(-rule.minimumInterEvent().toNanos(), this.step);
        steps = state.steps();
        dryFrom = state.dryFromStep();
        missingBefore = state.missingBefore();
        missingSteps = state.missingSteps();
        droppedEvents = state.droppedEvents();
        dropped = CompensatedSum.ofParts(state.droppedMm(), state.droppedLostMm());
        stray = CompensatedSum.ofParts(state.strayMm(), state.strayLostMm());
        for (double depthMm : state.depthsMm()) {
            append(depthMm);
            if (rule.isWet(depthMm)) {
                wetSize = size;
            }
        }
        requireConsistent(state);
    }

    private void requireConsistent(State state) {
        boolean positive = state.depthsMm().stream().noneMatch(depth -> depth < 0 || depth.isInfinite());
        boolean begun = size == 0 || rule.isWet(current[0]);
        if (!positive || !begun || size - wetSize >= dryStepsToEnd || dryFrom < 0 || dryFrom > steps - size) {
            throw new IllegalArgumentException(
                    "state must be that of a detector with the same rule, " + rule + ", was " + state);
        }
    }

    /**
     * Returns all that the detector remembers.
     *
     * @return the state after the last step
     * @throws IllegalStateException if the record was finished
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public State state() {
        requireOpen();
        return new State(
                start,
                step,
                steps,
                dryFrom,
                missingBefore,
                Arrays.stream(current, 0, size).boxed().toList(),
                missingSteps,
                droppedEvents,
                dropped.sum(),
                dropped.lost(),
                stray.sum(),
                stray.lost());
    }

    /**
     * Takes the depth of the next step, mm, not its intensity.
     *
     * @param depthMm depth in the step, mm; 0 or greater, NaN for missing
     * @return the event that is now known to be over and is deep enough, if there is one
     * @throws IllegalArgumentException if the depth is negative or infinite
     * @throws IllegalStateException if the record was finished
     */
    public Optional<RainfallEvent> next(double depthMm) {
        requireOpen();
        if (depthMm < 0 || Double.isInfinite(depthMm)) {
            throw Rain.negative("depthMm", "mm", depthMm, steps, EpochNanos.toInstant(start + step * steps));
        }
        steps++;
        boolean missing = Double.isNaN(depthMm);
        if (missing) {
            missingSteps++;
        }
        boolean wet = rule.isWet(depthMm);
        if (size > 0 || wet) {
            append(depthMm);
            if (wet) {
                wetSize = size;
            }
            return size - wetSize >= dryStepsToEnd ? end(false) : Optional.empty();
        }
        if (missing) {
            missingBefore++;
        } else {
            stray.add(depthMm);
        }
        return Optional.empty();
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

    private void append(double depthMm) {
        if (size == current.length) {
            current = Arrays.copyOf(current, size + (size >> 1));
        }
        current[size++] = depthMm;
    }

    private Optional<RainfallEvent> end(boolean openAtEnd) {
        double depth = CompensatedSum.of(current, 0, wetSize);
        int missingAfter = 0;
        for (int i = wetSize; i < size; i++) {
            if (Double.isNaN(current[i])) {
                missingAfter++;
            } else {
                stray.add(current[i]);
            }
        }
        Optional<RainfallEvent> event = Optional.empty();
        if (rule.keeps(depth)) {
            event = Optional.of(measured(depth, missingAfter, openAtEnd));
        } else {
            droppedEvents++;
            dropped.add(depth);
        }
        dryFrom = steps - size + wetSize;
        missingBefore = missingAfter;
        size = 0;
        wetSize = 0;
        return event;
    }

    private RainfallEvent measured(double depth, int missingAfter, boolean openAtEnd) {
        double[] depths = Arrays.copyOf(current, wetSize);
        long firstStep = steps - size;
        boolean rainedBefore = dryFrom > 0;
        long from = start + step * firstStep;
        int missingInside = (int) Arrays.stream(depths).filter(Double::isNaN).count();
        return new RainfallEvent(
                Interval.of(EpochNanos.toInstant(from), EpochNanos.toInstant(from + step * wetSize)),
                depth,
                SlidingMaximum.peaks(depths, from, step, durations).stream()
                        .map(peak -> missingInside > 0 ? peak.asAtLeast() : peak)
                        .toList(),
                new Antecedent(Duration.ofNanos(step * (firstStep - dryFrom)), !rainedBefore, missingBefore),
                new RainfallEvent.Completeness(
                        missingInside, missingAfter, !rainedBefore && firstStep < dryStepsToEnd, openAtEnd));
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

    /**
     * Returns the rain outside every event so far, in steps too weak to count as wet.
     *
     * @return depth, mm; that of the event in progress not yet decided is not in it
     */
    public double strayMm() {
        return stray.value();
    }

    /**
     * Returns the number of missing steps so far.
     *
     * @return count
     */
    public int missingSteps() {
        return missingSteps;
    }

    @Override
    public String toString() {
        return "EventDetector[" + steps + " steps from " + EpochNanos.toInstant(start)
                + (size == 0 ? ", no event in progress]" : ", event in progress]");
    }
}
