package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.RegularSeries;
import java.time.Instant;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apiguardian.api.API;

/**
 * The smallest amount that a record by the step is made of, such as a tip of the bucket, which tells of its unit. A record of
 * a gauge that weighs has none. Immutable and thread-safe.
 *
 * <p>Of each 20 wet steps in a row, a block, the smallest depth is taken (what is left over at the end of the record is no
 * block). The grain is the smallest of all. It becomes another one for good where the blocks can be parted, two or more on
 * each side, so that every one after is larger than 1.5 times every one before, or smaller by as much. Either grain must fit:
 * of depths below 6.5 grains, 20 or more, 95 % are within 0.15 of a whole number of them; a file that rounds hides it in large
 * ones. All these are chosen here.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RainGrain {
    private static final int BLOCK = 20;
    private static final int FEWEST_BLOCKS = 2;
    private static final double FACTOR = 1.5;
    private static final double FEW_GRAINS = 6.5;
    private static final double WHOLE = 0.15;
    private static final double MOST = 0.95;
    private static final double MM_PER_INCH = 25.4;
    private static final double NEAR = 0.04;

    /** A resolution of gauges that weigh, mm: a hundredth of an inch in inches looks the same. */
    private static final double WEIGHED = 0.01;

    private final double depthMm;
    private final Optional<Change> change;

    /**
     * Another grain from a time on.
     *
     * @param time the first step with it
     * @param depthMm it, mm
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Change(Instant time, double depthMm) {
        /**
         * Asks for a time.
         *
         * @param time the first step with it
         * @param depthMm it, mm
         */
        public Change {
            Objects.requireNonNull(time, "time");
        }
    }

    private RainGrain(double depthMm, Optional<Change> change) {
        this.depthMm = depthMm;
        this.change = change;
    }

    /**
     * Looks for the grain of a record.
     *
     * @param rain depth in each step, mm; NaN for missing
     * @return it; empty where there are fewer than 40 wet steps, or where small depths are no whole numbers of one amount
     */
    public static Optional<RainGrain> of(RegularSeries rain) {
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
     * Returns the grain, up to a change if there is one.
     *
     * @return depth, mm
     */
    public double depthMm() {
        return depthMm;
    }

    /**
     * Returns where the grain becomes another one for good.
     *
     * @return the change; empty if there is none
     */
    public Optional<Change> change() {
        return change;
    }

    /**
     * Tells whether the grain is a tip of a bucket in inches, within 4 % (chosen here). A grain of 0.01 mm is not: gauges that
     * weigh write such.
     *
     * @param tipMm tip of the bucket, mm; greater than 0
     * @return whether it is
     * @throws IllegalArgumentException if the tip is not greater than 0
     */
    public boolean isTipInInches(double tipMm) {
        Require.positive("tipMm", tipMm, "mm");
        return isNear(depthMm, tipMm / MM_PER_INCH) && !isNear(depthMm, WEIGHED);
    }

    /**
     * Tells whether the record may be counts of tips: whole numbers, of a bucket whose tip is smaller than 1 mm by a third or
     * more.
     *
     * @param tipMm tip of the bucket, mm; greater than 0
     * @return whether it may be
     * @throws IllegalArgumentException if the tip is not greater than 0
     */
    public boolean isCountOf(double tipMm) {
        Require.positive("tipMm", tipMm, "mm");
        return depthMm == 1 && tipMm < 1 / FACTOR;
    }

    private static boolean isNear(double value, double other) {
        return Math.abs(value / other - 1) < NEAR;
    }

    @Override
    public String toString() {
        return "RainGrain[" + Text.significant(depthMm, 3) + " mm"
                + change.map(to -> ", " + Text.significant(to.depthMm(), 3) + " mm from " + to.time() + " on")
                        .orElse("")
                + "]";
    }
}
