package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

class FullnessTimeProperties {
    private static final Duration GAP = Duration.ofMinutes(4);
    private static final PipeMonitor MONITOR =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(0.5), Gradient.of(0.01), Manning.of(0.013)));

    @Property
    void higherFullnessIsExceededForNoLonger(
            @ForAll("depths") List<Double> depths, @ForAll("shares") double one, @ForAll("shares") double other) {
        FlowRecord record = record(depths);
        FullnessTime lower = FullnessTime.of(record, Math.min(one, other), GAP);
        FullnessTime higher = FullnessTime.of(record, Math.max(one, other), GAP);
        assertThat(higher.above()).isLessThanOrEqualTo(lower.above());
        assertThat(higher.covered()).isEqualTo(lower.covered());
        assertThat(lower.covered()).isLessThanOrEqualTo(lower.total());
    }

    @Property
    void longerGapsCoverMore(@ForAll("depths") List<Double> depths, @ForAll("shares") double share) {
        FlowRecord record = record(depths);
        assertThat(FullnessTime.of(record, share, Duration.ofMinutes(10)).covered())
                .isGreaterThanOrEqualTo(FullnessTime.of(record, share, GAP).covered());
    }

    @Provide
    Arbitrary<List<Double>> depths() {
        return Arbitraries.frequencyOf(
                        Tuple.of(4, Arbitraries.doubles().between(0, 0.8).ofScale(6)),
                        Tuple.of(1, Arbitraries.of(0.0, Double.NaN, -0.01, 0.5)))
                .list()
                .ofMaxSize(40);
    }

    @Provide
    Arbitrary<Double> shares() {
        return Arbitraries.doubles().between(0, 2).ofScale(6);
    }

    private static FlowRecord record(List<Double> depths) {
        long[] times = new long[depths.size()];
        double[] values = new double[depths.size()];
        for (int i = 0; i < times.length; i++) {
            times[i] = 120_000_000_000L * i;
            values[i] = depths.get(i);
        }
        Series depth = Series.of(times, values);
        return MONITOR.flow(depth, depth.map(value -> 0.5));
    }
}
