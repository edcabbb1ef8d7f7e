package dev.runnel.rainfall.distribution;

import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;

/** First and second derivatives of a function at a point by central differences of the fourth order. */
final class Differences {
    private final ToDoubleFunction<double[]> function;
    private final double[] at;
    private final double[] steps;
    private final double centre;

    /** Values one and two steps up and down each axis, in the order -2, -1, 1, 2. */
    private final double[][] along;

    private final RealMatrix second;

    Differences(ToDoubleFunction<double[]> function, double[] at, double[] steps) {
        this.function = function;
        this.at = at;
        this.steps = steps;
        centre = function.applyAsDouble(at);
        along = new double[at.length][];
        for (int i = 0; i < at.length; i++) {
            along[i] = new double[] {
                moved(i, -2, i, 0), moved(i, -1, i, 0), moved(i, 1, i, 0), moved(i, 2, i, 0),
            };
        }
        second = curvature();
    }

    /** Tells whether no point used lies where the function is not finite. */
    boolean areFinite() {
        return Double.isFinite(MatrixUtils.createRealMatrix(along).getFrobeniusNorm())
                && Double.isFinite(second.getFrobeniusNorm());
    }

    double[] first() {
        double[] slope = new double[at.length];
        for (int i = 0; i < slope.length; i++) {
            slope[i] = (8 * (along[i][2] - along[i][1]) - (along[i][3] - along[i][0])) / (12 * steps[i]);
        }
        return slope;
    }

    RealMatrix second() {
        return second;
    }

    private RealMatrix curvature() {
        int n = at.length;
        RealMatrix curvature = MatrixUtils.createRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            double one = along[i][1] + along[i][2];
            double two = along[i][0] + along[i][3];
            curvature.setEntry(i, i, (16 * one - two - 30 * centre) / (12 * steps[i] * steps[i]));
            for (int j = 0; j < i; j++) {
                double mixed = (16 * cross(i, j, 1) - cross(i, j, 2)) / (48 * steps[i] * steps[j]);
                curvature.setEntry(i, j, mixed);
                curvature.setEntry(j, i, mixed);
            }
        }
        return curvature;
    }

    private double cross(int i, int j, int by) {
        return moved(i, by, j, by) - moved(i, by, j, -by) - moved(i, -by, j, by) + moved(i, -by, j, -by);
    }

    private double moved(int i, int stepsI, int j, int stepsJ) {
        double[] point = at.clone();
        point[i] += stepsI * steps[i];
        point[j] += stepsJ * steps[j];
        return function.applyAsDouble(point);
    }
}
