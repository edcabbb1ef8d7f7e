package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.quality.AttenuatedSignalCheck;
import dev.runnel.timeseries.quality.DeadSensorCheck;
import dev.runnel.timeseries.quality.DeviationRateCheck;
import dev.runnel.timeseries.quality.FlatLineCheck;
import dev.runnel.timeseries.quality.LostEchoCheck;
import dev.runnel.timeseries.quality.MultivariateCheck;
import dev.runnel.timeseries.quality.NeighbourCheck;
import dev.runnel.timeseries.quality.PairCheck;
import dev.runnel.timeseries.quality.QualityCheck;
import dev.runnel.timeseries.quality.RangeCheck;
import dev.runnel.timeseries.quality.RateOfChangeCheck;
import dev.runnel.timeseries.quality.RelationCheck;
import dev.runnel.timeseries.quality.RepeatedDayCheck;
import dev.runnel.timeseries.quality.SpikeCheck;
import dev.runnel.timeseries.quality.ZeroWithDepthCheck;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;

/** Quality checks on readings a minute apart; the answer is the code of the verdict on one reading. */
final class QualityCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final String READING = "values reading ";

    private QualityCalculations() {}

    static List<Calculation> all() {
        return List.of(
                check(
                        "quality.range",
                        "lowest highest",
                        in -> RangeCheck.of(in.number("lowest"), in.number("highest"))),
                check(
                        "quality.spike",
                        "suspect_above fail_above sparing?",
                        in -> in.number("sparing", 0) > 0 ? spike(in).withNeighboursSpared() : spike(in)),
                check(
                        "quality.flat-line",
                        "suspect_count fail_count tolerance",
                        in -> FlatLineCheck.of(
                                in.integer("suspect_count"), in.integer("fail_count"), in.number("tolerance"))),
                check(
                        "quality.rate-of-change",
                        "change over_minutes",
                        in -> RateOfChangeCheck.of(in.number("change"), minutes(in, "over_minutes"))),
                check(
                        "quality.rate-of-change-in-deviations",
                        "deviations window_minutes",
                        in -> DeviationRateCheck.of(in.number("deviations"), minutes(in, "window_minutes"))),
                check(
                        "quality.attenuated-signal",
                        "window_minutes suspect_below fail_below",
                        in -> AttenuatedSignalCheck.of(
                                minutes(in, "window_minutes"), in.number("suspect_below"), in.number("fail_below"))),
                check(
                        "quality.lost-echo",
                        "value jump gap_minutes",
                        in -> LostEchoCheck.ofValueAndJump(
                                in.number("value"), in.number("jump"), minutes(in, "gap_minutes"))),
                check(
                        "quality.repeated-day",
                        "lag_minutes least_minutes",
                        in -> RepeatedDayCheck.of(minutes(in, "least_minutes")).withLag(minutes(in, "lag_minutes"))),
                pair(
                        "quality.neighbour",
                        "suspect_above fail_above",
                        in -> NeighbourCheck.of(in.number("suspect_above"), in.number("fail_above"))),
                pair(
                        "quality.multivariate",
                        "deviations companion_deviations window_minutes",
                        in -> MultivariateCheck.ofJumpAboveAndStayBelow(
                                in.number("deviations"),
                                in.number("companion_deviations"),
                                minutes(in, "window_minutes"))),
                pair(
                        "quality.zero-with-depth",
                        "depth_above fail_after_minutes",
                        in -> ZeroWithDepthCheck.of(in.number("depth_above"), minutes(in, "fail_after_minutes"))),
                pair(
                        "quality.dead-sensor",
                        "window_minutes stands_below moves_above",
                        in -> DeadSensorCheck.ofStandBelowAndMoveAbove(
                                minutes(in, "window_minutes"), in.number("stands_below"), in.number("moves_above"))),
                pair(
                        "quality.relation",
                        "band_companions band_lowest band_highest",
                        in -> RelationCheck.of(
                                in.sample("band_companions"), in.sample("band_lowest"), in.sample("band_highest"))));
    }

    private static SpikeCheck spike(Inputs in) {
        return SpikeCheck.of(in.number("suspect_above"), in.number("fail_above"));
    }

    private static Duration minutes(Inputs in, String name) {
        return Duration.ofNanos(Math.round(in.number(name) * 60e9));
    }

    private static Calculation check(String name, String inputs, Function<Inputs, QualityCheck> check) {
        return Calculation.of(
                "timeseries",
                name,
                "flag",
                READING + inputs,
                in -> check.apply(in)
                        .apply(series(in.sample("values")))
                        .verdict(in.integer("reading"))
                        .code());
    }

    private static Calculation pair(String name, String inputs, Function<Inputs, PairCheck> check) {
        return Calculation.of(
                "timeseries",
                name,
                "flag",
                READING + "companion " + inputs,
                in -> check.apply(in)
                        .apply(series(in.sample("values")), series(in.sample("companion")))
                        .verdict(in.integer("reading"))
                        .code());
    }

    private static Series series(double[] values) {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < values.length; i++) {
            builder.add(START.plusSeconds(60L * i), values[i]);
        }
        return builder.build();
    }
}
