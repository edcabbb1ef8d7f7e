package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * Whether the dry depths of the last weeks follow the moon: least squares with forgetting of a level, the day, half a day and
 * the principal lunar constituent M2, which parts from half a day only after a fortnight.
 */
final class RunningTide {
    /** Periods, h; the last is M2 (12.4206012 h; common knowledge of tidal practice). */
    private static final double[] PERIODS = {24, 12, 12.4206012};

    private static final int SIZE = 1 + 2 * PERIODS.length;
    private static final int WITHOUT_MOON = SIZE - 2;

    /** What was seen counts less by this factor after an hour: half after ten days; chosen here. */
    private static final double KEEP = Math.pow(0.5, 1 / 240.0);

    /** Least weight of the hours, about ten days of dry ones; chosen here. */
    private static final double LEAST_WEIGHT = 120;

    /** Smallest amplitude of ln depth, and share of what the sun leaves over, that is a tide; chosen here. */
    private static final double LEAST_AMPLITUDE = 0.05;

    private static final double LEAST_SHARE = 0.15;

    private final double[] normal = new double[SIZE * SIZE];
    private final double[] right = new double[SIZE];
    private double squares;
    private long last = Long.MIN_VALUE;

    /** Whether what was asked since the last hour is known, and what it was: each hour is asked by several. */
    private boolean asked;

    private boolean tidal;

    void add(long hour, double residual) {
        double keep = last == Long.MIN_VALUE ? 0 : Math.pow(KEEP, (double) (hour - last));
        last = hour;
        asked = false;
        double[] row = row(hour);
        for (int a = 0; a < SIZE; a++) {
            for (int b = 0; b < SIZE; b++) {
                normal[a * SIZE + b] = keep * normal[a * SIZE + b] + row[a] * row[b];
            }
            right[a] = keep * right[a] + row[a] * residual;
        }
        squares = keep * squares + residual * residual;
    }

    private static double[] row(long hour) {
        double[] row = new double[SIZE];
        row[0] = 1;
        for (int k = 0; k < PERIODS.length; k++) {
            double turn = 2 * Math.PI * Math.floorMod(hour, 1_000_000L) / PERIODS[k];
            row[1 + 2 * k] = Math.cos(turn);
            row[2 + 2 * k] = Math.sin(turn);
        }
        return row;
    }

    boolean isTidal() {
        tidal = asked ? tidal : look();
        asked = true;
        return tidal;
    }

    private boolean look() {
        if (normal[0] < LEAST_WEIGHT) {
            return false;
        }
        double[] found = solution(SIZE);
        // The quick question first: hardly any sewer follows the moon.
        if (found.length == 0 || !(Math.hypot(found[SIZE - 2], found[SIZE - 1]) > LEAST_AMPLITUDE)) {
            return false;
        }
        double[] sun = solution(WITHOUT_MOON);
        if (sun.length == 0) {
            return false;
        }
        double left = squares - product(found);
        double leftBySun = squares - product(sun);
        return leftBySun - left > LEAST_SHARE * leftBySun;
    }

    private double product(double[] solution) {
        double sum = 0;
        for (int i = 0; i < solution.length; i++) {
            sum += solution[i] * right[i];
        }
        return sum;
    }

    /** Coefficients of the first terms; none if they cannot be told apart. */
    private double[] solution(int size) {
        double[][] matrix = new double[size][size];
        double[] vector = new double[size];
        for (int a = 0; a < size; a++) {
            System.arraycopy(normal, a * SIZE, matrix[a], 0, size);
            vector[a] = right[a];
        }
        DecompositionSolver solver = new LUDecomposition(new Array2DRowRealMatrix(matrix, false)).getSolver();
        return solver.isNonSingular()
                ? solver.solve(new ArrayRealVector(vector, false)).toArray()
                : new double[0];
    }

    void write(StateText text) {
        text.with("tideNormal", normal)
                .with("tideRight", right)
                .with("tideSquares", squares)
                .with("tideLast", last);
    }

    void read(StateText text) {
        System.arraycopy(text.numbers("tideNormal", normal.length), 0, normal, 0, normal.length);
        System.arraycopy(text.numbers("tideRight", right.length), 0, right, 0, right.length);
        squares = text.number("tideSquares");
        last = text.count("tideLast");
        asked = false;
    }
}
