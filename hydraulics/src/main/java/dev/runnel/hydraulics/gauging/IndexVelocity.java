package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The mean velocity from the velocity that a fixed sensor reads, its index, by a straight line through gaugings: V = a + b V_i.
 * Immutable and thread-safe.
 *
 * <p>Ordinary least squares; the uncertainty of a prediction is that of the line and of one more gauging, as the linear theory
 * gives it. Source: the index-velocity method in the form of ISO 15769 (from memory); the statistics of ISO/TS 28037, annex E.
 *
 * <p>What it is not: valid beyond the gauged range, or after the sensor or the section has moved.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class IndexVelocity {
    private final FittedCalibration line;
    private final double lowest;
    private final double highest;

    private IndexVelocity(FittedCalibration line, double lowest, double highest) {
        this.line = line;
        this.lowest = lowest;
        this.highest = highest;
    }

    /**
     * Returns the line through gaugings.
     *
     * @param index velocities that the sensor read, m/s; in [-20, 20], at least 3
     * @param mean mean velocities of the gaugings, m/s; same length, in [-20, 20]
     * @return the line
     * @throws IllegalArgumentException if an array is outside its range or the index does not vary
     */
    public static IndexVelocity fitted(double[] index, double[] mean) {
        Objects.requireNonNull(index, "index");
        Objects.requireNonNull(mean, "mean");
        CalibrationData data = CalibrationData.of(index, mean);
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < index.length; i++) {
            Require.inRange("index[" + i + "]", index[i], -20, 20, "m/s");
            Require.inRange("mean[" + i + "]", mean[i], -20, 20, "m/s");
            lowest = Math.min(lowest, index[i]);
            highest = Math.max(highest, index[i]);
        }
        return new IndexVelocity(data.line(), lowest, highest);
    }

    /**
     * Returns the line with its statistics.
     *
     * @return a and b, their uncertainties, the residuals
     */
    public FittedCalibration line() {
        return line;
    }

    /**
     * Returns the mean velocity.
     *
     * @param index velocity that the sensor read, m/s; within the gauged range
     * @return mean velocity, m/s
     * @throws IllegalArgumentException if {@code index} is outside the gauged range or NaN
     */
    public double mean(double index) {
        return line.response(Require.inRange("index", index, lowest, highest, "m/s"));
    }

    /**
     * Returns the standard uncertainty of a mean velocity.
     *
     * @param index velocity that the sensor read, m/s; within the gauged range
     * @return that of the line and of one gauging together, m/s
     * @throws IllegalArgumentException if {@code index} is outside the gauged range or NaN
     */
    public double uncertainty(double index) {
        mean(index);
        return Math.hypot(line.responseUncertainty(index, 0), line.residualDeviation());
    }

    /**
     * Returns the factor at one velocity.
     *
     * @param index velocity that the sensor read, m/s; within the gauged range, greater than 0
     * @return V over index, with the uncertainty of the line
     * @throws IllegalArgumentException if {@code index} is outside its range
     */
    public VelocityFactor factorAt(double index) {
        Require.positive("index", index, "m/s");
        return new VelocityFactor(
                mean(index) / index, line.responseUncertainty(index, 0) / index, "index velocity, fitted");
    }

    @Override
    public String toString() {
        double[] c = line.coefficients();
        return "IndexVelocity[V = " + Text.significant(c[0], 4) + " + " + Text.significant(c[1], 4) + " Vi, "
                + Text.significant(lowest, 6) + " to " + Text.significant(highest, 6) + " m/s, residual "
                + Text.significant(line.residualDeviation(), 2) + " m/s]";
    }
}
