package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * How the mean velocity of a vertical follows from the velocities at a few points of it; depths count from the surface, as
 * shares of the depth. ISO 748 (2007), clause 7, from memory: the one-point, two-point and five-point rules; the rest common
 * practice.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum PointRule {
    /** One point at 0.6: v = v0.6. */
    ONE(new double[] {0.6}, new double[] {1}, 0.075),
    /** One point at half depth, where ice or a shallow depth leaves no other: v = 0.95 v0.5. */
    HALF_DEPTH(new double[] {0.5}, new double[] {0.95}, 0.075),
    /** Two points: v = (v0.2 + v0.8)/2. */
    TWO(new double[] {0.2, 0.8}, new double[] {0.5, 0.5}, 0.035),
    /** Three points: v = (v0.2 + 2 v0.6 + v0.8)/4. */
    THREE(new double[] {0.2, 0.6, 0.8}, new double[] {0.25, 0.5, 0.25}, 0.035),
    /** Five points: v = (vs + 3 v0.2 + 3 v0.6 + 2 v0.8 + vb)/10, surface and bed the outermost. */
    FIVE(new double[] {0, 0.2, 0.6, 0.8, 1}, new double[] {0.1, 0.3, 0.3, 0.2, 0.1}, 0.025),
    /** Six points: v = (vs + 2 v0.2 + 2 v0.4 + 2 v0.6 + 2 v0.8 + vb)/10. */
    SIX(new double[] {0, 0.2, 0.4, 0.6, 0.8, 1}, new double[] {0.1, 0.2, 0.2, 0.2, 0.2, 0.1}, 0.025);

    private final double[] depths;
    private final double[] weights;
    private final double profileUncertainty;

    PointRule(double[] depths, double[] weights, double profileUncertainty) {
        this.depths = depths;
        this.weights = weights;
        this.profileUncertainty = profileUncertainty;
    }

    /**
     * Returns where to measure.
     *
     * @return depths of the points below the surface as shares of the depth, from the surface down; a new array
     */
    public double[] relativeDepths() {
        return depths.clone();
    }

    /**
     * Returns the relative standard uncertainty that the few points leave, u_p of ISO 748 (2007), annex E, from memory: 7.5 % for
     * one point, 3.5 % for two, 2.5 % for five; three counted as two, six as five.
     *
     * @return 0.075 for 7.5 %
     */
    public double profileUncertainty() {
        return profileUncertainty;
    }

    /**
     * Returns the mean velocity of the vertical.
     *
     * @param velocities velocities at the points, from the surface down, m/s; in [-20, 20]
     * @return mean velocity, m/s
     * @throws IllegalArgumentException if there are more or fewer than the rule has points, or one is outside its range
     */
    public double mean(double... velocities) {
        if (velocities.length != depths.length) {
            throw new IllegalArgumentException(
                    "velocities must be " + depths.length + " for the rule " + this + ", was " + velocities.length);
        }
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            String name = "velocity at " + Text.number(depths[i]) + " of the depth";
            sum += weights[i] * Require.inRange(name, velocities[i], -20, 20, "m/s");
        }
        return sum;
    }
}
