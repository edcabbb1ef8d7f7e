package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;

/** The one check of a probability that is asked for a quantile. */
final class Probability {
    private Probability() {}

    static double inside(String name, double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException(name + " must be inside (0, 1), was " + Text.number(probability));
        }
        return probability;
    }
}
