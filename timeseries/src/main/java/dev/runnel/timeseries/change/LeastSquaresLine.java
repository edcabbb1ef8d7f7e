package dev.runnel.timeseries.change;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.apiguardian.api.API;

/**
 * The straight line of least squares over time, with limits of its slope: b ± t s<sub>b</sub>, t of Student with n − 2 degrees
 * of freedom, s<sub>b</sub>² = Σ e²/((n − 2) Σ (t − mean)²). The limits hold for independent normal deviations; one wild value
 * moves the line, where {@link TheilSen} and {@link RepeatedMedian} stay. Immutable and thread-safe.
 *
 * <p>Source: textbook regression, for example N. R. Draper and H. Smith (1998), Applied regression analysis, chapter 1 (from
 * memory).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class LeastSquaresLine {
    private static final int MOST = 100_000_000;

    /** Larger times and values would leave the range of a number in the square of the sum of their products; chosen here. */
    private static final double LARGEST = 1e70;

    /** Nearer to 1 the factor of Student grows beyond all use: 6e8 at 3 values here; chosen here. */
    private static final double LARGEST_CONFIDENCE = 1 - 1e-9;

    private final int count;
    private final double confidence;
    private final double slope;
    private final double intercept;
    private final double slopeStandardError;

    private LeastSquaresLine(double[] times, double[] values, double confidence) {
        this.count = values.length;
        this.confidence = confidence;
        SimpleRegression line = new SimpleRegression();
        for (int i = 0; i < count; i++) {
            line.addData(times[i], values[i]);
        }
        slope = line.getSlope();
        intercept = line.getIntercept();
        // Rounding may leave a sum of squares a hair below 0 where the line meets every value.
        slopeStandardError = Math.sqrt(Math.max(0, line.getSumSquaredErrors()) / (count - 2.0) / line.getXSumSquares());
    }

    /**
     * Fits a line to values.
     *
     * @param times times in any unit, in [-1e70, 1e70], strictly increasing; not modified
     * @param values in [-1e70, 1e70], at least 3; same length; not modified
     * @param confidence of the limits, greater than 0 and at most 1 - 1e-9, for example 0.95
     * @return the fit, its slope in the unit of the values over that of the times
     * @throws IllegalArgumentException if the lengths differ, the number of values or the confidence is out of range, a
     *     time does not increase, a number is out of range, or the times lie so close together that no slope can be told
     */
    public static LeastSquaresLine of(double[] times, double[] values, double confidence) {
        LineInput.check(times, values, MOST);
        Require.inRange("confidence", confidence, Double.MIN_VALUE, LARGEST_CONFIDENCE, "");
        for (int i = 0; i < values.length; i++) {
            Require.inRange("time", times[i], -LARGEST, LARGEST, "");
            Require.inRange("value", values[i], -LARGEST, LARGEST, "");
        }
        LeastSquaresLine line = new LeastSquaresLine(times, values, confidence);
        if (!Double.isFinite(line.slope) || !Double.isFinite(line.slopeStandardError)) {
            throw new IllegalArgumentException("times must lie farther apart for a slope, were " + Text.number(times[0])
                    + " to " + Text.number(times[times.length - 1]));
        }
        return line;
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
     * @return b, in the unit of the values over that of the times
     */
    public double slope() {
        return slope;
    }

    /**
     * Returns the value of the line at time 0.
     *
     * @return intercept, in the unit of the values
     */
    public double intercept() {
        return intercept;
    }

    /**
     * Returns the standard error of the slope.
     *
     * @return s<sub>b</sub>
     */
    public double slopeStandardError() {
        return slopeStandardError;
    }

    /**
     * Returns the lower confidence limit of the slope.
     *
     * @return lower limit
     */
    public double lower() {
        return slope - reach();
    }

    /**
     * Returns the upper confidence limit of the slope.
     *
     * @return upper limit
     */
    public double upper() {
        return slope + reach();
    }

    /** Its own accuracy of an inverse, 1e-9, would be that of the limits. */
    private TDistribution student() {
        return new TDistribution(null, count - 2.0, 1e-14);
    }

    private double reach() {
        return slopeStandardError * student().inverseCumulativeProbability(0.5 + 0.5 * confidence);
    }

    /**
     * Returns the probability of a slope at least as far from 0 if there is none, two-sided.
     *
     * @return p, in [0, 1]; 1 for a slope of exactly 0
     */
    public double pValue() {
        return slope == 0 ? 1 : 2 * student().cumulativeProbability(-Math.abs(slope / slopeStandardError));
    }

    /**
     * Returns the confidence of the limits.
     *
     * @return in (0, 1)
     */
    public double confidence() {
        return confidence;
    }

    @Override
    public String toString() {
        return "LeastSquaresLine[n " + count + ", slope " + Text.significant(slope, 4) + ", "
                + Text.significant(100 * confidence, 4) + " % limits " + Text.significant(lower(), 4) + " to "
                + Text.significant(upper(), 4) + ", intercept " + Text.significant(intercept, 4) + "]";
    }
}
