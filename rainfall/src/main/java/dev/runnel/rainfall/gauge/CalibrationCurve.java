package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A curve of true intensity I over recorded intensity I<sub>r</sub>, both mm/h: linear a + b I<sub>r</sub>, quadratic
 * a + b I<sub>r</sub> + c I<sub>r</sub>², or power a I<sub>r</sub><sup>b</sup>. Immutable and thread-safe.
 *
 * <p>The forms are those of the WMO laboratory comparison of rainfall intensity gauges (Lanza and others 2005; forms
 * quoted from memory). Coefficients come from a test of the very gauge; none are built in.
 *
 * <p>A curve is given with the range of recorded intensity in which it was measured, from I<sub>r0</sub> on. Above it the
 * factor I/I<sub>r</sub> of the limit is used. Below it the curve says nothing: the intercept of a straight line is not rain that
 * fell through a dry month. What is lost while the bucket moves goes to 0 there, in proportion to intensity, and what
 * is left is the static calibration. So the factor goes in a straight line from that of the curve at I<sub>r0</sub> to the
 * static factor s at 0 (common practice is to hold one of the two),
 *
 * <blockquote>I/I<sub>r</sub> = s + (f(I<sub>r0</sub>) − s) I<sub>r</sub>/I<sub>r0</sub></blockquote>
 *
 * with s = 1, a slow tip being worth what the gauge says it is, unless {@link #withStaticFactor} says otherwise.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CalibrationCurve implements Calibration {
    private enum Form {
        POLYNOMIAL,
        POWER
    }

    private final Form form;
    private final double a;
    private final double b;
    private final double c;
    private final double lowest;
    private final double highest;
    private final double slow;

    private CalibrationCurve(Form form, double a, double b, double c, double lowest, double highest, double slow) {
        this.form = form;
        this.a = Require.finite("a", a, "");
        this.b = Require.finite("b", b, "");
        this.c = Require.finite("c", c, "");
        this.lowest = Require.positive("lowestMmPerHour", lowest, "mm/h");
        this.highest = Require.inRange("highestMmPerHour", highest, lowest, Double.MAX_VALUE, "mm/h");
        this.slow = Require.inRange("staticFactor", slow, 0.5, 2, "");
        requirePositive();
    }

    /**
     * Returns I = a + b I<sub>r</sub>.
     *
     * @param a intercept, mm/h
     * @param b slope
     * @param lowestMmPerHour lowest recorded intensity of the test, mm/h; greater than 0
     * @param highestMmPerHour highest recorded intensity of the test, mm/h; not below the lowest
     * @return the curve
     * @throws IllegalArgumentException if an argument is out of range or the curve is not above 0 in the range
     */
    public static CalibrationCurve linear(double a, double b, double lowestMmPerHour, double highestMmPerHour) {
        return new CalibrationCurve(Form.POLYNOMIAL, a, b, 0, lowestMmPerHour, highestMmPerHour, 1);
    }

    /**
     * Returns I = a + b I<sub>r</sub> + c I<sub>r</sub>².
     *
     * @param a intercept, mm/h
     * @param b linear coefficient
     * @param c quadratic coefficient, h/mm
     * @param lowestMmPerHour lowest recorded intensity of the test, mm/h; greater than 0
     * @param highestMmPerHour highest recorded intensity of the test, mm/h; not below the lowest
     * @return the curve
     * @throws IllegalArgumentException if an argument is out of range or the curve is not above 0 in the range
     */
    public static CalibrationCurve quadratic(
            double a, double b, double c, double lowestMmPerHour, double highestMmPerHour) {
        return new CalibrationCurve(Form.POLYNOMIAL, a, b, c, lowestMmPerHour, highestMmPerHour, 1);
    }

    /**
     * Returns I = a I<sub>r</sub><sup>b</sup>.
     *
     * @param a factor; greater than 0
     * @param b exponent
     * @param lowestMmPerHour lowest recorded intensity of the test, mm/h; greater than 0
     * @param highestMmPerHour highest recorded intensity of the test, mm/h; not below the lowest
     * @return the curve
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static CalibrationCurve power(double a, double b, double lowestMmPerHour, double highestMmPerHour) {
        return new CalibrationCurve(Form.POWER, a, b, 0, lowestMmPerHour, highestMmPerHour, 1);
    }

    /**
     * Returns the same curve with a static calibration: the depth of a slow tip, measured, over the depth that the gauge
     * is said to have. If the gauge was made with the measured depth it is 1 already.
     *
     * @param staticFactor measured over stated depth of a slow tip s; 0.5 to 2 (common practice)
     * @return the curve
     * @throws IllegalArgumentException if it is out of range
     */
    public CalibrationCurve withStaticFactor(double staticFactor) {
        return new CalibrationCurve(form, a, b, c, lowest, highest, staticFactor);
    }

    /**
     * Returns the factor of a tip so slow that nothing is lost.
     *
     * @return s
     */
    public double staticFactor() {
        return slow;
    }

    private void requirePositive() {
        requirePositiveAt(lowest);
        requirePositiveAt(highest);
        double vertex = -b / (2 * c);
        if (vertex > lowest && vertex < highest) {
            requirePositiveAt(vertex);
        }
    }

    private void requirePositiveAt(double recorded) {
        double value = curve(recorded);
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("curve must be greater than 0 and finite (mm/h) over its range, was "
                    + Text.number(value) + " at a recorded " + Text.number(recorded) + " mm/h");
        }
    }

    private double curve(double recorded) {
        return form == Form.POWER ? a * Math.pow(recorded, b) : a + recorded * (b + recorded * c);
    }

    @Override
    public double factor(double recordedMmPerHour, double tipMm) {
        if (recordedMmPerHour < lowest) {
            return slow + (curve(lowest) / lowest - slow) * (recordedMmPerHour / lowest);
        }
        double recorded = Math.min(highest, recordedMmPerHour);
        return curve(recorded) / recorded;
    }

    @Override
    public double lowestMmPerHour(double tipMm) {
        return lowest;
    }

    @Override
    public double highestMmPerHour(double tipMm) {
        return highest;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CalibrationCurve that
                && form == that.form
                && Double.compare(a, that.a) == 0
                && Double.compare(b, that.b) == 0
                && Double.compare(c, that.c) == 0
                && Double.compare(lowest, that.lowest) == 0
                && Double.compare(highest, that.highest) == 0
                && Double.compare(slow, that.slow) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(form, a, b, c, lowest, highest, slow);
    }

    @Override
    public String toString() {
        String formula = form == Form.POWER
                ? Text.significant(a, 6) + " Ir^" + Text.significant(b, 6)
                : Text.significant(a, 6) + " + " + Text.significant(b, 6) + " Ir"
                        + (c == 0 ? "" : " + " + Text.significant(c, 6) + " Ir^2");
        return "CalibrationCurve[I = " + formula + ", Ir " + Text.significant(lowest, 6) + " to "
                + Text.significant(highest, 6) + " mm/h"
                + (slow == 1 ? "]" : ", " + Text.significant(slow, 6) + " for slow tips]");
    }
}
