package dev.runnel.hydraulics.evidence;

/** Counts how often what moved falls back to usual and stays there for some blocks. */
final class Falls {
    /** A finding of two scales falls back when two blocks are below the smaller share of it, after one above the larger;
     * chosen here. */
    private static final double RECUR_SCALES = 2;

    private static final int RECUR_BLOCKS = 2;
    private static final double RISEN_SHARE = 0.35;
    private static final double FALLEN_SHARE = 0.12;

    private Falls() {}

    /** Looks at the last block. */
    static void count(ChangeSeries series, FollowedChange change, long end, Track open) {
        Ring blocks = series.blocks;
        int last = blocks.size() - 1;
        if (Double.isNaN(blocks.value(last, change.channel))) {
            return;
        }
        // What hardly leaves the scatter comes and goes by itself, and water and days differ by the week.
        if (change.largest < RECUR_SCALES || change.channel != ChangeSeries.R && series.scale(ChangeSeries.R) > 0) {
            return;
        }
        // What rose high has not fallen before most of that is gone, and has not risen again before much of it is back.
        if (!change.risen) {
            change.risen = change.sign * blocks.value(last, change.channel) / series.scale(change.channel)
                    > Math.max(ChangeSums.SLACK, RISEN_SHARE * change.largest);
            return;
        }
        double fallen = Math.max(ChangeEnd.FOUND, FALLEN_SHARE * change.largest);
        int low = 0;
        for (int i = last; i >= 0 && low < RECUR_BLOCKS; i--) {
            double x = blocks.value(i, change.channel);
            if (!Double.isNaN(x) && !(change.sign * x / series.scale(change.channel) < fallen)) {
                return;
            }
            low += Double.isNaN(x) ? 0 : 1;
        }
        if (low >= RECUR_BLOCKS) {
            change.risen = false;
            open.falls.add(end);
        }
    }
}
