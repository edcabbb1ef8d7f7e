package dev.runnel.verification.calculation;

import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.response.ResponseDoubt;
import dev.runnel.rainfall.response.ResponseMeasure;
import dev.runnel.rainfall.response.ResponseRule;
import dev.runnel.rainfall.response.StormResponse;
import dev.runnel.rainfall.response.StormResponses;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Responses to the storms of a record, and their change with time; rain in steps of 5 min, flow in steps of 15 min. */
final class StormResponseCalculations {
    private static final String RECORD =
            "rain flow dry area allowance held_minutes lag_minutes longest_minutes gap_minutes";

    private static final LastAnswer<StormResponses> LAST = new LastAnswer<>();

    private StormResponseCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "response.storm.value",
                        "as the measure",
                        " storm measure",
                        in -> measure(in).of(storm(in)).orElse(Double.NaN)),
                of(
                        "response.storm.sound",
                        "1",
                        " storm measure",
                        in -> measure(in).isSound(storm(in)) ? 1 : 0),
                of(
                        "response.storm.doubt",
                        "1",
                        " storm doubt",
                        in -> storm(in).doubts().contains(ResponseDoubt.valueOf(in.text("doubt"))) ? 1 : 0),
                of(
                        "response.trend.per-year",
                        "as the measure, a year",
                        " measure",
                        in -> responses(in).trend(measure(in)).perYear()),
                of(
                        "response.trend.lower",
                        "as the measure, a year",
                        " measure",
                        in -> responses(in).trend(measure(in)).line().lower()),
                of(
                        "response.trend.upper",
                        "as the measure, a year",
                        " measure",
                        in -> responses(in).trend(measure(in)).line().upper()),
                of(
                        "response.trend.p-value",
                        "1",
                        " measure",
                        in -> responses(in).trend(measure(in)).test().pValue()),
                of(
                        "response.trend.left-out",
                        "1",
                        " measure",
                        in -> responses(in).trend(measure(in)).leftOut()),
                of(
                        "response.change.shift",
                        "as the measure",
                        " measure minute",
                        in -> responses(in)
                                .change(measure(in), minute(in.number("minute")))
                                .comparison()
                                .shift()),
                of(
                        "response.change.left-out",
                        "1",
                        " measure minute",
                        in -> responses(in)
                                .change(measure(in), minute(in.number("minute")))
                                .leftOut()));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("rainfall", name, unit, RECORD + inputs, body);
    }

    private static StormResponse storm(Inputs in) {
        return responses(in).all().get(in.integer("storm"));
    }

    private static ResponseMeasure measure(Inputs in) {
        return ResponseMeasure.valueOf(in.text("measure"));
    }

    private static StormResponses responses(Inputs in) {
        return LAST.of(in, List.of(RECORD.split(" ")), () -> computed(in));
    }

    private static StormResponses computed(Inputs in) {
        RegularSeries rain = RegularSeries.of(RainInputs.START, Duration.ofMinutes(5), in.sample("rain"));
        Duration step = Duration.ofMinutes(15);
        return ResponseRule.ofArea(in.number("area"))
                .withAllowance(in.number("allowance"), minutes(in, "held_minutes"))
                .withLongestLag(minutes(in, "lag_minutes"))
                .withLongest(minutes(in, "longest_minutes"))
                .responses(
                        EventSeparation.of(minutes(in, "gap_minutes")).events(rain),
                        rain,
                        RegularSeries.of(RainInputs.START, step, in.sample("flow")),
                        RegularSeries.of(RainInputs.START, step, in.sample("dry")));
    }

    private static Instant minute(double minute) {
        return RainInputs.START.plus(Duration.ofNanos(Math.round(minute * 60e9)));
    }

    private static Duration minutes(Inputs in, String name) {
        return Duration.ofNanos(Math.round(in.number(name) * 60e9));
    }
}
