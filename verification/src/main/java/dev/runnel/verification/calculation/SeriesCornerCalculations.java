package dev.runnel.verification.calculation;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.balance.MeasuredVolume;
import dev.runnel.timeseries.quality.GoodDay;
import dev.runnel.timeseries.quality.GoodDays;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Days of readings of every quality, in zones whose days are longer and shorter, and volumes between readings. */
final class SeriesCornerCalculations {
    private SeriesCornerCalculations() {}

    static List<Calculation> all() {
        return List.of(
                day("expected", GoodDay::expected),
                day("usable", GoodDay::usable),
                day("poor", GoodDay::poor),
                day("suspect", GoodDay::suspect),
                day("missing", GoodDay::missing),
                volume("volume.between", "m3", MeasuredVolume::measured),
                volume("volume.between.coverage", "1", MeasuredVolume::coverage));
    }

    private static Calculation day(String name, ToDoubleFunction<GoodDay> question) {
        return Calculation.of(
                "timeseries",
                "quality.mixed-day." + name,
                "readings",
                "start minutes qualities zone day values?",
                in -> question.applyAsDouble(days(in).get(in.integer("day"))));
    }

    private static Calculation volume(String name, String unit, ToDoubleFunction<MeasuredVolume> question) {
        return Calculation.of("timeseries", name, unit, "times values from to gap", in -> {
            double[] seconds = in.sample("times");
            long[] times = new long[seconds.length];
            Arrays.setAll(times, i -> nanos(seconds[i]));
            Interval interval = Interval.of(
                    EpochNanos.toInstant(nanos(in.number("from"))), EpochNanos.toInstant(nanos(in.number("to"))));
            return question.applyAsDouble(MeasuredVolume.of(
                    Series.of(times, in.sample("values")), interval, Duration.ofNanos(nanos(in.number("gap")))));
        });
    }

    private static long nanos(double seconds) {
        return Math.round(1e9 * seconds);
    }

    /** Where no values are given each reading is its place; one that is missing has no value. */
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
        double[] given = in.has("values") ? in.sample("values") : values;
        return GoodDays.in(ZoneId.of(in.text("zone"))).of(Series.of(times, given, qualities));
    }
}
