package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Depths on the bed, at the sensor, at the soffit and at the end of what a reading may be: at once as one by one. */
class MonitorVergesTest {
    private static final double[] VELOCITIES = {Double.NaN, -0.7, -0.0, 0, 0.4, 1.3};

    static Stream<PipeMonitor> monitors() {
        return Stream.of(
                        CircularSection.ofDiameter(0.6), RectangularSection.open(1.2), RectangularSection.box(1.2, 0.8))
                .map(MonitorVergesTest::plain)
                .flatMap(plain -> Stream.of(
                        plain,
                        plain.withSensorOffset(0.05),
                        plain.withSediment(0.1),
                        plain.withSensorOffset(0.03).withSediment(0.08).withVelocityFactor(0.9)));
    }

    private static PipeMonitor plain(CrossSection section) {
        return PipeMonitor.of(Conduit.of(section, Gradient.of(0.004), Manning.of(0.013)));
    }

    private static List<Double> depths(PipeMonitor monitor) {
        List<Double> depths = new ArrayList<>(List.of(Double.NaN, -50.0, -0.2, -0.0, 0.0, Double.MIN_VALUE, 0.2, 50.0));
        List<Double> verges = new ArrayList<>(
                List.of(0.0, monitor.bedAboveInvert() - monitor.sensorOffset(), 0.5 - monitor.sensorOffset(), 50.0));
        if (Double.isFinite(monitor.soffit())) {
            verges.add(monitor.soffit() - monitor.sensorOffset());
        }
        for (double verge : verges) {
            for (int ulps = -6; ulps <= 6; ulps++) {
                double near = verge + ulps * Math.ulp(verge);
                if (Math.abs(near) <= 50) {
                    depths.add(near);
                }
            }
        }
        return depths;
    }

    @ParameterizedTest
    @MethodSource("monitors")
    void manyReadingsAtOnceAreThoseOneByOne(PipeMonitor monitor) {
        List<Double> all = depths(monitor);
        for (double velocity : VELOCITIES) {
            double[] depths = all.stream().mapToDouble(Double::doubleValue).toArray();
            double[] velocities = new double[depths.length];
            Arrays.fill(velocities, velocity);
            double[] flows = new double[depths.length];
            monitor.flow(depths, velocities, flows);
            for (int i = 0; i < depths.length; i++) {
                Double one = monitor.flow(depths[i], velocity).discharge();
                assertThat(flows[i])
                        .as(depths[i] + " m, " + velocity + " m/s, " + monitor)
                        .isEqualTo(one);
            }
            double[] inDepths = depths.clone();
            monitor.flow(inDepths, velocities, inDepths);
            double[] inVelocities = velocities.clone();
            monitor.flow(depths, inVelocities, inVelocities);
            assertThat(inDepths).as("in place of the depths, " + monitor).isEqualTo(flows);
            assertThat(inVelocities)
                    .as("in place of the velocities, " + monitor)
                    .isEqualTo(flows);
        }
    }

    /** The flows may take the place of either reading. */
    @ParameterizedTest
    @MethodSource("monitors")
    void flowsInPlaceOfTheirReadings(PipeMonitor monitor) {
        List<Double> all = depths(monitor);
        for (double velocity : VELOCITIES) {
            double[] depths = all.stream().mapToDouble(Double::doubleValue).toArray();
            double[] velocities = new double[depths.length];
            Arrays.fill(velocities, velocity);
            double[] apart = new double[depths.length];
            monitor.flow(depths, velocities, apart);
            double[] ofDepths = depths.clone();
            monitor.flow(ofDepths, velocities, ofDepths);
            assertThat(ofDepths).as("%s", monitor).containsExactly(apart);
            double[] ofVelocities = velocities.clone();
            monitor.flow(depths, ofVelocities, ofVelocities);
            assertThat(ofVelocities).as("%s", monitor).containsExactly(apart);
        }
        assertThatThrownBy(() -> {
                    double[] endless = {Double.POSITIVE_INFINITY};
                    monitor.flow(new double[] {0.2}, endless, endless);
                })
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("velocityReadings");
    }

    @Test
    void historiesAreEqualByTheirStretches() {
        PipeMonitor pipe = plain(CircularSection.ofDiameter(0.6));
        Interval day = Interval.of(Instant.parse("2026-03-01T00:00:00Z"), Instant.parse("2026-03-02T00:00:00Z"));
        MonitorHistory silted = MonitorHistory.of(pipe).with(day, monitor -> monitor.withSediment(0.1));
        assertThat(silted)
                .isEqualTo(MonitorHistory.of(pipe).with(day, monitor -> monitor.withSediment(0.1)))
                .hasSameHashCodeAs(MonitorHistory.of(pipe).with(day, monitor -> monitor.withSediment(0.1)))
                .isNotEqualTo(MonitorHistory.of(pipe).with(day, monitor -> monitor.withSediment(0.11)))
                .isNotEqualTo(MonitorHistory.of(pipe))
                .isNotEqualTo("a text");
        assertThat(silted.hashCode()).isNotEqualTo(MonitorHistory.of(pipe).hashCode());
    }

    @ParameterizedTest
    @MethodSource("monitors")
    void aDepthBeyondWhatAReadingMayBeIsRefusedAloneAndMissingAmongMany(PipeMonitor monitor) {
        for (double depth : new double[] {Math.nextUp(50.0), -Math.nextUp(50.0), 52, -1e9, 1e300}) {
            assertThatThrownBy(() -> monitor.flow(depth, 0.5))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("depthReading must be in [-50, 50] m");
            double[] flows = new double[3];
            monitor.flow(new double[] {0.2, depth, 0.2}, new double[] {0.5, 0.5, 0.5}, flows);
            assertThat(flows[1]).isNaN();
            assertThat(flows[0])
                    .isEqualTo(flows[2])
                    .isEqualTo(monitor.flow(0.2, 0.5).discharge());
        }
    }

    @Test
    void countsAddUp() {
        PipeMonitor pipe = plain(CircularSection.ofDiameter(0.6));
        FlowCounts one = pipe.flow(minutes(0.2, 0.3, 0.7), minutes(1, -1, 1)).counts();
        FlowCounts other = pipe.flow(minutes(0.2, 0), minutes(1, 0)).counts();
        FlowCounts both = one.plus(other);
        assertThat(both.total()).isEqualTo(5);
        assertThat(both.of(DepthCondition.PART_FULL)).isEqualTo(3);
        assertThat(both.of(DepthCondition.PART_FULL, VelocityCondition.FORWARD)).isEqualTo(2);
        assertThat(both)
                .isEqualTo(other.plus(one))
                .hasSameHashCodeAs(other.plus(one))
                .isNotEqualTo(one);
        assertThat(one.plus(one)).isNotEqualTo(one).isNotEqualTo("counts");
        assertThat(one.hashCode()).isNotEqualTo(other.hashCode());
        assertThat(both.toString()).startsWith("FlowCounts[5 pairs: ");
    }

    private static Series minutes(double... values) {
        var builder = Series.builder();
        for (int i = 0; i < values.length; i++) {
            builder.add(Instant.EPOCH.plusSeconds(60L * i), values[i]);
        }
        return builder.build();
    }

    @Test
    void pipesAtTheirLimits() {
        PipeMonitor pipe = plain(CircularSection.ofDiameter(0.6));
        assertThat(pipe.hydraulicRadius(0.3)).isCloseTo(0.15, within(1e-15));
        assertThat(pipe.hydraulicRadius(0)).isZero();
        assertThat(pipe.withSediment(0).bedAboveInvert()).isZero();
        assertThatThrownBy(() -> pipe.withSensorOffset(0.6)).hasMessageContaining("must be in [0, 0.6) m, was 0.6");
        assertThat(pipe.hashCode())
                .isEqualTo(plain(CircularSection.ofDiameter(0.6)).hashCode())
                .isNotEqualTo(pipe.withSensorOffset(0.05).hashCode());
    }

    /** Nineteen square metres at 1e308 m/s are more than a number can hold. */
    @Test
    void aFlowThatIsNoNumberIsRefused() {
        for (PipeMonitor pipe : List.of(
                plain(CircularSection.ofDiameter(5)),
                plain(CircularSection.ofDiameter(5)).withSensorOffset(0.1))) {
            assertThat(pipe.flow(minutes(4, 4), minutes(1, 1e300)).flow().value(1))
                    .isGreaterThan(1e301);
            assertThatThrownBy(() -> pipe.flow(minutes(4, 4, 4), minutes(1, 1e308, 1)))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void errorsOfSensorsAndRulesSayWhatTheyAre() {
        SensorUncertainty errors = SensorUncertainty.of(0.005, 0.02).withVelocityFactor(1);
        assertThat(errors.toString())
                .startsWith("SensorUncertainty[depth 0.005 m, velocity 0.02 m/s, height 0 m, velocity factor 1");
        assertThatThrownBy(() -> errors.withVelocityFactor(1.01))
                .hasMessage("velocityFactor must have an uncertainty in [0, 1], was 1.01: divide per cent by 100");
        SurchargeRule rule = SurchargeRule.above(0.45);
        assertThat(rule).isEqualTo(SurchargeRule.above(0.45)).isNotEqualTo(SurchargeRule.above(0.46));
        assertThat(rule.hashCode())
                .isEqualTo(SurchargeRule.above(0.45).hashCode())
                .isNotEqualTo(SurchargeRule.above(0.46).hashCode());
        assertThat(VelocityCondition.count()).isEqualTo(VelocityCondition.values().length);
    }
}
