package dev.runnel.rainfall.event;

import dev.runnel.base.CompensatedSum;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Separates a record of fixed steps into events as it arrives. Holds the steps of the event in progress and a few
 * counts. Not thread-safe.
 *
 * <p>Made by {@link EventSeparation#detector}, whose rules hold.
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
    private final CompensatedSum dropped = new CompensatedSum();
    private final CompensatedSum stray = new CompensatedSum();

    private long steps;
    private int missingSteps;
    private int droppedEvents;
    private boolean finished;

    private double[] current = new double[64];
    private int size;
    private int wetSize;
    private long firstStep;
    private Antecedent antecedent = new Antecedent(Duration.ZERO, true, 0);
    private boolean openAtStart;

    private long dryFrom;
    private boolean rainedBefore;
    private int missingSinceRain;

    EventDetector(EventSeparation rule, long start, Duration step, List<Duration> durations) {
        this.rule = rule;
        this.start = start;
        this.step = step.toNanos();
        this.durations = durations;
        this.dryStepsToEnd = -Math.floorDiv(-rule.minimumInterEvent().toNanos(), this.step);
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
        boolean missing = Double.isNaN(depthMm);
        if (missing) {
            missingSteps++;
        }
        boolean wet = rule.isWet(depthMm);
        Optional<RainfallEvent> ended = Optional.empty();
        if (wet && wetSize == 0) {
            begin();
        }
        if (wetSize > 0 || wet) {
            append(depthMm);
            if (wet) {
                wetSize = size;
                missingSinceRain = 0;
            } else if (missing) {
                missingSinceRain++;
            }
            if (size - wetSize >= dryStepsToEnd) {
                ended = end(false);
            }
        } else if (missing) {
            missingSinceRain++;
        } else {
            stray.add(depthMm);
        }
        steps++;
        return ended;
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
        return wetSize == 0 ? Optional.empty() : end(true);
    }

    private void requireOpen() {
        if (finished) {
            throw new IllegalStateException("the record was finished");
        }
    }

    private void begin() {
        firstStep = steps;
        antecedent = new Antecedent(Duration.ofNanos(step * (steps - dryFrom)), !rainedBefore, missingSinceRain);
        openAtStart = !rainedBefore && steps < dryStepsToEnd;
        rainedBefore = true;
    }

    private void append(double depthMm) {
        if (size == current.length) {
            current = Arrays.copyOf(current, size + (size >> 1));
        }
        current[size++] = depthMm;
    }

    private Optional<RainfallEvent> end(boolean openAtEnd) {
        double depth = CompensatedSum.of(current, 0, wetSize);
        for (int i = wetSize; i < size; i++) {
            if (!Double.isNaN(current[i])) {
                stray.add(current[i]);
            }
        }
        Optional<RainfallEvent> event = Optional.empty();
        if (rule.keeps(depth)) {
            event = Optional.of(measured(depth, openAtEnd));
        } else {
            droppedEvents++;
            dropped.add(depth);
        }
        dryFrom = firstStep + wetSize;
        size = 0;
        wetSize = 0;
        return event;
    }

    private RainfallEvent measured(double depth, boolean openAtEnd) {
        double[] depths = Arrays.copyOf(current, wetSize);
        long from = start + step * firstStep;
        Instant begin = EpochNanos.toInstant(from);
        int missingInside = (int) Arrays.stream(depths).filter(Double::isNaN).count();
        return new RainfallEvent(
                Interval.of(begin, EpochNanos.toInstant(from + step * wetSize)),
                depth,
                SlidingMaximum.peaks(depths, from, step, durations),
                antecedent,
                new RainfallEvent.Completeness(missingInside, missingSinceRain, openAtStart, openAtEnd));
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
                + (wetSize == 0 ? ", no event in progress]" : ", event in progress]");
    }
}
