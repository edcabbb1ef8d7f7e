package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.function.DoubleUnaryOperator;

/** Heads and other arguments of increasing functions, to within a few units in the last place. */
final class Inverse {
    private static final double LOWEST = 1e-30;

    private Inverse() {}

    static double head(HeadDischarge structure, double discharge) {
        return increasing(structure::formula, structure.highestHead(), "discharge", discharge, "m3/s");
    }

    /** Returns x in (0, highest] with f(x) = target for an f that increases from 0. */
    static double increasing(DoubleUnaryOperator f, double highest, String name, double target, String unit) {
        double high = Math.min(1, highest);
        double low = high;
        if (f.applyAsDouble(high) < target) {
            do {
                if (high == highest) {
                    throw unreachable(name, "at most " + Text.number(highest), target, unit);
                }
                low = high;
                high = Math.min(2 * high, highest);
            } while (f.applyAsDouble(high) < target);
        } else {
            do {
                high = low;
                low /= 2;
                if (low < LOWEST) {
                    throw unreachable(name, "at least " + Text.number(LOWEST), target, unit);
                }
            } while (f.applyAsDouble(low) > target);
        }
        return Roots.between(x -> f.applyAsDouble(x) - target, low, high);
    }

    private static IllegalArgumentException unreachable(String name, String bound, double target, String unit) {
        return new IllegalArgumentException(
                name + " must be reached at a head of " + bound + " m, was " + Text.number(target) + " " + unit);
    }
}
