package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Text;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * Depth and discharge along a side weir, upstream end first. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SideWeirProfile {
    private final double energy;
    private final double[] positions;
    private final double[] depths;
    private final double[] discharges;

    private SideWeirProfile(double energy, double[] positions, double[] depths, double[] discharges) {
        this.energy = energy;
        this.positions = positions;
        this.depths = depths;
        this.discharges = discharges;
    }

    /** Takes the arrays over without a copy. */
    static SideWeirProfile of(double energy, double[] positions, double[] depths, double[] discharges) {
        return new SideWeirProfile(energy, positions, depths, discharges);
    }

    /**
     * Returns the specific energy above the invert.
     *
     * @return E, m
     */
    public double energy() {
        return energy;
    }

    /**
     * Returns the points along the crest, not equally spaced.
     *
     * @return distance from the upstream end, m, ascending from 0 to the length; a new array
     */
    public double[] positions() {
        return positions.clone();
    }

    /**
     * Returns the depths at the points.
     *
     * @return depths, m; a new array
     */
    public double[] depths() {
        return depths.clone();
    }

    /**
     * Returns the discharges along the channel at the points.
     *
     * @return discharges, m³/s, falling; a new array
     */
    public double[] discharges() {
        return discharges.clone();
    }

    /**
     * Returns the depth at the upstream end.
     *
     * @return depth, m
     */
    public double upstreamDepth() {
        return depths[0];
    }

    /**
     * Returns the depth at the downstream end.
     *
     * @return depth, m
     */
    public double downstreamDepth() {
        return depths[depths.length - 1];
    }

    /**
     * Returns the discharge that arrives.
     *
     * @return discharge, m³/s
     */
    public double upstreamDischarge() {
        return discharges[0];
    }

    /**
     * Returns the discharge that goes on.
     *
     * @return discharge, m³/s
     */
    public double downstreamDischarge() {
        return discharges[discharges.length - 1];
    }

    /**
     * Returns the discharge over the crest.
     *
     * @return spill, m³/s
     */
    public double spill() {
        return upstreamDischarge() - downstreamDischarge();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SideWeirProfile that
                && Arrays.equals(positions, that.positions)
                && Arrays.equals(depths, that.depths)
                && Arrays.equals(discharges, that.discharges);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(positions) + Arrays.hashCode(discharges);
    }

    @Override
    public String toString() {
        return "SideWeirProfile[depth " + Text.significant(upstreamDepth(), 4) + " to "
                + Text.significant(downstreamDepth(), 4) + " m, discharge "
                + Text.significant(upstreamDischarge(), 4) + " to " + Text.significant(downstreamDischarge(), 4)
                + " m3/s, spill " + Text.significant(spill(), 4) + " m3/s]";
    }
}
