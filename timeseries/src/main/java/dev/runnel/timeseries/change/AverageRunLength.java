package dev.runnel.timeseries.change;

import dev.runnel.internal.Require;
import java.util.Arrays;
import java.util.Objects;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.special.Erf;
import org.apiguardian.api.API;

/**
 * How many values a detector takes on average until it signals, for independent values of a normal law with standard
 * deviation 1 whose mean lies a shift away from the target.
 *
 * <p>The run length L(z) from a statistic z solves an integral equation of the second kind,
 *
 * <pre>
 * CUSUM, one side:   L(z) = 1 + L(0) Φ(k − z − δ) + ∫₀ʰ L(y) φ(y + k − z − δ) dy
 * EWMA:              L(z) = 1 + (1/λ) ∫₋c^c L(y) φ((y − (1 − λ) z)/λ − δ) dy,   c = L √(λ/(2 − λ))
 * </pre>
 *
 * <p>with δ the shift, solved here at the nodes of Gauss and Legendre. Two sides of a CUSUM combine as 1/L = 1/L⁺ + 1/L⁻.
 *
 * <p>What this is not: what a user sees. Target and scatter are never known, and values follow each other; either makes
 * false signals many times more frequent.
 *
 * <p>Sources: C. S. Van Dobben de Bruyn (1968), Cumulative sum tests; S. V. Crowder (1987), A simple method for studying
 * run-length distributions of exponentially weighted moving average charts, Technometrics 29, 401-407; K. W. Kemp (1961), The
 * average run length of the cumulative sum chart when a V-mask is used, Journal of the Royal Statistical Society B 23,
 * 149-153 (all from memory).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class AverageRunLength {
    private static final int NODES = 64;
    /** Keeps the nodes, which take longer to find than the equations take to solve; asked once here, it is only read later. */
    private static final GaussIntegratorFactory RULES = new GaussIntegratorFactory();

    static {
        RULES.legendre(NODES);
    }

    /** Beyond it the equations are too nearly singular. */
    private static final double LONGEST = 1e9;

    private static final double LARGEST = 20;
    private static final double LARGEST_SHIFT = 10;

    private AverageRunLength() {}

    /**
     * Returns the average run length of the upper sum of a CUSUM from 0.
     *
     * @param detector the rule, its reference value k in [0, 20] and its decision interval h in (0, 20] standard deviations;
     *     its target plays no part
     * @param shift shift of the mean δ, in standard deviations; in [-10, 10]
     * @return average number of values; relative error below 1e-6 up to 1e6 values
     * @throws IllegalArgumentException if a figure is out of range
     */
    public static double ofCusumOneSide(CusumRule detector, double shift) {
        Objects.requireNonNull(detector, "detector");
        return known(oneSide(detector, shift));
    }

    private static double oneSide(CusumRule detector, double shift) {
        double reference = detector.reference();
        double decision = detector.decision();
        Require.inRange("reference", reference, 0, LARGEST, "");
        Require.inRange("decision", decision, 0, LARGEST, "");
        Require.inRange("shift", shift, -LARGEST_SHIFT, LARGEST_SHIFT, "");
        GaussIntegrator rule = RULES.legendre(NODES, 0, decision);
        // Unknowns: L at the nodes, and L(0) as the last one.
        double[][] matrix = new double[NODES + 1][NODES + 1];
        for (int i = 0; i <= NODES; i++) {
            double z = i < NODES ? rule.getPoint(i) : 0;
            for (int j = 0; j < NODES; j++) {
                matrix[i][j] = -rule.getWeight(j) * density(rule.getPoint(j) + reference - z - shift);
            }
            matrix[i][NODES] = -probability(reference - z - shift);
            matrix[i][i] += 1;
        }
        return solve(matrix)[NODES];
    }

    /**
     * Returns the average run length of both sums of a CUSUM from 0.
     *
     * @param detector the rule, its reference value k in [0, 20] and its decision interval h in (0, 20] standard deviations;
     *     its target plays no part
     * @param shift shift of the mean δ, in standard deviations; in [-10, 10]
     * @return average number of values; relative error below 1e-6 up to 1e6 values
     * @throws IllegalArgumentException if a figure is out of range
     */
    public static double ofCusum(CusumRule detector, double shift) {
        Objects.requireNonNull(detector, "detector");
        double up = oneSide(detector, shift);
        double down = oneSide(detector, -shift);
        return known(1 / (1 / up + 1 / down));
    }

    /**
     * Returns the average run length of an EWMA from the target, with the limits of a long record.
     *
     * @param detector the rule, its weight λ in [0.01, 1] and the width L of its limits in (0, 20] standard deviations of the
     *     average; its target and deviation play no part
     * @param shift shift of the mean δ, in standard deviations of a value; in [-10, 10]
     * @return average number of values; relative error below 1e-6 up to 1e6 values
     * @throws IllegalArgumentException if a figure is out of range
     */
    public static double ofEwma(EwmaRule detector, double shift) {
        Objects.requireNonNull(detector, "detector");
        double weight = detector.weight();
        double width = detector.width();
        Require.inRange("weight", weight, 0.01, 1, "");
        Require.inRange("width", width, 0, LARGEST, "");
        Require.inRange("shift", shift, -LARGEST_SHIFT, LARGEST_SHIFT, "");
        double limit = width * Math.sqrt(weight / (2 - weight));
        GaussIntegrator rule = RULES.legendre(NODES, -limit, limit);
        double[][] matrix = new double[NODES][NODES];
        for (int i = 0; i < NODES; i++) {
            for (int j = 0; j < NODES; j++) {
                double away = (rule.getPoint(j) - (1 - weight) * rule.getPoint(i)) / weight - shift;
                matrix[i][j] = -rule.getWeight(j) * density(away) / weight;
            }
            matrix[i][i] += 1;
        }
        double[] lengths = solve(matrix);
        double length = 1;
        for (int j = 0; j < NODES; j++) {
            length += rule.getWeight(j) * density(rule.getPoint(j) / weight - shift) / weight * lengths[j];
        }
        return known(length);
    }

    private static double[] solve(double[][] matrix) {
        double[] ones = new double[matrix.length];
        Arrays.fill(ones, 1);
        DecompositionSolver solver = new LUDecomposition(new Array2DRowRealMatrix(matrix, false), 0).getSolver();
        if (solver.isNonSingular()) {
            double[] lengths = solver.solve(new ArrayRealVector(ones, false)).toArray();
            double longest = Arrays.stream(lengths).max().orElseThrow();
            double shortest = Arrays.stream(lengths).min().orElseThrow();
            if (shortest >= 1 - 1e-6 && longest <= LONGEST) {
                return lengths;
            }
        }
        double[] tooLong = new double[matrix.length];
        Arrays.fill(tooLong, Double.POSITIVE_INFINITY);
        return tooLong;
    }

    private static double known(double length) {
        if (!(length <= LONGEST)) {
            throw new IllegalArgumentException(
                    "limits must be such that the average run length is at most 1e9 values, which is longer here");
        }
        return length;
    }

    private static double density(double x) {
        return Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
    }

    private static double probability(double x) {
        return Erf.erfc(-x / Math.sqrt(2)) / 2;
    }
}
