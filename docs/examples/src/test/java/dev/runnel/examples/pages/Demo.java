package dev.runnel.examples.pages;

import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Random;

/** An invented year at two minutes, with gaps and storms whose peaks are known. */
final class Demo {
    static final Instant START = Instant.parse("2025-01-01T00:00:00Z");
    static final int SIZE = 262_800;
    static final int STORMS = 46;
    static final Duration STEP = Duration.ofMinutes(2);

    private Demo() {}

    static Series level() {
        Random random = new Random(7);
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < SIZE; i++) {
            if (i % 50_000 < 700) {
                continue;
            }
            double value = 0.1 + 0.03 * Math.sin(2 * Math.PI * i / 720) + 0.002 * random.nextGaussian();
            builder.add(START.plus(STEP.multipliedBy(i)), isPeak(i) ? 0.3 + 0.001 * (i % 97) : value);
        }
        return builder.build();
    }

    /** One reading only stands out: what a drawing that thins readings would lose. */
    static boolean isPeak(int i) {
        return i % (SIZE / STORMS) == 3_000 && i / (SIZE / STORMS) < STORMS;
    }

    static RegularSeries rain() {
        double[] values = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            values[i] = i % 5_000 < 60 ? 0.2 : 0;
        }
        values[100] = Double.NaN;
        return RegularSeries.of(START, STEP, values);
    }

    static SitePage page() {
        RecordRows rows = RecordRows.in(ZoneId.of("Europe/London"))
                .withAmounts("Rain, mm", rain(), 0.01)
                .withReadings("Level, mm", level(), 1000, 1)
                .withReadings("Velocity, m/s", level().map(value -> 4 * value), 1, 0.001)
                .withReadings("Flow, l/s", level().map(value -> value * value), 1000, 0.1)
                .withMark(new RecordRows.Mark(
                        RecordRows.Kind.FINDING,
                        Instant.parse("2025-06-01T00:00:00Z"),
                        Instant.parse("2025-06-20T00:00:00Z"),
                        "",
                        1,
                        "a finding with </script> in it"));
        return SitePage.of("Marram Bay <demo>", "a year & two minutes")
                .withPoint(new SitePage.Point("Finding 1: something moved", 1))
                .withFigure(new SitePage.Figure("Dry weather flow", "16.6 l/s", "+- 1.4", "dry-weather-profile"))
                .withRecord(rows);
    }
}
