package dev.runnel.verification.calculation;

import dev.runnel.timeseries.change.MannKendall;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Tests for a trend. */
final class TrendCalculations {
    private TrendCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("trend.mann-kendall.s", MannKendall::s),
                of("trend.mann-kendall.variance", MannKendall::variance),
                of("trend.mann-kendall.tau", MannKendall::tau),
                of("trend.mann-kendall.p-value", MannKendall::pValue));
    }

    private static Calculation of(String name, ToDoubleFunction<MannKendall> question) {
        return Calculation.of(
                "timeseries", name, "1", "sample", in -> question.applyAsDouble(MannKendall.of(in.sample("sample"))));
    }
}
