package dev.runnel.rainfall.areal;

import dev.runnel.internal.Require;
import dev.runnel.timeseries.RegularSeries;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * Fills the gaps of the gauges of a network from their neighbours, step by step. What is filled is marked as an estimate and never
 * used to fill another gap. Immutable and thread-safe.
 *
 * <p>A rule that weighs by place alone has every gauge catch as much in the long run. Where one does not, multiply its estimate by its
 * ratio to the others first.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class NetworkFilling {
    private final SpatialEstimator rule;
    private final SortedMap<String, Location> places;
    private final int leastNeighbours;

    private NetworkFilling(SpatialEstimator rule, SortedMap<String, Location> places, int leastNeighbours) {
        this.rule = rule;
        this.places = places;
        this.leastNeighbours = leastNeighbours;
    }

    /**
     * Returns the filling of a network, from one neighbour or more.
     *
     * @param rule how neighbours are weighed
     * @param places where the gauges stand, by name; at least two
     * @return the filling
     * @throws IllegalArgumentException if there are fewer than two gauges, or two stand at one place
     */
    public static NetworkFilling of(SpatialEstimator rule, Map<String, Location> places) {
        Require.atLeast("gauges", places.size(), 2);
        Places.requireApart(List.copyOf(places.values()));
        return new NetworkFilling(rule, new TreeMap<>(places), 1);
    }

    /**
     * Returns the same filling that asks for more neighbours.
     *
     * @param neighbours least number of gauges that have a value in the step; 1 or more
     * @return the filling
     * @throws IllegalArgumentException if it is less than 1
     */
    public NetworkFilling withLeastNeighbours(int neighbours) {
        return new NetworkFilling(rule, places, Require.atLeast("neighbours", neighbours, 1));
    }

    /**
     * Fills the gaps.
     *
     * @param rainByGauge depth in each step, mm; all gauges, all with the same steps, NaN for missing
     * @return the filled record of each gauge, by name
     * @throws IllegalArgumentException if the gauges differ from those of the places, their steps differ or a depth is negative
     */
    public SortedMap<String, FilledRain> fill(Map<String, RegularSeries> rainByGauge) {
        List<String> names = List.copyOf(places.keySet());
        List<RegularSeries> rain = GaugeRecords.of(names, rainByGauge);
        SubsetWeights weights = new SubsetWeights(rule, List.copyOf(places.values()));
        double[][] filled = new double[names.size()][];
        boolean[][] isEstimate = new boolean[names.size()][rain.get(0).size()];
        for (int gauge = 0; gauge < filled.length; gauge++) {
            filled[gauge] = rain.get(gauge).toValues();
        }
        for (int step = 0; step < rain.get(0).size(); step++) {
            double[] depths = GaugeRecords.at(rain, step);
            List<Integer> present = new ArrayList<>();
            for (int i = 0; i < depths.length; i++) {
                if (!Double.isNaN(depths[i])) {
                    present.add(i);
                }
            }
            if (present.size() < leastNeighbours || present.size() == depths.length) {
                continue;
            }
            double[] known = present.stream().mapToDouble(i -> depths[i]).toArray();
            for (int gauge = 0; gauge < depths.length; gauge++) {
                if (Double.isNaN(depths[gauge])) {
                    filled[gauge][step] = weights.of(gauge, present).depthMm(known);
                    isEstimate[gauge][step] = true;
                }
            }
        }
        TreeMap<String, FilledRain> result = new TreeMap<>();
        for (int gauge = 0; gauge < filled.length; gauge++) {
            RegularSeries given = rain.get(gauge);
            result.put(
                    names.get(gauge),
                    new FilledRain(RegularSeries.of(given.start(), given.step(), filled[gauge]), isEstimate[gauge]));
        }
        return result;
    }

    @Override
    public String toString() {
        return "NetworkFilling[" + places.size() + " gauges, " + rule + "]";
    }
}
