package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * Varied flow at one place. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Station {
    private final double distance;
    private final double invert;
    private final double depth;
    private final ReachFlow flow;

    Station(double distance, double invert, double depth, ReachFlow flow) {
        this.distance = distance;
        this.invert = invert;
        this.depth = depth;
        this.flow = flow;
    }

    /**
     * Returns the place.
     *
     * @return distance downstream of the start, m
     */
    public double distance() {
        return distance;
    }

    /**
     * Returns the level of the invert.
     *
     * @return level, m above the datum
     */
    public double invert() {
        return invert;
    }

    /**
     * Returns the depth; in a pressurised section the pressure level above the invert.
     *
     * @return depth, m
     */
    public double depth() {
        return depth;
    }

    /**
     * Returns the level of the water, or of the pressure.
     *
     * @return level, m above the datum
     */
    public double level() {
        return invert + depth;
    }

    /**
     * Returns the level of the energy line.
     *
     * @return level, m above the datum
     */
    public double energyLevel() {
        return invert + flow.energy(depth);
    }

    /**
     * Tells whether the section is full under pressure.
     *
     * @return true if the depth is above the soffit
     */
    public boolean isPressurised() {
        return depth > flow.reach().section().height();
    }

    /**
     * Returns the mean velocity.
     *
     * @return velocity, m/s
     */
    public double velocity() {
        return flow.flow().velocity(Math.min(depth, flow.reach().section().height()));
    }

    /**
     * Returns Froude's number.
     *
     * @return Froude's number; 0 under pressure
     */
    public double froudeNumber() {
        return flow.flow().froudeNumber(Math.min(depth, flow.reach().section().height()));
    }

    /**
     * Returns the friction slope.
     *
     * @return fall of the energy line per length, m/m
     */
    public double frictionSlope() {
        return flow.frictionSlope(depth);
    }

    /**
     * Returns the reach the place lies in.
     *
     * @return the reach
     */
    public Reach reach() {
        return flow.reach();
    }

    @Override
    public String toString() {
        return "Station[" + Text.significant(distance, 6) + " m, depth " + Text.significant(depth, 4) + " m, level "
                + Text.significant(level(), 5) + " m, velocity " + Text.significant(velocity(), 4) + " m/s, Froude "
                + Text.significant(froudeNumber(), 3) + (isPressurised() ? ", pressurised]" : "]");
    }
}
