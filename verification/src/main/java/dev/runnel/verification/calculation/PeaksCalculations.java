package dev.runnel.verification.calculation;

import dev.runnel.rainfall.distribution.Bootstrap;
import dev.runnel.rainfall.distribution.ConfidenceInterval;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.GeneralizedPareto;
import dev.runnel.rainfall.distribution.LikelihoodFit;
import dev.runnel.rainfall.frequency.PeaksFit;
import dev.runnel.rainfall.frequency.PeaksOverThreshold;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Peaks over a known threshold by maximum likelihood, with the limits of their levels. */
final class PeaksCalculations {
    private static final String PEAKS = "sample threshold record ";

    private static final String DRAWN = PEAKS + "years replicates confidence";

    private PeaksCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "peaks.parameter",
                        PEAKS + "parameter",
                        in -> FrequencyCalculations.named(fit(in).distribution().parameters(), in.text("parameter"))),
                of(
                        "peaks.parameter-error",
                        PEAKS + "parameter",
                        in -> FrequencyCalculations.named(likelihood(in).standardErrors(), in.text("parameter"))),
                of("peaks.level", PEAKS + "years", in -> fit(in).returnLevel(in.number("years"))),
                of(
                        "peaks.level-by-method",
                        PEAKS + "method years",
                        in -> fit(in, FitMethod.valueOf(in.text("method"))).returnLevel(in.number("years"))),
                of("peaks.drawn.lower", DRAWN, in -> drawn(in).lower()),
                of("peaks.drawn.upper", DRAWN, in -> drawn(in).upper()),
                of("peaks.drawn.error", DRAWN, in -> drawn(in).standardError()),
                of("peaks.level-error", PEAKS + "years", in -> fit(in).returnLevelStandardError(in.number("years"))),
                of(
                        "peaks.delta.lower",
                        PEAKS + "years confidence",
                        in -> delta(in).lower()),
                of(
                        "peaks.delta.upper",
                        PEAKS + "years confidence",
                        in -> delta(in).upper()),
                of(
                        "peaks.profile.lower",
                        PEAKS + "years confidence",
                        in -> profile(in).lower()),
                of(
                        "peaks.profile.upper",
                        PEAKS + "years confidence",
                        in -> profile(in).upper()));
    }

    /** Limits of a level by peaks drawn for as long as the record, fitted by L-moments. */
    private static Bootstrap.Interval drawn(Inputs in) {
        return PeaksOverThreshold.ofThresholdAndYears(in.number("threshold"), in.number("record"), in.sample("sample"))
                .fit(FitMethod.L_MOMENTS)
                .returnLevel(
                        in.number("years"),
                        Bootstrap.of(in.integer("replicates"), 1).withConfidence(in.number("confidence")));
    }

    private static Calculation of(String name, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("rainfall", name, "of the variate", inputs, body);
    }

    private static PeaksFit fit(Inputs in) {
        return fit(in, FitMethod.MAXIMUM_LIKELIHOOD);
    }

    private static PeaksFit fit(Inputs in, FitMethod method) {
        return PeaksOverThreshold.ofThresholdAndYears(in.number("threshold"), in.number("record"), in.sample("sample"))
                .fit(method);
    }

    private static LikelihoodFit likelihood(Inputs in) {
        return LikelihoodFit.of(GeneralizedPareto.above(in.number("threshold")), in.sample("sample"));
    }

    private static ConfidenceInterval delta(Inputs in) {
        return fit(in).returnLevelByDelta(in.number("years"), in.number("confidence"));
    }

    private static ConfidenceInterval profile(Inputs in) {
        return fit(in).returnLevelByProfile(in.number("years"), in.number("confidence"));
    }
}
