package dev.runnel.hydraulics.watch;

/**
 * Counts how often what moved falls back to usual. A steady change may be small at some hours of every day, such as an
 * obstruction at night, so that only hours count that stood away on the days before.
 */
final class Falls {
    /** What never was of so many scales comes and goes by itself; chosen here, as are all values of this class. */
    private static final double RECUR_SCALES = 2;

    /** Share of the largest distance above which a block stands away, and below which it has fallen back. */
    private static final double RISEN_SHARE = 0.35;

    private static final double FALLEN_SHARE = 0.15;

    /** Blocks in a row that fell from where the same hours stood on one of the days before. */
    private static final int LEAST_BLOCKS = 2;

    private static final int DAYS_BEFORE = 3;

    /** What builds up and is cleared every few days begins anew at once, and is hardly ever as usual: then the last half day
     * has dropped from the same hours of the day before, by this share of the largest distance and so many scales, to below
     * that share of it. */
    private static final double DROP_SHARE = 0.5;

    private static final double DROP_SCALES = 1.5;

    private static final double DROPPED_SHARE = 0.3;

    private static final int DROP_BLOCKS = ChangeSeries.BLOCKS_PER_DAY / 2;

    private final Ring blocks;
    private final int quantity;
    private final int sign;
    private final double scale;
    private final double origin;
    private final double largest;

    private Falls(ChangeSeries series, FollowedChange change, int quantity, int sign) {
        this.blocks = series.blocks;
        this.quantity = quantity;
        this.sign = sign;
        this.scale = series.scale(quantity);
        this.origin = change.origin[quantity];
        this.largest = change.largest;
    }

    /** Looks at the last block. */
    static void count(ChangeSeries series, FollowedChange change, long end, Track open) {
        boolean relation = series.scale(ChangeSeries.R) > 0;
        int sign = relation && change.channel != ChangeSeries.R ? ofRelation(open.names.get(0)) : change.sign;
        // What hardly leaves the scatter comes and goes by itself, and water and days differ by the week.
        if (change.largest < RECUR_SCALES || sign == 0) {
            return;
        }
        Falls falls = new Falls(series, change, relation ? ChangeSeries.R : change.channel, sign);
        int last = series.blocks.size() - 1;
        if (Double.isNaN(falls.away(last))) {
            return;
        }
        // What rose high has not fallen before most of that is gone, and has not risen again before much of it is back.
        if (!change.risen) {
            change.risen = falls.away(last) > falls.risen();
        } else if (falls.isFallen(last) || falls.hasDropped(last)) {
            change.risen = false;
            open.falls.add(end);
        }
    }

    /** Which way the velocity at its depth goes when depth or velocity told first; 0 where it tells nothing. */
    private static int ofRelation(FindingName name) {
        return switch (name) {
            case HELD_UP -> -1;
            case RELEASED -> 1;
            default -> 0;
        };
    }

    /** Distance of a block from usual in scales, in the direction of the change. */
    private double away(int index) {
        return sign * (blocks.value(index, quantity) - origin) / scale;
    }

    private double risen() {
        return Math.max(ChangeSums.SLACK, RISEN_SHARE * largest);
    }

    private boolean isFallen(int last) {
        double fallen = Math.max(ChangeEnd.FOUND, FALLEN_SHARE * largest);
        int low = 0;
        for (int i = last; i >= 0 && low < LEAST_BLOCKS; i--) {
            double away = away(i);
            if (away >= fallen) {
                return false;
            }
            low += away < fallen && stoodAway(blocks.number(i)) ? 1 : 0;
        }
        return low >= LEAST_BLOCKS;
    }

    private boolean hasDropped(int last) {
        int from = blocks.from(blocks.number(last) - DROP_BLOCKS + 1);
        double[] now = new double[last + 1 - from];
        double[] drop = new double[now.length];
        for (int i = from; i <= last; i++) {
            now[i - from] = away(i);
            drop[i - from] = awayAt(blocks.number(i) - ChangeSeries.BLOCKS_PER_DAY) - away(i);
        }
        return Medians.known(drop).length == DROP_BLOCKS
                && Medians.of(drop) >= Math.max(DROP_SHARE * largest, DROP_SCALES)
                && Medians.of(now) <= DROPPED_SHARE * largest;
    }

    /** Distance of a block by its number; NaN if it is not known. */
    private double awayAt(long block) {
        int at = blocks.from(block);
        return at < blocks.size() && blocks.number(at) == block ? away(at) : Double.NaN;
    }

    /** Whether the same hours of one of the days before, the last one that knows them, stood away. */
    private boolean stoodAway(long block) {
        for (int day = 1; day <= DAYS_BEFORE; day++) {
            double then = awayAt(block - (long) day * ChangeSeries.BLOCKS_PER_DAY);
            if (!Double.isNaN(then)) {
                return then > risen();
            }
        }
        return false;
    }
}
