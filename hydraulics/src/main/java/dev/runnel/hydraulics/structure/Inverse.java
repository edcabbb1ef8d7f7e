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
        if (f.applyAsDouble(highest) < target) {
            throw unreachable(name, "at most " + Text.number(highest), target, unit);
        }
        if (f.applyAsDouble(LOWEST) > target) {
            throw unreachable(name, "at least " + Text.number(LOWEST), target, unit);
        }
        return Roots.overDecades(x -> Math.log(f.applyAsDouble(x) / target), highest);
    }

    private static IllegalArgumentException unreachable(String name, String bound, double target, String unit) {
        return new IllegalArgumentException(
                name + " must be reached at a head of " + bound + " m, was " + Text.number(target) + " " + unit);
    }
}
