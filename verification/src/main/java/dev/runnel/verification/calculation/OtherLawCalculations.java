package dev.runnel.verification.calculation;

import dev.runnel.rainfall.distribution.Distribution;
import dev.runnel.rainfall.distribution.ExpectedMoments;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.LMoments;
import dev.runnel.rainfall.distribution.LogNormal;
import dev.runnel.rainfall.distribution.PearsonIII;
import dev.runnel.rainfall.distribution.SkewEstimate;
import dev.runnel.rainfall.distribution.Wakeby;
import dev.runnel.rainfall.distribution.WeightedSkew;
import dev.runnel.rainfall.frequency.PeaksFit;
import dev.runnel.rainfall.frequency.PeaksOverThreshold;
import dev.runnel.rainfall.frequency.YearRule;
import dev.runnel.rainfall.gauge.ImpossibleRain;
import dev.runnel.rainfall.gauge.RainGrain;
import dev.runnel.rainfall.gauge.SilentEnds;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.time.Month;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** Laws beside the usual families, peaks found in a record, years and seasons, and gauges that fell silent. */
final class OtherLawCalculations {
    private static final String WAKEBY = "xi alpha beta gamma delta";
    private static final String RUNS = "values threshold step_minutes separation_minutes";
    private static final String PEAKS = "sample threshold record level";

    private OtherLawCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("wakeby.quantile", WAKEBY + " p", in -> wakeby(in).quantile(in.number("p"))),
                of(
                        "wakeby.quantile-of-exceedance",
                        WAKEBY + " p",
                        in -> wakeby(in).quantileOfExceedance(in.number("p"))),
                of("wakeby.cdf", WAKEBY + " x", in -> wakeby(in).cdf(in.number("x"))),
                of("wakeby.exceedance", WAKEBY + " x", in -> wakeby(in).exceedance(in.number("x"))),
                of("wakeby.log-density", WAKEBY + " x", in -> wakeby(in).logDensity(in.number("x"))),
                of("wakeby.upper-bound", WAKEBY, in -> wakeby(in).upperBound()),
                of("wakeby.mean", WAKEBY, in -> wakeby(in).mean()),
                of("wakeby.variance", WAKEBY, in -> wakeby(in).variance()),
                of(
                        "wakeby.infinite",
                        WAKEBY + " moment",
                        in -> FrequencyCalculations.infinite(
                                in.text("moment").equals("mean")
                                        ? wakeby(in).mean()
                                        : wakeby(in).variance())),
                of(
                        "wakeby.l-moment",
                        WAKEBY + " moment",
                        in -> moment(wakeby(in).lMoments(), in)),
                of(
                        "wakeby.of-l-moments",
                        "lambda parameter",
                        in -> FrequencyCalculations.named(
                                Wakeby.ofLMoments(in.sample("lambda")).parameters(), in.text("parameter"))),
                of("law.own.mean", "scale", in -> Rayleigh.of(in).mean()),
                of("law.own.variance", "scale", in -> Rayleigh.of(in).variance()),
                of("law.own.exceedance", "scale x", in -> Rayleigh.of(in).exceedance(in.number("x"))),
                of("law.own.level", "scale years", in -> Rayleigh.of(in).returnLevel(in.number("years"))),
                of(
                        "law.own.l-moment",
                        "scale moment",
                        in -> moment(Rayleigh.of(in).lMoments(), in)),
                of(
                        "law.log-normal.l-moment",
                        "mu sigma moment",
                        in -> moment(
                                LogNormal.of(in.number("mu"), in.number("sigma"))
                                        .lMoments(),
                                in)),
                of(
                        "law.pearson-iii.lower-bound",
                        "mu sigma skew",
                        in -> pearson(in).lowerBound()),
                of(
                        "law.pearson-iii.upper-bound",
                        "mu sigma skew",
                        in -> pearson(in).upperBound()),
                of(
                        "low-outliers.skew.error-griffis",
                        "skew years",
                        in -> WeightedSkew.meanSquareErrorGriffis(in.number("skew"), in.integer("years"))),
                of(
                        "low-outliers.expected-moments.weighted-level",
                        "sample low low_years mark mark_years region region_error years",
                        in -> expected(in)
                                .distributionWeighted(SkewEstimate.ofSkewAndMeanSquareError(
                                        in.number("region"), in.number("region_error")))
                                .returnLevel(in.number("years"))),
                of(
                        "low-outliers.expected-moments.censored-level",
                        "sample low low_years mark mark_years years",
                        in -> expected(in).returnLevel(in.number("years"))),
                of(
                        "low-outliers.expected-moments.unknown-level",
                        "sample unknown_years years",
                        in -> ExpectedMoments.builder()
                                .known(in.sample("sample"))
                                .between(0, Double.POSITIVE_INFINITY, in.integer("unknown_years"))
                                .fit()
                                .returnLevel(in.number("years"))),
                of("peaks.runs.count", RUNS, in -> runs(in).peaks().length),
                of("peaks.runs.sum", RUNS, in -> Arrays.stream(runs(in).peaks()).sum()),
                of("peaks.runs.rate", RUNS, in -> runs(in).ratePerYear()),
                of("peaks.runs.apart-by-gaps", RUNS, in -> runs(in).apartByGaps()),
                of("peaks.runs.mean-excess", RUNS + " level", in -> runs(in).meanExcess(in.number("level"))),
                of("peaks.return-period", PEAKS, in -> fit(in).returnPeriod(in.number("level"))),
                of(
                        "peaks.return-period.profile-lower",
                        PEAKS + " confidence",
                        in -> fit(in).returnPeriodByProfile(in.number("level"), in.number("confidence"))
                                .lower()),
                of(
                        "peaks.return-period.profile-upper",
                        PEAKS + " confidence",
                        in -> fit(in).returnPeriodByProfile(in.number("level"), in.number("confidence"))
                                .upper()),
                of(
                        "year.season.start-day",
                        "first last zone year",
                        in -> day(season(in).start())),
                of(
                        "year.season.end-day",
                        "first last zone year",
                        in -> day(season(in).end())),
                of("gauge.silent.count", "tips record_minutes", in -> silent(in).size()),
                of(
                        "gauge.silent.minutes",
                        "tips record_minutes which",
                        in -> minutes(silent(in).get(in.integer("which")).duration())),
                of(
                        "gauge.silent.steps.count",
                        "depths step_minutes",
                        in -> silentSteps(in).size()),
                of(
                        "gauge.silent.steps.minutes",
                        "depths step_minutes which",
                        in -> minutes(silentSteps(in).get(in.integer("which")).duration())),
                of(
                        "gauge.impossible.steps",
                        "depths step_minutes",
                        in -> impossible(in).steps()),
                of(
                        "gauge.impossible.mm",
                        "depths step_minutes",
                        in -> impossible(in).depthMm()),
                of(
                        "gauge.impossible.others",
                        "depths step_minutes",
                        in -> impossible(in).others().sum()),
                of(
                        "gauge.impossible.first",
                        "depths step_minutes",
                        in -> since(impossible(in).first().orElseThrow())),
                of("gauge.grain.found", "depths step_minutes", in -> grain(in).isPresent() ? 1 : 0),
                of(
                        "gauge.grain.mm",
                        "depths step_minutes",
                        in -> grain(in).orElseThrow().depthMm()),
                of("gauge.grain.after", "depths step_minutes", in -> change(in).depthMm()),
                of(
                        "gauge.grain.since",
                        "depths step_minutes",
                        in -> since(change(in).time())),
                of(
                        "gauge.grain.inches",
                        "depths step_minutes tip",
                        in -> grain(in).orElseThrow().isTipInInches(in.number("tip")) ? 1 : 0),
                of(
                        "gauge.grain.counts",
                        "depths step_minutes tip",
                        in -> grain(in).orElseThrow().isCountOf(in.number("tip")) ? 1 : 0));
    }

    private static ImpossibleRain impossible(Inputs in) {
        return ImpossibleRain.of(steps(in));
    }

    private static Optional<RainGrain> grain(Inputs in) {
        return RainGrain.of(steps(in));
    }

    private static RainGrain.Change change(Inputs in) {
        return grain(in).orElseThrow().change().orElseThrow();
    }

    private static double since(Instant time) {
        return minutes(Duration.between(RainInputs.START, time));
    }

    private static Calculation of(String name, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("rainfall", name, "of the variate", inputs, body);
    }

    /** A law of which only what must be written is written, to ask what follows from it. */
    private record Rayleigh(double scale) implements Distribution {
        static Rayleigh of(Inputs in) {
            return new Rayleigh(in.number("scale"));
        }

        @Override
        public double cdf(double x) {
            return x <= 0 ? 0 : -Math.expm1(-x * x / (2 * scale * scale));
        }

        @Override
        public double quantile(double probability) {
            return scale * Math.sqrt(-2 * Math.log1p(-probability));
        }

        @Override
        public double logDensity(double x) {
            return x <= 0 ? Double.NEGATIVE_INFINITY : Math.log(x / (scale * scale)) - x * x / (2 * scale * scale);
        }

        @Override
        public double lowerBound() {
            return 0;
        }

        @Override
        public Map<String, Double> parameters() {
            return Map.of("sigma", scale);
        }
    }

    private static Wakeby wakeby(Inputs in) {
        return Wakeby.of(
                in.number("xi"), in.number("alpha"), in.number("beta"), in.number("gamma"), in.number("delta"));
    }

    private static PearsonIII pearson(Inputs in) {
        return PearsonIII.of(in.number("mu"), in.number("sigma"), in.number("skew"));
    }

    private static double moment(LMoments moments, Inputs in) {
        return switch (in.integer("moment")) {
            case 1 -> moments.lambda1();
            case 2 -> moments.lambda2();
            case 3 -> moments.tau3();
            default -> moments.tau4();
        };
    }

    private static ExpectedMoments expected(Inputs in) {
        return ExpectedMoments.builder()
                .known(in.sample("sample"))
                .below(in.number("low"), in.integer("low_years"))
                .between(in.number("low"), in.number("mark"), in.integer("mark_years"))
                .fit();
    }

    private static PeaksOverThreshold runs(Inputs in) {
        RegularSeries values =
                RegularSeries.of(RainInputs.START, minutes(in.number("step_minutes")), in.sample("values"));
        return PeaksOverThreshold.from(values, in.number("threshold"), minutes(in.number("separation_minutes")));
    }

    private static PeaksFit fit(Inputs in) {
        return PeaksOverThreshold.ofThresholdAndYears(in.number("threshold"), in.number("record"), in.sample("sample"))
                .fit(FitMethod.MAXIMUM_LIKELIHOOD);
    }

    private static Interval season(Inputs in) {
        return YearRule.season(Month.of(in.integer("first")), Month.of(in.integer("last")))
                .withZone(ZoneId.of(in.text("zone")))
                .interval(in.integer("year"));
    }

    private static double day(Instant time) {
        return time.getEpochSecond() / 86_400.0;
    }

    private static List<Interval> silent(Inputs in) {
        double[] minutes = in.sample("tips");
        Instant[] tips = new Instant[minutes.length];
        for (int i = 0; i < tips.length; i++) {
            tips[i] = RainInputs.START.plus(minutes(minutes[i]));
        }
        return SilentEnds.standard()
                .of(Tips.of(tips), Interval.of(RainInputs.START, minutes(in.number("record_minutes"))));
    }

    private static List<Interval> silentSteps(Inputs in) {
        return SilentEnds.standard().of(steps(in));
    }

    private static RegularSeries steps(Inputs in) {
        double[] depths = in.sample("depths");
        for (int i = 0; i < depths.length; i++) {
            depths[i] = depths[i] < 0 ? Double.NaN : depths[i];
        }
        return RegularSeries.of(RainInputs.START, minutes(in.number("step_minutes")), depths);
    }

    private static Duration minutes(double minutes) {
        return Duration.ofNanos(Math.round(minutes * 60e9));
    }

    private static double minutes(Duration duration) {
        return duration.toNanos() / 60e9;
    }
}
