package dev.runnel.verification.sweep;

import dev.runnel.hydraulics.monitoring.SurchargeRule;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import dev.runnel.timeseries.balance.SpillCount;
import dev.runnel.timeseries.change.CusumRule;
import dev.runnel.timeseries.quality.AttenuatedSignalCheck;
import dev.runnel.timeseries.quality.DeviationRateCheck;
import dev.runnel.timeseries.quality.FlatLineCheck;
import dev.runnel.timeseries.quality.GapCheck;
import dev.runnel.timeseries.quality.QualityChecks;
import dev.runnel.timeseries.quality.RangeCheck;
import dev.runnel.timeseries.quality.SpikeCheck;
import dev.runnel.verification.sweep.Question.Answer;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** A machine that is stopped at random places and goes on from the text of its state gives what an undisturbed one gives. */
final class Cuts {
    private static final Instant START = Instant.parse("2026-03-28T22:00:00Z");

    private Cuts() {}

    static List<Question> all() {
        return List.of(
                cut("threshold alarm, cut at random", Cuts::alarm, Cuts::readings),
                cut("quality checks, cut at random", Cuts::checks, Cuts::readings),
                cut("gaps, cut at random", draw -> GapCheck.longerThan(minutes(draw)), Cuts::readings),
                cut(
                        "rate of deviation, cut at random",
                        draw -> DeviationRateCheck.of(2, minutes(draw).plusMinutes(9)),
                        Cuts::readings),
                cut(
                        "attenuated signal, cut at random",
                        draw -> AttenuatedSignalCheck.of(minutes(draw).plusMinutes(9), 0.3, 0.1),
                        Cuts::readings),
                cut("sum of changes, cut at random", Cuts::cusum, Cuts::readings),
                cut(
                        "spill count, cut at random",
                        draw -> SpillCount.twelveTwentyFour().withMergeGap(minutes(draw)),
                        Cuts::spills),
                cut("surcharge, cut at random", draw -> SurchargeRule.above(draw.between(0.3, 1)), Cuts::readings),
                cut(
                        "rain events, cut at random",
                        draw -> EventSeparation.of(minutes(draw).multipliedBy(2))
                                .ofSteps(Duration.ofMinutes(2)),
                        Cuts::rain));
    }

    private static Duration minutes(Draw draw) {
        return Duration.ofMinutes(1 + draw.below(40));
    }

    private static Rule<Reading, ?, ?> alarm(Draw draw) {
        ThresholdAlarm alarm =
                draw.heads() ? ThresholdAlarm.high(draw.between(0, 1)) : ThresholdAlarm.low(draw.between(0, 1));
        return alarm.withDeadband(draw.between(0, 0.2))
                .withOnDelay(minutes(draw))
                .withOffDelay(minutes(draw))
                .withMaximumGap(minutes(draw));
    }

    private static Rule<Reading, ?, ?> checks(Draw draw) {
        return QualityChecks.of(
                RangeCheck.of(0, draw.between(0.5, 3)),
                SpikeCheck.of(draw.between(0.05, 0.2), 0.4).withNeighboursSpared(),
                FlatLineCheck.of(2 + draw.below(3), 5 + draw.below(5), 0.002));
    }

    private static Rule<Reading, ?, ?> cusum(Draw draw) {
        return CusumRule.ofReferenceAndDecision(draw.between(0.2, 1), draw.between(2, 8));
    }

    private static List<Reading> readings(Draw draw) {
        List<Reading> readings = new ArrayList<>();
        Instant time = START;
        int count = 1 + draw.below(120);
        for (int i = 0; i < count; i++) {
            time = time.plusSeconds(draw.below(20) == 0 ? 1800 : 120);
            double wave = Math.round(1000 * (0.5 + 0.5 * Math.sin(i / 9.0) + draw.between(-0.1, 0.1))) / 1000.0;
            readings.add(Reading.of(
                    time,
                    switch (draw.below(14)) {
                        case 0 -> Double.NaN;
                        case 1 -> -9999;
                        case 2 -> wave + 1;
                        default -> wave;
                    }));
        }
        return readings;
    }

    private static List<Interval> spills(Draw draw) {
        List<Interval> spills = new ArrayList<>();
        Instant time = START;
        int count = 1 + draw.below(40);
        for (int i = 0; i < count; i++) {
            Instant start = time.plusSeconds(1 + (long) draw.decades(60, 2e5));
            time = start.plusSeconds(1 + (long) draw.decades(60, 2e5));
            spills.add(Interval.of(start, time));
        }
        return spills;
    }

    private static List<Reading> rain(Draw draw) {
        List<Reading> steps = new ArrayList<>();
        Instant time = START;
        int count = 1 + draw.below(150);
        for (int i = 0; i < count; i++) {
            time = time.plusSeconds(draw.below(40) == 0 ? 1200 : 120);
            steps.add(Reading.of(
                    time, draw.below(30) == 0 ? Double.NaN : draw.below(3) == 0 ? 0.2 * (1 + draw.below(4)) : 0));
        }
        return steps;
    }

    /** The error is the count of results that differ; 0 is promised. */
    private static <I> Question cut(String name, Function<Draw, Rule<I, ?, ?>> rule, Function<Draw, List<I>> record) {
        return new Question(name, 0, 0.02, draw -> {
            Rule<I, ?, ?> drawn = rule.apply(draw);
            List<I> inputs = record.apply(draw);
            return Answer.of(differences(drawn, inputs, draw), drawn, inputs);
        });
    }

    private static <I, O, S extends MachineState> double differences(Rule<I, O, S> rule, List<I> inputs, Draw draw) {
        List<O> whole = rule.over(inputs);
        List<O> pieces = new ArrayList<>();
        Machine<I, O, S> machine = rule.start();
        for (I input : inputs) {
            if (draw.below(5) == 0) {
                machine = rule.start(rule.parseState(machine.state().toText()));
            }
            pieces.addAll(machine.next(input));
        }
        pieces.addAll(machine.finish());
        int differing = Math.abs(whole.size() - pieces.size());
        for (int i = 0; i < Math.min(whole.size(), pieces.size()); i++) {
            differing += whole.get(i).equals(pieces.get(i)) ? 0 : 1;
        }
        return differing;
    }
}
