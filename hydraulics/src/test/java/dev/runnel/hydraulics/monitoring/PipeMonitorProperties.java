package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

class PipeMonitorProperties {
    @Property
    void bulkAndStreamAndRecordGiveTheSameFlowToTheBit(
            @ForAll("monitors") PipeMonitor monitor, @ForAll("readings") List<double[]> readings) {
        Series depth = series(readings, 0);
        Series velocity = series(readings, 1);
        double[] bulk = new double[readings.size()];
        monitor.flow(depth.toValues(), velocity.toValues(), bulk);
        FlowRecord record = monitor.flow(depth, velocity);
        List<Reading> stream = new ArrayList<>();
        for (int i = 0; i < bulk.length; i++) {
            MonitoredFlow scalar = monitor.flow(depth.value(i), velocity.value(i));
            assertThat(Double.doubleToLongBits(scalar.discharge())).isEqualTo(Double.doubleToLongBits(bulk[i]));
            assertThat(scalar.depthCondition()).isEqualTo(record.depthCondition(i));
            assertThat(scalar.velocityCondition()).isEqualTo(record.velocityCondition(i));
            assertThat(Double.doubleToLongBits(scalar.level()))
                    .isEqualTo(Double.doubleToLongBits(record.level().value(i)));
            stream.add(monitor.flow(depth.get(i), velocity.get(i)));
        }
        assertThat(Series.of(stream)).isEqualTo(record.flow());
        assertThat(record.flow().toValues()).isEqualTo(bulk);
        // The record shares arrays with the readings, which stay as they were.
        assertThat(depth).isEqualTo(series(readings, 0));
        assertThat(velocity).isEqualTo(series(readings, 1));
    }

    @Property
    void piecesOfARecordCountAndFlowAsTheWhole(
            @ForAll("monitors") PipeMonitor monitor,
            @ForAll("readings") List<double[]> readings,
            @ForAll("cuts") double cut) {
        int at = (int) (cut * readings.size());
        FlowRecord whole = monitor.flow(series(readings, 0), series(readings, 1));
        int end = readings.size();
        FlowRecord before = monitor.flow(series(readings, 0, 0, at), series(readings, 1, 0, at));
        FlowRecord after = monitor.flow(series(readings, 0, at, end), series(readings, 1, at, end));
        assertThat(before.counts().plus(after.counts())).isEqualTo(whole.counts());
        List<Reading> joined = new ArrayList<>(before.flow().stream().toList());
        joined.addAll(after.flow().stream().toList());
        assertThat(Series.of(joined)).isEqualTo(whole.flow());
    }

    @Property
    void countsAddUpAndFlowIsMissingOnlyForAStatedReason(
            @ForAll("monitors") PipeMonitor monitor, @ForAll("readings") List<double[]> readings) {
        FlowRecord record = monitor.flow(series(readings, 0), series(readings, 1));
        int byDepth = 0;
        for (DepthCondition condition : DepthCondition.values()) {
            byDepth += record.counts().of(condition);
        }
        int byVelocity = 0;
        for (VelocityCondition condition : VelocityCondition.values()) {
            byVelocity += record.counts().of(condition);
        }
        assertThat(byDepth).isEqualTo(readings.size());
        assertThat(byVelocity).isEqualTo(readings.size());
        for (int i = 0; i < record.size(); i++) {
            DepthCondition depth = record.depthCondition(i);
            boolean mayBeMissing = depth == DepthCondition.NO_DEPTH
                    || depth == DepthCondition.BELOW_SENSOR
                    || depth == DepthCondition.NEGATIVE && monitor.sensorOffset() > monitor.bedAboveInvert()
                    || depth.isFlowing() && record.velocityCondition(i) == VelocityCondition.NO_VELOCITY;
            assertThat(Double.isNaN(record.flow().value(i))).isEqualTo(mayBeMissing);
            assertThat(record.flow().quality(i) == Quality.MISSING).isEqualTo(mayBeMissing);
        }
    }

    @Property
    void flowGrowsWithDepthAndWithVelocity(
            @ForAll("monitors") PipeMonitor monitor,
            @ForAll("depths") double one,
            @ForAll("depths") double other,
            @ForAll("speeds") double slow,
            @ForAll("speeds") double fast) {
        double low = Math.max(1e-6, Math.min(one, other));
        double high = Math.max(low, Math.max(one, other));
        double least = Math.min(slow, fast);
        double most = Math.max(slow, fast);
        // Neighbouring depths may differ by less than the rounding of their areas.
        assertThat(monitor.flow(high, most).discharge())
                .isGreaterThanOrEqualTo(monitor.flow(low, most).discharge() * (1 - 1e-12) - 1e-15);
        assertThat(monitor.flow(low, most).discharge())
                .isGreaterThanOrEqualTo(monitor.flow(low, least).discharge());
    }

    @Property
    void reverseFlowIsTheMirrorOfForwardFlow(
            @ForAll("monitors") PipeMonitor monitor, @ForAll("depths") double depth, @ForAll("speeds") double speed) {
        double forward = monitor.flow(depth + 1e-6, speed).discharge();
        double reverse = monitor.flow(depth + 1e-6, -speed).discharge();
        assertThat(reverse + forward).isZero();
    }

    @Provide
    Arbitrary<PipeMonitor> monitors() {
        Arbitrary<Double> diameter = Arbitraries.doubles().between(0.1, 3).ofScale(6);
        Arbitrary<Double> share = Arbitraries.frequencyOf(
                Tuple.of(1, Arbitraries.just(0.0)),
                Tuple.of(2, Arbitraries.doubles().between(0, 0.6).ofScale(6)));
        Arbitrary<Double> factor = Arbitraries.doubles().between(0.6, 1.2).ofScale(6);
        return Combinators.combine(diameter, share, share, factor)
                .as((d, offset, bed, f) -> PipeMonitor.of(
                                Conduit.of(CircularSection.ofDiameter(d), Gradient.of(0.004), Manning.of(0.013)))
                        .withSensorOffset(offset * d)
                        .withSediment(bed * d)
                        .withVelocityFactor(f));
    }

    @Provide
    Arbitrary<List<double[]>> readings() {
        Arbitrary<Double> depth = Arbitraries.frequencyOf(
                Tuple.of(5, depths()), Tuple.of(1, Arbitraries.of(0.0, -0.0, Double.NaN, -0.003, 1e-9)));
        Arbitrary<Double> velocity = Arbitraries.frequencyOf(
                Tuple.of(5, Arbitraries.doubles().between(-2, 4).ofScale(6)),
                Tuple.of(1, Arbitraries.of(0.0, -0.0, Double.NaN)));
        return Combinators.combine(depth, velocity)
                .as((d, v) -> new double[] {d, v})
                .list()
                .ofMaxSize(40);
    }

    @Provide
    Arbitrary<Double> depths() {
        return Arbitraries.doubles().between(0, 4).ofScale(6);
    }

    @Provide
    Arbitrary<Double> speeds() {
        return Arbitraries.doubles().between(0, 5).ofScale(6);
    }

    @Provide
    Arbitrary<Double> cuts() {
        return Arbitraries.doubles().between(0, 1).ofScale(6);
    }

    private static Series series(List<double[]> readings, int column) {
        return series(readings, column, 0, readings.size());
    }

    private static Series series(List<double[]> readings, int column, int from, int to) {
        long[] times = new long[to - from];
        double[] values = new double[to - from];
        for (int i = from; i < to; i++) {
            times[i - from] = 120_000_000_000L * i;
            values[i - from] = readings.get(i)[column];
        }
        return Series.of(times, values);
    }
}
