package dev.runnel.rainfall.areal;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Values by hand, what stands on a limit, and what is equal to what. */
class ArealValuesTest {
    private static final Map<String, Location> TWO = Map.of("a", Location.of(0, 0), "b", Location.of(1000, 0));

    private static RegularSeries rain(double... depths) {
        return RegularSeries.of(Instant.EPOCH, Duration.ofHours(1), depths);
    }

    /** Two gauges that differ by 2 mm in one step and by nothing in the other: each estimates the other. */
    @Test
    void crossValidationOfTwoGauges() {
        CrossValidation inverse =
                CrossValidation.of(SpatialEstimator.inverseDistance(2), TWO, Map.of("a", rain(4, 1), "b", rain(2, 1)));
        assertThat(inverse.estimates()).isEqualTo(4);
        assertThat(inverse.biasMm()).isZero();
        assertThat(inverse.rootMeanSquareMm()).isCloseTo(Math.sqrt(2), within(1e-12));
        assertThat(inverse).hasToString("CrossValidation[4 estimates, bias 0 mm, root mean square 1.41 mm]");
        // One gauge at the distance h: its variance is twice the semivariance there, 4 mm2 over 4 estimates.
        Variogram variogram = Variogram.exponential(3000).withSill(4);
        CrossValidation kriged = CrossValidation.of(
                SpatialEstimator.ordinaryKriging(variogram), TWO, Map.of("a", rain(4, 1), "b", rain(2, 1)));
        double variance = 2 * variogram.semivarianceMm2(1000);
        assertThat(kriged.standardisedSquare().orElseThrow()).isCloseTo(8 / variance / 4, within(1e-12));
        assertThat(kriged.toString()).contains(", standardised ");
    }

    @Test
    void aGridNamesItsCells() {
        RainGrid grid =
                RainGrid.from(Location.of(1000, 2000), 500).withColumns(3).withRows(2);
        // From the north-west, row by row.
        assertThat(grid.centre(0)).isEqualTo(Location.of(1250, 2750));
        assertThat(grid.centre(5)).isEqualTo(Location.of(2250, 2250));
        for (int i = 0; i < grid.size(); i++) {
            assertThat(grid.indexOf(grid.centre(i))).isEqualTo(i);
        }
        assertThat(grid.indexOf(Location.of(1000, 2000))).isEqualTo(3);
        assertThat(grid.indexOf(Location.of(1500, 2500))).isEqualTo(1);
        for (Location outside : List.of(
                Location.of(2500, 2100), Location.of(1100, 3000), Location.of(999, 2100), Location.of(1100, 1999))) {
            assertThatThrownBy(() -> grid.indexOf(outside)).hasMessageStartingWith("place must lie in RainGrid");
        }
        assertThatThrownBy(() -> grid.centre(6)).hasMessage("index must be in [0, 5], was 6");
        assertThatThrownBy(() -> grid.centre(-1)).hasMessage("index must be in [0, 5], was -1");
        assertThat(RainGrid.from(Location.of(0, 0), 1)
                        .withColumns(1000)
                        .withRows(10_000)
                        .size())
                .isEqualTo(10_000_000);
        assertThatThrownBy(() ->
                        RainGrid.from(Location.of(0, 0), 1).withColumns(1000).withRows(10_001))
                .hasMessage("cells must be at most 10000000, were 1000 by 10001");
    }

    @Test
    void theCellsOfACatchment() {
        RainGrid grid = RainGrid.from(Location.of(0, 0), 100).withColumns(2).withRows(1);
        Catchment catchment = Catchment.of(
                List.of(Location.of(50, 0), Location.of(250, 0), Location.of(250, 100), Location.of(50, 100)));
        CatchmentCells cells = grid.over(catchment);
        assertThat(cells.size()).isEqualTo(2);
        assertThat(cells.coveredShare()).isCloseTo(0.75, within(1e-12));
        assertThat(cells.mean(new double[] {6, 3}).depthMm()).isCloseTo(4, within(1e-12));
        assertThat(cells.mean(new double[] {6, 3})).hasToString("Mean[4 mm, 75 % known]");
        assertThat(cells.mean(new double[] {Double.NaN, 3}).knownShare()).isCloseTo(0.5, within(1e-12));
        assertThatThrownBy(() -> cells.mean(new double[] {-1, 3}))
                .hasMessage("depthsMm at index 0 must be 0 or greater and finite (mm), was -1");
        assertThatThrownBy(() -> cells.mean(new double[] {1})).isInstanceOf(IllegalArgumentException.class);
        // One that only touches the grid shares no area with it.
        Catchment beside = Catchment.of(List.of(Location.of(200, 0), Location.of(300, 0), Location.of(300, 100)));
        assertThatThrownBy(() -> grid.over(beside)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aPairOnTheLeastDepthCounts() {
        MeanFieldBias bias = MeanFieldBias.of(new double[] {1, 3, 0.2}, new double[] {0.5, 1.5, 0.1}, 1);
        assertThat(bias.pairs()).isEqualTo(2);
        assertThat(bias.factor()).isEqualTo(2);
        assertThat(bias).hasToString("MeanFieldBias[2 from 2 pairs, 1 left out]");
        assertThatThrownBy(() -> MeanFieldBias.of(new double[] {1, 2}, new double[] {1}, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> MeanFieldBias.of(new double[] {1}, new double[] {1}, -1))
                .hasMessage("leastMm must be 0 or greater and finite (mm), was -1");
    }

    @Test
    void fillingNeedsAsManyNeighboursAsStated() {
        Map<String, Location> three =
                Map.of("a", Location.of(0, 0), "b", Location.of(1000, 0), "c", Location.of(0, 1000));
        Map<String, RegularSeries> rain =
                Map.of("a", rain(Double.NaN, 1), "b", rain(2, Double.NaN), "c", rain(4, Double.NaN));
        NetworkFilling filling =
                NetworkFilling.of(SpatialEstimator.inverseDistance(2), three).withLeastNeighbours(2);
        assertThat(requireNonNull(filling.fill(rain).get("a")).depth().value(0)).isCloseTo(3, within(1e-12));
        assertThat(requireNonNull(filling.fill(rain).get("b")).depth().value(1)).isNaN();
        assertThat(filling).hasToString("NetworkFilling[3 gauges, inverse distance to the power 2]");
        Map<String, Location> same = Map.of("a", Location.of(0, 0), "b", Location.of(0, 0));
        assertThatThrownBy(() -> NetworkFilling.of(SpatialEstimator.inverseDistance(2), same))
                .hasMessageStartingWith("gauges must be at different places");
        assertThatThrownBy(() -> filling.fill(Map.of("a", rain(1), "b", rain(1), "c", rain(-1))))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void weightsAndVariogramsAreEqualByTheirParts() {
        PlaceWeights half = PlaceWeights.of(0.5, 0.5);
        assertThat(half).isEqualTo(PlaceWeights.of(0.5, 0.5)).hasSameHashCodeAs(PlaceWeights.of(0.5, 0.5));
        assertThat(half)
                .isNotEqualTo(PlaceWeights.of(0.25, 0.75))
                .isNotEqualTo(half.withVariance(1))
                .isNotEqualTo("half");
        assertThat(half.hashCode())
                .isEqualTo(31 * Arrays.hashCode(new double[] {0.5, 0.5})
                        + java.util.OptionalDouble.empty().hashCode());
        assertThatThrownBy(() -> half.depthMm(1)).isInstanceOf(IllegalArgumentException.class);
        Variogram sphere = Variogram.spherical(5000).withSill(10).withNugget(1);
        assertThat(sphere)
                .isNotEqualTo(Variogram.spherical(4000).withSill(10).withNugget(1))
                .isNotEqualTo(Variogram.exponential(5000).withSill(10).withNugget(1))
                .isNotEqualTo(Variogram.spherical(5000).withSill(10).withNugget(2))
                .isNotEqualTo(Variogram.spherical(5000).withSill(11).withNugget(1.1));
        assertThat(sphere.hashCode())
                .isEqualTo(Variogram.spherical(5000).withSill(10).withNugget(1).hashCode())
                .isNotEqualTo(
                        Variogram.spherical(4000).withSill(10).withNugget(1).hashCode());
    }

    @Test
    void weightsOfGaugesAreRefusedWithoutSome() {
        assertThatThrownBy(() -> GaugeWeights.of(Map.of())).isInstanceOf(IllegalArgumentException.class);
        Catchment square =
                Catchment.of(List.of(Location.of(0, 0), Location.of(10, 0), Location.of(10, 10), Location.of(0, 10)));
        assertThatThrownBy(() -> GaugeWeights.thiessen(square, Map.of())).isInstanceOf(IllegalArgumentException.class);
        Map<String, Location> same = Map.of("a", Location.of(1, 1), "b", Location.of(1, 1));
        assertThatThrownBy(() -> GaugeWeights.thiessen(square, same)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> GaugeWeights.at(Location.of(0, 0), Map.of(), SpatialEstimator.inverseDistance(2)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(GaugeWeights.thiessen(square, Map.of("only", Location.of(50, 50)))
                        .gauges())
                .containsExactly("only");
        assertThat(SpatialEstimator.inverseDistance(1.5)).hasToString("inverse distance to the power 1.5");
        assertThat(SpatialEstimator.ordinaryKriging(Variogram.spherical(10)).toString())
                .startsWith("ordinary kriging by Variogram[spherical");
        assertThatThrownBy(() -> SpatialEstimator.inverseDistance(2).weights(Location.of(0, 0), List.of()))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void reductionsHoldOnTheLimitsOfTheirRange() {
        ArealReduction british = ArealReduction.keersWescott();
        assertThat(british).hasToString("ArealReduction[Keers and Wescott (1977)]");
        assertThat(british.factor(1, Duration.ofMinutes(5))).isBetween(0.5, 1.0);
        assertThat(british.factor(1000, Duration.ofDays(25))).isBetween(0.9, 1.0);
        assertThatThrownBy(() -> british.factor(1000, Duration.ofDays(25).plusNanos(1)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> british.factor(1, Duration.ofMinutes(5).minusNanos(1)))
                .isInstanceOf(IllegalArgumentException.class);
        ArealReduction australian = ArealReduction.australia2019(AustralianRegion.values()[0], 0.01);
        assertThat(australian.factor(0.5, Duration.ofMinutes(30))).isEqualTo(1);
        assertThat(australian.factor(1, Duration.ofMinutes(30))).isEqualTo(1);
        assertThat(australian.factor(100, Duration.ofHours(168))).isBetween(0.9, 1.0);
        for (Duration outside : List.of(
                Duration.ofMinutes(30).minusNanos(1), Duration.ofHours(168).plusNanos(1))) {
            assertThatThrownBy(() -> australian.factor(100, outside)).isInstanceOf(IllegalArgumentException.class);
        }
        // A day is ruled by the areas of long rain.
        assertThat(australian.factor(30_000, Duration.ofDays(1))).isBetween(0.3, 1.0);
        assertThatThrownBy(() -> australian.factor(1001, Duration.ofDays(1).minusNanos(1)))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
