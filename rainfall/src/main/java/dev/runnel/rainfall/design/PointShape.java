package dev.runnel.rainfall.design;

import dev.runnel.internal.Interpolation;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;

/** Straight lines between points that are scaled to 1. */
record PointShape(double[] times, double[] shares) implements StormShape {
    static PointShape of(double[] times, double[] depths) {
        Require.atLeast("times", times.length, 2);
        Require.sameLength("depths", times.length, depths.length);
        for (int i = 0; i < times.length; i++) {
            Require.finite("times at index " + i, times[i], "");
            Require.finite("depths at index " + i, depths[i], "");
            if (i == 0 ? times[0] != 0 : !(times[i] > times[i - 1])) {
                throw refused("times", i, i == 0 ? "0" : "above " + Text.number(times[i - 1]), times[i]);
            }
            if (i == 0 ? depths[0] != 0 : !(depths[i] >= depths[i - 1])) {
                throw refused("depths", i, i == 0 ? "0" : "no less than " + Text.number(depths[i - 1]), depths[i]);
            }
        }
        int last = times.length - 1;
        Require.positive("last of depths", depths[last], "");
        return new PointShape(scaled(times, times[last]), scaled(depths, depths[last]));
    }

    private static IllegalArgumentException refused(String name, int index, String allowed, double value) {
        return new IllegalArgumentException(
                name + " at index " + index + " must be " + allowed + ", was " + Text.number(value));
    }

    private static double[] scaled(double[] values, double whole) {
        return Arrays.stream(values).map(value -> value / whole).toArray();
    }

    @Override
    public double depthShare(double fraction) {
        Require.inRange("fraction", fraction, 0, 1, "");
        return Interpolation.held(times, shares, fraction);
    }

    @Override
    public String toString() {
        return "StormShape[" + times.length + " points]";
    }
}
