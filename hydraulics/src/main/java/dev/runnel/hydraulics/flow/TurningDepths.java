package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Roots;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Finds the depths where a quantity stops rising or falling.
 *
 * <p>Each smooth piece of the section is sampled, closest near its ends, where curves bend most; an extreme between
 * samples is then the zero of the derivative. The derivative is a central difference of order 8, so the place of an
 * extreme comes out to about 1e-12 of the piece, where comparing values could give 1e-8 only.
 *
 * <p>Where a wall runs into the end of a piece as an arc does, the width changes by the root of the distance from there, and
 * an extreme may lie far closer to the end than the outermost sample. It shows by the first step from the end, which goes
 * the other way than that sample lies; then more samples are taken, each four times closer than the last.
 */
final class TurningDepths {
    private static final int SAMPLES = 64;
    /** Relative step between neighbouring doubles that no smooth curve makes, even into a round soffit. */
    private static final double JUMP = 1e-6;

    /** The first step from an end, as a part of the piece: an extreme yet closer has less than 1e-12 of the value to hide. */
    private static final double FIRST_STEP = 1e-12;

    private static final double CLOSER = 4;

    /** By how much two neighbouring distances of samples differ only near an end. */
    private static final double UNEVEN = 1.5;

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
            double start = from;
            if (piece > 0 && jumps(quantity, from, Math.nextUp(from))) {
                chains.add(chain(depths, smooth, quantity));
                start = Math.nextUp(from);
                depths = new ArrayList<>(List.of(start));
                smooth = new ArrayList<>(List.of(false));
            }
            boolean last = piece + 2 == breaks.length && !open;
            boolean jumpsAtSoffit = last && jumps(quantity, Math.nextDown(to), to);
            double[] samples = samples(start, jumpsAtSoffit ? Math.nextDown(to) : to, quantity);
            for (double sample : samples) {
                depths.add(sample);
                smooth.add(true);
            }
            if (jumpsAtSoffit) {
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

    /** Depths inside a piece, ascending. */
    private static double[] samples(double from, double to, DoubleUnaryOperator quantity) {
        double[] inside = IntStream.range(1, SAMPLES)
                .mapToDouble(j -> from + (to - from) * (1 - Math.cos(Math.PI * j / SAMPLES)) / 2)
                .toArray();
        double[] above = closer(from, inside[0] - from, to - from, quantity);
        double[] below = closer(to, inside[inside.length - 1] - to, from - to, quantity);
        return Stream.of(inside, above, below)
                .flatMapToDouble(Arrays::stream)
                .sorted()
                .toArray();
    }

    /** Depths between an end of a piece and its outermost sample, ever closer to the end; none where no extreme can be. */
    private static double[] closer(double end, double outermost, double piece, DoubleUnaryOperator quantity) {
        double atEnd = quantity.applyAsDouble(end);
        double step = Math.copySign(Math.max(FIRST_STEP * Math.abs(piece), 4 * Math.ulp(end)), piece);
        double first = quantity.applyAsDouble(end + step) - atEnd;
        double whole = quantity.applyAsDouble(end + outermost) - atEnd;
        if (!(first * whole < 0)) {
            return new double[0];
        }
        DoubleStream.Builder depths = DoubleStream.builder();
        for (double each = outermost / CLOSER; Math.abs(each) > Math.abs(step); each /= CLOSER) {
            depths.add(end + each);
        }
        depths.add(end + step);
        return depths.build().toArray();
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
        DoubleUnaryOperator hill = top ? quantity : depth -> -quantity.applyAsDouble(depth);
        // The difference reaches 4 steps to each side and must stay inside.
        double step = (high - low) / 64;
        double flat = flat(hill, low + 4 * step, high - 4 * step, step);
        double wider = Math.max(high - sampled, sampled - low);
        if (wider > UNEVEN * Math.min(high - sampled, sampled - low)) {
            // Near an end a curve that bends like a root bends too much for such steps.
            double finer = step / 16;
            flat = flat(hill, flat - 3 * step, flat + 3 * step, finer);
        }
        // A corner that nobody announced can mislead the difference: then the sample is the better place.
        return hill.applyAsDouble(flat) >= hill.applyAsDouble(sampled) ? flat : sampled;
    }

    private static double flat(DoubleUnaryOperator hill, double from, double to, double step) {
        return Roots.between(y -> slope(hill, y, step), from, to);
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
