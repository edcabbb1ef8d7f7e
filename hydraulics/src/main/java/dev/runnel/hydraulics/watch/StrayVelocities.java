package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.Arrays;

/**
 * Counts the velocities that stand far above or far below most of those before them and come back within a few readings, as readings
 * that are doubled or aliased do. Hours tell nothing of these: of four readings two may be doubled.
 */
final class StrayVelocities {
    // Chosen here, as all limits of this class: so many readings before say where most lie, and so few are enough.
    private static final int KEPT = 48;
    private static final int LEAST = 12;

    /** How far a velocity must stand from the median of these, as a factor, and how near it is back: a step is not back. */
    private static final double FACTOR = 1.35;

    private static final double NEAR = 1.15;

    /** Water whose level moves by this factor meanwhile is a storm, and no stray velocity. */
    private static final double MOVED = 1.15;

    /** What stays away for more readings, or for longer, is another velocity and no stray one. */
    private static final int LONGEST_RUN = 12;

    private static final long LONGEST = 3 * SiteHour.NANOS;

    /** Velocities over depth to the power of two thirds, that of a wide channel: the course of the day leaves little in it. */
    private final double[] kept = new double[KEPT];

    private final double[] sorted = new double[KEPT];
    private int count;
    private int next;
    private long last;

    /** Readings that stand away, up above 0 and down below, and since when. */
    private int run;

    private long runFrom;

    /** The level before them. */
    private double levelBefore;

    void add(SiteHour hour, long time, double level, double velocity) {
        double value = velocity / Math.cbrt(level * level);
        if (count > 0 && time - last > LONGEST) {
            count = 0;
            next = 0;
            run = 0;
        }
        last = time;
        if (count >= LEAST) {
            hour.held++;
            judge(hour, time, value, level);
        }
        levelBefore = run == 0 ? level : levelBefore;
        keep(value);
    }

    private void judge(SiteHour hour, long time, double value, double level) {
        double median = count % 2 == 1 ? sorted[count / 2] : (sorted[count / 2 - 1] + sorted[count / 2]) / 2;
        int way = way(value, median);
        if (way * run <= 0) {
            end(hour, time);
            runFrom = time;
        }
        run += way;
        if (run != 0 && (level > MOVED * levelBefore || MOVED * level < levelBefore)) {
            run = way * (LONGEST_RUN + 1);
        }
    }

    /** 1 up, −1 down; what is neither far nor near stays where it was. */
    private int way(double value, double median) {
        if (value > (run > 0 ? NEAR : FACTOR) * median) {
            return 1;
        }
        return (run < 0 ? NEAR : FACTOR) * value < median ? -1 : 0;
    }

    /** What has come back was stray. */
    private void end(SiteHour hour, long time) {
        if (Math.abs(run) <= LONGEST_RUN && time - runFrom <= LONGEST) {
            hour.strayHigh += Math.max(0, run);
            hour.strayLow += Math.max(0, -run);
        }
        run = 0;
    }

    private void keep(double value) {
        if (count == KEPT) {
            int at = Arrays.binarySearch(sorted, kept[next]);
            System.arraycopy(sorted, at + 1, sorted, at, KEPT - 1 - at);
            count--;
        }
        int at = Arrays.binarySearch(sorted, 0, count, value);
        at = at < 0 ? -1 - at : at;
        System.arraycopy(sorted, at, sorted, at + 1, count - at);
        sorted[at] = value;
        count++;
        kept[next] = value;
        next = (next + 1) % KEPT;
    }

    void write(StateText text, SiteHour hour) {
        double[] inOrder = new double[count];
        for (int i = 0; i < count; i++) {
            inOrder[i] = kept[Math.floorMod(next - count + i, KEPT)];
        }
        text.with("strayKept", inOrder)
                .with("strayLevel", levelBefore)
                .with("stray", new long[] {last, runFrom, run, hour.held, hour.strayHigh, hour.strayLow});
    }

    void read(StateText text, SiteHour hour) {
        for (double value : text.numbers("strayKept")) {
            keep(value);
        }
        levelBefore = text.number("strayLevel");
        long[] held = text.counts("stray", 6);
        last = held[0];
        runFrom = held[1];
        run = (int) held[2];
        hour.held = (int) held[3];
        hour.strayHigh = (int) held[4];
        hour.strayLow = (int) held[5];
    }
}
