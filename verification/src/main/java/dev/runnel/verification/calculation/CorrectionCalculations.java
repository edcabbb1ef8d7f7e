package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.correction.CorrectedSeries;
import dev.runnel.timeseries.correction.Correction;
import dev.runnel.timeseries.correction.Corrections;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Corrections of readings a minute apart; corrections are given as "kind from to value value", minutes from the start. */
final class CorrectionCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");

    private CorrectionCalculations() {}

    static List<Calculation> all() {
        String inputs = "values reading corrections";
        return List.of(
                Calculation.of(
                        "timeseries",
                        "correction.value",
                        "as the readings",
                        inputs,
                        in -> corrected(in).series().value(in.integer("reading"))),
                Calculation.of(
                        "timeseries",
                        "correction.minute",
                        "min",
                        inputs,
                        in -> Duration.between(START, corrected(in).series().time(in.integer("reading")))
                                        .toNanos()
                                / 60e9),
                Calculation.of(
                        "timeseries",
                        "correction.altered",
                        "1",
                        "values corrections",
                        in -> corrected(in).altered()),
                Calculation.of(
                        "timeseries",
                        "correction.without",
                        "as the readings",
                        inputs + " without",
                        in -> corrected(in)
                                .without(Arrays.stream(in.sample("without"))
                                        .mapToInt(each -> (int) each)
                                        .toArray())
                                .series()
                                .value(in.integer("reading"))));
    }

    private static CorrectedSeries corrected(Inputs in) {
        Series raw = RegularSeries.of(START, Duration.ofMinutes(1), in.sample("values"))
                .toSeries();
        List<Correction> list = new ArrayList<>();
        for (String each : in.text("corrections").split(";")) {
            list.add(correction(each.strip().split(" ")));
        }
        return Corrections.of(list).apply("x", raw);
    }

    private static Correction correction(String... words) {
        Interval interval = Interval.of(at(words[1]), at(words[2]));
        double value = Double.parseDouble(words[3]);
        return switch (words[0]) {
            case "offset" -> Correction.offset("x", interval, value);
            case "drift" -> Correction.drift("x", interval, value, Double.parseDouble(words[4]));
            case "factor" -> Correction.factor("x", interval, value);
            case "shift" -> Correction.clockShift("x", interval, Duration.ofNanos(Math.round(value * 1e9)));
            default -> throw new IllegalArgumentException("correction must be known, was " + words[0]);
        };
    }

    private static Instant at(String minute) {
        return START.plus(Duration.ofNanos(Math.round(Double.parseDouble(minute) * 60e9)));
    }
}
