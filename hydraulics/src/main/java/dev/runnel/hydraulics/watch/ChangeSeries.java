package dev.runnel.hydraulics.watch;

import java.util.Arrays;

/** The last hours, and medians of blocks of three, of what is left over of the usual. */
final class ChangeSeries {
    /** Hours of a block. */
    static final int BLOCK_HOURS = 3;

    static final int BLOCKS_PER_DAY = 24 / BLOCK_HOURS;
    static final int R = Quantity.VELOCITY_AT_DEPTH.ordinal();
    static final int D = Quantity.DEPTH.ordinal();
    static final int U = Quantity.VELOCITY.ordinal();

    /** Column of the velocity at its depth as it stands, whether judged or not. */
    static final int PLAIN = Quantity.COUNT;

    /** Five days; chosen here, so that a wet day or two leave dry hours. */
    private static final int HOURS_BEFORE = 120;

    /** The velocity at its depth before a block: of the days from twelve to four before it, and blocks enough; chosen here. */
    private static final int FAR_BEFORE_BLOCKS = 12 * BLOCKS_PER_DAY;

    private static final int NEAR_BEFORE_BLOCKS = 4 * BLOCKS_PER_DAY;
    private static final int LEAST_BEFORE_BLOCKS = 12;

    /** Ten days of hours; chosen here, to hold what {@link ChangeSums}, {@link ChangeNames} and {@link StepHour} look back over. */
    private static final int HOURS_KEPT = 240;

    /** Six weeks of blocks, which hold those before an onset and those that tell a shape; chosen here. */
    static final int BLOCKS_KEPT = 42 * BLOCKS_PER_DAY;

    final Ring hours = new Ring(HOURS_KEPT, Quantity.COUNT + 1);
    final Ring blocks = new Ring(BLOCKS_KEPT, Quantity.COUNT);
    private final SiteBaseline baseline;

    ChangeSeries(SiteBaseline baseline) {
        this.baseline = baseline;
    }

    static long blockOf(long hour) {
        return Math.floorDiv(hour, (long) BLOCK_HOURS);
    }

    /** Begin of a block, ns. */
    static long time(long block) {
        return block * BLOCK_HOURS * SiteHour.NANOS;
    }

    double scale(int quantity) {
        return baseline.scale[quantity];
    }

    double centre(int quantity) {
        return baseline.centre[quantity];
    }

    /** Forgets all from an hour on. */
    void dropFrom(long hour) {
        hours.dropFrom(hour);
        blocks.dropFrom(blockOf(hour));
    }

    /** Adds the medians of a block less what is usual, NaN of fewer hours; returns them. */
    double[] addBlock(long block, int leastHours) {
        int from = hours.from(block * BLOCK_HOURS);
        double[] row = new double[Quantity.COUNT];
        for (int c = 0; c < Quantity.COUNT; c++) {
            double[] known = Medians.known(hours.column(from, c));
            boolean enough = known.length >= leastHours && scale(c) > 0;
            row[c] = enough ? Medians.of(known) - centre(c) : Double.NaN;
        }
        blocks.add(block, row);
        return row;
    }

    /** Where things stood before a block: medians, 0 for what is not known; of depth, velocity and flow over five days. */
    double[] before(long block) {
        long to = block * BLOCK_HOURS;
        double[] found = new double[Quantity.COUNT];
        for (int c = R + 1; c < Quantity.COUNT; c++) {
            double[] values = new double[hours.size()];
            Arrays.fill(values, Double.NaN);
            for (int i = hours.from(to - HOURS_BEFORE); i < hours.from(to); i++) {
                values[i] = hours.value(i, c);
            }
            double median = Medians.of(values);
            found[c] = Double.isNaN(median) ? 0 : median - centre(c);
        }
        // It moves least, and a ramp is well under way before it is told: of days farther back.
        double[] known = Medians.known(
                blocks.column(blocks.from(block - FAR_BEFORE_BLOCKS), blocks.from(block - NEAR_BEFORE_BLOCKS), R));
        found[R] = known.length < LEAST_BEFORE_BLOCKS ? 0 : Medians.of(known);
        return found;
    }

    /** Median of the last day's blocks. */
    double lastDay(int quantity) {
        return Medians.of(blocks.column(Math.max(0, blocks.size() - BLOCKS_PER_DAY), quantity));
    }

    /** Medians of depth and velocity over the hours from one index to another that know both; unknown of too few. */
    Place dryMedians(int from, int to, int least) {
        double[] d = new double[hours.size()];
        double[] u = new double[hours.size()];
        int count = 0;
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(hours.value(i, D)) && !Double.isNaN(hours.value(i, U))) {
                d[count] = hours.value(i, D);
                u[count++] = hours.value(i, U);
            }
        }
        return count < least
                ? Place.UNKNOWN
                : new Place(Medians.of(Arrays.copyOf(d, count)), Medians.of(Arrays.copyOf(u, count)));
    }
}
