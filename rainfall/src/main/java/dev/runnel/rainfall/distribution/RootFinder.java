package dev.runnel.rainfall.distribution;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.exception.MathIllegalArgumentException;
import org.apache.commons.math3.exception.MathIllegalStateException;

/** One root inside a bracket, with the library's exceptions kept inside. */
final class RootFinder {
    private static final int MOST_EVALUATIONS = 500;
    private static final double RELATIVE_ACCURACY = 1e-15;
    private static final double ABSOLUTE_ACCURACY = 1e-15;

    private RootFinder() {}

    /**
     * @param what what is sought, for the message
     * @throws NoFitException if the function has the same sign at both ends
     */
    static double find(String what, DoubleUnaryOperator function, double from, double to) {
        try {
            return new BrentSolver(RELATIVE_ACCURACY, ABSOLUTE_ACCURACY)
                    .solve(MOST_EVALUATIONS, function::applyAsDouble, from, to);
        } catch (MathIllegalArgumentException | MathIllegalStateException e) {
            throw new NoFitException(what + " must have a solution in [" + from + ", " + to + "]");
        }
    }
}
