package dev.runnel.hydraulics.water;

import dev.runnel.base.Require;
import dev.runnel.base.Text;
import org.apiguardian.api.API;

/**
 * Pure liquid water at 0.1 MPa and one temperature. Immutable and thread-safe.
 *
 * <p>Source: IAPWS SR6-08(2011), <i>Revised Supplementary Release on Properties of Liquid Water at 0.1 MPa</i>:
 * its series for the volume and for the viscosity. Valid from 253.15 K to 383.15 K (−20 to 110 °C);
 * below 0 °C and above 99.6 °C the water is metastable. The release gives the uncertainty as 1e-6 to 5e-5 relative for
 * the density and 1 % for the viscosity, the latter worse below 0 °C.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Water {
    private static final double CELSIUS_ZERO = 273.15;
    /** Specific gas constant of water in SR6-08, J/(kg K). */
    private static final double GAS_CONSTANT = 461.51805;

    private static final double PRESSURE = 1e5;
    /** Reducing temperature of the series, K. */
    private static final double REDUCING = 10;

    private static final double HIGH_POLE = 593;
    private static final double LOW_POLE = 232;

    // Volume: a5; then a6 to a10 with their exponents n; then b5 to b10 with their exponents m.
    private static final double A5 = 1.93763157e-2;
    private static final double[] A = {6.74458446e3, -2.22521604e5, 1.00231247e8, -1.63552118e9, 8.32299658e9};
    private static final int[] N = {4, 5, 7, 8, 9};
    private static final double[] B = {
        5.78545292e-3, -1.53195665e-2, 3.11337859e-2, -4.23546241e-2, 3.38713507e-2, -1.19946761e-2
    };
    private static final int[] M = {1, 2, 3, 4, 5, 6};

    // Viscosity: μ in 1e-6 Pa s from T/300 K.
    private static final double[] VISCOSITY_FACTOR = {280.68, 511.45, 61.131, 0.45903};
    private static final double[] VISCOSITY_EXPONENT = {-1.9, -7.7, -19.6, -40.0};

    private final double celsius;

    private Water(double celsius) {
        this.celsius = celsius;
    }

    /**
     * Returns water of a temperature.
     *
     * @param celsius temperature, °C; in [−20, 110]
     * @return the water
     * @throws IllegalArgumentException if {@code celsius} is outside or NaN
     */
    public static Water atTemperature(double celsius) {
        return new Water(Require.inRange("celsius", celsius, -20, 110, "°C"));
    }

    /**
     * Returns the temperature.
     *
     * @return temperature, °C
     */
    public double celsius() {
        return celsius;
    }

    /**
     * Returns the density.
     *
     * @return density ρ, kg/m³
     */
    public double density() {
        double kelvin = celsius + CELSIUS_ZERO;
        double alpha = REDUCING / (HIGH_POLE - kelvin);
        double beta = REDUCING / (kelvin - LOW_POLE);
        double sum = A5;
        for (int i = 0; i < A.length; i++) {
            sum += A[i] * Math.pow(alpha, N[i]);
        }
        for (int i = 0; i < B.length; i++) {
            sum += B[i] * Math.pow(beta, M[i]);
        }
        return PRESSURE / (GAS_CONSTANT * REDUCING * sum);
    }

    /**
     * Returns the dynamic viscosity.
     *
     * @return dynamic viscosity μ, Pa·s
     */
    public double dynamicViscosity() {
        double reduced = (celsius + CELSIUS_ZERO) / 300;
        double sum = 0;
        for (int i = 0; i < VISCOSITY_FACTOR.length; i++) {
            sum += VISCOSITY_FACTOR[i] * Math.pow(reduced, VISCOSITY_EXPONENT[i]);
        }
        return sum * 1e-6;
    }

    /**
     * Returns the kinematic viscosity, ν = μ/ρ.
     *
     * @return kinematic viscosity ν, m²/s; 1.1386e-6 at 15 °C
     */
    public double kinematicViscosity() {
        return dynamicViscosity() / density();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Water && Double.compare(celsius, ((Water) other).celsius) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(celsius);
    }

    @Override
    public String toString() {
        return "Water[" + Text.number(celsius) + " °C, density " + Text.fixed(density(), 2)
                + " kg/m3, kinematic viscosity " + Text.significant(kinematicViscosity(), 5) + " m2/s]";
    }
}
