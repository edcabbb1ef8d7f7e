package dev.runnel.hydraulics.internal;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apiguardian.api.API;

/** Zeros of continuous functions to the last bits, without an exception that a caller would have to explain. */
@API(status = API.Status.INTERNAL)
public final class Roots {
    /** Brent needs about 10 calls on the variables used here; bisection of the whole double range needs 2,100. */
    private static final int MOST_CALLS = 3_000;

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
     */
    public static double between(DoubleUnaryOperator function, double from, double to) {
        double atFrom = function.applyAsDouble(from);
        double atTo = function.applyAsDouble(to);
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
        return solver.solve(MOST_CALLS, bounded, from, to);
    }
}
