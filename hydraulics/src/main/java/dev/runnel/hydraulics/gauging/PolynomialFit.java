package dev.runnel.hydraulics.gauging;

import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularMatrixException;

/** Least distance of points from a polynomial, each axis measured in its own uncertainties. */
final class PolynomialFit {
    private static final int MOST_STEPS = 500;

    /** Change in standard errors that is none any more. */
    private static final double SETTLED = 1e-13;

    private final double[] x;
    private final double[] y;
    private final double[] ux;
    private final double[] uy;
    private final int degree;
    private final double[] xi;
    private double[] coefficients;
    private RealMatrix covariance;

    private PolynomialFit(double[] x, double[] y, double[] ux, double[] uy, int degree) {
        this.x = x;
        this.y = y;
        this.ux = ux;
        this.uy = uy;
        this.degree = degree;
        xi = x.clone();
        coefficients = new double[degree + 1];
        covariance = MatrixUtils.createRealIdentityMatrix(degree + 1);
    }

    /** Fits; empty uncertainties mean none. */
    static FittedCalibration of(double[] x, double[] y, double[] ux, double[] uy, int degree) {
        PolynomialFit fit = new PolynomialFit(x, y, ux, uy, degree);
        fit.step();
        if (ux.length > 0) {
            fit.settle();
        }
        double chiSquared = fit.distance();
        int freedom = x.length - degree - 1;
        double scale = uy.length == 0 ? chiSquared / freedom : 1;
        return new FittedCalibration(
                fit.coefficients,
                fit.covariance.scalarMultiply(scale).getData(),
                chiSquared,
                freedom,
                uy.length > 0,
                fit.residuals());
    }

    private void settle() {
        for (int i = 0; i < MOST_STEPS; i++) {
            double[] before = coefficients;
            step();
            double change = 0;
            for (int k = 0; k <= degree; k++) {
                double size = Math.sqrt(covariance.getEntry(k, k));
                change = Math.max(change, Math.abs(coefficients[k] - before[k]) / Math.max(size, Double.MIN_NORMAL));
            }
            if (change < SETTLED || (i > 50 && change < 1e-9)) {
                return;
            }
        }
        throw new IllegalArgumentException(
                "stimulus and response must determine a curve, but the search for it does not settle");
    }

    /** One step of Gauss and Newton: the response at the present ξ, its tangent carrying the error of the stimulus. */
    private void step() {
        int n = x.length;
        double[][] rows = new double[n][degree + 1];
        double[] right = new double[n];
        for (int i = 0; i < n; i++) {
            double slope = slope(xi[i]);
            double weight = 1 / Math.sqrt(variance(i, slope));
            double power = weight;
            for (int k = 0; k <= degree; k++) {
                rows[i][k] = power;
                power *= xi[i];
            }
            right[i] = weight * (y[i] - slope * (x[i] - xi[i]));
        }
        try {
            QRDecomposition qr = new QRDecomposition(MatrixUtils.createRealMatrix(rows), 1e-12 * largest(rows));
            coefficients =
                    qr.getSolver().solve(MatrixUtils.createRealVector(right)).toArray();
            RealMatrix inverse = qr.getSolver().getInverse();
            covariance = inverse.multiply(inverse.transpose());
        } catch (SingularMatrixException e) {
            throw new IllegalArgumentException(
                    "stimulus must have more than " + degree + " different values to determine the curve", e);
        }
        for (int i = 0; i < n && ux.length > 0; i++) {
            double slope = slope(xi[i]);
            double residual = y[i] - value(xi[i]) - slope * (x[i] - xi[i]);
            xi[i] = x[i] + slope * ux[i] * ux[i] * residual / variance(i, slope);
        }
    }

    private static double largest(double[][] rows) {
        double largest = 0;
        for (double[] row : rows) {
            for (double each : row) {
                largest = Math.max(largest, Math.abs(each));
            }
        }
        return largest;
    }

    private double variance(int i, double slope) {
        double ofResponse = uy.length == 0 ? 1 : uy[i] * uy[i];
        return ux.length == 0 ? ofResponse : ofResponse + slope * slope * ux[i] * ux[i];
    }

    private double value(double at) {
        return FittedCalibration.value(coefficients, at);
    }

    private double slope(double at) {
        return FittedCalibration.slope(coefficients, at);
    }

    private double distance() {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            double up = (y[i] - value(xi[i])) / (uy.length == 0 ? 1 : uy[i]);
            double across = ux.length == 0 || ux[i] == 0 ? 0 : (x[i] - xi[i]) / ux[i];
            sum += up * up + across * across;
        }
        return sum;
    }

    private double[] residuals() {
        double[] residuals = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            residuals[i] = y[i] - value(x[i]);
        }
        return residuals;
    }
}
