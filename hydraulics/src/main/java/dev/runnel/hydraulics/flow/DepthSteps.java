package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * A gradually varied profile by depth steps: how far apart given depths lie,
 *
 * <pre>
 * Δx = (E₂ − E₁)/(S₀ − (Sf₁ + Sf₂)/2)
 * </pre>
 *
 * <p>Source: Ven Te Chow, Open-Channel Hydraulics, 1959, section 10-2 (direct step). For one section and gradient; the
 * length of the reach plays no part. Small steps make it exact; tables in books take few.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class DepthSteps {
    private DepthSteps() {}

    /**
     * Returns the stations of a profile through given depths, the first at distance 0 with invert 0; distances grow
     * downstream and are negative upstream.
     *
     * @param reach section, gradient, resistance and gravity
     * @param discharge discharge, m³/s; greater than 0
     * @param depths depths in the order of the profile, m; all on one side of critical and of normal depth
     * @return the stations
     * @throws IllegalArgumentException if an argument is out of range or there are fewer than two depths
     * @throws NoSolutionException if two depths lie on both sides of critical or of normal depth, so that no smooth
     *     profile joins them
     */
    public static List<Station> through(Reach reach, double discharge, double... depths) {
        Require.atLeast("number of depths", depths.length, 2);
        ReachFlow flow = new ReachFlow(reach, discharge);
        List<Station> stations = new ArrayList<>();
        double distance = 0;
        for (int i = 0; i < depths.length; i++) {
            // Refuses a depth outside the section.
            flow.flow().velocity(depths[i]);
            distance += i == 0 ? 0 : step(flow, depths[i - 1], depths[i]);
            stations.add(new Station(distance, -distance * flow.bedSlope(), depths[i], flow));
        }
        return List.copyOf(stations);
    }

    private static double step(ReachFlow flow, double from, double to) {
        double bed = flow.bedSlope();
        double above = bed - flow.frictionSlope(from);
        double below = bed - flow.frictionSlope(to);
        boolean crossesCritical = Math.min(from, to) < flow.critical() && flow.critical() < Math.max(from, to);
        // On both sides of normal depth, or twice at it.
        if (crossesCritical || Math.signum(above) == -Math.signum(below)) {
            throw new NoSolutionException(
                    "no smooth profile joins the depths " + Text.number(from) + " m and " + Text.number(to) + " m: "
                            + (crossesCritical ? "critical" : "normal") + " depth lies between them");
        }
        return (flow.energy(to) - flow.energy(from)) / ((above + below) / 2);
    }
}
