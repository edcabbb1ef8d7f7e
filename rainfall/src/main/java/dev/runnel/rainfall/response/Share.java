package dev.runnel.rainfall.response;

import dev.runnel.base.CompensatedSum;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;

/**
 * What of a record lies in a window, each step taken as steady.
 *
 * @param sum values times the share of their step that lies in the window
 * @param missing steps missing that share time with it
 */
record Share(double sum, int missing) {
    static Share of(RegularSeries series, Interval window) {
        long step = series.step().toNanos();
        long start = EpochNanos.of(series.start());
        long from = EpochNanos.of(window.start()) - start;
        long to = EpochNanos.of(window.end()) - start;
        int first = (int) Math.max(0, Math.floorDiv(from, step));
        int last = (int) Math.min(series.size(), Math.floorDiv(to + step - 1, step));
        CompensatedSum sum = new CompensatedSum();
        int missing = 0;
        for (int i = first; i < last; i++) {
            double value = series.value(i);
            if (Double.isNaN(value)) {
                missing++;
            } else {
                long inside = Math.min(to, step * (i + 1L)) - Math.max(from, step * i);
                sum.add(inside == step ? value : value * ((double) inside / step));
            }
        }
        return new Share(sum.value(), missing);
    }
}
