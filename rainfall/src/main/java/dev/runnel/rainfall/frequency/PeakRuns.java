package dev.runnel.rainfall.frequency;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.Arrays;

/** The greatest value of each run of exceedances of a record, told from the one before by a time without exceedance. */
record PeakRuns(double[] peaks, int apartByGaps) {
    static PeakRuns of(RegularSeries values, double threshold, Duration separation) {
        long apart = EpochNanos.nonNegative("separation", separation);
        long step = values.step().toNanos();
        double[] peaks = new double[16];
        int count = 0;
        int apartByGaps = 0;
        long quiet = 0;
        long longGaps = 0;
        long gap = 0;
        for (int i = 0; i < values.size(); i++) {
            double value = values.value(i);
            if (Double.isNaN(value)) {
                gap += step;
                continue;
            }
            longGaps += gap >= apart ? gap : 0;
            gap = 0;
            if (!(value > threshold)) {
                quiet += step;
                continue;
            }
            boolean apartByQuiet = quiet > 0 && quiet >= apart;
            boolean apartByGap = !apartByQuiet && longGaps > 0;
            if (count == 0 || apartByQuiet || apartByGap) {
                apartByGaps += count > 0 && apartByGap ? 1 : 0;
                peaks = count == peaks.length ? Arrays.copyOf(peaks, 2 * count) : peaks;
                peaks[count++] = value;
            } else {
                peaks[count - 1] = Math.max(peaks[count - 1], value);
            }
            quiet = 0;
            longGaps = 0;
        }
        return new PeakRuns(Arrays.copyOf(peaks, count), apartByGaps);
    }
}
