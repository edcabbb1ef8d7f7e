package dev.runnel.rainfall.areal;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The weights of some gauges for the place of another; each set is computed once. */
final class SubsetWeights {
    private record Key(int target, List<Integer> others) {}

    private final SpatialEstimator rule;
    private final List<Location> places;
    private final Map<Key, PlaceWeights> known = new HashMap<>();

    SubsetWeights(SpatialEstimator rule, List<Location> places) {
        Places.requireApart(places);
        this.rule = rule;
        this.places = places;
    }

    PlaceWeights of(int target, List<Integer> others) {
        return known.computeIfAbsent(
                new Key(target, others),
                key -> rule.weights(
                        places.get(target), others.stream().map(places::get).toList()));
    }
}
