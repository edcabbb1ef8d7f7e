package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class SteppedGaugeProperties {
    private static final Instant START = Instant.parse("2026-03-29T00:00:00Z");

    /** Tenths of a millimetre, a minute and more apart, most of them on steps of five minutes. */
    @Provide
    Arbitrary<List<Integer>> tenths() {
        return Arbitraries.integers().between(0, 120).list().ofMinSize(1).ofMaxSize(60);
    }

    @Property
    void keepsAllRain(
            @ForAll("tenths") List<Integer> tenths, @ForAll boolean isAtEnd, @ForAll boolean isDry, @ForAll long seed) {
        SeriesBuilder readings = Series.builder();
        java.util.Random random = new java.util.Random(seed);
        Instant time = START;
        long total = 0;
        for (int each : tenths) {
            readings.add(time, each / 10.0);
            total += each;
            time = time.plus(Duration.ofMinutes(random.nextInt(6) == 0 ? 1 + random.nextInt(9) : 5));
        }
        SteppedGauge gauge = SteppedGauge.ofDepth(Duration.ofMinutes(5));
        gauge = isAtEnd ? gauge.withStampAtEnd() : gauge;
        gauge = isDry ? gauge.withDryWithoutReading() : gauge;
        StepRecord record = gauge.record(readings.build());
        assertThat(record.depth().sum() + record.asideMm()).isCloseTo(total / 10.0, within(1e-12 * (1 + total)));
        int known = record.depth().size() - record.missing() - record.filledDry();
        assertThat(known + record.aside()).isEqualTo(tenths.size());
    }
}
