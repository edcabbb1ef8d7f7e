package dev.runnel.rainfall.areal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CatchmentTest {
    @Test
    void aHoleBelongsToNobody() {
        Catchment holed = Catchment.parse(
                "POLYGON ((0 0, 400 0, 400 300, 0 300, 0 0), (100 100, 200 100, 200 200, 100 200, 100 100))");
        assertThat(holed.area()).isEqualTo(110_000);
        assertThat(holed.areaKm2()).isEqualTo(0.11);
        assertThat(holed).hasToString("Catchment[1 hole, 8 corners, 110000 m2]");
        GaugeWeights weights =
                GaugeWeights.thiessen(holed, Map.of("west", Location.of(50, 150), "east", Location.of(350, 150)));
        assertThat(weights.weight("west")).isCloseTo(50_000 / 110_000.0, within(1e-14));
    }

    @Test
    void partsCountTogether() {
        Catchment parts =
                Catchment.parse("MULTIPOLYGON (((0 0, 400 0, 400 300, 0 0)), ((500 0, 600 0, 600 100, 500 0)))");
        assertThat(parts.area()).isEqualTo(65_000);
        assertThat(parts).hasToString("Catchment[2 parts, 6 corners, 65000 m2]");
        GaugeWeights weights = GaugeWeights.thiessen(parts, Map.of("A", Location.of(0, 0), "B", Location.of(900, 0)));
        assertThat(weights.weight("B")).isCloseTo(5_000 / 65_000.0, within(1e-14));
    }

    @Test
    void theTextOfACatchmentIsThatOfItsCorners() {
        Catchment square = Catchment.parse("POLYGON((0 0,0 10,10 10,10 0,0 0))");
        assertThat(square).hasToString("Catchment[4 corners, 100 m2]");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "here | text must be a polygon in well-known text, was \"here\": Expected word but found End-of-Stream (line 1)",
                "POLYGON ((0 0, 1 0, 1 1)) | text must be a polygon in well-known text, was \"POLYGON ((0 0, 1 0, 1 1))\":"
                        + " Points of LinearRing do not form a closed linestring",
                "POINT (1 2) | text must be a POLYGON or MULTIPOLYGON, was a POINT",
                "POLYGON EMPTY | area of the polygons must be greater than 0 and finite (m2), was 0",
                "POLYGON ((0 0, 1 0, 1 NaN, 0 0)) | y must be finite (m), was NaN",
                "POLYGON ((0 0, 4 4, 4 0, 0 2, 0 0)) | boundary must neither cross nor touch itself, has self-intersection at"
                        + " Location[x=1.3333333333333333, y=1.3333333333333333]",
                "POLYGON ((0 0, 4 0, 4 4, 0 0), (9 9, 8 9, 8 8, 9 9)) | boundary must neither cross nor touch itself, has hole"
                        + " lies outside shell at Location[x=9.0, y=9.0]"
            })
    void saysWhatIsWrong(String text, String message) {
        assertThatThrownBy(() -> Catchment.parse(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }
}
