package dev.runnel.rainfall.areal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class GaugeWeightsTest {
    private static Catchment catchment(double... xy) {
        return Catchment.of(IntStream.range(0, xy.length / 2)
                .mapToObj(i -> Location.of(xy[2 * i], xy[2 * i + 1]))
                .toList());
    }

    private static Map<String, Location> gauges(double... xy) {
        Map<String, Location> gauges = new TreeMap<>();
        for (int i = 0; i < xy.length / 2; i++) {
            gauges.put("G" + (i + 1), Location.of(xy[2 * i], xy[2 * i + 1]));
        }
        return gauges;
    }

    private static RegularSeries rain(double... depths) {
        return RegularSeries.of(Instant.EPOCH, Duration.ofHours(1), depths);
    }

    /** Constructed, with exact rational areas worked out elsewhere. */
    @Test
    void thiessenOfARectangle() {
        GaugeWeights weights =
                GaugeWeights.thiessen(catchment(0, 0, 10, 0, 10, 8, 0, 8), gauges(2, 2, 8, 1, 5, 5, 1, 7, 9, 7));
        double[] expected = {0.23829613095238095, 0.21258116883116884, 0.2583130411255411, 0.13875, 0.1520596590909091};
        for (int i = 0; i < expected.length; i++) {
            assertThat(weights.weight("G" + (i + 1))).isCloseTo(expected[i], within(1e-14));
        }
        ArealRain mean = weights.mean(
                Map.of("G1", rain(12.4), "G2", rain(18.0), "G3", rain(22.6), "G4", rain(9.8), "G5", rain(30.2)));
        assertThat(mean.rain().value(0)).isCloseTo(18.571159496753246, within(1e-12));
        assertThat(mean.reweighted()).isZero();
    }

    @Test
    void thiessenWithAGaugeOutsideAndOfAShapeThatIsNotConvex() {
        GaugeWeights pentagon =
                GaugeWeights.thiessen(catchment(0, 0, 6, 0, 9, 4, 5, 9, -1, 5), gauges(1, 1, 5, 2, 4, 7, 12, 8));
        assertThat(pentagon.weight("G1")).isCloseTo(0.2658313325330132, within(1e-14));
        assertThat(pentagon.weight("G3")).isCloseTo(0.3524754729477998, within(1e-14));
        assertThat(pentagon.weight("G4")).isZero();
        GaugeWeights shape = GaugeWeights.thiessen(catchment(0, 0, 4, 0, 4, 4, 2, 4, 2, 8, 0, 8), gauges(1, 1, 1, 6));
        assertThat(shape.weight("G1")).isCloseTo(14 / 24.0, within(1e-14));
    }

    @Test
    void aCutMayLeaveTwoPieces() {
        // A U of area 10 + 2 x 4: the gauge above takes the tops of both arms, 2 x 2 each.
        Catchment u = catchment(0, 0, 5, 0, 5, 6, 3, 6, 3, 2, 2, 2, 2, 6, 0, 6);
        GaugeWeights weights = GaugeWeights.thiessen(u, gauges(2.5, 0, 2.5, 8));
        assertThat(u.area()).isEqualTo(26);
        assertThat(u.areaKm2()).isEqualTo(26e-6);
        assertThat(weights.weight("G2")).isCloseTo(8 / 26.0, within(1e-14));
    }

    @Test
    void gridCoordinatesCostNoDigits() {
        double x = 3_500_000;
        double y = 5_700_000;
        GaugeWeights weights = GaugeWeights.thiessen(
                catchment(x, y, x + 4, y, x + 4, y + 2, x, y + 2), gauges(x + 1, y + 1, x + 3.5, y + 1));
        assertThat(weights.weight("G1")).isCloseTo(2.25 / 4, within(1e-9));
    }

    @Test
    void aMissingGaugeLeavesItsPolygonToTheOthers() {
        Catchment strip = catchment(0, 0, 12, 0, 12, 1, 0, 1);
        GaugeWeights weights = GaugeWeights.thiessen(strip, gauges(1, 0.5, 5, 0.5, 11, 0.5));
        double gap = Double.NaN;
        ArealRain mean = weights.mean(
                Map.of("G1", rain(12, 12, gap, gap), "G2", rain(24, gap, gap, 3), "G3", rain(36, 36, gap, gap)));
        assertThat(mean.rain().value(0)).isCloseTo((3 * 12 + 5 * 24 + 4 * 36) / 12.0, within(1e-12));
        // Without the second the boundary moves to x = 6: half and half.
        assertThat(mean.rain().value(1)).isCloseTo(24, within(1e-12));
        assertThat(mean.rain().value(2)).isNaN();
        assertThat(mean.rain().value(3)).isEqualTo(3);
        assertThat(mean.reweighted()).isEqualTo(3);
    }

    @Test
    void inverseDistance() {
        GaugeWeights weights =
                GaugeWeights.at(Location.of(0, 0), gauges(1, 0, 0, 2, -4, 0), SpatialEstimator.inverseDistance(2));
        assertThat(weights.weight("G1")).isCloseTo(16 / 21.0, within(1e-15));
        assertThat(weights.weight("G3")).isCloseTo(1 / 21.0, within(1e-15));
        assertThat(GaugeWeights.at(Location.of(0, 2), gauges(1, 0, 0, 2), SpatialEstimator.inverseDistance(2))
                        .weight("G2"))
                .isEqualTo(1);
        assertThat(GaugeWeights.at(Location.of(0, 0), gauges(1e-200, 0, 0, 1e200), SpatialEstimator.inverseDistance(2))
                        .weight("G1"))
                .isEqualTo(1);
    }

    @Test
    void givenWeightsAreScaled() {
        GaugeWeights weights = GaugeWeights.of(Map.of("A", 3.0, "B", 1.0));
        assertThat(weights).hasToString("GaugeWeights[A 0.75, B 0.25]");
        assertThat(weights.mean(Map.of("A", rain(Double.NaN), "B", rain(7)))
                        .rain()
                        .value(0))
                .isEqualTo(7);
        assertThat(GaugeWeights.of(Map.of("A", 1.0, "B", 0.0))
                        .mean(Map.of("A", rain(Double.NaN), "B", rain(7)))
                        .rain()
                        .value(0))
                .isNaN();
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> catchment(0, 0, 1, 1, 2, 2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("area inside the corners must be greater than 0 and finite (m2), was 0");
        assertThatThrownBy(() -> Catchment.of(List.of(Location.of(0, 0))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("corners must be at least 3, was 1");
        assertThatThrownBy(() ->
                        GaugeWeights.at(Location.of(0, 0), gauges(1, 1, 1, 1), SpatialEstimator.inverseDistance(2)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("gauges must be at different places, G1 and G2 are both at");
        GaugeWeights two = GaugeWeights.of(Map.of("A", 3.0, "B", 1.0));
        assertThatThrownBy(() -> two.mean(Map.of("A", rain(1))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("rainByGauge must hold [A, B], held [A]");
        assertThatThrownBy(() -> two.mean(Map.of("A", rain(1), "B", rain(1, 2))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("rain of B must have the steps of A");
        assertThatThrownBy(() -> two.weight("C"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gauge must be one of [A, B], was C");
        assertThatThrownBy(() -> GaugeWeights.of(Map.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gauges must be at least one, were none");
        assertThatThrownBy(() -> GaugeWeights.of(Map.of("A", 0.0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sum of weights must be greater than 0 and finite, was 0");
    }
}
