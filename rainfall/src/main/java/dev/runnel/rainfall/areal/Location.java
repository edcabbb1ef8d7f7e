package dev.runnel.rainfall.areal;

import dev.runnel.internal.Require;
import org.apiguardian.api.API;

/**
 * A place on a plane grid.
 *
 * @param x easting, m
 * @param y northing, m
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Location(double x, double y) {
    /**
     * Checks the arguments.
     *
     * @param x easting, m; finite
     * @param y northing, m; finite
     * @throws IllegalArgumentException if one is not finite
     */
    public Location {
        Require.finite("x", x, "m");
        Require.finite("y", y, "m");
    }

    /**
     * Returns the place.
     *
     * @param x easting, m; finite
     * @param y northing, m; finite
     * @return the place
     * @throws IllegalArgumentException if one is not finite
     */
    public static Location of(double x, double y) {
        return new Location(x, y);
    }

    double distanceTo(Location other) {
        return Math.hypot(x - other.x, y - other.y);
    }
}
