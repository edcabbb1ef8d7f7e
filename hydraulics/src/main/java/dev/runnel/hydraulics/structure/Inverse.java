package dev.runnel.hydraulics.structure;

import dev.runnel.base.Text;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.AllowedSolution;
import org.apache.commons.math3.analysis.solvers.BracketingNthOrderBrentSolver;
import org.apache.commons.math3.exception.MathIllegalArgumentException;
import org.apache.commons.math3.exception.MathIllegalStateException;

/** Roots of increasing functions, to within a few units in the last place. */
final class Inverse {
    /** No structure has a head of ten kilometres. */
    private static final double HIGHEST = 1e4;

    private static final double LOWEST = 1e-30;

    private Inverse() {}

    /** Returns x > 0 with f(x) = target for an f that increases from 0. */
    static double increasing(DoubleUnaryOperator f, String name, double target, String unit) {
        double high = 1;
        double low = 1;
        if (f.applyAsDouble(1) < target) {
            while (f.applyAsDouble(high) < target) {
                low = high;
                high *= 2;
                if (high > HIGHEST) {
                    throw new IllegalArgumentException(name + " must be reached at a head below " + Text.number(HIGHEST)
                            + " m, was " + Text.number(target) + " " + unit);
                }
            }
        } else {
            while (f.applyAsDouble(low) > target) {
                high = low;
                low /= 2;
                if (low < LOWEST) {
                    throw new IllegalArgumentException(name + " must be reached at a head above " + Text.number(LOWEST)
                            + " m, was " + Text.number(target) + " " + unit);
                }
            }
        }
        return between(x -> f.applyAsDouble(x) - target, low, high);
    }

    /** Returns a root of f in [low, high]; f must not have the same sign at both ends. */
    static double between(DoubleUnaryOperator f, double low, double high) {
        if (low == high || f.applyAsDouble(low) == 0) {
            return low;
        }
        if (f.applyAsDouble(high) == 0) {
            return high;
        }
        try {
            return new BracketingNthOrderBrentSolver(4e-16, Double.MIN_NORMAL, Double.MIN_NORMAL, 5)
                    .solve(1000, f::applyAsDouble, low, high, AllowedSolution.ANY_SIDE);
        } catch (MathIllegalArgumentException | MathIllegalStateException e) {
            // the caller brackets and its functions are continuous: reaching this is a defect, not an input
            throw new IllegalStateException("no root in [" + low + ", " + high + "]", e);
        }
    }
}
