package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Resample;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;

class RainUnitsProperties {
    @Provide
    Arbitrary<double[]> rainWithGaps() {
        return Arbitraries.frequencyOf(
                        Tuple.of(4, Arbitraries.just(0.0)),
                        Tuple.of(4, Arbitraries.integers().between(1, 200).map(tips -> tips * 0.2)),
                        Tuple.of(4, Arbitraries.doubles().between(1e-6, 50).ofScale(9)),
                        Tuple.of(1, Arbitraries.just(Double.NaN)))
                .array(double[].class)
                .ofMaxSize(60);
    }

    private static RegularSeries series(double[] depths, long seconds) {
        return RegularSeries.of(Instant.parse("2026-03-01T00:00:07Z"), Duration.ofSeconds(seconds), depths);
    }

    @Property
    void thereAndBackLosesNothing(
            @ForAll("rainWithGaps") double[] depths, @ForAll @LongRange(min = 1, max = 90_000) long seconds) {
        RegularSeries depth = series(depths, seconds);
        RegularSeries back = RainUnits.depth(RainUnits.intensity(depth));
        assertThat(back.interval()).isEqualTo(depth.interval());
        assertThat(back.sum()).isCloseTo(depth.sum(), within(1e-15 * depth.sum()));
        for (int i = 0; i < depths.length; i++) {
            if (Double.isNaN(depths[i])) {
                assertThat(back.value(i)).isNaN();
            } else {
                assertThat(back.value(i)).isCloseTo(depths[i], within(2 * Math.ulp(depths[i])));
            }
        }
    }

    @Property
    void otherStepsHoldTheSameDepth(
            @ForAll("rainWithGaps") double[] depths,
            @ForAll @LongRange(min = 60, max = 4000) long seconds,
            @ForAll @LongRange(min = 30, max = 9000) long newSeconds) {
        RegularSeries depth = series(depths, seconds);
        StepRecord record = RainUnits.inSteps(depth, Duration.ofSeconds(newSeconds));
        RegularSeries other = record.depth();
        assertThat(other.start()).isEqualTo(depth.start());
        assertThat(other.sum() + record.asideMm()).isCloseTo(depth.sum(), within(1e-15 * depth.sum()));
        RegularSeries throughIntensity = RainUnits.depth(RainUnits.intensity(other));
        assertThat(throughIntensity.sum()).isCloseTo(other.sum(), within(2e-15 * other.sum()));
    }

    /** Every new step against exact decimal arithmetic, gaps included. */
    @Property(tries = 300)
    void everyNewStepAgreesWithExactArithmetic(
            @ForAll("rainWithGaps") double[] depths,
            @ForAll @LongRange(min = 60, max = 4000) long seconds,
            @ForAll @LongRange(min = 200, max = 9000) long newSeconds) {
        RegularSeries other = RainUnits.inSteps(series(depths, seconds), Duration.ofSeconds(newSeconds))
                .depth();
        for (int k = 0; k < other.size(); k++) {
            BigDecimal expected = BigDecimal.ZERO;
            boolean missing = false;
            for (int i = 0; i < depths.length; i++) {
                long overlap =
                        Math.min(newSeconds * (k + 1), seconds * (i + 1)) - Math.max(newSeconds * k, seconds * i);
                if (overlap > 0 && Double.isNaN(depths[i])) {
                    missing = true;
                } else if (overlap > 0) {
                    expected = expected.add(new BigDecimal(depths[i])
                            .multiply(BigDecimal.valueOf(overlap))
                            .divide(BigDecimal.valueOf(seconds), MathContext.DECIMAL128));
                }
            }
            if (missing) {
                assertThat(other.value(k)).as("step %d", k).isNaN();
            } else {
                double value = expected.doubleValue();
                assertThat(other.value(k)).as("step %d", k).isCloseTo(value, within(1e-15 * value));
            }
        }
    }

    @Property
    void coarserStepsAreTheSumsThatResamplingGives(
            @ForAll("rainWithGaps") double[] depths, @ForAll @IntRange(min = 1, max = 12) int factor) {
        RegularSeries depth = RegularSeries.of(
                Instant.EPOCH, Duration.ofMinutes(5), Arrays.copyOf(depths, depths.length / factor * factor));
        Duration step = Duration.ofMinutes(5L * factor);
        assertThat(RainUnits.inSteps(depth, step).depth().toValues())
                .containsExactly(Resample.sum(step).apply(depth).toValues(), within(1e-12));
    }

    @Property
    void countsOfTipsAreTheDepthOfTheTips(@ForAll @IntRange(min = 0, max = 50) int tips) {
        TippingBucket gauge = TippingBucket.ofTip(0.254);
        RegularSeries counts = series(new double[] {tips, 0, 2}, 120);
        assertThat(gauge.depthOfCounts(counts).sum()).isCloseTo(0.254 * (tips + 2), within(1e-13));
    }

    /** Steady rain between tips has the same intensity in a step as from tip to tip. */
    @Property
    void steadyRainIsCalibratedAlikeFromTipsAndFromSteps(@ForAll @IntRange(min = 2, max = 60) int gapSeconds) {
        TippingBucket gauge = TippingBucket.ofTip(0.2).withCalibration(LostTime.ofSeconds(0.45));
        long[] tips = new long[200];
        Arrays.setAll(tips, i -> 1_000_000_000L * gapSeconds * (i + 1));
        double fromTips = gauge.tipDepths(Tips.ofEpochNanos(tips))[100];
        RegularSeries counts = series(new double[] {10}, 10L * gapSeconds);
        assertThat(gauge.depthOfCounts(counts).value(0)).isCloseTo(10 * fromTips, within(1e-12));
    }
}
