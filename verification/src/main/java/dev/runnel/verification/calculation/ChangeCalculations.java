package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.baseline.DayCurve;
import dev.runnel.timeseries.change.AverageRunLength;
import dev.runnel.timeseries.change.CusumRule;
import dev.runnel.timeseries.change.EwmaRule;
import dev.runnel.timeseries.change.HampelRule;
import dev.runnel.timeseries.change.PageHinkleyRule;
import dev.runnel.timeseries.change.Pettitt;
import dev.runnel.timeseries.change.RollingMedian;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** What is usual in a day; detectors of a change, and how long they take on average. */
final class ChangeCalculations {
    private static final Instant START = Instant.EPOCH;

    private ChangeCalculations() {}

    static List<Calculation> all() {
        String cusum = "values reading target reference decision";
        String ewma = "values reading target deviation weight width";
        return List.of(
                of("change.cusum.upper", cusum, in -> at(in, cusum(in).upper(in.sample("values")))),
                of("change.cusum.lower", cusum, in -> at(in, cusum(in).lower(in.sample("values")))),
                of("change.ewma.average", ewma, in -> at(in, ewma(in).averages(in.sample("values")))),
                of("change.ewma.upper-limit", "target deviation weight width", in -> ewma(in).upperLimit()),
                of("change.ewma.lower-limit", "target deviation weight width", in -> ewma(in).lowerLimit()),
                of(
                        "change.page-hinkley.upward",
                        "values reading slack threshold",
                        in -> at(
                                in,
                                PageHinkleyRule.ofSlackAndThreshold(in.number("slack"), in.number("threshold"))
                                        .upward(in.sample("values")))),
                of("change.hampel.wild", "values reading half limit", ChangeCalculations::wild),
                of("change.rolling-median", "values reading half", ChangeCalculations::median),
                of(
                        "baseline.day-curve.value",
                        "hours rest values hour off",
                        in -> curve(in).value(in.number("hour"), in.number("off") > 0)),
                of(
                        "baseline.day-curve.scatter",
                        "hours rest values",
                        in -> curve(in).scatter()),
                of(
                        "baseline.day-curve.explained",
                        "hours rest values",
                        in -> curve(in).explained()),
                of("change.pettitt.statistic", "sample", in -> pettitt(in).statistic()),
                of("change.pettitt.before", "sample", in -> pettitt(in).before()),
                of("change.pettitt.p-value", "sample", in -> pettitt(in).pValue()),
                of(
                        "change.run-length.cusum",
                        "reference decision shift",
                        in -> AverageRunLength.ofCusum(
                                CusumRule.ofReferenceAndDecision(in.number("reference"), in.number("decision")),
                                in.number("shift"))),
                of(
                        "change.run-length.cusum-one-side",
                        "reference decision shift",
                        in -> AverageRunLength.ofCusumOneSide(
                                CusumRule.ofReferenceAndDecision(in.number("reference"), in.number("decision")),
                                in.number("shift"))),
                of(
                        "change.run-length.ewma",
                        "weight width shift",
                        in -> AverageRunLength.ofEwma(
                                EwmaRule.ofWeightAndWidth(in.number("weight"), in.number("width")),
                                in.number("shift"))));
    }

    private static Calculation of(String name, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("timeseries", name, "1", inputs, body);
    }

    private static double at(Inputs in, double[] values) {
        return values[in.integer("reading")];
    }

    private static CusumRule cusum(Inputs in) {
        return CusumRule.ofReferenceAndDecision(in.number("reference"), in.number("decision"))
                .withTarget(in.number("target"));
    }

    private static EwmaRule ewma(Inputs in) {
        return EwmaRule.ofWeightAndWidth(in.number("weight"), in.number("width"))
                .withTarget(in.number("target"))
                .withDeviation(in.number("deviation"));
    }

    private static DayCurve curve(Inputs in) {
        double[] given = in.sample("rest");
        boolean[] rest = new boolean[given.length];
        for (int i = 0; i < rest.length; i++) {
            rest[i] = given[i] > 0;
        }
        return DayCurve.fit(in.sample("hours"), rest, in.sample("values"));
    }

    private static Pettitt pettitt(Inputs in) {
        return Pettitt.of(in.sample("sample"));
    }

    private static double median(Inputs in) {
        double[] values = in.sample("values");
        double[] medians = new double[values.length];
        RollingMedian.ofHalfWidth(in.integer("half")).medians(values, medians);
        return at(in, medians);
    }

    private static double wild(Inputs in) {
        List<Reading> readings = RegularSeries.of(START, Duration.ofMinutes(1), in.sample("values")).toSeries().stream()
                .toList();
        Instant time = START.plus(Duration.ofMinutes(in.integer("reading")));
        return HampelRule.of(in.integer("half"), in.number("limit")).over(readings).stream()
                        .anyMatch(wild -> wild.time().equals(time))
                ? 1
                : 0;
    }
}
