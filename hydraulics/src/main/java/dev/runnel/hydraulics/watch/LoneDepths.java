package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;

/** Counts the levels that leap away from the one before and back again with the next, as false echoes do and water does not. */
final class LoneDepths {
    /** How far a level must stand from both neighbours, as a factor and in m: a noisy sensor in shallow water stays below; chosen here. */
    private static final double FACTOR = 1.25;

    private static final double LEAST_STEP = 0.02;

    /** Levels farther apart in time are no neighbours, water may come and go between them; chosen here. */
    private static final long LONGEST = SiteHour.NANOS / 3;

    private double last = Double.NaN;
    private long lastAt;

    /** Which way the last level leapt: 1 up, −1 down, 0 not at all. */
    private int way;

    void add(SiteHour hour, long time, double level) {
        boolean near = !Double.isNaN(last) && time - lastAt <= LONGEST;
        int leapt = near ? leap(level) : 0;
        hour.compared += near ? 1 : 0;
        hour.lone += leapt * way < 0 ? 1 : 0;
        way = leapt;
        last = level;
        lastAt = time;
    }

    private int leap(double level) {
        double higher = Math.max(level, last);
        double lower = Math.min(level, last);
        if (higher - lower < LEAST_STEP || higher < FACTOR * lower) {
            return 0;
        }
        return level > last ? 1 : -1;
    }

    void write(StateText text, SiteHour hour) {
        text.with("lone", new double[] {last, way, hour.compared, hour.lone}).with("loneAt", lastAt);
    }

    void read(StateText text, SiteHour hour) {
        double[] held = text.numbers("lone", 4);
        last = held[0];
        way = (int) held[1];
        hour.compared = (int) held[2];
        hour.lone = (int) held[3];
        lastAt = text.count("loneAt");
    }
}
