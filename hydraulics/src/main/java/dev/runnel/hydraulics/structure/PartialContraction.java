package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.NumberTable;
import dev.runnel.internal.Interpolation;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Ce of the 90 degree notch as the floor and the walls come near: curves over h/p, one for each p/B (Shen 1981, Fig.
 * 13). Straight lines along a curve and between curves; the last piece prolonged beyond a curve's end, which only
 * flagged answers use.
 */
final class PartialContraction {
    /** Step of p/B from curve to curve of the figure. */
    private static final double STEP = 0.1;

    private static final NumberTable[] CURVES = IntStream.rangeClosed(1, 10)
            .mapToObj(i -> NumberTable.read(PartialContraction.class, "shen-90-degrees.csv")
                    .where(i / 10.0))
            .toArray(NumberTable[]::new);

    private PartialContraction() {}

    static double coefficient(double headRatio, double shape) {
        return between(shape, curve -> curve.prolonged(headRatio, 1));
    }

    /** Returns the end of the curve, the greatest h/p. */
    static double highestHead(double shape) {
        return between(shape, curve -> curve.last(0));
    }

    private static double between(double shape, ToDoubleFunction<NumberTable> value) {
        double place = Math.max(0, Math.min(CURVES.length - 1, shape / STEP - 1));
        int i = (int) Math.min(CURVES.length - 2, Math.floor(place));
        return Interpolation.between(
                place, i, value.applyAsDouble(CURVES[i]), i + 1, value.applyAsDouble(CURVES[i + 1]));
    }
}
