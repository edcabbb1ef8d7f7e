package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import org.apiguardian.api.API;

/**
 * The line of the water along a chain of reaches. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class WaterProfile {
    private final List<Station> stations;
    private final List<JumpPlace> jumps;

    WaterProfile(List<Station> stations, List<JumpPlace> jumps) {
        this.stations = List.copyOf(stations);
        this.jumps = List.copyOf(jumps);
    }

    /**
     * Returns the stations from the inlet to the outlet; where reaches meet there are two at one place.
     *
     * @return the stations
     */
    public List<Station> stations() {
        return stations;
    }

    /**
     * Returns the hydraulic jumps.
     *
     * @return the jumps, downstream
     */
    public List<JumpPlace> jumps() {
        return jumps;
    }

    /**
     * Returns the station at the upper end.
     *
     * @return the first station
     */
    public Station inlet() {
        return stations.get(0);
    }

    /**
     * Returns the station at the lower end.
     *
     * @return the last station
     */
    public Station outlet() {
        return stations.get(stations.size() - 1);
    }

    /**
     * Returns the depth at a distance, straight between stations; where reaches meet, that of the upper one.
     *
     * @param distance distance downstream of the start, m; in [0, whole length]
     * @return depth, m
     * @throws IllegalArgumentException if {@code distance} is outside or NaN
     */
    public double depthAt(double distance) {
        Require.inRange("distance", distance, 0, outlet().distance(), "m");
        int below = 1;
        while (stations.get(below).distance() < distance) {
            below++;
        }
        Station from = stations.get(below - 1);
        Station to = stations.get(below);
        double share = (distance - from.distance()) / (to.distance() - from.distance());
        return from.depth() + share * (to.depth() - from.depth());
    }

    /**
     * Returns the length over which the section is full under pressure.
     *
     * @return length, m, between stations
     */
    public double pressurisedLength() {
        double sum = 0;
        for (int i = 1; i < stations.size(); i++) {
            Station upper = stations.get(i - 1);
            Station lower = stations.get(i);
            double share = (upper.isPressurised() ? 0.5 : 0) + (lower.isPressurised() ? 0.5 : 0);
            sum += share * (lower.distance() - upper.distance());
        }
        return sum;
    }

    @Override
    public String toString() {
        return "WaterProfile[" + stations.size() + " stations, inlet depth " + Text.significant(inlet().depth(), 4)
                + " m, outlet depth " + Text.significant(outlet().depth(), 4) + " m, pressurised over "
                + Text.significant(pressurisedLength(), 4) + " m, jumps " + jumps + "]";
    }
}
