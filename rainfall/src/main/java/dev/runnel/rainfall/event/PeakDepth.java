package dev.runnel.rainfall.event;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The greatest depth of rain in any window of a given length.
 *
 * @param duration length of the window; greater than 0
 * @param depthMm depth in it, mm; 0 or greater
 * @param start start of the window, the earliest if several are as deep
 * @param isAtLeast true if a deeper one may be hidden: steps are missing, or the record is shorter than the window
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record PeakDepth(Duration duration, double depthMm, Instant start, boolean isAtLeast) {
    /**
     * Makes the greatest depth of a record that lacks nothing.
     *
     * @param duration length of the window; greater than 0
     * @param depthMm depth in it, mm; 0 or greater
     * @param start start of the window
     * @throws IllegalArgumentException if the duration is not greater than 0 or the depth is negative or NaN
     */
    public PeakDepth(Duration duration, double depthMm, Instant start) {
        this(duration, depthMm, start, false);
    }

    /**
     * Checks the arguments.
     *
     * @param duration length of the window; greater than 0
     * @param depthMm depth in it, mm; 0 or greater
     * @param start start of the window
     * @param isAtLeast true if a deeper one may be hidden
     * @throws IllegalArgumentException if the duration is not greater than 0 or the depth is negative or NaN
     */
    public PeakDepth {
        EpochNanos.positive("duration", duration);
        Require.nonNegative("depthMm", depthMm, "mm");
        Objects.requireNonNull(start, "start");
    }

    /** The same, of a record that lacks something. */
    PeakDepth asAtLeast() {
        return new PeakDepth(duration, depthMm, start, true);
    }

    /**
     * Returns the mean intensity over the window.
     *
     * @return depth over duration, mm/h
     */
    public double intensityMmPerHour() {
        return depthMm / Rain.hours(duration);
    }

    @Override
    public String toString() {
        return "PeakDepth[" + (isAtLeast ? "at least " : "") + Text.significant(depthMm, 4) + " mm in "
                + Text.duration(duration) + " from " + start + "]";
    }
}
