package dev.runnel.verification.calculation;

import dev.runnel.timeseries.change.BeforeAfter;
import dev.runnel.timeseries.change.LeastSquaresLine;
import dev.runnel.timeseries.change.MannKendall;
import dev.runnel.timeseries.change.RepeatedMedian;
import dev.runnel.timeseries.change.TheilSen;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Tests for a trend, and lines through values over time. */
final class TrendCalculations {
    private TrendCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("trend.mann-kendall.s", MannKendall::s),
                of("trend.mann-kendall.variance", MannKendall::variance),
                of("trend.mann-kendall.tau", MannKendall::tau),
                of("trend.mann-kendall.tau-error", MannKendall::tauStandardError),
                of("trend.mann-kendall.p-value", MannKendall::pValue),
                line("trend.theil-sen.slope", in -> sen(in).slope()),
                line("trend.theil-sen.intercept", in -> sen(in).intercept()),
                line("trend.theil-sen.lower", in -> sen(in).lower()),
                line("trend.theil-sen.upper", in -> sen(in).upper()),
                line("trend.repeated-median.slope", in -> siegel(in).slope()),
                line("trend.repeated-median.intercept", in -> siegel(in).intercept()),
                line("trend.least-squares.slope", in -> squares(in).slope()),
                line("trend.least-squares.intercept", in -> squares(in).intercept()),
                line("trend.least-squares.slope-error", in -> squares(in).slopeStandardError()),
                line("trend.least-squares.lower", in -> squares(in).lower()),
                line("trend.least-squares.upper", in -> squares(in).upper()),
                line("trend.least-squares.p-value", in -> squares(in).pValue()),
                groups("trend.before-after.statistic", BeforeAfter::statistic),
                groups("trend.before-after.z", BeforeAfter::z),
                groups("trend.before-after.p-value", BeforeAfter::pValue),
                groups("trend.before-after.shift", BeforeAfter::shift),
                groups("trend.before-after.lower", BeforeAfter::lower),
                groups("trend.before-after.upper", BeforeAfter::upper));
    }

    private static Calculation of(String name, ToDoubleFunction<MannKendall> question) {
        return Calculation.of(
                "timeseries", name, "1", "sample", in -> question.applyAsDouble(MannKendall.of(in.sample("sample"))));
    }

    private static Calculation line(String name, ToDoubleFunction<Inputs> body) {
        return Calculation.of("timeseries", name, "1", "times sample confidence", body);
    }

    private static Calculation groups(String name, ToDoubleFunction<BeforeAfter> question) {
        return Calculation.of(
                "timeseries",
                name,
                "as the values",
                "before after confidence",
                in -> question.applyAsDouble(
                        BeforeAfter.of(in.sample("before"), in.sample("after"), in.number("confidence"))));
    }

    private static TheilSen sen(Inputs in) {
        return TheilSen.of(in.sample("times"), in.sample("sample"), in.number("confidence"));
    }

    private static RepeatedMedian siegel(Inputs in) {
        return RepeatedMedian.of(in.sample("times"), in.sample("sample"));
    }

    private static LeastSquaresLine squares(Inputs in) {
        return LeastSquaresLine.of(in.sample("times"), in.sample("sample"), in.number("confidence"));
    }
}
