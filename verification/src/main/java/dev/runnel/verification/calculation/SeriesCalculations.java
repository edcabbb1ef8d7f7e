package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.BetweenReadings;
import dev.runnel.timeseries.Resample;
import dev.runnel.timeseries.Resampled;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;

/** Irregular readings, given by their minutes, on other clocks; -9999 stands for a value that is missing. */
final class SeriesCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final double NONE = -9999;

    private SeriesCalculations() {}

    static List<Calculation> all() {
        String resample = "times values step_minutes gap_minutes between statistic step";
        return List.of(
                Calculation.of(
                        "timeseries",
                        "resample.value",
                        "as the readings",
                        resample,
                        in -> resampled(in).values().value(in.integer("step"))),
                Calculation.of(
                        "timeseries",
                        "resample.coverage",
                        "1",
                        resample,
                        in -> resampled(in).coverage().value(in.integer("step"))),
                Calculation.of(
                        "timeseries",
                        "resample.size",
                        "1",
                        "times values step_minutes gap_minutes between statistic",
                        in -> resampled(in).values().size()),
                Calculation.of(
                        "timeseries",
                        "alignment.value",
                        "as the readings",
                        "times values minute rule limit_minutes",
                        in -> aligned(in)));
    }

    private static Resampled resampled(Inputs in) {
        Duration step = minutes(in.number("step_minutes"));
        Resample rule = switch (in.text("statistic")) {
            case "mean" -> Resample.mean(step);
            case "sum" -> Resample.sum(step);
            case "maximum" -> Resample.maximum(step);
            case "minimum" -> Resample.minimum(step);
            case "last" -> Resample.last(step);
            default -> throw new IllegalArgumentException("statistic must be known");
        };
        return rule.withMinimumCoverage(0)
                .withMaximumGap(minutes(in.number("gap_minutes")))
                .withBetweenReadings(BetweenReadings.valueOf(in.text("between").toUpperCase(Locale.ROOT)))
                .applyWithCoverage(series(in));
    }

    private static double aligned(Inputs in) {
        Duration limit = minutes(in.number("limit_minutes"));
        Alignment rule = switch (in.text("rule")) {
            case "exact" -> Alignment.exact();
            case "hold" -> Alignment.holdLast(limit);
            case "linear" -> Alignment.linear(limit);
            default -> throw new IllegalArgumentException("rule must be known");
        };
        Series clock = Series.builder()
                .add(START.plus(minutes(in.number("minute"))), 0)
                .build();
        double value = rule.align(clock, series(in)).value(0);
        return Double.isNaN(value) ? NONE : value;
    }

    private static Series series(Inputs in) {
        double[] times = in.sample("times");
        double[] values = in.sample("values");
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < times.length; i++) {
            builder.add(START.plus(minutes(times[i])), values[i] == NONE ? Double.NaN : values[i]);
        }
        return builder.build();
    }

    private static Duration minutes(double minutes) {
        return Duration.ofNanos(Math.round(minutes * 60e9));
    }
}
