package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.gauge.LostTime;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TipEventsTest {
    private static final Instant START = Instant.parse("2026-03-01T12:00:00Z");
    private static final TippingBucket GAUGE = TippingBucket.ofTip(0.2);
    private static final int[] MINUTES = {
        0, 4, 9, 15, 60, 65, 300, 310, 322, 760, 765, 1500, 1502, 1504, 1506, 1508, 3200
    };

    private static Tips tips(int... minutes) {
        return Tips.of(Arrays.stream(minutes).mapToObj(TipEventsTest::minute).toList());
    }

    private static Instant minute(int minutes) {
        return START.plusSeconds(60L * minutes);
    }

    private static Interval record(int from, int to) {
        return Interval.of(minute(from), minute(to));
    }

    /** Seventeen tips, separated by hand; gaps run from tip to tip and one of exactly the minimum separates. */
    @ParameterizedTest
    @CsvSource({
        "30, 0-15:0.8 60-65:0.4 300-322:0.6 760-765:0.4 1500-1508:1.0 3200-3200:0.2",
        "45, 0-15:0.8 60-65:0.4 300-322:0.6 760-765:0.4 1500-1508:1.0 3200-3200:0.2",
        "180, 0-65:1.2 300-322:0.6 760-765:0.4 1500-1508:1.0 3200-3200:0.2",
        "235, 0-65:1.2 300-322:0.6 760-765:0.4 1500-1508:1.0 3200-3200:0.2",
        "236, 0-322:1.8 760-765:0.4 1500-1508:1.0 3200-3200:0.2",
        "720, 0-765:2.2 1500-1508:1.0 3200-3200:0.2",
        "1440, 0-1508:3.2 3200-3200:0.2"
    })
    void separatesByTheMinimumGap(int gap, String expected) {
        List<RainfallEvent> events =
                EventSeparation.of(Duration.ofMinutes(gap)).events(tips(MINUTES), record(0, 5000), GAUGE);
        String[] parts = expected.split(" ");
        assertThat(events).hasSize(parts.length);
        for (int i = 0; i < parts.length; i++) {
            String[] figures = parts[i].split("[-:]");
            assertThat(events.get(i).start()).isEqualTo(minute(Integer.parseInt(figures[0])));
            assertThat(events.get(i).end()).isEqualTo(minute(Integer.parseInt(figures[1])));
            assertThat(events.get(i).depthMm()).isCloseTo(Double.parseDouble(figures[2]), within(1e-12));
        }
    }

    @Test
    void anEventOfOneTipHasDepthButNoIntensity() {
        RainfallEvent event = EventSeparation.of(Duration.ofHours(6))
                .events(tips(600), record(0, 2000), GAUGE)
                .get(0);
        assertThat(event.depthMm()).isEqualTo(0.2);
        assertThat(event.duration()).isZero();
        assertThat(event.meanIntensityMmPerHour()).isEmpty();
        assertThat(event.peak(Duration.ofMinutes(5)).depthMm()).isEqualTo(0.2);
        assertThat(event.antecedent()).isEqualTo(new Antecedent(Duration.ofHours(10), true, 0));
        assertThat(event.isComplete()).isTrue();
    }

    @Test
    void peaksCountTipsInHalfOpenWindows() {
        EventSeparation rule = EventSeparation.of(Duration.ofHours(6))
                .withPeakDurations(Duration.ofMinutes(4), Duration.ofMinutes(5), Duration.ofHours(1));
        RainfallEvent event =
                rule.events(tips(0, 4, 8, 9, 10, 30), record(-600, 2000), GAUGE).get(0);
        assertThat(event.peak(Duration.ofMinutes(4)).depthMm()).isCloseTo(0.6, within(1e-12));
        assertThat(event.peak(Duration.ofMinutes(4)).start()).isEqualTo(minute(8));
        assertThat(event.peak(Duration.ofMinutes(5)).depthMm()).isCloseTo(0.6, within(1e-12));
        assertThat(event.peak(Duration.ofHours(1)).depthMm()).isCloseTo(1.2, within(1e-12));
    }

    @Test
    void knowsWhatTheRecordLeavesOpen() {
        EventSeparation rule = EventSeparation.of(Duration.ofMinutes(60));
        List<RainfallEvent> events = rule.events(tips(59, 200), record(0, 259), GAUGE);
        assertThat(events.get(0).isOpenAtStart()).isTrue();
        assertThat(events.get(0).isOpenAtEnd()).isFalse();
        assertThat(events.get(1).isOpenAtStart()).isFalse();
        assertThat(events.get(1).isOpenAtEnd()).isTrue();
        assertThat(rule.events(tips(60), record(0, 120), GAUGE).get(0).isComplete())
                .isTrue();
    }

    @Test
    void dropsShallowEventsAndCountsThem() {
        EventRecord record = EventSeparation.of(Duration.ofMinutes(30))
                .withMinimumDepth(0.6)
                .separate(tips(MINUTES), record(0, 5000), GAUGE);
        assertThat(record.events()).hasSize(3);
        assertThat(record.droppedEvents()).isEqualTo(3);
        assertThat(record.droppedMm()).isCloseTo(1.0, within(1e-12));
        assertThat(record.events().get(2).antecedentDryTime()).isEqualTo(Duration.ofMinutes(1500 - 765));
    }

    @Test
    void aStreamLearnsOfTheEndFromTheNextTipOrTheClock() {
        TipEventDetector detector =
                EventSeparation.of(Duration.ofMinutes(60)).ofTips(GAUGE).start();
        assertThat(detector.nextTip(minute(0))).isEmpty();
        assertThat(detector.nextTip(minute(59))).isEmpty();
        assertThat(detector.advanceTo(minute(118))).isEmpty();
        assertThat(detector.advanceTo(minute(119))).isPresent();
        assertThat(detector.nextTip(minute(300))).isEmpty();
        assertThat(detector.nextTip(minute(360))).isPresent();
        assertThat(detector.finish()).hasSize(1);
        assertThatThrownBy(() -> detector.nextTip(minute(400))).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void calibratesTheFirstTipOfAnEventByTheGapBeforeIt() {
        TippingBucket calibrated = GAUGE.withCalibration(LostTime.ofSeconds(3));
        List<RainfallEvent> events =
                EventSeparation.of(Duration.ofMinutes(1)).events(tips(0, 1), record(0, 100), calibrated);
        assertThat(events).hasSize(2);
        assertThat(events.get(1).depthMm()).isCloseTo(0.2 / 0.95, within(1e-12));
    }

    @Test
    void outagesAreNotDryWeatherAndTheirTipsNoRain() {
        EventSeparation rule = EventSeparation.of(Duration.ofMinutes(60));
        List<Interval> outages = List.of(record(12, 20), record(150, 160), record(160, 170), record(400, 500));
        EventRecord separated =
                rule.separate(tips(0, 10, 15, 30, 155, 240, 450, 700), record(-60, 1000), GAUGE, outages);
        assertThat(separated)
                .hasToString("EventRecord[3 events, 0 dropped with 0 mm, stray 0 mm, 0 steps missing,"
                        + " 3 outages with 3 tips set aside]");
        RainfallEvent first = separated.events().get(0);
        assertThat(first.depthMm()).isCloseTo(0.6, within(1e-12));
        assertThat(first.end()).isEqualTo(minute(30));
        assertThat(first.missingSteps()).isEqualTo(1);
        assertThat(first.missingStepsAfter()).isZero();
        assertThat(first.isComplete()).isFalse();
        assertThat(first.toString()).endsWith("dry for at least 1 h, 1 missing in the event]");
        RainfallEvent second = separated.events().get(1);
        assertThat(second.antecedent()).isEqualTo(new Antecedent(Duration.ofMinutes(210), false, 1));
        assertThat(second.isComplete()).isTrue();
        assertThat(separated.events().get(2).antecedent()).isEqualTo(new Antecedent(Duration.ofMinutes(460), false, 1));
    }

    @Test
    void anOutageAfterTheLastTipMayHideTheRestOfTheEvent() {
        EventSeparation rule = EventSeparation.of(Duration.ofMinutes(60));
        EventRecord separated =
                rule.separate(tips(0, 10), record(-60, 1000), GAUGE, List.of(record(40, 50), record(71, 80)));
        assertThat(separated.events().get(0).missingStepsAfter()).isEqualTo(1);
        assertThat(separated.events().get(0).isComplete()).isFalse();
        assertThat(rule.separate(tips(0, 10), record(-60, 1000), GAUGE, List.of()))
                .isEqualTo(rule.separate(tips(0, 10), record(-60, 1000), GAUGE));
    }

    @Test
    void refusesTipsOutsideTheRecordAndTimesThatGoBack() {
        EventSeparation rule = EventSeparation.of(Duration.ofMinutes(60));
        assertThatThrownBy(() -> rule.events(tips(10, 100), record(0, 100), GAUGE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("tips must be inside the record 2026-03-01T12:00:00Z/2026-03-01T13:40:00Z,"
                        + " was 2026-03-01T13:40:00Z at index 1; tips.slice(record) leaves out those outside");
        TipEventDetector detector = rule.ofTips(GAUGE).start();
        detector.nextTip(minute(5));
        assertThatThrownBy(() -> detector.nextTip(minute(4)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time must not be before 2026-03-01T12:05:00Z, was 2026-03-01T12:04:00Z");
    }
}
