package dev.runnel.hydraulics.watch;

import java.util.Arrays;

/**
 * How far blocks of a quantity stray when nothing is wrong: centre and long-run standard deviation from the hours of a
 * baseline, which follow each other, and which are few.
 */
final class BlockScale {
    /** Share of its floor that a change must be beyond, in scales; chosen here, with {@link #FLOOR}. */
    private static final double SLACK = 0.75;
    /** Two weeks know the day-to-day scatter badly; the prior weighs as much as this many days; chosen here. */
    private static final double PRIOR_DAYS = 12;

    /** Hours of a block. */
    private static final int BLOCK = 6;

    /** Hours that a block, and a day, must have to have a median: half a block, a third of a day; chosen here. */
    private static final int LEAST_HOURS_OF_BLOCK = 3;

    private static final int LEAST_HOURS_OF_DAY = 8;

    /** Blocks, and pairs of blocks, from which on a scatter or a correlation is looked for, and days; chosen here. */
    private static final int LEAST_BLOCKS = 4;

    private static final int LEAST_DAYS = 3;

    /** Four blocks of 6 h make a day: the variance of a block is four times that of a day's mean. */
    private static final int BLOCKS_PER_DAY = 24 / BLOCK;

    /** A higher correlation of blocks would leave no long-run scatter to speak of; chosen here. */
    private static final double MOST_CORRELATION = 0.9;

    /** What sites usually show, as standard deviation of a day, by quantity; and the smallest change that counts; chosen here. */
    private static final double[] USUAL = {0.04, 0.05, 0.06, 0.08};

    private static final double[] FLOOR = {0.08, 0.145, 0.145, 0.24};

    /** Long-run standard deviations are multiplied by this for what the baseline cannot know of them: seasons of the flow
     * too; chosen here. */
    private static final double[] ALLOWANCE = {1.4, 1.7, 1.7, 1.7};

    /** What a site scatters from day to day is much like what it scatters from hour to hour, which is known better;
     * chosen here. */
    private static final double DAY_OF_HOURS = 0.9;

    /** The scatter of days of a velocity at its depth is about this share of that of its hours; chosen here. */
    private static final double DAY_SHARE = 0.6;

    final double centre;
    final double scale;

    private BlockScale(double centre, double scale) {
        this.centre = centre;
        this.scale = scale;
    }

    /**
     * Learns the scale of a quantity.
     *
     * @param hours hour numbers, rising
     * @param residuals residual of each hour, NaN for none
     */
    static BlockScale learn(Quantity quantity, long[] hours, double[] residuals) {
        Blocks six = Blocks.of(hours, residuals, BLOCK, LEAST_HOURS_OF_BLOCK);
        Blocks days = Blocks.of(hours, residuals, 24, LEAST_HOURS_OF_DAY);
        double[] values = six.medians;
        double centre = Medians.of(values);
        double robust = Medians.scatter(values);
        double variance = values.length < LEAST_BLOCKS ? Double.NaN : (robust * robust + Medians.variance(values)) / 2;
        double phi = Math.min(MOST_CORRELATION, Math.max(0, six.correlation(centre)));
        double longRun = variance * (1 + phi) / (1 - phi);
        double daily = days.medians.length < LEAST_DAYS ? 0 : BLOCKS_PER_DAY * Medians.variance(days.medians);
        double found = Double.isNaN(longRun) ? daily : Math.max(daily, longRun);
        double usual = usual(quantity, residuals);
        int used = days.medians.length;
        double shrunk = (PRIOR_DAYS * BLOCKS_PER_DAY * usual * usual + Math.max(0, used - 1) * found)
                / (PRIOR_DAYS + Math.max(0, used - 1));
        double scale = Math.max(allowance(quantity) * Math.sqrt(shrunk), FLOOR[quantity.ordinal()] / SLACK);
        return new BlockScale(Double.isNaN(centre) ? 0 : centre, scale);
    }

    /**
     * How far days of the velocity at its depth stray: standard deviation of their medians, which two weeks know badly, drawn
     * towards a share of what hours scatter.
     */
    static double ofDays(long[] hours, double[] residuals) {
        Blocks days = Blocks.of(hours, residuals, 24, LEAST_HOURS_OF_DAY);
        double prior = DAY_SHARE * Medians.scatter(residuals);
        int freedom = Math.max(0, days.medians.length - 1);
        double found = freedom > 0 ? Medians.variance(days.medians) : 0;
        return Math.sqrt((PRIOR_DAYS * prior * prior + freedom * found) / (PRIOR_DAYS + freedom));
    }

    private static double usual(Quantity quantity, double[] residuals) {
        double prior = USUAL[quantity.ordinal()];
        return quantity == Quantity.VELOCITY_AT_DEPTH
                ? Math.max(prior, DAY_OF_HOURS * Medians.scatter(residuals))
                : prior;
    }

    static double allowance(Quantity quantity) {
        return ALLOWANCE[quantity.ordinal()];
    }

    /** Medians of the residuals by blocks of hours. */
    static final class Blocks {
        final long[] numbers;
        final double[] medians;

        private Blocks(long[] numbers, double[] medians) {
            this.numbers = numbers;
            this.medians = medians;
        }

        static Blocks of(long[] hours, double[] residuals, int length, int least) {
            long[] numbers = new long[hours.length];
            double[] medians = new double[hours.length];
            int used = 0;
            for (int from = 0; from < hours.length; ) {
                long number = Math.floorDiv(hours[from], (long) length);
                int to = from;
                while (to < hours.length && Math.floorDiv(hours[to], (long) length) == number) {
                    to++;
                }
                double[] known = Medians.known(Arrays.copyOfRange(residuals, from, to));
                if (known.length >= least) {
                    numbers[used] = number;
                    medians[used++] = Medians.of(known);
                }
                from = to;
            }
            return new Blocks(Arrays.copyOf(numbers, used), Arrays.copyOf(medians, used));
        }

        /** Correlation of blocks that follow each other, about a centre; 0 of too few. */
        double correlation(double centre) {
            double product = 0;
            double square = 0;
            int pairs = 0;
            for (int i = 0; i < medians.length; i++) {
                square += (medians[i] - centre) * (medians[i] - centre);
                if (i > 0 && numbers[i] == numbers[i - 1] + 1) {
                    product += (medians[i] - centre) * (medians[i - 1] - centre);
                    pairs++;
                }
            }
            return pairs < LEAST_BLOCKS || square == 0 ? 0 : product / pairs / (square / medians.length);
        }
    }
}
