package dev.runnel.timeseries.machines;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import dev.runnel.timeseries.balance.SpillCount;
import dev.runnel.timeseries.quality.FlatLineCheck;
import dev.runnel.timeseries.quality.GapCheck;
import dev.runnel.timeseries.quality.QualityChecks;
import dev.runnel.timeseries.quality.RangeCheck;
import dev.runnel.timeseries.quality.RateOfChangeCheck;
import dev.runnel.timeseries.quality.SpikeCheck;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** A rule of this module with a record that makes its machine work. */
record SampleRecord<I, O, S extends MachineState>(Rule<I, O, S> rule, List<I> inputs) {
    private static final Instant START = Instant.parse("2026-03-28T22:00:00Z");

    /** Every rule of this module. A new one gets a line here. */
    static List<SampleRecord<?, ?, ?>> all() {
        List<Reading> readings = readings();
        return List.of(
                new SampleRecord<>(
                        ThresholdAlarm.high(0.6)
                                .withDeadband(0.05)
                                .withOnDelay(Duration.ofMinutes(4))
                                .withOffDelay(Duration.ofMinutes(4))
                                .withMaximumGap(Duration.ofMinutes(15)),
                        readings),
                new SampleRecord<>(
                        QualityChecks.of(
                                RangeCheck.of(0, 3),
                                SpikeCheck.of(0.2, 0.4).withNeighboursSpared(),
                                FlatLineCheck.of(2, 3, 0.002),
                                RateOfChangeCheck.of(0.1, Duration.ofMinutes(2))),
                        readings),
                new SampleRecord<>(SpikeCheck.of(0.2, 0.4), readings),
                new SampleRecord<>(GapCheck.longerThan(Duration.ofMinutes(10)), readings),
                new SampleRecord<>(SpillCount.twelveTwentyFour().withMergeGap(Duration.ofMinutes(5)), discharges()));
    }

    /** What the machine gives from an input on, going on from a state, to the end of the record. */
    List<String> resultsFrom(int index, String state) {
        Machine<I, O, S> machine = rule.start(rule.parseState(state));
        List<String> results = new ArrayList<>();
        for (I input : inputs.subList(index, inputs.size())) {
            machine.next(input).forEach(each -> results.add(each.toString()));
        }
        machine.finish().forEach(each -> results.add(each.toString()));
        return results;
    }

    /** The state after so many inputs. */
    String stateAfter(int count) {
        Machine<I, O, S> machine = rule.start();
        inputs.subList(0, count).forEach(machine::next);
        return machine.state().toText();
    }

    private static List<Reading> readings() {
        Random random = new Random(20260328);
        List<Reading> readings = new ArrayList<>();
        Instant time = START;
        for (int i = 0; i < 400; i++) {
            time = time.plusSeconds(random.nextInt(20) == 0 ? 1800 : 120);
            double wave = Math.round(1000 * (0.5 + 0.3 * Math.sin(i / 15.0))) / 1000.0;
            switch (random.nextInt(12)) {
                case 0 -> readings.add(Reading.of(time, Double.NaN));
                case 1 -> readings.add(Reading.of(time, -9999));
                case 2 -> readings.add(new Reading(time, wave + 1, Quality.UNCHECKED));
                case 3 -> readings.add(new Reading(time, wave, Quality.SUSPECT));
                default -> readings.add(Reading.of(time, wave));
            }
        }
        return readings;
    }

    private static List<Interval> discharges() {
        Random random = new Random(7);
        List<Interval> discharges = new ArrayList<>();
        Instant time = START;
        for (int i = 0; i < 60; i++) {
            time = time.plusSeconds(random.nextInt(3) == 0 ? 200 : random.nextInt(100_000));
            Interval discharge = Interval.of(time, Duration.ofSeconds(60 + random.nextInt(20_000)));
            discharges.add(discharge);
            time = discharge.end();
        }
        return discharges;
    }
}
