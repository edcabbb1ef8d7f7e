package dev.runnel.rainfall.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.ddf.FormulaDdf;
import dev.runnel.rainfall.ddf.IntensityFormula;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Values by hand, off the points where a slip would cancel, and what stands on a limit. */
class FormulasByHandTest {
    private static final double FOOT = 0.3048;

    private static double minutes(Duration time) {
        return time.toNanos() / 60e9;
    }

    /** 0.0078 1000^0.77 0.01^-0.385, 0.828 (300 0.4/sqrt 0.02)^0.467 and 1.8 (1.1 - 0.4) sqrt 400/cbrt 8, from a calculator. */
    @Test
    void timesOfFlowPaths() {
        FlowPath thousandFeet = FlowPath.ofLength(1000 * FOOT).withGradient(0.01);
        assertThat(minutes(thousandFeet.kirpich())).isCloseTo(9.37766259001582, within(1e-9));
        FlowPath threeHundred = FlowPath.ofLength(300 * FOOT).withGradient(0.02);
        assertThat(minutes(threeHundred.kerby(0.4))).isCloseTo(19.307119058838587, within(1e-9));
        FlowPath fourHundred = FlowPath.ofLength(400 * FOOT).withGradient(0.08);
        assertThat(minutes(fourHundred.airport(RunoffCoefficient.of("grass", 0.4))))
                .isCloseTo(12.6, within(1e-9));
        assertThat(FlowPath.ofLength(90).withGradient(0.01).atVelocity(1.5)).isEqualTo(Duration.ofMinutes(1));
        assertThat(thousandFeet).hasToString("FlowPath[304.8 m, gradient 0.01]");
    }

    /** 40 mm in an hour, 25 of them in 20 min: the shoulder is 2 15/(2/3) = 45 mm/h, the peak 2 25/(1/3) - 45 = 105 mm/h. */
    @Test
    void sharesOfTwoTriangles() {
        Duration hour = Duration.ofHours(1);
        Duration third = Duration.ofMinutes(20);
        DoubleTriangle early = DoubleTriangle.of(40, hour, 25, third, 0.25);
        // Ten minutes of rise, then twenty, then thirty of fall.
        assertThat(early.depthShare(0)).isZero();
        assertThat(early.depthShare(5 / 60.0)).isCloseTo(45 * 0.5 * (5 / 60.0) / 2 / 40, within(1e-15));
        assertThat(early.depthShare(10 / 60.0)).isCloseTo(3.75 / 40, within(1e-15));
        assertThat(early.depthShare(20 / 60.0)).isCloseTo((3.75 + 12.5) / 40, within(1e-15));
        assertThat(early.depthShare(30 / 60.0)).isCloseTo((3.75 + 25) / 40, within(1e-15));
        assertThat(early.depthShare(45 / 60.0)).isCloseTo(1 - 45 * 0.5 * 0.25 / 2 / 40, within(1e-15));
        assertThat(early.depthShare(1)).isEqualTo(1);
        assertThat(early).hasToString("DoubleTriangle[40 mm in 1 h, 25 mm of it in 20 min]");
        // Nothing before, or nothing after, the intense part.
        assertThat(DoubleTriangle.of(40, hour, 25, third, 0).depthShare(10 / 60.0))
                .isCloseTo(12.5 / 40, within(1e-15));
        DoubleTriangle late = DoubleTriangle.of(40, hour, 25, third, 1);
        assertThat(late.depthShare(50 / 60.0)).isCloseTo((15 + 12.5) / 40, within(1e-15));
        assertThat(late.depthShare(1)).isEqualTo(1);
        // A peak no higher than the shoulder is allowed, a lower one is not, nor an intense part as long as the whole.
        DoubleTriangle level = DoubleTriangle.of(30, hour, 20, Duration.ofMinutes(30), 0.5);
        assertThat(level.peakMmPerHour()).isEqualTo(level.shoulderMmPerHour());
        assertThatThrownBy(() -> DoubleTriangle.of(30, hour, 19.99, Duration.ofMinutes(30), 0.5))
                .hasMessageStartingWith("intenseDepthMm must be great enough");
        assertThatThrownBy(() -> DoubleTriangle.of(40, hour, 40, hour, 0.5))
                .hasMessage("intense must be shorter than 1 h, was 1 h");
    }

    @Test
    void dryWeatherByHand() {
        DryWeatherDesign town = DryWeatherDesign.ofPopulation(32_000).withLitresPerHead(200);
        assertThat(town.dryWeatherM3PerDay()).isEqualTo(6400);
        assertThat(town.babbittFactor()).isCloseTo(2.5, within(1e-15));
        assertThat(DryWeatherDesign.ofPopulation(1000).babbittFactor()).isEqualTo(5);
        assertThat(town).hasToString("DryWeatherDesign[32000 heads, 6400 m3/d]");
        assertThat(DrainedArea.none()
                        .with(RunoffCoefficient.of("paving", 0.9), 2.5)
                        .areaM2())
                .isEqualTo(25_000);
    }

    @Test
    void aSymmetricProfileHasOpenLimits() {
        assertThatThrownBy(() -> SymmetricProfile.of(0, 1)).hasMessage("a must be above 0 and below 1, was 0");
        assertThatThrownBy(() -> SymmetricProfile.of(1, 1)).hasMessage("a must be above 0 and below 1, was 1");
        SymmetricProfile profile = SymmetricProfile.of(0.1, 0.8);
        assertThat(profile.depthShare(0.5)).isEqualTo(0.5);
        assertThat(profile).hasToString("SymmetricProfile[a 0.1, b 0.8]");
    }

    @Test
    void aDurationOnTheLimitOfAQuartileBelongsToTheShorter() {
        assertThat(HuffQuartile.usualFor(Duration.ofHours(6))).isEqualTo(HuffQuartile.FIRST);
        assertThat(HuffQuartile.usualFor(Duration.ofHours(12))).isEqualTo(HuffQuartile.SECOND);
        assertThat(HuffQuartile.usualFor(Duration.ofHours(24))).isEqualTo(HuffQuartile.THIRD);
        assertThat(HuffQuartile.usualFor(Duration.ofHours(25))).isEqualTo(HuffQuartile.FOURTH);
    }

    /** The halves of a storm by i = 600/(t + 10) in min: its peak lies at 0.4 of the hour, where the sums of both sides meet. */
    @Test
    void theChicagoStormHoldsBothSidesOfItsPeak() {
        Duration step = Duration.ofMinutes(6);
        IntensityFormula formula = IntensityFormula.talbot(600, 10, Duration.ofMinutes(1), Duration.ofHours(2));
        DesignStorm storm = DesignStorm.chicago(formula, Duration.ofHours(1), 0.4, step);
        double total = formula.depthMm(Duration.ofHours(1));
        double before = 0;
        for (int i = 0; i < 4; i++) {
            before += storm.depths()[i];
        }
        assertThat(before).isCloseTo(0.4 * total, within(1e-12));
        // The last step before the peak is 0.4 of the depth that 6/0.4 = 15 min bring, the first after it 0.6 of 10
        // min.
        assertThat(storm.depths()[3]).isCloseTo(0.4 * formula.depthMm(Duration.ofMinutes(15)), within(1e-12));
        assertThat(storm.depths()[4]).isCloseTo(0.6 * formula.depthMm(Duration.ofMinutes(10)), within(1e-12));
        IntensityFormula fromSix = IntensityFormula.talbot(600, 10, step, Duration.ofHours(2));
        assertThat(DesignStorm.chicago(fromSix, Duration.ofHours(1), 0.4, step).depths()[3])
                .isCloseTo(storm.depths()[3], within(1e-12));
        for (double outside : new double[] {0, 1}) {
            assertThatThrownBy(() -> DesignStorm.chicago(formula, Duration.ofHours(1), outside, step))
                    .hasMessageStartingWith("peakAt must be above 0 and below 1, was ");
        }
        assertThatThrownBy(() -> DesignStorm.ofDepths("given", step, 1, -0.5, 2))
                .hasMessage("depthsMm at index 1 must be 0 or greater and finite (mm), was -0.5");
    }

    /** 1 ha at C = 0.5, 10 min to concentrate, 36 mm/h for 20 min by i = 2160/(t + 40): Q = 0.05 m3/s. */
    @Test
    void steadyRainByHand() {
        RationalMethod method = RationalMethod.of(
                        DrainedArea.none().with(RunoffCoefficient.of("mixed", 0.5), 1), Duration.ofMinutes(4))
                .withTimeOfFlow(Duration.ofMinutes(6));
        Duration twenty = Duration.ofMinutes(20);
        Duration most = Duration.ofHours(2);
        FormulaDdf relation = FormulaDdf.of(
                ReturnPeriodBasis.ANNUAL_MAXIMUM,
                Map.of(
                        10.0, IntensityFormula.talbot(2160, 40, Duration.ofMinutes(1), most),
                        20.0, IntensityFormula.talbot(2500, 40, Duration.ofMinutes(1), most)));
        assertThat(method.storageM3(relation, 10, twenty, 0.01)).isCloseTo(60 - 9, within(1e-9));
        assertThat(method.storageM3(relation, 10, twenty, 0)).isCloseTo(60, within(1e-9));
        // Rain as long as the time of concentration is allowed: 43.2 mm/h; its flow lasts twice as long.
        double[] flow = method.hydrograph(relation, 10, Duration.ofMinutes(10), Duration.ofMinutes(5))
                .toValues();
        assertThat(flow).hasSize(4);
        assertThat(flow[0]).isCloseTo(0.06 / 4, within(1e-12));
        assertThat(flow[1]).isCloseTo(0.06 * 3 / 4, within(1e-12));
        assertThatThrownBy(() -> method.storageM3(relation, 10, Duration.ofMinutes(9), 0))
                .hasMessage("duration must be no shorter than the time of concentration, 10 min, was 9 min");
    }
}
