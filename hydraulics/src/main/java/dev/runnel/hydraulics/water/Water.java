package dev.runnel.hydraulics.water;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * Pure liquid water at 0.1 MPa and one temperature. Immutable and thread-safe.
 *
 * <p>Source: IAPWS SR6-08(2011), <i>Revised Supplementary Release on Properties of Liquid Water at 0.1 MPa</i>:
 * its series for the volume, its derivatives, the heat capacity and the viscosity. Valid from 253.15 K to 383.15 K (−20 to 110 °C);
 * below 0 °C and above 99.6 °C the water is metastable. The release gives the uncertainty as 1e-6 to 5e-5 relative for
 * the density and 1 % for the viscosity, the latter worse below 0 °C.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Water {
    /** IAPWS, critical point of water, K and Pa. */
    private static final double CRITICAL_TEMPERATURE = 647.096;

    private static final double CRITICAL_PRESSURE = 22.064e6;

    private static final double CELSIUS_ZERO = 273.15;
    /** Specific gas constant of water in SR6-08, J/(kg K). */
    private static final double GAS_CONSTANT = 461.51805;

    private static final double PRESSURE = 1e5;
    /** Reducing temperature of the series, K. */
    private static final double REDUCING = 10;

    private static final double HIGH_POLE = 593;
    private static final double LOW_POLE = 232;

    // Each series is Σ a α^n + Σ b β^m with α = 10 K/(593 K − T), β = 10 K/(T − 232 K); names as in the release.
    private static final double A5 = 1.93763157e-2;
    private static final double[] VOLUME_A = {6.74458446e3, -2.22521604e5, 1.00231247e8, -1.63552118e9, 8.32299658e9};
    private static final int[] VOLUME_N = {4, 5, 7, 8, 9};
    private static final double[] VOLUME_B = {
        5.78545292e-3, -1.53195665e-2, 3.11337859e-2, -4.23546241e-2, 3.38713507e-2, -1.19946761e-2
    };
    private static final int[] VOLUME_M = {1, 2, 3, 4, 5, 6};

    private static final double[] PRESSURE_A = {-7.5245878e-6, -1.3767418e-2, 1.0627293e1, -2.0457795e2, 1.2037414e3};
    private static final int[] PRESSURE_N = {1, 3, 5, 6, 7};
    private static final double[] PRESSURE_B = {
        -3.1091470e-6, 2.8964919e-5, -1.3112763e-4, 3.0410453e-4, -3.9034594e-4, 2.3403117e-4, -4.8510101e-5
    };
    private static final int[] PRESSURE_M = {1, 3, 4, 5, 6, 7, 9};

    private static final double C3 = -8.983025854;
    private static final double[] HEAT_A = {-1.661470539e5, 2.708781640e6, -1.557191544e8};
    private static final int[] HEAT_N = {4, 5, 7};
    private static final double[] HEAT_B = {-8.237426256e-1, 1.908956353, -2.017597384, 8.546361348e-1};
    private static final int[] HEAT_M = {2, 3, 4, 5};

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
        return 1 / volume();
    }

    private double kelvin() {
        return celsius + CELSIUS_ZERO;
    }

    private double alpha() {
        return REDUCING / (HIGH_POLE - kelvin());
    }

    private double beta() {
        return REDUCING / (kelvin() - LOW_POLE);
    }

    /** Σ c x^e. */
    private static double series(double[] coefficient, int[] exponent, double x) {
        double sum = 0;
        for (int i = 0; i < coefficient.length; i++) {
            sum += coefficient[i] * Math.pow(x, exponent[i]);
        }
        return sum;
    }

    /** Specific volume v, m³/kg. */
    private double volume() {
        double sum = A5 + series(VOLUME_A, VOLUME_N, alpha()) + series(VOLUME_B, VOLUME_M, beta());
        return GAS_CONSTANT * REDUCING / PRESSURE * sum;
    }

    /** ∂v/∂T at constant pressure, m³/(kg K). */
    private double volumeByTemperature() {
        double sum = 0;
        for (int i = 0; i < VOLUME_A.length; i++) {
            sum += VOLUME_N[i] * VOLUME_A[i] * Math.pow(alpha(), VOLUME_N[i] + 1);
        }
        for (int i = 0; i < VOLUME_B.length; i++) {
            sum -= VOLUME_M[i] * VOLUME_B[i] * Math.pow(beta(), VOLUME_M[i] + 1);
        }
        return GAS_CONSTANT / PRESSURE * sum;
    }

    /** ∂v/∂p at constant temperature, m³/(kg Pa). */
    private double volumeByPressure() {
        double sum = series(PRESSURE_A, PRESSURE_N, alpha()) + series(PRESSURE_B, PRESSURE_M, beta());
        return GAS_CONSTANT * REDUCING / (PRESSURE * PRESSURE) * sum;
    }

    /** Heat capacity at constant pressure, J/(kg K). */
    private double heatCapacity() {
        double sum = 0;
        for (int i = 0; i < HEAT_A.length; i++) {
            sum += HEAT_N[i] * (HEAT_N[i] + 1) * HEAT_A[i] * Math.pow(alpha(), HEAT_N[i] + 2);
        }
        for (int i = 0; i < HEAT_B.length; i++) {
            sum += HEAT_M[i] * (HEAT_M[i] + 1) * HEAT_B[i] * Math.pow(beta(), HEAT_M[i] + 2);
        }
        return -GAS_CONSTANT * (C3 + kelvin() / REDUCING * sum);
    }

    /**
     * Returns the speed of sound, for Doppler and travel-time sensors: w = v √(−cp/(cp ∂v/∂p + T (∂v/∂T)²)).
     *
     * @return speed of sound w, m/s; 1465.9 at 15 °C
     */
    public double speedOfSound() {
        double byTemperature = volumeByTemperature();
        double heat = heatCapacity();
        return volume() * Math.sqrt(-heat / (heat * volumeByPressure() + kelvin() * byTemperature * byTemperature));
    }

    /**
     * Returns the dynamic viscosity.
     *
     * @return dynamic viscosity μ, Pa·s
     */
    public double dynamicViscosity() {
        double reduced = kelvin() / 300;
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

    /**
     * Returns the pressure at which the water boils: below it in a siphon or behind a gate, vapour breaks the flow.
     *
     * <pre>
     * ln(p/pc) = Tc/T (a₁τ + a₂τ^1.5 + a₃τ³ + a₄τ^3.5 + a₅τ⁴ + a₆τ^7.5)      τ = 1 − T/Tc
     * </pre>
     *
     * <p>Source: IAPWS, Revised Supplementary Release on Saturation Properties of Ordinary Water Substance, 1992, equation 1;
     * W. Wagner and A. Pruss, J. Phys. Chem. Ref. Data 22 (1993), 783 to 787; coefficients from memory, checked against the
     * release's own values.
     *
     * @return absolute pressure, Pa; 2339 at 20 °C
     * @throws IllegalStateException if the water is below 0 °C, where the equation does not hold
     */
    public double vapourPressure() {
        if (celsius < 0) {
            throw new IllegalStateException("vapour pressure holds from 0 °C, was " + Text.number(celsius));
        }
        double reduced = (celsius + 273.15) / CRITICAL_TEMPERATURE;
        double tau = 1 - reduced;
        double root = Math.sqrt(tau);
        double sum = -7.85951783 * tau
                + 1.84408259 * tau * root
                - 11.7866497 * tau * tau * tau
                + 22.6807411 * tau * tau * tau * root
                - 15.9618719 * tau * tau * tau * tau
                + 1.80122502 * tau * tau * tau * tau * tau * tau * tau * root;
        return CRITICAL_PRESSURE * Math.exp(sum / reduced);
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
        return "Water[" + Text.significant(celsius, 6) + " °C, density " + Text.fixed(density(), 2)
                + " kg/m3, kinematic viscosity " + Text.significant(kinematicViscosity(), 5) + " m2/s]";
    }
}
