package dev.runnel.hydraulics.watch;

import java.util.Arrays;
import java.util.Optional;

/**
 * A step of the velocity at its depth within a season of more or less water, against the days just before it. A law that
 * was learned in summer may be off by a little at the levels of winter, so that a small step hides in it for months; held
 * against the last days it does not.
 */
final class SeasonStep {
    // Every number of this class is chosen here; the reasons stand beside them.

    /** A step is looked for so many days ago: long enough to have stayed, soon enough to be news. */
    private static final int AFTER_DAYS = 14;

    private static final int LEAST_AFTER_DAYS = 3;

    /** Of sound sites the velocity wanders from day to day, not the depth: a step of the velocity alone must stay longer, and
     * be larger, in scales. */
    private static final int LEAST_VELOCITY_DAYS = 5;

    private static final double LEAST_VELOCITY_STEP = 1;

    /** Days before it that show where things stood. */
    private static final int BEFORE_DAYS = 10;

    private static final int LEAST_BEFORE_DAYS = 5;

    /** Blocks of a day that make a median of it. */
    private static final int LEAST_BLOCKS = 3;

    /** Times of the day of which blocks before and after must be known, of eight. */
    private static final int LEAST_TIMES = 5;

    /** Share of the step that every day after it must show, and up to which no more than one in five days before may stray. */
    private static final double STAYS = 0.5;

    private static final int ODD_DAYS = 5;

    /** Block from which on it is so. */
    final long block;

    /** 1 if the velocity at its depth went up, -1 if down. */
    final int direction;

    private SeasonStep(long block, int direction) {
        this.block = block;
        this.direction = direction;
    }

    /** Looks for a step, at the end of a day. */
    static Optional<SeasonStep> find(ChangeSeries series, Naming naming, long block) {
        Ring blocks = series.blocks;
        int days = ChangeSeries.BLOCKS_PER_DAY;
        int from = blocks.from(block - (long) (AFTER_DAYS + BEFORE_DAYS) * days);
        double[] apart = new double[blocks.size() - from];
        for (int i = 0; i < apart.length; i++) {
            apart[i] =
                    blocks.value(from + i, ChangeSeries.U) - naming.exponent() * blocks.value(from + i, ChangeSeries.D);
        }
        int step = step(blocks, from, apart, block);
        if (step < 0) {
            return Optional.empty();
        }
        double d = overDay(blocks, from, step, ChangeSeries.D);
        double u = overDay(blocks, from, step, ChangeSeries.U);
        double moved = u - naming.exponent() * d;
        boolean deep = Math.abs(d) > ChangeSums.SLACK * series.scale(ChangeSeries.D);
        double limit = (deep ? ChangeSums.SLACK : LEAST_VELOCITY_STEP) * series.scale(ChangeSeries.R);
        int least = deep ? LEAST_AFTER_DAYS : LEAST_VELOCITY_DAYS;
        // The law of the site must see it too; what is not known is not moved.
        double byLaw = Math.signum(moved) * overDay(blocks, from, step, ChangeSeries.R);
        if (!(Math.abs(moved) > limit && byLaw > STAYS * limit)
                || !naming.isNoWater(d, u)
                || !stays(blocks, from, apart, step, moved, least)) {
            return Optional.empty();
        }
        return Optional.of(new SeasonStep(blocks.number(from + step), moved > 0 ? 1 : -1));
    }

    /** Position of the step that least squares find, among those long and short enough ago; -1 if there is none. */
    private static int step(Ring blocks, int from, double[] apart, long block) {
        double[] known = Medians.known(apart);
        int all = known.length;
        double total = 0;
        for (double each : known) {
            total += each;
        }
        int best = -1;
        double most = 0;
        int before = 0;
        double sum = 0;
        for (int i = 0; i < apart.length; i++) {
            // The step lies before this block.
            double mean = sum / before - (total - sum) / (all - before);
            double gain = mean * mean * before * (all - before) / all;
            // Where nothing is known before it, or nothing after, the gain is none.
            if (gain > most) {
                long ago = block + 1 - blocks.number(from + i);
                boolean inTime = ago >= (long) LEAST_AFTER_DAYS * ChangeSeries.BLOCKS_PER_DAY
                        && ago <= (long) AFTER_DAYS * ChangeSeries.BLOCKS_PER_DAY;
                most = gain;
                best = inTime ? i : -1;
            }
            if (!Double.isNaN(apart[i])) {
                sum += apart[i];
                before++;
            }
        }
        return best;
    }

    /** Median difference after and before a step over the times of the day of which both are known; NaN of too few. */
    private static double overDay(Ring blocks, int from, int step, int quantity) {
        double[] differences = new double[ChangeSeries.BLOCKS_PER_DAY];
        for (int time = 0; time < differences.length; time++) {
            differences[time] = Medians.of(at(blocks, from + step, blocks.size(), quantity, time))
                    - Medians.of(at(blocks, from, from + step, quantity, time));
        }
        double[] known = Medians.known(differences);
        return known.length < LEAST_TIMES ? Double.NaN : Medians.of(known);
    }

    private static double[] at(Ring blocks, int from, int to, int quantity, int time) {
        double[] found = new double[to - from];
        Arrays.fill(found, Double.NaN);
        for (int i = from; i < to; i++) {
            if (Math.floorMod(blocks.number(i), (long) ChangeSeries.BLOCKS_PER_DAY) == time) {
                found[i - from] = blocks.value(i, quantity);
            }
        }
        return found;
    }

    /** Whether all days after a step show half of it or more, and hardly one before does. */
    private static boolean stays(Ring blocks, int from, double[] apart, int step, double moved, int least) {
        double[] before = days(blocks, from, apart, 0, step);
        double[] after = days(blocks, from, apart, step, apart.length);
        if (before.length < LEAST_BEFORE_DAYS || after.length < least) {
            return false;
        }
        double middle = Medians.of(before);
        double share = STAYS * Math.abs(moved);
        long strayed =
                Arrays.stream(before).filter(x -> Math.abs(x - middle) >= share).count();
        return ODD_DAYS * strayed <= before.length
                && Arrays.stream(after).allMatch(x -> Math.signum(moved) * (x - middle) > share);
    }

    /** Medians of days of 24 hours, counted from the step. */
    private static double[] days(Ring blocks, int from, double[] apart, int first, int last) {
        double[] medians = new double[AFTER_DAYS + BEFORE_DAYS + 2];
        int count = 0;
        for (int i = first; i < last; ) {
            long day = Math.floorDiv(blocks.number(from + i), (long) ChangeSeries.BLOCKS_PER_DAY);
            int to = i;
            while (to < last && Math.floorDiv(blocks.number(from + to), (long) ChangeSeries.BLOCKS_PER_DAY) == day) {
                to++;
            }
            double[] known = Medians.known(Arrays.copyOfRange(apart, i, to));
            if (known.length >= LEAST_BLOCKS) {
                medians[count++] = Medians.of(known);
            }
            i = to;
        }
        return Arrays.copyOf(medians, count);
    }
}
