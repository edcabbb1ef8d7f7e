package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Table;

/**
 * Piecewise polynomials of a curve, made by the programs in src/generator: coefficients piece after piece, lowest power
 * first, in the variable less the middle of the piece. The first coefficient is the value in the middle and the rest small,
 * so that the rounding of the evaluation hardly counts.
 */
final class Pieces {
    /** Pieces of an octave: they are told by the first three bits of the mantissa. */
    private static final int PER_OCTAVE = 8;

    private static final int INDEX_SHIFT = 52 - 3;
    private static final long FRACTION = (1L << INDEX_SHIFT) - 1;
    private static final long ONE = Double.doubleToRawLongBits(1);
    private static final int BIAS = 1023;

    private Pieces() {}

    /** Reads a table that lies beside this class. */
    static double[] read(String name) {
        double[][] rows = Table.read(Pieces.class, name).numbers();
        double[] all = new double[rows.length * rows[0].length];
        for (int i = 0; i < rows.length; i++) {
            System.arraycopy(rows[i], 0, all, i * rows[i].length, rows[i].length);
        }
        return all;
    }

    /** Piece of a number in octaves from 2^first on. */
    static int octavePiece(double x, int first) {
        return (int) (Double.doubleToRawLongBits(x) >>> INDEX_SHIFT) - (first + BIAS) * PER_OCTAVE;
    }

    /** Mantissa of a number less the middle of its piece, without a rounding. */
    static double octaveOffset(double x) {
        double folded = Double.longBitsToDouble(Double.doubleToRawLongBits(x) & FRACTION | ONE);
        return folded - (1 + 0.5 / PER_OCTAVE);
    }

    /**
     * Value of a polynomial of degree 9. Two halves at once, since each step of one chain would wait for the last; what
     * counts, the first terms, is added last.
     */
    static double ten(double[] c, int piece, double u) {
        return at(c, 10 * piece, u);
    }

    /** The same of the coefficients from one on. */
    static double at(double[] c, int i, double u) {
        double square = u * u;
        double fourth = square * square;
        double low = Math.fma(Math.fma(c[i + 5], u, c[i + 4]), square, Math.fma(c[i + 3], u, c[i + 2]));
        double high = Math.fma(Math.fma(c[i + 9], u, c[i + 8]), square, Math.fma(c[i + 7], u, c[i + 6]));
        return Math.fma(Math.fma(Math.fma(high, fourth, low), u, c[i + 1]), u, c[i]);
    }
}
