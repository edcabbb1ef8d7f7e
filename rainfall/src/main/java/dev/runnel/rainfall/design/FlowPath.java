package dev.runnel.rainfall.design;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.time.Duration;
import org.apiguardian.api.API;

/**
 * The way of the furthest water over the ground, and how long it takes by published formulae. They differ by a factor of two and more; take the
 * one that was made for such ground, and name it. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class FlowPath {
    private static final double METRES_PER_FOOT = 0.3048;

    private final double length;
    private final double gradient;

    private FlowPath(double length, double gradient) {
        this.length = length;
        this.gradient = gradient;
    }

    /**
     * Returns a way with a gradient of 1 in 100, to be changed by {@link #withGradient}.
     *
     * @param metres length, m; greater than 0
     * @return the way
     * @throws IllegalArgumentException if it is out of range
     */
    public static FlowPath ofLength(double metres) {
        return new FlowPath(Require.positive("metres", metres, "m"), 0.01);
    }

    /**
     * Returns the same way with another gradient.
     *
     * @param gradient mean gradient, m/m; greater than 0
     * @return the way
     * @throws IllegalArgumentException if it is out of range
     */
    public FlowPath withGradient(double gradient) {
        return new FlowPath(length, Require.positive("gradient", gradient, ""));
    }

    /**
     * Returns the time of concentration of a small rural catchment, t = 0.0078 L<sup>0.77</sup> S<sup>−0.385</sup> with t in min and L in ft.
     * Source: Kirpich (1940), Time of concentration of small agricultural watersheds, Civil Engineering 10(6), 362, from memory; from
     * catchments of 0.5 to 45 ha.
     *
     * @return time
     */
    public Duration kirpich() {
        return minutes(0.0078 * Math.pow(length / METRES_PER_FOOT, 0.77) * Math.pow(gradient, -0.385));
    }

    /**
     * Returns the time of entry over a surface, t = 0.828 (L r/√S)<sup>0.467</sup> with t in min and L in ft, up to 1200 ft. Source: Kerby
     * (1959), Time of concentration for overland flow, Civil Engineering 29(3), 174, from memory.
     *
     * @param retardance r, 0.02 for smooth paving to 0.8 for forest; 0.01 to 1
     * @return time
     * @throws IllegalArgumentException if the retardance is out of range or the way longer than 1200 ft, 365.76 m
     */
    public Duration kerby(double retardance) {
        Require.inRange("retardance", retardance, 0.01, 1, "");
        Require.inRange("length", length, 0, 1200 * METRES_PER_FOOT, "m");
        return minutes(0.828 * Math.pow(length / METRES_PER_FOOT * retardance / Math.sqrt(gradient), 0.467));
    }

    /**
     * Returns the time of entry over an airfield, t = 1.8 (1.1 − C) √L/∛(100 S) with t in min and L in ft. Source: US Federal Aviation
     * Administration (1970), Airport drainage, advisory circular 150/5320-5B, from memory.
     *
     * @param runoff runoff coefficient C of the rational method
     * @return time
     */
    public Duration airport(RunoffCoefficient runoff) {
        return minutes(
                1.8 * (1.1 - runoff.coefficient()) * Math.sqrt(length / METRES_PER_FOOT) / Math.cbrt(100 * gradient));
    }

    /**
     * Returns the time of flow at a steady velocity, L/v.
     *
     * @param metresPerSecond velocity v, m/s; greater than 0, such as that of the full pipe
     * @return time
     * @throws IllegalArgumentException if it is out of range
     */
    public Duration atVelocity(double metresPerSecond) {
        Require.positive("metresPerSecond", metresPerSecond, "m/s");
        return minutes(length / metresPerSecond / 60);
    }

    private static Duration minutes(double minutes) {
        return Duration.ofNanos(Math.round(Require.inRange("time", minutes, 0, 1e7, "min") * 60e9));
    }

    @Override
    public String toString() {
        return "FlowPath[" + Text.significant(length, 4) + " m, gradient " + Text.significant(gradient, 3) + "]";
    }
}
