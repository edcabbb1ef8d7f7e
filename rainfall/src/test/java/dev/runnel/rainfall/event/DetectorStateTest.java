package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class DetectorStateTest {
    private static final Instant START = Instant.parse("2026-03-01T12:00:00Z");
    private static final Duration STEP = Duration.ofMinutes(10);
    private static final TippingBucket GAUGE = TippingBucket.ofTip(0.2);
    private static final EventSeparation HALF_HOUR = EventSeparation.of(Duration.ofMinutes(30));

    private static TextState inTheRain(double... depths) {
        EventDetector detector = HALF_HOUR.ofSteps(STEP).startAt(START);
        for (double depth : depths) {
            detector.nextStep(depth);
        }
        return detector.state();
    }

    @Test
    void theStormInProgressIsNotLost() {
        EventDetector later = HALF_HOUR.ofSteps(STEP).start(inTheRain(0, 2, 0, Double.NaN));
        assertThat(later).hasToString("EventDetector[4 steps from 2026-03-01T12:00:00Z, event in progress]");
        later.nextStep(3);
        RainfallEvent event = later.finish().get(0);
        assertThat(event.start()).isEqualTo(START.plus(STEP));
        assertThat(event.depthMm()).isEqualTo(5);
        assertThat(event.missingSteps()).isEqualTo(1);
        assertThat(event.antecedent()).isEqualTo(new Antecedent(STEP, true, 0));
        assertThat(event.peak(Duration.ofHours(1)))
                .isEqualTo(new PeakDepth(Duration.ofHours(1), 5, START.plus(STEP), true));
    }

    @Test
    void theTipsOfTheStormInProgressAreNotLost() {
        TipSeparation rule = HALF_HOUR.ofTips(GAUGE);
        TipEventDetector detector = rule.start();
        detector.advanceTo(START);
        detector.nextTip(START.plusSeconds(3600));
        detector.nextTip(START.plusSeconds(3660));
        TipEventDetector later = rule.start(rule.parseState(detector.state().toText()));
        assertThat(later).hasToString("TipEventDetector[event in progress, last tip 2026-03-01T13:01:00Z]");
        RainfallEvent event = later.advanceTo(START.plusSeconds(7200)).orElseThrow();
        assertThat(event.depthMm()).isEqualTo(0.4);
        assertThat(event.antecedent()).isEqualTo(new Antecedent(Duration.ofHours(1), true, 0));
    }

    @Test
    void readingsLeftOutAreMissingSteps() {
        EventDetector detector = HALF_HOUR.ofSteps(STEP).start();
        detector.next(Reading.of(START, 1));
        detector.next(new Reading(START.plus(STEP), 7, Quality.SUSPECT));
        assertThat(detector.next(Reading.of(START.plus(STEP.multipliedBy(3)), 2)))
                .isEmpty();
        assertThat(detector.missingSteps()).isEqualTo(2);
        List<RainfallEvent> ended = detector.next(Reading.of(START.plus(STEP.multipliedBy(1000)), 4));
        assertThat(ended).hasSize(1);
        assertThat(ended.get(0).depthMm()).isEqualTo(3);
        assertThat(ended.get(0).missingSteps()).isEqualTo(2);
        assertThat(ended.get(0).missingStepsAfter()).isEqualTo(3);
        RainfallEvent next = detector.finish().get(0);
        assertThat(next.antecedent()).isEqualTo(new Antecedent(STEP.multipliedBy(996), false, 996));
    }

    @Test
    void aReadingOutOfStepIsRefused() {
        EventDetector detector = HALF_HOUR.ofSteps(STEP).start();
        detector.next(Reading.of(START, 1));
        TextState before = detector.state();
        assertThatThrownBy(() -> detector.next(Reading.of(START.plusSeconds(900), 1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time must be the start of a step of 10 min after 2026-03-01T12:00:00Z,"
                        + " was 2026-03-01T12:15:00Z");
        assertThatThrownBy(() -> detector.next(Reading.of(START.plusSeconds(1200), -1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthMm must be 0 or greater (mm), or NaN for missing, was -1 at index 2,"
                        + " 2026-03-01T12:20:00Z");
        assertThat(detector.state()).isEqualTo(before);
    }

    @Test
    void aMachineThatDoesNotKnowItsBeginTakesNoBareDepth() {
        assertThatThrownBy(() -> HALF_HOUR.ofSteps(STEP).start().nextStep(1))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("the start of the record must be known, but there was no reading yet");
    }

    @Test
    void memoryIsBoundedByTheLongestDuration() {
        EventDetector steps = HALF_HOUR
                .withWetAbove(0.1)
                .withPeakDurations(STEP, Duration.ofHours(2))
                .ofSteps(STEP)
                .startAt(START);
        TipEventDetector tips =
                HALF_HOUR.withPeakDurations(Duration.ofMinutes(5)).ofTips(GAUGE).start();
        for (int i = 0; i < 200_000; i++) {
            steps.nextStep(i % 3 == 0 ? 0.05 : 1 + i % 7);
            tips.nextTip(START.plusSeconds(10L * i));
            assertThat(steps.held()).isLessThanOrEqualTo(64);
            assertThat(tips.held()).isLessThanOrEqualTo(128);
        }
        assertThat(steps.state().toText().length()).isLessThan(2000);
        RainfallEvent event = tips.finish().get(0);
        assertThat(event.peak(Duration.ofMinutes(5)).depthMm()).isEqualTo(30 * 0.2);
    }

    @Test
    void aStateOfAnotherRuleIsRefused() {
        TextState state = inTheRain(2, 0, 0);
        assertRefused(EventSeparation.of(Duration.ofMinutes(20)).ofSteps(STEP), state)
                .hasMessage("state must be that of a machine of the same rule, with gap = 1200000000000,"
                        + " was 1800000000000");
        assertRefused(HALF_HOUR.withWetAbove(2).ofSteps(STEP), state)
                .hasMessage("state must be that of a machine of the same rule, with wet-above = 2.0, was 0.0");
        assertRefused(HALF_HOUR.withMinimumDepth(2).ofSteps(STEP), state);
        assertRefused(HALF_HOUR.withPeakDurations(Duration.ofHours(1)).ofSteps(STEP), state);
        assertRefused(HALF_HOUR.ofSteps(Duration.ofMinutes(5)), state);
        assertThatThrownBy(
                        () -> HALF_HOUR.withPeakDurations(Duration.ofMinutes(5)).ofSteps(STEP))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must not be shorter than the step of the record, 10 min, was 5 min");
        assertThatThrownBy(() -> HALF_HOUR.ofTips(GAUGE).start(state)).isInstanceOf(IllegalArgumentException.class);
        TextState tips = HALF_HOUR.ofTips(GAUGE).start().state();
        assertThatThrownBy(() -> HALF_HOUR.ofTips(TippingBucket.ofTip(0.254)).start(tips))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("state must be that of a machine of the same rule, with tip = 0.254, was 0.2");
    }

    private static org.assertj.core.api.AbstractThrowableAssert<?, ? extends Throwable> assertRefused(
            StepSeparation rule, TextState state) {
        return assertThatThrownBy(() -> rule.start(state)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aSpoiltStateIsRefused() {
        String good = inTheRain(0, 2, 0).toText();
        StepSeparation rule = HALF_HOUR.ofSteps(STEP);
        assertThat(rule.parseState(good).toText()).isEqualTo(good);
        for (String[] spoilt : new String[][] {
            {"steps=3", "steps=1"},
            {"steps=3", "steps=-3"},
            {"dry-from=0", "dry-from=9"},
            {"pending=1", "pending=3"},
            {"pending=1", "pending=0"},
            {"missing=0", "missing=4"},
            {"rain-depths=2.0,", "rain-depths=-2.0,"},
            {"rain-depths=2.0,", "rain-depths=NaN,"},
            {"rain-depths=2.0,", "rain-depths="},
            {"rain-sum=2.0", "rain-sum=Infinity"},
            {"/1", "/2"}
        }) {
            assertThat(good).contains(spoilt[0]);
            assertThatThrownBy(() -> rule.parseState(good.replace(spoilt[0], spoilt[1])))
                    .as(spoilt[1])
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }
}
