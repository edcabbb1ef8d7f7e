package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.flow.Gravity;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The jet that leaves a pipe or an orifice level and falls free in air, without drag: x = V t, y = g t²/2. Immutable and thread-safe.
 *
 * <pre>
 * x = V √(2y/g)     y = g x²/(2V²)     V = x √(g/(2y))
 * </pre>
 *
 * <p>Measured x and y give the velocity at the outlet and, times the wetted area there, the discharge of a pipe that no meter is in.
 * Both lengths are taken from the same line of the jet: both from its axis, or both from its surface, at the section where it leaves
 * (behind an orifice that is the contracted section). Source: K. Subramanya, 1000 Solved Problems in Fluid Mechanics, ch. 13 (the
 * trajectory of a jet). What it is not: a jet that breaks up, clings to the wall, or leaves a steep pipe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class FreeJet {
    /** Chosen here: ten times any jet of a sewer. */
    private static final double FASTEST = 1e3;

    private final double velocity;
    private final double gravity;

    private FreeJet(double velocity, double gravity) {
        this.velocity = velocity;
        this.gravity = gravity;
    }

    /**
     * Returns the jet of a velocity.
     *
     * @param velocity velocity V where it leaves, m/s; greater than 0, at most 1000
     * @return the jet under standard gravity
     * @throws IllegalArgumentException if {@code velocity} is outside its range
     */
    public static FreeJet of(double velocity) {
        return new FreeJet(checked(Require.positive("velocity", velocity, "m/s")), Gravity.STANDARD);
    }

    /**
     * Returns the jet that was measured at a point of its path.
     *
     * @param distance distance x from the outlet, m; greater than 0
     * @param drop fall y to there, m; greater than 0
     * @return the jet under standard gravity
     * @throws IllegalArgumentException if a length is not greater than 0 or the velocity would be above 1000 m/s
     */
    public static FreeJet throughDistanceAndDrop(double distance, double drop) {
        return throughDistanceAndDrop(distance, drop, Gravity.STANDARD);
    }

    /**
     * Returns the jet that was measured at a point of its path, under another gravity.
     *
     * @param distance distance x from the outlet, m; greater than 0
     * @param drop fall y to there, m; greater than 0
     * @param gravity acceleration of free fall g, m/s²; in [0.1, 100]
     * @return the jet
     * @throws IllegalArgumentException if an argument is out of range or the velocity would be above 1000 m/s
     */
    public static FreeJet throughDistanceAndDrop(double distance, double drop, double gravity) {
        Require.positive("distance", distance, "m");
        Require.positive("drop", drop, "m");
        Require.inRange("gravity", gravity, 0.1, 100, "m/s2");
        return new FreeJet(checked(distance / fallTime(drop, gravity)), gravity);
    }

    /**
     * Returns a copy under another gravity.
     *
     * @param newGravity acceleration of free fall g, m/s²; in [0.1, 100]
     * @return the copy, of the same velocity
     * @throws IllegalArgumentException if {@code newGravity} is outside
     */
    public FreeJet withGravity(double newGravity) {
        return new FreeJet(velocity, Require.inRange("newGravity", newGravity, 0.1, 100, "m/s2"));
    }

    /**
     * Returns the velocity where the jet leaves.
     *
     * @return velocity V, m/s
     */
    public double velocity() {
        return velocity;
    }

    /**
     * Returns how far out the jet is when it has fallen.
     *
     * @param drop fall y, m; 0 or greater
     * @return distance x, m
     * @throws IllegalArgumentException if {@code drop} is negative or not finite
     */
    public double reach(double drop) {
        return velocity * fallTime(Require.nonNegative("drop", drop, "m"), gravity);
    }

    /**
     * Returns how far the jet has fallen.
     *
     * @param distance distance x from the outlet, m; in [0, 1e6]
     * @return fall y, m
     * @throws IllegalArgumentException if {@code distance} is outside
     */
    public double drop(double distance) {
        double time = Require.inRange("distance", distance, 0, 1e6, "m") / velocity;
        return gravity * time * time / 2;
    }

    /**
     * Returns the discharge of the jet.
     *
     * @param area wetted area where it leaves, m²; greater than 0
     * @return discharge Q = V A, m³/s
     * @throws IllegalArgumentException if {@code area} is not greater than 0 and finite
     */
    public double discharge(double area) {
        return velocity * Require.positive("area", area, "m2");
    }

    private static double fallTime(double drop, double gravity) {
        return Math.sqrt(2) * Math.sqrt(drop / gravity);
    }

    private static double checked(double velocity) {
        if (!(velocity > 0 && velocity <= FASTEST)) {
            throw new IllegalArgumentException("velocity must be greater than 0 and at most " + Text.number(FASTEST)
                    + " m/s, was " + Text.number(velocity));
        }
        return velocity;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FreeJet
                && Double.compare(velocity, ((FreeJet) other).velocity) == 0
                && Double.compare(gravity, ((FreeJet) other).gravity) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(velocity) * 31 + Double.hashCode(gravity);
    }

    @Override
    public String toString() {
        return "FreeJet[" + Text.significant(velocity, 4) + " m/s]";
    }
}
