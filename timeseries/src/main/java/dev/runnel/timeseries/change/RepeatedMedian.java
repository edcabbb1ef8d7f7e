package dev.runnel.timeseries.change;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Statistics;
import org.apiguardian.api.API;

/**
 * Siegel's slope: for each value the median of its slopes to all others, and of these the median. Nearly half of the values may
 * be wild, where {@link TheilSen} bears 29 % of them. Immutable and thread-safe. Takes time in proportion to n² log n.
 *
 * <p>Source: A. F. Siegel (1982), Robust regression using repeated medians, Biometrika 69(1), 242-244 (from memory).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RepeatedMedian {
    private static final int MOST = 5000;

    private final int count;
    private final double slope;
    private final double intercept;

    private RepeatedMedian(double[] times, double[] values) {
        count = values.length;
        double[] medians = new double[count];
        double[] slopes = new double[count - 1];
        for (int i = 0; i < count; i++) {
            int at = 0;
            for (int j = 0; j < count; j++) {
                if (j != i) {
                    slopes[at++] = (values[j] - values[i]) / (times[j] - times[i]);
                }
            }
            medians[i] = Statistics.of(slopes).median();
        }
        slope = Statistics.of(medians).median();
        double[] intercepts = new double[count];
        for (int i = 0; i < count; i++) {
            intercepts[i] = values[i] - slope * times[i];
        }
        intercept = Statistics.of(intercepts).median();
    }

    /**
     * Fits a line to values.
     *
     * @param times times in any unit, finite, strictly increasing; not modified
     * @param values finite values, 3 to 5000; same length; not modified
     * @return the fit, its slope in the unit of the values over that of the times
     * @throws IllegalArgumentException if the lengths differ, the number of values is out of range, a time does not increase,
     *     or a number is not finite
     */
    public static RepeatedMedian of(double[] times, double[] values) {
        LineInput.check(times, values, MOST);
        return new RepeatedMedian(times, values);
    }

    /**
     * Returns the number of values.
     *
     * @return n
     */
    public int count() {
        return count;
    }

    /**
     * Returns the slope.
     *
     * @return repeated median of the slopes
     */
    public double slope() {
        return slope;
    }

    /**
     * Returns the value of the line at time 0.
     *
     * @return median of value minus slope times time, in the unit of the values
     */
    public double intercept() {
        return intercept;
    }

    @Override
    public String toString() {
        return "RepeatedMedian[n " + count + ", slope " + Text.significant(slope, 4) + ", intercept "
                + Text.significant(intercept, 4) + "]";
    }
}
