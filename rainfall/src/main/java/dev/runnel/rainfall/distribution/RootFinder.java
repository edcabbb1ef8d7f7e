package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.function.DoubleUnaryOperator;

/** One root inside a bracket that must hold one. */
final class RootFinder {
    private RootFinder() {}

    /**
     * @param what what is sought, for the message
     * @throws NoFitException if the function has the same sign at both ends, or no value there
     */
    static double find(String what, DoubleUnaryOperator function, double from, double to) {
        double atFrom = function.applyAsDouble(from);
        double atTo = function.applyAsDouble(to);
        if (!(Math.min(atFrom, atTo) <= 0 && Math.max(atFrom, atTo) >= 0)) {
            throw new NoFitException(
                    what + " must have a solution in [" + Text.number(from) + ", " + Text.number(to) + "]");
        }
        return Roots.between(function, from, to);
    }
}
