package dev.runnel.rainfall.areal;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.Objects;

/** Weights by a power of one over distance. */
record InverseDistance(double power) implements SpatialEstimator {
    static InverseDistance of(double power) {
        return new InverseDistance(Require.positive("power", power, ""));
    }

    @Override
    public PlaceWeights weights(Location target, List<Location> gauges) {
        Objects.requireNonNull(target, "target");
        Places.requireApart(gauges);
        double[] distances = gauges.stream().mapToDouble(target::distanceTo).toArray();
        double nearest = Double.POSITIVE_INFINITY;
        for (double distance : distances) {
            nearest = Math.min(nearest, distance);
        }
        double[] weights = new double[distances.length];
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            // Relative to the nearest, so that no power overflows.
            weights[i] = nearest == 0 ? (distances[i] == 0 ? 1 : 0) : Math.pow(nearest / distances[i], power);
            sum += weights[i];
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
        return PlaceWeights.of(weights);
    }

    @Override
    public String toString() {
        return "inverse distance to the power " + Text.significant(power, 6);
    }
}
