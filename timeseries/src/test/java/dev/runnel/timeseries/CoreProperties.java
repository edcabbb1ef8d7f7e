package dev.runnel.timeseries;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.LongRange;

class CoreProperties {
    @Property
    void epochNanosAreExactBothWays(@ForAll long nanos) {
        assertThat(EpochNanos.of(EpochNanos.toInstant(nanos))).isEqualTo(nanos);
    }

    @Property
    void epochNanosKeepTheOrder(@ForAll long first, @ForAll long second) {
        assertThat(Integer.signum(EpochNanos.toInstant(first).compareTo(EpochNanos.toInstant(second))))
                .isEqualTo(Long.compare(first, second));
    }

    @Property
    void theSumIsThatOfExactArithmetic(@ForAll("values") double[] values) {
        BigDecimal exact = BigDecimal.ZERO;
        double magnitude = 0;
        for (double value : values) {
            exact = exact.add(new BigDecimal(value));
            magnitude += Math.abs(value);
        }
        // Neumaier: one rounding of the result, and terms of the order of n eps squared.
        double allowed = Math.ulp(exact.doubleValue()) + 1e-28 * values.length * magnitude;
        assertThat(Math.abs(Statistics.of(values).sum() - exact.doubleValue())).isLessThanOrEqualTo(allowed);
    }

    @Property
    void quantilesRiseWithTheProbability(
            @ForAll("values") double[] values,
            @ForAll @DoubleRange(max = 1) double first,
            @ForAll @DoubleRange(max = 1) double second) {
        Statistics statistics = Statistics.of(values);
        double lower = statistics.quantile(Math.min(first, second));
        double upper = statistics.quantile(Math.max(first, second));
        if (values.length > 0) {
            assertThat(lower).isLessThanOrEqualTo(upper + Math.ulp(upper));
            assertThat(lower).isBetween(statistics.minimum(), statistics.maximum());
        } else {
            assertThat(lower).isNaN();
        }
    }

    @Property
    void slicesOfAdjoiningIntervalsMakeTheWhole(
            @ForAll("values") double[] values, @ForAll @LongRange(min = -5, max = 80) long cutSecond) {
        long[] times = new long[values.length];
        Arrays.setAll(times, i -> 3_000_000_000L * i);
        Series series = Series.of(times, values);
        Instant cut = Instant.ofEpochSecond(cutSecond);
        Series before = series.slice(Interval.of(Instant.MIN, cut));
        Series after = series.slice(Interval.of(cut, Instant.MAX));
        SeriesBuilder joined = Series.builder();
        before.stream().forEach(joined::add);
        after.stream().forEach(joined::add);
        assertThat(joined.build()).isEqualTo(series);
        assertThat(before.stream().allMatch(reading -> reading.time().isBefore(cut)))
                .isTrue();
        RegularSeries regular = RegularSeries.of(Instant.EPOCH, java.time.Duration.ofSeconds(3), values);
        assertThat(regular.slice(Interval.of(Instant.MIN, cut)).toValues()).isEqualTo(before.toValues());
        assertThat(regular.slice(Interval.of(cut, Instant.MAX)).toValues()).isEqualTo(after.toValues());
    }

    @Provide
    Arbitrary<double[]> values() {
        return Arbitraries.doubles()
                .between(-1e9, 1e9)
                .ofScale(6)
                .array(double[].class)
                .ofMaxSize(25);
    }
}
