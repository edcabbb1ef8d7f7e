package dev.runnel.hydraulics.flow;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.DoubleUnaryOperator;

/**
 * The depth of a value on a branch that rises from dry, as polynomials over cells of the value. A cell is computed when
 * first asked for, from depths that a search has found, and then serves all later values in it; two threads may both compute
 * one, and get the same. So the answer for a value never depends on what was asked before.
 *
 * <p>Cells lie in the variables in which the curve is tame: parts of an octave of the value far below the largest, where it
 * is nearly a power law, and s = √(1 − value/largest) towards it, in which the depth runs straight into a crest. Each cell
 * is tested against the curve itself; one that misses {@link #CLOSING} or holds a corner of the section is cut into sixteen,
 * and what still misses or holds it is left to the search: no test at some places sees every slight bend between them.
 */
final class DepthCells {
    /** How closely the value of a depth must come back, of itself; a fifth of what is promised. */
    private static final double CLOSING = 2e-13;

    private static final int DEGREE = 9;
    private static final int TERMS = DEGREE + 1;
    private static final int PARTS = 16;
    private static final int PER_OCTAVE = 8;
    private static final int PER_ROOT = 64;

    /** Values down to 2^-44 of the largest; in open sections, which have none, between 2^-60 and 2^60. */
    private static final int FIRST_OCTAVE = -44;

    private static final int OPEN_OCTAVES = 60;

    /** About where a polynomial through the nodes is farthest off, the ends among them: near a neck one end is worst. */
    private static final double[] TEST_PLACES = new double[TERMS + 1];

    private static final double[] NODES = new double[TERMS];

    static {
        // Places and nodes take turns on the half circle.
        for (int k = 0; k <= TERMS; k++) {
            TEST_PLACES[k] = place(2 * k);
        }
        for (int k = 0; k < TERMS; k++) {
            NODES[k] = place(2 * k + 1);
        }
    }

    private static double place(int k) {
        return Math.cos(Math.PI * k / (2 * TERMS));
    }

    private final DoubleUnaryOperator quantity;
    private final DoubleUnaryOperator search;
    private final double most;
    private final double deepest;
    private final double[] corners;
    private final boolean open;
    private final int firstOctave;
    private final int octaveCells;
    private final AtomicReferenceArray<double[]> cells;

    /**
     * Cells of a branch.
     *
     * @param quantity value of a depth
     * @param search depth of a value, without these cells
     * @param most largest value, +∞ in an open section
     * @param deepest depth of the largest value
     * @param corners values at which the curve may bend, ascending; not modified
     */
    DepthCells(
            DoubleUnaryOperator quantity, DoubleUnaryOperator search, double most, double deepest, double[] corners) {
        this.quantity = quantity;
        this.search = search;
        this.most = most;
        this.deepest = deepest;
        this.corners = corners;
        this.open = Double.isInfinite(most);
        this.firstOctave = open ? -OPEN_OCTAVES : FIRST_OCTAVE;
        this.octaveCells = PER_OCTAVE * (open ? 2 * OPEN_OCTAVES : -1 - FIRST_OCTAVE);
        this.cells = new AtomicReferenceArray<>(octaveCells + (open ? 0 : PER_ROOT));
    }

    /** The depth of a value between 0 and the largest, both excluded. */
    double depth(double value) {
        double u = open ? value : value / most;
        int cell;
        double t;
        if (open || u < 0.5) {
            cell = Pieces.octavePiece(u, firstOctave);
            if (cell < 0 || cell >= octaveCells) {
                return search.applyAsDouble(value);
            }
            t = Pieces.octaveOffset(u) * (2 * PER_OCTAVE);
        } else {
            double place = Math.sqrt(1 - u) * PER_ROOT;
            int root = (int) place;
            cell = octaveCells + root;
            t = 2 * (place - root) - 1;
        }
        double[] terms = cells.get(cell);
        if (terms == null) {
            terms = compute(cell);
            cells.set(cell, terms);
        }
        double depth;
        if (terms.length == TERMS) {
            depth = Pieces.ten(terms, 0, t);
        } else {
            double place = (t + 1) * (PARTS / 2);
            int part = Math.min((int) place, PARTS - 1);
            depth = Pieces.ten(terms, part, 2 * (place - part) - 1);
        }
        return Double.isNaN(depth) ? search.applyAsDouble(value) : depth;
    }

    private double[] compute(int cell) {
        double[] whole = polynomial(cell, -1, 1);
        if (!Double.isNaN(whole[0])) {
            return whole;
        }
        double[] parts = new double[PARTS * TERMS];
        for (int part = 0; part < PARTS; part++) {
            double low = 2.0 * part / PARTS - 1;
            System.arraycopy(polynomial(cell, low, low + 2.0 / PARTS), 0, parts, part * TERMS, TERMS);
        }
        return parts;
    }

    /** Value at a place in [−1, 1] of a cell. */
    private double value(int cell, double t) {
        if (cell < octaveCells) {
            double mantissa = 1 + (cell % PER_OCTAVE + 0.5 + t / 2) / PER_OCTAVE;
            double u = Math.scalb(mantissa, firstOctave + cell / PER_OCTAVE);
            return open ? u : u * most;
        }
        double s = (cell - octaveCells + 0.5 + t / 2) / PER_ROOT;
        return (1 - s * s) * most;
    }

    /** Whether a corner lies within two values; towards the crest the first is the larger. */
    private boolean bends(double one, double other) {
        int next = Arrays.binarySearch(corners, Math.min(one, other));
        int first = next < 0 ? -next - 1 : next;
        return first < corners.length && corners[first] <= Math.max(one, other);
    }

    /** Interpolates the depth over a part of a cell, NaN where the curve is not met. */
    private double[] polynomial(int cell, double low, double high) {
        if (bends(value(cell, low), value(cell, high))) {
            double[] none = new double[TERMS];
            none[0] = Double.NaN;
            return none;
        }
        double middle = (low + high) / 2;
        double half = (high - low) / 2;
        double[] table = new double[TERMS];
        for (int k = 0; k < TERMS; k++) {
            double value = value(cell, middle + half * NODES[k]);
            table[k] = value < most ? search.applyAsDouble(value) : Double.NaN;
        }
        // Newton's divided differences, then the powers of the place in [−1, 1].
        for (int level = 1; level < TERMS; level++) {
            for (int i = TERMS - 1; i >= level; i--) {
                table[i] = (table[i] - table[i - 1]) / (NODES[i] - NODES[i - level]);
            }
        }
        double[] powers = new double[TERMS];
        for (int i = TERMS - 1; i >= 0; i--) {
            for (int j = TERMS - 1; j > 0; j--) {
                powers[j] = powers[j - 1] - NODES[i] * powers[j];
            }
            powers[0] = table[i] - NODES[i] * powers[0];
        }
        for (double place : TEST_PLACES) {
            double value = value(cell, middle + half * place);
            double depth = Math.min(Pieces.ten(powers, 0, place), deepest);
            if (!(depth > 0 && Math.abs(quantity.applyAsDouble(depth) / value - 1) <= CLOSING)) {
                powers[0] = Double.NaN;
                break;
            }
        }
        return powers;
    }
}
