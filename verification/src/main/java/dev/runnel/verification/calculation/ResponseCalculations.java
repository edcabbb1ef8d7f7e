package dev.runnel.verification.calculation;

import dev.runnel.rainfall.response.Recession;
import dev.runnel.rainfall.response.ResponseLag;
import dev.runnel.rainfall.response.RunoffVolume;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Answers of a catchment to rain, records in steps of 10 min. */
final class ResponseCalculations {
    private ResponseCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("response.rain-volume", "m3", "rain area", in -> {
                    RegularSeries rain = series(in, "rain");
                    RegularSeries none = rain.map(depth -> 0);
                    return RunoffVolume.of(rain.interval(), rain, in.number("area"), none, none)
                            .rainM3();
                }),
                of("response.lag", "s", "rain flow longest", in -> seconds(lag(in).lag())),
                of("response.lag-correlation", "1", "rain flow longest", in -> lag(in).correlation()),
                of(
                        "response.recession-constant",
                        "s",
                        "flow",
                        in -> seconds(Recession.of(series(in, "flow")).constant())),
                of(
                        "response.recession-r-squared",
                        "1",
                        "flow",
                        in -> Recession.of(series(in, "flow")).rSquared()));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("rainfall", name, unit, inputs, body);
    }

    private static ResponseLag lag(Inputs in) {
        return ResponseLag.of(series(in, "rain"), series(in, "flow"), Duration.ofMinutes(in.integer("longest")));
    }

    private static RegularSeries series(Inputs in, String name) {
        return RegularSeries.of(RainInputs.START, Duration.ofMinutes(10), in.sample(name));
    }

    private static double seconds(Duration duration) {
        return duration.toNanos() / 1e9;
    }
}
