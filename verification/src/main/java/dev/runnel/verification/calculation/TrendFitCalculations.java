package dev.runnel.verification.calculation;

import dev.runnel.rainfall.distribution.TrendFit;
import dev.runnel.rainfall.distribution.TrendIn;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Extremes with a trend; values are of the years 1, 2, 3 and so on. */
final class TrendFitCalculations {
    private TrendFitCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("log-likelihood", in -> fit(in).logLikelihood()),
                of("location-slope", in -> fit(in).locationSlope()),
                of("scale-slope", in -> fit(in).logScaleSlope()),
                of("level", in -> fit(in).at(in.sample("sample").length).returnLevel(50)),
                of("statistic", in -> test(in).statistic()),
                of("p-value", in -> test(in).pValue()));
    }

    private static Calculation of(String name, ToDoubleFunction<Inputs> body) {
        return Calculation.of("rainfall", "trend-fit." + name, "of the variate", "family trend sample", body);
    }

    private static TrendFit fit(Inputs in) {
        return fit(in, TrendIn.valueOf(FrequencyCalculations.constant(in.text("trend"))));
    }

    private static TrendFit fit(Inputs in, TrendIn trend) {
        double[] sample = in.sample("sample");
        double[] years = new double[sample.length];
        Arrays.setAll(years, i -> i + 1.0);
        return TrendFit.of(FrequencyCalculations.family(in), trend, years, sample);
    }

    private static TrendFit.LikelihoodRatio test(Inputs in) {
        return fit(in).against(fit(in, TrendIn.NOTHING));
    }
}
