package dev.runnel.verification.calculation;

import static dev.runnel.verification.calculation.RainInputs.rainfall;

import dev.runnel.rainfall.distribution.Bootstrap;
import dev.runnel.rainfall.distribution.Distribution;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.Fit;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.GoodnessOfFit;
import dev.runnel.rainfall.distribution.LMoments;
import dev.runnel.rainfall.distribution.Normal;
import dev.runnel.rainfall.distribution.Outlier;
import dev.runnel.rainfall.distribution.Parameter;
import dev.runnel.rainfall.distribution.PlottingPosition;
import dev.runnel.rainfall.distribution.TrendFit;
import dev.runnel.rainfall.distribution.TrendIn;
import java.util.List;

/** Laws beside samples: how well they fit, which value is far off, what a trend and what drawing again makes uncertain. */
final class SampleLawCalculations {
    private static final String DRAWN_MOMENT = "sample replicates confidence";
    private static final String LAW = "family parameters formula sample";
    private static final String OUTLIER = "significance sample";
    private static final String TREND = "family trend times sample";
    private static final String DRAWN = "family sample replicates confidence";

    private SampleLawCalculations() {}

    static List<Calculation> all() {
        return List.of(
                rainfall("law.plot-correlation", "1", LAW, in -> measures(in).plotCorrelation()),
                rainfall("law.anderson-darling", "1", LAW, in -> measures(in).andersonDarling()),
                rainfall("law.kolmogorov-smirnov", "1", LAW, in -> measures(in).kolmogorovSmirnov()),
                rainfall(
                        "law.l-kurtosis-distance",
                        "1",
                        "family parameters sample",
                        in -> GoodnessOfFit.lKurtosisDistance(law(in), LMoments.ofSample(in.sample("sample")))),
                rainfall("outlier.place", "1", OUTLIER, in -> outlier(in).index()),
                rainfall("outlier.statistic", "1", OUTLIER, in -> outlier(in).statistic()),
                rainfall("outlier.critical", "1", OUTLIER, in -> outlier(in).critical()),
                rainfall(
                        "outlier.found",
                        "1 or 0",
                        OUTLIER,
                        in -> Outlier.find(in.number("significance"), in.sample("sample"))
                                        .isPresent()
                                ? 1
                                : 0),
                rainfall(
                        "trend-fit.location-slope-error",
                        "of the variate",
                        TREND,
                        in -> trend(in).locationSlopeStandardError()),
                rainfall(
                        "trend-fit.scale-slope-error",
                        "1",
                        TREND,
                        in -> trend(in).logScaleSlopeStandardError()),
                rainfall(
                        "wakeby.fitted",
                        "of the variate",
                        "sample parameter",
                        in -> FrequencyCalculations.named(
                                Fit.of(DistributionFamily.WAKEBY, FitMethod.L_MOMENTS, in.sample("sample"))
                                        .distribution()
                                        .parameters(),
                                in.text("parameter"))),
                rainfall(
                        "drawn.level-error",
                        "of the variate",
                        DRAWN + " years",
                        in -> drawnLevel(in).standardError()),
                rainfall(
                        "drawn.level-lower",
                        "of the variate",
                        DRAWN + " years",
                        in -> drawnLevel(in).lower()),
                rainfall(
                        "drawn.level-upper",
                        "of the variate",
                        DRAWN + " years",
                        in -> drawnLevel(in).upper()),
                rainfall(
                        "drawn.fourth-lower",
                        "1",
                        DRAWN_MOMENT,
                        in -> drawnFourth(in).lower()),
                rainfall(
                        "drawn.fourth-upper",
                        "1",
                        DRAWN_MOMENT,
                        in -> drawnFourth(in).upper()),
                rainfall(
                        "drawn.period-lower",
                        "years",
                        DRAWN + " value",
                        in -> drawnPeriod(in).lower()),
                rainfall(
                        "drawn.period-upper",
                        "years",
                        DRAWN + " value",
                        in -> drawnPeriod(in).upper()),
                rainfall(
                        "drawn.significance",
                        "1",
                        "family sample replicates",
                        in -> Bootstrap.of(in.integer("replicates"), 1)
                                .significance(fit(in), in.sample("sample"))
                                .value()),
                rainfall(
                        "drawn.significance-failed",
                        "1",
                        "family sample replicates",
                        in -> Bootstrap.of(in.integer("replicates"), 1)
                                .significance(fit(in), in.sample("sample"))
                                .failed()));
    }

    private static Distribution law(Inputs in) {
        return FrequencyCalculations.family(in).with(in.sample("parameters"));
    }

    private static GoodnessOfFit measures(Inputs in) {
        return GoodnessOfFit.of(
                law(in),
                PlottingPosition.valueOf(FrequencyCalculations.constant(in.text("formula"))),
                in.sample("sample"));
    }

    private static Outlier outlier(Inputs in) {
        return Outlier.furthest(in.number("significance"), in.sample("sample"));
    }

    private static TrendFit trend(Inputs in) {
        return TrendFit.of(
                FrequencyCalculations.family(in),
                TrendIn.valueOf(FrequencyCalculations.constant(in.text("trend"))),
                in.sample("times"),
                in.sample("sample"));
    }

    private static Fit fit(Inputs in) {
        return Fit.of(FrequencyCalculations.family(in), FitMethod.L_MOMENTS, in.sample("sample"));
    }

    private static Bootstrap resampling(Inputs in) {
        return Bootstrap.of(in.integer("replicates"), 1)
                .withConfidence(in.number("confidence"))
                .withResampling();
    }

    private static Bootstrap.Interval drawnLevel(Inputs in) {
        return resampling(in).returnLevel(fit(in), in.sample("sample"), in.number("years"));
    }

    /** Of a law whose median is the fourth L-moment ratio of the sample. */
    private static Bootstrap.Interval drawnFourth(Inputs in) {
        DistributionFamily ofFourth = DistributionFamily.of("FOURTH", p -> Normal.of(p[0], 1), Parameter.location("mu"))
                .withLMoments(moments -> Normal.of(moments.tau4(), 1));
        double[] sample = in.sample("sample");
        return resampling(in).returnLevel(Fit.of(ofFourth, FitMethod.L_MOMENTS, sample), sample, 2);
    }

    private static Bootstrap.Interval drawnPeriod(Inputs in) {
        return resampling(in).returnPeriod(fit(in), in.sample("sample"), in.number("value"));
    }
}
