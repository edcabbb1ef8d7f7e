package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What a gauge that counts whole tips can tell about intensity. Immutable and thread-safe.
 *
 * <p>A count of n tips in a window means a depth between (n − 1) d and (n + 1) d: the bucket was part full at the start
 * and at the end, by two amounts that are independent of each other and anything between 0 and d. Their difference has
 * the triangular distribution on ±d, whose standard deviation is d/√6 (JCGM 100:2008, 4.3.9).
 *
 * <p>What this is not: the uncertainty of the rain. Wind, placement and calibration come on top.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class TipResolution {
    private static final double ROOT_6 = Math.sqrt(6);

    private final double tipMm;

    private TipResolution(double tipMm) {
        this.tipMm = tipMm;
    }

    /**
     * Returns the resolution of a gauge.
     *
     * @param bucket the gauge
     * @return its resolution
     */
    public static TipResolution of(TippingBucket bucket) {
        return new TipResolution(bucket.tipMm());
    }

    /**
     * Returns the intensity of one tip in a window, d/Δt.
     *
     * @param window length of the window; greater than 0
     * @return step from one possible intensity to the next, mm/h
     * @throws IllegalArgumentException if the window is not greater than 0
     */
    public double stepMmPerHour(Duration window) {
        EpochNanos.positive("window", window);
        return tipMm / Rain.hours(window);
    }

    /**
     * Returns the standard uncertainty of an intensity counted in a window, from counting alone: d/(√6 Δt).
     *
     * @param window length of the window; greater than 0
     * @return standard uncertainty, mm/h; the same at every intensity
     * @throws IllegalArgumentException if the window is not greater than 0
     */
    public double standardUncertaintyMmPerHour(Duration window) {
        return stepMmPerHour(window) / ROOT_6;
    }

    /**
     * Returns the standard uncertainty of an intensity taken from the time between two tips, from the clock alone. Both times were
     * cut to its resolution c, so that their difference is out by anything in ±c, triangular: u = I c/(√6 Δt).
     *
     * @param sinceTipBefore time between the tips Δt; greater than 0
     * @param clock resolution of the clock c; 0 or longer
     * @return standard uncertainty, mm/h; a first order, too small where c is not much shorter than Δt
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double standardUncertaintyMmPerHour(Duration sinceTipBefore, Duration clock) {
        Objects.requireNonNull(sinceTipBefore, "sinceTipBefore");
        EpochNanos.nonNegative("clock", clock);
        return stepMmPerHour(sinceTipBefore) * (Rain.hours(clock) / Rain.hours(sinceTipBefore)) / ROOT_6;
    }

    /**
     * Returns the standard uncertainty of any depth counted in tips, from counting alone: d/√6.
     *
     * @return standard uncertainty, mm; the same at every depth
     */
    public double standardUncertaintyMm() {
        return tipMm / ROOT_6;
    }

    /**
     * Returns the least depth that a number of tips can stand for: the bucket was full but for a drop when it began to rain.
     *
     * @param tips tips counted; 0 or more
     * @return (n − 1) d, not below 0, mm; before calibration
     * @throws IllegalArgumentException if the number is negative
     */
    public double leastMm(int tips) {
        return Math.max(0, Require.atLeast("tips", tips, 0) - 1) * tipMm;
    }

    /**
     * Returns the depth that a number of tips stays below: what the bucket held when it ceased to rain tips in the next event, or
     * dries up. Rain may end without any tip.
     *
     * @param tips tips counted; 0 or more
     * @return (n + 1) d, mm; before calibration
     * @throws IllegalArgumentException if the number is negative
     */
    public double mostMm(int tips) {
        return (Require.atLeast("tips", tips, 0) + 1.0) * tipMm;
    }

    /**
     * Returns the window in which one tip is no more than a given share of the depth: the step from one possible depth to the
     * next. The relative {@linkplain #standardUncertaintyMmPerHour(Duration) standard uncertainty} there is the share over √6.
     *
     * @param intensityMmPerHour intensity, mm/h; greater than 0
     * @param share greatest share of one tip in the depth; above 0, up to 1
     * @return window d/(I share), the shortest that will do
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Duration windowFor(double intensityMmPerHour, double share) {
        Require.positive("intensityMmPerHour", intensityMmPerHour, "mm/h");
        Require.positive("share", share, "");
        Require.inRange("share", share, 0, 1, "");
        return Duration.ofNanos(Math.round(tipMm / (intensityMmPerHour * share) * 3.6e12));
    }

    @Override
    public String toString() {
        return "TipResolution[" + Text.significant(tipMm, 6) + " mm, "
                + Text.significant(stepMmPerHour(Duration.ofMinutes(1)), 4) + " mm/h over a minute]";
    }
}
