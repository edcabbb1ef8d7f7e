package dev.runnel.examples.review;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.RegularSeries;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The smallest amount that a stepped record is made of, such as a tip of the bucket, which tells of its unit. A record of a
 * gauge that weighs has none.
 *
 * @param mm the smallest amount, mm
 * @param change where it becomes another one for good, if it does
 */
record RainGrain(double mm, Optional<Change> change) {
    /** Wet steps of a block whose smallest is taken, and fewest blocks before and after a change; all values of this class are chosen here. */
    private static final int BLOCK = 20;

    private static final int FEWEST_BLOCKS = 2;

    /** The smallest of all blocks before a change and of those after it differ by more than this factor. */
    private static final double FACTOR = 1.5;

    /** Up to so many grains in a step, each must be a whole number of them by so much, in most steps. */
    private static final double FEW_GRAINS = 6.5;

    private static final double WHOLE = 0.15;
    private static final double MOST = 0.95;

    private static final double MM_PER_INCH = 25.4;
    private static final double NEAR = 0.04;

    /** A resolution of gauges that weigh, mm: a hundredth of an inch in inches looks the same. */
    private static final double WEIGHED = 0.01;

    /**
     * Another grain.
     *
     * @param time the first step with it
     * @param mm it, mm
     */
    record Change(Instant time, double mm) {}

    /** Returns the grain of a record; empty where there are too few wet steps, or none. */
    static Optional<RainGrain> of(RegularSeries rain) {
        double[] depths = rain.toValues();
        int[] wet = IntStream.range(0, depths.length).filter(i -> depths[i] > 0).toArray();
        double[] values = Arrays.stream(wet).mapToDouble(i -> depths[i]).toArray();
        int blocks = values.length / BLOCK;
        if (blocks < FEWEST_BLOCKS) {
            return Optional.empty();
        }
        for (int split = FEWEST_BLOCKS; split <= blocks - FEWEST_BLOCKS; split++) {
            double before = smallest(values, 0, split);
            double after = smallest(values, split, blocks);
            boolean up = largestOfSmallest(values, 0, split) * FACTOR < after;
            boolean down = largestOfSmallest(values, split, blocks) * FACTOR < before;
            if (up || down) {
                int at = first(values, split, before, after, up);
                return isGrain(values, 0, at, before) && isGrain(values, at, values.length, after)
                        ? Optional.of(new RainGrain(before, Optional.of(new Change(rain.time(wet[at]), after))))
                        : Optional.empty();
            }
        }
        double all = smallest(values, 0, blocks);
        return isGrain(values, 0, values.length, all)
                ? Optional.of(new RainGrain(all, Optional.empty()))
                : Optional.empty();
    }

    /** The first step of the other grain: the change lies somewhere in the block before the split or the one after it. */
    private static int first(double[] values, int split, double before, double after, boolean up) {
        int from = (split - 1) * BLOCK;
        int to = Math.min(values.length, (split + 1) * BLOCK);
        double between = Math.sqrt(before * after);
        if (up) {
            int last = from;
            for (int i = from; i < to; i++) {
                last = values[i] < between ? i + 1 : last;
            }
            return last;
        }
        for (int i = from; i < to; i++) {
            if (values[i] < between) {
                return i;
            }
        }
        return split * BLOCK;
    }

    private static double smallest(double[] values, int fromBlock, int toBlock) {
        return Arrays.stream(values, fromBlock * BLOCK, toBlock * BLOCK).min().orElseThrow();
    }

    private static double largestOfSmallest(double[] values, int fromBlock, int toBlock) {
        return IntStream.range(fromBlock, toBlock)
                .mapToDouble(block -> smallest(values, block, block + 1))
                .max()
                .orElseThrow();
    }

    /** Whether small depths are whole numbers of it; a file that rounds hides it in large ones. */
    private static boolean isGrain(double[] values, int from, int to, double grain) {
        double[] small = Arrays.stream(values, from, to)
                .map(value -> value / grain)
                .filter(grains -> grains < FEW_GRAINS)
                .toArray();
        long whole = Arrays.stream(small)
                .filter(grains -> Math.abs(grains - Math.rint(grains)) < WHOLE)
                .count();
        return small.length >= BLOCK && whole >= MOST * small.length;
    }

    /**
     * What it says of the unit of the record; empty if nothing.
     *
     * @param tipMm tip of the gauge, mm, by the site file
     */
    Optional<String> doubt(double tipMm, Dates dates) {
        if (change.isPresent()) {
            Change found = change.get();
            return Optional.of(
                    "The smallest rain of a step is " + Text.significant(mm, 3) + " mm up to "
                            + dates.time(found.time())
                            + ", and " + Text.significant(found.mm(), 3) + " mm from then on, "
                            + Text.significant(found.mm() / mm, 3)
                            + " times as much: another unit, or another size of tip? Rain, storms and their shares of one of the two times are wrong by that.");
        }
        if (isNear(mm, tipMm / MM_PER_INCH) && !isNear(mm, WEIGHED)) {
            return Optional.of("The rain comes in amounts of " + Text.significant(mm, 3) + " mm, a tip of "
                    + Text.significant(tipMm, 3)
                    + " mm in inches: is the unit right? Rain and storms would be 25.4 times as much.");
        }
        if (mm == 1 && tipMm < 1 / FACTOR) {
            return Optional.of("The rain comes in whole mm, while a tip is " + Text.significant(tipMm, 3)
                    + " mm: is the column a count of tips? Rain and storms would be " + Text.significant(tipMm, 3)
                    + " times as much.");
        }
        return Optional.empty();
    }

    private static boolean isNear(double value, double other) {
        return Math.abs(value / other - 1) < NEAR;
    }
}
