package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class EventSeparationTest {
    private static final Instant START = Instant.parse("2026-03-01T12:00:00Z");
    private static final Duration STEP = Duration.ofMinutes(10);
    private static final double MISSING = Double.NaN;
    private static final EventSeparation HALF_HOUR = EventSeparation.of(Duration.ofMinutes(30));

    private static RegularSeries rain(double... depths) {
        return RegularSeries.of(START, STEP, depths);
    }

    private static Instant minute(int minutes) {
        return START.plusSeconds(60L * minutes);
    }

    @Test
    void aGapOfTheMinimumStartsANewEventAndAShorterOneDoesNot() {
        assertThat(HALF_HOUR.events(rain(1, 0, 0, 2))).hasSize(1);
        List<RainfallEvent> events = HALF_HOUR.events(rain(1, 0, 0, 0, 2));
        assertThat(events).hasSize(2);
        assertThat(events.get(0).interval().end()).isEqualTo(minute(10));
        assertThat(events.get(1).interval().start()).isEqualTo(minute(40));
        assertThat(events.get(1).antecedent()).isEqualTo(new Antecedent(Duration.ofMinutes(30), false, 0));
    }

    @Test
    void aMinimumBetweenStepsIsReachedByTheNextWholeStep() {
        EventSeparation rule = EventSeparation.of(Duration.ofMinutes(25));
        assertThat(rule.events(rain(1, 0, 0, 2))).hasSize(1);
        assertThat(rule.events(rain(1, 0, 0, 0, 2))).hasSize(2);
    }

    @Test
    void measuresAnEvent() {
        EventSeparation rule = HALF_HOUR.withPeakDurations(
                Duration.ofMinutes(10), Duration.ofMinutes(15), Duration.ofMinutes(20), Duration.ofHours(2));
        RainfallEvent event = rule.events(rain(0, 0, 0, 1, 0, 4, 2, 0, 0, 0)).get(0);
        assertThat(event.depthMm()).isEqualTo(7);
        assertThat(event.duration()).isEqualTo(Duration.ofMinutes(40));
        assertThat(event.meanIntensityMmPerHour()).hasValue(10.5);
        assertThat(event.peak(Duration.ofMinutes(10))).isEqualTo(new PeakDepth(Duration.ofMinutes(10), 4, minute(50)));
        // The whole of the 4 mm and half of the 2 mm beside it.
        assertThat(event.peak(Duration.ofMinutes(15))).isEqualTo(new PeakDepth(Duration.ofMinutes(15), 5, minute(50)));
        assertThat(event.peak(Duration.ofMinutes(20)).intensityMmPerHour()).isCloseTo(18, within(1e-12));
        assertThat(event.peak(Duration.ofHours(2)).depthMm()).isEqualTo(7);
        assertThat(event.antecedent()).isEqualTo(new Antecedent(Duration.ofMinutes(30), true, 0));
        assertThat(event.isComplete()).isTrue();
        assertThat(event)
                .hasToString("RainfallEvent[2026-03-01T12:30:00Z, 7 mm in 40 min, peak 24 mm/h over 10 min,"
                        + " dry for at least 30 min]");
    }

    @Test
    void anEventOfOneStep() {
        RainfallEvent event = HALF_HOUR.events(rain(0.2)).get(0);
        assertThat(event.duration()).isEqualTo(STEP);
        assertThat(event.meanIntensityMmPerHour().getAsDouble()).isCloseTo(1.2, within(1e-12));
        assertThat(event.isOpenAtStart()).isTrue();
        assertThat(event.isOpenAtEnd()).isTrue();
        assertThat(event.isComplete()).isFalse();
        assertThat(event.peaks()).allMatch(peak -> peak.depthMm() == 0.2);
    }

    @Test
    void dropsShallowEventsAndCountsThem() {
        EventRecord record = HALF_HOUR.withMinimumDepth(1).separate(rain(0.4, 0.2, 0, 0, 0, 3, 0, 0, 0, 0.5, 0.5));
        assertThat(record.events()).extracting(RainfallEvent::depthMm).containsExactly(3.0, 1.0);
        assertThat(record.droppedEvents()).isEqualTo(1);
        assertThat(record.droppedMm()).isCloseTo(0.6, within(1e-15));
        // The dropped event was rain all the same: it ends the dry time.
        assertThat(record.events().get(0).antecedent()).isEqualTo(new Antecedent(Duration.ofMinutes(30), false, 0));
    }

    @Test
    void aDepthOfTheMinimumIsKeptDespiteRounding() {
        double[] tenths = new double[10];
        Arrays.fill(tenths, 0.1);
        assertThat(HALF_HOUR.withMinimumDepth(1 + 1e-10).events(rain(tenths))).hasSize(1);
        assertThat(HALF_HOUR.withMinimumDepth(1 + 1e-8).events(rain(tenths))).isEmpty();
    }

    @Test
    void weakStepsBelongToAnEventInsideItAndAreStrayOutside() {
        EventSeparation rule = HALF_HOUR.withWetAbove(0.1);
        EventRecord record = rule.separate(rain(0.1, 0, 0, 0, 2, 0.1, 2, 0.1, 0.1, 0.1, 0.1));
        assertThat(record.events()).hasSize(1);
        assertThat(record.events().get(0).depthMm()).isCloseTo(4.1, within(1e-15));
        assertThat(record.strayMm()).isCloseTo(0.5, within(1e-15));
    }

    @Test
    void missingStepsLetTheGapGrowAndAreCountedWhereTheyLie() {
        EventRecord record =
                HALF_HOUR.separate(rain(MISSING, 0, 0, 1, MISSING, 2, 0, MISSING, MISSING, MISSING, 0, 3, 0, 0, 0));
        assertThat(record.missingSteps()).isEqualTo(5);
        assertThat(record.events()).hasSize(2);
        RainfallEvent first = record.events().get(0);
        assertThat(first.depthMm()).isEqualTo(3);
        assertThat(first.missingSteps()).isEqualTo(1);
        assertThat(first.missingStepsAfter()).isEqualTo(2);
        assertThat(first.antecedent()).isEqualTo(new Antecedent(Duration.ofMinutes(30), true, 1));
        assertThat(first.isComplete()).isFalse();
        RainfallEvent second = record.events().get(1);
        assertThat(second.antecedent()).isEqualTo(new Antecedent(Duration.ofMinutes(50), false, 3));
        assertThat(second.isComplete()).isTrue();
        assertThat(second.antecedent()).hasToString("dry for 50 min, 3 missing in that");
    }

    @Test
    void aRecordWithoutRainHasNoEvents() {
        assertThat(HALF_HOUR.separate(rain())).isEqualTo(new EventRecord(List.of(), 0, 0, 0, 0));
        assertThat(HALF_HOUR.events(rain(0, 0, 0))).isEmpty();
        assertThat(HALF_HOUR.separate(rain(MISSING, MISSING)).missingSteps()).isEqualTo(2);
    }

    @Test
    void theUsualDurationsStartWithTheStep() {
        RainfallEvent event = HALF_HOUR.events(rain(1)).get(0);
        assertThat(event.peaks())
                .extracting(PeakDepth::duration)
                .startsWith(STEP, Duration.ofMinutes(15))
                .endsWith(Duration.ofHours(24))
                .hasSize(9);
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> EventSeparation.of(Duration.ZERO))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("minimumInterEvent must be longer than 0, was 0 s");
        assertThatThrownBy(() -> HALF_HOUR.withMinimumDepth(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthMm must be 0 or greater and finite (mm), was NaN");
        assertThatThrownBy(() -> HALF_HOUR.withWetAbove(-1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> HALF_HOUR.events(rain(0, 1, -0.2)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthMm must be 0 or greater (mm), or NaN for missing, was -0.2 at index 2,"
                        + " 2026-03-01T12:20:00Z");
        assertThatThrownBy(
                        () -> HALF_HOUR.withPeakDurations(Duration.ofMinutes(5)).events(rain(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must not be shorter than the step of the record, 10 min, was 5 min");
        assertThatThrownBy(() -> HALF_HOUR.withPeakDurations())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("durations must be at least one, were none");
        RainfallEvent event = HALF_HOUR.withPeakDurations(STEP).events(rain(1)).get(0);
        assertThatThrownBy(() -> event.peak(Duration.ofMinutes(30)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must be one of [10 min], was 30 min");
        EventDetector finished = HALF_HOUR.ofSteps(STEP).startAt(START);
        finished.finish();
        assertThatThrownBy(() -> finished.nextStep(0)).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void anEventIsKnownAsSoonAsTheGapIsLongEnough() {
        EventDetector detector = HALF_HOUR.ofSteps(STEP).startAt(START);
        assertThat(detector.nextStep(1)).isEmpty();
        assertThat(detector.nextStep(0)).isEmpty();
        assertThat(detector.nextStep(0)).isEmpty();
        assertThat(detector.nextStep(0)).isPresent();
        assertThat(detector.finish()).isEmpty();
    }

    @Test
    void saysWhyAnEventIsNotComplete() {
        RegularSeries cut = rain(1, MISSING, 2, 0, MISSING, 0, 0, 0, 3);
        assertThat(HALF_HOUR.events(cut).toString())
                .contains("may begin before the record, 1 missing in the event, 1 missing after it]")
                .contains("may go on after it]");
    }

    @Test
    void anEventFromElsewhereKeepsItsMeasures() {
        PeakDepth peak = new PeakDepth(Duration.ofMinutes(30), 8, START);
        RainfallEvent event = RainfallEvent.of(rain(1).interval(), 9, List.of(peak));
        assertThat(event.peaks()).containsExactly(peak);
        assertThat(event.isComplete()).isTrue();
        assertThatThrownBy(() -> RainfallEvent.of(rain(1).interval(), 7, List.of(peak)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("peak depthMm in 30 min must be in [0, 7] mm, was 8");
    }
}
