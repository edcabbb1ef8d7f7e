package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;

/**
 * A level that stepped from one reading to the next.
 *
 * @param step step of the level, m
 * @param fromLevel level before it, m
 * @param from stamp of the reading before it, ns
 * @param to stamp of the reading after it, ns
 */
record DepthJump(double step, double fromLevel, long from, long to) {
    private static final int MILLIMETRES = 1000;

    /** The step of the largest one of an hour. */
    static DepthJump of(SiteHour hour) {
        return new DepthJump(hour.step, hour.stepFromLevel, hour.stepFrom, hour.stepTo);
    }

    /** Hour of the reading after it, since 1970. */
    long hour() {
        return Math.floorDiv(to, SiteHour.NANOS);
    }

    int sign() {
        return step > 0 ? 1 : -1;
    }

    /** The step of ln y; without end for a level that is gone. */
    double ln() {
        return Math.log((fromLevel + step) / fromLevel);
    }

    /**
     * How it is told.
     *
     * @param usual largest step that is usual, m
     * @param alone whether no velocity is known beside it
     */
    String describe(double usual, boolean alone) {
        return "the depth stepped by " + (step > 0 ? "+" : "-") + Text.fixed(MILLIMETRES * Math.abs(step), 0)
                + " mm from one reading to the next"
                + (alone ? ", in dry weather" : ", in dry weather, and the velocity did not")
                + "; up to " + Text.fixed(MILLIMETRES * usual, 0) + " mm are usual";
    }

    void write(StateText text, String key) {
        text.with(key + "Step", new double[] {step, fromLevel}).with(key + "Times", new long[] {from, to});
    }

    static DepthJump read(StateText text, String key) {
        double[] levels = text.numbers(key + "Step", 2);
        long[] times = text.counts(key + "Times", 2);
        return new DepthJump(levels[0], levels[1], times[0], times[1]);
    }
}
