package dev.runnel.timeseries.change;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;

/** The one check of the values a line is laid through. */
final class LineInput {
    private LineInput() {}

    static void check(double[] times, double[] values, int most) {
        Require.inRange("number of values", values.length, 3, most, "");
        Require.sameLength("values", times.length, values.length);
        for (int i = 0; i < values.length; i++) {
            Require.finite("value", values[i], "");
            Require.finite("time", times[i], "");
            if (i > 0 && times[i] <= times[i - 1]) {
                throw new IllegalArgumentException("times must increase strictly, was " + Text.number(times[i])
                        + " at index " + i + " after " + Text.number(times[i - 1]));
            }
        }
    }
}
