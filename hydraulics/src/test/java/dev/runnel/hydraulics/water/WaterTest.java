package dev.runnel.hydraulics.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class WaterTest {
    /** IAPWS SR6-08(2011), table 8, check values at 260 K and 375 K, nine digits. */
    @Test
    void agreesWithTheCheckValuesOfTheRelease() {
        Water cold = Water.atTemperature(260 - 273.15);
        assertThat(cold.density()).isCloseTo(997.068360, within(5e-7 * 1.01));
        assertThat(cold.dynamicViscosity()).isCloseTo(3058.36075e-6, within(5e-15 * 1e3));
        assertThat(cold.speedOfSound()).isCloseTo(1324.87258, within(5.1e-6));
        Water hot = Water.atTemperature(375 - 273.15);
        assertThat(hot.density()).isCloseTo(957.009710, within(5e-7 * 1.01));
        assertThat(hot.dynamicViscosity()).isCloseTo(276.207245e-6, within(5e-13 * 1.01));
        assertThat(hot.speedOfSound()).isCloseTo(1541.46611, within(5.1e-6));
    }

    @Test
    void densityIsLargestNearFourDegrees() {
        double most = Water.atTemperature(3.98).density();
        assertThat(most).isGreaterThan(Water.atTemperature(3.5).density());
        assertThat(most).isGreaterThan(Water.atTemperature(4.5).density());
    }

    /** Common knowledge: sound in water is fastest near 74 °C. */
    @Test
    void soundIsFastestNearSeventyFourDegrees() {
        double most = Water.atTemperature(74).speedOfSound();
        assertThat(most).isGreaterThan(Water.atTemperature(64).speedOfSound());
        assertThat(most).isGreaterThan(Water.atTemperature(84).speedOfSound());
    }

    @Test
    void viscosityFallsWithTemperatureOverTheWholeRange() {
        double last = Double.POSITIVE_INFINITY;
        for (double celsius = -20; celsius <= 110; celsius += 0.5) {
            double viscosity = Water.atTemperature(celsius).kinematicViscosity();
            assertThat(viscosity).isPositive().isLessThan(last);
            last = viscosity;
        }
    }

    @Test
    void refusesTemperaturesOutside() {
        assertThatThrownBy(() -> Water.atTemperature(110.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("celsius must be in [-20, 110] °C, was 110.5");
        assertThatThrownBy(() -> Water.atTemperature(285))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("was 285");
        assertThatThrownBy(() -> Water.atTemperature(Double.NaN)).hasMessageContaining("was NaN");
    }

    @Test
    void readsWell() {
        assertThat(Water.atTemperature(12))
                .hasToString("Water[12 °C, density 999.50 kg/m3, kinematic viscosity 1.2347e-06 m2/s]")
                .isEqualTo(Water.atTemperature(12.0))
                .hasSameHashCodeAs(Water.atTemperature(12.0))
                .isNotEqualTo(Water.atTemperature(13));
    }

    /** IAPWS 1992: 611.657 Pa at the triple point, 101 325 Pa at 373.1243 K. */
    @Test
    void vapourPressureMeetsTheFixedPoints() {
        assertThat(Water.atTemperature(0.01).vapourPressure()).isCloseTo(611.657, within(0.0006));
        assertThat(Water.atTemperature(373.1243 - 273.15).vapourPressure()).isCloseTo(101_325.0, within(1.0));
        assertThatThrownBy(() -> Water.atTemperature(-1).vapourPressure())
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("vapour pressure holds from 0 °C, was -1");
    }
}
