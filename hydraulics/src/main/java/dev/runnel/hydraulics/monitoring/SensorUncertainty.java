package dev.runnel.hydraulics.monitoring;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * Standard uncertainties (one standard deviation, coverage factor 1) of what the flow of a monitor is made of, taken to be
 * independent of each other. Immutable and thread-safe.
 *
 * <p>A tolerance ±a that is all that is known, with every value inside equally likely, has the standard uncertainty a/√3;
 * an expanded uncertainty stated "at 95 %" is about twice the standard one (JCGM 100:2008, sections 4.3.3 and 4.3.7). State
 * what the sensor does in the sewer, not what it does in its data sheet: offset, drift, ripples and ragging belong in it.
 *
 * @param depth of the level, sensor and offset together, m
 * @param velocity of the velocity reading, m/s
 * @param height of the height of the section (the diameter of a circle), all its lengths growing alike, m
 * @param velocityFactor of the factor from measured to mean velocity, no unit
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record SensorUncertainty(double depth, double velocity, double height, double velocityFactor) {
    /**
     * Checks the range.
     *
     * @param depth of the level, m; 0 or greater
     * @param velocity of the velocity reading, m/s; 0 or greater
     * @param height of the height of the section, m; 0 or greater
     * @param velocityFactor of the velocity factor; in [0, 1]
     * @throws IllegalArgumentException if one is out of range or NaN
     */
    public SensorUncertainty {
        Require.nonNegative("depth", depth, "m");
        Require.nonNegative("velocity", velocity, "m/s");
        Require.nonNegative("height", height, "m");
        Require.nonNegative("velocityFactor", velocityFactor, "");
        if (velocityFactor > 1) {
            throw new IllegalArgumentException("velocityFactor must have an uncertainty in [0, 1], was "
                    + Text.number(velocityFactor) + ": divide per cent by 100");
        }
    }

    /**
     * Returns the uncertainties of the two sensors, with section and velocity factor taken as exact.
     *
     * @param depth of the level, m; 0 or greater
     * @param velocity of the velocity reading, m/s; 0 or greater
     * @return the uncertainties
     * @throws IllegalArgumentException if one is negative, infinite or NaN
     */
    public static SensorUncertainty of(double depth, double velocity) {
        return new SensorUncertainty(depth, velocity, 0, 0);
    }

    /**
     * Returns these uncertainties with another of the height of the section.
     *
     * @param height of the height of the section, m; 0 or greater
     * @return the uncertainties
     * @throws IllegalArgumentException if it is negative, infinite or NaN
     */
    public SensorUncertainty withHeight(double height) {
        return new SensorUncertainty(depth, velocity, height, velocityFactor);
    }

    /**
     * Returns these uncertainties with another of the velocity factor.
     *
     * @param velocityFactor of the velocity factor, no unit; in [0, 1]
     * @return the uncertainties
     * @throws IllegalArgumentException if it is outside or NaN
     */
    public SensorUncertainty withVelocityFactor(double velocityFactor) {
        return new SensorUncertainty(depth, velocity, height, velocityFactor);
    }

    @Override
    public String toString() {
        return "SensorUncertainty[depth " + Text.significant(depth, 6) + " m, velocity " + Text.significant(velocity, 6)
                + " m/s, height " + Text.significant(height, 6) + " m, velocity factor "
                + Text.significant(velocityFactor, 6) + "]";
    }
}
