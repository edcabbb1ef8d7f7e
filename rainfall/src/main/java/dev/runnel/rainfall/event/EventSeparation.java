package dev.runnel.rainfall.event;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.gauge.RainUnits;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.rainfall.internal.Outages;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * The rule that cuts a record of rain into events. Immutable and thread-safe.
 *
 * <ul>
 *   <li><b>Gap.</b> A gap as long as the minimum inter-event time, or longer, starts a new event. In a record of fixed
 *       steps the gap is the dry steps between two wet ones; in a record of tips it is the time from tip to tip. One
 *       and the same rain so has gaps up to two steps shorter in steps than in tips.
 *   <li><b>Wet.</b> A step is wet if its depth is above the wet limit, by default 0. Less rain than that inside an event
 *       belongs to its depth; outside it is stray and is reported.
 *   <li><b>Depth.</b> An event shallower than the minimum depth, by default 0, is dropped; it is counted and still ends
 *       the dry time before the next one. A depth within 1e-9 mm of the minimum counts as equal to it.
 *   <li><b>Missing steps</b>, and outages in a record of tips, are not wet, so they let the gap grow: it cannot be known
 *       whether it rained. An event that they touch says so ({@link RainfallEvent#missingSteps},
 *       {@link RainfallEvent#missingStepsAfter}).
 * </ul>
 *
 * <p>A series has no unit: whether its values are depths, as they must be, nobody here can tell. Intensities in mm/h
 * at 5 min steps give events twelve times too deep.
 *
 * <p>{@link #ofSteps} takes a record step by step and {@link #ofTips} tip by tip; {@link #separate} is the same over a
 * whole record.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class EventSeparation {
    private final Duration minimumInterEvent;
    private final double minimumDepthMm;
    private final double wetAboveMm;

    /** The durations asked for; empty if nobody did, so that the usual ones are measured. */
    private final Optional<List<Duration>> peakDurations;

    private EventSeparation(
            Duration minimumInterEvent,
            double minimumDepthMm,
            double wetAboveMm,
            Optional<List<Duration>> peakDurations) {
        this.minimumInterEvent = minimumInterEvent;
        this.minimumDepthMm = minimumDepthMm;
        this.wetAboveMm = wetAboveMm;
        this.peakDurations = peakDurations;
    }

    /**
     * Returns the separation by a minimum inter-event time.
     *
     * @param minimumInterEvent shortest gap that starts a new event; greater than 0
     * @return the separation, without limits on depth
     * @throws IllegalArgumentException if the time is not greater than 0
     */
    public static EventSeparation of(Duration minimumInterEvent) {
        EpochNanos.positive("minimumInterEvent", minimumInterEvent);
        return new EventSeparation(minimumInterEvent, 0, 0, Optional.empty());
    }

    /**
     * Returns the same separation that drops shallow events.
     *
     * @param depthMm least depth of an event, mm; 0 or greater
     * @return the separation
     * @throws IllegalArgumentException if the depth is negative, infinite or NaN
     */
    public EventSeparation withMinimumDepth(double depthMm) {
        Require.nonNegative("depthMm", depthMm, "mm");
        return new EventSeparation(minimumInterEvent, depthMm, wetAboveMm, peakDurations);
    }

    /**
     * Returns the same separation with another limit between dry and wet steps. It has no meaning for tips.
     *
     * @param depthMm greatest depth of a step that is still dry, mm; 0 or greater
     * @return the separation
     * @throws IllegalArgumentException if the depth is negative, infinite or NaN
     */
    public EventSeparation withWetAbove(double depthMm) {
        Require.nonNegative("depthMm", depthMm, "mm");
        return new EventSeparation(minimumInterEvent, minimumDepthMm, depthMm, peakDurations);
    }

    /**
     * Returns the same separation that measures peaks over the given durations. Without this, they are the step of the
     * record and those of 5, 10, 15, 30 min, 1, 2, 3, 6, 12 and 24 h that are longer.
     *
     * @param durations window lengths; each greater than 0, at least one
     * @return the separation
     * @throws IllegalArgumentException if there is no duration, or one is not greater than 0
     */
    public EventSeparation withPeakDurations(Duration... durations) {
        Objects.requireNonNull(durations, "durations");
        return withPeakDurations(Arrays.asList(durations));
    }

    /**
     * Returns the same separation that measures peaks over the given durations.
     *
     * @param durations window lengths; each greater than 0, at least one
     * @return the separation
     * @throws IllegalArgumentException if there is no duration, or one is not greater than 0
     */
    public EventSeparation withPeakDurations(List<Duration> durations) {
        return new EventSeparation(
                minimumInterEvent, minimumDepthMm, wetAboveMm, Optional.of(PeakDurations.checked(durations)));
    }

    /**
     * Returns the same separation that measures no peaks, where only times and depths of events are wanted.
     *
     * @return the separation
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public EventSeparation withoutPeaks() {
        return new EventSeparation(minimumInterEvent, minimumDepthMm, wetAboveMm, Optional.of(List.of()));
    }

    /**
     * Returns the shortest gap that starts a new event.
     *
     * @return the minimum inter-event time
     */
    public Duration minimumInterEvent() {
        return minimumInterEvent;
    }

    /**
     * Returns the least depth of an event.
     *
     * @return depth, mm
     */
    public double minimumDepthMm() {
        return minimumDepthMm;
    }

    /**
     * Returns the same rule for a record of depth per step, mm, that arrives step by step.
     *
     * @param step length of every step; greater than 0
     * @return the rule, which makes the machines
     * @throws IllegalArgumentException if the step is not greater than 0 or longer than a duration to be measured
     */
    public StepSeparation ofSteps(Duration step) {
        EpochNanos.positive("step", step);
        peakDurations.ifPresent(durations -> PeakDurations.requireNotShorter(durations, step));
        return new StepSeparation(this, step);
    }

    /**
     * Returns the same rule for tips that arrive one by one.
     *
     * @param bucket the gauge
     * @return the rule, which makes the machines
     */
    public TipSeparation ofTips(TippingBucket bucket) {
        return new TipSeparation(this, Objects.requireNonNull(bucket, "bucket"));
    }

    List<Duration> durationsFrom(Duration step) {
        return peakDurations.orElseGet(() -> PeakDurations.usualFrom(step));
    }

    List<Duration> tipDurations() {
        return peakDurations.orElse(PeakDurations.USUAL);
    }

    double wetAboveMm() {
        return wetAboveMm;
    }

    /**
     * Returns the events of a record of depth per step, mm. An intensity in mm/h gives wrong events without any sign of
     * it: turn it into depth first with {@link RainUnits#depth(RegularSeries)}.
     *
     * @param depthMmPerStep depth in each step, mm, not intensity; 0 or greater, NaN for missing
     * @return events in order of time
     * @throws IllegalArgumentException if a depth is negative, or the step longer than a duration to be measured
     */
    public List<RainfallEvent> events(RegularSeries depthMmPerStep) {
        return separate(depthMmPerStep).events();
    }

    /**
     * Returns the events of a record of depth per step, mm, with what was left out of them. An intensity in mm/h has to be
     * turned into depth first, with {@link RainUnits#depth(RegularSeries)}.
     *
     * @param depthMmPerStep depth in each step, mm, not intensity; 0 or greater, NaN for missing
     * @return the events
     * @throws IllegalArgumentException if a depth is negative, or the step longer than a duration to be measured
     */
    public EventRecord separate(RegularSeries depthMmPerStep) {
        StepSeparation whole = ofSteps(depthMmPerStep.step());
        long step = depthMmPerStep.step().toNanos();
        List<Duration> durations = durationsFrom(depthMmPerStep.step());
        // Windows of whole steps are found quicker once the event is known.
        boolean isAfterwards = !durations.isEmpty() && EventPeaks.canMeasure(durations, step);
        EventDetector detector =
                (isAfterwards ? withoutPeaks().ofSteps(depthMmPerStep.step()) : whole).startAt(depthMmPerStep.start());
        List<RainfallEvent> events = new ArrayList<>();
        for (int i = 0; i < depthMmPerStep.size(); ) {
            int other = depthMmPerStep.indexOfOtherThan(0, i);
            if (other > i) {
                detector.dry(other - i).ifPresent(events::add);
                i = other;
            } else {
                detector.nextStep(depthMmPerStep.value(i++)).ifPresent(events::add);
            }
        }
        events.addAll(detector.finish());
        if (isAfterwards) {
            long start = EpochNanos.of(depthMmPerStep.start());
            EventPeaks peaks = EventPeaks.of(depthMmPerStep, durations);
            events.replaceAll(event -> event.withPeaks(peaks.between(
                    (int) ((EpochNanos.of(event.start()) - start) / step),
                    (int) ((EpochNanos.of(event.end()) - start) / step),
                    event.missingSteps() > 0)));
        }
        return new EventRecord(
                events, detector.droppedEvents(), detector.droppedMm(), detector.strayMm(), detector.missingSteps());
    }

    /**
     * Returns the events of a record of tips.
     *
     * @param tips the tips, all inside the record
     * @param record time during which the gauge was at work
     * @param bucket the gauge
     * @return events in order of time
     * @throws IllegalArgumentException if a tip lies outside the record
     */
    public List<RainfallEvent> events(Tips tips, Interval record, TippingBucket bucket) {
        return separate(tips, record, bucket).events();
    }

    /**
     * Returns the events of a record of tips, with what was left out of them.
     *
     * @param tips the tips, all inside the record
     * @param record time during which the gauge was at work
     * @param bucket the gauge
     * @return the events
     * @throws IllegalArgumentException if a tip lies outside the record
     */
    public EventRecord separate(Tips tips, Interval record, TippingBucket bucket) {
        return separate(tips, record, bucket, List.of());
    }

    /**
     * Returns the events of a record of tips with outages, in which the gauge told nothing of the rain. They are to tips what
     * missing steps are to steps: not wet, so that the gap grows over them. Tips in an outage are set aside and counted;
     * an event that an outage touches says so ({@link RainfallEvent#missingSteps} and
     * {@link RainfallEvent#missingStepsAfter} count outages then), and so does its antecedent.
     *
     * @param tips the tips, all inside the record
     * @param record time of the record
     * @param bucket the gauge
     * @param outages times in which the gauge told nothing, in any order; those that overlap or touch count as one
     * @return the events
     * @throws IllegalArgumentException if a tip lies outside the record
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public EventRecord separate(Tips tips, Interval record, TippingBucket bucket, Collection<Interval> outages) {
        Objects.requireNonNull(record, "record");
        List<Interval> out = Outages.within(record, outages);
        int aside = out.stream().mapToInt(outage -> tips.slice(outage).size()).sum();
        TipEventDetector detector = ofTips(bucket).start();
        List<RainfallEvent> events = new ArrayList<>();
        int outage = 0;
        detector.advanceTo(record.start());
        for (int i = 0; i < tips.size(); i++) {
            if (!record.contains(tips.time(i))) {
                throw new IllegalArgumentException("tips must be inside the record " + record + ", was " + tips.time(i)
                        + " at index " + i + "; tips.slice(record) leaves out those outside");
            }
            while (outage < out.size() && !tips.time(i).isBefore(out.get(outage).end())) {
                outage++;
            }
            if (outage == out.size() || !out.get(outage).contains(tips.time(i))) {
                detector.nextTip(tips.epochNanos(i)).ifPresent(events::add);
            }
        }
        detector.advanceTo(record.end()).ifPresent(events::add);
        events.addAll(detector.finish());
        List<RainfallEvent> known = events.stream()
                .map(event -> event.withOutages(out, minimumInterEvent))
                .toList();
        return new EventRecord(known, detector.droppedEvents(), detector.droppedMm(), 0, 0, out.size(), aside);
    }

    boolean keeps(double depthMm) {
        return Rain.reaches(depthMm, minimumDepthMm);
    }

    boolean isWet(double depthMm) {
        return depthMm > wetAboveMm;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof EventSeparation that
                && minimumInterEvent.equals(that.minimumInterEvent)
                && Double.compare(minimumDepthMm, that.minimumDepthMm) == 0
                && Double.compare(wetAboveMm, that.wetAboveMm) == 0
                && peakDurations.equals(that.peakDurations);
    }

    @Override
    public int hashCode() {
        return Objects.hash(minimumInterEvent, minimumDepthMm, wetAboveMm, peakDurations);
    }

    @Override
    public String toString() {
        return "EventSeparation[gap of " + Text.duration(minimumInterEvent) + ", at least "
                + Text.significant(minimumDepthMm, 6) + " mm, wet above " + Text.significant(wetAboveMm, 6) + " mm]";
    }
}
