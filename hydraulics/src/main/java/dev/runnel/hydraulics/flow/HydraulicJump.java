package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * A hydraulic jump: the two depths of equal momentum and the energy it takes. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class HydraulicJump {
    private final SectionFlow flow;
    private final double upstreamDepth;
    private final double downstreamDepth;

    HydraulicJump(SectionFlow flow, double upstreamDepth, double downstreamDepth) {
        this.flow = flow;
        this.upstreamDepth = upstreamDepth;
        this.downstreamDepth = downstreamDepth;
    }

    /**
     * Returns the depth in front of the jump.
     *
     * @return supercritical depth, m
     */
    public double upstreamDepth() {
        return upstreamDepth;
    }

    /**
     * Returns the depth behind the jump; where the jump fills a closed section, the pressure level above the invert.
     *
     * @return subcritical depth, m
     */
    public double downstreamDepth() {
        return downstreamDepth;
    }

    /**
     * Tells whether the section runs full behind the jump.
     *
     * @return true if the downstream depth is the soffit or above
     */
    public boolean isFilling() {
        return downstreamDepth >= flow.section().height();
    }

    /**
     * Returns Froude's number in front of the jump.
     *
     * @return Froude's number, 1 or greater
     */
    public double upstreamFroudeNumber() {
        return flow.froudeNumber(upstreamDepth);
    }

    /**
     * Returns the loss of specific energy.
     *
     * @return loss, m; 0 or greater
     */
    public double energyLoss() {
        return Math.max(flow.energyAt(upstreamDepth) - flow.energyAt(downstreamDepth), 0);
    }

    /**
     * Returns the power the jump takes, ρ g q ΔE with ρ = 1000 kg/m³.
     *
     * @return power, W
     */
    public double power() {
        return WaterDensity.USUAL * flow.gravity() * flow.discharge() * energyLoss();
    }

    /**
     * Returns the length of the jump in a level rectangular channel, from its front to where the surface is level: the curve
     * L/y₂ over Froude's number of J. N. Bradley and A. J. Peterka (1957), 4.0 at 1.7 to 6.1 from 6 on, from memory. In a channel that is
     * not rectangular or level it is another: longer.
     *
     * @return length L, m; within some 10 % (common practice)
     * @throws NoSolutionException if the channel is not rectangular up to the downstream depth, or Froude's number is outside [1.7, 10]
     */
    public double length() {
        return JumpLength.of(flow.section(), upstreamFroudeNumber(), downstreamDepth);
    }

    /**
     * Returns a length as a multiple of the rise, L = m (y₂ − y₁): 5 to 7 in a rectangular channel (common practice).
     *
     * @param multiple m; greater than 0, at most 100
     * @return length L, m
     * @throws IllegalArgumentException if {@code multiple} is outside
     */
    public double lengthByRise(double multiple) {
        Require.inRange("multiple", Require.positive("multiple", multiple, ""), 0, 100, "");
        return multiple * (downstreamDepth - upstreamDepth);
    }

    @Override
    public String toString() {
        return "HydraulicJump[" + Text.significant(upstreamDepth, 4) + " m to " + Text.significant(downstreamDepth, 4)
                + " m" + (isFilling() ? " (filling)" : "") + ", Froude " + Text.significant(upstreamFroudeNumber(), 3)
                + ", loss " + Text.significant(energyLoss(), 3) + " m]";
    }
}
