package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Text;

/** The one check of a caller's own coefficient. */
final class DischargeCoefficient {
    private DischargeCoefficient() {}

    static double checked(String name, double coefficient) {
        if (!(coefficient > 0 && coefficient <= 1)) {
            throw new IllegalArgumentException(
                    name + " must be greater than 0 and at most 1, was " + Text.number(coefficient));
        }
        return coefficient;
    }
}
