package dev.runnel.rainfall.areal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;

class ThiessenProperties {
    /** A star about the origin of a grid: simple, mostly not convex. */
    private static Catchment star(Random random, int corners, Location centre, double turn) {
        List<Location> ring = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * i / corners + turn;
            double radius = 1000 * (0.1 + random.nextDouble());
            ring.add(Location.of(centre.x() + radius * Math.cos(angle), centre.y() + radius * Math.sin(angle)));
        }
        return Catchment.of(ring);
    }

    private static Map<String, Location> gauges(Random random, int count, Location centre) {
        Map<String, Location> gauges = new TreeMap<>();
        for (int i = 0; i < count; i++) {
            gauges.put(
                    "G" + i,
                    Location.of(centre.x() + 1500 * random.nextGaussian(), centre.y() + 1500 * random.nextGaussian()));
        }
        return gauges;
    }

    /** Weights are scaled to 1, so the cells are compared with the catchment before that. */
    @Property(tries = 100)
    void cellsFillTheCatchment(
            @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
            @ForAll @IntRange(min = 3, max = 15) int corners,
            @ForAll @IntRange(min = 1, max = 8) int count) {
        Random random = new Random(seed);
        Location centre = Location.of(500_000, 200_000);
        Catchment catchment = star(random, corners, centre, 0.3);
        List<Location> places = List.copyOf(gauges(random, count, centre).values());
        double sum = 0;
        for (Location place : places) {
            sum += catchment.areaNearestTo(
                    place, places.stream().filter(each -> !each.equals(place)).toList());
        }
        assertThat(sum).isCloseTo(catchment.area(), within(1e-12 * catchment.area()));
    }

    /** Independent of polygons: how many of many points inside are nearest to each gauge. */
    @Property(tries = 10)
    void cellsHoldThePointsNearestToTheirGauge(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        Random random = new Random(seed);
        Location centre = Location.of(0, 0);
        Catchment square = Catchment.of(List.of(
                Location.of(-1000, -1000),
                Location.of(1000, -1000),
                Location.of(1000, 1000),
                Location.of(-1000, 1000)));
        Map<String, Location> gauges = gauges(random, 5, centre);
        GaugeWeights weights = GaugeWeights.thiessen(square, gauges);
        Map<String, Integer> nearest = new TreeMap<>();
        int side = 400;
        for (int i = 0; i < side * side; i++) {
            Location point = Location.of(-1000 + (i % side + 0.5) * 5, -1000 + (Math.floorDiv(i, side) + 0.5) * 5);
            String name = gauges.entrySet().stream()
                    .min((a, b) -> Double.compare(
                            a.getValue().distanceTo(point), b.getValue().distanceTo(point)))
                    .orElseThrow()
                    .getKey();
            nearest.merge(name, 1, Integer::sum);
        }
        // At most the pixels along four edges of a cell, each under 2000 m long, are shared.
        gauges.keySet()
                .forEach(name -> assertThat(weights.weight(name))
                        .isCloseTo(nearest.getOrDefault(name, 0) / (double) (side * side), within(0.01)));
    }
}
