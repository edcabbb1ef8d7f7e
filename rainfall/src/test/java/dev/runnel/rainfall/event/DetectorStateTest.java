package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.rainfall.gauge.TippingBucket;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class DetectorStateTest {
    private static final Instant START = Instant.parse("2026-03-01T12:00:00Z");
    private static final Duration STEP = Duration.ofMinutes(10);
    private static final TippingBucket GAUGE = TippingBucket.ofTip(0.2);
    private static final EventSeparation HALF_HOUR = EventSeparation.of(Duration.ofMinutes(30));

    private static EventDetector.State inTheRain(double... depths) {
        EventDetector detector = HALF_HOUR.detector(START, STEP);
        for (double depth : depths) {
            detector.next(depth);
        }
        return detector.state();
    }

    @Test
    void theStormInProgressIsNotLost() {
        EventDetector.State state = inTheRain(0, 2, 0, Double.NaN);
        assertThat(state.depthsMm()).containsExactly(2.0, 0.0, Double.NaN);
        EventDetector later = HALF_HOUR.detector(state);
        assertThat(later).hasToString("EventDetector[4 steps from 2026-03-01T12:00:00Z, event in progress]");
        later.next(3);
        RainfallEvent event = later.finish().orElseThrow();
        assertThat(event.start()).isEqualTo(START.plus(STEP));
        assertThat(event.depthMm()).isEqualTo(5);
        assertThat(event.missingSteps()).isEqualTo(1);
        assertThat(event.antecedent()).isEqualTo(new Antecedent(STEP, true, 0));
    }

    @Test
    void theTipsOfTheStormInProgressAreNotLost() {
        TipEventDetector detector = HALF_HOUR.tipDetector(GAUGE);
        detector.advanceTo(START);
        detector.next(START.plusSeconds(3600));
        detector.next(START.plusSeconds(3660));
        TipEventDetector later = HALF_HOUR.tipDetector(GAUGE, detector.state());
        assertThat(later).hasToString("TipEventDetector[2 tips in progress]");
        RainfallEvent event = later.advanceTo(START.plusSeconds(7200)).orElseThrow();
        assertThat(event.depthMm()).isEqualTo(0.4);
        assertThat(event.antecedent()).isEqualTo(new Antecedent(Duration.ofHours(1), true, 0));
    }

    @Test
    void aStateOfAnotherRuleIsRefused() {
        EventDetector.State state = inTheRain(2, 0, 0);
        EventSeparation shorter = EventSeparation.of(Duration.ofMinutes(20));
        assertThatThrownBy(() -> shorter.detector(state))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("state must be that of a detector with the same rule, EventSeparation[gap of"
                        + " PT20M, at least 0 mm, wet above 0 mm], was State[startNanos=1772366400000000000,");
        EventSeparation wetter = HALF_HOUR.withWetAbove(2);
        assertThatThrownBy(() -> wetter.detector(state)).isInstanceOf(IllegalArgumentException.class);
        EventSeparation finer = HALF_HOUR.withPeakDurations(Duration.ofMinutes(5));
        assertThatThrownBy(() -> finer.detector(state))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must not be shorter than the step of the record, PT10M, was PT5M");
    }

    @Test
    void aSpoiltStateIsRefused() {
        List<Double> negative = List.of(1.0, -1.0);
        long step = STEP.toNanos();
        for (EventDetector.State spoilt : List.of(
                new EventDetector.State(0, step, 5, 0, 0, negative, 0, 0, 0, 0, 0, 0),
                new EventDetector.State(0, step, 1, 0, 0, List.of(1.0, 1.0), 0, 0, 0, 0, 0, 0),
                new EventDetector.State(0, step, 5, -1, 0, List.of(), 0, 0, 0, 0, 0, 0),
                new EventDetector.State(0, 0, 5, 0, 0, List.of(), 0, 0, 0, 0, 0, 0))) {
            assertThatThrownBy(() -> HALF_HOUR.detector(spoilt)).isInstanceOf(IllegalArgumentException.class);
        }
        for (TipEventDetector.State spoilt : List.of(
                new TipEventDetector.State(true, 0, 10, false, 0, List.of(5L, 4L), 0, 0, 0),
                new TipEventDetector.State(true, 0, 10, false, 0, List.of(11L), 0, 0, 0),
                new TipEventDetector.State(true, 8, 10, false, 0, List.of(5L), 0, 0, 0),
                new TipEventDetector.State(true, 0, 10, true, 7, List.of(5L), 0, 0, 0),
                new TipEventDetector.State(false, 0, 0, false, 0, List.of(5L), 0, 0, 0))) {
            assertThatThrownBy(() -> HALF_HOUR.tipDetector(GAUGE, spoilt))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("state must be that of a detector with the same rule");
        }
    }

    @Test
    void aFinishedRecordHasNoState() {
        EventDetector detector = HALF_HOUR.detector(START, STEP);
        detector.finish();
        assertThatThrownBy(detector::state)
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("the record was finished");
        TipEventDetector tips = HALF_HOUR.tipDetector(GAUGE);
        tips.finish();
        assertThatThrownBy(tips::state).isInstanceOf(IllegalStateException.class);
    }
}
