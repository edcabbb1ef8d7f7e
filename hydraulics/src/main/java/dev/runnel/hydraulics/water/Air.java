package dev.runnel.hydraulics.water;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * Air over the water, for ultrasonic level sensors. Immutable and thread-safe.
 *
 * <p>The speed of sound is the interpolation formula of O. Cramer, The variation of the specific heat ratio and the speed
 * of sound in air with temperature, pressure, humidity and CO₂ concentration, J. Acoust. Soc. Am. 93 (1993), 2510 to 2516:
 * valid for 0 to 30 °C, 75 to 102 kPa, up to 0.06 mole of water and 0.01 mole of CO₂ per mole; stated uncertainty 300 ppm. The
 * mole fraction of water at saturation follows R. S. Davis, Equation for the determination of the density of moist air,
 * Metrologia 29 (1992), 67 to 70.
 *
 * <p>Outside 0 to 30 °C the speed is continued from the nearer limit by the law of ideal gases,
 *
 * <pre>
 * c = √(κ R T/M)      κ = (7 + w)/(5 + w)      M = 28.9635 − 10.948 w  g/mol
 * </pre>
 *
 * with T in kelvin and w the mole fraction of water: ISO 2533:1975, Standard atmosphere, for dry air (κ = 1.4), and D. A.
 * Bohn, Environmental effects on the speed of sound, J. Audio Eng. Soc. 36 (1988), for the water in it (from memory). {@link #isExtrapolated()} says so. At 0 and 30 °C the two laws agree in
 * their slope to about 0.1 % per 10 K.
 *
 * <p>Sewer air is not clean air: much CO₂ or methane moves the speed more than humidity does. One temperature for the
 * whole path is assumed; between a cold cover and warm sewage it varies.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Air {
    /** Chosen here: the coldest and the hottest sewers, and a margin. */
    private static final double COLDEST = -40;

    private static final double HOTTEST = 60;

    /** Cramer 1993, range of his formula, °C. */
    private static final double LEAST_OF_FORMULA = 0;

    private static final double MOST_OF_FORMULA = 30;

    private static final double ICE_POINT = 273.15;

    private static final double STANDARD_PRESSURE = 101_325;
    private static final double STANDARD_CARBON_DIOXIDE = 0.0004;
    /** Cramer 1993, coefficients a0 to a15. */
    private static final double[] A = {
        331.5024, 0.603055, -0.000528, 51.471935, 0.1495874, -0.000782, -1.82e-7, 3.73e-8, -2.93e-10, -85.20931,
        -0.228525, 5.91e-5, -2.835149, -2.15e-13, 29.179762, 0.000486
    };

    private final double celsius;
    private final double humidity;
    private final double pressure;
    private final double carbonDioxide;

    private Air(double celsius, double humidity, double pressure, double carbonDioxide) {
        this.celsius = celsius;
        this.humidity = humidity;
        this.pressure = pressure;
        this.carbonDioxide = carbonDioxide;
    }

    /**
     * Returns dry air at 101 325 Pa with a mole fraction of CO₂ of 0.0004.
     *
     * @param celsius temperature, °C; in [−40, 60]; outside [0, 30] the speed of sound is {@linkplain #isExtrapolated()
     *     extrapolated}
     * @return the air
     * @throws IllegalArgumentException if {@code celsius} is outside or NaN
     */
    public static Air atTemperature(double celsius) {
        return new Air(
                Require.inRange("celsius", celsius, COLDEST, HOTTEST, "°C"),
                0,
                STANDARD_PRESSURE,
                STANDARD_CARBON_DIOXIDE);
    }

    /**
     * Returns a copy with a humidity.
     *
     * @param humidity relative humidity; in [0, 1]; 1 in a wet sewer
     * @return the copy
     * @throws IllegalArgumentException if {@code humidity} is outside or NaN
     */
    public Air withHumidity(double humidity) {
        return new Air(celsius, Require.inRange("humidity", humidity, 0, 1, ""), pressure, carbonDioxide);
    }

    /**
     * Returns a copy with a pressure.
     *
     * @param pressure pressure, Pa; in [75 000, 102 000]
     * @return the copy
     * @throws IllegalArgumentException if {@code pressure} is outside or NaN
     */
    public Air withPressure(double pressure) {
        return new Air(celsius, humidity, Require.inRange("pressure", pressure, 75_000, 102_000, "Pa"), carbonDioxide);
    }

    /**
     * Returns a copy with a content of carbon dioxide.
     *
     * @param moleFraction mole fraction of CO₂; in [0, 0.01]
     * @return the copy
     * @throws IllegalArgumentException if {@code moleFraction} is outside or NaN
     */
    public Air withCarbonDioxide(double moleFraction) {
        return new Air(celsius, humidity, pressure, Require.inRange("moleFraction", moleFraction, 0, 0.01, ""));
    }

    /** Mole fraction of water: humidity times enhanced saturation pressure over pressure (Davis 1992). */
    private double waterFraction(double celsius) {
        double kelvin = celsius + ICE_POINT;
        double saturation =
                Math.exp(1.2378847e-5 * kelvin * kelvin - 1.9121316e-2 * kelvin + 33.93711047 - 6343.1645 / kelvin);
        double enhancement = 1.00062 + 3.14e-8 * pressure + 5.6e-7 * celsius * celsius;
        return humidity * enhancement * saturation / pressure;
    }

    /**
     * Tells whether the temperature lies outside the range of Cramer's formula.
     *
     * @return true below 0 and above 30 °C, where the law of ideal gases continues it
     */
    public boolean isExtrapolated() {
        return celsius < LEAST_OF_FORMULA || celsius > MOST_OF_FORMULA;
    }

    /**
     * Returns the speed of sound.
     *
     * @return speed, m/s; 343.4 for dry air at 20 °C; {@linkplain #isExtrapolated() extrapolated} outside 0 to 30 °C
     */
    public double speedOfSound() {
        double limit = Math.max(LEAST_OF_FORMULA, Math.min(celsius, MOST_OF_FORMULA));
        return isExtrapolated() ? cramer(limit) * ideal(celsius) / ideal(limit) : cramer(celsius);
    }

    /** √(κ T/M), the speed in an ideal gas but for a constant. */
    private double ideal(double t) {
        double w = waterFraction(t);
        return Math.sqrt((7 + w) / (5 + w) * (t + ICE_POINT) / (28.9635 - 10.948 * w));
    }

    private double cramer(double t) {
        double w = waterFraction(t);
        double p = pressure;
        double c = carbonDioxide;
        return A[0]
                + A[1] * t
                + A[2] * t * t
                + (A[3] + A[4] * t + A[5] * t * t) * w
                + (A[6] + A[7] * t + A[8] * t * t) * p
                + (A[9] + A[10] * t + A[11] * t * t) * c
                + A[12] * w * w
                + A[13] * p * p
                + A[14] * c * c
                + A[15] * w * p * c;
    }

    /**
     * Returns the error of an ultrasonic level when the sensor assumes other air than there is: the distance it reads is
     * the true one times assumed over true speed, and the level is what is left.
     *
     * @param assumed the air the sensor assumes
     * @param distance true distance from sensor to water, m; 0 or greater
     * @return level read less true level, m; negative where the sensor assumes warmer air than there is
     * @throws IllegalArgumentException if {@code distance} is negative or not finite
     */
    public double levelError(Air assumed, double distance) {
        Require.nonNegative("distance", distance, "m");
        return distance * (1 - assumed.speedOfSound() / speedOfSound());
    }

    @Override
    public boolean equals(Object object) {
        if (!(object instanceof Air)) {
            return false;
        }
        Air other = (Air) object;
        return Double.compare(celsius, other.celsius) == 0
                && Double.compare(humidity, other.humidity) == 0
                && Double.compare(pressure, other.pressure) == 0
                && Double.compare(carbonDioxide, other.carbonDioxide) == 0;
    }

    @Override
    public int hashCode() {
        return java.util.Objects.hash(celsius, humidity, pressure, carbonDioxide);
    }

    @Override
    public String toString() {
        return "Air[" + Text.significant(celsius, 6) + " °C, humidity " + Text.significant(humidity, 6)
                + ", speed of sound " + Text.fixed(speedOfSound(), 2)
                + (isExtrapolated() ? " m/s, extrapolated]" : " m/s]");
    }
}
