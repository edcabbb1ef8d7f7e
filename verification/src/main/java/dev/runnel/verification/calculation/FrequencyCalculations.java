package dev.runnel.verification.calculation;

import dev.runnel.rainfall.distribution.ConfidenceInterval;
import dev.runnel.rainfall.distribution.Distribution;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.Fit;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.Gumbel;
import dev.runnel.rainfall.distribution.LMoments;
import dev.runnel.rainfall.distribution.LikelihoodFit;
import dev.runnel.rainfall.distribution.PlottingPosition;
import dev.runnel.rainfall.distribution.SampleMoments;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** Distributions of extremes, their fits to samples and plotting positions. Families and methods by constant name. */
final class FrequencyCalculations {
    private static final String GIVEN = "family parameters";
    private static final String CRITICAL = "family method formula size significance draws?";
    private static final String PROFILE = "family sample years confidence";
    private static final String FITTED = "family method sample";

    private FrequencyCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "frequency.quantile",
                        "of the variate",
                        GIVEN + " probability",
                        in -> distribution(in).quantile(in.number("probability"))),
                of(
                        "frequency.quantile-of-exceedance",
                        "of the variate",
                        GIVEN + " exceedance",
                        in -> distribution(in).quantileOfExceedance(in.number("exceedance"))),
                of(
                        "frequency.non-exceedance",
                        "1",
                        GIVEN + " x",
                        in -> distribution(in).cdf(in.number("x"))),
                of(
                        "frequency.exceedance",
                        "1",
                        GIVEN + " x",
                        in -> distribution(in).exceedance(in.number("x"))),
                of(
                        "frequency.log-density",
                        "1",
                        GIVEN + " x",
                        in -> distribution(in).logDensity(in.number("x"))),
                of(
                        "frequency.lower-bound",
                        "of the variate",
                        GIVEN,
                        in -> distribution(in).lowerBound()),
                of(
                        "frequency.upper-bound",
                        "of the variate",
                        GIVEN,
                        in -> distribution(in).upperBound()),
                of(
                        "frequency.mean",
                        "of the variate",
                        GIVEN,
                        in -> distribution(in).mean()),
                of(
                        "frequency.variance",
                        "of the variate squared",
                        GIVEN,
                        in -> distribution(in).variance()),
                of(
                        "frequency.infinite",
                        "1 above, -1 below, 0 finite",
                        GIVEN + " moment",
                        in -> infinite(
                                in.text("moment").equals("mean")
                                        ? distribution(in).mean()
                                        : distribution(in).variance())),
                of(
                        "frequency.profile.level",
                        "of the variate",
                        PROFILE,
                        in -> profile(in).estimate()),
                of(
                        "frequency.profile.period",
                        "years",
                        "family sample level confidence",
                        in -> likelihood(in)
                                .returnPeriodByProfile(in.number("level"), in.number("confidence"))
                                .estimate()),
                of(
                        "frequency.profile.lower",
                        "of the variate",
                        PROFILE,
                        in -> profile(in).lower()),
                of(
                        "frequency.profile.upper",
                        "of the variate",
                        PROFILE,
                        in -> profile(in).upper()),
                of(
                        "frequency.gumbel.moments-error",
                        "of the variate",
                        "standard_deviation size years",
                        in -> Gumbel.momentsStandardError(
                                in.number("standard_deviation"), in.integer("size"), in.number("years"))),
                of(
                        "frequency.l-moment",
                        "of the variate",
                        GIVEN + " moment",
                        in -> moment(distribution(in).lMoments(), in.text("moment"))),
                of(
                        "frequency.sample-l-moment",
                        "of the variate",
                        "sample moment",
                        in -> moment(LMoments.ofSample(in.sample("sample")), in.text("moment"))),
                of("frequency.sample-moment", "of the variate", "sample moment", FrequencyCalculations::sampleMoment),
                of("frequency.fit.parameter", "of the variate", FITTED + " parameter", in -> parameter(in)),
                of(
                        "frequency.fit.quantile",
                        "of the variate",
                        FITTED + " years",
                        in -> fit(in).returnLevel(in.number("years"))),
                of(
                        "frequency.fit.log-likelihood",
                        "1",
                        "family sample",
                        in -> likelihood(in).logLikelihood()),
                of(
                        "frequency.fit.standard-error",
                        "of the variate",
                        "family sample parameter",
                        in -> named(likelihood(in).standardErrors(), in.text("parameter"))),
                of(
                        "frequency.fit.quantile-standard-error",
                        "of the variate",
                        "family sample years",
                        in -> likelihood(in).returnLevelStandardError(in.number("years"))),
                of(
                        "frequency.critical.plot-correlation",
                        "1",
                        CRITICAL,
                        in -> CriticalValues.plotCorrelation(in).plotCorrelation()),
                of(
                        "frequency.critical.anderson-darling",
                        "1",
                        CRITICAL,
                        in -> CriticalValues.andersonDarling(in).andersonDarling()),
                of("frequency.plotting-positions", "sum of places times positions", "formula size", in -> {
                    double sum = 0;
                    double[] all = PlottingPosition.valueOf(constant(in.text("formula")))
                            .nonExceedances(in.integer("size"));
                    for (int i = 0; i < all.length; i++) {
                        sum += (i + 1) * all[i];
                    }
                    return sum;
                }),
                of(
                        "frequency.plotting-position",
                        "1",
                        "formula rank size",
                        in -> PlottingPosition.valueOf(constant(in.text("formula")))
                                .nonExceedance(in.integer("rank"), in.integer("size"))));
    }

    /** Which way a moment grows without limit. */
    static double infinite(double moment) {
        return Double.isInfinite(moment) ? Math.signum(moment) : 0;
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("rainfall", name, unit, inputs, body);
    }

    private static Distribution distribution(Inputs in) {
        return family(in).with(in.sample("parameters"));
    }

    static DistributionFamily family(Inputs in) {
        return DistributionFamily.named(in.text("family"));
    }

    private static Fit fit(Inputs in) {
        return Fit.of(family(in), FitMethod.valueOf(constant(in.text("method"))), in.sample("sample"));
    }

    private static double parameter(Inputs in) {
        return named(fit(in).distribution().parameters(), in.text("parameter"));
    }

    private static LikelihoodFit likelihood(Inputs in) {
        return LikelihoodFit.of(family(in), in.sample("sample"));
    }

    private static ConfidenceInterval profile(Inputs in) {
        return likelihood(in).returnLevelByProfile(in.number("years"), in.number("confidence"));
    }

    static double named(Map<String, Double> values, String name) {
        Double value = values.get(name);
        if (value == null) {
            throw new IllegalArgumentException(
                    "parameter must be one of " + values.keySet() + ", was \"" + name + "\"");
        }
        return value;
    }

    private static double moment(LMoments moments, String name) {
        return switch (name) {
            case "lambda1" -> moments.lambda1();
            case "lambda2" -> moments.lambda2();
            case "tau" -> moments.tau();
            case "tau3" -> moments.tau3();
            case "tau4" -> moments.tau4();
            default ->
                throw new IllegalArgumentException("moment must be lambda1, lambda2, tau, tau3 or tau4, was " + name);
        };
    }

    private static double sampleMoment(Inputs in) {
        SampleMoments moments = SampleMoments.of(in.sample("sample"));
        return switch (in.text("moment")) {
            case "mean" -> moments.mean();
            case "sd" -> moments.standardDeviation();
            case "skew" -> moments.skew();
            default -> throw new IllegalArgumentException("moment must be mean, sd or skew, was " + in.text("moment"));
        };
    }

    static String constant(String text) {
        return text.toUpperCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
    }
}
