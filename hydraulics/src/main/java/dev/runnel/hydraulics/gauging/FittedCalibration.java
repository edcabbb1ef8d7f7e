package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apiguardian.api.API;

/**
 * A fitted calibration curve, y = a + b x (+ c x²), with the covariance of its coefficients. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class FittedCalibration {
    private final double[] coefficients;
    private final double[][] covariance;
    private final double chiSquared;
    private final int degreesOfFreedom;
    private final boolean uncertaintiesGiven;
    private final double[] residuals;

    FittedCalibration(
            double[] coefficients,
            double[][] covariance,
            double chiSquared,
            int degreesOfFreedom,
            boolean uncertaintiesGiven,
            double[] residuals) {
        this.coefficients = coefficients;
        this.covariance = covariance;
        this.chiSquared = chiSquared;
        this.degreesOfFreedom = degreesOfFreedom;
        this.uncertaintiesGiven = uncertaintiesGiven;
        this.residuals = residuals;
    }

    static double value(double[] coefficients, double x) {
        double sum = 0;
        for (int k = coefficients.length - 1; k >= 0; k--) {
            sum = sum * x + coefficients[k];
        }
        return sum;
    }

    static double slope(double[] coefficients, double x) {
        double sum = 0;
        for (int k = coefficients.length - 1; k > 0; k--) {
            sum = sum * x + k * coefficients[k];
        }
        return sum;
    }

    /**
     * Returns the coefficients.
     *
     * @return a, b and for a quadratic c; a new array
     */
    public double[] coefficients() {
        return coefficients.clone();
    }

    /**
     * Returns the covariance of two coefficients.
     *
     * @param i place of the one, 0 for a
     * @param k place of the other; the same for its variance
     * @return covariance
     * @throws IllegalArgumentException if there is no such coefficient
     */
    public double covariance(int i, int k) {
        Require.inRange("i", i, 0, coefficients.length - 1, "");
        Require.inRange("k", k, 0, coefficients.length - 1, "");
        return covariance[i][k];
    }

    /**
     * Returns the standard uncertainty of a coefficient.
     *
     * @param i its place, 0 for a
     * @return standard uncertainty
     * @throws IllegalArgumentException if there is no such coefficient
     */
    public double uncertainty(int i) {
        return Math.sqrt(covariance(i, i));
    }

    /**
     * Returns the sum of squares that the fit leaves: in units of the given uncertainties, or plain where none were given.
     *
     * @return χ², or the sum of squared residuals
     */
    public double chiSquared() {
        return chiSquared;
    }

    /**
     * Returns the count of pairs less the count of coefficients.
     *
     * @return degrees of freedom, 1 or more
     */
    public int degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /**
     * Returns the standard deviation of the residuals.
     *
     * @return √(sum of squares/degrees of freedom); near 1 where the given uncertainties are right
     */
    public double residualDeviation() {
        return Math.sqrt(chiSquared / degreesOfFreedom);
    }

    /**
     * Tells whether the curve and the given uncertainties agree: χ² is not above its 95 % quantile (ISO/TS 28037, 6.3).
     *
     * @return true if they agree; true also where no uncertainties were given, since then nothing can disagree
     */
    public boolean isConsistent() {
        return !uncertaintiesGiven
                || chiSquared <= new ChiSquaredDistribution(null, degreesOfFreedom).inverseCumulativeProbability(0.95);
    }

    /**
     * Returns what the curve leaves of each response, y − f(x).
     *
     * @return residuals; a new array
     */
    public double[] residuals() {
        return residuals.clone();
    }

    /**
     * Returns the response of a stimulus.
     *
     * @param stimulus x; finite
     * @return y
     * @throws IllegalArgumentException if {@code stimulus} is not finite
     */
    public double response(double stimulus) {
        return value(coefficients, Require.finite("stimulus", stimulus, ""));
    }

    /**
     * Returns the standard uncertainty of a response.
     *
     * @param stimulus x; finite
     * @param stimulusUncertainty u(x); 0 or greater, finite
     * @return u(y), from the coefficients and the stimulus
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public double responseUncertainty(double stimulus, double stimulusUncertainty) {
        Require.finite("stimulus", stimulus, "");
        Require.nonNegative("stimulusUncertainty", stimulusUncertainty, "");
        double ofStimulus = slope(coefficients, stimulus) * stimulusUncertainty;
        return Math.sqrt(ofCurve(stimulus) + ofStimulus * ofStimulus);
    }

    private double ofCurve(double x) {
        double sum = 0;
        for (int i = 0; i < coefficients.length; i++) {
            for (int k = 0; k < coefficients.length; k++) {
                sum += covariance[i][k] * Math.pow(x, i + k);
            }
        }
        return Math.max(0, sum);
    }

    /**
     * Returns the stimulus of a response: what the instrument saw when it read y.
     *
     * @param response y; finite, reached by the curve
     * @return x; of a quadratic the root on its main branch, where the slope has the sign of b
     * @throws IllegalArgumentException if {@code response} is not finite or the curve does not reach it
     */
    public double stimulus(double response) {
        Require.finite("response", response, "");
        double a = coefficients[0] - response;
        double b = coefficients[1];
        double c = coefficients.length > 2 ? coefficients[2] : 0;
        double root = Math.sqrt(b * b - 4 * a * c);
        // 2a/(-b -+ root) loses no digits and is -a/b for a line
        double x = -2 * a / (b + Math.copySign(root, b));
        if (!Double.isFinite(x)) {
            throw new IllegalArgumentException("response must be reached by the curve, was " + Text.number(response));
        }
        return x;
    }

    /**
     * Returns the standard uncertainty of a stimulus.
     *
     * @param response y; finite, reached by the curve
     * @param responseUncertainty u(y) of the new reading; 0 or greater, finite
     * @return u(x) = √(u²(y) + u²(curve))/|slope|
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public double stimulusUncertainty(double response, double responseUncertainty) {
        Require.nonNegative("responseUncertainty", responseUncertainty, "");
        double x = stimulus(response);
        return Math.sqrt(ofCurve(x) + responseUncertainty * responseUncertainty) / Math.abs(slope(coefficients, x));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FittedCalibration that
                && Arrays.equals(coefficients, that.coefficients)
                && Arrays.deepEquals(covariance, that.covariance)
                && Arrays.equals(residuals, that.residuals);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(coefficients);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("FittedCalibration[");
        String[] names = {"a", "b", "c"};
        for (int i = 0; i < coefficients.length; i++) {
            text.append(names[i])
                    .append(" = ")
                    .append(Text.significant(coefficients[i], 5))
                    .append(" ± ")
                    .append(Text.significant(uncertainty(i), 2))
                    .append(", ");
        }
        return text.append(uncertaintiesGiven ? "chi2 " : "sum of squares ")
                .append(Text.significant(chiSquared, 4))
                .append(" for ")
                .append(degreesOfFreedom)
                .append(" degrees of freedom]")
                .toString();
    }
}
