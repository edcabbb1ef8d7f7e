package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class TipOutagesProperties {
    private static final long SECOND = 1_000_000_000L;
    private static final Interval RECORD = Interval.of(EpochNanos.toInstant(0), Duration.ofSeconds(80_000));
    private static final TippingBucket GAUGE =
            TippingBucket.ofTip(0.2).withCalibration(CalibrationCurve.linear(-0.5, 1.08, 5, 300));

    @Provide
    Arbitrary<Tips> tips() {
        return Arbitraries.integers()
                .between(0, 4000)
                .array(int[].class)
                .ofMaxSize(20)
                .map(gaps -> {
                    long[] times =
                            Arrays.stream(gaps).mapToLong(gap -> gap * SECOND).toArray();
                    Arrays.parallelPrefix(times, Long::sum);
                    return Tips.ofEpochNanos(Arrays.stream(times)
                            .filter(time -> time < 80_000 * SECOND)
                            .toArray());
                });
    }

    @Provide
    Arbitrary<List<Interval>> outages() {
        return Combinators.combine(
                        Arbitraries.integers().between(-9000, 85_000),
                        Arbitraries.integers().between(0, 9000))
                .as((from, length) -> Interval.of(EpochNanos.toInstant(from * SECOND), Duration.ofSeconds(length)))
                .list()
                .ofMaxSize(5);
    }

    @Provide
    Arbitrary<TipSpreading> spreadings() {
        return Arbitraries.of(TipSpreading.COUNT, TipSpreading.INTERVAL, TipSpreading.SMOOTH);
    }

    @Property(tries = 300)
    void nothingIsLost(
            @ForAll("tips") Tips tips,
            @ForAll("outages") List<Interval> outages,
            @ForAll("spreadings") TipSpreading spreading,
            @ForAll @IntRange(min = 60, max = 4000) int stepSeconds) {
        TipRecord record = GAUGE.record(tips, RECORD, Duration.ofSeconds(stepSeconds), spreading, outages);
        int inside = 0;
        for (int i = 0; i < tips.size(); i++) {
            int tip = i;
            inside += outages.stream().anyMatch(outage -> outage.contains(tips.time(tip))) ? 1 : 0;
        }
        assertThat(record.aside()).isEqualTo(inside);
        double least = (tips.size() - inside) * 0.2 * 0.98;
        double most = (tips.size() - inside) * 0.2 * (1.08 - 0.5 / 300);
        assertThat(record.depth().sum() + record.depthInMissingMm()).isBetween(least - 1e-12, most + 1e-12);
        double uncalibrated = TippingBucket.ofTip(0.2)
                .record(tips, RECORD, Duration.ofSeconds(stepSeconds), spreading, outages)
                .depth()
                .sum();
        assertThat(uncalibrated).isLessThanOrEqualTo((tips.size() - inside) * 0.2 + 1e-12);
    }

    @Property(tries = 300)
    void exactlyTheStepsThatShareTimeWithAnOutageAreMissing(
            @ForAll("tips") Tips tips,
            @ForAll("outages") List<Interval> outages,
            @ForAll("spreadings") TipSpreading spreading,
            @ForAll @IntRange(min = 60, max = 4000) int stepSeconds) {
        Duration step = Duration.ofSeconds(stepSeconds);
        TipRecord record = TippingBucket.ofTip(0.2).record(tips, RECORD, step, spreading, outages);
        for (int i = 0; i < record.depth().size(); i++) {
            Interval time = Interval.of(record.depth().time(i), step)
                    .intersection(RECORD)
                    .orElseThrow();
            boolean touched = outages.stream()
                    .anyMatch(outage -> outage.intersection(time)
                            .filter(shared -> !shared.isEmpty())
                            .isPresent());
            assertThat(Double.isNaN(record.depth().value(i))).as("step %d", i).isEqualTo(touched);
        }
        double known = (tips.size() - record.aside()) * 0.2;
        assertThat(record.depth().sum() + record.depthInMissingMm()).isCloseTo(known, within(1e-12));
    }
}
