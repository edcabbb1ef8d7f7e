package dev.runnel.examples.review;

import dev.runnel.internal.SeriesArrays;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.util.OptionalDouble;

/**
 * The highest value that two readings in a row reached. What one reading alone has may be a short peak or a false echo that no
 * test could tell, so where the two differ both are said.
 */
final class InARow {
    /** Chosen here: by so much of itself the highest reading must be above it to be worth a word. */
    private static final double WORTH_SAYING = 0.1;

    private InARow() {}

    /** The larger of all that two usable readings in a row, with no gap between, both reach; NaN if there are none. */
    static double highest(Series series, Duration longestGap) {
        double[] usable = SeriesArrays.keeper().usableValues(series);
        double highest = Double.NaN;
        long gap = longestGap.toNanos();
        int before = -1;
        for (int i = 0; i < usable.length; i++) {
            if (Double.isNaN(usable[i])) {
                continue;
            }
            double both = before < 0 ? Double.NaN : Math.min(usable[before], usable[i]);
            // Hardly any is higher than all before it, so that few are asked when they were.
            boolean isHigher = both > highest || Double.isNaN(highest) && before >= 0;
            if (isHigher && series.epochNanos(i) - series.epochNanos(before) <= gap) {
                highest = both;
            }
            before = i;
        }
        return highest;
    }

    /** The value worth saying beside the highest reading: that of two in a row, where it is lower by a tenth of that. */
    static OptionalDouble beside(double reading, double inARow) {
        return reading - inARow > WORTH_SAYING * Math.abs(reading) ? OptionalDouble.of(inARow) : OptionalDouble.empty();
    }
}
