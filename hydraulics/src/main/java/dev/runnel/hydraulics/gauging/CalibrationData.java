package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * Pairs of a calibration, stimulus x and response y, and the curves y = a + b x (+ c x²) that fit them. Immutable and thread-safe.
 *
 * <ul>
 *   <li>no uncertainties given: ordinary least squares, the common variance from the residuals
 *   <li>u(y) given: weighted least squares, weights 1/u²
 *   <li>u(x) too: least sum of ((x − ξ)/u(x))² + ((y − f(ξ))/u(y))² over the coefficients and the true stimuli ξ, by Gauss and
 *       Newton, which for a line is the generalised distance regression of the standard
 * </ul>
 *
 * <p>Source: ISO/TS 28037 (2010), Determination and use of straight-line calibration functions, clauses 6 and 7 and annex E; the
 * quadratic is the same method with one more coefficient (chosen here).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CalibrationData {
    private static final int MOST = 100_000;

    private final double[] x;
    private final double[] y;
    private final double[] ux;
    private final double[] uy;

    private CalibrationData(double[] x, double[] y, double[] ux, double[] uy) {
        this.x = x;
        this.y = y;
        this.ux = ux;
        this.uy = uy;
    }

    /**
     * Returns pairs without uncertainties.
     *
     * @param stimulus x, in any unit; 3 to 100,000 finite values; copied
     * @param response y, in any unit; same length, finite; copied
     * @return the pairs
     * @throws IllegalArgumentException if an array is outside its range; the message names the index
     */
    public static CalibrationData of(double[] stimulus, double[] response) {
        Require.inRange("count of pairs", stimulus.length, 3, MOST, "");
        Require.sameLength("response", stimulus.length, response.length);
        for (int i = 0; i < stimulus.length; i++) {
            Require.inRange("stimulus[" + i + "]", stimulus[i], -1e100, 1e100, "");
            Require.inRange("response[" + i + "]", response[i], -1e100, 1e100, "");
        }
        return new CalibrationData(stimulus.clone(), response.clone(), new double[0], new double[0]);
    }

    /**
     * Returns a copy with one standard uncertainty for all responses.
     *
     * @param uncertainty u(y), in the unit of y; greater than 0, finite
     * @return the copy
     * @throws IllegalArgumentException if {@code uncertainty} is outside its range
     */
    public CalibrationData withResponseUncertainty(double uncertainty) {
        return withResponseUncertainty(repeated(uncertainty));
    }

    /**
     * Returns a copy with the standard uncertainty of each response.
     *
     * @param uncertainty u(y), in the unit of y; as many as pairs, greater than 0, finite; copied
     * @return the copy
     * @throws IllegalArgumentException if {@code uncertainty} is outside its range
     */
    public CalibrationData withResponseUncertainty(double[] uncertainty) {
        return new CalibrationData(x, y, ux, checked(uncertainty, Double.MIN_NORMAL));
    }

    /**
     * Returns a copy with one standard uncertainty for all stimuli.
     *
     * @param uncertainty u(x), in the unit of x; 0 or greater, finite
     * @return the copy
     * @throws IllegalArgumentException if {@code uncertainty} is outside its range, or the responses have none
     */
    public CalibrationData withStimulusUncertainty(double uncertainty) {
        return withStimulusUncertainty(repeated(uncertainty));
    }

    /**
     * Returns a copy with the standard uncertainty of each stimulus.
     *
     * @param uncertainty u(x), in the unit of x; as many as pairs, 0 or greater, finite; copied
     * @return the copy
     * @throws IllegalArgumentException if {@code uncertainty} is outside its range, or the responses have none
     */
    public CalibrationData withStimulusUncertainty(double[] uncertainty) {
        if (uy.length == 0) {
            throw new IllegalArgumentException("uncertainty of the responses must be given before that of the stimuli");
        }
        return new CalibrationData(x, y, checked(uncertainty, 0), uy);
    }

    private double[] repeated(double value) {
        double[] all = new double[x.length];
        Arrays.fill(all, value);
        return all;
    }

    private double[] checked(double[] uncertainty, double least) {
        Require.sameLength("uncertainty", x.length, uncertainty.length);
        for (int i = 0; i < uncertainty.length; i++) {
            if (!(uncertainty[i] >= least && uncertainty[i] <= 1e100)) {
                throw new IllegalArgumentException("uncertainty[" + i + "] must be "
                        + (least > 0 ? "greater than 0" : "0 or greater") + " and finite, was "
                        + Text.number(uncertainty[i]));
            }
        }
        return uncertainty.clone();
    }

    /**
     * Returns the straight line.
     *
     * @return the line y = a + b x
     * @throws IllegalArgumentException if the stimuli do not determine it
     */
    public FittedCalibration line() {
        return fitted(1);
    }

    /**
     * Returns the quadratic.
     *
     * @return the curve y = a + b x + c x²
     * @throws IllegalArgumentException if there are fewer than 4 pairs or the stimuli do not determine it
     */
    public FittedCalibration quadratic() {
        Require.atLeast("count of pairs", x.length, 4);
        return fitted(2);
    }

    private FittedCalibration fitted(int degree) {
        return PolynomialFit.of(x, y, ux, uy, degree);
    }

    @Override
    public String toString() {
        return "CalibrationData[" + x.length + " pairs" + (uy.length == 0 ? "" : ", u(y) given")
                + (ux.length == 0 ? "" : ", u(x) given") + "]";
    }
}
