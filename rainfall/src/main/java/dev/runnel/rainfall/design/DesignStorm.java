package dev.runnel.rainfall.design;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.ddf.DepthDurationFrequency;
import dev.runnel.rainfall.ddf.IntensityFormula;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A depth of rain laid out over equal steps. Immutable and thread-safe. The steps add up to the depth within one unit in
 * the last place: what rounding leaves over goes to the wettest step.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DesignStorm {
    /** How far a shape may miss 0 and 1, or fall, by the rounding of its formula. */
    private static final double ROUNDING = 1e-12;

    /** Chosen here: nearly two years of minutes; no design storm is as long. */
    private static final long MOST_STEPS = 1_000_000;

    private final String rule;
    private final Duration step;
    private final double[] depths;

    private DesignStorm(String rule, Duration step, double[] depths) {
        this.rule = Objects.requireNonNull(rule, "rule");
        this.step = step;
        this.depths = depths;
    }

    /**
     * Returns a storm of the given steps.
     *
     * @param rule what to call it
     * @param step length of a step; greater than 0
     * @param depthsMm depth in each, mm; 0 or greater, together above 0
     * @return the storm
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static DesignStorm ofDepths(String rule, Duration step, double... depthsMm) {
        EpochNanos.positive("step", step);
        for (int i = 0; i < depthsMm.length; i++) {
            Require.nonNegative("depthsMm at index " + i, depthsMm[i], "mm");
        }
        Require.positive("sum of depthsMm", CompensatedSum.of(depthsMm, 0, depthsMm.length), "mm");
        return new DesignStorm(rule, step, depthsMm.clone());
    }

    /**
     * Returns a depth laid out by a shape.
     *
     * @param rule what to call it
     * @param shape share of the depth by share of the duration
     * @param duration whole duration; a whole number of steps
     * @param depthMm depth, mm; greater than 0
     * @param step length of a step; greater than 0
     * @return the storm
     * @throws IllegalArgumentException if an argument is out of range or the shape falls, does not begin at 0 or does not
     *     end at 1
     */
    public static DesignStorm of(String rule, StormShape shape, Duration duration, double depthMm, Duration step) {
        int steps = steps(duration, step);
        Require.positive("depthMm", depthMm, "mm");
        double[] depths = new double[steps];
        double last = Require.inRange("shape at 0", shape.depthShare(0), -ROUNDING, ROUNDING, "");
        for (int i = 0; i < steps; i++) {
            double share = Require.inRange(
                    "shape at step " + (i + 1), shape.depthShare((i + 1.0) / steps), last - ROUNDING, 1 + ROUNDING, "");
            depths[i] = depthMm * Math.max(0, share - last);
            last = Math.max(last, share);
        }
        Require.inRange("shape at 1", last, 1 - ROUNDING, 1 + ROUNDING, "");
        return new DesignStorm(rule, step, depths);
    }

    /**
     * Returns the blocks of a relation for one return period, the greatest in the middle and the next to the right and the
     * left of it in turn. Source: Chow, Maidment and Mays (1988), Applied Hydrology, section 14.4.
     *
     * @param relation depth-duration-frequency relation
     * @param returnPeriodYears return period T, years
     * @param duration whole duration; a whole number of steps
     * @param step length of a step; in the range of the relation
     * @return the storm
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static DesignStorm alternatingBlock(
            DepthDurationFrequency relation, double returnPeriodYears, Duration duration, Duration step) {
        double[] blocks = blocks(relation, returnPeriodYears, duration, step);
        double[] ranked = Arrays.stream(blocks).sorted().toArray();
        int n = blocks.length;
        double[] depths = new double[n];
        for (int i = 0; i < n; i++) {
            int rank = n - 1 - i;
            // The greatest in the middle, the next to its right, then one to the left and one to the right.
            depths[(n - 1) / 2 + (rank % 2 == 0 ? -rank : rank + 1) / 2] = ranked[i];
        }
        return new DesignStorm("alternating block", step, depths);
    }

    /**
     * Returns the blocks of a relation as a storm of Euler's type II: the peak block ends no later than 0.3 of the duration,
     * the blocks up to it are in reverse order and the others follow in theirs. Source: DWA-A 118 (2006), rule from memory.
     *
     * @param relation depth-duration-frequency relation
     * @param returnPeriodYears return period T, years
     * @param duration whole duration; a whole number of steps
     * @param step length of a step, in Germany 5 min; in the range of the relation
     * @return the storm
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static DesignStorm eulerTypeTwo(
            DepthDurationFrequency relation, double returnPeriodYears, Duration duration, Duration step) {
        double[] blocks = blocks(relation, returnPeriodYears, duration, step);
        int front = Math.max(1, 3 * blocks.length / 10);
        double[] depths = blocks.clone();
        for (int i = 0; i < front; i++) {
            depths[i] = blocks[front - 1 - i];
        }
        return new DesignStorm("Euler type II", step, depths);
    }

    /**
     * Returns the Chicago storm: around the peak, at the share r of the duration, every part of the storm has the depth of
     * the formula. With P(t) the depth of the formula, the depth up to a time u before the peak is r P(D) − r P(u/r), and that
     * between the peak and a time v after it (1 − r) P(v/(1 − r)). Source: Keifer and Chu (1957), Synthetic storm pattern for
     * drainage design, Journal of the Hydraulics Division ASCE 83(4).
     *
     * <p>Nearer to the peak than the formula holds, rain is taken as steady at the intensity of its shortest duration (chosen
     * here). In steps the storm reaches the depth of the formula only over times whose ends, at r and 1 − r about the
     * peak, are edges of steps; where the peak lies inside a step the wettest step has less than the formula over a step.
     *
     * @param formula intensity over duration; must hold from a step to the whole duration
     * @param duration whole duration D; a whole number of steps
     * @param peakAt share of the duration before the peak r; above 0, below 1
     * @param step length of a step; not shorter than the shortest duration of the formula
     * @return the storm
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static DesignStorm chicago(IntensityFormula formula, Duration duration, double peakAt, Duration step) {
        int steps = steps(duration, step);
        if (!(peakAt > 0 && peakAt < 1)) {
            throw new IllegalArgumentException("peakAt must be above 0 and below 1, was " + Text.number(peakAt));
        }
        if (step.compareTo(formula.shortestDuration()) < 0) {
            throw new IllegalArgumentException(
                    "step must not be shorter than " + Text.exactDuration(formula.shortestDuration())
                            + ", the shortest duration of the formula, was " + Text.exactDuration(step));
        }
        double total = formula.depthMm(duration);
        double peak = peakAt * duration.toNanos();
        double[] depths = new double[steps];
        double before = 0;
        for (int i = 0; i < steps; i++) {
            double end = (double) step.toNanos() * (i + 1);
            double from = end - peak;
            double share = end < peak ? peakAt : 1 - peakAt;
            // Rounding must not lead beyond the whole duration, where the formula may end.
            double part = share * depth(formula, Math.min(Math.abs(from) / share, (double) duration.toNanos()));
            double sum = end < peak ? peakAt * total - part : peakAt * total + part;
            depths[i] = sum - before;
            before = sum;
        }
        return new DesignStorm("Chicago", step, depths);
    }

    private static double depth(IntensityFormula formula, double nanos) {
        double shortest = formula.shortestDuration().toNanos();
        return nanos < shortest
                ? formula.depthMm(formula.shortestDuration()) * (nanos / shortest)
                : formula.depthMm(Duration.ofNanos(Math.round(nanos)));
    }

    /** What each further step of duration adds to the depth. */
    private static double[] blocks(DepthDurationFrequency relation, double years, Duration duration, Duration step) {
        double[] blocks = new double[steps(duration, step)];
        double before = 0;
        for (int i = 0; i < blocks.length; i++) {
            double depth = relation.depthMm(step.multipliedBy(i + 1L), years);
            blocks[i] = depth - before;
            before = depth;
        }
        return blocks;
    }

    private static int steps(Duration duration, Duration step) {
        long stepNanos = EpochNanos.positive("step", step);
        long nanos = EpochNanos.positive("duration", duration);
        if (nanos % stepNanos != 0) {
            throw new IllegalArgumentException("duration must be a whole number of steps of " + Text.exactDuration(step)
                    + ", was " + Text.exactDuration(duration));
        }
        if (nanos / stepNanos > MOST_STEPS) {
            throw new IllegalArgumentException("duration must be at most " + MOST_STEPS + " steps of "
                    + Text.exactDuration(step) + ", was " + Text.exactDuration(duration));
        }
        return (int) (nanos / stepNanos);
    }

    /**
     * Returns the depth.
     *
     * @return sum of the steps, mm
     */
    public double depthMm() {
        return CompensatedSum.of(depths, 0, depths.length);
    }

    /**
     * Returns the duration.
     *
     * @return number of steps times their length
     */
    public Duration duration() {
        return step.multipliedBy(depths.length);
    }

    /**
     * Returns the depth in each step.
     *
     * @return mm; a copy
     */
    public double[] depths() {
        return depths.clone();
    }

    /**
     * Returns the intensity in the wettest step.
     *
     * @return mm/h
     */
    public double peakMmPerHour() {
        return Arrays.stream(depths).max().orElseThrow() / Rain.hours(step);
    }

    /**
     * Returns the storm as a record.
     *
     * @param start when it begins
     * @return depth in each step, mm
     */
    public RegularSeries at(Instant start) {
        Objects.requireNonNull(start, "start");
        return RegularSeries.of(start, step, depths);
    }

    /**
     * Returns the storm with every depth multiplied.
     *
     * @param factor for example an areal reduction; greater than 0
     * @return the storm
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public DesignStorm multipliedBy(double factor) {
        Require.positive("factor", factor, "");
        return new DesignStorm(
                rule, step, Arrays.stream(depths).map(depth -> depth * factor).toArray());
    }

    @Override
    public String toString() {
        return "DesignStorm[" + rule + ", " + Text.significant(depthMm(), 4) + " mm in "
                + Text.duration(duration()) + " by " + Text.duration(step)
                + ", peak " + Text.significant(peakMmPerHour(), 4) + " mm/h]";
    }
}
