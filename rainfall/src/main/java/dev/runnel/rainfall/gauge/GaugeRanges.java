package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;

/**
 * Ranges that no rain gauge leaves, so that a slip of the unit or of the decimal point is refused. They are wide on purpose
 * (common practice): buckets in use tip at 0.1 to 1 mm, funnels have 200 to 1000 cm², lost times are about half a second.
 */
final class GaugeRanges {
    private GaugeRanges() {}

    static double tip(String name, double mm) {
        return Require.inRange(name, mm, 0.01, 5, "mm");
    }

    static double funnel(String name, double cm2) {
        return Require.inRange(name, cm2, 20, 10_000, "cm2");
    }

    static double lostTime(String name, double seconds) {
        return Require.inRange(name, seconds, 0, 5, "s");
    }
}
