package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;

/**
 * The lowest water of two tides: where the sea holds the sewer up twice a day, the hours of the day say nothing of the level,
 * but the ebb lets it fall to what the sewer itself does, and what stays away from that is no tide.
 */
final class LowWater {
    /** Two tides of 12.42 h. */
    private static final int HOURS = 25;

    /** Fewest of these hours with a level: fewer may have missed the ebb; chosen here. */
    private static final int LEAST = 20;

    private final Ring hours = new Ring(HOURS, 2);
    private double lnDepth = Double.NaN;
    private double lnVelocity = Double.NaN;

    /** Takes an hour; NaN for what is not known of it. */
    void add(long hour, double depth, double velocity) {
        lnDepth = Double.NaN;
        lnVelocity = Double.NaN;
        if (!Double.isNaN(depth)) {
            hours.add(hour, depth, velocity);
        }
        hours.dropBefore(hour - HOURS + 1);
        if (Double.isNaN(depth) || hours.size() < LEAST) {
            return;
        }
        lnDepth = Double.POSITIVE_INFINITY;
        for (int i = 0; i < hours.size(); i++) {
            if (hours.value(i, 0) < lnDepth) {
                lnDepth = hours.value(i, 0);
                lnVelocity = hours.value(i, 1);
            }
        }
    }

    /** Forgets what was read from an hour on. */
    void dropFrom(long hour) {
        hours.dropFrom(hour);
    }

    /** The lowest ln level of the last 25 hours; NaN if too few are known, or the hour just added is not. */
    double lnDepth() {
        return lnDepth;
    }

    /** ln velocity of the same hour. */
    double lnVelocity() {
        return lnVelocity;
    }

    /** What the dry hours of a stretch leave over of the medians of their lowest water, and these medians. */
    static final class Learned {
        final double[] d;
        final double[] u;
        final double lnDepth;
        final double lnVelocity;

        Learned(StretchHours of) {
            d = of.nan();
            u = of.nan();
            LowWater low = new LowWater();
            for (int i = 0; i < of.size; i++) {
                low.add(of.hours[i], of.lnDepth[i], of.lnVelocity[i]);
                if (of.dry[i]) {
                    d[i] = low.lnDepth;
                    u[i] = low.lnVelocity;
                }
            }
            lnDepth = Medians.of(d);
            lnVelocity = Medians.of(u);
            for (int i = 0; i < of.size; i++) {
                d[i] -= lnDepth;
                u[i] -= lnVelocity;
            }
        }
    }

    void write(StateText text) {
        hours.write(text, "lowWater");
    }

    void read(StateText text) {
        hours.read(text, "lowWater");
    }
}
