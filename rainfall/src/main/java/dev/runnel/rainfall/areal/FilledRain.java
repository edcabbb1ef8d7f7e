package dev.runnel.rainfall.areal;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import org.apiguardian.api.API;

/**
 * The record of a gauge whose gaps were filled from its neighbours. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class FilledRain {
    private final RegularSeries depth;
    private final boolean[] isEstimate;

    FilledRain(RegularSeries depth, boolean[] isEstimate) {
        this.depth = depth;
        this.isEstimate = isEstimate;
    }

    /**
     * Returns the depths, read and estimated.
     *
     * @return depth in each step, mm; NaN where too few neighbours had a value either
     */
    public RegularSeries depth() {
        return depth;
    }

    /**
     * Tells whether a step was filled.
     *
     * @param index position of the step
     * @return true if its depth is an estimate
     * @throws IndexOutOfBoundsException if there is no such step
     */
    public boolean isEstimate(int index) {
        return isEstimate[index];
    }

    /**
     * Returns the number of steps that were filled.
     *
     * @return count
     */
    public int filled() {
        int count = 0;
        for (boolean each : isEstimate) {
            count += each ? 1 : 0;
        }
        return count;
    }

    /**
     * Returns the rain in the steps that were filled.
     *
     * @return depth, mm
     */
    public double filledMm() {
        CompensatedSum sum = new CompensatedSum();
        for (int i = 0; i < isEstimate.length; i++) {
            sum.add(isEstimate[i] ? depth.value(i) : 0);
        }
        return sum.value();
    }

    /**
     * Returns the record with a quality for each step.
     *
     * @return depths at the starts of their steps, mm; those that were filled are {@link Quality#ESTIMATE}
     */
    public Series toSeries() {
        SeriesBuilder series = Series.builder();
        for (int i = 0; i < depth.size(); i++) {
            Reading reading = Reading.of(depth.time(i), depth.value(i));
            series.add(isEstimate[i] ? new Reading(reading.time(), reading.value(), Quality.ESTIMATE) : reading);
        }
        return series.build();
    }

    @Override
    public String toString() {
        return "FilledRain[" + depth.size() + " steps, " + filled() + " filled with " + Text.significant(filledMm(), 4)
                + " mm, " + depth.missing() + " missing]";
    }
}
