package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Moments;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.SingularMatrixException;

/** Polynomials through points, by the QR decomposition of the scaled powers. */
final class LeastSquares {
    /** Pivot below which rates are the same but for rounding; chosen here, for columns scaled to 1. */
    private static final double SINGULAR = 1e-12;

    private LeastSquares() {}

    /** Coefficients, constant first, with the least sum of squares of relative errors; no y is 0. */
    static double[] relativePolynomial(double[] x, double[] y, int degree) {
        double[] weights = Arrays.stream(y).map(value -> 1 / value).toArray();
        return polynomial(x, y, weights, degree);
    }

    /** Coefficients, constant first. */
    static double[] polynomial(double[] x, double[] y, int degree) {
        double[] weights = new double[y.length];
        Arrays.fill(weights, 1);
        return polynomial(x, y, weights, degree);
    }

    private static double[] polynomial(double[] x, double[] y, double[] weights, int degree) {
        double scale = Double.MIN_NORMAL;
        for (double each : x) {
            scale = Math.max(scale, Math.abs(each));
        }
        double[][] powers = new double[x.length][degree + 1];
        double[] weighted = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            powers[i][0] = weights[i];
            weighted[i] = weights[i] * y[i];
            for (int k = 1; k <= degree; k++) {
                powers[i][k] = powers[i][k - 1] * x[i] / scale;
            }
        }
        try {
            double[] scaled = new QRDecomposition(new Array2DRowRealMatrix(powers, false), SINGULAR)
                    .getSolver()
                    .solve(new ArrayRealVector(weighted, false))
                    .toArray();
            double factor = 1;
            for (int k = 0; k <= degree; k++) {
                scaled[k] /= factor;
                factor *= scale;
            }
            return scaled;
        } catch (SingularMatrixException e) {
            throw new IllegalArgumentException(
                    "runs must have at least " + (degree + 1) + " different rates, had fewer", e);
        }
    }

    static double rSquared(double[] x, double[] y, DoubleUnaryOperator model) {
        double residual = 0;
        for (int i = 0; i < y.length; i++) {
            double difference = y[i] - model.applyAsDouble(x[i]);
            residual += difference * difference;
        }
        double total = Moments.squares(y);
        return total == 0 ? (residual == 0 ? 1 : 0) : 1 - residual / total;
    }
}
