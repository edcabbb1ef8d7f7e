package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Coefficients;

/**
 * A curve of a part x in (0, 1] that is a power law over any number of decades where x is small, and near x = 1 smooth only
 * in the root r = √(1 − x), as the discharge is under the crown of a circle, or the depth at a crest. Both become one variable,
 *
 * <pre>
 * v = x (1 − r (3/2 − 3/4 r))
 * </pre>
 *
 * <p>which is x/4 for small x and 1 − 3/2 r near the end: smooth where the curve is, and rising between. In octaves of v the
 * curve is pieces of degree 6, found from the bits of v alone: no choice, which a processor would often guess wrongly, and
 * where many values are asked the roots are taken in a loop of their own, which becomes vectors. Many short pieces, since a
 * term more takes longer than a longer table, of which a record needs a few octaves only.
 */
final class CrestPieces {
    private static final int PER_OCTAVE = 64;
    private static final int SHIFT = 52 - 6;
    private static final int BIAS = 1023;

    /** Coefficients of a piece, lowest power first. */
    private static final int TERMS = 7;

    /** Before them the middle of the piece. */
    private static final int ROW = TERMS + 1;

    private final double[] rows;
    private final int firstPiece;

    /** The one that ends at v = 1. */
    private final int last;

    private CrestPieces(double[] rows, int firstPiece, int last) {
        this.rows = rows;
        this.firstPiece = firstPiece;
        this.last = last;
    }

    /** Reads the table that lies beside this class, whose pieces begin with an octave of v. */
    static CrestPieces read(String name, int firstOctave) {
        double[] table = Coefficients.read(CrestPieces.class, name);
        int count = table.length / TERMS;
        double[] rows = new double[ROW * count];
        for (int i = 0; i < count; i++) {
            // The table is in the mantissa of v; powers of 2 make of it a polynomial of v itself, without a rounding.
            int octave = firstOctave + i / PER_OCTAVE;
            rows[i * ROW] = Math.scalb(1 + (i % PER_OCTAVE + 0.5) / PER_OCTAVE, octave);
            for (int k = 0; k < TERMS; k++) {
                rows[i * ROW + 1 + k] = Math.scalb(table[i * TERMS + k], -k * octave);
            }
        }
        return new CrestPieces(rows, (firstOctave + BIAS) * PER_OCTAVE, count - 1);
    }

    /** The variable of a part and the root of what it lacks of 1. */
    static double variable(double x, double root) {
        return x * Math.fma(root, Math.fma(root, 0.75, -1.5), 1);
    }

    /** The piece of a value of the variable; negative below the first one, and beyond the last if v is 1, negative or NaN. */
    int piece(double v) {
        return (int) (Double.doubleToRawLongBits(v) >>> SHIFT) - firstPiece;
    }

    /** Whether a piece is there and does not reach the end, where there are choices to be made. */
    boolean isInside(int piece) {
        return piece >= 0 && piece < last;
    }

    /** Value of a piece; of those beyond the last, of that one. */
    double valueUpTo(int piece, double v) {
        return value(Math.min(piece, last), v);
    }

    /** Value of a piece that {@linkplain #isInside is inside}. */
    double value(int piece, double v) {
        double[] c = rows;
        int i = ROW * piece;
        double u = v - c[i];
        double square = u * u;
        double high = Math.fma(Math.fma(c[i + 7], u, c[i + 6]), square, Math.fma(c[i + 5], u, c[i + 4]));
        return Math.fma(Math.fma(Math.fma(high, u, c[i + 3]), u, c[i + 2]), u, c[i + 1]);
    }
}
