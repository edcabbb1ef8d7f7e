package dev.runnel.verification.benchmark;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.SplittableRandom;

/** Invented rain of a year, one minute in twenty of it wet, in showers. */
final class InventedRain {
    static final int MINUTES = 525_600;

    private InventedRain() {}

    /** Depths of each minute, mm: showers of half an hour on average, a day and a half apart. */
    static double[] minutes(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] depths = new double[MINUTES];
        boolean wet = false;
        for (int i = 0; i < MINUTES; i++) {
            double chance = random.nextDouble();
            wet = wet ? chance > 1.0 / 30 : chance < 1.0 / 600;
            depths[i] = wet ? 0.01 * (1 + random.nextInt(20)) : 0;
        }
        return depths;
    }

    static RegularSeries series(double[] depths) {
        return RegularSeries.of(Instant.parse("2026-01-01T00:00:00Z"), Duration.ofMinutes(1), depths);
    }
}
