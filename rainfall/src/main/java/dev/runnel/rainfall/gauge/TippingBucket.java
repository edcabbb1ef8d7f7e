package dev.runnel.rainfall.gauge;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Outages;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A tipping-bucket rain gauge: the depth that one tip stands for, and the calibration of its intensity. Immutable and
 * thread-safe.
 *
 * <p>The depths of all steps add up to the depths of all tips: within 1e-15 of their sum, relative, when both are summed
 * with compensation, as {@link RegularSeries#sum} does.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class TippingBucket {
    /** In place of the time since the tip before. */
    private static final double NO_TIP_BEFORE = Double.POSITIVE_INFINITY;

    private static final double NANOS_PER_HOUR = 3.6e12;

    private final double tipMm;
    private final Calibration calibration;

    private TippingBucket(double tipMm, Calibration calibration) {
        this.tipMm = tipMm;
        this.calibration = calibration;
    }

    /**
     * Returns the gauge with the given depth per tip.
     *
     * @param tipMm depth of one tip d, mm; 0.01 to 5, wider than any gauge in use (common practice)
     * @return the gauge, without calibration
     * @throws IllegalArgumentException if it is out of range
     */
    public static TippingBucket ofTip(double tipMm) {
        return new TippingBucket(GaugeRanges.tip("tipMm", tipMm), Calibration.none());
    }

    /**
     * Returns the gauge with the given bucket and funnel, d = 10 V/A.
     *
     * @param volumeMl volume of one tip V, mL; greater than 0
     * @param funnelCm2 area of the funnel at its rim A, cm²; 20 to 10 000 (common practice)
     * @return the gauge, without calibration
     * @throws IllegalArgumentException if an argument is out of range, or d is not in 0.01 to 5 mm
     */
    public static TippingBucket ofVolume(double volumeMl, double funnelCm2) {
        Require.positive("volumeMl", volumeMl, "mL");
        GaugeRanges.funnel("funnelCm2", funnelCm2);
        return ofTip(GaugeRanges.tip("10 volumeMl / funnelCm2", 10 * volumeMl / funnelCm2));
    }

    /**
     * Returns the same gauge with a calibration.
     *
     * @param calibration relation of true to recorded intensity
     * @return the gauge
     */
    public TippingBucket withCalibration(Calibration calibration) {
        return new TippingBucket(tipMm, Objects.requireNonNull(calibration, "calibration"));
    }

    /**
     * Returns the depth that one tip stands for, before calibration.
     *
     * @return d, mm
     */
    public double tipMm() {
        return tipMm;
    }

    /**
     * Returns the calibration.
     *
     * @return the calibration, {@link Calibration#none()} if none was given
     */
    public Calibration calibration() {
        return calibration;
    }

    /**
     * Returns the recorded intensity between two tips, 3600 d / Δt, before calibration.
     *
     * @param sinceTipBefore time between the tips Δt; greater than 0
     * @return intensity, mm/h
     * @throws IllegalArgumentException if the time is not greater than 0
     */
    public double recordedMmPerHour(Duration sinceTipBefore) {
        return recorded((double) EpochNanos.positive("sinceTipBefore", sinceTipBefore));
    }

    /**
     * Returns the intensity that fell when another one was recorded.
     *
     * @param recordedMmPerHour recorded intensity, mm/h; 0 or greater, finite
     * @return recorded intensity times the factor of the calibration, mm/h
     * @throws IllegalArgumentException if it is negative, infinite or NaN
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public double trueMmPerHour(double recordedMmPerHour) {
        Require.nonNegative("recordedMmPerHour", recordedMmPerHour, "mm/h");
        return recordedMmPerHour * calibration.factor(recordedMmPerHour, tipMm);
    }

    /**
     * Returns the depth of each tip after calibration. The first tip, whose intensity nobody knows, is taken as slow. Tips at
     * one instant, as a coarse clock writes them, share the time since the tip before them.
     *
     * @param tips the tips
     * @return depth of every tip, mm; a new array
     */
    public double[] tipDepths(Tips tips) {
        double[] depths = new double[tips.size()];
        long before = 0;
        for (int i = 0; i < depths.length; ) {
            int next = tips.endOfInstant(i);
            double gap = i == 0 ? NO_TIP_BEFORE : (tips.epochNanos(i) - before) / (double) (next - i);
            Arrays.fill(depths, i, next, depthOfTip(gap));
            before = tips.epochNanos(i);
            i = next;
        }
        return depths;
    }

    /**
     * Returns the depth of rain in each step, over the steps that the tips need.
     *
     * <p>Steps begin at whole multiples of their length since 1970-01-01T00:00:00Z. The first holds the earliest rain,
     * the last holds the last tip. To have the dry steps of a record before and after its tips, name the record.
     *
     * @param tips the tips
     * @param step length of a step; greater than 0
     * @param spreading how a tip is laid out in time
     * @return mm in each step; without tips, a series without steps that starts at 1970-01-01T00:00:00Z
     * @throws IllegalArgumentException if the step is not greater than 0, or so short that there are more than
     *     100 000 000 steps
     */
    public RegularSeries depth(Tips tips, Duration step, TipSpreading spreading) {
        Objects.requireNonNull(spreading, "spreading");
        long stepNanos = EpochNanos.positive("step", step);
        if (tips.isEmpty()) {
            return RegularSeries.of(Instant.EPOCH, step);
        }
        if (isEven(spreading)) {
            long first = spreading.start(Long.MIN_VALUE, tips.epochNanos(0), tips.followingInstant(0));
            long start = Math.floorDiv(first, stepNanos) * stepNanos;
            long length = tips.epochNanos(tips.size() - 1) - start + 1;
            return EvenTips.of(tips, tipMm, spreading, Long.MIN_VALUE, start, stepNanos, length);
        }
        Fillings fillings = Fillings.of(this, tips, spreading, Long.MIN_VALUE);
        long start = Math.floorDiv(fillings.from()[0], stepNanos) * stepNanos;
        long last = tips.epochNanos(tips.size() - 1);
        return Apportionment.of(fillings, spreading.isSmooth(), start, stepNanos, last - start + 1);
    }

    /**
     * Returns the depth of rain in each step of a record, dry steps before and after the tips included.
     *
     * <p>The first step begins where the record begins. The last one holds the end of the record; if the record is not a
     * whole number of steps long, it reaches beyond, and holds the rain of that part of it only which lies in the record.
     * Rain is not spread to before the record. Was the gauge out of work at times, name its
     * {@linkplain #depth(Tips, Interval, Duration, TipSpreading, Collection) outages}.
     *
     * @param tips the tips, all inside the record
     * @param record time during which the gauge was at work
     * @param step length of a step; greater than 0
     * @param spreading how a tip is laid out in time
     * @return mm in each step
     * @throws IllegalArgumentException if a tip lies outside the record, if the step is not greater than 0, or so short
     *     that there are more than 100 000 000 steps
     */
    public RegularSeries depth(Tips tips, Interval record, Duration step, TipSpreading spreading) {
        long stepNanos = positiveStep(tips, record, step);
        if (isEven(spreading)) {
            long start = EpochNanos.of(record.start());
            return EvenTips.of(tips, tipMm, spreading, start, stepNanos, EpochNanos.of(record.end()) - start);
        }
        return laidOut(Fillings.of(this, tips, spreading, EpochNanos.of(record.start())), record, stepNanos, spreading);
    }

    /** Whether every tip stands for the same depth and is spread evenly. */
    private boolean isEven(TipSpreading spreading) {
        return calibration == NoCalibration.INSTANCE && !spreading.isSmooth();
    }

    private static long positiveStep(Tips tips, Interval record, Duration step) {
        long stepNanos = EpochNanos.positive("step", step);
        if (!tips.isEmpty()) {
            requireInside(record, tips, 0);
            requireInside(record, tips, tips.size() - 1);
        }
        return stepNanos;
    }

    private static RegularSeries laidOut(Fillings fillings, Interval record, long stepNanos, TipSpreading spreading) {
        long start = EpochNanos.of(record.start());
        long length = EpochNanos.of(record.end()) - start;
        return Apportionment.of(fillings, spreading.isSmooth(), start, stepNanos, length);
    }

    /**
     * Returns the depth of rain in each step of a record with outages: {@link #record}, without what it says of the tips in
     * them.
     *
     * @param tips the tips, all inside the record
     * @param record time of the record
     * @param step length of a step; greater than 0
     * @param spreading how a tip is laid out in time
     * @param outages times in which the gauge told nothing of the rain
     * @return mm in each step, NaN in steps that share time with an outage
     * @throws IllegalArgumentException as for the record without outages
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public RegularSeries depth(
            Tips tips, Interval record, Duration step, TipSpreading spreading, Collection<Interval> outages) {
        Objects.requireNonNull(record, "record");
        return record(tips, record, step, spreading, outages).depth();
    }

    /**
     * Returns the depth of rain in each step of a record with outages, and what became of the tips. An outage is any time in
     * which the gauge told nothing of the rain: the logger was off, the funnel blocked, or somebody at work on it.
     *
     * <p>A step that shares time with an outage is missing. Tips in an outage, which are no rain or not known to be, are
     * set aside. No rain is spread over an outage: the first tip after it is the first of a spell, and so is its
     * intensity unknown.
     *
     * @param tips the tips, all inside the record
     * @param record time of the record; as for the record without outages
     * @param step length of a step; greater than 0
     * @param spreading how a tip is laid out in time
     * @param outages times in which the gauge told nothing of the rain, in any order; those outside the record, and empty
     *     ones, change nothing
     * @return the steps with an account
     * @throws IllegalArgumentException as for the record without outages
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public TipRecord record(
            Tips tips, Interval record, Duration step, TipSpreading spreading, Collection<Interval> outages) {
        Objects.requireNonNull(record, "record");
        long stepNanos = positiveStep(tips, record, step);
        List<Interval> out = Outages.within(record, outages);
        List<Interval> stretches = Outages.between(record, out);
        Fillings fillings = Fillings.of(this, tips, spreading, stretches);
        RegularSeries all = laidOut(fillings, record, stepNanos, spreading);
        int aside = out.stream().mapToInt(outage -> tips.slice(outage).size()).sum();
        return TipRecord.of(all, out, aside, aside * tipMm);
    }

    private static void requireInside(Interval record, Tips tips, int index) {
        if (!record.contains(tips.time(index))) {
            throw new IllegalArgumentException("tips must be inside the record " + record + ", was " + tips.time(index)
                    + " at index " + index + "; tips.slice(record) leaves out those outside");
        }
    }

    /**
     * Returns the mean intensity of rain in each step: {@link #depth(Tips, Duration, TipSpreading)} over its length.
     *
     * @param tips the tips
     * @param step length of a step; greater than 0
     * @param spreading how a tip is laid out in time
     * @return mm/h in each step
     * @throws IllegalArgumentException if the step is not greater than 0 or far too short
     */
    public RegularSeries intensity(Tips tips, Duration step, TipSpreading spreading) {
        Objects.requireNonNull(spreading, "spreading");
        return RainUnits.intensity(depth(tips, step, spreading));
    }

    /**
     * Returns the mean intensity of rain in each step of a record:
     * {@link #depth(Tips, Interval, Duration, TipSpreading)} over its length.
     *
     * @param tips the tips, all inside the record
     * @param record time during which the gauge was at work
     * @param step length of a step; greater than 0
     * @param spreading how a tip is laid out in time
     * @return mm/h in each step
     * @throws IllegalArgumentException if a tip lies outside the record, or the step is not greater than 0 or far too
     *     short
     */
    public RegularSeries intensity(Tips tips, Interval record, Duration step, TipSpreading spreading) {
        return RainUnits.intensity(depth(tips, record, step, spreading));
    }

    /**
     * Returns the depth of rain in each step from the number of tips in each step, as many loggers store it. The
     * calibration sees the mean intensity of a step, n d/Δt, not its peaks: where the loss grows with intensity, the
     * correction of a long step is too small.
     *
     * @param tipsPerStep tips n in each step; whole numbers, 0 or greater, NaN for missing
     * @return mm in each step, calibrated
     * @throws IllegalArgumentException if a number is negative or not whole
     */
    public RegularSeries depthOfCounts(RegularSeries tipsPerStep) {
        Objects.requireNonNull(tipsPerStep, "tipsPerStep");
        Rain.requireNonNegative("tipsPerStep", tipsPerStep, "tips");
        for (int i = 0; i < tipsPerStep.size(); i++) {
            if (tipsPerStep.value(i) != Math.rint(tipsPerStep.value(i)) && !Double.isNaN(tipsPerStep.value(i))) {
                throw new IllegalArgumentException("tipsPerStep must be whole numbers, or NaN for missing, was "
                        + Text.number(tipsPerStep.value(i)) + " at index " + i + ", " + tipsPerStep.time(i));
            }
        }
        return calibrated(tipsPerStep.map(count -> count * tipMm));
    }

    /**
     * Returns a record of depth per step that this gauge made without calibration, calibrated by the mean intensity of
     * each step. Where the loss grows with intensity, the correction of a long step is too small.
     *
     * @param recordedMm depth in each step as recorded, mm; 0 or greater, NaN for missing
     * @return mm in each step; the same if the gauge has no calibration
     * @throws IllegalArgumentException if a depth is negative
     */
    public RegularSeries calibrated(RegularSeries recordedMm) {
        Objects.requireNonNull(recordedMm, "recordedMm");
        Rain.requireNonNegative("recordedMm", recordedMm, "mm");
        double hours = Rain.hours(recordedMm.step());
        return recordedMm.map(depth -> depth * calibration.factor(depth / hours, tipMm));
    }

    /**
     * Returns what this gauge makes of the tips, in numbers.
     *
     * @param tips the tips
     * @return counts and depths
     */
    public TipSummary summary(Tips tips) {
        double[] depths = tipDepths(tips);
        int below = 0;
        int above = 0;
        for (int i = 0; i < depths.length; ) {
            int next = tips.endOfInstant(i);
            double gap = i == 0 ? NO_TIP_BEFORE : (tips.epochNanos(i) - tips.epochNanos(i - 1)) / (double) (next - i);
            if (i > 0 && recorded(gap) < calibration.lowestMmPerHour(tipMm)) {
                below += next - i;
            } else if (i > 0 && recorded(gap) > calibration.highestMmPerHour(tipMm)) {
                above += next - i;
            }
            i = next;
        }
        double depth = CompensatedSum.of(depths, 0, depths.length);
        return new TipSummary(tips.size(), tips.coincident(), below, above, tips.size() * tipMm, depth);
    }

    /**
     * Returns the depth of a tip after calibration, for the machine that separates events.
     *
     * @param sinceTipBeforeNanos time since the tip before, ns; greater than 0, infinite if there was none
     * @return depth, mm
     */
    @API(status = API.Status.INTERNAL)
    public double depthOfTip(double sinceTipBeforeNanos) {
        return tipMm * calibration.factor(recorded(sinceTipBeforeNanos), tipMm);
    }

    private double recorded(double sinceTipBeforeNanos) {
        return tipMm * NANOS_PER_HOUR / sinceTipBeforeNanos;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TippingBucket that
                && Double.compare(tipMm, that.tipMm) == 0
                && calibration.equals(that.calibration);
    }

    @Override
    public int hashCode() {
        return Objects.hash(tipMm, calibration);
    }

    @Override
    public String toString() {
        return "TippingBucket[" + Text.significant(tipMm, 6) + " mm, " + calibration + "]";
    }
}
