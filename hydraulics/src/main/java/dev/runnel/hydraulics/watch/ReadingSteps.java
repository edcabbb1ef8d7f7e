package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.Arrays;

/** How a level goes from one reading to the next: the largest step of an hour that stays, and its largest leap as a factor. */
final class ReadingSteps {
    /** Readings on both sides of a step whose medians show it. */
    private static final int SIDE = 3;

    /** Levels farther apart in time make no step from one reading to the next; chosen here. */
    private static final long LONGEST = SiteHour.NANOS / 2;

    /** Levels up to this tell no factor, m. */
    private final double least;

    private double lastDepth = Double.NaN;
    private long lastDepthAt;

    /** The last levels, one after the other, and their stamps. */
    private final double[] near = new double[2 * SIDE];

    private final long[] nearAt = new long[2 * SIDE];
    private int nearCount;

    ReadingSteps(double least) {
        this.least = least;
    }

    /** A reading that tells no level: the next has none before it. */
    void unknown(SiteHour hour) {
        lastDepth = Double.NaN;
        hour.alone++;
    }

    /**
     * Holds a level against the last ones.
     *
     * @param level water level, m
     * @param depth the same as it was read, without the offset of the sensor, m
     */
    void add(SiteHour hour, long time, double level, double depth) {
        if (!(depth > least && lastDepth > least && time - lastDepthAt <= LONGEST)) {
            hour.alone++;
            nearCount = 0;
        } else if (depth != lastDepth) {
            hour.leap = Math.max(hour.leap, depth > lastDepth ? depth / lastDepth : lastDepth / depth);
        }
        lastDepth = depth;
        lastDepthAt = time;
        if (!(depth > least)) {
            return;
        }
        if (nearCount == near.length) {
            System.arraycopy(near, 1, near, 0, near.length - 1);
            System.arraycopy(nearAt, 1, nearAt, 0, near.length - 1);
            nearCount--;
        }
        near[nearCount] = level;
        nearAt[nearCount++] = time;
        double step = near[SIDE] - near[SIDE - 1];
        // The first step of an hour is larger than none.
        if (nearCount == near.length && !(Math.abs(step) <= Math.abs(hour.step))) {
            stays(hour, step);
        }
    }

    /** A single wild reading moves no median of three. */
    private void stays(SiteHour hour, double step) {
        double before = middle(near[0], near[1], near[2]);
        double moved = middle(near[SIDE], near[SIDE + 1], near[SIDE + 2]) - before;
        double stays = step * moved > 0 ? Math.signum(step) * Math.min(Math.abs(step), Math.abs(moved)) : 0;
        if (!(Math.abs(stays) <= Math.abs(hour.step))) {
            hour.step = stays;
            hour.stepFromLevel = before;
            hour.stepFrom = nearAt[SIDE - 1];
            hour.stepTo = nearAt[SIDE];
        }
    }

    private static double middle(double a, double b, double c) {
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }

    void write(StateText text, SiteHour hour) {
        text.with("lastDepth", lastDepth)
                .with("lastDepthAt", lastDepthAt)
                .with("near", Arrays.copyOf(near, nearCount))
                .with("nearAt", Arrays.copyOf(nearAt, nearCount))
                .with("step", hour.step)
                .with("stepFromLevel", hour.stepFromLevel)
                .with("stepTimes", new long[] {hour.stepFrom, hour.stepTo})
                .with("leap", hour.leap)
                .with("alone", hour.alone);
    }

    void read(StateText text, SiteHour hour) {
        // Not in states of before.
        if (!text.has("lastDepth")) {
            return;
        }
        lastDepth = text.number("lastDepth");
        lastDepthAt = text.count("lastDepthAt");
        long[] stamps = text.counts("nearAt");
        double[] levels = text.numbers("near", stamps.length);
        nearCount = Math.min(near.length, stamps.length);
        System.arraycopy(levels, 0, near, 0, nearCount);
        System.arraycopy(stamps, 0, nearAt, 0, nearCount);
        hour.step = text.number("step");
        hour.stepFromLevel = text.number("stepFromLevel");
        long[] times = text.counts("stepTimes", 2);
        hour.stepFrom = times[0];
        hour.stepTo = times[1];
        hour.leap = text.number("leap");
        hour.alone = text.index("alone");
    }
}
