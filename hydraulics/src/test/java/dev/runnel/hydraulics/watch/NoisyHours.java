package dev.runnel.hydraulics.watch;

import java.util.Random;

/** Hours of which velocity at its depth, depth and velocity stand so far from usual, ln, and scatter by 2 %. */
final class NoisyHours {
    private final Random random;
    private long hour;

    NoisyHours(long seed, long hour) {
        this.random = new Random(seed);
        this.hour = hour;
    }

    void days(ChangeWatch watch, int days, double r, double d, double u) {
        for (int i = 0; i < 24 * days; i++) {
            double depth = d + 0.02 * random.nextGaussian();
            double velocity = u + 0.02 * random.nextGaussian();
            double ratio = r + 0.02 * random.nextGaussian();
            watch.hour(hour, ratio, depth, velocity, 1.5 * depth + velocity, ratio);
            if (Math.floorMod(++hour, (long) ChangeSeries.BLOCK_HOURS) == 0) {
                watch.block(ChangeSeries.blockOf(hour - 1));
            }
        }
    }
}
