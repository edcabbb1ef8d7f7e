package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.evidence.DepthVelocityRelation;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** A box 0.5 m wide and 1 m high, whose areas are plain; a reading each minute. */
class MonitorHistoryTest {
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");
    private static final PipeMonitor BOX =
            PipeMonitor.of(Conduit.of(RectangularSection.box(0.5, 1), Gradient.ofRatio(1, 200), Manning.of(0.013)));

    /** Bed of 0.1 m in minutes 2 to 5; sensor 0.04 m up from minute 4 on for six. */
    private static final MonitorHistory HISTORY = MonitorHistory.of(BOX)
            .with(minutes(2, 6), monitor -> monitor.withoutSediment().withSediment(0.1))
            .with(minutes(4, 10), monitor -> monitor.withSensorOffset(0.04));

    private static Interval minutes(int from, int to) {
        return Interval.of(START.plusSeconds(60L * from), START.plusSeconds(60L * to));
    }

    private static Series each(double... values) {
        return RegularSeries.of(START, Duration.ofMinutes(1), values).toSeries();
    }

    private static Series steady(double value, int size) {
        double[] values = new double[size];
        java.util.Arrays.fill(values, value);
        return each(values);
    }

    @Test
    void eachReadingIsOfTheSettingsOfItsTime() {
        FlowRecord record = HISTORY.flow(steady(0.3, 12), steady(0.8, 12));
        // Width times depth above the bed times velocity.
        double[] flows = {0.12, 0.12, 0.08, 0.08, 0.096, 0.096, 0.136, 0.136, 0.136, 0.136, 0.12, 0.12};
        double[] levels = {0.3, 0.3, 0.3, 0.3, 0.34, 0.34, 0.34, 0.34, 0.34, 0.34, 0.3, 0.3};
        for (int i = 0; i < flows.length; i++) {
            assertThat(record.flow().value(i)).as("flow %s", i).isCloseTo(flows[i], within(1e-15));
            assertThat(record.level().value(i)).as("level %s", i).isCloseTo(levels[i], within(1e-15));
            assertThat(record.monitor(i)).isEqualTo(HISTORY.at(START.plusSeconds(60L * i)));
        }
        assertThat(record.counts().total()).isEqualTo(12);
        assertThat(record.counts().of(DepthCondition.PART_FULL)).isEqualTo(12);
        assertThat(record.flow().hasTimesOf(record.level())).isTrue();
        // The law is asked at the depth above the bed of the time.
        assertThat(record.velocityRatio().value(4))
                .isCloseTo(0.8 / BOX.withSediment(0.1).conduit().velocity(0.24), within(1e-12));
        assertThat(record.uncertainty(SensorUncertainty.of(0.01, 0)).value(4))
                .isCloseTo(0.8 * 0.5 * 0.01, within(1e-15));
        assertThat(record.monitors()).isEqualTo(HISTORY);
    }

    @Test
    void roughnessChangesTheCapacityAndNotTheFlow() {
        MonitorHistory rough = MonitorHistory.of(BOX)
                .with(minutes(1, 2), monitor -> PipeMonitor.of(monitor.conduit().withResistance(Manning.of(0.026))));
        FlowRecord record = rough.flow(steady(0.3, 2), steady(0.8, 2));
        assertThat(record.flow().value(1)).isEqualTo(record.flow().value(0));
        // Twice the n is half the capacity.
        assertThat(record.capacityUse().value(1))
                .isCloseTo(2 * record.capacityUse().value(0), within(1e-12));
        assertThat(record.velocityRatio().value(1))
                .isCloseTo(2 * record.velocityRatio().value(0), within(1e-12));
    }

    @Test
    void conditionsFollowTheSettings() {
        MonitorHistory history = MonitorHistory.of(BOX).with(minutes(1, 2), monitor -> monitor.withSensorOffset(0.05));
        FlowRecord record = history.flow(each(0, 0, 0), each(0, 0, Double.NaN));
        assertThat(record.depthCondition(0)).isEqualTo(DepthCondition.DRY);
        assertThat(record.depthCondition(1)).isEqualTo(DepthCondition.BELOW_SENSOR);
        assertThat(record.flow().value(1)).isNaN();
        assertThat(record.counts().of(DepthCondition.DRY)).isEqualTo(2);
        assertThat(record.counts().of(VelocityCondition.NO_VELOCITY)).isEqualTo(1);
        // Water under the sensor is known to be less than half full.
        assertThat(FullnessTime.of(record, 0.5, Duration.ofMinutes(2)).coverage())
                .isEqualTo(1);
    }

    @Test
    void unequalClocksMeetAcrossAChange() {
        Series velocity = RegularSeries.of(START.plusSeconds(30), Duration.ofMinutes(1), 0.6, 0.8, 1.0, 1.2)
                .toSeries();
        FlowRecord record = HISTORY.flow(steady(0.3, 5), velocity, Alignment.linear(Duration.ofMinutes(2)));
        assertThat(record.velocity().value(2)).isCloseTo(0.9, within(1e-15));
        assertThat(record.flow().value(2)).isCloseTo(0.9 * 0.5 * 0.2, within(1e-15));
        assertThat(record.depthsAlone()).isEqualTo(5);
        assertThat(record.velocitiesAlone()).isEqualTo(4);
    }

    @Test
    void withoutAChangeItIsTheMonitor() {
        Series depth = each(0.1, 0, Double.NaN, 1.4);
        Series velocity = each(0.5, 0.5, 0.5, -0.2);
        MonitorHistory constant = MonitorHistory.of(BOX).with(minutes(0, 2), monitor -> monitor);
        assertThat(constant.isConstant()).isTrue();
        assertThat(constant).isEqualTo(MonitorHistory.of(BOX)).hasSameHashCodeAs(MonitorHistory.of(BOX));
        assertThat(constant.flow(depth, velocity).flow())
                .isEqualTo(BOX.flow(depth, velocity).flow());
        assertThat(HISTORY.flow(Series.empty(), Series.empty()).size()).isZero();
    }

    @Test
    void stretchesFillTheTimeAskedFor() {
        assertThat(HISTORY.stretches(minutes(1, 20)))
                .extracting(each -> each.interval() + " " + each.monitor().bedAboveInvert() + " "
                        + each.monitor().sensorOffset())
                .containsExactly(
                        minutes(1, 2) + " 0.0 0.0",
                        minutes(2, 4) + " 0.1 0.0",
                        minutes(4, 6) + " 0.1 0.04",
                        minutes(6, 10) + " 0.0 0.04",
                        minutes(10, 20) + " 0.0 0.0");
        assertThat(HISTORY.stretches(minutes(3, 3))).isEmpty();
        assertThat(HISTORY.first()).isEqualTo(BOX);
        assertThat(HISTORY)
                .hasToString("MonitorHistory[" + BOX + "; from " + START.plusSeconds(120) + " "
                        + BOX.withSediment(0.1) + "; from " + START.plusSeconds(240) + " "
                        + BOX.withSediment(0.1).withSensorOffset(0.04) + "; from " + START.plusSeconds(360) + " "
                        + BOX.withSensorOffset(0.04) + "; from " + START.plusSeconds(600) + " " + BOX + "]");
    }

    @Test
    void mistakesAreNamed() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> HISTORY.with(minutes(2, 2), monitor -> monitor))
                .withMessageStartingWith("interval must not be empty, was ");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> HISTORY.with(
                        minutes(2, 3),
                        monitor -> PipeMonitor.of(monitor.conduit().withSection(CircularSection.ofDiameter(0.5)))))
                .withMessageStartingWith("change must keep the clean section, ");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> HISTORY.with(
                        minutes(2, 3), monitor -> monitor.withoutSediment().withSediment(1)))
                .withMessage("bedAboveInvert must be below the soffit at 1 m, was 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DepthVelocityRelation.of(HISTORY.flow(steady(0.3, 12), steady(0.8, 12))))
                .withMessage(
                        "record must be of one setting of its monitor, was of several: take each stretch by itself");
    }
}
