package dev.runnel.rainfall.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import org.junit.jupiter.api.Test;

class RunoffTest {
    private static final DdfTable TABLE = DdfTable.parse("""
            duration_min,1,10
            5,5,9
            20,10,18
            60,16,28
            """, ReturnPeriodBasis.PEAKS_OVER_THRESHOLD);
    private static final DrainedArea TWO_HECTARES = DrainedArea.none()
            .with(RunoffCoefficient.of("roofs", 0.9), 0.5)
            .with(RunoffCoefficient.of("lawn", 0.1), 1.5);

    @Test
    void theTwentyFourHourStormsHoldTheirShares() {
        for (NrcsType type : NrcsType.values()) {
            DesignStorm storm = type.storm(100, Duration.ofMinutes(15));
            assertThat(storm.depthMm()).isCloseTo(100, within(1e-12));
            assertThat(storm.depths()).hasSize(96);
        }
        assertThat(NrcsType.II.depthShare(0.5)).isEqualTo(0.663);
        assertThat(NrcsType.II.storm(100, Duration.ofMinutes(15)).peakMmPerHour())
                .isCloseTo(122.4, within(1e-9));
        assertThat(NrcsType.IA.depthShare(9.0 / 24)).isEqualTo(0.52);
    }

    @Test
    void huffNamesTheQuarterWithMostRain() {
        for (HuffQuartile each : HuffQuartile.values()) {
            double[] quarters =
                    each.storm(40, Duration.ofHours(4), Duration.ofHours(1)).depths();
            int greatest = 0;
            for (int i = 1; i < 4; i++) {
                greatest = quarters[i] > quarters[greatest] ? i : greatest;
            }
            assertThat(greatest).isEqualTo(each.ordinal());
        }
        assertThat(HuffQuartile.usualFor(Duration.ofHours(6))).isEqualTo(HuffQuartile.FIRST);
        assertThat(HuffQuartile.usualFor(Duration.ofHours(13))).isEqualTo(HuffQuartile.THIRD);
    }

    @Test
    void theRationalMethodByHand() {
        assertThat(TWO_HECTARES.coefficient()).isCloseTo(0.3, within(1e-15));
        RationalMethod method =
                RationalMethod.of(TWO_HECTARES, Duration.ofMinutes(8)).withTimeOfFlow(Duration.ofMinutes(12));
        assertThat(method.concentrationTime()).isEqualTo(Duration.ofMinutes(20));
        // 6000 m2 times 36 mm/h is 60 l/s.
        assertThat(method.peakM3PerS(36)).isCloseTo(0.060, within(1e-15));
        assertThat(method.peakM3PerS(TABLE, 10)).isCloseTo(6000 * 54 / 3.6e6, within(1e-15));
        assertThat(method.modified().peakM3PerS(36)).isCloseTo(0.078, within(1e-15));
        assertThat(method)
                .hasToString("RationalMethod[DrainedArea[2 surfaces, 2 ha, C 0.3], entry 8 min, flow 12 min]");
        assertThatThrownBy(() -> RationalMethod.of(DrainedArea.none(), Duration.ofMinutes(5)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("area must be greater than 0 and finite (m2), was 0");
    }

    @Test
    void theHydrographHoldsTheRunoff() {
        RationalMethod method = RationalMethod.of(TWO_HECTARES, Duration.ofMinutes(20));
        RegularSeries flow = method.hydrograph(TABLE, 10, Duration.ofHours(1), Duration.ofMinutes(7));
        double volume = flow.sum() * 7 * 60;
        assertThat(volume).isCloseTo(6000 * 28 / 1000.0, within(1e-9));
        assertThat(method.storageM3(TABLE, 10, Duration.ofHours(1), 0)).isCloseTo(168, within(1e-9));
        assertThat(method.storageM3(TABLE, 10, Duration.ofHours(1), 0.02))
                .isCloseTo(168 - 0.02 * 4800 / 2, within(1e-9));
        assertThat(method.storageM3(TABLE, 10, Duration.ofHours(1), 1)).isZero();
        assertThatThrownBy(() -> method.storageM3(TABLE, 10, Duration.ofMinutes(10), 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must be no shorter than the time of concentration, 20 min, was 10 min");
        assertThatThrownBy(() -> method.hydrograph(TABLE, 10, Duration.ofHours(1), Duration.ofNanos(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("step must be such that the flow has at most 1000000 of them");
    }

    @Test
    void coefficientsAreNamedAndFromMemory() {
        assertThat(RunoffCoefficient.published("roofs")).hasToString("roofs 0.75 to 0.95");
        assertThat(RunoffCoefficient.published("asphalt").middle().coefficient())
                .isCloseTo(0.825, within(1e-15));
        assertThat(RunoffCoefficient.published())
                .allMatch(range -> range.least() < range.greatest())
                .hasSize(23);
        assertThatThrownBy(() -> RunoffCoefficient.published("moon"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("surface must be one of [business: downtown, ");
        assertThatThrownBy(() -> RunoffCoefficient.of("roof", 1.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("coefficient must be in [0, 1], was 1.1");
    }

    @Test
    void timesGrowWithLengthAndFallWithGradient() {
        FlowPath path = FlowPath.ofLength(100).withGradient(0.01);
        assertThat(path.atVelocity(1)).isEqualTo(Duration.ofSeconds(100));
        assertThat(FlowPath.ofLength(200).withGradient(0.01).kirpich()).isGreaterThan(path.kirpich());
        assertThat(path.withGradient(0.02).kerby(0.4)).isLessThan(path.kerby(0.4));
        assertThat(path.airport(RunoffCoefficient.of("grass", 0.2)))
                .isGreaterThan(path.airport(RunoffCoefficient.of("paving", 0.9)));
        assertThatThrownBy(() -> FlowPath.ofLength(400).kerby(0.4))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("length must be in [0, 365.76");
    }

    /** Worked by hand: 10,000 heads of 150 litres, 400 and 200 m3 a day. */
    @Test
    void dryWeatherAndConsent() {
        DryWeatherDesign design =
                DryWeatherDesign.ofPopulation(10_000).withInfiltration(400).withTradeEffluent(200);
        assertThat(design.dryWeatherM3PerDay()).isEqualTo(2100);
        assertThat(design.formulaAM3PerDay()).isCloseTo(16_100, within(1e-9));
        assertThat(design.multipleM3PerDay(6)).isEqualTo(12_600);
        assertThat(design.fullFlowM3PerDay()).isEqualTo(5_500);
        assertThat(DryWeatherDesign.ofPopulation(1000).harmonFactor()).isEqualTo(3.8);
        assertThat(DryWeatherDesign.ofPopulation(1000).babbittFactor()).isEqualTo(5);
        assertThatThrownBy(() -> DryWeatherDesign.ofPopulation(999).babbittFactor())
                .isInstanceOf(IllegalArgumentException.class);
    }
}
