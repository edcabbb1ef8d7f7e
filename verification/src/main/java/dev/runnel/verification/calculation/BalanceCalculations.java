package dev.runnel.verification.calculation;

import dev.runnel.timeseries.BetweenReadings;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.balance.BalanceLine;
import dev.runnel.timeseries.balance.BalanceSite;
import dev.runnel.timeseries.balance.DailyTotal;
import dev.runnel.timeseries.balance.DailyTotals;
import dev.runnel.timeseries.balance.DaySampling;
import dev.runnel.timeseries.balance.ModelFit;
import dev.runnel.timeseries.balance.VolumeBalance;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Volumes of readings so many minutes apart, balances between sites, and models beside what was observed. */
final class BalanceCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");

    private BalanceCalculations() {}

    static List<Calculation> all() {
        return List.of(
                fit("model.nash-sutcliffe", ModelFit::nashSutcliffe),
                fit("model.kling-gupta", ModelFit::klingGupta),
                fit("model.kling-gupta-2012", ModelFit::klingGupta2012),
                fit("model.correlation", ModelFit::correlation),
                fit("model.alpha", ModelFit::alpha),
                fit("model.beta", ModelFit::beta),
                fit("model.gamma", ModelFit::gamma),
                fit("model.root-mean-square", ModelFit::rootMeanSquare),
                fit("model.volume-difference", ModelFit::volumeDifference),
                fit("model.peak-difference", ModelFit::peakDifference),
                fit("model.peak-lag-hours", each -> each.peakLag().toNanos() / 3.6e12),
                balance("balance.difference", BalanceLine::difference),
                balance("balance.ratio", BalanceLine::ratio),
                balance("balance.uncertainty", BalanceLine::uncertainty),
                balance("balance.coverage", BalanceLine::coverage),
                balance("balance.verdict", each -> each.verdict().ordinal()),
                fit("model.peak-rise", ModelFit::peakRise),
                daily("balance.daily.difference", BalanceLine::difference),
                daily("balance.daily.inflow", BalanceLine::inflow),
                daily(
                        "balance.daily.start",
                        line -> Duration.between(START, line.interval().start()).toMinutes() / 60.0),
                day("daily-total.measured", DailyTotal::measured),
                day("daily-total.coverage", DailyTotal::coverage),
                days("daily-totals.days", List::size),
                days("daily-totals.measured", days -> Books.sum(days, DailyTotal::measured)),
                days("daily-totals.coverage", days -> Books.sum(days, DailyTotal::coverage)),
                days("daily-totals.complete", days -> Books.sum(days, day -> day.isComplete() ? 1 : 0)),
                sampling("day-sampling.days", DaySampling::days),
                sampling("day-sampling.halves", DaySampling::halves),
                sampling("day-sampling.scatter", DaySampling::scatter),
                sampling("day-sampling.coarse", each -> each.isCoarse() ? 1 : 0));
    }

    private static Calculation fit(String name, ToDoubleFunction<ModelFit> question) {
        return Calculation.of(
                "timeseries",
                name,
                "as the records",
                "observed modelled modelled_later_hours?",
                in -> question.applyAsDouble(ModelFit.of(
                        hourly(in.sample("observed")),
                        RegularSeries.of(
                                START.plus(minutes(60 * in.number("modelled_later_hours", 0))),
                                Duration.ofHours(1),
                                in.sample("modelled")))));
    }

    private static RegularSeries hourly(double[] values) {
        return RegularSeries.of(START, Duration.ofHours(1), values);
    }

    /** Two sites upstream and one downstream, read each so many minutes. */
    private static Calculation balance(String name, ToDoubleFunction<BalanceLine> question) {
        String inputs = "first second downstream step_minutes from to first_travel second_travel"
                + " first_uncertainty second_uncertainty downstream_uncertainty";
        return Calculation.of("timeseries", name, "m3", inputs, in -> {
            List<BalanceSite> upstream = new ArrayList<>();
            for (String site : List.of("first", "second")) {
                upstream.add(BalanceSite.of(site, series(in, site), in.number(site + "_uncertainty"))
                        .withTravelTime(minutes(in.number(site + "_travel"))));
            }
            BalanceSite downstream =
                    BalanceSite.of("downstream", series(in, "downstream"), in.number("downstream_uncertainty"));
            Interval interval =
                    Interval.of(START.plus(minutes(in.number("from"))), START.plus(minutes(in.number("to"))));
            return question.applyAsDouble(VolumeBalance.of(upstream, downstream)
                    .over(List.of(interval))
                    .get(0));
        });
    }

    /** Local days of one site upstream and one downstream, each answer times the place of its day. */
    private static Calculation daily(String name, ToDoubleFunction<BalanceLine> question) {
        return Calculation.of("timeseries", name, "m3 or h", "upstream downstream step_minutes zone", in -> {
            BalanceSite above = BalanceSite.of("upstream", series(in, "upstream"), 0.02);
            BalanceSite below = BalanceSite.of("downstream", series(in, "downstream"), 0.02);
            return Books.sum(VolumeBalance.of(List.of(above), below).daily(ZoneId.of(in.text("zone"))), question);
        });
    }

    /** A sample in which -9999 stands for a value that is missing. */
    private static double[] values(Inputs in, String name) {
        return Arrays.stream(in.sample(name))
                .map(each -> each == -9999 ? Double.NaN : each)
                .toArray();
    }

    private static Series series(Inputs in, String name) {
        return RegularSeries.of(START, minutes(in.number("step_minutes")), values(in, name))
                .toSeries();
    }

    /** One local day of a record that is taken as a line, or as steps that hold. */
    private static Calculation day(String name, ToDoubleFunction<DailyTotal> question) {
        return Calculation.of("timeseries", name, "value times s", "values step_minutes start zone day hold?", in -> {
            DailyTotals rule = DailyTotals.in(ZoneId.of(in.text("zone")));
            List<DailyTotal> days = in.number("hold", 0) > 0
                    ? rule.totals(rate(in))
                    : rule.withBetweenReadings(BetweenReadings.LINEAR).totals(rate(in).toSeries());
            return question.applyAsDouble(days.get(in.integer("day")));
        });
    }

    /** All local days of a record in one number; of steps, or of readings that hold or are joined for as long as a gap. */
    private static Calculation days(String name, ToDoubleFunction<List<DailyTotal>> question) {
        String inputs = "values step_minutes start zone between gap_minutes least";
        return Calculation.of("timeseries", name, "as asked", inputs, in -> {
            DailyTotals rule = DailyTotals.in(ZoneId.of(in.text("zone"))).withMinimumCoverage(in.number("least"));
            if (in.number("gap_minutes") > 0) {
                rule = rule.withMaximumGap(minutes(in.number("gap_minutes")));
            }
            return question.applyAsDouble(
                    switch (in.text("between")) {
                        case "steps" -> rule.totals(rate(in));
                        case "hold" ->
                            rule.withBetweenReadings(BetweenReadings.HOLD).totals(rate(in).toSeries());
                        default -> rule.totals(rate(in).toSeries());
                    });
        });
    }

    private static RegularSeries rate(Inputs in) {
        return RegularSeries.of(
                Instant.parse(in.text("start")), minutes(in.number("step_minutes")), values(in, "values"));
    }

    private static Calculation sampling(String name, ToDoubleFunction<DaySampling> question) {
        return Calculation.of("timeseries", name, "share of a day, or a count", "values step_minutes", in -> {
            Series rate = series(in, "values");
            return question.applyAsDouble(
                    DaySampling.of(rate, DailyTotals.in(ZoneId.of("UTC")).totals(rate)));
        });
    }

    private static Duration minutes(double minutes) {
        return Duration.ofNanos(Math.round(minutes * 60e9));
    }
}
