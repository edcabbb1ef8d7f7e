package dev.runnel.rainfall;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.rainfall.design.DesignStorm;
import dev.runnel.rainfall.design.SymmetricProfile;
import dev.runnel.rainfall.event.DryDayRule;
import dev.runnel.rainfall.event.RainAutocorrelation;
import dev.runnel.rainfall.gauge.SteppedGauge;
import dev.runnel.rainfall.gauge.TipSpreading;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A slip of a unit or of a date ends in a clear refusal at once, not in a hang or without memory. */
@Timeout(10)
class AbsurdSizesTest {
    private static final TippingBucket GAUGE = TippingBucket.ofTip(0.2);
    private static final Duration MINUTE = Duration.ofMinutes(1);

    private static void refused(String message, ThrowingCallable call) {
        assertThatThrownBy(call).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
    }

    @Test
    void designStorms() {
        Duration centuries = Duration.parse("PT2562024H");
        refused(
                "duration must be at most 1000000 steps of 1 min, was 106751 d",
                () -> DesignStorm.of("x", SymmetricProfile.winter75(), centuries, 10, MINUTE));
    }

    @Test
    void tipsCenturiesApart() {
        Tips far = Tips.of(Instant.parse("1678-01-01T00:00:00Z"), Instant.parse("2026-01-01T00:00:00Z"));
        for (TipSpreading spreading : List.of(TipSpreading.COUNT, TipSpreading.INTERVAL, TipSpreading.SMOOTH)) {
            refused(
                    "step must be at least 292 years for a record of more than 292 years, at most 100000000 steps, was"
                            + " 1 min",
                    () -> GAUGE.intensity(far, MINUTE, spreading));
        }
        Tips nearer = Tips.of(Instant.parse("1800-01-01T00:00:00Z"), Instant.parse("2026-01-01T00:00:00Z"));
        assertThatThrownBy(() -> GAUGE.depth(nearer, MINUTE, TipSpreading.COUNT))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("step must be at least PT1M11.");
    }

    @Test
    void aRecordToTheEndOfTime() {
        Interval all = Interval.of(Instant.EPOCH, Instant.parse("2262-04-11T00:00:00Z"));
        Interval outage = Interval.of(Instant.parse("2026-01-01T00:00:00Z"), all.end());
        Tips tips = Tips.of(Instant.parse("2020-01-01T00:00:00Z"));
        assertThatThrownBy(() -> GAUGE.record(tips, all, MINUTE, TipSpreading.INTERVAL, List.of(outage)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("at most 100000000 steps");
        Duration long1 = Duration.ofDays(300);
        assertThatThrownBy(() -> GAUGE.record(tips, all, long1, TipSpreading.INTERVAL, List.of(outage)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must end a step before 2262-04-11");
    }

    @Test
    void autocorrelationAndDryDays() {
        RegularSeries rain = RegularSeries.of(Instant.EPOCH, MINUTE, 1, 2, 3);
        refused(
                "lags must be less than the steps of rain, 3, was 2147483647",
                () -> RainAutocorrelation.of(rain, Integer.MAX_VALUE));
        RegularSeries longer = RegularSeries.of(Instant.EPOCH, MINUTE, new double[200_000]);
        refused(
                "lags times steps of rain must be at most 10000000000, was 100000 times 200000",
                () -> RainAutocorrelation.of(longer, 100_000));
        refused(
                "days must be in [0, 3660], was 2147483647",
                () -> DryDayRule.of(1).withDaysBefore(Integer.MAX_VALUE, 1));
        refused(
                "days must be in [1, 3660], was 2147483647",
                () -> DryDayRule.of(1).withRun(Integer.MAX_VALUE));
    }

    @Test
    void countsOfTips() {
        double[] counts = new double[101];
        for (int i = 0; i < 101; i++) {
            counts[i] = 1_000_000;
        }
        Series series = RegularSeries.of(Instant.EPOCH, MINUTE, counts).toSeries();
        refused("counts must be at most 100000000 together, were 101000000", () -> Tips.ofCounts(series));
    }

    @Test
    void readingsOfAGaugeCenturiesApart() {
        Series two = Series.of(new long[] {0, Duration.ofDays(75_000).toNanos()}, new double[] {1, 2});
        assertThatThrownBy(() -> SteppedGauge.ofDepth(MINUTE).record(two))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("at most 100000000 steps");
    }
}
