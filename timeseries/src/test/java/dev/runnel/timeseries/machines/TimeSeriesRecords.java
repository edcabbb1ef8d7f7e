package dev.runnel.timeseries.machines;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.alarm.Alarm;
import dev.runnel.timeseries.alarm.AlarmInput;
import dev.runnel.timeseries.alarm.AlarmSignal;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import dev.runnel.timeseries.balance.SpillCount;
import dev.runnel.timeseries.contract.SampleRecord;
import dev.runnel.timeseries.contract.SampleRecords;
import dev.runnel.timeseries.quality.AttenuatedSignalCheck;
import dev.runnel.timeseries.quality.ClimatologyCheck;
import dev.runnel.timeseries.quality.DeadSensorCheck;
import dev.runnel.timeseries.quality.DeviationRateCheck;
import dev.runnel.timeseries.quality.FlatLineCheck;
import dev.runnel.timeseries.quality.GapCheck;
import dev.runnel.timeseries.quality.LoneReadingCheck;
import dev.runnel.timeseries.quality.LostEchoCheck;
import dev.runnel.timeseries.quality.MultivariateCheck;
import dev.runnel.timeseries.quality.NeighbourCheck;
import dev.runnel.timeseries.quality.QualityChecks;
import dev.runnel.timeseries.quality.RangeCheck;
import dev.runnel.timeseries.quality.RateOfChangeCheck;
import dev.runnel.timeseries.quality.ReadingPair;
import dev.runnel.timeseries.quality.RelationCheck;
import dev.runnel.timeseries.quality.RepeatedDayCheck;
import dev.runnel.timeseries.quality.SharedSpikeCheck;
import dev.runnel.timeseries.quality.SpikeCheck;
import dev.runnel.timeseries.quality.TimingCheck;
import dev.runnel.timeseries.quality.ZeroWithDepthCheck;
import java.time.Duration;
import java.time.Instant;
import java.time.Month;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** The rules of this module, each with a record that makes its machine work. */
public final class TimeSeriesRecords implements SampleRecords {
    private static final Instant START = Instant.parse("2026-03-28T22:00:00Z");

    /** Every rule of this module. A new one gets a line here. */
    @Override
    public List<SampleRecord<?, ?, ?>> all() {
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
                        Alarm.of("fast", AlarmSignal.rateOfChange(Duration.ofMinutes(2)), ThresholdAlarm.high(0.5))
                                .withLatching(),
                        alarmInputs()),
                new SampleRecord<>(
                        QualityChecks.of(
                                RangeCheck.of(0, 3),
                                SpikeCheck.of(0.2, 0.4).withNeighboursSpared(),
                                FlatLineCheck.of(2, 3, 0.002),
                                RateOfChangeCheck.of(0.1, Duration.ofMinutes(2))),
                        readings),
                new SampleRecord<>(SpikeCheck.of(0.2, 0.4), readings),
                new SampleRecord<>(
                        ClimatologyCheck.in(ZoneOffset.UTC).withMonths(Month.MARCH, Month.MARCH, 0, 0.6), readings),
                new SampleRecord<>(TimingCheck.of(Duration.ofMinutes(2), Duration.ofSeconds(5)), readings),
                new SampleRecord<>(DeviationRateCheck.of(2, Duration.ofHours(1)), readings),
                new SampleRecord<>(AttenuatedSignalCheck.of(Duration.ofMinutes(20), 0.3, 0.1), readings),
                new SampleRecord<>(LostEchoCheck.ofValueAndJump(-9999, 0.1, Duration.ofMinutes(10)), readings),
                new SampleRecord<>(
                        RepeatedDayCheck.of(Duration.ofMinutes(20)).withLag(Duration.ofMinutes(60)), repeating()),
                new SampleRecord<>(NeighbourCheck.of(0.05, 0.2), pairs()),
                new SampleRecord<>(
                        SharedSpikeCheck.of(SpikeCheck.of(0.05, 0.2)
                                .withMaximumGap(Duration.ofMinutes(5))
                                .withNeighboursSpared()),
                        pairs()),
                new SampleRecord<>(LoneReadingCheck.of(0.05, Duration.ofMinutes(15)), pairs()),
                new SampleRecord<>(MultivariateCheck.ofJumpAboveAndStayBelow(1, 1, Duration.ofHours(1)), pairs()),
                new SampleRecord<>(ZeroWithDepthCheck.of(0.4, Duration.ofMinutes(6)), pairs()),
                new SampleRecord<>(DeadSensorCheck.ofStandBelowAndMoveAbove(Duration.ofMinutes(8), 0.2, 0.01), pairs()),
                new SampleRecord<>(
                        RelationCheck.of(new double[] {0, 1}, new double[] {0, 0.5}, new double[] {0.5, 1}), pairs()),
                new SampleRecord<>(GapCheck.longerThan(Duration.ofMinutes(10)), readings),
                new SampleRecord<>(SpillCount.twelveTwentyFour().withMergeGap(Duration.ofMinutes(5)), discharges()),
                new SampleRecord<>(
                        SpillCount.eventsApart(Duration.ofHours(24)).withLongestEvent(Duration.ofDays(2)),
                        discharges()),
                new SampleRecord<>(SpillCount.days(ZoneOffset.ofHours(2)).withShortOnesOnce(), discharges()));
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

    private static List<AlarmInput> alarmInputs() {
        List<AlarmInput> inputs = new ArrayList<>();
        for (Reading reading : readings()) {
            inputs.add(AlarmInput.of(reading));
            Instant then = reading.time().plusSeconds(1);
            switch (inputs.size() % 61) {
                case 7 -> inputs.add(AlarmInput.acknowledge(then));
                case 22 -> inputs.add(AlarmInput.shelve(then, then.plusSeconds(1000)));
                case 31 -> inputs.add(AlarmInput.condition(then, true));
                case 40 -> inputs.add(AlarmInput.condition(then, false));
                case 55 -> inputs.add(AlarmInput.tick(then));
                default -> {
                    // Only the reading.
                }
            }
        }
        return inputs;
    }

    private static List<Reading> repeating() {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            readings.add(Reading.of(START.plusSeconds(120L * i), i < 120 ? i % 30 * 0.01 : i * 0.01));
        }
        return readings;
    }

    private static List<ReadingPair> pairs() {
        Random random = new Random(3);
        List<ReadingPair> pairs = new ArrayList<>();
        for (Reading reading : readings()) {
            double beside = random.nextInt(15) == 0 ? Double.NaN : 0.5 + 0.3 * Math.sin(pairs.size() / 14.0);
            boolean zero = pairs.size() % 60 > 50 && !reading.isMissing();
            pairs.add(
                    ReadingPair.of(zero ? Reading.of(reading.time(), 0) : reading, Reading.of(reading.time(), beside)));
        }
        return pairs;
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
