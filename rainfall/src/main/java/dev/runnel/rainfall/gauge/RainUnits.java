package dev.runnel.rainfall.gauge;

import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import org.apiguardian.api.API;

/**
 * Depth in each step and mean intensity in each step, one from the other: I [mm/h] = P [mm] / Δt [h]. For records that
 * come at a fixed step rather than as tips. A missing step stays missing.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
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
        Rain.requireNonNegative("intensity", intensity, "mm/h");
        double hours = Rain.hours(intensity.step());
        return intensity.map(value -> value * hours);
    }
}
