package dev.runnel.hydraulics.monitoring;

import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What one pair of depth and velocity readings says about the flow. Immutable and thread-safe.
 *
 * @param level water level above the invert, m; NaN where no depth is known
 * @param area flow area between bed and level, m²; NaN where no depth is known
 * @param velocity mean velocity over the flow area, m/s, negative upstream; 0 where there is no flow area, NaN where no
 *     velocity is known
 * @param discharge flow, m³/s, negative upstream; NaN where it is not known
 * @param depthCondition what the depth reading says
 * @param velocityCondition what the velocity reading says
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record MonitoredFlow(
        double level,
        double area,
        double velocity,
        double discharge,
        DepthCondition depthCondition,
        VelocityCondition velocityCondition) {
    private static final int DIGITS = 4;

    /**
     * Checks that the conditions are there.
     *
     * @param level water level above the invert, m
     * @param area flow area, m²
     * @param velocity mean velocity, m/s
     * @param discharge flow, m³/s
     * @param depthCondition what the depth reading says
     * @param velocityCondition what the velocity reading says
     */
    public MonitoredFlow {
        Objects.requireNonNull(depthCondition, "depthCondition");
        Objects.requireNonNull(velocityCondition, "velocityCondition");
    }

    /**
     * Tells whether the readings do not say what the flow is.
     *
     * @return true if the discharge is NaN
     */
    public boolean isMissing() {
        return Double.isNaN(discharge);
    }

    @Override
    public String toString() {
        return "MonitoredFlow[level " + text(level, "m") + ", area " + text(area, "m2") + ", velocity "
                + text(velocity, "m/s") + ", discharge " + text(discharge, "m3/s") + ", " + depthCondition + ", "
                + velocityCondition + "]";
    }

    private static String text(double value, String unit) {
        return Double.isNaN(value) ? "unknown" : Text.significant(value, DIGITS) + " " + unit;
    }
}
