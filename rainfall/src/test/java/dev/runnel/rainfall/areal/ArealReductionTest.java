package dev.runnel.rainfall.areal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ArealReductionTest {
    /** The formula of Keers and Wescott (1977) recomputed elsewhere, one value and more in each range of area. */
    @ParameterizedTest
    @CsvSource({
        "5, 5, 0.8221661979917878",
        "300, 10, 0.45788017353278376",
        "5, 30, 0.9095341946634052",
        "10, 60, 0.9109782306532935",
        "30, 120, 0.9000833762308675",
        "30, 180, 0.9148532731703646",
        "100, 360, 0.9013704344462019",
        "100, 1440, 0.943352182128249",
        "1000, 2880, 0.9172177551272811",
        "10000, 5760, 0.8973652137806593",
        "20, 60, 0.8862213332867654",
        "99.9, 1440, 0.9436027406657641",
        "500, 360, 0.8488877083988532",
        "1000, 15, 0.38121361830516354"
    })
    void keersWescott(double area, double minutes, double factor) {
        assertThat(ArealReduction.keersWescott().factor(area, Duration.ofSeconds(Math.round(60 * minutes))))
                .isCloseTo(factor, within(1e-12));
    }

    @Test
    void takesTheAreaOfACatchmentInSquareKilometres() {
        Catchment square = Catchment.of(
                List.of(new Location(0, 0), new Location(4000, 0), new Location(4000, 5000), new Location(0, 5000)));
        assertThat(ArealReduction.keersWescott().factor(square, Duration.ofHours(1)))
                .isCloseTo(0.8862213332867654, within(1e-12));
    }

    @Test
    void refusesWhatItDoesNotCover() {
        assertThatThrownBy(() -> ArealReduction.keersWescott().factor(0.5, Duration.ofHours(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("areaKm2 must be in [1, 20000] km2, was 0.5");
        assertThatThrownBy(() -> ArealReduction.keersWescott().factor(10, Duration.ofMinutes(4)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must be in [5 min, 25 d], was 4 min");
        assertThatThrownBy(() -> ArealReduction.keersWescott().factor(20_000, Duration.ofMinutes(15)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must be longer for an area of 20000 km2, was 15 min");
    }

    /** A. Ladson's worked values for 26 km2 and one year in 2000: 12 hours, and 24 hours in Tasmania. */
    @Test
    void australia2019AgreesWithPublishedValues() {
        ArealReduction tasmania = ArealReduction.australia2019(AustralianRegion.TASMANIA, 0.0005);
        assertThat(tasmania.factor(26, Duration.ofHours(12))).isCloseTo(0.9377527, within(5e-8));
        assertThat(tasmania.factor(26, Duration.ofHours(24))).isCloseTo(0.9322746, within(5e-8));
        assertThat(tasmania)
                .hasToString(
                        "ArealReduction[Australian Rainfall and Runoff (2019), TASMANIA, annual exceedance probability"
                                + " 0.0005]");
    }

    @Test
    void australia2019JoinsItsRanges() {
        for (AustralianRegion region : AustralianRegion.values()) {
            ArealReduction reduction = ArealReduction.australia2019(region, 0.1);
            assertThat(reduction.factor(0, Duration.ofHours(1))).isEqualTo(1);
            assertThat(reduction.factor(1, Duration.ofHours(1))).isEqualTo(1);
            // 0.6614 (10^0.4 - 1) is 0.99999, so the join at 10 km2 is not quite exact.
            assertThat(reduction.factor(9.9999999, Duration.ofHours(6)))
                    .isCloseTo(reduction.factor(10, Duration.ofHours(6)), within(1e-5));
            double half = reduction.factor(50, Duration.ofHours(12));
            double day = reduction.factor(50, Duration.ofHours(24));
            assertThat(reduction.factor(50, Duration.ofHours(18))).isCloseTo((half + day) / 2, within(1e-15));
        }
    }

    @Test
    void australia2019RefusesWhatItDoesNotCover() {
        ArealReduction reduction = ArealReduction.australia2019(AustralianRegion.INLAND_ARID, 0.1);
        assertThatThrownBy(() -> reduction.factor(1001, Duration.ofHours(12)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("areaKm2 must be in [0, 1000] km2, was 1001");
        assertThatThrownBy(() -> reduction.factor(30_001, Duration.ofHours(24)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("areaKm2 must be in [0, 30000] km2, was 30001");
        assertThatThrownBy(() -> reduction.factor(10, Duration.ofHours(169)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must be in [30 min, 7 d], was 7 d 1 h");
        assertThatThrownBy(() -> ArealReduction.australia2019(AustralianRegion.INLAND_ARID, 0.6))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("annualExceedanceProbability must be in [5.0E-4, 0.5], was 0.6");
    }
}
