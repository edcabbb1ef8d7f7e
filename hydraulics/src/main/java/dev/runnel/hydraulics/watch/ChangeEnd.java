package dev.runnel.hydraulics.watch;

/** Whether a change is over, since when, and whether what comes after it is the same one again. */
final class ChangeEnd {
    // Every number of this class is chosen here; the reasons stand beside them.

    /** Share of the largest distance below which what stood far away is over, though a site may have wandered by a little meanwhile. */
    private static final double LEFT = 0.15;

    /** Closed when the quantity found is well within the slack, and the others are about it, for two days. */
    static final double FOUND = 0.4 * ChangeSums.SLACK;

    private static final double OTHERS = 1.2 * ChangeSums.SLACK;
    private static final int CLOSE_BLOCKS = 2 * ChangeSeries.BLOCKS_PER_DAY;

    /** What came back must be quiet for twice as long with each return, up to so many: 16 days, or 4 where water is held up. */
    private static final int MOST_DOUBLED = 3;

    private static final int MOST_DOUBLED_OF_WATER = 1;

    /** Dry blocks of them that must be known, unless it is wet for longer than a wet spell lasts. */
    private static final int DRY_BLOCKS = 3;

    private static final int WET_BLOCKS = 10 * ChangeSeries.BLOCKS_PER_DAY;

    /** The same finding again if it comes back within 1.5 times its length, but at least 5 and at most 21 days; water held up within 21. */
    private static final int RETURN_BLOCKS = 5 * ChangeSeries.BLOCKS_PER_DAY;

    private static final int LONGEST_RETURN_BLOCKS = 21 * ChangeSeries.BLOCKS_PER_DAY;

    private ChangeEnd() {}

    /**
     * Whether everything is as usual again, and has been for long enough: what came and went before is likely to come again, and what
     * lies between its stretches is not to be trusted. Water that is held up is read truly, and needs no such caution.
     */
    static boolean isOver(ChangeSeries series, FollowedChange change, long block, long lastDryBlock, Track open) {
        if (!isAsUsual(series, change, block, lastDryBlock)) {
            change.quietFrom = FollowedChange.NONE;
            return false;
        }
        if (change.quietFrom == FollowedChange.NONE) {
            change.quietFrom = block;
        }
        // Within a season what is usual changes meanwhile.
        int doubled = change.isWithinSeason()
                ? 0
                : Math.min(
                        open.names.get(0) == FindingName.HELD_UP ? MOST_DOUBLED_OF_WATER : MOST_DOUBLED,
                        open.returns());
        int quiet = CLOSE_BLOCKS << doubled;
        return block - change.quietFrom >= quiet - CLOSE_BLOCKS;
    }

    private static boolean isAsUsual(ChangeSeries series, FollowedChange change, long block, long lastDryBlock) {
        Ring blocks = series.blocks;
        int from = blocks.from(block - CLOSE_BLOCKS + 1);
        if (block - change.spellTold < ChangeSeries.BLOCKS_PER_DAY) {
            return false;
        }
        for (int c = 0; c < Quantity.COUNT; c++) {
            if (c != change.channel && change.isWithinSeason()) {
                // Of a season that goes on, depth, velocity and flow say nothing here.
                continue;
            }
            double[] known = Medians.known(blocks.column(from, c));
            if (c == change.channel && known.length < DRY_BLOCKS) {
                return false;
            }
            double limit = c == change.channel ? found(change) : OTHERS;
            if (known.length > 0 && !(Math.abs(Medians.of(known) - change.origin[c]) < limit * series.scale(c))) {
                return false;
            }
        }
        boolean longWet = block - Math.max(lastDryBlock, change.openedAt) > WET_BLOCKS;
        return longWet
                || Medians.known(blocks.column(from, ChangeSeries.D)).length >= DRY_BLOCKS
                || series.scale(ChangeSeries.D) == 0;
    }

    /** Distance in scales below which what was found is over; within a season what is usual changes meanwhile. */
    private static double found(FollowedChange change) {
        if (change.isWithinSeason()) {
            return FOUND;
        }
        return Math.max(FOUND, Math.min(ChangeSums.SLACK, LEFT * change.largest));
    }

    /**
     * End of what was not as usual yet: of the last block that stood away, and of those after it of which nothing is known,
     * as in rain at depths that were not learned.
     */
    static long lastAway(ChangeSeries series, FollowedChange change, long block) {
        Ring blocks = series.blocks;
        long next = block + 1;
        for (int i = blocks.size() - 1; i >= 0 && blocks.number(i) >= change.start; i--) {
            double x = blocks.value(i, change.channel) - change.origin[change.channel];
            if (!Double.isNaN(x) && change.sign * x / series.scale(change.channel) > ChangeSums.SLACK) {
                return ChangeSeries.time(next);
            }
            if (isKnown(blocks, i)) {
                next = blocks.number(i);
            }
        }
        return ChangeSeries.time(block + 1);
    }

    private static boolean isKnown(Ring blocks, int block) {
        for (int c = 0; c < Quantity.COUNT; c++) {
            if (!Double.isNaN(blocks.value(block, c))) {
                return true;
            }
        }
        return false;
    }

    /** Whether a movement that began in a block is the last change again, which had a name. */
    static boolean isReturn(FollowedChange change, FindingName name, int quantity, int direction, long earliest) {
        long length = change.closedAt - change.start;
        // What holds the water up and lets it go is a river, a screen or a pump downstream: it comes again.
        long window = name == FindingName.HELD_UP && !change.isWithinSeason()
                ? LONGEST_RETURN_BLOCKS
                : Math.max(RETURN_BLOCKS, Math.min(LONGEST_RETURN_BLOCKS, length + length / 2));
        return earliest - change.closedAt <= window
                && (quantity == change.channel && direction == change.sign
                        || !change.isWithinSeason() && alike(name, quantity, direction));
    }

    /**
     * Whether a movement is another side of what the last finding was called: water held up moves all but the flow, more
     * water all but the velocity at its depth.
     */
    private static boolean alike(FindingName name, int quantity, int direction) {
        int more = name == FindingName.MORE_WATER ? 1 : name == FindingName.LESS_WATER ? -1 : 0;
        if (more != 0) {
            return quantity != ChangeSeries.R && direction == more;
        }
        int upward = name == FindingName.HELD_UP ? 1 : name == FindingName.RELEASED ? -1 : 0;
        return upward != 0
                && quantity != Quantity.FLOW.ordinal()
                && direction == (quantity == ChangeSeries.D ? upward : -upward);
    }
}
