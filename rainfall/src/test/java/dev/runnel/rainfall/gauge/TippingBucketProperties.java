package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Duration;
import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class TippingBucketProperties {
    private static final long SECOND = 1_000_000_000L;

    /** Gaps from none to days, in nanoseconds, as a storm and the drizzle around it have. */
    @Provide
    Arbitrary<Tips> tips() {
        Arbitrary<Long> gap = Arbitraries.oneOf(
                Arbitraries.just(0L),
                Arbitraries.longs().between(1, 20 * SECOND),
                Arbitraries.longs().between(SECOND, 7200 * SECOND),
                Arbitraries.longs().between(SECOND, 90_000 * SECOND));
        return gap.array(long[].class).ofMinSize(1).ofMaxSize(25).map(gaps -> {
            Arrays.parallelPrefix(gaps, Long::sum);
            return Tips.ofEpochNanos(gaps);
        });
    }

    @Provide
    Arbitrary<TippingBucket> gauges() {
        return Arbitraries.doubles()
                .between(0.05, 1)
                .ofScale(3)
                .flatMap(tip -> Arbitraries.of(
                                Calibration.none(),
                                LostTime.ofSeconds(0.45),
                                CalibrationCurve.linear(-0.5, 1.08, 5, 300),
                                CalibrationCurve.power(0.93, 1.02, 1, 500))
                        .map(calibration -> TippingBucket.ofTip(tip).withCalibration(calibration)));
    }

    @Provide
    Arbitrary<TipSpreading> spreadings() {
        return Arbitraries.of(
                TipSpreading.COUNT,
                TipSpreading.INTERVAL,
                TipSpreading.interval(Duration.ofSeconds(7)),
                TipSpreading.interval(Duration.ofDays(100)));
    }

    @Provide
    Arbitrary<TipSpreading> allSpreadings() {
        return Arbitraries.oneOf(
                spreadings(), Arbitraries.of(TipSpreading.SMOOTH, TipSpreading.smooth(Duration.ofDays(100))));
    }

    @Property(tries = 300)
    void smoothRainIsNeverNegativeAndKeepsEveryTip(
            @ForAll("tips") Tips tips, @ForAll @IntRange(min = 60, max = 900) int stepSeconds) {
        TippingBucket gauge = TippingBucket.ofTip(0.2);
        Duration step = Duration.ofSeconds(stepSeconds);
        RegularSeries smooth = gauge.depth(tips, step, TipSpreading.SMOOTH);
        RegularSeries even = gauge.depth(tips, step, TipSpreading.INTERVAL);
        assertThat(smooth.interval()).isEqualTo(even.interval());
        double smoothSum = 0;
        double evenSum = 0;
        for (int i = 0; i < smooth.size(); i++) {
            assertThat(smooth.value(i)).isGreaterThanOrEqualTo(0);
            smoothSum += smooth.value(i);
            evenSum += even.value(i);
            // At every instant both have all tips before and none after the next.
            assertThat(Math.abs(smoothSum - evenSum)).isLessThan(0.2 * (1 + tips.coincident()));
        }
    }

    @Property(tries = 500)
    void depthOfAllStepsIsDepthOfAllTips(
            @ForAll("tips") Tips tips,
            @ForAll("gauges") TippingBucket gauge,
            @ForAll("allSpreadings") TipSpreading spreading,
            @ForAll @IntRange(min = 60, max = 90_000) int stepSeconds) {
        double truth = gauge.summary(tips).depthMm();
        RegularSeries depth = gauge.depth(tips, Duration.ofSeconds(stepSeconds), spreading);
        assertThat(depth.sum()).isCloseTo(truth, within(1e-15 * truth));
        Interval record = Interval.of(EpochNanos.toInstant(-77 * SECOND), Duration.ofDays(30));
        RegularSeries inRecord = gauge.depth(tips, record, Duration.ofSeconds(stepSeconds), spreading);
        assertThat(inRecord.sum()).isCloseTo(truth, within(1e-15 * truth));
    }

    @Property(tries = 200)
    void everyStepAgreesWithExactArithmetic(
            @ForAll("tips") Tips tips,
            @ForAll("spreadings") TipSpreading spreading,
            @ForAll @IntRange(min = 900, max = 90_000) int stepSeconds) {
        TippingBucket gauge = TippingBucket.ofTip(0.2);
        RegularSeries depth = gauge.depth(tips, Duration.ofSeconds(stepSeconds), spreading);
        BigDecimal[] exact = exact(tips, 0.2, spreading, depth);
        for (int i = 0; i < exact.length; i++) {
            double expected = exact[i].doubleValue();
            assertThat(depth.value(i)).as("step %d", i).isCloseTo(expected, within(1e-15 * expected));
        }
    }

    private static BigDecimal[] exact(Tips tips, double tip, TipSpreading spreading, RegularSeries grid) {
        long start = EpochNanos.of(grid.start());
        long step = grid.step().toNanos();
        BigDecimal[] depths = new BigDecimal[grid.size()];
        Arrays.fill(depths, BigDecimal.ZERO);
        for (int i = 0; i < tips.size(); i++) {
            long to = tips.epochNanos(i);
            long from = to - spreading.cap().toNanos();
            int before = i - 1;
            while (before >= 0 && tips.epochNanos(before) == to) {
                before--;
            }
            if (before >= 0 && tips.epochNanos(before) >= from) {
                from = tips.epochNanos(before);
            } else {
                int after = tips.endOfInstant(i);
                if (after < tips.size()) {
                    from = Math.max(from, to - (tips.epochNanos(after) - to));
                }
            }
            for (int k = (int) ((from - start) / step); k < depths.length && start + step * k <= to; k++) {
                long a = start + step * k;
                if (from == to) {
                    if (a <= to && to < a + step) {
                        depths[k] = depths[k].add(new BigDecimal(tip));
                    }
                } else {
                    long overlap = Math.min(to, a + step) - Math.max(from, a);
                    if (overlap > 0) {
                        depths[k] = depths[k].add(new BigDecimal(tip)
                                .multiply(BigDecimal.valueOf(overlap))
                                .divide(BigDecimal.valueOf(to - from), MathContext.DECIMAL128));
                    }
                }
            }
        }
        return depths;
    }
}
