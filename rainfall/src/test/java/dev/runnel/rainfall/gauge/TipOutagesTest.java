package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class TipOutagesTest {
    private static final Instant START = Instant.parse("2026-03-01T12:00:00Z");
    private static final Interval RECORD = Interval.of(START, Duration.ofMinutes(30));
    private static final Duration STEP = Duration.ofMinutes(5);
    private static final TippingBucket GAUGE = TippingBucket.ofTip(0.2);

    private static Instant minute(double minute) {
        return START.plusSeconds(Math.round(60 * minute));
    }

    private static Tips tips(double... minutes) {
        return Tips.of(Arrays.stream(minutes).mapToObj(TipOutagesTest::minute).toList());
    }

    private static Interval outage(double from, double to) {
        return Interval.of(minute(from), minute(to));
    }

    @Test
    void stepsOfAnOutageAreMissingAndItsTipsSetAside() {
        TipRecord record = GAUGE.record(
                tips(1, 3, 6, 12, 13, 21, 23), RECORD, STEP, TipSpreading.INTERVAL, List.of(outage(8, 16)));
        // A third of the third tip lies in a missing step, and half of that at 21, spread over the 2 min to the next.
        double[] expected = {0.4 + 0.2 * 2 / 3, Double.NaN, Double.NaN, Double.NaN, 0.3, 0};
        double[] depth = record.depth().toValues();
        for (int i = 0; i < depth.length; i++) {
            assertThat(depth[i]).as("step %d", i).isCloseTo(expected[i], within(1e-15));
        }
        assertThat(record.outages()).isEqualTo(1);
        assertThat(record.missing()).isEqualTo(3);
        assertThat(record.aside()).isEqualTo(2);
        assertThat(record.asideMm()).isEqualTo(0.4);
        assertThat(record)
                .hasToString("TipRecord[6 steps of 5 min, 0.833333 mm, 1 outages, 3 steps missing with 0.1667 mm,"
                        + " 2 tips of 0.4 mm set aside]");
        assertThat(GAUGE.depth(
                        tips(1, 3, 6, 12, 13, 21, 23), RECORD, STEP, TipSpreading.INTERVAL, List.of(outage(8, 16))))
                .isEqualTo(record.depth());
    }

    /** The tip at minute 12 filled in the two minutes since the outage, not in the eight since the tip before. */
    @Test
    void spreadingStopsAtAnOutage() {
        RegularSeries depth =
                GAUGE.depth(tips(4, 12), RECORD, Duration.ofMinutes(1), TipSpreading.INTERVAL, List.of(outage(6, 10)));
        assertThat(depth.value(5)).isZero();
        assertThat(depth.value(6)).isNaN();
        assertThat(depth.value(9)).isNaN();
        assertThat(depth.value(10)).isCloseTo(0.1, within(1e-15));
        assertThat(depth.value(11)).isCloseTo(0.1, within(1e-15));
    }

    /** It would be 100 mm/h if nothing had happened in between. */
    @Test
    void theFirstTipAfterAnOutageHasNoIntensity() {
        TippingBucket corrected = GAUGE.withCalibration(LostTime.ofSeconds(0.45));
        Tips tips = tips(5, 5.12);
        Interval between = Interval.of(minute(5).plusSeconds(1), minute(5).plusSeconds(2));
        TipRecord record = corrected.record(tips, RECORD, Duration.ofSeconds(1), TipSpreading.COUNT, List.of(between));
        assertThat(record.depth().sum()).isEqualTo(0.4);
    }

    @Test
    void outagesMayComeInAnyOrderAndOverlapAndLieOutside() {
        List<Interval> outages =
                List.of(outage(20, 40), outage(9, 12), outage(10, 11), outage(12, 12), outage(11, 13), outage(-9, 0));
        TipRecord record = GAUGE.record(tips(1, 10.5, 14, 29), RECORD, STEP, TipSpreading.COUNT, outages);
        assertThat(record.outages()).isEqualTo(2);
        assertThat(record.missing()).isEqualTo(4);
        assertThat(record.aside()).isEqualTo(2);
        assertThat(record.depth().sum()).isEqualTo(0.2);
        assertThat(record.depthInMissingMm()).isEqualTo(0.2);
    }

    @Test
    void withoutOutagesNothingIsMissingAndWithOneForAllOfItEverythingIs() {
        assertThat(GAUGE.record(tips(1, 4), RECORD, STEP, TipSpreading.INTERVAL, List.of())
                        .depth())
                .isEqualTo(GAUGE.depth(tips(1, 4), RECORD, STEP, TipSpreading.INTERVAL));
        TipRecord none = GAUGE.record(tips(1, 4), RECORD, STEP, TipSpreading.INTERVAL, List.of(RECORD));
        assertThat(none.depth().missing()).isEqualTo(6);
        assertThat(none.aside()).isEqualTo(2);
    }

    @Test
    void refusesTipsOutsideTheRecord() {
        assertThatThrownBy(() -> GAUGE.record(tips(31), RECORD, STEP, TipSpreading.COUNT, List.of(outage(1, 2))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageEndingWith("at index 0; tips.slice(record) leaves out those outside");
    }
}
