package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Roots;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Finds the depths where a quantity stops rising or falling.
 *
 * <p>Each smooth piece of the section is sampled, closest near its ends, where curves bend most; an extreme between
 * samples is then the zero of the derivative. The derivative is a central difference of order 8, so the place of an
 * extreme comes out to about 1e-12 of the piece, where comparing values could give 1e-8 only.
 *
 * <p>Where a wall runs into the end of a piece as an arc does, the width changes by the root of the distance from there, and
 * an extreme may lie very close to the end. So the distance from an end grows like the eighth power of what counts the
 * samples: in that the curve is smooth, and an extreme before the first sample has less than 1e-12 of the value to hide.
 */
final class TurningDepths {
    private static final int SAMPLES = 128;

    /** Relative step between neighbouring doubles that no smooth curve makes, even into a round soffit. */
    private static final double JUMP = 1e-6;

    /** Of a value: what is no rise and no fall. */
    private static final double ROUNDING = 1e-14;

    /** A depth, and if it is a sample of a smooth piece, of which one and where in it. */
    private record Sample(double depth, DoubleUnaryOperator piece, double place) {
        static Sample corner(double depth) {
            return new Sample(depth, place -> depth, Double.NaN);
        }

        boolean isCorner() {
            return Double.isNaN(place);
        }
    }

    private TurningDepths() {}

    /**
     * Returns continuous chains of depths; between two neighbours of a chain the quantity is monotone, between chains it
     * jumps. The last depth is +∞ for an open section.
     */
    static List<double[]> of(CrossSection section, double[] breaks, DoubleUnaryOperator quantity) {
        boolean open = Double.isInfinite(section.height());
        List<double[]> chains = new ArrayList<>();
        List<Sample> samples = new ArrayList<>();
        samples.add(Sample.corner(0));
        for (int piece = 0; piece + 1 < breaks.length; piece++) {
            double from = breaks[piece];
            double to = breaks[piece + 1];
            double start = from;
            if (piece > 0 && jumps(quantity, from, Math.nextUp(from))) {
                chains.add(chain(samples, quantity));
                start = Math.nextUp(from);
                samples = startingAt(start);
            }
            boolean last = piece + 2 == breaks.length && !open;
            boolean jumpsAtSoffit = last && jumps(quantity, Math.nextDown(to), to);
            add(samples, between(start, jumpsAtSoffit ? Math.nextDown(to) : to));
            if (jumpsAtSoffit) {
                samples.add(Sample.corner(Math.nextDown(to)));
                chains.add(chain(samples, quantity));
                samples = new ArrayList<>();
            }
            samples.add(Sample.corner(to));
        }
        if (!open) {
            chains.add(chain(samples, quantity));
            return chains;
        }
        // Above the last corner of an open section the walls only go on: samples from a hair above it to thousands of
        // times it.
        double from = breaks[breaks.length - 1];
        if (from > 0 && jumps(quantity, from, Math.nextUp(from))) {
            // A level bench at the top: the wetted perimeter jumps there, as at any other bench.
            chains.add(chain(samples, quantity));
            samples = startingAt(Math.nextUp(from));
        }
        double scale = from > 0 ? from : 1;
        add(samples, place -> from + scale * Math.pow(place / (1 - place), 2));
        samples.add(Sample.corner(Double.POSITIVE_INFINITY));
        chains.add(chain(samples, quantity));
        return chains;
    }

    private static List<Sample> startingAt(double depth) {
        return new ArrayList<>(List.of(Sample.corner(depth)));
    }

    private static void add(List<Sample> samples, DoubleUnaryOperator piece) {
        // The first and the last would be so close to an end that rounding makes extremes there.
        for (int j = 2; j <= SAMPLES - 2; j++) {
            double place = (double) j / SAMPLES;
            samples.add(new Sample(piece.applyAsDouble(place), piece, place));
        }
    }

    /** The depth of a place in (0, 1) of a piece; from either end it leaves like the eighth power. */
    private static DoubleUnaryOperator between(double from, double to) {
        return place -> from + (to - from) * squaredSine(squaredSine(squaredSine(place)));
    }

    private static double squaredSine(double place) {
        double sine = Math.sin(Math.PI / 2 * place);
        return sine * sine;
    }

    private static boolean jumps(DoubleUnaryOperator quantity, double low, double high) {
        double below = quantity.applyAsDouble(low);
        double above = quantity.applyAsDouble(high);
        return Double.isFinite(above) && Math.abs(above - below) > JUMP * Math.max(below, above);
    }

    /** Reduces samples to the ends and the extremes between them. */
    private static double[] chain(List<Sample> samples, DoubleUnaryOperator quantity) {
        int n = samples.size();
        double[] value = samples.stream()
                .mapToDouble(Sample::depth)
                .map(depth -> Double.isInfinite(depth) ? Double.NaN : quantity.applyAsDouble(depth))
                .toArray();
        Deque<Turn> turns = new ArrayDeque<>();
        Turn start = new Turn(samples.get(0).depth(), value[0]);
        turns.add(start);
        for (int i = 1; i + 1 < n; i++) {
            boolean top = value[i] >= value[i - 1] && value[i] > value[i + 1];
            boolean bottom = value[i] <= value[i - 1] && value[i] < value[i + 1];
            if (top || bottom) {
                Sample sample = samples.get(i);
                Turn turn = Turn.at(sample.isCorner() ? sample.depth() : extreme(quantity, sample, top), quantity);
                if (turn.isBeyond(turns.getLast())) {
                    turns.add(turn);
                }
            }
        }
        if (n > 1) {
            Turn end = new Turn(samples.get(n - 1).depth(), value[n - 1]);
            if (!turns.getLast().equals(start) && !end.isBeyond(turns.getLast())) {
                turns.removeLast();
            }
            turns.add(end);
        }
        return turns.stream().mapToDouble(Turn::depth).toArray();
    }

    /** An end of a rise or a fall. */
    private record Turn(double depth, double value) {
        static Turn at(double depth, DoubleUnaryOperator quantity) {
            return new Turn(depth, quantity.applyAsDouble(depth));
        }

        /** Whether there is a rise or a fall from another one here, and not only rounding. */
        boolean isBeyond(Turn other) {
            return depth > other.depth && !(Math.abs(value - other.value) <= ROUNDING * Math.abs(value));
        }
    }

    /** The extreme between the neighbours of a sample, where the quantity is smooth. */
    private static double extreme(DoubleUnaryOperator quantity, Sample sample, boolean top) {
        DoubleUnaryOperator inside = sample.piece().andThen(quantity);
        DoubleUnaryOperator hill = top ? inside : place -> -inside.applyAsDouble(place);
        // The difference reaches 4 steps to each side and must stay inside.
        double reach = 1.0 / SAMPLES;
        double step = reach / 32;
        double within = reach - 4 * step;
        double flat = Roots.between(y -> slope(hill, y, step), sample.place() - within, sample.place() + within);
        // A corner that nobody announced can mislead the difference: then the sample is the better place.
        return hill.applyAsDouble(flat) >= hill.applyAsDouble(sample.place())
                ? sample.piece().applyAsDouble(flat)
                : sample.depth();
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
