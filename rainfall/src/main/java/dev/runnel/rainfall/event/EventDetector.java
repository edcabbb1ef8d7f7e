package dev.runnel.rainfall.event;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Separates a record of fixed steps into events as it arrives. Made by {@link EventSeparation#ofSteps}. Not thread-safe.
 *
 * <p>Its memory is bounded, however long it rains: the wet steps of the longest duration of which the peak is measured,
 * and the weak rain of one minimum inter-event time.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class EventDetector implements Machine<Reading, RainfallEvent, TextState> {
    private static final long MOST_STEPS = Integer.MAX_VALUE - 8L;

    private final StepSeparation rule;
    private final EventSeparation separation;
    private final long step;
    private final long dryStepsToEnd;
    private final EventBook book;
    private final CompensatedSum stray;
    private boolean hasBegun;
    private boolean hasEnded;
    private long start;
    private long steps;
    private int missingSteps;

    /** First step after the last event, kept or not; 0 as long as none has ended. */
    private long dryFrom;

    /** Missing steps between there and the event in progress, or now. */
    private int missingBefore;

    /** Missing steps inside the event in progress. */
    private int missingInside;

    /** Steps since the last wet one of the event in progress, those of them that are missing, and the weak rain in them. */
    private long pending;

    private int pendingMissing;
    private long[] weakSteps = new long[4];
    private double[] weakDepths = new double[4];
    private int weak;

    EventDetector(StepSeparation rule) {
        this.rule = rule;
        this.separation = rule.separation();
        this.step = EpochNanos.positive("step", rule.step());
        this.dryStepsToEnd = -Math.floorDiv(-separation.minimumInterEvent().toNanos(), this.step);
        this.book = new EventBook(separation, separation.durationsFrom(rule.step()), step);
        this.stray = new CompensatedSum();
    }

    EventDetector(StepSeparation rule, StateText state) {
        this.rule = rule;
        this.separation = rule.separation();
        this.step = EpochNanos.positive("step", rule.step());
        this.dryStepsToEnd = -Math.floorDiv(-separation.minimumInterEvent().toNanos(), this.step);
        EventBook.requireSame("step", step, state.count("step"));
        EventBook.requireSame("wet-above", separation.wetAboveMm(), state.number("wet-above"));
        this.book = new EventBook(separation, separation.durationsFrom(rule.step()), step, state);
        this.stray = CompensatedSum.ofParts(state.number("stray-mm"), state.number("stray-lost"));
        hasBegun = state.has("start");
        start = hasBegun ? state.count("start") : 0;
        steps = state.count("steps");
        missingSteps = state.index("missing");
        dryFrom = state.count("dry-from");
        missingBefore = state.index("missing-before");
        missingInside = state.index("missing-inside");
        pending = state.count("pending");
        pendingMissing = state.index("pending-missing");
        weakSteps = state.counts("weak-steps");
        weakDepths = state.numbers("weak-depths");
        weak = weakSteps.length;
        requireConsistent();
    }

    private void requireConsistent() {
        boolean isCounted = steps >= 0 && missingSteps >= 0 && missingSteps <= steps && (hasBegun || steps == 0);
        boolean isOrdered = dryFrom >= 0 && dryFrom <= steps && missingBefore >= 0 && missingInside >= 0;
        boolean isPending = pending >= 0
                && pending < dryStepsToEnd
                && pendingMissing >= 0
                && pendingMissing <= pending
                && (book.isOpen() || pending == 0);
        boolean isPlaced = !book.isOpen()
                || ((book.from() - start) % step == 0
                        && (book.from() - start) / step >= dryFrom
                        && book.to() == start + step * (steps - pending));
        boolean isWeak = weakDepths.length == weak
                && Arrays.stream(weakDepths).allMatch(depth -> depth > 0 && !separation.isWet(depth));
        for (int i = 0; i < weak && isWeak; i++) {
            isWeak = weakSteps[i] < steps && weakSteps[i] >= (i == 0 ? steps - pending : weakSteps[i - 1] + 1);
        }
        if (!(isCounted && isOrdered && isPending && isPlaced && isWeak)) {
            throw new IllegalArgumentException(
                    "state must be that of a machine of the same rule, whose counts of steps these cannot be");
        }
    }

    /** Sets the start of the first step. */
    void begin(long startNanos) {
        hasBegun = true;
        start = startNanos;
    }

    @Override
    public TextState state() {
        requireOpen();
        StateText state =
                StateText.of(StepSeparation.NAME, 1).with("step", step).with("wet-above", separation.wetAboveMm());
        if (hasBegun) {
            state.with("start", start);
        }
        state.with("steps", steps)
                .with("missing", missingSteps)
                .with("stray-mm", stray.sum())
                .with("stray-lost", stray.lost())
                .with("dry-from", dryFrom)
                .with("missing-before", missingBefore)
                .with("missing-inside", missingInside)
                .with("pending", pending)
                .with("pending-missing", pendingMissing)
                .with("weak-steps", Arrays.copyOf(weakSteps, weak))
                .with("weak-depths", Arrays.copyOf(weakDepths, weak));
        return TextState.of(book.into(state).toString());
    }

    /**
     * Takes the depth of a step. Steps between the last one and this are missing.
     *
     * @param depthMm the depth, mm, 0 or greater, at the start of its step; one that is suspect counts as missing
     * @return the event that is now known to be over and is deep enough, if there is one
     * @throws IllegalArgumentException if the time does not come after that of the last step, or is no start of a step,
     *     more than 2147483639 steps are left out, or the depth is negative
     */
    @Override
    public List<RainfallEvent> next(Reading depthMm) {
        requireOpen();
        long time = EpochNanos.of(depthMm.time());
        if (hasBegun && time < now()) {
            throw new IllegalArgumentException("time must be after "
                    + EpochNanos.toInstant(steps == 0 ? start - 1 : now() - step) + ", was " + depthMm.time());
        }
        long leftOut = hasBegun ? (time - now()) / step : 0;
        if (hasBegun && (time - now()) % step != 0) {
            throw new IllegalArgumentException("time must be the start of a step of "
                    + Text.duration(rule.step()) + " after " + EpochNanos.toInstant(start)
                    + ", was " + depthMm.time());
        }
        double depth = depthMm.quality().isUsable() ? depthMm.value() : Double.NaN;
        requireDepth(depth, steps + leftOut, time);
        if (!hasBegun) {
            begin(time);
        }
        Optional<RainfallEvent> first = missing(leftOut);
        Optional<RainfallEvent> second = nextStep(depth);
        return first.or(() -> second).stream().toList();
    }

    private long now() {
        return start + step * steps;
    }

    /**
     * Takes the depth of the next step, mm, not its intensity, without making an object of it.
     *
     * @param depthMm depth in the step, mm; 0 or greater, NaN for missing
     * @return the event that is now known to be over and is deep enough, if there is one
     * @throws IllegalArgumentException if the depth is negative or infinite
     * @throws IllegalStateException if the record has ended, or it is not known when it began: see
     *     {@link StepSeparation#startAt}
     */
    public Optional<RainfallEvent> nextStep(double depthMm) {
        requireOpen();
        if (!hasBegun) {
            throw new IllegalStateException("the start of the record must be known, but there was no reading yet");
        }
        if (!(depthMm >= 0 && depthMm < Double.POSITIVE_INFINITY)) {
            requireDepth(depthMm, steps, now());
            return missing(1);
        }
        if (!separation.isWet(depthMm)) {
            if (depthMm > 0) {
                takeWeak(depthMm);
            }
            return dry(1);
        }
        long time = now();
        if (book.isOpen()) {
            takePending();
        } else {
            missingInside = 0;
        }
        steps++;
        book.add(time, time + step, depthMm);
        return Optional.empty();
    }

    private static void requireDepth(double depthMm, long index, long time) {
        if (depthMm < 0 || Double.isInfinite(depthMm)) {
            throw Rain.negative("depthMm", "mm", depthMm, index, EpochNanos.toInstant(time));
        }
    }

    /** The steps since the last wet one turn out to lie inside the event. */
    private void takePending() {
        for (int i = 0; i < weak; i++) {
            long time = start + step * weakSteps[i];
            book.add(time, time + step, weakDepths[i]);
        }
        missingInside += pendingMissing;
        weak = 0;
        pending = 0;
        pendingMissing = 0;
    }

    private void takeWeak(double depthMm) {
        if (!book.isOpen()) {
            stray.add(depthMm);
            return;
        }
        if (weak == weakSteps.length) {
            weakSteps = Arrays.copyOf(weakSteps, 2 * weak + 4);
            weakDepths = Arrays.copyOf(weakDepths, 2 * weak + 4);
        }
        weakSteps[weak] = steps;
        weakDepths[weak] = depthMm;
        weak++;
    }

    /** Takes steps without rain, or with rain that was taken already. */
    Optional<RainfallEvent> dry(long count) {
        if (!book.isOpen()) {
            steps += count;
            return Optional.empty();
        }
        long toEnd = dryStepsToEnd - pending;
        if (count < toEnd) {
            steps += count;
            pending += count;
            return Optional.empty();
        }
        steps += toEnd;
        pending += toEnd;
        Optional<RainfallEvent> ended = end(false);
        steps += count - toEnd;
        return ended;
    }

    /** Takes steps of which nothing is known. */
    private Optional<RainfallEvent> missing(long count) {
        if (count + missingSteps > MOST_STEPS) {
            throw new IllegalArgumentException("missing steps must be at most " + MOST_STEPS + ", were "
                    + (count + missingSteps) + " up to " + EpochNanos.toInstant(now() + step * count));
        }
        missingSteps += (int) count;
        long inGap = book.isOpen() ? Math.min(count, dryStepsToEnd - pending) : 0;
        pendingMissing += (int) inGap;
        Optional<RainfallEvent> ended = dry(count);
        if (!book.isOpen()) {
            missingBefore += (int) (count - inGap);
        }
        return ended;
    }

    private Optional<RainfallEvent> end(boolean openAtEnd) {
        for (int i = 0; i < weak; i++) {
            stray.add(weakDepths[i]);
        }
        long firstStep = (book.from() - start) / step;
        boolean rainedBefore = dryFrom > 0;
        Optional<RainfallEvent> event = book.close(
                new Antecedent(Duration.ofNanos(step * (firstStep - dryFrom)), !rainedBefore, missingBefore),
                new RainfallEvent.Completeness(
                        missingInside, pendingMissing, !rainedBefore && firstStep < dryStepsToEnd, openAtEnd));
        dryFrom = steps - pending;
        missingBefore = pendingMissing;
        missingInside = 0;
        pending = 0;
        pendingMissing = 0;
        weak = 0;
        return event;
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
        return book.isOpen() ? end(true).stream().toList() : List.of();
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

    /** How many readings are held. */
    int held() {
        return book.held() + weak;
    }

    @Override
    public String toString() {
        return "EventDetector[" + (hasBegun ? steps + " steps from " + EpochNanos.toInstant(start) : "no step")
                + (book.isOpen() ? ", event in progress]" : ", no event in progress]");
    }
}
