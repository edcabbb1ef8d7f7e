package dev.runnel.rainfall.areal;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class RainInSpaceTest {
    private static final Variogram SPHERE =
            Variogram.spherical(5000).withSill(10).withNugget(1);
    private static final SpatialEstimator KRIGING = SpatialEstimator.ordinaryKriging(SPHERE);
    private static final Map<String, Location> PLACES =
            Map.of("a", Location.of(0, 0), "b", Location.of(2000, 0), "c", Location.of(0, 3000));

    private static RegularSeries rain(double... depths) {
        return RegularSeries.of(Instant.EPOCH, Duration.ofHours(1), depths);
    }

    @Test
    void aVariogramRisesFromTheNuggetToTheSill() {
        assertThat(SPHERE.semivarianceMm2(0)).isZero();
        assertThat(SPHERE.semivarianceMm2(1e-9)).isCloseTo(1, within(1e-9));
        assertThat(SPHERE.semivarianceMm2(2500)).isCloseTo(1 + 9 * (0.75 - 0.0625), within(1e-12));
        assertThat(SPHERE.semivarianceMm2(9000)).isEqualTo(10);
        assertThat(Variogram.exponential(5000).semivarianceMm2(5000)).isCloseTo(1 - Math.exp(-3), within(1e-15));
        assertThat(Variogram.gaussian(5000).semivarianceMm2(2500)).isCloseTo(1 - Math.exp(-0.75), within(1e-15));
        assertThat(SPHERE.withSill(20))
                .isEqualTo(Variogram.spherical(5000).withSill(20).withNugget(2));
        assertThat(SPHERE).hasToString("Variogram[spherical, range 5000 m, sill 10 mm2, nugget 1 mm2]");
        assertThatThrownBy(() -> SPHERE.withNugget(11))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("nuggetMm2 must be in [0, 10] mm2, was 11");
        assertThatThrownBy(() -> Variogram.spherical(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Two gauges and a place half way: by symmetry a half each, and the variance 2 γ(h/2) − γ(h)/2. */
    @Test
    void krigingOfTwoGaugesHalfWay() {
        PlaceWeights weights = KRIGING.weights(Location.of(1000, 0), List.of(Location.of(0, 0), Location.of(2000, 0)));
        assertThat(weights.weights()[0]).isCloseTo(0.5, within(1e-12));
        assertThat(weights.varianceMm2().orElseThrow())
                .isCloseTo(2 * SPHERE.semivarianceMm2(1000) - SPHERE.semivarianceMm2(2000) / 2, within(1e-12));
        assertThat(weights.depthMm(4, 6)).isCloseTo(5, within(1e-12));
        assertThat(weights.toString()).startsWith("PlaceWeights[0.5, 0.5; variance ");
    }

    @Test
    void aGaugeAtThePlaceTakesAll() {
        List<Location> gauges = List.copyOf(PLACES.values());
        for (SpatialEstimator rule : List.of(KRIGING, SpatialEstimator.inverseDistance(2))) {
            double[] weights = rule.weights(gauges.get(1), gauges).weights();
            assertThat(weights[1]).isCloseTo(1, within(1e-12));
            assertThat(weights[0]).isCloseTo(0, within(1e-12));
        }
        assertThatThrownBy(() -> KRIGING.weights(Location.of(0, 0), List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gauges must be at least one, were none");
        assertThatThrownBy(() -> KRIGING.weights(Location.of(0, 0), List.of(Location.of(1, 1), Location.of(1, 1))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("gauges must be at different places, two are at ");
        assertThatThrownBy(() -> PlaceWeights.of(0.5, 0.4))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("sum of weights must be in [");
    }

    @Test
    void crossValidationLeavesOutEachGauge() {
        Map<String, RegularSeries> rain =
                Map.of("a", rain(0, 4, 1), "b", rain(0, 6, Double.NaN), "c", rain(0, 2, Double.NaN));
        CrossValidation found = CrossValidation.of(SpatialEstimator.inverseDistance(1), PLACES, rain);
        double a = (6 / 2000.0 + 2 / 3000.0) / (1 / 2000.0 + 1 / 3000.0) - 4;
        double far = Math.hypot(2000, 3000);
        double b = (4 / 2000.0 + 2 / far) / (1 / 2000.0 + 1 / far) - 6;
        double c = (4 / 3000.0 + 6 / far) / (1 / 3000.0 + 1 / far) - 2;
        assertThat(found.estimates()).isEqualTo(3);
        assertThat(found.biasMm()).isCloseTo((a + b + c) / 3, within(1e-12));
        assertThat(found.rootMeanSquareMm()).isCloseTo(Math.sqrt((a * a + b * b + c * c) / 3), within(1e-12));
        assertThat(found.standardisedSquare()).isEmpty();
        assertThatThrownBy(() -> CrossValidation.of(KRIGING, PLACES, Map.of("a", rain(0), "b", rain(0), "c", rain(0))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("rainByGauge must hold a wet step that two gauges have, held none");
    }

    @Test
    void gapsAreFilledFromNeighboursAndMarked() {
        Map<String, RegularSeries> rain =
                Map.of("a", rain(Double.NaN, 1, Double.NaN), "b", rain(4, 2, Double.NaN), "c", rain(10, 3, Double.NaN));
        NetworkFilling filling = NetworkFilling.of(SpatialEstimator.inverseDistance(1), PLACES);
        FilledRain a = requireNonNull(filling.fill(rain).get("a"));
        assertThat(a.depth().value(0)).isCloseTo((4 * 3 + 10 * 2) / 5.0, within(1e-12));
        assertThat(a.isEstimate(0)).isTrue();
        assertThat(a.isEstimate(1)).isFalse();
        assertThat(a.depth().value(2)).isNaN();
        assertThat(a).hasToString("FilledRain[3 steps, 1 filled with 6.4 mm, 1 missing]");
        Series series = a.toSeries();
        assertThat(series.quality(0)).isEqualTo(Quality.ESTIMATE);
        assertThat(series.quality(1)).isEqualTo(Quality.UNCHECKED);
        assertThat(requireNonNull(filling.withLeastNeighbours(3).fill(rain).get("a"))
                        .filled())
                .isZero();
        assertThat(requireNonNull(filling.fill(rain).get("b")).filled()).isZero();
    }

    @Test
    void aCatchmentTakesTheShareOfEveryCell() {
        RainGrid grid = RainGrid.from(Location.of(0, 0), 1000).withColumns(2).withRows(2);
        Catchment square = Catchment.of(List.of(
                Location.of(500, 500), Location.of(1500, 500), Location.of(1500, 2500), Location.of(500, 2500)));
        CatchmentCells cells = grid.over(square);
        assertThat(cells).hasToString("CatchmentCells[4 cells, 75 % of the catchment]");
        double[] depths = grid.depths("# from the north\n1, 2\n3, NaN\n");
        CatchmentCells.Mean mean = cells.mean(depths);
        assertThat(mean.depthMm()).isCloseTo((1 * 0.5 + 2 * 0.5 + 3 * 0.25) / 1.25, within(1e-12));
        assertThat(mean.knownShare()).isCloseTo(1.25 / 2, within(1e-12));
        assertThat(grid.indexOf(Location.of(1500, 1500))).isEqualTo(1);
        assertThat(grid.centre(2)).isEqualTo(Location.of(500, 500));
        assertThatThrownBy(() -> grid.depths("1 2\n3 x\n"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("text line 2, column 2: must be a number, was \"x\"");
        assertThatThrownBy(() -> grid.depths("1 2\n"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("text must hold 2 rows, held 1");
        assertThatThrownBy(() -> grid.depths("1 2\n3 -1\n"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("text line 2, column 2: depth must be 0 or greater and finite (mm), was -1");
        assertThatThrownBy(() -> grid.indexOf(Location.of(-1, 0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("place must lie in RainGrid[2 by 2 cells of 1000 m from ");
        assertThatThrownBy(() -> grid.withColumns(Integer.MAX_VALUE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("cells must be at most 10000000, were 2147483647 by 2");
        CatchmentCells.Mean none = cells.mean(new double[] {Double.NaN, Double.NaN, Double.NaN, Double.NaN});
        assertThat(none.knownShare()).isZero();
        assertThat(none.depthMm()).isNaN();
    }

    @Test
    void theBiasOfAFieldIsTheRatioOfSums() {
        double[] gauges = {10, Double.NaN, 0.2, 6};
        double[] cells = {8, 3, 0.1, 5};
        MeanFieldBias bias = MeanFieldBias.of(gauges, cells, 1);
        assertThat(bias).isEqualTo(new MeanFieldBias(16 / 13.0, 2, 2));
        assertThat(bias.corrected(new double[] {13, Double.NaN})).containsExactly(16, Double.NaN);
        assertThatThrownBy(() -> MeanFieldBias.of(new double[] {1}, new double[] {0}, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sum of gridMm must be greater than 0 and finite (mm), was 0");
    }
}
