package dev.runnel.verification.calculation;

import dev.runnel.rainfall.gauge.LostTime;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** What the calculations of rain read from a row of a table. */
final class RainInputs {
    static final Instant START = Instant.parse("2001-01-01T00:00:00Z");

    private RainInputs() {}

    static Calculation rainfall(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("rainfall", name, unit, inputs, body);
    }

    static Duration seconds(Inputs in, String name) {
        return Duration.ofNanos(Math.round(in.number(name) * 1e9));
    }

    static Duration minutes(Inputs in, String name) {
        return Duration.ofNanos(Math.round(in.number(name) * 60e9));
    }

    static Series series(double[] values) {
        return RegularSeries.of(START, Duration.ofMinutes(1), values).toSeries();
    }

    static RegularSeries rain(Inputs in) {
        return RegularSeries.of(START, minutes(in, "step_minutes"), in.sample("depths"));
    }

    static TippingBucket bucket(Inputs in) {
        TippingBucket bucket = TippingBucket.ofTip(in.number("tip_mm"));
        return in.has("lost_seconds") && in.number("lost_seconds") > 0
                ? bucket.withCalibration(LostTime.ofSeconds(in.number("lost_seconds")))
                : bucket;
    }

    static Tips tips(Inputs in) {
        return Tips.of(Arrays.stream(in.sample("tip_seconds"))
                .mapToObj(second -> START.plusNanos(Math.round(second * 1e9)))
                .toList());
    }

    /** Gauges as {@code 1 2 3; 4 5 6}, named gauge 1, gauge 2 ... */
    static Map<String, RegularSeries> network(Inputs in, Duration step) {
        Map<String, RegularSeries> gauges = new LinkedHashMap<>();
        for (String gauge : in.text("gauges").split(";")) {
            double[] depths = Arrays.stream(gauge.strip().split(" "))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            gauges.put("gauge " + (gauges.size() + 1), RegularSeries.of(START, step, depths));
        }
        return gauges;
    }
}
