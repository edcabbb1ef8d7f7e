package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.monitoring.SpillVolume;
import dev.runnel.hydraulics.structure.CoefficientWeir;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.alarm.Alarm;
import dev.runnel.timeseries.alarm.AlarmChange;
import dev.runnel.timeseries.alarm.AlarmInput;
import dev.runnel.timeseries.alarm.AlarmMachine;
import dev.runnel.timeseries.alarm.AlarmSignal;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import dev.runnel.timeseries.balance.Discharge;
import dev.runnel.timeseries.balance.Discharges;
import dev.runnel.timeseries.balance.OverflowReturn;
import dev.runnel.timeseries.balance.SpillCount;
import dev.runnel.timeseries.correction.SiteVisit;
import dev.runnel.timeseries.correction.VisitComparison;
import dev.runnel.timeseries.correction.VisitDifference;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Annual returns and joined discharges in minutes from a start; signals of alarms; visits; volumes over a crest. */
final class OverflowCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final String SPILL = "levels crest length lowest from to";
    private static final double NO_READING = -9999;

    private OverflowCalculations() {}

    static List<Calculation> all() {
        return List.of(
                returned("spills", "spills", OverflowReturn::spills),
                returned("spills-with-uncertain", "spills", OverflowReturn::spillsWithUncertain),
                returned("hours", "h", OverflowReturn::hours),
                returned("volume", "m3", OverflowReturn::volume),
                returned("uncertain", "discharges", OverflowReturn::uncertain),
                returned("without-volume", "discharges", OverflowReturn::withoutVolume),
                returned("cut", "discharges", OverflowReturn::cut),
                returned("observed", "1", OverflowReturn::observed),
                Calculation.of(
                        "timeseries",
                        "discharges.joined-count",
                        "discharges",
                        "discharges gap_minutes",
                        in -> joined(in).size()),
                Calculation.of(
                        "timeseries",
                        "discharges.joined-minutes",
                        "min",
                        "discharges gap_minutes",
                        in -> joined(in).stream()
                                .mapToDouble(each -> each.duration().toSeconds() / 60.0)
                                .sum()),
                Calculation.of(
                        "timeseries",
                        "discharges.widened-minutes",
                        "min",
                        "discharges interval_minutes number",
                        in -> Discharges.widened(spans(in.text("discharges")), minutes(in.number("interval_minutes")))
                                        .get(in.integer("number"))
                                        .duration()
                                        .toSeconds()
                                / 60.0),
                Calculation.of(
                        "timeseries",
                        "alarm.signal-first",
                        "min",
                        "values kind limit on_delay_minutes base slope ticks?",
                        OverflowCalculations::first),
                visit("difference", "as the readings", VisitDifference::difference),
                visit("tolerance", "as the readings", VisitDifference::tolerance),
                visit("is-beyond", "1 or 0", each -> each.isBeyond() ? 1 : 0),
                spilled("volume", SpillVolume::volume),
                spilled("volume-below", SpillVolume::below),
                Calculation.of(
                        "hydraulics",
                        "spill.relative-change",
                        "1",
                        SPILL + " lower",
                        in -> spilled(in, in.number("crest"))
                                .relativeChange(spilled(in, in.number("crest") - in.number("lower")))));
    }

    private static Calculation returned(String name, String unit, ToDoubleFunction<OverflowReturn> question) {
        return Calculation.of("timeseries", "return." + name, unit, "discharges observed from to", in -> {
            List<Discharge> discharges = new ArrayList<>();
            for (String part : in.text("discharges").split(";")) {
                String[] figures = part.replace("?", "").split(":");
                Discharge each = Discharge.of(span(figures[0]));
                each = figures.length > 1 ? each.withVolume(Double.parseDouble(figures[1])) : each;
                discharges.add(part.endsWith("?") ? each.asUncertain() : each);
            }
            Interval period = Interval.of(at(in.number("from")), at(in.number("to")));
            return question.applyAsDouble(OverflowReturn.ofPeriod(
                    "overflow",
                    "period",
                    period,
                    SpillCount.twelveTwentyFour(),
                    discharges,
                    spans(in.text("observed"))));
        });
    }

    private static List<Interval> joined(Inputs in) {
        return Discharges.joined(spans(in.text("discharges")), minutes(in.number("gap_minutes")));
    }

    /**
     * The minute of the first input after which the alarm is on; -1 for never. A minute without reading is a reading that is
     * missing, or with ticks a tick.
     */
    private static double first(Inputs in) {
        double base = in.number("base");
        double slope = in.number("slope");
        AlarmSignal signal = switch (in.text("kind")) {
            case "value" -> AlarmSignal.value();
            case "rate" -> AlarmSignal.rateOfChange(minutes(5));
            case "deviation" ->
                AlarmSignal.deviationFrom(
                        time -> base + slope * Duration.between(START, time).toSeconds() / 60);
            case "unchanged" -> AlarmSignal.unchanged();
            case "silence" -> AlarmSignal.silence();
            default -> AlarmSignal.badQuality();
        };
        Alarm alarm = Alarm.of(
                "alarm",
                signal,
                ThresholdAlarm.high(in.number("limit")).withOnDelay(minutes(in.number("on_delay_minutes"))));
        AlarmMachine machine = alarm.start();
        boolean hasTicks = in.number("ticks", 0) > 0;
        double[] values = in.sample("values");
        for (int i = 0; i < values.length; i++) {
            boolean isMissing = values[i] == NO_READING;
            Reading reading = new Reading(
                    at(i), isMissing ? Double.NaN : values[i], isMissing ? Quality.MISSING : Quality.UNCHECKED);
            machine.next(isMissing && hasTicks ? AlarmInput.tick(at(i)) : AlarmInput.of(reading));
            if (machine.alarmState() == AlarmChange.State.UNACKNOWLEDGED) {
                return i;
            }
        }
        return -1;
    }

    private static Calculation visit(String name, String unit, ToDoubleFunction<VisitDifference> question) {
        return Calculation.of("timeseries", "visit." + name, unit, "depths second hand", in -> {
            Series depths =
                    RegularSeries.of(START, minutes(10), in.sample("depths")).toSeries();
            String time = START.plusNanos(Math.round(in.number("second") * 1e9)).toString();
            List<SiteVisit> visits =
                    SiteVisit.parse("time,author,hand depth\n" + time + ",somebody," + in.number("hand") + "\n");
            return question.applyAsDouble(VisitComparison.standard()
                    .differences(visits, depths, Series.empty(), Series.empty())
                    .get(0));
        });
    }

    private static Calculation spilled(String name, ToDoubleFunction<SpillVolume> question) {
        return Calculation.of(
                "hydraulics",
                "spill." + name,
                "m3",
                SPILL,
                in -> question.applyAsDouble(spilled(in, in.number("crest"))));
    }

    private static SpillVolume spilled(Inputs in, double crest) {
        return SpillVolume.of(
                CoefficientWeir.rectangular(in.number("length")),
                crest,
                in.number("lowest"),
                RegularSeries.of(START, minutes(2), in.sample("levels")).toSeries(),
                Interval.of(at(in.number("from")), at(in.number("to"))),
                minutes(10));
    }

    private static List<Interval> spans(String text) {
        List<Interval> spans = new ArrayList<>();
        for (String part : text.split(";")) {
            spans.add(span(part));
        }
        return spans;
    }

    private static Interval span(String text) {
        String[] ends = text.split("-");
        return Interval.of(at(Double.parseDouble(ends[0])), at(Double.parseDouble(ends[1])));
    }

    private static Instant at(double minute) {
        return START.plus(minutes(minute));
    }

    private static Duration minutes(double minutes) {
        return Duration.ofNanos(Math.round(minutes * 60e9));
    }
}
