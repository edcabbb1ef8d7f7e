package dev.runnel.rainfall.gauge;

import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Depth in each step and mean intensity in each step, one from the other: I [mm/h] = P [mm] / Δt [h]; and depth in other
 * steps. For records that come at a fixed step rather than as tips. A missing step stays missing.
 *
 * <p>A series has no unit and does not know which of the two it holds: name the variables so. The sum that an intensity
 * series prints has no meaning, and what asks for depths takes intensities without a sign.
 *
 * <p>Depth is conserved: there and back, the depth of a step agrees within 2 ulp and that of a record within 1e-15 of it,
 * summed with compensation as {@link RegularSeries#sum} does. To calibrate such a record, see
 * {@link TippingBucket#calibrated} and {@link TippingBucket#depthOfCounts}.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RainUnits {
    private RainUnits() {}

    /**
     * Returns the mean intensity in each step.
     *
     * @param depth depth in each step, mm; 0 or greater, NaN for missing
     * @return intensity in each step, mm/h
     * @throws IllegalArgumentException if a depth is negative
     */
    public static RegularSeries intensity(RegularSeries depth) {
        Objects.requireNonNull(depth, "depth");
        Rain.requireNonNegative("depth", depth, "mm");
        double hours = Rain.hours(depth.step());
        return depth.map(value -> value / hours);
    }

    /**
     * Returns the depth in each step.
     *
     * @param intensity mean intensity in each step, mm/h; 0 or greater, NaN for missing
     * @return depth in each step, mm
     * @throws IllegalArgumentException if an intensity is negative
     */
    public static RegularSeries depth(RegularSeries intensity) {
        Objects.requireNonNull(intensity, "intensity");
        Rain.requireNonNegative("intensity", intensity, "mm/h");
        double hours = Rain.hours(intensity.step());
        return intensity.map(value -> value * hours);
    }

    /**
     * Returns the depth in steps of another length, coarser or finer. Rain is taken as steady within each given step, so
     * that a finer step shows no more than the record knew. The first step begins where the record begins; the last one
     * reaches beyond the record if that is not a whole number of steps long.
     *
     * @param depth depth in each step, mm; 0 or greater, NaN for missing
     * @param step length of the new steps; greater than 0
     * @return depth in each new step, mm; missing if it shares any time with a missing step, so that rain beside it in the
     *     same new step is set aside: the depths and what was set aside add up to the depths given
     * @throws IllegalArgumentException if a depth is negative, the step is not greater than 0, or so short that there are
     *     more than 100 000 000 steps
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public static StepRecord inSteps(RegularSeries depth, Duration step) {
        Objects.requireNonNull(depth, "depth");
        Rain.requireNonNegative("depth", depth, "mm");
        return Apportionment.of(depth, EpochNanos.positive("step", step));
    }
}
