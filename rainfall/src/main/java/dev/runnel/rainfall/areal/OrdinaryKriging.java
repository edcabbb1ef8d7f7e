package dev.runnel.rainfall.areal;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.SingularMatrixException;

/** Weights of the least variance, by the variogram. */
record OrdinaryKriging(Variogram variogram) implements SpatialEstimator {
    @Override
    public PlaceWeights weights(Location target, List<Location> gauges) {
        Objects.requireNonNull(target, "target");
        Places.requireApart(gauges);
        int n = gauges.size();
        double[][] system = new double[n + 1][n + 1];
        double[] right = new double[n + 1];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                system[i][j] = variogram.semivarianceMm2(gauges.get(i).distanceTo(gauges.get(j)));
            }
            system[i][n] = 1;
            system[n][i] = 1;
            right[i] = variogram.semivarianceMm2(gauges.get(i).distanceTo(target));
        }
        right[n] = 1;
        double[] solution = solve(system, right, gauges);
        double[] weights = Arrays.copyOf(solution, n);
        double variance = solution[n];
        for (int i = 0; i < n; i++) {
            variance += weights[i] * right[i];
        }
        return PlaceWeights.of(weights).withVariance(Math.max(0, variance));
    }

    private double[] solve(double[][] system, double[] right, List<Location> gauges) {
        try {
            return new LUDecomposition(new Array2DRowRealMatrix(system, false))
                    .getSolver()
                    .solve(new ArrayRealVector(right, false))
                    .toArray();
        } catch (SingularMatrixException e) {
            throw new IllegalArgumentException(
                    "gauges must lie further apart for " + variogram + ", or it needs a nugget; were " + gauges, e);
        }
    }

    @Override
    public String toString() {
        return "ordinary kriging by " + variogram;
    }
}
