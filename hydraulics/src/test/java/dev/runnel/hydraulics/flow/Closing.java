package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.DoubleUnaryOperator;

/** What "the inverse closes" means. */
final class Closing {
    private Closing() {}

    /**
     * The value closes within 1e-12; or the depth is as good as a double can be: between the values of its neighbours
     * lies the value asked for (within 1e-8 of a round soffit one step of the depth changes more than 1e-12).
     */
    static void assertCloses(DoubleUnaryOperator quantity, double depth, double value) {
        double got = quantity.applyAsDouble(depth);
        if (Math.abs(got - value) <= 1e-12 * value) {
            return;
        }
        double below = quantity.applyAsDouble(Math.nextDown(depth));
        double above = quantity.applyAsDouble(Math.nextUp(depth));
        assertThat(value)
                .as("depth %s gives %s, its neighbours %s and %s", depth, got, below, above)
                .isBetween(Math.min(below, above), Math.max(below, above));
    }
}
