package dev.runnel.timeseries;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class ResampleProperties {
    private static final Instant START = Instant.parse("2026-03-29T00:00:00Z");

    @Property
    void sumLosesNothing(@ForAll("records") Series series, @ForAll @IntRange(min = 1, max = 5_000) int seconds) {
        RegularSeries sums =
                Resample.sum(Duration.ofSeconds(seconds)).withMinimumCoverage(0).apply(series);
        assertThat(sums.sum()).isCloseTo(series.statistics().sum(), within(1e-9));
    }

    @Property
    void heldMeanIsTheSumOverSecondsOfWhatIsHeld(
            @ForAll("records") Series series,
            @ForAll @IntRange(min = 1, max = 500) int step,
            @ForAll @IntRange(min = 1, max = 900) int gap) {
        Resampled result = Resample.mean(Duration.ofSeconds(step))
                .withMaximumGap(Duration.ofSeconds(gap))
                .withMinimumCoverage(0)
                .applyWithCoverage(series);
        // Everything falls on whole seconds, so second by second is exact: an independent and slow way.
        for (int i = 0; i < result.values().size(); i++) {
            double sum = 0;
            int known = 0;
            long from = result.values().time(i).getEpochSecond();
            for (long second = from; second < from + step; second++) {
                double held = heldAt(series, second, gap);
                if (!Double.isNaN(held)) {
                    sum += held;
                    known++;
                }
            }
            assertThat(result.coverage().value(i)).isCloseTo((double) known / step, within(1e-12));
            if (known == 0) {
                assertThat(result.values().value(i)).isNaN();
            } else {
                assertThat(result.values().value(i)).isCloseTo(sum / known, within(1e-9));
            }
        }
    }

    @Property
    void alignedValuesLieBetweenTheirNeighbours(
            @ForAll("records") Series clock,
            @ForAll("records") Series other,
            @ForAll @IntRange(min = 1, max = 900) int limit) {
        Series linear = Alignment.linear(Duration.ofSeconds(limit)).align(clock, other);
        Series held = Alignment.holdLast(Duration.ofSeconds(limit)).align(clock, other);
        Statistics range = other.statistics();
        assertThat(linear.toEpochNanos()).isEqualTo(clock.toEpochNanos());
        for (int i = 0; i < clock.size(); i++) {
            long second = clock.time(i).getEpochSecond();
            double expected = heldAt(other, second, limit + 1);
            assertThat(Double.valueOf(held.value(i))).isEqualTo(Double.valueOf(expected));
            if (!Double.isNaN(linear.value(i))) {
                assertThat(linear.value(i)).isBetween(range.minimum() - 1e-9, range.maximum() + 1e-9);
            }
        }
    }

    private static double heldAt(Series series, long second, int gap) {
        double held = Double.NaN;
        for (int i = 0; i < series.size(); i++) {
            long age = second - series.time(i).getEpochSecond();
            if (age >= 0 && !Double.isNaN(series.value(i))) {
                held = age < gap ? series.value(i) : Double.NaN;
            }
        }
        return held;
    }

    @Provide
    Arbitrary<Series> records() {
        Arbitrary<Integer> spacing = Arbitraries.integers().between(1, 600);
        Arbitrary<Double> value =
                Arbitraries.doubles().between(-10, 10).ofScale(6).injectNull(0.1);
        return Combinators.combine(spacing, value)
                .as((seconds, number) -> new double[] {seconds, number == null ? Double.NaN : number})
                .list()
                .ofMinSize(1)
                .ofMaxSize(12)
                .map(rows -> {
                    SeriesBuilder builder = Series.builder();
                    Instant time = START;
                    for (double[] row : rows) {
                        time = time.plusSeconds((long) row[0]);
                        builder.add(time, row[1]);
                    }
                    return builder.build();
                });
    }
}
