package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * One strip of a gauging.
 *
 * @param width width, m
 * @param depth depth, m
 * @param velocity velocity, m/s
 * @param velocityUncertainty relative standard uncertainty of the velocity from the count of points, u_p
 * @param points count of points in which the velocity was measured
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Strip(double width, double depth, double velocity, double velocityUncertainty, int points) {
    /**
     * Returns the area.
     *
     * @return area, m²
     */
    public double area() {
        return width * depth;
    }

    /**
     * Returns the discharge.
     *
     * @return discharge, m³/s
     */
    public double discharge() {
        return area() * velocity;
    }

    @Override
    public String toString() {
        return "Strip[" + Text.significant(width, 4) + " m × " + Text.significant(depth, 4) + " m, "
                + Text.significant(velocity, 4) + " m/s, " + Text.significant(discharge(), 4) + " m3/s]";
    }
}
