package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.quality.ClimatologyCheck;
import dev.runnel.timeseries.quality.FlatLineCheck;
import dev.runnel.timeseries.quality.GapCheck;
import dev.runnel.timeseries.quality.LoneReadingCheck;
import dev.runnel.timeseries.quality.PairCheck;
import dev.runnel.timeseries.quality.QualityCheck;
import dev.runnel.timeseries.quality.QualityFlags;
import dev.runnel.timeseries.quality.RangeCheck;
import dev.runnel.timeseries.quality.RateOfChangeCheck;
import dev.runnel.timeseries.quality.ReadingPair;
import dev.runnel.timeseries.quality.RepeatedDayCheck;
import dev.runnel.timeseries.quality.SharedSpikeCheck;
import dev.runnel.timeseries.quality.SpikeCheck;
import dev.runnel.timeseries.quality.TimingCheck;
import dev.runnel.timeseries.quality.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.time.Month;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The verdicts on all readings of a record with uneven times, missing and suspect readings, see {@link Books}. */
final class QualityBookCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final String RECORD = "way times values suspect ";

    private QualityBookCalculations() {}

    static List<Calculation> all() {
        return List.of(
                check(
                        "range",
                        "lowest highest usual_lowest usual_highest",
                        in -> RangeCheck.of(in.number("lowest"), in.number("highest"))
                                .withUsual(in.number("usual_lowest"), in.number("usual_highest"))),
                check("spike", "unusual fail gap_seconds sparing", QualityBookCalculations::spike),
                check(
                        "flat-line",
                        "unusual fail tolerance",
                        in -> FlatLineCheck.of(in.integer("unusual"), in.integer("fail"), in.number("tolerance"))),
                check(
                        "timing",
                        "interval_seconds tolerance_seconds",
                        in -> TimingCheck.of(seconds(in, "interval_seconds"), seconds(in, "tolerance_seconds"))),
                check(
                        "season",
                        "zone from to lowest highest",
                        in -> ClimatologyCheck.in(ZoneId.of(in.text("zone")))
                                .withMonths(
                                        Month.of(in.integer("from")),
                                        Month.of(in.integer("to")),
                                        in.number("lowest"),
                                        in.number("highest"))),
                check(
                        "rate-of-change",
                        "change over_seconds gap_seconds",
                        in -> RateOfChangeCheck.of(in.number("change"), seconds(in, "over_seconds"))
                                .withMaximumGap(seconds(in, "gap_seconds"))),
                check(
                        "repeated-day",
                        "lag_seconds least_seconds",
                        in -> repeated(RepeatedDayCheck.of(seconds(in, "least_seconds")), seconds(in, "lag_seconds"))),
                Calculation.of(
                        "timeseries",
                        "quality.book.shared-spike",
                        "sum of places times flags",
                        RECORD + "companions unusual fail gap_seconds sparing",
                        in -> Books.sum(beside(SharedSpikeCheck.of(spike(in)), in), Verdict::code)),
                Calculation.of(
                        "timeseries",
                        "quality.book.lone-reading",
                        "sum of places times flags",
                        RECORD + "companions above gap_seconds",
                        in -> Books.sum(
                                beside(LoneReadingCheck.of(in.number("above"), seconds(in, "gap_seconds")), in),
                                Verdict::code)),
                Calculation.of(
                        "timeseries",
                        "quality.book.flags-of",
                        "readings",
                        RECORD + "unusual fail gap_seconds sparing verdict",
                        in -> spike(in).apply(series(in)).count(Verdict.valueOf(in.text("verdict")))),
                Calculation.of(
                        "timeseries",
                        "quality.book.gaps",
                        "s",
                        RECORD + "gap_seconds",
                        in -> Books.sum(gaps(in), gap -> gap.duration().toNanos() / 1e9)));
    }

    private static Calculation check(String name, String inputs, Function<Inputs, QualityCheck> check) {
        return Calculation.of(
                "timeseries",
                "quality.book." + name,
                "sum of places times flags",
                RECORD + inputs,
                in -> Books.sum(verdicts(check.apply(in), in), Verdict::code));
    }

    /** A lag of a day is left as it comes. */
    private static RepeatedDayCheck repeated(RepeatedDayCheck check, Duration lag) {
        return lag.equals(Duration.ofDays(1)) ? check : check.withLag(lag);
    }

    private static SpikeCheck spike(Inputs in) {
        SpikeCheck check = SpikeCheck.of(in.number("unusual"), in.number("fail"));
        // A gap longer than any record is left as it comes.
        check = in.number("gap_seconds") < 1e9 ? check.withMaximumGap(seconds(in, "gap_seconds")) : check;
        return in.number("sparing") > 0 ? check.withNeighboursSpared() : check;
    }

    private static List<Verdict> beside(PairCheck check, Inputs in) {
        Series series = series(in);
        double[] companions = in.sample("companions");
        Series companion = Series.of(series.toEpochNanos(), companions);
        if (in.text("way").equals("whole")) {
            QualityFlags flags = check.apply(series, companion);
            return IntStream.range(0, series.size()).mapToObj(flags::verdict).toList();
        }
        List<ReadingPair> pairs = IntStream.range(0, series.size())
                .mapToObj(i -> ReadingPair.of(series.get(i), companion.get(i)))
                .toList();
        return Books.answers(check, pairs, in.text("way").equals("cut")).stream()
                .map(flag -> flag.verdict())
                .toList();
    }

    private static List<Verdict> verdicts(QualityCheck check, Inputs in) {
        Series series = series(in);
        if (in.text("way").equals("whole")) {
            QualityFlags flags = check.apply(series);
            return IntStream.range(0, series.size()).mapToObj(flags::verdict).toList();
        }
        return Books.answers(check, readings(series), in.text("way").equals("cut")).stream()
                .map(flag -> flag.verdict())
                .toList();
    }

    private static List<Interval> gaps(Inputs in) {
        GapCheck check = GapCheck.longerThan(seconds(in, "gap_seconds"));
        return in.text("way").equals("whole")
                ? check.over(series(in))
                : Books.answers(check, readings(series(in)), in.text("way").equals("cut"));
    }

    private static List<Reading> readings(Series series) {
        List<Reading> readings = new ArrayList<>();
        series.forEach(readings::add);
        return readings;
    }

    private static Duration seconds(Inputs in, String name) {
        return Duration.ofNanos(Math.round(in.number(name) * 1e9));
    }

    private static Series series(Inputs in) {
        double[] times = in.sample("times");
        double[] values = in.sample("values");
        Set<Integer> suspect =
                Arrays.stream(in.sample("suspect")).mapToObj(d -> (int) d).collect(Collectors.toSet());
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < times.length; i++) {
            Instant time = START.plusNanos(Math.round(times[i] * 1e9));
            if (suspect.contains(i)) {
                builder.add(new Reading(time, values[i], Quality.SUSPECT));
            } else {
                builder.add(time, values[i]);
            }
        }
        return builder.build();
    }
}
