package dev.runnel.rainfall.event;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * One event of rain and its measures. Immutable and thread-safe.
 *
 * <p>In a record of fixed steps the event begins with its first wet step and ends with the end of its last. In a record
 * of tips it begins with the first tip and ends with the last: an event of one tip has no duration.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RainfallEvent {
    private final Interval interval;
    private final double depthMm;
    private final List<PeakDepth> peaks;
    private final Antecedent antecedent;
    private final Completeness completeness;

    /** What the record lacks in and after the event. */
    record Completeness(int missingInside, int missingAfter, boolean openAtStart, boolean openAtEnd) {
        static final Completeness FULL = new Completeness(0, 0, false, false);
    }

    RainfallEvent(
            Interval interval,
            double depthMm,
            List<PeakDepth> peaks,
            Antecedent antecedent,
            Completeness completeness) {
        this.interval = interval;
        this.depthMm = depthMm;
        this.peaks = peaks;
        this.antecedent = antecedent;
        this.completeness = completeness;
    }

    /**
     * Returns an event with measures from elsewhere, complete, and with nothing known of the time before.
     *
     * @param interval from its first rain to the end of its last
     * @param depthMm depth, mm; greater than 0
     * @param peaks greatest depth for each duration, none deeper than the event
     * @return the event
     * @throws IllegalArgumentException if the depth is not greater than 0 or a peak is deeper
     */
    public static RainfallEvent of(Interval interval, double depthMm, List<PeakDepth> peaks) {
        Objects.requireNonNull(interval, "interval");
        Require.positive("depthMm", depthMm, "mm");
        for (PeakDepth peak : peaks) {
            Require.inRange("peak depthMm in " + Text.exactDuration(peak.duration()), peak.depthMm(), 0, depthMm, "mm");
        }
        return new RainfallEvent(
                interval, depthMm, List.copyOf(peaks), new Antecedent(Duration.ZERO, true, 0), Completeness.FULL);
    }

    /** This event with peaks that were measured afterwards. */
    RainfallEvent withPeaks(List<PeakDepth> measured) {
        return new RainfallEvent(interval, depthMm, measured, antecedent, completeness);
    }

    /** This event of a record of tips with outages, in order: how many lie in it, in the gap after it and in the dry time before. */
    RainfallEvent withOutages(List<Interval> outages, Duration gap) {
        Interval before = Interval.of(start().minus(antecedentDryTime()), start());
        Interval after = Interval.of(end(), gap);
        Antecedent dry =
                new Antecedent(antecedent.dryTime(), antecedent.isAtLeast(), Math.toIntExact(count(outages, before)));
        Completeness known = new Completeness(
                Math.toIntExact(count(outages, interval)),
                Math.toIntExact(count(outages, after)),
                completeness.openAtStart,
                completeness.openAtEnd);
        List<PeakDepth> bounds = known.missingInside == 0
                ? peaks
                : peaks.stream().map(PeakDepth::asAtLeast).toList();
        return new RainfallEvent(interval, depthMm, bounds, dry, known);
    }

    private static long count(List<Interval> outages, Interval time) {
        return outages.stream().filter(outage -> outage.overlaps(time)).count();
    }

    /**
     * Returns the time of the event.
     *
     * @return from its first rain to the end of its last
     */
    public Interval interval() {
        return interval;
    }

    /**
     * Returns when the event began.
     *
     * @return start of the first wet step, or the first tip
     */
    public Instant start() {
        return interval.start();
    }

    /**
     * Returns when the event ended.
     *
     * @return end of the last wet step, or the last tip
     */
    public Instant end() {
        return interval.end();
    }

    /**
     * Returns how long the event lasted.
     *
     * @return end minus start; 0 for an event of one tip
     */
    public Duration duration() {
        return interval.duration();
    }

    /**
     * Returns the depth of rain.
     *
     * @return depth, mm; without what fell in missing steps
     */
    public double depthMm() {
        return depthMm;
    }

    /**
     * Returns the mean intensity.
     *
     * @return depth over duration, mm/h; empty for an event without duration, of which none can be told
     */
    public OptionalDouble meanIntensityMmPerHour() {
        double hours = Rain.hours(duration());
        return hours == 0 ? OptionalDouble.empty() : OptionalDouble.of(depthMm / hours);
    }

    /**
     * Returns the greatest depth for each of the durations measured. Only rain of this event counts: for a duration
     * longer than the event it is the depth of the event. If steps are missing in the event, each is a lower bound.
     *
     * @return peaks in the order asked for
     */
    public List<PeakDepth> peaks() {
        return peaks;
    }

    /**
     * Returns the greatest depth in any window of the given length.
     *
     * @param duration one of the durations measured
     * @return the peak
     * @throws IllegalArgumentException if that duration was not measured
     */
    public PeakDepth peak(Duration duration) {
        for (PeakDepth peak : peaks) {
            if (peak.duration().equals(duration)) {
                return peak;
            }
        }
        throw new IllegalArgumentException("duration must be one of "
                + Text.durations(peaks.stream().map(PeakDepth::duration).toList()) + ", was "
                + Text.exactDuration(duration));
    }

    /**
     * Returns the dry time before the event and how far it is known.
     *
     * @return dry time, whether it is a lower bound, and its missing steps
     */
    public Antecedent antecedent() {
        return antecedent;
    }

    /**
     * Returns the dry time before the event; {@link #antecedent} says how far it is known.
     *
     * @return time since the end of the last rain, or since the record began
     */
    public Duration antecedentDryTime() {
        return antecedent.dryTime();
    }

    /**
     * Returns the number of missing steps between the first and the last wet step; in a record of tips, of outages between
     * its first tip and its last.
     *
     * @return count; rain in them is not in the depth
     */
    public int missingSteps() {
        return completeness.missingInside;
    }

    /**
     * Returns the number of missing steps, or of outages, in the dry time that ended the event.
     *
     * @return count; had they been wet, the event would have gone on
     */
    public int missingStepsAfter() {
        return completeness.missingAfter;
    }

    /**
     * Tells whether the event may have begun before the record did.
     *
     * @return true if less than the minimum inter-event time of the record lies before it
     */
    public boolean isOpenAtStart() {
        return completeness.openAtStart;
    }

    /**
     * Tells whether the event may have gone on after the record ended.
     *
     * @return true if less than the minimum inter-event time of the record lies after it
     */
    public boolean isOpenAtEnd() {
        return completeness.openAtEnd;
    }

    /**
     * Tells whether all of the event is known.
     *
     * @return true if no step is missing in it or in the dry time after it and the record reaches beyond it both ways
     */
    public boolean isComplete() {
        return completeness.equals(Completeness.FULL);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RainfallEvent that
                && interval.equals(that.interval)
                && Double.compare(depthMm, that.depthMm) == 0
                && peaks.equals(that.peaks)
                && antecedent.equals(that.antecedent)
                && completeness.equals(that.completeness);
    }

    @Override
    public int hashCode() {
        return Objects.hash(interval, depthMm, peaks, antecedent, completeness);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("RainfallEvent[")
                .append(start())
                .append(", ")
                .append(Text.significant(depthMm, 4))
                .append(" mm in ")
                .append(Text.duration(duration()));
        peaks.stream()
                .max(Comparator.comparingDouble(PeakDepth::intensityMmPerHour))
                .ifPresent(peak -> text.append(peak.isAtLeast() ? ", peak at least " : ", peak ")
                        .append(Text.significant(peak.intensityMmPerHour(), 4))
                        .append(" mm/h over ")
                        .append(Text.duration(peak.duration())));
        text.append(", ").append(antecedent);
        if (isOpenAtStart()) {
            text.append(", may begin before the record");
        }
        if (isOpenAtEnd()) {
            text.append(", may go on after it");
        }
        if (missingSteps() > 0) {
            text.append(", ").append(missingSteps()).append(" missing in the event");
        }
        if (missingStepsAfter() > 0) {
            text.append(", ").append(missingStepsAfter()).append(" missing after it");
        }
        return text.append("]").toString();
    }
}
