package dev.runnel.timeseries.change;

import dev.runnel.internal.Text;

/** The windows over the values of an array that are there. */
final class Windows {
    private Windows() {}

    /** Takes each full window. */
    interface Taker {
        /** Takes a window and the index of the value in its middle. */
        void take(SortedWindow window, int index);
    }

    /** Moves a window over the values; NaN is left out. */
    static void over(double[] values, int half, Taker taker) {
        SortedWindow window = new SortedWindow(half);
        // The middle follows the end by half values that are there.
        int middle = -1;
        for (int i = 0; i < values.length; i++) {
            double value = values[i];
            if (!(Math.abs(value) <= Double.MAX_VALUE)) {
                if (Double.isNaN(value)) {
                    continue;
                }
                throw new IllegalArgumentException(
                        "values[" + i + "] must be finite, or NaN for missing, was " + Text.number(value));
            }
            window.add(value);
            if (window.size() > half) {
                do {
                    middle++;
                } while (Double.isNaN(values[middle]));
            }
            if (window.isFull()) {
                taker.take(window, middle);
            }
        }
    }
}
