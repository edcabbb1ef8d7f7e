package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.quality.GoodDay;
import dev.runnel.timeseries.quality.GoodDays;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Days of readings of every quality, in zones whose days are longer and shorter. */
final class SeriesCornerCalculations {
    private SeriesCornerCalculations() {}

    static List<Calculation> all() {
        return List.of(
                day("expected", GoodDay::expected),
                day("usable", GoodDay::usable),
                day("poor", GoodDay::poor),
                day("suspect", GoodDay::suspect),
                day("missing", GoodDay::missing));
    }

    private static Calculation day(String name, ToDoubleFunction<GoodDay> question) {
        return Calculation.of(
                "timeseries",
                "quality.mixed-day." + name,
                "readings",
                "start minutes qualities zone day",
                in -> question.applyAsDouble(days(in).get(in.integer("day"))));
    }

    /** Each reading is its place; one that is missing has no value. */
    private static List<GoodDay> days(Inputs in) {
        Instant start = Instant.parse(in.text("start"));
        double[] minutes = in.sample("minutes");
        double[] codes = in.sample("qualities");
        long[] times = new long[minutes.length];
        double[] values = new double[minutes.length];
        byte[] qualities = new byte[minutes.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = Duration.between(Instant.EPOCH, start.plus(Duration.ofMinutes(Math.round(minutes[i]))))
                    .toNanos();
            qualities[i] = (byte) codes[i];
            values[i] = Quality.ofCode(qualities[i]) == Quality.MISSING ? Double.NaN : i;
        }
        return GoodDays.in(ZoneId.of(in.text("zone"))).of(Series.of(times, values, qualities));
    }
}
