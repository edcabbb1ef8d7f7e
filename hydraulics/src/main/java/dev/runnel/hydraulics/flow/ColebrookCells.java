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

    /** A correction of the depth so large, of itself, is done twice. */
    private static final double FAR = 0.1;

    /** By how much of itself Reynolds' number must be above that of turbulent flow; a cell and a node are narrower. */
    private static final double MARGIN = 1.1;

    /** MARGIN times the least Reynolds' number, over 2.51 · 2/ln 10. */
    private static final double LEAST_TURBULENT =
            MARGIN * DarcyFriction.TURBULENT_LIMIT / (2.51 * ColebrookRoot.TO_LOGARITHM);

    private static final int MOST_STEPS = 4;

    /** Cells of a unit of Q/Qfull from {@link #EVEN} on, of a unit from 1 on, and of an octave below both. */
    private static final int PER_UNIT = 1024;

    private static final int PER_UNIT_OF_TOP = 4096;

    private static final double EVEN = 0.125;
    private static final int PER_OCTAVE = 64;
    private static final int SHIFT = 52 - 6;
    private static final int FIRST_OCTAVE = -20;
    private static final double FIRST = 0x1p-20;
    private static final int FIRST_BITS = (FIRST_OCTAVE + 1023) << 6;
    private static final int LOWER = PER_OCTAVE * (-3 - FIRST_OCTAVE);
    private static final double LARGEST = 1.125;
    private static final int FIRST_EVEN = LOWER - (int) (EVEN * PER_UNIT);
    private static final int TOP = FIRST_EVEN + PER_UNIT;
    private static final int CELLS = TOP + (int) ((LARGEST - 1) * PER_UNIT_OF_TOP);

    private static final int LINE = 8;
    private static final VarHandle DEPTH = MethodHandles.arrayElementVarHandle(double[].class);

    /** Which node serves a cell, for all pipes. */
    private static final ColebrookSeeds SEEDS = new ColebrookSeeds(CELLS);

    private final double alpha;
    private final double beta;
    private final double full;
    private final double perFull;

    /** 1/L of the full bore. */
    private final double lambda;

    /** Part of the smooth wall in what that logarithm is of. */
    private final double smooth;

    private int asked;
    private volatile double @Nullable [] kept;

    /**
     * Cells of a pipe. For its cells the discharge of the full bore is known well enough from a rough logarithm.
     *
     * @param alpha α = ks/(14.8 D)
     * @param beta β = 2.51 ν/(4 D √(8 g S D))
     */
    ColebrookCells(double alpha, double beta) {
        this.alpha = alpha;
        this.beta = beta;
        double inner = Math.fma(8, beta, 4 * alpha);
        double log = ColebrookRoot.roughLogarithm(inner);
        this.lambda = 1 / log;
        this.full = -log * (CircleColebrook.FULL_AREA / 2);
        this.smooth = 8 * beta / inner;
        this.perFull = -lambda * (2 / CircleColebrook.FULL_AREA);
    }

    /** 1/L of the full bore within 3e-9, L = ln(4α + 8β). */
    double lambda() {
        return lambda;
    }

    /** 1 over the a √ρ (−L) of the full bore, as closely. */
    double perFull() {
        return perFull;
    }

    /** Depth over diameter of a √ρ (−L) = q on the rising branch, NaN where the cells do not tell. */
    double depth(double q) {
        double ratio = q * perFull;
        if (!(ratio >= FIRST && ratio < LARGEST)) {
            return Double.NaN;
        }
        int cell = cellOf(ratio);
        double[] lines = kept(1);
        return lines == null ? compute(cell, q, null) : fromLine(lines, cell, q);
    }

    /** Writes the depth of each discharge; what the cells do not tell is left to another form. */
    void depths(double[] discharge, double[] depth, double perUnit, double diameter, DoubleUnaryOperator other) {
        double toRatio = perFull;
        double[] lines = kept(discharge.length);
        for (int i = 0; i < discharge.length; i++) {
            double q = discharge[i] * perUnit;
            double ratio = q * toRatio;
            double known = Double.NaN;
            if (ratio >= FIRST && ratio < LARGEST) {
                int cell = cellOf(ratio);
                known = diameter * (lines == null ? compute(cell, q, null) : fromLine(lines, cell, q));
            }
            depth[i] = known > 0 ? known : Bulk.at("discharges", discharge, i, other);
        }
    }

    /** The lines of the cells, once enough has been asked. */
    private double @Nullable [] kept(int questions) {
        double[] lines = kept;
        if (lines == null) {
            asked += Math.min(questions, FEW + 1);
            if (asked > FEW) {
                lines = new double[CELLS * LINE];
                kept = lines;
            }
        }
        return lines;
    }

    /** Without a branch, which would often be guessed wrongly. */
    private static int cellOf(double ratio) {
        int fine = (int) (ratio * PER_UNIT_OF_TOP);
        int even = FIRST_EVEN + (Math.min(fine, PER_UNIT_OF_TOP) >> 2) + Math.max(fine - PER_UNIT_OF_TOP, 0);
        int octave = (int) (Double.doubleToRawLongBits(ratio) >>> SHIFT) - FIRST_BITS;
        int mask = (fine - (int) (EVEN * PER_UNIT_OF_TOP)) >> 31;
        return (octave & mask) | (even & ~mask);
    }

    private double fromLine(double[] lines, int cell, double q) {
        int at = cell * LINE;
        double x = (double) DEPTH.getAcquire(lines, at);
        if (x == 0) {
            return compute(cell, q, lines);
        }
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
        double rest = Math.fma(Math.fma(Math.fma(Math.fma(b6, w, b5), w, b4), w, b3), w, b2);
        return x + Math.fma(rest * w, w, w);
    }

    /** The middle of a cell, Q/Qfull. */
    private static double middle(int cell) {
        if (cell >= TOP) {
            return 1 + (cell - TOP + 0.5) / PER_UNIT_OF_TOP;
        }
        if (cell >= LOWER) {
            return (cell - FIRST_EVEN + 0.5) / PER_UNIT;
        }
        return Math.scalb(1 + (cell % PER_OCTAVE + 0.5) / PER_OCTAVE, FIRST_OCTAVE + cell / PER_OCTAVE);
    }

    private static double half(int cell) {
        if (cell >= TOP) {
            return 0.5 / PER_UNIT_OF_TOP;
        }
        return cell >= LOWER ? 0.5 / PER_UNIT : Math.scalb(0.5 / PER_OCTAVE, FIRST_OCTAVE + cell / PER_OCTAVE);
    }

    /** The depth of a discharge in a cell, NaN if the cell must not be used; keeps its polynomial if there are lines. */
    private double compute(int cell, double q, double @Nullable [] lines) {
        double ratio = middle(cell);
        int node = CircleNodes.nearest(SEEDS.depth(cell, ratio, lambda, smooth));
        double depth = node < 0
                ? Double.NaN
                : turn(CircleNodes.line(node), ratio * full, half(cell) * full, q, lines, cell * LINE);
        return Double.isNaN(depth) ? computeFar(cell, q, lines) : depth;
    }

    /** The same where there is no seed, or not one good enough: the node is searched. */
    private double computeFar(int cell, double q, double @Nullable [] lines) {
        double middle = middle(cell) * full;
        int start = CircleNodes.nearest(CircleManning.lowestPart(Math.min(middle(cell), 1.05)));
        int node = nodeOf(middle, Math.max(start, 1));
        if (node < 0) {
            if (lines != null) {
                DEPTH.setRelease(lines, cell * LINE, Double.NaN);
            }
            return Double.NaN;
        }
        return turn(CircleNodes.line(node), middle, half(cell) * full, q, lines, cell * LINE);
    }

    /** The node next to the depth of a discharge, or -1. */
    private int nodeOf(double q, int from) {
        double[] s = CircleNodes.SERIES;
        int node = from;
        for (int i = 0; i < MOST_STEPS; i++) {
            int o = CircleNodes.line(node);
            double i0 = alpha * s[o + 8] + beta * s[o + 15];
            double log = ColebrookRoot.roughLogarithm(i0);
            if (!(log < 0)) {
                return -1;
            }
            double per = 1 / i0;
            double i1 = (alpha * s[o + 9] + beta * s[o + 16]) * per;
            double i2 = (alpha * s[o + 10] + beta * s[o + 17]) * per;
            double l2 = i2 - 0.5 * i1 * i1;
            double missing = q + s[o + 1] * log;
            double slope = -(s[o + 2] * log + s[o + 1] * i1);
            double bend = -(s[o + 3] * log + s[o + 2] * i1 + s[o + 1] * l2);
            double square = slope * slope + 4 * bend * missing;
            double step = square > 0 && slope > 0 ? 2 * missing / (slope + Math.sqrt(square)) : -slope / (2 * bend);
            double x = Math.min(Math.max(s[o] + step, s[o] / 4), 0.97);
            node = CircleNodes.nearest(x);
            if (node < 0 || Math.abs(step) <= FAR * x) {
                break;
            }
        }
        return node;
    }

    /** The polynomial about a node: x₀, q₀, 1/q₀' and b₂ to b₆ are a line; the offsets are those of {@link CircleNodes}. */
    private double turn(int o, double middle, double half, double q, double @Nullable [] lines, int at) {
        double[] s = CircleNodes.SERIES;
        double alphaPart = alpha;
        double betaPart = beta;
        double i0 = alphaPart * s[o + 8] + betaPart * s[o + 15];
        double log = ColebrookRoot.logarithm(i0);
        double per = 1 / i0;
        double i1 = (alphaPart * s[o + 9] + betaPart * s[o + 16]) * per;
        double i2 = (alphaPart * s[o + 10] + betaPart * s[o + 17]) * per;
        double i3 = (alphaPart * s[o + 11] + betaPart * s[o + 18]) * per;
        double i4 = (alphaPart * s[o + 12] + betaPart * s[o + 19]) * per;
        double i5 = (alphaPart * s[o + 13] + betaPart * s[o + 20]) * per;
        double i6 = (alphaPart * s[o + 14] + betaPart * s[o + 21]) * per;
        // Logarithm of the series, k l_k = k i_k − Σ m l_m i_{k−m}; k l_k are d1, d2, ...
        double d1 = i1;
        double d2 = 2 * i2 - d1 * i1;
        double d3 = 3 * i3 - d1 * i2 - d2 * i1;
        double d4 = 4 * i4 - d1 * i3 - d2 * i2 - d3 * i1;
        double d5 = 5 * i5 - d1 * i4 - d2 * i3 - d3 * i2 - d4 * i1;
        double d6 = 6 * i6 - d1 * i5 - d2 * i4 - d3 * i3 - d4 * i2 - d5 * i1;
        double l2 = d2 / 2;
        double l3 = d3 / 3;
        double l4 = d4 / 4;
        double l5 = d5 / 5;
        double l6 = d6 / 6;
        // Discharge, less its sign: g (l0 + l1 h + ...).
        double q0 = -s[o + 1] * log;
        double q1 = s[o + 2] * log + s[o + 1] * d1;
        double perSlope = 1 / q1;
        double a2 = (s[o + 3] * log + s[o + 2] * d1 + s[o + 1] * l2) * perSlope;
        double a3 = (s[o + 4] * log + s[o + 3] * d1 + s[o + 2] * l2 + s[o + 1] * l3) * perSlope;
        double a4 = (s[o + 5] * log + s[o + 4] * d1 + s[o + 3] * l2 + s[o + 2] * l3 + s[o + 1] * l4) * perSlope;
        double a5 = (s[o + 6] * log + s[o + 5] * d1 + s[o + 4] * l2 + s[o + 3] * l3 + s[o + 2] * l4 + s[o + 1] * l5)
                * perSlope;
        double a6 = (s[o + 7] * log
                        + s[o + 6] * d1
                        + s[o + 5] * l2
                        + s[o + 4] * l3
                        + s[o + 3] * l4
                        + s[o + 2] * l5
                        + s[o + 1] * l6)
                * perSlope;
        double squared = a2 * a2;
        double cubed = squared * a2;
        double b6 =
                7 * (a2 * a5 + a3 * a4 + 12 * cubed * a3 - 4 * a2 * a3 * a3 - 4 * squared * a4 - 6 * squared * cubed)
                        - a6;
        double wide = (Math.abs(middle - q0) + half) * Math.abs(perSlope);
        double last = Math.abs(b6) * wide * wide * wide * wide * wide * wide;
        // Reynolds' number is (2/ln 10) (2.51/β) √ρ ρ (−L), and s[15] is 1 over √ρ ρ.
        boolean isRough = 3.7 * MARGIN * alphaPart * s[o + 8] > 1;
        boolean known = log < 0
                && q1 < 0
                && last <= LAST_TERM * s[o]
                && -log >= LEAST_TURBULENT * betaPart * s[o + 15]
                && !isRough;
        double x = known ? s[o] : Double.NaN;
        double b2 = -a2;
        double b3 = 2 * squared - a3;
        double b4 = 5 * (a2 * a3 - cubed) - a4;
        double b5 = 6 * a2 * a4 + 3 * a3 * a3 + 14 * squared * squared - 21 * squared * a3 - a5;
        if (lines != null) {
            lines[at + 1] = q0;
            lines[at + 2] = -perSlope;
            lines[at + 3] = b2;
            lines[at + 4] = b3;
            lines[at + 5] = b4;
            lines[at + 6] = b5;
            lines[at + 7] = b6;
            // Last, so that whoever sees it sees the others.
            DEPTH.setRelease(lines, at, x);
        }
        return value(q, x, q0, -perSlope, b2, b3, b4, b5, b6);
    }
}
