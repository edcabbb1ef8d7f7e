package dev.runnel.timeseries.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.tuple;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ThresholdAlarmTest {
    private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");
    private static final Duration FOUR = Duration.ofMinutes(4);

    /** Worked by hand from the rules of the package page; one reading each two minutes. */
    @Test
    void givesOnsetActivationPeakAndReturn() {
        ThresholdAlarm alarm =
                ThresholdAlarm.high(1).withDeadband(0.2).withOnDelay(FOUR).withOffDelay(FOUR);
        Series series = every2Minutes(0.5, 1.1, 1.3, 1.2, 0.9, 0.8, 0.9, 0.8, 0.7, 0.6, 0.5);
        assertThat(alarm.events(series))
                .containsExactly(new AlarmEvent(
                        at(2), at(6), 1.3, at(4), Optional.of(at(14)), Optional.of(at(18)), Duration.ZERO));
    }

    @Test
    void theLimitItselfIsNormalAndTheDeadbandItselfIsBack() {
        ThresholdAlarm high = ThresholdAlarm.high(1).withDeadband(0.5);
        assertThat(high.events(every2Minutes(1, 1, 1))).isEmpty();
        assertThat(high.events(every2Minutes(1.5, 0.5)).get(0).returned()).contains(at(2));
        assertThat(high.events(every2Minutes(1.5, Math.nextUp(0.5))).get(0).isActive())
                .isTrue();
        ThresholdAlarm low = ThresholdAlarm.low(1).withDeadband(0.5);
        assertThat(low.events(every2Minutes(1, 1))).isEmpty();
        assertThat(low.events(every2Minutes(0.5, 0.2, 1.4, 1.5)))
                .containsExactly(new AlarmEvent(
                        at(0), at(0), 0.2, at(2), Optional.of(at(6)), Optional.of(at(6)), Duration.ZERO));
    }

    @Test
    void aDelayOfTwoIntervalsNeedsAThirdReading() {
        ThresholdAlarm alarm = ThresholdAlarm.high(1).withOnDelay(FOUR);
        assertThat(alarm.events(every2Minutes(2, 2, 0, 2, 2, 0))).isEmpty();
        assertThat(alarm.events(every2Minutes(2, 2, 2)).get(0).activation()).isEqualTo(at(4));
    }

    @Test
    void theDeadbandDoesNotCarryAnOnDelayThroughADip() {
        ThresholdAlarm alarm = ThresholdAlarm.high(1).withDeadband(0.5).withOnDelay(FOUR);
        assertThat(alarm.events(every2Minutes(2, 0.9, 2, 2))).isEmpty();
    }

    @Test
    void anAlarmAtTheEndIsStillActive() {
        List<AlarmEvent> events = ThresholdAlarm.high(1).events(every2Minutes(0, 2, 3));
        assertThat(events)
                .singleElement()
                .hasToString("AlarmEvent[onset 2026-01-01T00:02:00Z, active 2026-01-01T00:02:00Z, still active, "
                        + "peak 3 at 2026-01-01T00:04:00Z]");
        assertThat(events.get(0).interval()).isEmpty();
        assertThat(ThresholdAlarm.high(1)
                        .withOffDelay(FOUR)
                        .events(every2Minutes(2, 0, 0, 0))
                        .get(0)
                        .isActive())
                .isFalse();
        assertThat(ThresholdAlarm.high(1)
                        .withOffDelay(FOUR)
                        .events(every2Minutes(2, 0))
                        .get(0)
                        .isActive())
                .isTrue();
    }

    @Test
    void missingAndSuspectReadingsHoldTheState() {
        SeriesBuilder builder = Series.builder()
                .add(at(0), 2)
                .add(at(2), Double.NaN)
                .add(new Reading(at(4), 0, Quality.SUSPECT))
                .add(at(6), 2)
                .add(at(8), 0);
        AlarmMonitor monitor = ThresholdAlarm.high(1).withOnDelay(FOUR).start();
        List<List<AlarmEvent>> told =
                builder.build().stream().map(monitor::next).toList();
        assertThat(told.get(3)).extracting(AlarmEvent::activation).containsExactly(at(6));
        assertThat(told.get(4)).extracting(AlarmEvent::isActive).containsExactly(false);
        assertThat(monitor)
                .hasToString("AlarmMonitor[ThresholdAlarm[high 1, deadband 0, on-delay 4 min, off-delay 0 s], normal, "
                        + "3 readings, 2 unusable, 0 long gaps]");
    }

    @Test
    void aLongGapHoldsAnAlarmButStopsADelay() {
        ThresholdAlarm alarm = ThresholdAlarm.high(1).withOnDelay(FOUR).withOffDelay(FOUR);
        Series pending =
                Series.builder().add(at(0), 2).add(at(60), 2).add(at(62), 2).build();
        assertThat(alarm.events(pending).get(0).activation()).isEqualTo(at(60));
        ThresholdAlarm watched = alarm.withMaximumGap(Duration.ofMinutes(10));
        assertThat(watched.events(pending)).isEmpty();

        Series held = Series.builder()
                .add(at(0), 2)
                .add(at(4), 2)
                .add(at(6), 0)
                .add(at(66), 0)
                .add(at(68), 0)
                .add(at(70), 0)
                .build();
        assertThat(alarm.events(held).get(0).returned()).contains(at(66));
        assertThat(watched.events(held))
                .containsExactly(new AlarmEvent(
                        at(0), at(4), 2, at(0), Optional.of(at(66)), Optional.of(at(70)), Duration.ofMinutes(60)));
        assertThat(watched.events(held).get(0).toString()).endsWith("unobserved 1 h]");
    }

    @Test
    void aGapOfExactlyTheMaximumIsNotLong() {
        ThresholdAlarm alarm = ThresholdAlarm.high(1).withOnDelay(FOUR).withMaximumGap(Duration.ofMinutes(60));
        Series pending = Series.builder().add(at(0), 2).add(at(60), 2).build();
        assertThat(alarm.events(pending)).hasSize(1);
    }

    @Test
    void tellsEachChangeOnce() {
        AlarmMonitor monitor = ThresholdAlarm.high(1).start();
        assertThat(monitor.next(Reading.of(at(0), 2)))
                .extracting(AlarmEvent::isActive)
                .containsExactly(true);
        assertThat(monitor.next(Reading.of(at(2), 3))).isEmpty();
        assertThat(monitor.active()).map(AlarmEvent::peak).contains(3.0);
        assertThat(monitor.latest()).isEqualTo(monitor.active());
        assertThat(monitor.isActive()).isTrue();
        assertThat(monitor.next(Reading.of(at(4), 1)))
                .singleElement()
                .extracting(event -> event.interval().orElseThrow())
                .hasToString("2026-01-01T00:00:00Z/2026-01-01T00:04:00Z");
        assertThat(monitor.active()).isEmpty();
        assertThat(monitor.latest()).map(AlarmEvent::isActive).contains(false);
        assertThat(monitor.isActive()).isFalse();
    }

    @Test
    void overTellsEveryChangeAndWhatIsStillOpen() {
        assertThat(ThresholdAlarm.high(1).over(every2Minutes(2, 0, 2, 3)))
                .extracting(AlarmEvent::isActive, AlarmEvent::peak)
                .containsExactly(tuple(true, 2.0), tuple(false, 2.0), tuple(true, 2.0), tuple(true, 3.0));
    }

    @Test
    void theDoorOfPlainNumbersRefusesLikeTheOther() {
        AlarmMonitor monitor = ThresholdAlarm.high(1).start();
        assertThat(monitor.next(Long.MIN_VALUE + 1, 0)).isFalse();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> monitor.next(Long.MIN_VALUE + 1, 0))
                .withMessageStartingWith("time must be after 1677-09-21T00:12:43.145224193Z, was 1677");
        monitor.finish();
        assertThatIllegalStateException().isThrownBy(() -> monitor.next(5, 0));
    }

    @Test
    void theDoorOfArraysRefusesLikeTheOthers() {
        AlarmMonitor monitor = ThresholdAlarm.high(1).start();
        long[] times = {1, 2, 3, 3, 4};
        assertThatIllegalArgumentException()
                .isThrownBy(() -> monitor.next(times, new double[5], 0, 5))
                .withMessageStartingWith("time must be after 1970-01-01T00:00:00.000000003Z");
        assertThat(monitor.next(times, new double[] {0, 0, 0, 0, 2}, 4, 5)).isEqualTo(4);
        assertThat(monitor.next(times, new double[5], 5, 5)).isEqualTo(-1);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> monitor.next(times, new double[4], 0, 4))
                .withMessage("values must have length 5, was 4");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> monitor.next(times, new double[5], 0, 6))
                .withMessage("to must be in [0, 5], was 6");
        monitor.finish();
        assertThatIllegalStateException().isThrownBy(() -> monitor.next(new long[] {9}, new double[1], 0, 1));
    }

    @Test
    void refusesAStateOfAnotherKindOrVersion() {
        ThresholdAlarm alarm = ThresholdAlarm.high(1);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> alarm.parseState("spike-check/1"))
                .withMessage("state must begin with threshold-alarm/1, was \"spike-check/1\"");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> alarm.parseState("threshold-alarm/2 phase=NORMAL"))
                .withMessage("version of a state threshold-alarm must be in [1, 1], was 2");
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> alarm.parseState("threshold-alarm/1 phase=ACTIVE usable=0 readings=1 unusable=0 gaps=0"))
                .withMessage("state threshold-alarm must hold onset, which is missing");
    }

    @Test
    void refusesWrongSettingsAndReadingsOutOfOrder() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ThresholdAlarm.high(Double.NaN))
                .withMessage("limit must be finite, was NaN");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ThresholdAlarm.low(1).withDeadband(-0.1))
                .withMessage("deadband must be 0 or greater and finite, was -0.1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ThresholdAlarm.low(1).withOnDelay(Duration.ofSeconds(-1)))
                .withMessage("onDelay must not be negative, was -1 s");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ThresholdAlarm.low(1).withMaximumGap(Duration.ZERO))
                .withMessage("maximumGap must be longer than 0, was 0 s");
        AlarmMonitor monitor = ThresholdAlarm.high(1).start();
        monitor.next(Reading.of(at(2), 0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> monitor.next(Reading.of(at(2), 0)))
                .withMessage("time must be after 2026-01-01T00:02:00Z, was 2026-01-01T00:02:00Z");
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        new AlarmEvent(at(0), at(0), 1, at(0), Optional.of(at(2)), Optional.empty(), Duration.ZERO))
                .withMessage("cleared must be present if and only if returned is, "
                        + "was Optional[2026-01-01T00:02:00Z] with Optional.empty");
    }

    private static Instant at(int minute) {
        return T0.plusSeconds(60L * minute);
    }

    private static Series every2Minutes(double... values) {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < values.length; i++) {
            builder.add(at(2 * i), values[i]);
        }
        return builder.build();
    }
}
