package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
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

    /** Ratios by hand; rank correlations from SciPy, spearmanr. */
    @Test
    void everyGaugeAgainstTheMedianOfTheOthers() {
        List<Neighbours.Finding> findings = neighbours().findings();
        assertThat(findings).extracting(Neighbours.Finding::gauge).containsExactly("east", "north", "south");
        Neighbours.Finding south = findings.get(2);
        assertThat(south.periods()).isEqualTo(10);
        assertThat(south.depthMm()).isCloseTo(18.6, within(1e-12));
        assertThat(south.ratio()).isCloseTo(18.6 / ((29.6 + 29.6) / 2 + 9), within(1e-12));
        assertThat(south.dryAlone()).isEqualTo(1);
        assertThat(south.wetAlone()).isZero();
        assertThat(south.rankCorrelation()).isCloseTo(0.5833042966060034, within(1e-12));
        assertThat(findings.get(0).rankCorrelation()).isCloseTo(0.9310344827586208, within(1e-12));
        assertThat(neighbours().rankCorrelation("north", "south")).isCloseTo(0.576053215556406, within(1e-12));
        assertThat(south)
                .hasToString("south: 18.6 mm in 10 periods, ratio 0.4819, rank correlation 0.5833, 1 dry alone, 0 wet"
                        + " alone");
    }

    /** With the half blocked one among the others, their median is the lesser of two good ones, a few percent low. Five gauges in the same rain; one is half blocked, one is dead. The good ones are not accused. */
    @Test
    void aBlockedAndADeadGaugeDoNotAccuseTheGoodOnes() {
        Random random = new Random(7);
        double[][] depths = new double[5][120];
        for (int day = 0; day < 120; day++) {
            double truth = random.nextInt(3) == 0 ? 20 * random.nextDouble() : 0;
            for (int i = 0; i < 5; i++) {
                depths[i][day] = truth * (0.9 + 0.2 * random.nextDouble()) * (i == 3 ? 0.5 : i == 4 ? 0 : 1);
            }
        }
        Map<String, RegularSeries> gauges = new LinkedHashMap<>();
        for (int i = 0; i < 5; i++) {
            gauges.put("g" + i, rain(depths[i]));
        }
        List<Neighbours.Finding> findings = Neighbours.of(gauges).findings();
        for (int i = 0; i < 3; i++) {
            assertThat(findings.get(i).ratio()).isBetween(0.94, 1.06);
            assertThat(findings.get(i).dryAlone()).isZero();
            assertThat(Neighbours.of(gauges).against("g" + i).chanceOfBreak(10, 199, 1))
                    .isGreaterThan(0.01);
        }
        assertThat(findings.get(3).ratio()).isBetween(0.47, 0.53);
        assertThat(findings.get(4).ratio()).isZero();
        assertThat(findings.get(4).dryAlone()).isGreaterThan(20);
        // The dead gauge was known to be off: it is not there.
        Neighbours known =
                Neighbours.of(gauges).withOutages("g4", List.of(rain(depths[4]).interval()));
        assertThat(known.against("g0").ratio()).isBetween(0.94, 1.06);
        assertThatThrownBy(() -> known.against("g4"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sum of referenceMm must be greater than 0 and finite (mm), was 0");
    }

    @Test
    void aPeriodCountsIfHalfOfTheOthersTellSomething() {
        double none = Double.NaN;
        Map<String, RegularSeries> gauges = new LinkedHashMap<>();
        gauges.put("a", rain(4, 4, 4, 4));
        gauges.put("b", rain(5, none, none, 0));
        gauges.put("c", rain(6, 7, none, 5));
        gauges.put("d", rain(8, 9, 9, 6));
        DoubleMass mass = Neighbours.of(gauges).against("a");
        assertThat(mass.periods()).isEqualTo(3);
        assertThat(mass.cumulativeReference()).containsExactly(6, 14, 19.5);
    }

    @Test
    void aGaugeThatDripsIsWetAlone() {
        Neighbours two = Neighbours.of(Map.of("a", rain(0, 0.6, 3, 0.2), "b", rain(0, 0, 2, 0)));
        assertThat(two.withWetLimit(0.6).findings().get(0).wetAlone()).isEqualTo(1);
        assertThat(two.withWetLimit(0.2).findings().get(0).wetAlone()).isEqualTo(2);
        Neighbours three =
                Neighbours.of(Map.of("a", rain(0, 0.6, 3, 0.6), "b", rain(0, 0, 2, 0), "c", rain(0, 0, 2, 0.2)));
        // Three tips of 0.2 mm add up to a rounding more or less than 0.6.
        assertThat(three.withWetLimit(0.6000000000000001).findings().get(0).wetAlone())
                .isEqualTo(1);
    }

    /** Half the rain, all of it and a little more: beside two others the bad one is half of their median. */
    @Test
    void ofThreeTheOneFarthestOffIsSetAside() {
        Neighbours all = Neighbours.of(
                Map.of("bad", rain(3, 3.6, 0, 0), "good", rain(6, 7.2, 12, 0), "more", rain(6.3, 7.56, 12.6, 0)));
        assertThat(all.findings().get(2).ratio()).isCloseTo(26.46 / (4.5 + 5.4 + 12), within(1e-12));
        Neighbours settled = all.settingAside(0.2);
        assertThat(settled.setAside()).containsExactly("bad");
        assertThat(settled.findings()).extracting(Neighbours.Finding::gauge).containsExactly("bad", "good", "more");
        assertThat(settled.findings().get(0).ratio()).isCloseTo(6.6 / (6.15 + 7.38 + 12.3), within(1e-12));
        assertThat(settled.findings().get(1).ratio()).isCloseTo(1 / 1.05, within(1e-12));
        assertThat(settled.findings().get(2).ratio()).isCloseTo(1.05, within(1e-12));
        assertThat(settled).hasToString("Neighbours[bad, good, more] in 4 periods of 1 d, set aside [bad]");
        // Nothing is set aside where all agree, nor of two.
        assertThat(all.settingAside(5).setAside()).isEmpty();
        assertThat(Neighbours.of(Map.of("a", rain(1, 2), "b", rain(4, 8)))
                        .settingAside(0.2)
                        .setAside())
                .isEmpty();
        assertThatThrownBy(() -> all.settingAside(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("tolerance must be greater than 0 and finite, was 0");
    }

    /** Hours of two records that begin on different days; one storm lies in the first alone, one in a gap, one in both. */
    @Test
    void comparesInStorms() {
        Duration hour = Duration.ofHours(1);
        double[] a = new double[72];
        double[] b = new double[48];
        a[5] = 4;
        a[30] = 1;
        a[31] = 2;
        b[6] = 1.5;
        b[7] = 1;
        a[60] = 5;
        b[36] = 6;
        b[40] = Double.NaN;
        Instant start = Instant.parse("2026-05-01T00:00:00Z");
        RegularSeries first = RegularSeries.of(start, hour, a);
        RegularSeries second = RegularSeries.of(start.plus(Duration.ofDays(1)), hour, b);
        List<Interval> storms = List.of(
                Interval.of(start.plus(hour.multipliedBy(5)), hour),
                Interval.of(start.plus(hour.multipliedBy(30)), hour.multipliedBy(2)),
                Interval.of(start.plus(hour.multipliedBy(60)), hour),
                Interval.of(start.plus(hour.multipliedBy(63)), hour.multipliedBy(2)));
        Neighbours neighbours = Neighbours.inPeriods(Map.of("a", first, "b", second), storms);
        assertThat(neighbours.compared("a"))
                .containsExactly(
                        new Neighbours.Compared(storms.get(1), 3, 2.5), new Neighbours.Compared(storms.get(2), 5, 6));
        assertThat(neighbours.finding("b").orElseThrow().ratio()).isCloseTo(8.5 / 8, within(1e-12));
        assertThat(neighbours.withOutages("b", storms.subList(2, 3)).finding("b"))
                .isEmpty();
        assertThat(neighbours).hasToString("Neighbours[a, b] in 4 periods");
        assertThat(neighbours.compared("a").get(0))
                .hasToString("2026-05-02T06:00:00Z/2026-05-02T08:00:00Z: 3 mm, others 2.5 mm");
        assertThatThrownBy(() -> Neighbours.inPeriods(
                        Map.of("a", first, "b", second), List.of(Interval.of(start, Duration.ZERO))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("periods must not be empty, was ");
    }

    @Test
    void givesTheDoubleMassCurve() {
        DoubleMass mass = neighbours().against("south");
        assertThat(mass.leftOut()).isZero();
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
                        + " steps of 1 d, was 1970-01-01T00:00:00Z/1970-01-03T00:00:00Z in steps of 1 d");
        assertThatThrownBy(() -> Neighbours.of(Map.of("a", rain(1), "b", rain(-1))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("depthMm of b must be 0 or greater (mm)");
        assertThatThrownBy(() -> neighbours().against("west"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gauge must be one of [east, north, south], was \"west\"");
        assertThatThrownBy(() -> neighbours().withWetLimit(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() ->
                        Neighbours.of(Map.of("a", rain(1, 2), "b", rain(0, 0))).findings())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sum of referenceMm must be greater than 0 and finite (mm), was 0");
    }
}
