package dev.runnel.internal;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.exception.MathIllegalArgumentException;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apiguardian.api.API;

/** Zeros of continuous functions to the last bits, without an exception that a caller would have to explain. */
@API(status = API.Status.INTERNAL)
public final class Roots {
    /** Brent needs about 10 calls on the variables used here. */
    private static final int MOST_CALLS = 300;

    private Roots() {}

    /**
     * Returns a zero of a function that changes sign between two points.
     *
     * <p>The zero is enclosed to about 2 ulp. If rounding has taken the sign change away (both ends have the same sign,
     * which happens only when the zero lies within rounding of an end), the end with the smaller value is returned.
     *
     * @param function continuous and never NaN on [from, to]
     * @param from one end
     * @param to the other end, not below {@code from}
     * @return the zero, in [from, to]
     * @throws IllegalStateException if the function is NaN at an end
     */
    public static double between(DoubleUnaryOperator function, double from, double to) {
        double atFrom = function.applyAsDouble(from);
        double atTo = function.applyAsDouble(to);
        if (Double.isNaN(atFrom) || Double.isNaN(atTo)) {
            throw new IllegalStateException("no value to search by at " + (Double.isNaN(atFrom) ? from : to));
        }
        if (atFrom == 0 || !(from < to)) {
            return from;
        }
        if (atTo == 0) {
            return to;
        }
        if ((atFrom > 0) == (atTo > 0)) {
            return Math.abs(atFrom) <= Math.abs(atTo) ? from : to;
        }
        // A value of exactly 0 is the only one accepted early: accuracy is that of the argument.
        var solver = new BrentSolver(1e-16, Double.MIN_NORMAL, 0);
        UnivariateFunction bounded = function::applyAsDouble;
        try {
            return solver.solve(MOST_CALLS, bounded, from, to);
        } catch (MathIllegalStateException | MathIllegalArgumentException slow) {
            return byHalves(function, from, to, atFrom > 0);
        }
    }

    /**
     * Returns the zero of a function that keeps one sign from there on towards 0: in logarithms, and so over any number of
     * decades.
     *
     * @param function continuous and never NaN on (0, top], with another sign near 0 than at the top, unless it is 0 there
     * @param top greater than 0, finite
     * @return the zero, in (0, top]
     * @throws IllegalArgumentException if {@code top} is outside its range
     */
    public static double overDecades(DoubleUnaryOperator function, double top) {
        Require.positive("top", top, "");
        double atTop = function.applyAsDouble(top);
        if (atTop == 0) {
            return top;
        }
        boolean positiveAbove = atTop > 0;
        double bottom = top;
        do {
            bottom /= 16;
        } while (bottom > 0 && function.applyAsDouble(bottom) > 0 == positiveAbove);
        double logarithm = between(
                u -> function.applyAsDouble(Math.min(Math.exp(u), top)),
                Math.log(Math.max(bottom, Double.MIN_NORMAL)),
                Math.log(top));
        return Math.min(Math.exp(logarithm), top);
    }

    /**
     * Doubles a number until a function is no longer below 0.
     *
     * @param function below 0 up to some place only
     * @param from greater than 0
     * @return the number itself or the first of its doubles at which the function is 0 or greater; infinite if it never is
     */
    public static double doubled(DoubleUnaryOperator function, double from) {
        double to = from;
        while (function.applyAsDouble(to) < 0 && to < Double.POSITIVE_INFINITY) {
            to *= 2;
        }
        return to;
    }

    /** Slow and sure, where Brent's method crawls: a curve of many decades, or with a jump. */
    private static double byHalves(DoubleUnaryOperator function, double from, double to, boolean positiveBelow) {
        double low = from;
        double high = to;
        while (true) {
            double middle = low + (high - low) / 2;
            if (!(low < middle && middle < high)) {
                return low;
            }
            double value = function.applyAsDouble(middle);
            if (value == 0) {
                return middle;
            }
            if (value > 0 == positiveBelow) {
                low = middle;
            } else {
                high = middle;
            }
        }
    }
}
