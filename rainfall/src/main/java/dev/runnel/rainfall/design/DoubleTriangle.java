package dev.runnel.rainfall.design;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import org.apiguardian.api.API;

/**
 * Two triangles of intensity, one on the other: from 0 up to i₁, up to the peak i₂ and down to i₁ in the intense period, and
 * down to 0. Immutable and thread-safe. Shape after Desbordes (1978), used in France; relations by volume:
 *
 * <blockquote>i₁ = 2 (H − h)/(D − d), i₂ = 2 h/d − i₁</blockquote>
 *
 * <p>H depth in the whole duration D, h depth in the intense period d.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DoubleTriangle implements StormShape {
    private final double depthMm;
    private final double intenseDepthMm;
    private final Duration duration;
    private final Duration intense;
    private final double before;

    private DoubleTriangle(double depthMm, Duration duration, double intenseDepthMm, Duration intense, double before) {
        this.depthMm = depthMm;
        this.duration = duration;
        this.intenseDepthMm = intenseDepthMm;
        this.intense = intense;
        this.before = before;
    }

    /**
     * Returns the shape.
     *
     * @param depthMm depth H, mm; greater than 0
     * @param duration whole duration D; greater than 0
     * @param intenseDepthMm depth h in the intense period, mm; so that i₂ is not below i₁ and i₁ not below 0
     * @param intense intense period d; greater than 0, shorter than D
     * @param position share of the time outside the intense period that lies before it; in [0, 1], 0.5 symmetric
     * @return the shape
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static DoubleTriangle of(
            double depthMm, Duration duration, double intenseDepthMm, Duration intense, double position) {
        Require.positive("depthMm", depthMm, "mm");
        Require.inRange("intenseDepthMm", intenseDepthMm, 0, depthMm, "mm");
        EpochNanos.positive("duration", duration);
        EpochNanos.positive("intense", intense);
        if (intense.compareTo(duration) >= 0) {
            throw new IllegalArgumentException("intense must be shorter than " + Text.exactDuration(duration) + ", was "
                    + Text.exactDuration(intense));
        }
        Require.inRange("position", position, 0, 1, "");
        DoubleTriangle shape = new DoubleTriangle(depthMm, duration, intenseDepthMm, intense, position);
        if (!(shape.peakMmPerHour() >= shape.shoulderMmPerHour())) {
            throw new IllegalArgumentException("intenseDepthMm must be great enough for a peak above the shoulder of "
                    + Text.significant(shape.shoulderMmPerHour(), 4) + " mm/h, was " + Text.number(intenseDepthMm));
        }
        return shape;
    }

    /**
     * Returns the intensity at both ends of the intense period.
     *
     * @return i₁, mm/h
     */
    public double shoulderMmPerHour() {
        return 2 * (depthMm - intenseDepthMm) / (Rain.hours(duration) - Rain.hours(intense));
    }

    /**
     * Returns the greatest intensity, in the middle of the intense period.
     *
     * @return i₂, mm/h
     */
    public double peakMmPerHour() {
        return 2 * intenseDepthMm / Rain.hours(intense) - shoulderMmPerHour();
    }

    /**
     * Returns the storm in steps.
     *
     * @param step length of a step; a whole part of the duration
     * @return the storm
     * @throws IllegalArgumentException if the step is no whole part of the duration
     */
    public DesignStorm storm(Duration step) {
        return DesignStorm.of("double triangle", this, duration, depthMm, step);
    }

    @Override
    public double depthShare(double fraction) {
        Require.inRange("fraction", fraction, 0, 1, "");
        double total = Rain.hours(duration);
        double d = Rain.hours(intense);
        double rise = before * (total - d);
        double fall = total - d - rise;
        double t = fraction * total;
        double i1 = shoulderMmPerHour();
        double i2 = peakMmPerHour();
        if (t >= total) {
            return 1;
        }
        if (t < rise) {
            return i1 * t * t / (2 * rise) / depthMm;
        }
        if (t <= rise + d / 2) {
            double u = t - rise;
            return (i1 * rise / 2 + i1 * u + (i2 - i1) * u * u / d) / depthMm;
        }
        if (t <= total - fall) {
            double u = rise + d - t;
            return (i1 * rise / 2 + intenseDepthMm - i1 * u - (i2 - i1) * u * u / d) / depthMm;
        }
        double u = total - t;
        return 1 - i1 * u * u / (2 * fall) / depthMm;
    }

    @Override
    public String toString() {
        return "DoubleTriangle[" + Text.significant(depthMm, 6) + " mm in " + Text.duration(duration) + ", "
                + Text.significant(intenseDepthMm, 6) + " mm of it in " + Text.duration(intense) + "]";
    }
}
