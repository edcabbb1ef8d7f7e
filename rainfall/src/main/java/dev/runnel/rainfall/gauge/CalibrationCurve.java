package dev.runnel.rainfall.gauge;

import dev.runnel.base.Require;
import dev.runnel.base.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A curve of true intensity I over recorded intensity I<sub>r</sub>, both mm/h: linear a + b I<sub>r</sub>, quadratic
 * a + b I<sub>r</sub> + c I<sub>r</sub>², or power a I<sub>r</sub><sup>b</sup>. Immutable and thread-safe.
 *
 * <p>The forms are those of the WMO laboratory comparison of rainfall intensity gauges (Lanza and others 2005; forms
 * quoted from memory). Coefficients come from a test of the very gauge; none are built in.
 *
 * <p>A curve is given with the range of recorded intensity in which it was measured. Outside it the factor
 * I/I<sub>r</sub> of the nearest limit is used: the intercept of a straight line is not rain that fell through a dry
 * month.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
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

    private CalibrationCurve(Form form, double a, double b, double c, double lowest, double highest) {
        this.form = form;
        this.a = Require.finite("a", a, "");
        this.b = Require.finite("b", b, "");
        this.c = Require.finite("c", c, "");
        this.lowest = Require.positive("lowestMmPerHour", lowest, "mm/h");
        this.highest = Require.inRange("highestMmPerHour", highest, lowest, Double.MAX_VALUE, "mm/h");
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
        return new CalibrationCurve(Form.POLYNOMIAL, a, b, 0, lowestMmPerHour, highestMmPerHour);
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
        return new CalibrationCurve(Form.POLYNOMIAL, a, b, c, lowestMmPerHour, highestMmPerHour);
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
        return new CalibrationCurve(Form.POWER, a, b, 0, lowestMmPerHour, highestMmPerHour);
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
        double recorded = Math.max(lowest, Math.min(highest, recordedMmPerHour));
        return curve(recorded) / recorded;
    }

    @Override
    public boolean covers(double recordedMmPerHour, double tipMm) {
        return recordedMmPerHour >= lowest && recordedMmPerHour <= highest;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CalibrationCurve that
                && form == that.form
                && a == that.a
                && b == that.b
                && c == that.c
                && lowest == that.lowest
                && highest == that.highest;
    }

    @Override
    public int hashCode() {
        return Objects.hash(form, a, b, c, lowest, highest);
    }

    @Override
    public String toString() {
        String formula = form == Form.POWER
                ? Text.number(a) + " Ir^" + Text.number(b)
                : Text.number(a) + " + " + Text.number(b) + " Ir" + (c == 0 ? "" : " + " + Text.number(c) + " Ir^2");
        return "CalibrationCurve[I = " + formula + ", Ir " + Text.number(lowest) + " to " + Text.number(highest)
                + " mm/h]";
    }
}
