package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The edge of the water: the bank, where the depth runs out, or a wall.
 *
 * @param distance distance from the reference point, m
 * @param depth depth at the edge, m; 0 at a bank
 * @param velocityRatio velocity at the edge over that of the nearest vertical
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record WaterEdge(double distance, double depth, double velocityRatio) {
    /** Ratio at a smooth wall, 0.91; common practice, from memory of the edge coefficient of a rectangular edge. */
    private static final double SMOOTH_WALL = 0.91;

    /**
     * Checks the parts.
     *
     * @param distance distance, m; in [-10000, 10000]
     * @param depth depth, m; in [0, 1000]
     * @param velocityRatio ratio; in [0, 1.5]
     * @throws IllegalArgumentException if a part is outside its range
     */
    public WaterEdge {
        Require.inRange("distance", distance, -1e4, 1e4, "m");
        Require.inRange("depth", depth, 0, 1000, "m");
        Require.inRange("velocityRatio", velocityRatio, 0, 1.5, "");
    }

    /**
     * Returns a bank: depth and velocity run out to 0.
     *
     * @param distance distance from the reference point, m; in [-10000, 10000]
     * @return the edge
     * @throws IllegalArgumentException if {@code distance} is outside its range
     */
    public static WaterEdge bank(double distance) {
        return new WaterEdge(distance, 0, 0);
    }

    /**
     * Returns a smooth wall, along which the water runs at 0.91 of the velocity of the nearest vertical.
     *
     * @param distance distance from the reference point, m; in [-10000, 10000]
     * @param depth depth at the wall, m; in [0, 1000]
     * @return the edge
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static WaterEdge wall(double distance, double depth) {
        return new WaterEdge(distance, depth, SMOOTH_WALL);
    }

    /**
     * Returns a copy with another velocity at the edge, the edge coefficient: 0.65 to 0.90 from overgrown to smooth walls (common
     * practice); at a bank with depth 0 it moves the mean-section method only.
     *
     * @param newRatio velocity at the edge over that of the nearest vertical; in [0, 1.5]
     * @return the copy
     * @throws IllegalArgumentException if {@code newRatio} is outside its range
     */
    public WaterEdge withVelocityRatio(double newRatio) {
        return new WaterEdge(distance, depth, newRatio);
    }

    @Override
    public String toString() {
        return "WaterEdge[" + Text.significant(distance, 6) + " m, depth " + Text.significant(depth, 6) + " m]";
    }
}
