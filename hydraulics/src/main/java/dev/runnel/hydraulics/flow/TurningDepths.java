package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Roots;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Finds the depths where a quantity stops rising or falling.
 *
 * <p>Each smooth piece of the section is sampled, closest near its ends, where curves bend most; an extreme between
 * samples is then the zero of the derivative. The derivative is a central difference of order 8, so the place of an
 * extreme comes out to about 1e-12 of the piece, where comparing values could give 1e-8 only.
 */
final class TurningDepths {
    private static final int SAMPLES = 64;
    /** Relative step between neighbouring doubles that no smooth curve makes, even into a round soffit. */
    private static final double JUMP = 1e-6;

    private TurningDepths() {}

    /**
     * Returns continuous chains of depths; between two neighbours of a chain the quantity is monotone, between chains it
     * jumps. The last depth is +∞ for an open section.
     */
    static List<double[]> of(CrossSection section, double[] breaks, DoubleUnaryOperator quantity) {
        boolean open = Double.isInfinite(section.height());
        List<double[]> chains = new ArrayList<>();
        List<Double> depths = new ArrayList<>();
        List<Boolean> smooth = new ArrayList<>();
        depths.add(0.0);
        smooth.add(false);
        for (int piece = 0; piece + 1 < breaks.length; piece++) {
            double from = breaks[piece];
            double to = breaks[piece + 1];
            if (piece > 0 && jumps(quantity, from, Math.nextUp(from))) {
                chains.add(chain(depths, smooth, quantity));
                depths = new ArrayList<>(List.of(Math.nextUp(from)));
                smooth = new ArrayList<>(List.of(false));
            }
            for (int j = 1; j < SAMPLES; j++) {
                depths.add(from + (to - from) * (1 - Math.cos(Math.PI * j / SAMPLES)) / 2);
                smooth.add(true);
            }
            boolean last = piece + 2 == breaks.length && !open;
            if (last && jumps(quantity, Math.nextDown(to), to)) {
                depths.add(Math.nextDown(to));
                smooth.add(false);
                chains.add(chain(depths, smooth, quantity));
                depths = new ArrayList<>();
                smooth = new ArrayList<>();
            }
            depths.add(to);
            smooth.add(false);
        }
        if (open) {
            // Above the last corner of an open section the walls only go on: samples spread by doubling.
            double from = breaks[breaks.length - 1];
            if (from > 0 && jumps(quantity, from, Math.nextUp(from))) {
                // A level bench at the top: the wetted perimeter jumps there, as at any other bench.
                chains.add(chain(depths, smooth, quantity));
                depths = new ArrayList<>(List.of(Math.nextUp(from)));
                smooth = new ArrayList<>(List.of(false));
            }
            double scale = from > 0 ? from : 1;
            for (double step = scale / 1024; step <= scale * 1024; step *= 2) {
                depths.add(from + step);
                smooth.add(true);
            }
        }
        double[] end = chain(depths, smooth, quantity);
        if (open) {
            end[end.length - 1] = Double.POSITIVE_INFINITY;
        }
        chains.add(end);
        return chains;
    }

    private static boolean jumps(DoubleUnaryOperator quantity, double low, double high) {
        double below = quantity.applyAsDouble(low);
        double above = quantity.applyAsDouble(high);
        return Double.isFinite(above) && Math.abs(above - below) > JUMP * Math.max(below, above);
    }

    /** Reduces samples to the ends and the extremes between them. */
    private static double[] chain(List<Double> depths, List<Boolean> smooth, DoubleUnaryOperator quantity) {
        int n = depths.size();
        double[] value = new double[n];
        for (int i = 0; i < n; i++) {
            value[i] = quantity.applyAsDouble(depths.get(i));
        }
        List<Double> corners = new ArrayList<>();
        corners.add(depths.get(0));
        for (int i = 1; i + 1 < n; i++) {
            boolean top = value[i] >= value[i - 1] && value[i] > value[i + 1];
            boolean bottom = value[i] <= value[i - 1] && value[i] < value[i + 1];
            if (top || bottom) {
                double corner = smooth.get(i)
                        ? extreme(quantity, depths.get(i - 1), depths.get(i), depths.get(i + 1), top)
                        : depths.get(i);
                if (corner > corners.get(corners.size() - 1)) {
                    corners.add(corner);
                }
            }
        }
        if (n > 1) {
            corners.add(depths.get(n - 1));
        }
        return corners.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** The extreme inside (low, high), where the quantity is smooth. */
    private static double extreme(DoubleUnaryOperator quantity, double low, double sampled, double high, boolean top) {
        double sign = top ? 1 : -1;
        double width = high - low;
        // The difference reaches 4 steps to each side and must stay inside.
        double step = width / 64;
        double flat = Roots.between(y -> sign * slope(quantity, y, step), low + 4 * step, high - 4 * step);
        // A corner that nobody announced can mislead the difference: then the sample is the better place.
        double gain = sign * (quantity.applyAsDouble(flat) - quantity.applyAsDouble(sampled));
        return gain >= 0 ? flat : sampled;
    }

    /** Derivative times the step, by the central difference of order 8. */
    private static double slope(DoubleUnaryOperator quantity, double depth, double step) {
        double sum = 0;
        for (int k = 1; k <= 4; k++) {
            double difference = quantity.applyAsDouble(depth + k * step) - quantity.applyAsDouble(depth - k * step);
            sum += WEIGHT[k] * difference;
        }
        return sum;
    }

    /** Fornberg 1988, table 1, order 8. */
    private static final double[] WEIGHT = {0, 4.0 / 5, -1.0 / 5, 4.0 / 105, -1.0 / 280};
}
