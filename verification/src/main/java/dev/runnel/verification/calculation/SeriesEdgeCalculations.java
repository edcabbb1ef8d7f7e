package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Resample;
import dev.runnel.timeseries.Resampled;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.change.BeforeAfter;
import dev.runnel.timeseries.change.TheilSen;
import dev.runnel.timeseries.correction.Correction;
import dev.runnel.timeseries.correction.SiteVisit;
import dev.runnel.timeseries.correction.VisitComparison;
import dev.runnel.timeseries.correction.VisitDifference;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Visits, intervals, steps with gaps and figures of a whole series, see {@link Books}. */
final class SeriesEdgeCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final String VISITS = "visits minutes depths velocities depth_tolerance depth_share"
            + " velocity_tolerance velocity_share clock_seconds gap_minutes";
    private static final String STANDARD = "quantity hand monitor gap_minutes";
    private static final String SHARE = "from to other_from other_to";
    private static final String STEPS = "values step_minutes";
    private static final String POINTS = "minutes values";

    private SeriesEdgeCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "visits.differences",
                        "as compared",
                        VISITS,
                        in -> Books.sum(compared(in), each -> each.difference())),
                of(
                        "visits.compared",
                        "figures",
                        VISITS,
                        in -> differences(in).stream()
                                .filter(each -> each.isCompared())
                                .count()),
                of("visits.tolerances", "as compared", VISITS, in -> Books.sum(compared(in), each -> each.tolerance())),
                of("visits.beyond", "figures", VISITS, in -> Books.sum(compared(in), each -> each.isBeyond() ? 1 : 0)),
                of(
                        "visits.proposed.kinds",
                        "1",
                        VISITS,
                        in -> Books.sum(proposed(in), each -> each.kind().ordinal() + 1)),
                of("visits.proposed.values", "as proposed", VISITS, in -> Books.sum(proposed(in), Correction::value)),
                of(
                        "visits.proposed.ends",
                        "as proposed",
                        VISITS,
                        in -> Books.sum(proposed(in), Correction::valueAtEnd)),
                of(
                        "visits.proposed.from",
                        "min",
                        VISITS,
                        in -> Books.sum(
                                proposed(in), each -> minute(each.interval().start()))),
                of(
                        "visits.proposed.to",
                        "min",
                        VISITS,
                        in -> Books.sum(
                                proposed(in), each -> minute(each.interval().end()))),
                of(
                        "visits.standard.tolerance",
                        "as read",
                        STANDARD,
                        in -> standard(in).tolerance()),
                of(
                        "visits.standard.beyond",
                        "1 or 0",
                        STANDARD,
                        in -> standard(in).isBeyond() ? 1 : 0),
                of(
                        "visits.standard.compared",
                        "1 or 0",
                        STANDARD,
                        in -> standard(in).isCompared() ? 1 : 0),
                of(
                        "interval.share",
                        "1",
                        SHARE,
                        in -> interval(in, "from", "to").shareCoveredBy(interval(in, "other_from", "other_to"))),
                of(
                        "series.with-missing",
                        "as the readings",
                        STEPS + " " + "from to",
                        in -> known(regular(in).withMissing(interval(in, "from", "to")))),
                of(
                        "series.with-missing.steps",
                        "steps",
                        STEPS + " " + "from to",
                        in -> regular(in)
                                .withMissing(interval(in, "from", "to"))
                                .missing()),
                of(
                        "resample.steps.value",
                        "as the readings",
                        STEPS + " coarse statistic least",
                        in -> known(coarse(in).values())),
                of(
                        "resample.steps.coverage",
                        "1",
                        STEPS + " coarse statistic least",
                        in -> known(coarse(in).coverage())),
                of(
                        "statistics.minimum",
                        "of the sample",
                        "sample",
                        in -> Statistics.of(in.sample("sample")).minimum()),
                of(
                        "statistics.maximum",
                        "of the sample",
                        "sample",
                        in -> Statistics.of(in.sample("sample")).maximum()),
                of(
                        "statistics.missing",
                        "values",
                        "sample",
                        in -> Statistics.of(in.sample("sample")).missing()),
                of(
                        "trend.theil-sen.of-series.slope",
                        "a day",
                        POINTS,
                        in -> TheilSen.of(series(in)).slope()),
                of(
                        "trend.theil-sen.of-series.intercept",
                        "as the readings",
                        POINTS,
                        in -> TheilSen.of(series(in)).intercept()),
                of(
                        "trend.theil-sen.of-series.lower",
                        "a day",
                        POINTS,
                        in -> TheilSen.of(series(in)).lower()),
                of(
                        "trend.theil-sen.of-series.upper",
                        "a day",
                        POINTS,
                        in -> TheilSen.of(series(in)).upper()),
                of(
                        "trend.before-after.median-before",
                        "as the values",
                        POINTS + " at",
                        in -> beforeAfter(in).medianBefore()),
                of(
                        "trend.before-after.median-after",
                        "as the values",
                        POINTS + " at",
                        in -> beforeAfter(in).medianAfter()),
                of(
                        "trend.before-after.series-shift",
                        "as the values",
                        POINTS + " at",
                        in -> beforeAfter(in).shift()));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("timeseries", name, unit, inputs, body);
    }

    private static Instant at(double minute) {
        return START.plusNanos(Math.round(minute * 60e9));
    }

    private static double minute(Instant time) {
        return Duration.between(START, time).toNanos() / 60e9;
    }

    private static Interval interval(Inputs in, String from, String to) {
        return Interval.of(at(in.number(from)), at(in.number(to)));
    }

    private static double known(RegularSeries series) {
        List<Double> values = Arrays.stream(series.toValues()).boxed().toList();
        return Books.sum(values, value -> Double.isNaN(value) ? 0 : value);
    }

    private static RegularSeries regular(Inputs in) {
        return RegularSeries.of(START, step(in, "step_minutes"), in.sample("values"));
    }

    private static Duration step(Inputs in, String name) {
        return Duration.ofNanos(Math.round(in.number(name) * 60e9));
    }

    private static Resampled coarse(Inputs in) {
        Duration step = step(in, "coarse");
        Resample resample = switch (in.text("statistic")) {
            case "mean" -> Resample.mean(step);
            case "sum" -> Resample.sum(step);
            case "maximum" -> Resample.maximum(step);
            case "minimum" -> Resample.minimum(step);
            default -> Resample.last(step);
        };
        // 0 stands for the least share that each figure comes with.
        double least = in.number("least");
        return (least > 0 ? resample.withMinimumCoverage(least) : resample).applyWithCoverage(regular(in));
    }

    private static Series series(Inputs in) {
        return series(in.sample("minutes"), in.sample("values"));
    }

    private static Series series(double[] minutes, double[] values) {
        SeriesBuilder series = Series.builder();
        for (int i = 0; i < minutes.length; i++) {
            series.add(at(minutes[i]), values[i]);
        }
        return series.build();
    }

    private static BeforeAfter beforeAfter(Inputs in) {
        return BeforeAfter.of(series(in), at(in.number("at")));
    }

    private static List<SiteVisit> visits(Inputs in) {
        return SiteVisit.parse(in.text("visits").replace('|', '\n'));
    }

    private static VisitComparison comparison(Inputs in) {
        return VisitComparison.standard()
                .withDepthToleranceAndShare(in.number("depth_tolerance"), in.number("depth_share"))
                .withVelocityToleranceAndShare(in.number("velocity_tolerance"), in.number("velocity_share"))
                .withClockTolerance(Duration.ofNanos(Math.round(in.number("clock_seconds") * 1e9)))
                .withMaximumGap(step(in, "gap_minutes"));
    }

    private static List<VisitDifference> differences(Inputs in) {
        double[] minutes = in.sample("minutes");
        return comparison(in)
                .differences(
                        visits(in),
                        series(minutes, in.sample("depths")),
                        series(minutes, in.sample("velocities")),
                        Series.empty());
    }

    /** One figure read by hand in the middle of a gap of a record that says the same before and after it. */
    private static VisitDifference standard(Inputs in) {
        String quantity = in.text("quantity");
        double half = in.number("gap_minutes") / 2;
        Series monitor = series(new double[] {-half, half}, new double[] {in.number("monitor"), in.number("monitor")});
        List<SiteVisit> visits =
                SiteVisit.parse("time,author," + quantity + "\n" + START + ",somebody," + in.number("hand") + "\n");
        return VisitComparison.standard()
                .differences(visits, monitor, monitor, monitor)
                .get(0);
    }

    private static List<VisitDifference> compared(Inputs in) {
        return differences(in).stream().filter(VisitDifference::isCompared).toList();
    }

    private static List<Correction> proposed(Inputs in) {
        return comparison(in)
                .proposals(visits(in), differences(in), at(1_000_000))
                .list();
    }
}
