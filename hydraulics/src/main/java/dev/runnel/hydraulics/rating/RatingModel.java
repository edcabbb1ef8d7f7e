package dev.runnel.hydraulics.rating;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * ln Q as a function that is linear in its parameters: ln C of the lowest segment, then the exponent of each. Above a break
 * k a segment adds b ln((h − a)/(k − a)) to the value at k, so that the curve has no step.
 */
final class RatingModel {
    private final double[] offsets;
    private final double[] breaks;
    private final boolean offsetFitted;
    private final double[] parameters;
    private final RealMatrix covariance;

    /** Fits; the covariance is per unit variance and counts the offset of a single segment as a parameter if asked. */
    RatingModel(
            double[] stage,
            double[] logDischarge,
            double[] weights,
            double[] offsets,
            double[] breaks,
            boolean offsetFitted) {
        this.offsets = offsets;
        this.breaks = breaks;
        this.offsetFitted = offsetFitted;
        int count = stage.length;
        double[][] rows = new double[count][];
        double[] right = new double[count];
        for (int i = 0; i < count; i++) {
            double root = Math.sqrt(weights[i]);
            rows[i] = scaled(row(stage[i]), root);
            right[i] = root * logDischarge[i];
        }
        parameters = solve(rows, right);
        double[][] jacobian = new double[count][];
        for (int i = 0; i < count; i++) {
            jacobian[i] = scaled(gradient(stage[i]), Math.sqrt(weights[i]));
        }
        RealMatrix inverse;
        try {
            inverse = new QRDecomposition(MatrixUtils.createRealMatrix(jacobian))
                    .getSolver()
                    .getInverse();
        } catch (SingularMatrixException e) {
            throw undetermined(e);
        }
        covariance = inverse.multiply(inverse.transpose());
    }

    private static double[] scaled(double[] row, double factor) {
        for (int k = 0; k < row.length; k++) {
            row[k] *= factor;
        }
        return row;
    }

    private static double[] solve(double[][] rows, double[] logDischarge) {
        try {
            return new QRDecomposition(MatrixUtils.createRealMatrix(rows))
                    .getSolver()
                    .solve(MatrixUtils.createRealVector(logDischarge))
                    .toArray();
        } catch (SingularMatrixException e) {
            throw undetermined(e);
        }
    }

    private static UndeterminedRatingException undetermined(SingularMatrixException cause) {
        return new UndeterminedRatingException(
                "stage must have at least two different gaugings in each segment to determine the curve", cause);
    }

    private double[] row(double stage) {
        double[] row = new double[1 + offsets.length];
        row[0] = 1;
        int last = segment(stage);
        for (int i = 0; i <= last; i++) {
            double top = i == last ? stage : breaks[i];
            double below = Math.log(top - offsets[i]);
            row[1 + i] = i == 0 ? below : below - Math.log(breaks[i - 1] - offsets[i]);
        }
        return row;
    }

    /** Derivatives of ln Q by the fitted parameters. */
    private double[] gradient(double stage) {
        double[] row = row(stage);
        if (!offsetFitted) {
            return row;
        }
        return new double[] {row[0], row[1], -parameters[1] / (stage - offsets[0])};
    }

    private int segment(double stage) {
        int i = 0;
        while (i < breaks.length && stage > breaks[i]) {
            i++;
        }
        return i;
    }

    double logDischarge(double stage) {
        double[] row = row(stage);
        double sum = 0;
        for (int i = 0; i < row.length; i++) {
            sum += parameters[i] * row[i];
        }
        return sum;
    }

    double discharge(double stage) {
        return stage <= offsets[0] ? 0 : Math.exp(logDischarge(stage));
    }

    /** Returns the variance of ln Q on the curve per unit variance of a gauging. */
    double leverage(double stage) {
        double[] gradient = gradient(stage);
        return MatrixUtils.createRealVector(gradient)
                .dotProduct(covariance.operate(MatrixUtils.createRealVector(gradient)));
    }

    /** Returns by how many percent the discharge changes when the depth above the offset changes by one. */
    double exponent(double stage) {
        return parameters[1 + segment(stage)];
    }

    double offset(double stage) {
        return offsets[segment(stage)];
    }

    double[] exponents() {
        return Arrays.copyOfRange(parameters, 1, parameters.length);
    }

    List<RatingSegment> segments() {
        List<RatingSegment> segments = new ArrayList<>();
        double logConstant = parameters[0];
        for (int i = 0; i < offsets.length; i++) {
            double exponent = parameters[1 + i];
            if (i > 0) {
                double k = breaks[i - 1];
                double at = logDischarge(k);
                logConstant = at - exponent * Math.log(k - offsets[i]);
            }
            segments.add(new RatingSegment(
                    i == 0 ? Double.NEGATIVE_INFINITY : breaks[i - 1],
                    i == breaks.length ? Double.POSITIVE_INFINITY : breaks[i],
                    Math.exp(logConstant),
                    offsets[i],
                    exponent));
        }
        return List.copyOf(segments);
    }
}
