package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.TextState;
import dev.runnel.timeseries.change.ChangeSignal;
import dev.runnel.timeseries.change.CusumRule;
import dev.runnel.timeseries.change.EwmaRule;
import dev.runnel.timeseries.change.HampelRule;
import dev.runnel.timeseries.change.PageHinkleyRule;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** All signals of the tests for a change, and all wild values, of a record with missing readings, see {@link Books}. */
final class ChangeBookCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final String RECORD = "way minutes values ";

    private ChangeBookCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "change.book.count",
                        RECORD + "kind settings",
                        in -> signals(in).size()),
                of("change.book.time", RECORD + "kind settings", in -> Books.sum(signals(in), s -> minute(s.time()))),
                of("change.book.since", RECORD + "kind settings", in -> Books.sum(signals(in), s -> minute(s.since()))),
                of(
                        "change.book.side",
                        RECORD + "kind settings",
                        in -> Books.sum(signals(in), s -> s.side() == ChangeSignal.Side.UP ? 1 : 2)),
                of("change.book.statistic", RECORD + "kind settings", in -> Books.sum(signals(in), s -> s.statistic())),
                of("change.hampel-book.count", RECORD + "half limit least", in -> wild(in).size()),
                of(
                        "change.hampel-book.time",
                        RECORD + "half limit least",
                        in -> Books.sum(wild(in), w -> minute(w.time()))),
                of("change.hampel-book.value", RECORD + "half limit least", in -> Books.sum(wild(in), w -> w.value())),
                of(
                        "change.hampel-book.median",
                        RECORD + "half limit least",
                        in -> Books.sum(wild(in), w -> w.median())),
                of(
                        "change.hampel-book.scatter",
                        RECORD + "half limit least",
                        in -> Books.sum(wild(in), w -> w.scatter())),
                of(
                        "change.hampel-book.places",
                        "values half limit least",
                        in -> Books.sum(
                                IntStream.of(hampel(in).wildAmong(in.sample("values")))
                                        .boxed()
                                        .toList(),
                                place -> place)));
    }

    private static Calculation of(String name, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("timeseries", name, "1", inputs, body);
    }

    private static double minute(Instant time) {
        return Duration.between(START, time).toNanos() / 60e9;
    }

    private static List<Reading> readings(Inputs in) {
        double[] minutes = in.sample("minutes");
        double[] values = in.sample("values");
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            readings.add(Reading.of(START.plusNanos(Math.round(minutes[i] * 60e9)), values[i]));
        }
        return readings;
    }

    private static List<ChangeSignal> signals(Inputs in) {
        return Books.answers(rule(in), readings(in), in.text("way").equals("cut"));
    }

    private static Rule<Reading, ChangeSignal, TextState> rule(Inputs in) {
        double[] s = in.sample("settings");
        return switch (in.text("kind")) {
            case "cusum" -> CusumRule.ofReferenceAndDecision(s[1], s[2]).withTarget(s[0]);
            case "ewma" ->
                EwmaRule.ofWeightAndWidth(s[2], s[3]).withTarget(s[0]).withDeviation(s[1]);
            case "page-hinkley" -> PageHinkleyRule.ofSlackAndThreshold(s[0], s[1]);
            default ->
                throw new IllegalArgumentException("kind must be cusum, ewma or page-hinkley, was " + in.text("kind"));
        };
    }

    private static HampelRule hampel(Inputs in) {
        HampelRule rule = HampelRule.of(in.integer("half"), in.number("limit"));
        return in.number("least") > 0 ? rule.withLeastScatter(in.number("least")) : rule;
    }

    private static List<HampelRule.Wild> wild(Inputs in) {
        return Books.answers(hampel(in), readings(in), in.text("way").equals("cut"));
    }
}
