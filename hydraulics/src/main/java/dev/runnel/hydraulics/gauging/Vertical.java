package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A vertical of a gauging: where it stands, how deep the water is and how fast on average.
 *
 * @param distance distance from the reference point on the bank, m
 * @param depth depth, m; 0 or greater
 * @param velocity mean velocity, m/s; negative where the water runs back
 * @param rule points from which the velocity was found
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Vertical(double distance, double depth, double velocity, PointRule rule) {
    private static final double FARTHEST = 1e4;

    /**
     * Checks the parts.
     *
     * @param distance distance, m; in [-10000, 10000]
     * @param depth depth, m; in [0, 1000]
     * @param velocity mean velocity, m/s; in [-20, 20]
     * @param rule points
     * @throws IllegalArgumentException if a part is outside its range
     */
    public Vertical {
        Objects.requireNonNull(rule, "rule");
        Require.inRange("distance", distance, -FARTHEST, FARTHEST, "m");
        Require.inRange("depth", depth, 0, 1000, "m");
        Require.inRange("velocity", velocity, -20, 20, "m/s");
    }

    /**
     * Returns a vertical measured at the points of a rule.
     *
     * @param distance distance from the reference point, m; in [-10000, 10000]
     * @param depth depth, m; in [0, 1000]
     * @param rule the points
     * @param velocities velocities at the points from the surface down, m/s; in [-20, 20]
     * @return the vertical
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static Vertical of(double distance, double depth, PointRule rule, double... velocities) {
        return new Vertical(distance, depth, rule.mean(velocities), rule);
    }

    @Override
    public String toString() {
        return "Vertical[" + Text.significant(distance, 6) + " m: depth " + Text.significant(depth, 6) + " m, "
                + Text.significant(velocity, 4) + " m/s]";
    }
}
