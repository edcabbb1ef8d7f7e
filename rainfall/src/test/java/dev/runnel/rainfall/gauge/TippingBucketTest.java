package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TippingBucketTest {
    private static final Instant START = Instant.parse("2026-03-01T12:00:00Z");
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);
    private static final TippingBucket GAUGE = TippingBucket.ofTip(0.2);

    private static Tips tips(double... minutes) {
        long[] times = new long[minutes.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = START.getEpochSecond() * 1_000_000_000L + Math.round(minutes[i] * 60e9);
        }
        return Tips.ofEpochNanos(times);
    }

    private static Interval record(int minutes) {
        return Interval.of(START, Duration.ofMinutes(minutes));
    }

    @ParameterizedTest
    @CsvSource({"2.0, 200, 0.1", "8.2370322, 324.293, 0.254", "8.0, 400, 0.2", "10, 500, 0.2", "7.4, 314.16, 0.2355"})
    void depthOfTipIsVolumeOverFunnel(double millilitres, double funnel, double tip) {
        assertThat(TippingBucket.ofVolume(millilitres, funnel).tipMm()).isCloseTo(tip, within(1e-4));
    }

    /** Dunkerley (2024), Water 16(7) 998, abstract: 7.2 s between tips of 0.2 mm at 100 mm/h. */
    @Test
    void recordedIntensityAgreesWithDunkerley() {
        assertThat(GAUGE.recordedMmPerHour(Duration.ofMillis(7200))).isCloseTo(100, within(1e-12));
    }

    @Test
    void countsATipInItsStep() {
        RegularSeries depth = GAUGE.depth(tips(0, 1.9, 2, 7), record(10), TWO_MINUTES, TipSpreading.COUNT);
        assertThat(depth).isEqualTo(RegularSeries.of(START, TWO_MINUTES, 0.4, 0.2, 0, 0.2, 0));
    }

    @Test
    void spreadsATipOverTheTimeSinceTheOneBefore() {
        // The second tip filled from minute 1 to minute 7: 1, 2, 2 and 1 of 6 minutes in four steps.
        RegularSeries depth = GAUGE.depth(tips(1, 7), record(10), TWO_MINUTES, TipSpreading.INTERVAL);
        double[] shares = {1 + 1 / 6.0, 2 / 6.0, 2 / 6.0, 1 / 6.0, 0};
        for (int i = 0; i < shares.length; i++) {
            assertThat(depth.value(i)).as("step %d", i).isCloseTo(0.2 * shares[i], within(1e-16));
        }
    }

    @Test
    void spreadsAFirstTipOverNoMoreThanTheCap() {
        TipSpreading spreading = TipSpreading.interval(Duration.ofMinutes(4));
        RegularSeries depth = GAUGE.depth(tips(1, 99), record(100), TWO_MINUTES, spreading);
        assertThat(depth.value(46)).isZero();
        assertThat(depth.value(47)).isCloseTo(0.05, within(1e-16));
        assertThat(depth.value(48)).isCloseTo(0.10, within(1e-16));
        assertThat(depth.value(49)).isCloseTo(0.05, within(1e-16));
        assertThat(TipSpreading.INTERVAL.cap()).isEqualTo(Duration.ofMinutes(60));
    }

    @Test
    void theFirstTipOfASpellIsAsFastAsTheNext() {
        // Minutes 5 and 375 begin a spell each, 600 is alone and spread over the cap.
        Tips tips = tips(5, 7, 375, 376, 600);
        RegularSeries depth = GAUGE.depth(tips, record(700), Duration.ofMinutes(1), TipSpreading.INTERVAL);
        assertThat(depth.value(2)).isZero();
        assertThat(depth.value(3)).isCloseTo(0.1, within(1e-15));
        assertThat(depth.value(4)).isCloseTo(0.1, within(1e-15));
        assertThat(depth.value(373)).isZero();
        assertThat(depth.value(374)).isCloseTo(0.2, within(1e-15));
        assertThat(depth.value(375)).isCloseTo(0.2, within(1e-15));
        assertThat(depth.value(539)).isZero();
        assertThat(depth.value(540)).isCloseTo(0.2 / 60, within(1e-15));
        RegularSeries smooth = GAUGE.depth(tips, record(700), Duration.ofMinutes(1), TipSpreading.SMOOTH);
        assertThat(smooth.value(2)).isZero();
        assertThat(smooth.value(374)).isCloseTo(0.2, within(1e-15));
        assertThat(smooth.sum()).isCloseTo(1.0, within(1e-15));
    }

    @Test
    void startsOfTipsCenturiesApartDoNotOverflow() {
        TipSpreading forever = TipSpreading.interval(Duration.ofDays(100_000));
        assertThat(forever.start(Long.MIN_VALUE, -9_000_000_000_000_000_000L, 9_000_000_000_000_000_000L))
                .isEqualTo(Long.MIN_VALUE);
        assertThat(TipSpreading.COUNT.start(1, 5, 9)).isEqualTo(5);
        assertThat(TipSpreading.interval(Duration.ofNanos(4)).start(1, 5, 6)).isEqualTo(1);
        assertThat(TipSpreading.interval(Duration.ofNanos(3)).start(1, 5, 6)).isEqualTo(4);
        assertThat(TipSpreading.interval(Duration.ofNanos(3)).start(1, 5, 9)).isEqualTo(2);
        assertThat(TipSpreading.interval(Duration.ofNanos(3)).start(1, 5, Long.MAX_VALUE))
                .isEqualTo(2);
    }

    @Test
    void smoothRainStartsAndEndsWithoutAJump() {
        // One tip over 8 min: shares of 3s^2 - 2s^3 at s = 1/4, 1/2, 3/4.
        RegularSeries alone =
                GAUGE.depth(tips(8), record(10), TWO_MINUTES, TipSpreading.smooth(Duration.ofMinutes(60)));
        assertThat(alone.toValues())
                .containsExactly(
                        new double[] {0.2 * 10 / 64, 0.2 * 22 / 64, 0.2 * 22 / 64, 0.2 * 10 / 64, 0}, within(1e-16));
        // Two tips over 4 min each meet at their common intensity: slopes 0 and 1 give 3/8 of a tip at half its time.
        RegularSeries two = GAUGE.depth(tips(4, 8), record(10), TWO_MINUTES, TipSpreading.SMOOTH);
        assertThat(two.toValues())
                .containsExactly(new double[] {0.2 * 3 / 8, 0.2 * 5 / 8, 0.2 * 5 / 8, 0.2 * 3 / 8, 0}, within(1e-16));
    }

    @Test
    void doesNotSpreadToBeforeTheRecord() {
        RegularSeries depth = GAUGE.depth(tips(3), record(4), TWO_MINUTES, TipSpreading.INTERVAL);
        assertThat(depth.value(0)).isCloseTo(0.2 * 2 / 3, within(1e-16));
        assertThat(depth.value(1)).isCloseTo(0.2 / 3, within(1e-16));
    }

    @Test
    void aTipOnABoundaryFellBeforeItButCountsAfterIt() {
        assertThat(GAUGE.depth(tips(0, 2), record(4), TWO_MINUTES, TipSpreading.COUNT)
                        .toValues())
                .containsExactly(0.2, 0.2);
        assertThat(GAUGE.depth(tips(1, 2), record(4), TWO_MINUTES, TipSpreading.INTERVAL)
                        .toValues())
                .containsExactly(0.4, 0);
    }

    @Test
    void coincidentTipsStayTogether() {
        assertThat(GAUGE.depth(tips(1, 3, 3, 3), record(4), TWO_MINUTES, TipSpreading.COUNT)
                        .toValues())
                .containsExactly(0.2, 0.2 * 3);
        assertThat(GAUGE.depth(tips(1, 3, 3, 3), record(4), TWO_MINUTES, TipSpreading.INTERVAL)
                        .sum())
                .isEqualTo(0.2 * 4);
    }

    @Test
    void withoutARecordStepsAreThoseOfTheClock() {
        RegularSeries depth = GAUGE.depth(tips(3.5), Duration.ofMinutes(5), TipSpreading.COUNT);
        assertThat(depth).isEqualTo(RegularSeries.of(START, Duration.ofMinutes(5), 0.2));
        RegularSeries spread =
                GAUGE.depth(tips(3.5), Duration.ofMinutes(5), TipSpreading.interval(Duration.ofMinutes(7)));
        assertThat(spread.start()).isEqualTo(START.minusSeconds(300));
        assertThat(spread.size()).isEqualTo(2);
        assertThat(spread.sum()).isCloseTo(0.2, within(1e-16));
    }

    @Test
    void withoutTipsThereIsNoRain() {
        assertThat(GAUGE.depth(Tips.none(), record(4), TWO_MINUTES, TipSpreading.INTERVAL))
                .isEqualTo(RegularSeries.of(START, TWO_MINUTES, 0, 0));
        assertThat(GAUGE.depth(Tips.none(), TWO_MINUTES, TipSpreading.INTERVAL).size())
                .isZero();
        assertThat(GAUGE.summary(Tips.none())).isEqualTo(new TipSummary(0, 0, 0, 0, 0, 0));
    }

    @Test
    void theLastStepHoldsTheEndOfTheRecord() {
        assertThat(GAUGE.depth(Tips.none(), record(5), TWO_MINUTES, TipSpreading.COUNT)
                        .size())
                .isEqualTo(3);
    }

    @Test
    void correctsTheLossAtHighIntensity() {
        TippingBucket corrected = GAUGE.withCalibration(LostTime.ofSeconds(0.45));
        // 7.65 s between tips of 0.2 mm is 100 mm/h with 0.45 s lost; the first tip has no intensity.
        Tips tips = tips(0, 7.65 / 60, 15.3 / 60);
        double[] depths = corrected.tipDepths(tips);
        assertThat(depths[0]).isCloseTo(0.2, within(1e-15));
        assertThat(depths[1]).isCloseTo(0.2 * 7.65 / 7.2, within(1e-12));
        assertThat(corrected
                        .depth(tips, record(2), TWO_MINUTES, TipSpreading.INTERVAL)
                        .sum())
                .isCloseTo(0.2 * (1 + 2 * 7.65 / 7.2), within(1e-12));
        assertThat(corrected
                        .intensity(tips, record(2), TWO_MINUTES, TipSpreading.COUNT)
                        .value(0))
                .isCloseTo(30 * 0.2 * (1 + 2 * 7.65 / 7.2), within(1e-10));
    }

    @Test
    void countsTipsBeyondTheCalibration() {
        TippingBucket corrected = GAUGE.withCalibration(LostTime.ofSeconds(0.45));
        TipSummary summary = corrected.summary(tips(0, 0, 0.5 / 60, 10));
        assertThat(summary.beyondCalibration()).isEqualTo(1);
        assertThat(summary.aboveCalibration()).isEqualTo(1);
        assertThat(summary.belowCalibration()).isZero();
        TipSummary curve = GAUGE.withCalibration(CalibrationCurve.linear(-0.5, 1.08, 5, 300))
                .summary(tips(0, 10, 11, 11 + 1 / 60.0));
        assertThat(curve.belowCalibration()).isEqualTo(1);
        assertThat(curve.aboveCalibration()).isEqualTo(1);
        assertThat(curve)
                .hasToString("TipSummary[4 tips, 0.822373 mm of which 0.02237 mm by calibration, 0 coincident,"
                        + " 1 below and 1 above the calibration]");
        assertThat(summary.coincident()).isEqualTo(1);
        assertThat(summary.nominalMm()).isEqualTo(0.8);
        assertThat(summary.addedMm()).isCloseTo(0.2 + 0.2 * (600 - 0.5) / (600 - 0.95) - 0.2, within(1e-12));
    }

    @Test
    void tipsOfACoarseClockShareTheTimeBeforeThem() {
        TippingBucket corrected = GAUGE.withCalibration(LostTime.ofSeconds(0.45));
        // Four tips in the minute after the first: 15 s each.
        Tips tips = tips(0, 1, 1, 1, 1);
        assertThat(corrected.summary(tips).depthMm()).isCloseTo(0.2 + 0.8 * 15 / 14.55, within(1e-12));
        assertThat(corrected.summary(tips).beyondCalibration()).isZero();
        assertThat(GAUGE.depth(tips, record(2), Duration.ofSeconds(30), TipSpreading.INTERVAL)
                        .toValues())
                .containsExactly(new double[] {0.6, 0.4, 0, 0}, within(1e-15));
        assertThat(GAUGE.depth(tips, record(2), Duration.ofSeconds(30), TipSpreading.COUNT)
                        .toValues())
                .containsExactly(new double[] {0.2, 0, 0.8, 0}, within(1e-15));
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> TippingBucket.ofTip(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("tipMm must be in [0.01, 5] mm, was 0");
        assertThatThrownBy(() -> TippingBucket.ofVolume(8, Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("funnelCm2 must be in [20, 10000] cm2, was NaN");
        assertThatThrownBy(() -> TippingBucket.ofTip(20))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("tipMm must be in [0.01, 5] mm, was 20");
        assertThatThrownBy(() -> TippingBucket.ofVolume(0.008, 400))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("10 volumeMl / funnelCm2 must be in [0.01, 5] mm, was 2.0E-4");
        assertThatThrownBy(() -> GAUGE.depth(tips(1), Duration.ZERO, TipSpreading.COUNT))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("step must be longer than 0, was 0 s");
        assertThatThrownBy(() -> GAUGE.depth(tips(1, 4), record(4), TWO_MINUTES, TipSpreading.COUNT))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("tips must be inside the record 2026-03-01T12:00:00Z/2026-03-01T12:04:00Z,"
                        + " was 2026-03-01T12:04:00Z at index 1; tips.slice(record) leaves out those outside");
        assertThatThrownBy(() -> GAUGE.depth(tips(0, 1000), Duration.ofNanos(1), TipSpreading.COUNT))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("step must be at least PT");
        assertThatThrownBy(() -> TipSpreading.interval(Duration.ZERO))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("cap must be longer than 0, was 0 s");
    }
}
