package dev.runnel.hydraulics.rating;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;

/** The stages at which segments join with the least sum of squares: every place on a grid, then closer and closer. */
final class BreakSearch {
    /** Fewest gaugings of a segment: a line through two would fit anything. */
    private static final int FEWEST = 3;

    /** Places tried in a range, and how often the range is narrowed; chosen here. */
    private static final int GRID = 60;

    private static final int ROUNDS = 40;

    private final double[] sorted;
    private final ToDoubleFunction<double[]> squares;
    private double least = Double.POSITIVE_INFINITY;
    private double[] best = new double[0];

    BreakSearch(double[] stage, ToDoubleFunction<double[]> squares) {
        sorted = stage.clone();
        Arrays.sort(sorted);
        this.squares = squares;
    }

    /** Returns one or two breaks. */
    double[] best(int count) {
        double from = sorted[FEWEST - 1];
        double to = sorted[sorted.length - FEWEST];
        double step = (to - from) / GRID;
        for (int i = 0; i <= GRID; i++) {
            if (count == 1) {
                tryOut(from + i * step);
            } else {
                for (int k = i + 1; k <= GRID; k++) {
                    tryOut(from + i * step, from + k * step);
                }
            }
        }
        if (best.length == 0) {
            throw new IllegalArgumentException("stage must have at least " + FEWEST
                    + " gaugings in each segment, with discharges that rise, to find where segments join");
        }
        refine(step);
        return best;
    }

    private void refine(double step) {
        double reach = step;
        for (int round = 0; round < ROUNDS; round++) {
            double before = least;
            for (int k = 0; k < best.length; k++) {
                for (int side = -1; side <= 1; side += 2) {
                    double[] moved = best.clone();
                    moved[k] += side * reach;
                    tryOut(moved);
                }
            }
            if (least == before) {
                reach /= 2;
            }
        }
    }

    private void tryOut(double... breaks) {
        if (!held(breaks)) {
            return;
        }
        double sum = squares.applyAsDouble(breaks);
        if (sum < least) {
            least = sum;
            best = breaks;
        }
    }

    private boolean held(double[] breaks) {
        double from = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= breaks.length; i++) {
            double above = from;
            double to = i == breaks.length ? Double.POSITIVE_INFINITY : breaks[i];
            if (Arrays.stream(sorted)
                            .filter(h -> h > above && h <= to)
                            .distinct()
                            .count()
                    < FEWEST) {
                return false;
            }
            from = to;
        }
        return true;
    }
}
