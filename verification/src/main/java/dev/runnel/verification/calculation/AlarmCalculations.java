package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.alarm.AlarmMonitor;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import dev.runnel.timeseries.balance.SpillCount;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleBiFunction;

/** Threshold alarms on readings a minute apart, and the counting of spills given as minutes from a start. */
final class AlarmCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");

    private AlarmCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of(
                        "timeseries",
                        "alarm.high.is-active",
                        "1 or 0",
                        "values reading limit deadband? on_delay_minutes? off_delay_minutes?",
                        in -> isActive(in) ? 1 : 0),
                alarms("alarm.count", (events, end) -> events.size()),
                alarms(
                        "alarm.active-minutes",
                        (events, end) -> events.stream()
                                .mapToDouble(each -> Duration.between(
                                                        each.activation(),
                                                        each.returned().orElse(end))
                                                .toNanos()
                                        / 60e9)
                                .sum()),
                alarms(
                        "alarm.peak",
                        (events, end) -> events.stream()
                                .map(AlarmEvent::peak)
                                .max((a, b) -> Double.compare(Math.abs(a - 1), Math.abs(b - 1)))
                                .orElse(0.0)),
                spill("spill.twelve-twenty-four", "", in -> SpillCount.twelveTwentyFour()),
                spill("spill.events-apart", " apart_hours longest_days?", in -> {
                    SpillCount rule = SpillCount.eventsApart(minutes(60 * in.number("apart_hours")));
                    return in.has("longest_days")
                            ? rule.withLongestEvent(minutes(1440 * in.number("longest_days")))
                            : rule;
                }),
                spill("spill.days", " short_ones_once?", in -> {
                    SpillCount rule = SpillCount.days(ZoneOffset.UTC);
                    return in.number("short_ones_once", 0) > 0 ? rule.withShortOnesOnce() : rule;
                }),
                Calculation.of(
                        "timeseries",
                        "spill.discharges",
                        "discharges",
                        "discharges merge_minutes?",
                        in -> SpillCount.twelveTwentyFour()
                                .withMergeGap(minutes(in.number("merge_minutes", 0)))
                                .count(discharges(in.text("discharges")))
                                .discharges()));
    }

    private static Calculation alarms(String name, ToDoubleBiFunction<List<AlarmEvent>, Instant> question) {
        String inputs = "values high limit deadband on_delay_minutes off_delay_minutes";
        return Calculation.of("timeseries", name, "as asked", inputs, in -> {
            double limit = in.number("limit");
            ThresholdAlarm alarm = (in.number("high") > 0 ? ThresholdAlarm.high(limit) : ThresholdAlarm.low(limit))
                    .withDeadband(in.number("deadband"))
                    .withOnDelay(minutes(in.number("on_delay_minutes")))
                    .withOffDelay(minutes(in.number("off_delay_minutes")));
            double[] values = in.sample("values");
            Series series = RegularSeries.of(START, minutes(1), values).toSeries();
            return question.applyAsDouble(alarm.events(series), START.plus(minutes(values.length - 1)));
        });
    }

    private static Calculation spill(String name, String inputs, Function<Inputs, SpillCount> rule) {
        return Calculation.of(
                "timeseries",
                name,
                "spills",
                "discharges" + inputs,
                in -> rule.apply(in).count(discharges(in.text("discharges"))).count());
    }

    private static boolean isActive(Inputs in) {
        ThresholdAlarm alarm = ThresholdAlarm.high(in.number("limit"))
                .withDeadband(in.number("deadband", 0))
                .withOnDelay(minutes(in.number("on_delay_minutes", 0)))
                .withOffDelay(minutes(in.number("off_delay_minutes", 0)));
        AlarmMonitor monitor = alarm.start();
        double[] values = in.sample("values");
        for (int i = 0; i <= in.integer("reading"); i++) {
            monitor.next(Reading.of(START.plus(minutes(i)), values[i]));
        }
        return monitor.isActive();
    }

    /** Reads "0-10;720-730": start and end of each discharge in minutes. */
    private static List<Interval> discharges(String text) {
        List<Interval> discharges = new ArrayList<>();
        for (String part : text.split(";")) {
            double[] ends = Arrays.stream(part.split("-"))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            discharges.add(Interval.of(START.plus(minutes(ends[0])), START.plus(minutes(ends[1]))));
        }
        return discharges;
    }

    private static Duration minutes(double minutes) {
        return Duration.ofNanos(Math.round(minutes * 60e9));
    }
}
