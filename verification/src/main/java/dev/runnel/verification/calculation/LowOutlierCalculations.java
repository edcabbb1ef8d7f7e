package dev.runnel.verification.calculation;

import dev.runnel.rainfall.distribution.Bootstrap;
import dev.runnel.rainfall.distribution.ConditionalProbability;
import dev.runnel.rainfall.distribution.ExpectedMoments;
import dev.runnel.rainfall.distribution.GrubbsBeck;
import dev.runnel.rainfall.distribution.LowOutliers;
import dev.runnel.rainfall.distribution.SampleMoments;
import dev.runnel.rainfall.distribution.SkewEstimate;
import dev.runnel.rainfall.distribution.WeightedSkew;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Low outliers, zeros and skew of annual maxima. */
final class LowOutlierCalculations {
    private static final LastAnswer<Bootstrap.Interval> LAST_DRAWN = new LastAnswer<>();

    private LowOutlierCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("critical-deviate", "size", in -> GrubbsBeck.criticalDeviate(in.integer("size"))),
                of(
                        "grubbs-beck.low",
                        "sample",
                        in -> GrubbsBeck.of(in.sample("sample")).lowThreshold()),
                of(
                        "grubbs-beck.high",
                        "sample",
                        in -> GrubbsBeck.of(in.sample("sample")).highThreshold()),
                of(
                        "grubbs-beck.count-low",
                        "sample",
                        in -> GrubbsBeck.of(in.sample("sample")).lowOutliers().length),
                of(
                        "grubbs-beck.count-high",
                        "sample",
                        in -> GrubbsBeck.of(in.sample("sample")).highOutliers().length),
                of("count", "sample", in -> LowOutliers.of(in.sample("sample")).count()),
                of(
                        "threshold",
                        "sample",
                        in -> LowOutliers.of(in.sample("sample")).threshold()),
                of(
                        "p-value",
                        "size rank statistic",
                        in -> LowOutliers.pValue(in.integer("size"), in.integer("rank"), in.number("statistic"))),
                of(
                        "sample-p-value",
                        "sample rank",
                        in -> LowOutliers.of(in.sample("sample")).pValue(in.integer("rank"))),
                of(
                        "statistic",
                        "sample rank",
                        in -> LowOutliers.of(in.sample("sample")).statistic(in.integer("rank"))),
                of(
                        "conditional.parameter",
                        "sample lowest parameter",
                        in -> FrequencyCalculations.named(
                                conditional(in).distribution().parameters(), in.text("parameter"))),
                of(
                        "conditional.level",
                        "sample lowest years",
                        in -> conditional(in).returnLevel(in.number("years"))),
                of(
                        "expected-moments.parameter",
                        "sample parameter",
                        in -> FrequencyCalculations.named(
                                expected(in).distribution().parameters(), in.text("parameter"))),
                of("expected-moments.level", "sample years", in -> expected(in).returnLevel(in.number("years"))),
                of(
                        "expected-moments.drawn-lower",
                        "sample years replicates confidence",
                        in -> drawn(in).lower()),
                of(
                        "expected-moments.drawn-upper",
                        "sample years replicates confidence",
                        in -> drawn(in).upper()),
                of("skew.error", "sample region region_error", in -> skew(in).stationMeanSquareError()),
                of("skew.weighted", "sample region region_error", in -> skew(in).skew()),
                of(
                        "skew.error-17b",
                        "skew years",
                        in -> WeightedSkew.meanSquareError(in.number("skew"), in.integer("years"))),
                of(
                        "skew.weighted-17b",
                        "skew years region region_error",
                        in -> weighted(in).skew()),
                of(
                        "skew.weighted-error-17b",
                        "skew years region region_error",
                        in -> weighted(in).meanSquareError()));
    }

    private static Calculation of(String name, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("rainfall", "low-outliers." + name, "of the variate", inputs, body);
    }

    private static ConditionalProbability conditional(Inputs in) {
        return ConditionalProbability.of(in.number("lowest"), in.sample("sample"));
    }

    /** Limits of a level by years drawn from the fit, all of them known. */
    private static Bootstrap.Interval drawn(Inputs in) {
        return LAST_DRAWN.of(
                in,
                List.of("sample", "years", "replicates", "confidence"),
                () -> ExpectedMoments.builder()
                        .known(in.sample("sample"))
                        .fit()
                        .returnLevel(
                                in.number("years"),
                                Bootstrap.of(in.integer("replicates"), 1).withConfidence(in.number("confidence"))));
    }

    private static ExpectedMoments expected(Inputs in) {
        return ExpectedMoments.of(LowOutliers.of(in.sample("sample")));
    }

    private static WeightedSkew weighted(Inputs in) {
        double skew = in.number("skew");
        return WeightedSkew.of(
                SkewEstimate.ofSkewAndMeanSquareError(skew, WeightedSkew.meanSquareError(skew, in.integer("years"))),
                SkewEstimate.ofSkewAndMeanSquareError(in.number("region"), in.number("region_error")));
    }

    private static WeightedSkew skew(Inputs in) {
        double[] logs = Arrays.stream(in.sample("sample")).map(Math::log10).toArray();
        return WeightedSkew.of(
                SampleMoments.of(logs),
                SkewEstimate.ofSkewAndMeanSquareError(in.number("region"), in.number("region_error")));
    }
}
