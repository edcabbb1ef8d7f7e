package dev.runnel.hydraulics.monitoring;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * What a law gives at a level, looked up if it was asked for before. Loggers write levels to the millimetre, so that a year
 * has a few hundred different ones; where levels are all different it costs a comparison each. Not thread-safe.
 */
final class LevelMemory {
    private static final int PLACES = 1 << 11;

    /** Spreads the bits of numbers that differ little over the places: 2 to the power of 64 by the golden ratio. */
    private static final long SPREAD = 0x9E3779B97F4A7C15L;

    private static final long NO_LEVEL = Double.doubleToRawLongBits(Double.NaN);

    private final DoubleUnaryOperator law;
    private final long[] levels = new long[PLACES];
    private final double[] values = new double[PLACES];

    LevelMemory(DoubleUnaryOperator law) {
        this.law = law;
        Arrays.fill(levels, NO_LEVEL);
    }

    /** Returns the value at a level, bit for bit that of the law; the level is not NaN. */
    double at(double level) {
        long bits = Double.doubleToRawLongBits(level);
        int place = (int) (bits * SPREAD >>> 53);
        if (levels[place] != bits) {
            values[place] = law.applyAsDouble(level);
            levels[place] = bits;
        }
        return values[place];
    }
}
