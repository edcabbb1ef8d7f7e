package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Resample;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.alarm.AlarmPerformance;
import dev.runnel.timeseries.balance.CommonTotals;
import dev.runnel.timeseries.balance.DailyTotals;
import dev.runnel.timeseries.balance.VolumeRatios;
import dev.runnel.timeseries.baseline.DiurnalProfile;
import dev.runnel.timeseries.baseline.ProfileRule;
import dev.runnel.timeseries.csv.CsvLayout;
import dev.runnel.timeseries.csv.CsvUnit;
import dev.runnel.timeseries.csv.DisplacedStamps;
import dev.runnel.timeseries.infiltration.DailyFlows;
import dev.runnel.timeseries.infiltration.NightFlow;
import dev.runnel.timeseries.quality.GoodDay;
import dev.runnel.timeseries.quality.GoodDays;
import dev.runnel.timeseries.quality.StrayStamps;
import dev.runnel.timeseries.quality.UnitSuspicion;
import java.io.StringReader;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** What a survey's books hold: common totals, overflow returns, alarm figures, profiles, calendars; times in minutes. */
final class SurveyCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final String ALARMS = "first_on first_off second_on second_off days";
    private static final String PROFILE = "values step_minutes slot_minutes";

    private SurveyCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "balance.common.steps",
                        "a b c a_from b_from c_from",
                        in -> common(in).steps()),
                of(
                        "balance.common.total",
                        "a b c a_from b_from c_from record",
                        in -> common(in).totals().get(in.text("record"))),
                of(
                        "balance.common.ratio",
                        "a b c a_from b_from c_from record",
                        in -> common(in).ratioToOthers(in.text("record"))),
                of(
                        "balance.common.far",
                        "a b c a_from b_from c_from tolerance",
                        in -> common(in).fartherThan(in.number("tolerance")).size()),
                of("balance.ratios.usual", "first second", in -> ratios(in).usual()),
                of("balance.ratios.second", "first second", in -> ratios(in).second()),
                of(
                        "balance.ratios.days",
                        "first second",
                        in -> ratios(in).ratios().size()),
                of(
                        "balance.ratios.far",
                        "first second tolerance",
                        in -> ratios(in).fartherThan(in.number("tolerance")).size()),
                alarms("alarm.performance.per-day", AlarmPerformance::perDay),
                alarms("alarm.performance.most", AlarmPerformance::mostInTenMinutes),
                alarms("alarm.performance.floods", AlarmPerformance::floods),
                alarms("alarm.performance.chattering", AlarmPerformance::chattering),
                alarms("alarm.performance.standing", AlarmPerformance::standing),
                alarms("alarm.performance.active", each -> each.timeActive().toNanos() / 60e9),
                of("profile.mean", PROFILE + " minute", in -> profile(in).mean(at(in.number("minute")))),
                of("profile.expected", PROFILE + " minute", in -> profile(in).expected(at(in.number("minute")))),
                of("profile.mean-of-week", PROFILE, in -> profile(in).mean()),
                of(
                        "profile.quantile",
                        PROFILE + " minute p",
                        in -> profile(in).quantile(at(in.number("minute")), in.number("p"))),
                of(
                        "profile.band.contains",
                        PROFILE + " minute lower upper value",
                        in -> profile(in)
                                        .band(at(in.number("minute")), in.number("lower"), in.number("upper"))
                                        .contains(in.number("value"))
                                ? 1
                                : 0),
                of(
                        "profile.residual",
                        PROFILE + " minute value",
                        in -> profile(in)
                                .residuals(Series.builder()
                                        .add(at(in.number("minute")), in.number("value"))
                                        .build())
                                .value(0)),
                of(
                        "quality.stray.count",
                        "times days",
                        in -> StrayStamps.in(
                                        series(in.sample("times"), in.sample("times")),
                                        Duration.ofDays(in.integer("days")))
                                .setAside()
                                .size()),
                of(
                        "csv.displaced.lines",
                        "times",
                        in -> displaced(in).stream()
                                .mapToDouble(run -> run.lastLine() - run.firstLine() + 1)
                                .sum()),
                of(
                        "csv.displaced.first-line",
                        "times",
                        in -> displaced(in).stream()
                                .mapToDouble(DisplacedStamps.Run::firstLine)
                                .findFirst()
                                .orElse(Double.NaN)),
                of(
                        "csv.displaced.ahead",
                        "times",
                        in -> displaced(in).stream()
                                .mapToDouble(run -> run.ahead().toMinutes())
                                .findFirst()
                                .orElse(Double.NaN)),
                of(
                        "quality.unit-factor",
                        "values lowest highest",
                        in -> UnitSuspicion.of(
                                        RegularSeries.of(START, Duration.ofMinutes(1), in.sample("values"))
                                                .toSeries(),
                                        in.number("lowest"),
                                        in.number("highest"))
                                .stream()
                                .findFirst()
                                .map(UnitSuspicion::factor)
                                .orElse(0.0)),
                of(
                        "quality.unit-inside",
                        "values lowest highest",
                        in -> UnitSuspicion.of(
                                        RegularSeries.of(START, Duration.ofMinutes(1), in.sample("values"))
                                                .toSeries(),
                                        in.number("lowest"),
                                        in.number("highest"))
                                .get(0)
                                .insideThen()),
                of("quality.good-day.share", "times values zone day", in -> good(in).share()),
                of("quality.good-day.expected", "times values zone day", in -> good(in).expected()),
                of("quality.good-day.usable", "times values zone day", in -> good(in).usable()),
                of("infiltration.by-share", "flow share", in -> night(in).infiltrationByShare(in.number("share"))),
                of("infiltration.less-foul", "flow foul", in -> night(in).infiltrationLess(in.number("foul"))),
                of(
                        "infiltration.daily-flow",
                        "values day",
                        in -> DailyFlows.of(DailyTotals.in(ZoneOffset.UTC).totals(hours(in.sample("values"))))
                                .flows()
                                .get(LocalDate.of(2001, 1, 1).plusDays(in.integer("day")))),
                of(
                        "series.usual-step",
                        "times",
                        in -> series(in.sample("times"), in.sample("times"))
                                        .usualStep()
                                        .toNanos()
                                / 60e9),
                of(
                        "resample.from-origin",
                        "times values step_minutes origin step",
                        in -> Resample.mean(minutes(in.number("step_minutes")))
                                .withOrigin(at(in.number("origin")))
                                .withMinimumCoverage(0)
                                .apply(series(in.sample("times"), in.sample("values")))
                                .value(in.integer("step"))),
                of(
                        "unit.to-si",
                        "unit value",
                        in -> CsvUnit.parse(in.text("unit")).toSi(in.number("value"))),
                of(
                        "unit.from-si",
                        "unit value",
                        in -> CsvUnit.parse(in.text("unit")).fromSi(in.number("value"))));
    }

    private static Calculation of(String name, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("timeseries", name, "as the inputs", inputs, body);
    }

    private static Calculation alarms(String name, ToDoubleFunction<AlarmPerformance> question) {
        return of(
                name,
                ALARMS,
                in -> question.applyAsDouble(AlarmPerformance.of(
                        List.of(events(in, "first"), events(in, "second")),
                        Interval.of(START, Duration.ofDays(in.integer("days"))))));
    }

    /** An end of NaN is that of an alarm which still stands. */
    private static List<AlarmEvent> events(Inputs in, String alarm) {
        double[] on = in.sample(alarm + "_on");
        double[] off = in.sample(alarm + "_off");
        List<AlarmEvent> events = new ArrayList<>();
        for (int i = 0; i < on.length; i++) {
            Optional<Instant> end = Double.isNaN(off[i]) ? Optional.empty() : Optional.of(at(off[i]));
            events.add(new AlarmEvent(at(on[i]), at(on[i]), 1, at(on[i]), end, end, Duration.ZERO));
        }
        return events;
    }

    private static CommonTotals common(Inputs in) {
        Map<String, RegularSeries> records = new LinkedHashMap<>();
        for (String name : List.of("a", "b", "c")) {
            records.put(
                    name, RegularSeries.of(at(5 * in.number(name + "_from")), Duration.ofMinutes(5), in.sample(name)));
        }
        return CommonTotals.of(records);
    }

    private static VolumeRatios ratios(Inputs in) {
        DailyTotals rule = DailyTotals.in(ZoneOffset.UTC);
        return VolumeRatios.of(rule.totals(hours(in.sample("first"))), rule.totals(hours(in.sample("second"))));
    }

    private static RegularSeries hours(double[] values) {
        return RegularSeries.of(START, Duration.ofHours(1), values);
    }

    private static DiurnalProfile profile(Inputs in) {
        Series series = RegularSeries.of(START, minutes(in.number("step_minutes")), in.sample("values"))
                .toSeries();
        return DiurnalProfile.from(
                series,
                LocalDate.of(2001, 1, 1).datesUntil(LocalDate.of(2001, 1, 29)).collect(Collectors.toSet()),
                ZoneOffset.UTC,
                ProfileRule.standard()
                        .withSlot(minutes(in.number("slot_minutes")))
                        .withMinimumDays(1));
    }

    private static GoodDay good(Inputs in) {
        return GoodDays.in(ZoneId.of(in.text("zone")))
                .of(series(in.sample("times"), in.sample("values")))
                .get(in.integer("day"));
    }

    private static NightFlow night(Inputs in) {
        return new NightFlow(
                LocalDate.of(2001, 1, 1), Interval.of(START, Duration.ofHours(1)), in.number("flow"), Double.NaN);
    }

    private static Series series(double[] times, double[] values) {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < times.length; i++) {
            builder.add(Reading.of(at(times[i]), values[i]));
        }
        return builder.build();
    }

    /** A line for each stamp in the order of the sample, below a header. */
    private static List<DisplacedStamps.Run> displaced(Inputs in) {
        StringBuilder text = new StringBuilder("time\n");
        for (double minute : in.sample("times")) {
            text.append(at(minute)).append('\n');
        }
        return DisplacedStamps.in("stamps", new StringReader(text.toString()), CsvLayout.of("time"))
                .runs();
    }

    private static Instant at(double minute) {
        return START.plus(minutes(minute));
    }

    private static Duration minutes(double minutes) {
        return Duration.ofNanos(Math.round(minutes * 60e9));
    }
}
