package dev.runnel.timeseries.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.alarm.AlarmChange.State;
import dev.runnel.timeseries.contract.MachineContract;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class AlarmTest {
    private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");
    private static final Alarm HIGH = Alarm.of("depth high", AlarmSignal.value(), ThresholdAlarm.high(1));

    @Test
    void goesThroughItsStates() {
        assertThat(states(
                        HIGH,
                        reading(0, 2),
                        AlarmInput.acknowledge(at(1)),
                        reading(2, 0),
                        reading(4, 2),
                        reading(6, 0)))
                .containsExactly(
                        State.UNACKNOWLEDGED, State.ACKNOWLEDGED, State.NORMAL, State.UNACKNOWLEDGED, State.NORMAL);
    }

    @Test
    void aLatchedAlarmStaysUntilItIsAcknowledged() {
        assertThat(states(
                        HIGH.withLatching(),
                        reading(0, 2),
                        reading(2, 0),
                        reading(4, 0),
                        AlarmInput.acknowledge(at(5))))
                .containsExactly(State.UNACKNOWLEDGED, State.RETURNED_UNACKNOWLEDGED, State.NORMAL);
        assertThat(states(HIGH.withLatching(), reading(0, 2), AlarmInput.acknowledge(at(1)), reading(2, 0)))
                .as("seen in time")
                .containsExactly(State.UNACKNOWLEDGED, State.ACKNOWLEDGED, State.NORMAL);
    }

    @Test
    void aShelfRunsOutByItself() {
        assertThat(states(
                        HIGH,
                        AlarmInput.shelve(at(0), at(10)),
                        reading(2, 2),
                        reading(8, 2),
                        reading(10, 2),
                        reading(12, 0)))
                .containsExactly(State.SHELVED, State.UNACKNOWLEDGED, State.NORMAL);
        assertThat(states(HIGH, AlarmInput.shelve(at(0), at(10)), reading(2, 2), AlarmInput.unshelve(at(3))))
                .containsExactly(State.SHELVED, State.UNACKNOWLEDGED);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AlarmInput.shelve(at(1), at(1)))
                .withMessage("until must be after time, 2026-01-01T00:01:00Z, was 2026-01-01T00:01:00Z");
    }

    @Test
    void rainSuppressesAndWhatOutlastsItIsShown() {
        List<AlarmChange> changes = HIGH.over(List.of(
                AlarmInput.condition(at(0), true),
                reading(2, 2),
                reading(4, 0),
                reading(6, 2),
                AlarmInput.condition(at(7), false),
                reading(8, 0)));
        assertThat(changes)
                .extracting(AlarmChange::state)
                .containsExactly(State.SUPPRESSED, State.UNACKNOWLEDGED, State.NORMAL);
        assertThat(changes.get(1).event()).map(AlarmEvent::onset).contains(at(6));
    }

    @Test
    void looksAtOtherSignals() {
        Alarm rate = Alarm.of("fast", AlarmSignal.rateOfChange(Duration.ofMinutes(1)), ThresholdAlarm.high(0.1));
        assertThat(raisedAt(rate, reading(0, 0), reading(2, 0.2), reading(4, 0.41), reading(6, 0.3)))
                .containsExactly(at(4));
        Alarm deviation = Alarm.of(
                "off profile",
                AlarmSignal.deviationFrom(time -> time.equals(at(4)) ? Double.NaN : 0.5),
                ThresholdAlarm.low(-0.2));
        assertThat(raisedAt(deviation, reading(0, 0.31), reading(2, 0.29), reading(4, -9), reading(6, 0.31)))
                .containsExactly(at(2));
        Alarm stale = Alarm.of("stale", AlarmSignal.unchanged(), ThresholdAlarm.high(239));
        assertThat(raisedAt(stale, reading(0, 1), reading(2, 1), reading(4, 1), reading(6, 2), reading(8, 2)))
                .containsExactly(at(4));
        Alarm silent = Alarm.of("silent", AlarmSignal.silence(), ThresholdAlarm.high(600));
        assertThat(raisedAt(
                        silent,
                        AlarmInput.tick(at(-5)),
                        reading(0, 1),
                        reading(5, Double.NaN),
                        AlarmInput.tick(at(10)),
                        AlarmInput.tick(at(11)),
                        reading(12, 1)))
                .containsExactly(at(11));
        Alarm bad = Alarm.of(
                "bad", AlarmSignal.badQuality(), ThresholdAlarm.high(0.5).withOnDelay(Duration.ofMinutes(4)));
        assertThat(raisedAt(
                        bad,
                        reading(0, Double.NaN),
                        AlarmInput.of(new Reading(at(2), 1, Quality.SUSPECT)),
                        reading(4, Double.NaN),
                        reading(6, 1)))
                .containsExactly(at(4));
    }

    @Test
    void tellsWhatASettingWouldHaveRaised() {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < 100; i++) {
            builder.add(at(2 * i), i % 10 == 3 || i > 95 ? 2 : 0);
        }
        List<AlarmEvent> events = HIGH.trial(builder.build());
        assertThat(events)
                .isEqualTo(ThresholdAlarm.high(1).events(builder.build()))
                .hasSize(11);
        Interval rain = Interval.of(at(0), at(100));
        assertThat(HIGH.trial(builder.build(), List.of(rain))).hasSize(6);
    }

    @Test
    void performanceIsCounted() {
        List<AlarmEvent> chatter = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            chatter.add(event(T0.plusSeconds(30L * i), T0.plusSeconds(30L * i + 10)));
        }
        AlarmEvent standing = event(T0.plusSeconds(86_400), T0.plusSeconds(86_400 * 3));
        AlarmEvent before = event(T0.minusSeconds(3600), T0.plusSeconds(3600));
        Interval week = Interval.of(T0, Duration.ofDays(4));
        AlarmPerformance figures = AlarmPerformance.of(List.of(chatter, List.of(before, standing)), week);
        assertThat(figures.alarms()).isEqualTo(13);
        assertThat(figures.perDay()).isEqualTo(3.25);
        assertThat(figures.mostInTenMinutes()).isEqualTo(12);
        assertThat(figures.floods()).isEqualTo(12);
        assertThat(figures.chattering()).isEqualTo(10);
        assertThat(figures.standing()).isEqualTo(1);
        assertThat(figures.timeActive()).isEqualTo(Duration.ofSeconds(120 + 3600 + 2 * 86_400));
        assertThat(figures)
                .hasToString(
                        "AlarmPerformance[13 alarms, 3.25 a day, at most 12 in 10 min, 12 in floods, 10 chattering,"
                                + " 1 standing, 2 d 1 h 2 min in alarm]");
        assertThat(AlarmPerformance.of(List.of(), week).perDay()).isZero();
        assertThat(AlarmPerformance.of(List.of(chatter.subList(0, 9)), week).floods())
                .isZero();
    }

    private static AlarmEvent event(Instant from, Instant to) {
        return new AlarmEvent(from, from, 1, from, Optional.of(to), Optional.of(to), Duration.ZERO);
    }

    private static List<State> states(Alarm alarm, AlarmInput... inputs) {
        return MachineContract.holds(alarm, List.of(inputs)).stream()
                .map(AlarmChange::state)
                .toList();
    }

    private static List<Instant> raisedAt(Alarm alarm, AlarmInput... inputs) {
        return MachineContract.holds(alarm, List.of(inputs)).stream()
                .filter(change -> change.state() == State.UNACKNOWLEDGED)
                .map(AlarmChange::time)
                .toList();
    }

    private static AlarmInput reading(int minute, double value) {
        return AlarmInput.of(Reading.of(at(minute), value));
    }

    private static Instant at(int minute) {
        return T0.plusSeconds(60L * minute);
    }
}
