package dev.runnel.hydraulics.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class AirTest {
    /** Ideal dry air, √(γ R T/M) with γ 1.4, M 0.02897 kg/mol: the formula of Cramer lies within 0.1 % of it. */
    @Test
    void dryAirIsNearlyIdeal() {
        for (double celsius = 0; celsius <= 30; celsius += 5) {
            double ideal = Math.sqrt(1.4 * 8.314462618153 * (celsius + 273.15) / 0.02897);
            assertThat(Air.atTemperature(celsius).speedOfSound()).isCloseTo(ideal, within(1e-3 * ideal));
        }
    }

    /** Recomputed outside this library from the published coefficients: 0 and 5 °C, dry and saturated. */
    @Test
    void followsTheFormulaWithHumidity() {
        assertThat(Air.atTemperature(0).speedOfSound()).isCloseTo(331.448, within(5.1e-4));
        assertThat(Air.atTemperature(0).withHumidity(1).speedOfSound()).isCloseTo(331.759, within(5.1e-4));
        assertThat(Air.atTemperature(5).speedOfSound()).isCloseTo(334.467, within(5.1e-4));
        assertThat(Air.atTemperature(5).withHumidity(1).speedOfSound()).isCloseTo(334.919, within(5.1e-4));
    }

    /** Recomputed outside this library: thin, moist air with a hundredth of CO₂, where every term of the formula counts. */
    @Test
    void followsTheFormulaWithPressureAndCarbonDioxide() {
        Air moist = Air.atTemperature(30).withHumidity(0.9).withPressure(80_000).withCarbonDioxide(0.01);
        assertThat(moist.speedOfSound()).isCloseTo(350.91579, within(5.1e-5));
        assertThat(Air.atTemperature(20)
                        .withPressure(80_000)
                        .withCarbonDioxide(0.01)
                        .speedOfSound())
                .isCloseTo(342.49202, within(5.1e-5));
        assertThat(moist)
                .isNotEqualTo(moist.withPressure(80_001))
                .isNotEqualTo(moist.withCarbonDioxide(0.009))
                .isNotEqualTo(moist.withHumidity(0.8))
                .isNotEqualTo("air");
    }

    /** A sensor that assumes 20 °C over 10 °C air reads a distance 1.8 % too long, so the level is too low. */
    @Test
    void temperatureErrorOfALevel() {
        double error = Air.atTemperature(10).levelError(Air.atTemperature(20), 2);
        assertThat(error).isCloseTo(-0.035, within(0.001));
        assertThat(Air.atTemperature(20).levelError(Air.atTemperature(10), 2)).isPositive();
        assertThat(Air.atTemperature(20).levelError(Air.atTemperature(20), 2)).isZero();
    }

    @Test
    void refusesAirOutsideTheFormula() {
        assertThatThrownBy(() -> Air.atTemperature(-41))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("celsius must be in [-40, 60] °C, was -41");
        Air air = Air.atTemperature(10);
        assertThatThrownBy(() -> air.withHumidity(50)).hasMessage("humidity must be in [0, 1], was 50");
        assertThatThrownBy(() -> air.withPressure(1013)).hasMessage("pressure must be in [75000, 102000] Pa, was 1013");
        assertThatThrownBy(() -> air.withCarbonDioxide(Double.NaN))
                .hasMessage("moleFraction must be in [0, 0.01], was NaN");
        assertThatThrownBy(() -> air.levelError(air, -1)).hasMessageContaining("distance must be 0 or greater");
    }

    @Test
    void isAValue() {
        assertThat(Air.atTemperature(20).withHumidity(1))
                .hasToString("Air[20 °C, humidity 1, speed of sound 344.61 m/s]")
                .isEqualTo(Air.atTemperature(20).withHumidity(1))
                .hasSameHashCodeAs(Air.atTemperature(20).withHumidity(1))
                .isNotEqualTo(Air.atTemperature(20));
    }

    /** Dry air of the standard atmosphere, c = √(1.4 · 287.05287 T): within 0.1 % from frost to heat, no jump at the limits. */
    @Test
    void coldAndHotAirFollowTheIdealGas() {
        for (double celsius : new double[] {-40, -20, -0.01, 30.01, 45, 60}) {
            Air air = Air.atTemperature(celsius);
            double ideal = Math.sqrt(1.4 * 287.05287 * (celsius + 273.15));
            assertThat(air.speedOfSound() / ideal).isBetween(0.999, 1.001);
            assertThat(air.isExtrapolated()).isTrue();
            assertThat(air.toString()).endsWith("m/s, extrapolated]");
        }
        for (double limit : new double[] {0, 30}) {
            for (double humidity : new double[] {0, 1}) {
                double below =
                        Air.atTemperature(limit - 1e-6).withHumidity(humidity).speedOfSound();
                double above =
                        Air.atTemperature(limit + 1e-6).withHumidity(humidity).speedOfSound();
                assertThat(below).isCloseTo(above, within(1e-5));
                assertThat(Air.atTemperature(limit).isExtrapolated()).isFalse();
            }
        }
        // Humid air is lighter, so sound runs faster in it.
        assertThat(Air.atTemperature(60).withHumidity(1).speedOfSound())
                .isGreaterThan(1.01 * Air.atTemperature(60).speedOfSound());
    }
}
