package dev.runnel.timeseries.alarm;

import static java.util.stream.Collectors.toList;
import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.contract.MachineContract;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class ThresholdAlarmProperties {
    private static final Instant START = Instant.parse("2026-01-01T00:00:00Z");

    @Property
    void keepsTheContractOfMachines(@ForAll("alarms") ThresholdAlarm alarm, @ForAll("records") List<Reading> readings) {
        List<AlarmEvent> changes = new ArrayList<>(MachineContract.holds(alarm, readings));
        boolean open = !changes.isEmpty() && changes.get(changes.size() - 1).isActive();
        List<AlarmEvent> alarms =
                changes.stream().filter(event -> !event.isActive()).collect(toList());
        if (open) {
            alarms.add(changes.get(changes.size() - 1));
        }
        assertThat(alarm.events(Series.of(readings))).isEqualTo(alarms);
    }

    @Property
    void eventsAreOrderedAndKeepTheirDelays(
            @ForAll("alarms") ThresholdAlarm alarm, @ForAll("records") List<Reading> readings) {
        Instant before = START.minusSeconds(1);
        for (AlarmEvent event : alarm.events(Series.of(readings))) {
            assertThat(event.onset()).isAfter(before);
            assertThat(Duration.between(event.onset(), event.activation()).toNanos())
                    .isGreaterThanOrEqualTo(alarm.onDelay());
            assertThat(alarm.isHigh() ? event.peak() > 0.5 : event.peak() < 0.5).isTrue();
            event.returned()
                    .ifPresent(
                            end -> assertThat(Duration.between(event.cleared().orElseThrow(), end)
                                            .toNanos())
                                    .isGreaterThanOrEqualTo(alarm.offDelay()));
            before = event.returned().orElse(Instant.MAX);
        }
    }

    @Property
    void aLowAlarmIsTheMirrorOfAHighOne(@ForAll("records") List<Reading> readings) {
        Duration delay = Duration.ofMinutes(3);
        ThresholdAlarm high =
                ThresholdAlarm.high(0.5).withDeadband(0.2).withOnDelay(delay).withOffDelay(delay);
        ThresholdAlarm low =
                ThresholdAlarm.low(-0.5).withDeadband(0.2).withOnDelay(delay).withOffDelay(delay);
        Series series = Series.of(readings);
        List<String> mirrored = low.events(series.map(value -> -value)).stream()
                .map(event -> event.onset() + " " + event.returned() + " " + -event.peak())
                .toList();
        assertThat(high.events(series).stream()
                        .map(event -> event.onset() + " " + event.returned() + " " + event.peak())
                        .toList())
                .isEqualTo(mirrored);
    }

    @Provide
    Arbitrary<ThresholdAlarm> alarms() {
        Arbitrary<Duration> delay = Arbitraries.of(0, 60, 150, 600).map(Duration::ofSeconds);
        return Combinators.combine(
                        Arbitraries.of(true, false),
                        Arbitraries.of(0.0, 0.1, 0.3),
                        delay,
                        delay,
                        Arbitraries.of(200, 500, 100_000))
                .as((high, deadband, on, off, gap) -> (high ? ThresholdAlarm.high(0.5) : ThresholdAlarm.low(0.5))
                        .withDeadband(deadband)
                        .withOnDelay(on)
                        .withOffDelay(off)
                        .withMaximumGap(Duration.ofSeconds(gap)));
    }

    @Provide
    Arbitrary<List<Reading>> records() {
        Arbitrary<Integer> spacing = Arbitraries.of(60, 60, 60, 120, 300, 900);
        Arbitrary<Double> value = Arbitraries.doubles().between(0, 1).ofScale(1).injectNull(0.1);
        Arbitrary<Quality> quality = Arbitraries.of(Quality.GOOD, Quality.GOOD, Quality.ESTIMATE, Quality.SUSPECT);
        return Combinators.combine(spacing, value, quality)
                .as(Entry::new)
                .list()
                .ofMaxSize(60)
                .map(ThresholdAlarmProperties::readings);
    }

    private record Entry(
            int spacing, @org.jspecify.annotations.Nullable Double value, Quality quality) {}

    private static List<Reading> readings(List<Entry> entries) {
        List<Reading> readings = new ArrayList<>();
        Instant time = START;
        for (Entry entry : entries) {
            time = time.plusSeconds(entry.spacing);
            Double value = entry.value;
            readings.add(
                    value == null
                            ? new Reading(time, Double.NaN, Quality.MISSING)
                            : new Reading(time, value, entry.quality));
        }
        return readings;
    }
}
