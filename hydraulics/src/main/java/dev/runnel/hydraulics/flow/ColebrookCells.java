package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Bulk;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * The depth of a discharge by the law of Colebrook and White in a circle, as a polynomial over each of many cells of the
 * discharge. A cell depends on nothing but the pipe and its own place: it is the series of the discharge about the
 * {@linkplain CircleNodes node} next to the depth of the middle of the cell, turned round,
 *
 * <pre>
 * x = x₀ + w + b₂ w² + ... + b₆ w⁶     w = (q − q₀)/q₀'
 * </pre>
 *
 * <p>which costs one logarithm more than a step of Newton's method. So a pipe that is asked once computes the cell and
 * forgets it, one that is asked often keeps its cells, and the answers are the same to the last bit. Two threads may both
 * compute a cell, and get the same.
 *
 * <p>A cell whose last term is larger than {@link #LAST_TERM} does not answer (the series ends at the crest, where the
 * slope vanishes), nor does one at whose node the flow is not clearly turbulent; the terms that are left out are a fortieth
 * of the last one or less. Series: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 1964, 3.6.25.
 */
final class ColebrookCells {
    /** Questions after which a pipe keeps its cells; chosen here. */
    private static final int FEW = 8;

    /** Of the depth. */
    private static final double LAST_TERM = 4e-13;

    /** By how much of itself Reynolds' number must be above that of turbulent flow; a cell and a node are narrower. */
    private static final double MARGIN = 1.1;

    /** MARGIN times the least Reynolds' number, over 2.51 · 2/ln 10. */
    private static final double LEAST_TURBULENT =
            MARGIN * DarcyFriction.TURBULENT_LIMIT / (2.51 * ColebrookRoot.TO_LOGARITHM);

    /**
     * Cells are even parts of the octaves of z = c/r − 1, r = Q/Qfull: a part of r itself where the pipe is far from full, and
     * narrower towards the crest, which is below c for every wall. The bits of z tell the cell, and its division does not wait
     * for what Qfull is.
     */
    static final double BEYOND_CREST = 1.08;

    private static final int PER_OCTAVE = 128;
    private static final int SHIFT = 52 - 7;
    private static final int FIRST_OCTAVE = -8;
    private static final int END_OCTAVE = 20;
    private static final int FIRST_BITS = (FIRST_OCTAVE + 1023) * PER_OCTAVE;
    private static final int CELLS = (END_OCTAVE - FIRST_OCTAVE) * PER_OCTAVE;

    /** Discharges whose cells are found at once. */
    private static final int BLOCK = 1024;

    private static final int LINE = 8;

    /** Kept as the depth of a cell that does not answer; NaN is that of a cell that has not been asked. */
    private static final double SILENT = Double.NEGATIVE_INFINITY;

    private static final VarHandle DEPTH = MethodHandles.arrayElementVarHandle(double[].class);

    private final ColebrookPipe pipe;

    private int asked;
    private volatile double @Nullable [] kept;

    /** Cells of a pipe; for them the discharge of its full bore is known well enough from a rough logarithm. */
    ColebrookCells(ColebrookPipe pipe) {
        this.pipe = pipe;
    }

    /** What {@link #depth} answers, of a pipe that keeps nothing. */
    static double depthOnce(ColebrookPipe pipe, double q) {
        int cell = cellAt(place(q, pipe.beyondCrest));
        return cell >= 0 && cell < CELLS
                ? compute(pipe.alpha, pipe.beta, pipe.lambda, pipe.smooth, pipe.full, cell, q, null)
                : Double.NaN;
    }

    /** Depth over diameter of a √ρ (−L) = q on the rising branch, not above 0 where the cells do not tell. */
    double depth(double q) {
        return depth(q, kept(1));
    }

    private double depth(double q, double @Nullable [] lines) {
        int cell = cellAt(place(q, pipe.beyondCrest));
        if (cell < 0 || cell >= CELLS) {
            return Double.NaN;
        }
        double known = lines == null ? Double.NaN : ofLine(lines, cell * LINE, q);
        return Double.isNaN(known)
                ? compute(pipe.alpha, pipe.beta, pipe.lambda, pipe.smooth, pipe.full, cell, q, lines)
                : known;
    }

    /** Writes the depth of each discharge; what the cells do not tell is left to another form. */
    void depths(double[] discharge, double[] depth, double perUnit, double diameter, DoubleUnaryOperator other) {
        if (discharge == depth) {
            Bulk.apply("discharges", discharge, "depths", depth, other);
            return;
        }
        double[] lines = kept(discharge.length);
        for (int from = 0; from < depth.length; from += BLOCK) {
            int to = from + Math.min(BLOCK, depth.length - from);
            boolean isDone = false;
            if (lines != null) {
                places(discharge, depth, from, to, perUnit, pipe.beyondCrest);
                isDone = fromLines(lines, discharge, depth, from, to, perUnit, diameter);
            }
            for (int i = from; !isDone && i < to; i++) {
                if (lines == null || !(depth[i] > 0)) {
                    double known = diameter * depth(discharge[i] * perUnit, lines);
                    depth[i] = known > 0 ? known : Bulk.at("discharges", discharge, i, other);
                }
            }
        }
    }

    /**
     * Depths from cells that are kept, not above 0 where there is none; tells whether all are, by their sum: without a jump for
     * each, and without a call of anything larger, which would slow the loop.
     */
    private static boolean fromLines(
            double[] lines, double[] discharge, double[] depth, int from, int to, double perUnit, double diameter) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            int cell = cellAt(depth[i]);
            double known = cell >= 0 && cell < CELLS ? ofLine(lines, cell * LINE, discharge[i] * perUnit) : Double.NaN;
            depth[i] = diameter * known;
            sum += known;
        }
        return sum > 0;
    }

    private static void places(double[] discharge, double[] place, int from, int to, double perUnit, double beyond) {
        for (int i = from; i < to; i++) {
            place[i] = place(discharge[i] * perUnit, beyond);
        }
    }

    /** z of a discharge and of c times that of the full bore. */
    private static double place(double q, double beyondCrest) {
        return Math.fma(beyondCrest, 1 / q, -1);
    }

    /** Negative before the first cell, and beyond the last for a place that is negative, infinite or none. */
    private static int cellAt(double place) {
        return (int) (Double.doubleToRawLongBits(place) >>> SHIFT) - FIRST_BITS;
    }

    /** The cell of a part Q/Qfull. */
    static int cellOf(double ratio) {
        return cellAt(place(ratio, BEYOND_CREST));
    }

    /** The lines of the cells, once enough has been asked. */
    private double @Nullable [] kept(int questions) {
        double[] lines = kept;
        if (lines == null) {
            asked += Math.min(questions, FEW + 1);
            if (asked > FEW) {
                lines = new double[CELLS * LINE];
                for (int cell = 0; cell < CELLS; cell++) {
                    lines[cell * LINE] = Double.NaN;
                }
                kept = lines;
            }
        }
        return lines;
    }

    /** NaN where nothing has been kept yet. */
    private static double ofLine(double[] lines, int at, double q) {
        // First, since it is written last.
        double x = (double) DEPTH.getAcquire(lines, at);
        return value(
                q,
                x,
                lines[at + 1],
                lines[at + 2],
                lines[at + 3],
                lines[at + 4],
                lines[at + 5],
                lines[at + 6],
                lines[at + 7]);
    }

    private static double value(
            double q, double x, double q0, double perSlope, double b2, double b3, double b4, double b5, double b6) {
        double w = (q - q0) * perSlope;
        double square = w * w;
        // The higher terms, which a new cell computes last, stand outside.
        double low = Math.fma(Math.fma(b3, w, b2), square, w);
        return x + Math.fma(Math.fma(b6, square, Math.fma(b5, w, b4)), square * square, low);
    }

    /** The depth of a discharge in a cell, NaN if the cell must not be used; keeps its polynomial if there are lines. */
    private static double compute(
            double alpha,
            double beta,
            double lambda,
            double smooth,
            double full,
            int cell,
            double q,
            double @Nullable [] lines) {
        int seed = ColebrookSeeds.row(cell);
        int node = CircleNodes.ofNumber(ColebrookSeeds.number(seed, lambda, smooth));
        if (node < 0) {
            if (lines != null) {
                DEPTH.setRelease(lines, cell * LINE, SILENT);
            }
            return Double.NaN;
        }
        double middle = ColebrookSeeds.middle(seed) * full;
        double half = ColebrookSeeds.half(seed) * full;
        return turn(alpha, beta, CircleNodes.line(node), middle, half, q, lines, cell * LINE);
    }

    /** The polynomial about a node: x₀, q₀, 1/q₀' and b₂ to b₆ are a line; the offsets are those of {@link CircleNodes}. Of numbers, not of an object, which would have to be in memory for a call so large. */
    private static double turn(
            double alpha, double beta, int o, double middle, double half, double q, double @Nullable [] lines, int at) {
        double[] s = CircleNodes.SERIES;
        double inner = Math.fma(alpha, s[o + 8], beta * s[o + 15]);
        // −L, and of what is in it each term over the first with its sign turned: so all that follows are sums.
        double log = -ColebrookRoot.logarithm(inner);
        double per = -1 / inner;
        double alphaPer = alpha * per;
        double betaPer = beta * per;
        double i1 = Math.fma(alphaPer, s[o + 9], betaPer * s[o + 16]);
        double i2 = Math.fma(alphaPer, s[o + 10], betaPer * s[o + 17]);
        double i3 = Math.fma(alphaPer, s[o + 11], betaPer * s[o + 18]);
        double i4 = Math.fma(alphaPer, s[o + 12], betaPer * s[o + 19]);
        double i5 = Math.fma(alphaPer, s[o + 13], betaPer * s[o + 20]);
        double i6 = Math.fma(alphaPer, s[o + 14], betaPer * s[o + 21]);
        // Logarithm of the series, k l_k = k i_k + Σ m l_m i_{k−m}; k l_k are d1, d2, ...
        double d1 = i1;
        double d2 = Math.fma(d1, i1, 2 * i2);
        double d3 = Math.fma(d2, i1, Math.fma(d1, i2, 3 * i3));
        double d4 = Math.fma(d3, i1, Math.fma(d2, i2, Math.fma(d1, i3, 4 * i4)));
        double d5 = Math.fma(d4, i1, Math.fma(d3, i2, Math.fma(d2, i3, Math.fma(d1, i4, 5 * i5))));
        double d6 = Math.fma(d5, i1, Math.fma(d4, i2, Math.fma(d3, i3, Math.fma(d2, i4, Math.fma(d1, i5, 6 * i6)))));
        double l2 = d2 / 2;
        double l3 = d3 * (1.0 / 3);
        double l4 = d4 / 4;
        double l5 = d5 * (1.0 / 5);
        double l6 = d6 * (1.0 / 6);
        // Discharge, g (l0 + l1 h + ...).
        double g0 = s[o + 1];
        double g1 = s[o + 2];
        double g2 = s[o + 3];
        double g3 = s[o + 4];
        double g4 = s[o + 5];
        double g5 = s[o + 6];
        double q0 = g0 * log;
        double q1 = Math.fma(g1, log, g0 * d1);
        double perSlope = 1 / q1;
        // What is known last stands outside: the way from the logarithm to the answer is most of the time.
        double a2 = Math.fma(g0, l2, Math.fma(g2, log, g1 * d1)) * -perSlope;
        double a3 = Math.fma(g0, l3, Math.fma(g3, log, Math.fma(g1, l2, g2 * d1))) * -perSlope;
        double a4 = Math.fma(g0, l4, Math.fma(g4, log, Math.fma(g1, l3, Math.fma(g2, l2, g3 * d1)))) * -perSlope;
        double a5 = Math.fma(g3, l2, g4 * d1);
        a5 = Math.fma(g0, l5, Math.fma(g5, log, Math.fma(g1, l4, Math.fma(g2, l3, a5)))) * -perSlope;
        double a6 = Math.fma(g3, l3, Math.fma(g4, l2, g5 * d1));
        a6 = Math.fma(g0, l6, Math.fma(s[o + 7], log, Math.fma(g1, l5, Math.fma(g2, l4, a6)))) * -perSlope;
        double square = a2 * a2;
        double b3 = Math.fma(2, square, a3);
        double b4 = Math.fma(5 * a2, square + a3, a4);
        double b5 = Math.fma(square, Math.fma(14, square, 21 * a3), Math.fma(6 * a2, a4, Math.fma(3 * a3, a3, a5)));
        double b6 = Math.fma(square, Math.fma(6, square, 12 * a3), Math.fma(4 * a3, a3, a5));
        b6 = Math.fma(7, Math.fma(a2, b6, a4 * Math.fma(4, square, a3)), a6);
        double wide = (Math.abs(middle - q0) + half) * perSlope;
        double wideSquare = wide * wide;
        double last = Math.abs(b6) * (wideSquare * wideSquare * wideSquare);
        // Reynolds' number is (2/ln 10) (2.51/β) √ρ ρ (−L), and s[15] is 1 over √ρ ρ.
        boolean isRough = 3.7 * MARGIN * alpha * s[o + 8] > 1;
        boolean known = q1 > 0 && last <= LAST_TERM * s[o] && log >= LEAST_TURBULENT * beta * s[o + 15] && !isRough;
        double x = known ? s[o] : Double.NaN;
        if (lines != null) {
            if (known) {
                lines[at + 1] = q0;
                lines[at + 2] = perSlope;
                lines[at + 3] = a2;
                lines[at + 4] = b3;
                lines[at + 5] = b4;
                lines[at + 6] = b5;
                lines[at + 7] = b6;
            }
            // Last, so that whoever sees it sees the others.
            DEPTH.setRelease(lines, at, known ? x : SILENT);
        }
        return value(q, x, q0, perSlope, a2, b3, b4, b5, b6);
    }
}
