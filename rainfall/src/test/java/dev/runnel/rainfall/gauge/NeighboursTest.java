package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class NeighboursTest {
    private static RegularSeries rain(double... dailyMm) {
        return RegularSeries.of(Instant.EPOCH, Duration.ofDays(1), dailyMm);
    }

    private static Neighbours neighbours() {
        Map<String, RegularSeries> gauges = new LinkedHashMap<>();
        gauges.put("north", rain(0, 12.2, 3.4, 0.8, 7, 0, 5.2, 1, 0, 9));
        gauges.put("east", rain(0, 10, 4, 1, 8, 0, 6, 0, 0.6, Double.NaN));
        gauges.put("south", rain(0, 0, 2, 1.2, 3, 0, 4, 0.4, 0, 8));
        return Neighbours.of(gauges);
    }

    /** Ratios by hand; rank correlations from SciPy 1.17.1, spearmanr. */
    @Test
    void everyGaugeAgainstTheMeanOfTheOthers() {
        List<Neighbours.Finding> findings = neighbours().findings(1.0);
        assertThat(findings).extracting(Neighbours.Finding::gauge).containsExactly("east", "north", "south");
        Neighbours.Finding south = findings.get(2);
        assertThat(south.periods()).isEqualTo(9);
        assertThat(south.depthMm()).isCloseTo(10.6, within(1e-12));
        assertThat(south.ratio()).isCloseTo(10.6 / ((29.6 + 29.6) / 2), within(1e-12));
        assertThat(south.dryAlone()).isEqualTo(1);
        assertThat(south.wetAlone()).isZero();
        assertThat(south.rankCorrelation()).isCloseTo(0.5506437651964586, within(1e-12));
        assertThat(findings.get(0).rankCorrelation()).isCloseTo(0.9310344827586208, within(1e-12));
        assertThat(neighbours().rankCorrelation("north", "south")).isCloseTo(0.576053215556406, within(1e-12));
        assertThat(south)
                .hasToString("south: 10.6 mm in 9 periods, ratio 0.3581, rank correlation 0.5506, 1 dry alone, 0 wet"
                        + " alone");
    }

    @Test
    void aGaugeThatDripsIsWetAlone() {
        Neighbours two = Neighbours.of(Map.of("a", rain(0, 0.6, 3, 0.2), "b", rain(0, 0, 2, 0)));
        assertThat(two.findings(0.6).get(0).wetAlone()).isEqualTo(1);
        assertThat(two.findings(0.2).get(0).wetAlone()).isEqualTo(2);
        // Three tips of 0.2 mm add up to a rounding more or less than 0.6.
        assertThat(Neighbours.of(Map.of("a", rain(0.1 + 0.2 + 0.3, 1), "b", rain(0, 1)))
                        .findings(0.6000000000000001)
                        .get(0)
                        .wetAlone())
                .isEqualTo(1);
    }

    @Test
    void givesTheDoubleMassCurve() {
        DoubleMass mass = neighbours().against("south");
        assertThat(mass.leftOut()).isEqualTo(1);
        assertThat(mass.cumulativeReference()[8]).isCloseTo(29.6, within(1e-12));
        assertThat(neighbours()).hasToString("Neighbours[east, north, south] in 10 periods of 1 d");
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> Neighbours.of(Map.of("a", rain(1))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gauges must be at least 2, was 1");
        assertThatThrownBy(() -> Neighbours.of(Map.of("a", rain(1), "b", rain(1, 2))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthMm of b must have the periods of a, 1970-01-01T00:00:00Z/1970-01-02T00:00:00Z in"
                        + " steps of PT24H, was 1970-01-01T00:00:00Z/1970-01-03T00:00:00Z in steps of PT24H");
        assertThatThrownBy(() -> Neighbours.of(Map.of("a", rain(1), "b", rain(-1))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("depthMm of b must be 0 or greater (mm)");
        assertThatThrownBy(() -> neighbours().against("west"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gauge must be one of [east, north, south], was \"west\"");
        assertThatThrownBy(() -> neighbours().findings(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() ->
                        Neighbours.of(Map.of("a", rain(1, 2), "b", rain(0, 0))).findings(1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sum of referenceMm must be greater than 0 and finite (mm), was 0");
    }
}
