package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class SlidingMaximumProperties {
    private static final int STEP = 12;

    @Provide
    Arbitrary<double[]> rain() {
        return Arbitraries.oneOf(
                        Arbitraries.just(0.0),
                        Arbitraries.doubles().between(0, 20).ofScale(6))
                .array(double[].class)
                .ofMinSize(1)
                .ofMaxSize(30);
    }

    /** Rain up to a second, taken as steady within each step of 12 s. */
    private static double upTo(double[] rain, int second) {
        double sum = 0;
        for (int i = 0; i < rain.length; i++) {
            sum += rain[i] * Math.max(0, Math.min(STEP, second - STEP * i)) / STEP;
        }
        return sum;
    }

    @Property(tries = 300)
    void noWindowOfAnySecondIsDeeper(
            @ForAll("rain") double[] rain, @ForAll @IntRange(min = STEP, max = 400) int window) {
        PeakDepth peak = SlidingMaximum.of(Duration.ofSeconds(window))
                .peaks(RegularSeries.of(Instant.EPOCH, Duration.ofSeconds(STEP), rain))
                .get(0);
        double deepest = 0;
        for (int from = -window; from < STEP * rain.length; from++) {
            deepest = Math.max(deepest, upTo(rain, from + window) - upTo(rain, from));
        }
        assertThat(peak.depthMm()).isCloseTo(deepest, within(1e-10));
        int start = (int) peak.start().getEpochSecond();
        assertThat(upTo(rain, start + window) - upTo(rain, start)).isCloseTo(peak.depthMm(), within(1e-10));
    }

    @Property
    void depthNeverFallsAndIntensityNeverRisesBySteps(@ForAll("rain") double[] rain) {
        Duration[] durations = new Duration[10];
        Arrays.setAll(durations, i -> Duration.ofSeconds((long) STEP << i));
        var peaks = SlidingMaximum.of(durations).peaks(RegularSeries.of(Instant.EPOCH, Duration.ofSeconds(STEP), rain));
        for (int i = 1; i < peaks.size(); i++) {
            assertThat(peaks.get(i).depthMm())
                    .isGreaterThanOrEqualTo(peaks.get(i - 1).depthMm() * (1 - 1e-14));
            assertThat(peaks.get(i).intensityMmPerHour())
                    .isLessThanOrEqualTo(peaks.get(i - 1).intensityMmPerHour() * (1 + 1e-14));
        }
    }
}
