package dev.runnel.rainfall.internal;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import org.apiguardian.api.API;

/**
 * What of a record lies in a window, each step taken as steady.
 *
 * @param sum values times the share of their step that lies in the window
 * @param missingSteps steps missing that share time with it
 * @param unknown time of the window of which the record says nothing: missing steps, and what lies outside the record
 */
@API(status = API.Status.INTERNAL)
public record Share(double sum, int missingSteps, Duration unknown) {
    /**
     * Returns the share of a window.
     *
     * @param series the record, NaN for missing
     * @param window the window; may reach beyond the record
     * @return its share
     */
    public static Share of(RegularSeries series, Interval window) {
        return of(series, EpochNanos.of(window.start()), EpochNanos.of(window.end()));
    }

    /**
     * Returns the share of a window.
     *
     * @param series the record, NaN for missing
     * @param windowStart start of the window, ns since 1970; the window may reach beyond the record
     * @param windowEnd its end, ns since 1970; not before the start
     * @return its share
     */
    public static Share of(RegularSeries series, long windowStart, long windowEnd) {
        long step = series.step().toNanos();
        long start = EpochNanos.of(series.start());
        long from = windowStart - start;
        long to = windowEnd - start;
        int last = (int) Math.min(series.size(), Math.floorDiv(to + step - 1, step));
        CompensatedSum sum = new CompensatedSum();
        int missing = 0;
        long known = 0;
        for (int i = (int) Math.max(0, Math.floorDiv(from, step)); i < last; i++) {
            double value = series.value(i);
            if (Double.isNaN(value)) {
                missing++;
            } else {
                long inside = Math.min(to, step * (i + 1L)) - Math.max(from, step * i);
                sum.add(inside == step ? value : value * ((double) inside / step));
                known += inside;
            }
        }
        return new Share(sum.value(), missing, Duration.ofNanos(to - from - known));
    }
}
