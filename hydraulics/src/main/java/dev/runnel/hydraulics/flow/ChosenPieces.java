package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Table;

/**
 * A curve of two parts, each of piecewise polynomials in a variable of its own: below 1/2 the mantissa of the number, from
 * there on a root that comes with it, in pieces of 1/32. Values come at random from both parts, where a processor that
 * has guessed wrong loses more time than a polynomial takes: so both lie in one table, and the way there has no jump.
 */
final class ChosenPieces {
    /** Coefficients of a row, lowest power first, and the middle of its piece behind them. */
    private static final int TERMS = 10;

    private static final int ROW = TERMS + 1;
    private static final int PER_OCTAVE = 8;
    private static final int PER_ROOT = 32;
    private static final int SHIFT = 52 - 3;
    private static final long FRACTION = (1L << SHIFT) - 1;
    private static final long ONE = Double.doubleToRawLongBits(1);
    private static final long HALF = Double.doubleToRawLongBits(0.5);
    private static final int BIAS = 1023;

    private final double[] rows;
    private final int firstPiece;
    private final int roots;

    private ChosenPieces(double[] rows, int firstPiece, int roots) {
        this.rows = rows;
        this.firstPiece = firstPiece;
        this.roots = roots;
    }

    /** Reads the tables of both parts, which lie beside this class; the first begins with an octave. */
    static ChosenPieces read(String small, int firstOctave, String large) {
        double[][] first = Table.read(ChosenPieces.class, small).numbers();
        double[][] second = Table.read(ChosenPieces.class, large).numbers();
        double[] rows = new double[ROW * (first.length + second.length)];
        for (int i = 0; i < first.length + second.length; i++) {
            boolean isSmall = i < first.length;
            double[] row = isSmall ? first[i] : second[i - first.length];
            System.arraycopy(row, 0, rows, i * ROW, row.length);
            rows[i * ROW + TERMS] = isSmall ? 1 + 0.5 / PER_OCTAVE : (i - first.length + 0.5) / PER_ROOT;
        }
        return new ChosenPieces(rows, (firstOctave + BIAS) * PER_OCTAVE, first.length);
    }

    /** Value at a positive x, with the root that is the variable where x is 1/2 or more. */
    double value(double x, double root) {
        long bits = Double.doubleToRawLongBits(x);
        long small = bits - HALF >> 63;
        int octavePiece = (int) (bits >>> SHIFT) - firstPiece;
        int rootPiece = roots + (int) (root * PER_ROOT);
        int row = ROW * (rootPiece ^ (rootPiece ^ octavePiece) & (int) small);
        long mantissa = bits & FRACTION | ONE;
        long rootBits = Double.doubleToRawLongBits(root);
        double place = Double.longBitsToDouble(rootBits ^ (rootBits ^ mantissa) & small);
        double[] c = rows;
        return Pieces.at(c, row, place - c[row + TERMS]);
    }

    /** The first number where x is below 1/2, else the second. */
    static double choose(double x, double ifSmall, double ifLarge) {
        long small = Double.doubleToRawLongBits(x) - HALF >> 63;
        long large = Double.doubleToRawLongBits(ifLarge);
        return Double.longBitsToDouble(large ^ (large ^ Double.doubleToRawLongBits(ifSmall)) & small);
    }
}
