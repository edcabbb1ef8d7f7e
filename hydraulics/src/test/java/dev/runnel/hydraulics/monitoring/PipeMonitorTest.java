package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.Egg;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Expected areas: the width of the circle integrated numerically to 30 digits, away from the section's own formula. */
class PipeMonitorTest {
    private static final Instant TIME = Instant.parse("2026-03-01T00:00:00Z");
    private static final double FULL_AREA = 0.159043128087983;
    private static final double AREA_AT_0_2 = 0.0682947552492309;

    private static final PipeMonitor MONITOR =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(0.45), Gradient.ofRatio(1, 150), Manning.of(0.013)));

    @Test
    void partFullFlowIsAreaTimesVelocity() {
        MonitoredFlow flow = MONITOR.flow(0.2, 0.8);
        assertThat(flow.area()).isCloseTo(AREA_AT_0_2, within(1e-14));
        assertThat(flow.discharge()).isCloseTo(0.8 * AREA_AT_0_2, within(1e-14));
        assertThat(flow.level()).isEqualTo(0.2);
        assertThat(flow.velocity()).isEqualTo(0.8);
        assertThat(flow.depthCondition()).isEqualTo(DepthCondition.PART_FULL);
        assertThat(flow.velocityCondition()).isEqualTo(VelocityCondition.FORWARD);
        assertThat(flow.isMissing()).isFalse();
    }

    @Test
    void offsetSedimentAndFactorComeTogether() {
        PipeMonitor monitor = MONITOR.withSensorOffset(0.012).withSediment(0.05).withVelocityFactor(0.9);
        assertThat(monitor.flow(0.2, 0.8).discharge()).isCloseTo(0.0460908509399067, within(1e-14));
        assertThat(monitor.flow(0.2, 0.8).level()).isCloseTo(0.212, within(1e-15));
        assertThat(monitor.flow(0.2, 0.8).velocity()).isCloseTo(0.72, within(1e-15));
        assertThat(monitor.sensorOffset()).isEqualTo(0.012);
        assertThat(monitor.bedAboveInvert()).isEqualTo(0.05);
        assertThat(monitor.velocityFactor()).isEqualTo(0.9);
    }

    @Test
    void surchargedFlowUsesTheWholeAreaAboveTheBed() {
        MonitoredFlow flow = MONITOR.withSediment(0.05).withVelocityFactor(0.9).flow(1.7, 1.1);
        assertThat(flow.discharge()).isCloseTo(0.14788954456381, within(1e-14));
        assertThat(flow.level()).isEqualTo(1.7);
        assertThat(flow.depthCondition()).isEqualTo(DepthCondition.SURCHARGED);
        assertThat(MONITOR.flow(9, 1.1).discharge()).isCloseTo(1.1 * FULL_AREA, within(1e-14));
    }

    @Test
    void levelWithinRoundingOfTheSoffitIsNotSurcharged() {
        assertThat(MONITOR.flow(0.45, 1).depthCondition()).isEqualTo(DepthCondition.PART_FULL);
        assertThat(MONITOR.flow(Math.nextUp(0.45), 1).depthCondition()).isEqualTo(DepthCondition.PART_FULL);
        assertThat(MONITOR.flow(Math.nextUp(0.45), 1).discharge()).isCloseTo(FULL_AREA, within(1e-14));
        assertThat(MONITOR.flow(0.4500001, 1).depthCondition()).isEqualTo(DepthCondition.SURCHARGED);
    }

    @Test
    void emptyPipeHasNoFlowWhateverTheVelocity() {
        for (double velocity : new double[] {0.7, -0.2, 0, Double.NaN}) {
            MonitoredFlow flow = MONITOR.flow(0, velocity);
            assertThat(flow.discharge()).isZero();
            assertThat(flow.velocity()).isZero();
            assertThat(flow.depthCondition()).isEqualTo(DepthCondition.DRY);
        }
        assertThat(quality(MONITOR, 0, 0)).isEqualTo(Quality.GOOD);
        assertThat(quality(MONITOR, 0, Double.NaN)).isEqualTo(Quality.GOOD);
        assertThat(quality(MONITOR, 0, 0.7))
                .as("the sensors contradict each other")
                .isEqualTo(Quality.POOR);
    }

    @Test
    void depthBelowTheSensorIsNotInvented() {
        PipeMonitor monitor = MONITOR.withSensorOffset(0.03);
        MonitoredFlow flow = monitor.flow(0, 0.4);
        assertThat(flow.isMissing()).isTrue();
        assertThat(flow.level()).isNaN();
        assertThat(flow.depthCondition()).isEqualTo(DepthCondition.BELOW_SENSOR);
        assertThat(quality(monitor, 0, 0.4)).isEqualTo(Quality.MISSING);
        assertThat(monitor.flow(0.001, 0.4).depthCondition()).isEqualTo(DepthCondition.PART_FULL);
    }

    @Test
    void sensorUnderTheBedMissesNoWater() {
        PipeMonitor monitor = MONITOR.withSensorOffset(0.03).withSediment(0.03);
        assertThat(monitor.flow(0, 0).depthCondition()).isEqualTo(DepthCondition.DRY);
        assertThat(monitor.flow(0, 0).discharge()).isZero();
    }

    /** The bed is told once, to the section or to the monitor, and counts from the invert of the clean pipe. */
    @Test
    void bedOfTheSectionIsTheBedOfTheMonitor() {
        var clean = Conduit.of(Egg.normal(0.6), Gradient.of(0.004), Manning.of(0.013));
        var silted = clean.withSection(Egg.normal(0.6).withSediment(0.1));
        var monitor = PipeMonitor.of(clean).withSediment(0.1);
        assertThat(monitor).isEqualTo(PipeMonitor.of(silted).withSensorOffset(0));
        assertThat(monitor.bedAboveInvert()).isEqualTo(0.1);
        assertThat(monitor.soffit()).isEqualTo(Egg.normal(0.6).height());
        assertThat(monitor.conduit()).isEqualTo(silted);
        assertThat(monitor.withoutSediment()).isEqualTo(PipeMonitor.of(clean));
        double depth = 0.25;
        double level = silted.section().levelAboveInvert(depth);
        double area = Egg.normal(0.6).area(level) - Egg.normal(0.6).area(0.1);
        assertThat(monitor.flow(level, 1).discharge()).isCloseTo(area, within(1e-15));
        assertThat(monitor.flow(level, silted.velocity(depth)).discharge())
                .isCloseTo(silted.discharge(depth), within(1e-15));
        // Unless told otherwise, a monitor in the silted conduit reads depths as that counts them.
        var reader = PipeMonitor.of(silted);
        assertThat(reader.sensorOffset()).isEqualTo(0.1);
        assertThat(reader.flow(depth, 1).level()).isEqualTo(level);
        assertThat(reader.flow(depth, silted.velocity(depth)).discharge())
                .isCloseTo(silted.discharge(depth), within(1e-15));
        assertThat(reader.flow(0, 0).depthCondition()).isEqualTo(DepthCondition.DRY);
        assertThat(monitor.flow(5, 1).discharge())
                .isCloseTo(Egg.normal(0.6).fullArea() - Egg.normal(0.6).area(0.1), within(1e-15));
    }

    /** 185 is a depth in millimetres, or an error code: one is refused, of many each is marked and counted. */
    @Test
    void depthInMillimetresIsRefusedOrMarked() {
        assertThatThrownBy(() -> MONITOR.flow(185, 1.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthReading must be in [-50, 50] m, was 185: readings are in metres, divide millimetres"
                        + " by 1000");
        double[] flows = new double[3];
        MONITOR.flow(new double[] {0.2, 185, -999}, new double[] {1, 1.1, 1}, flows);
        assertThat(flows[0]).isPositive();
        assertThat(flows[1]).isNaN();
        assertThat(flows[2]).isNaN();
        var times = new long[] {0, 1, 2};
        FlowRecord record = MONITOR.flow(
                Series.of(times, new double[] {0.2, 185, -999}), Series.of(times, new double[] {1, 1.1, 1}));
        assertThat(record.counts().of(DepthCondition.IMPOSSIBLE)).isEqualTo(2);
        assertThat(record.flow().quality(1)).isEqualTo(Quality.MISSING);
        assertThat(record.level().value(1)).isNaN();
        assertThat(record.fullness().value(1)).isNaN();
    }

    /** A logger of depths alone: the law gives the flow, but not of a full pipe, and one bad reading stops nothing. */
    @Test
    void depthsAloneGiveUniformFlow() {
        PipeMonitor monitor = MONITOR.withSensorOffset(0.01).withVelocityFactor(0.9);
        var times = new long[] {0, 1, 2, 3, 4};
        FlowRecord record = monitor.uniformFlow(Series.of(times, new double[] {0.19, 0.6, Double.NaN, 185, -0.1}));
        assertThat(record.flow().value(0)).isCloseTo(monitor.conduit().discharge(0.2), within(1e-15));
        for (int i = 1; i < 5; i++) {
            assertThat(record.flow().value(i)).isNaN();
        }
        assertThat(record.counts().of(DepthCondition.SURCHARGED)).isEqualTo(1);
        assertThat(record.counts().of(DepthCondition.IMPOSSIBLE)).isEqualTo(1);
        assertThat(record.counts().of(DepthCondition.NO_DEPTH)).isEqualTo(1);
        assertThat(MONITOR.uniformFlow(Series.of(new long[] {0}, new double[] {0}))
                        .flow()
                        .value(0))
                .isZero();
    }

    @Test
    void secondBedIsRefused() {
        assertThatThrownBy(() -> MONITOR.withSediment(0.05).withSediment(0.06))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageStartingWith("the section has a bed already, 0.05 m above its invert");
        var silted =
                Conduit.of(CircularSection.ofDiameter(0.45).withSediment(0.05), Gradient.of(0.004), Manning.of(0.013));
        assertThatThrownBy(() -> PipeMonitor.of(silted).withSediment(0.05)).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void waterReadBelowTheBedIsNoFlowAreaAndOfPoorQuality() {
        PipeMonitor monitor = MONITOR.withSediment(0.05);
        assertThat(monitor.flow(0.05, 0.4).depthCondition()).isEqualTo(DepthCondition.BELOW_BED);
        assertThat(monitor.flow(0.02, 0.4).discharge()).isZero();
        assertThat(monitor.flow(0.02, Double.NaN).discharge()).isZero();
        assertThat(monitor.flow(0.02, 0.4).velocity()).isZero();
        assertThat(quality(monitor, 0.02, 0)).isEqualTo(Quality.POOR);
        double justAbove = monitor.flow(Math.nextUp(0.05), 0.4).discharge();
        assertThat(justAbove).isNotNegative().isLessThan(1e-15);
    }

    @Test
    void reverseFlowKeepsItsSign() {
        MonitoredFlow flow = MONITOR.flow(0.2, -0.3);
        assertThat(flow.discharge()).isCloseTo(-0.3 * AREA_AT_0_2, within(1e-14));
        assertThat(flow.velocityCondition()).isEqualTo(VelocityCondition.REVERSE);
        assertThat(MONITOR.flow(2, -0.3).discharge()).isCloseTo(-0.3 * FULL_AREA, within(1e-14));
    }

    @Test
    void standingWaterIsExactlyZero() {
        assertThat(MONITOR.flow(0.2, 0).velocityCondition()).isEqualTo(VelocityCondition.STANDING);
        assertThat(Double.doubleToRawLongBits(MONITOR.flow(0.2, -0.0).discharge()))
                .isZero();
    }

    @Test
    void negativeDepthIsSuspectAndTakenAsZero() {
        assertThat(MONITOR.flow(-0.004, 0.5).depthCondition()).isEqualTo(DepthCondition.NEGATIVE);
        assertThat(MONITOR.flow(-0.004, 0.5).discharge()).isZero();
        assertThat(quality(MONITOR, -0.004, 0.5)).isEqualTo(Quality.SUSPECT);
        PipeMonitor raised = MONITOR.withSensorOffset(0.03);
        assertThat(raised.flow(-0.004, 0.5).isMissing()).isTrue();
        assertThat(quality(raised, -0.004, 0.5)).isEqualTo(Quality.MISSING);
    }

    @Test
    void missingReadingsGiveMissingFlow() {
        assertThat(MONITOR.flow(Double.NaN, 0.5).isMissing()).isTrue();
        assertThat(MONITOR.flow(Double.NaN, 0.5).depthCondition()).isEqualTo(DepthCondition.NO_DEPTH);
        assertThat(MONITOR.flow(0.2, Double.NaN).isMissing()).isTrue();
        assertThat(MONITOR.flow(0.2, Double.NaN).area()).isCloseTo(AREA_AT_0_2, within(1e-14));
        assertThat(MONITOR.flow(0.2, Double.NaN).velocityCondition()).isEqualTo(VelocityCondition.NO_VELOCITY);
        assertThat(MONITOR.flow(Double.NaN, Double.NaN).isMissing()).isTrue();
    }

    @Test
    void qualityIsTheWorseOfTheTwo() {
        Reading flow = MONITOR.flow(new Reading(TIME, 0.2, Quality.ESTIMATE), new Reading(TIME, 0.8, Quality.SUSPECT));
        assertThat(flow.quality()).isEqualTo(Quality.SUSPECT);
        assertThat(flow.value()).isCloseTo(0.8 * AREA_AT_0_2, within(1e-14));
        assertThat(flow.time()).isEqualTo(TIME);
        assertThat(MONITOR.flow(new Reading(TIME, 0, Quality.ESTIMATE), new Reading(TIME, 0, Quality.SUSPECT))
                        .quality())
                .as("the velocity of an empty pipe is not used")
                .isEqualTo(Quality.ESTIMATE);
    }

    @Test
    void bulkFormRefusesUnequalLengthsAndInfinities() {
        assertThatThrownBy(() -> MONITOR.flow(new double[2], new double[3], new double[2]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("velocityReadings must have length 2, was 3");
        assertThatThrownBy(() -> MONITOR.flow(new double[2], new double[2], new double[1]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("discharges must have length 2, was 1");
        double[] infinite = {Double.NEGATIVE_INFINITY};
        assertThatThrownBy(() -> MONITOR.flow(new double[1], infinite, new double[1]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("velocityReadings must be finite, or NaN for missing, was -Infinity");
        double[] missing = {Double.NaN};
        assertThatThrownBy(() -> MONITOR.flow(missing, infinite, new double[1]))
                .as("a product with a missing depth is missing and does not tell")
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("velocityReadings must be finite, or NaN for missing, was -Infinity");
        assertThatThrownBy(() -> MONITOR.flow(infinite, missing, new double[1]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthReadings must be finite, or NaN for missing, was -Infinity");
    }

    @Test
    void infiniteReadingIsRefused() {
        assertThatThrownBy(() -> MONITOR.flow(Double.POSITIVE_INFINITY, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthReading must be finite, or NaN for missing, was Infinity");
    }

    @Test
    void readingsOfDifferentInstantsAreRefused() {
        assertThatThrownBy(() -> MONITOR.flow(Reading.of(TIME, 0.2), Reading.of(TIME.plusSeconds(120), 0.8)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("velocity must have the time of depth 2026-03-01T00:00:00Z, was 2026-03-01T00:02:00Z");
    }

    @Test
    void settingsOutOfRangeAreRefused() {
        assertThatThrownBy(() -> MONITOR.withSensorOffset(-0.01))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sensorAboveInvert must be in [0, 0.45) m, was -0.01");
        assertThatThrownBy(() -> MONITOR.withSediment(0.45))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("bedAboveInvert must be below the soffit at 0.45 m, was 0.45");
        assertThatThrownBy(() -> MONITOR.withSediment(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("bedAboveInvert must be 0 or greater and finite (m), was NaN");
        assertThatThrownBy(() -> MONITOR.withVelocityFactor(90))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("velocityFactor must be in [0.1, 2], was 90");
    }

    @Test
    void monitorsWithTheSameSettingsAreEqual() {
        PipeMonitor same = PipeMonitor.of(MONITOR.conduit());
        assertThat(same).isEqualTo(MONITOR).hasSameHashCodeAs(MONITOR);
        assertThat(same.withSensorOffset(0.01)).isNotEqualTo(MONITOR);
        assertThat(same.withSediment(0.01)).isNotEqualTo(MONITOR);
        assertThat(same.withVelocityFactor(0.9)).isNotEqualTo(MONITOR);
        assertThat(same.withSensorOffset(-0.0)).isNotEqualTo(same.withSensorOffset(0));
    }

    @Test
    void textsReadWell() {
        assertThat(MONITOR.withSensorOffset(0.012).toString())
                .startsWith("PipeMonitor[Conduit[")
                .endsWith(", sensor offset 0.012 m, velocity factor 1]");
        assertThat(MONITOR.flow(0.2, 0.8))
                .hasToString(
                        "MonitoredFlow[level 0.2 m, area 0.06829 m2, velocity 0.8 m/s, discharge 0.05464 m3/s, PART_FULL, FORWARD]");
        assertThat(MONITOR.flow(0.2, Double.NaN).toString())
                .endsWith("velocity unknown, discharge unknown, PART_FULL, NO_VELOCITY]");
    }

    private static Quality quality(PipeMonitor monitor, double depth, double velocity) {
        Quality velocityQuality = Double.isNaN(velocity) ? Quality.MISSING : Quality.GOOD;
        return monitor.flow(new Reading(TIME, depth, Quality.GOOD), new Reading(TIME, velocity, velocityQuality))
                .quality();
    }
}
