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

    /** Levels held against each other. */
    private static final int HELD = 2 * SIDE;

    /** Room to go on in before the last levels are moved back to its beginning. */
    private static final int ROOM = 8 * HELD;

    /** The last levels, one after the other, and their stamps: from a place on, so many. */
    private final double[] near = new double[ROOM];

    private final long[] nearAt = new long[ROOM];
    private int nearFrom;
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
        if (nearCount == HELD) {
            nearFrom++;
            nearCount--;
        }
        if (nearFrom + nearCount == ROOM) {
            System.arraycopy(near, nearFrom, near, 0, nearCount);
            System.arraycopy(nearAt, nearFrom, nearAt, 0, nearCount);
            nearFrom = 0;
        }
        near[nearFrom + nearCount] = level;
        nearAt[nearFrom + nearCount++] = time;
        if (nearCount < HELD) {
            return;
        }
        double step = near[nearFrom + SIDE] - near[nearFrom + SIDE - 1];
        // The first step of an hour is larger than none.
        if (!(Math.abs(step) <= Math.abs(hour.step))) {
            stays(hour, step);
        }
    }

    /** A single wild reading moves no median of three. */
    private void stays(SiteHour hour, double step) {
        double before = middle(nearFrom);
        double moved = middle(nearFrom + SIDE) - before;
        double stays = step * moved > 0 ? Math.signum(step) * Math.min(Math.abs(step), Math.abs(moved)) : 0;
        if (!(Math.abs(stays) <= Math.abs(hour.step))) {
            hour.step = stays;
            hour.stepFromLevel = before;
            hour.stepFrom = nearAt[nearFrom + SIDE - 1];
            hour.stepTo = nearAt[nearFrom + SIDE];
        }
    }

    private double middle(int from) {
        double a = near[from];
        double b = near[from + 1];
        double c = near[from + 2];
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }

    void write(StateText text, SiteHour hour) {
        text.with("lastDepth", lastDepth)
                .with("lastDepthAt", lastDepthAt)
                .with("near", Arrays.copyOfRange(near, nearFrom, nearFrom + nearCount))
                .with("nearAt", Arrays.copyOfRange(nearAt, nearFrom, nearFrom + nearCount))
                .with("step", hour.step)
                .with("stepFromLevel", hour.stepFromLevel)
                .with("stepTimes", new long[] {hour.stepFrom, hour.stepTo})
                .with("leap", hour.leap)
                .with("alone", hour.alone);
    }

    void read(StateText text, SiteHour hour) {
        lastDepth = text.number("lastDepth");
        lastDepthAt = text.count("lastDepthAt");
        long[] stamps = text.counts("nearAt");
        double[] levels = text.numbers("near", stamps.length);
        nearCount = Math.min(HELD, stamps.length);
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
