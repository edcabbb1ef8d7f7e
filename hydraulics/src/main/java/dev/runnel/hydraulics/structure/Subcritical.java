package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Roots;
import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;

/**
 * The state that a structure and its approach agree upon. A velocity of approach raises the discharge, which raises the
 * velocity: of the two states that satisfy both, the slower one is meant.
 */
final class Subcritical {
    private static final int TRIALS = 16;
    private static final double ROUNDING = 1e-12;

    private Subcritical() {}

    /**
     * Returns the lowest zero between a state that is too low (value below 0 or 0) and one where the approach is critical;
     * NaN if there is none. Where the surface of the approach is narrow the critical state lies far out and beyond the second
     * zero; therefore a few states between are tried too.
     */
    static double root(DoubleUnaryOperator excess, double from, double critical) {
        for (int share = TRIALS; share > 0; share--) {
            double state = from + (critical - from) * share / TRIALS;
            if (excess.applyAsDouble(state) >= -ROUNDING * state) {
                return Roots.between(excess, from, state);
            }
        }
        return Double.NaN;
    }

    /** Returns the greatest head up to which the predicate holds, to 1e-9 relative; NaN if it fails at the least. */
    static double highest(double least, double greatest, DoublePredicate possible) {
        if (possible.test(greatest)) {
            return greatest;
        }
        double low = least;
        double high = greatest;
        if (!possible.test(low)) {
            return Double.NaN;
        }
        while (high - low > 1e-9 * high) {
            double middle = (low + high) / 2;
            if (possible.test(middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
