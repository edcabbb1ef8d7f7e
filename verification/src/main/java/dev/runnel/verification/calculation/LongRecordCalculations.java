package dev.runnel.verification.calculation;

import dev.runnel.rainfall.ddf.EventRarity;
import dev.runnel.rainfall.distribution.Bootstrap;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.Fit;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.frequency.AnnualMaxima;
import dev.runnel.rainfall.frequency.DurationPeaks;
import dev.runnel.rainfall.frequency.PeaksOverThreshold;
import dev.runnel.rainfall.frequency.ScaledDdf;
import dev.runnel.rainfall.frequency.YearRule;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.verification.oracle.InventedRecord;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/**
 * From a long record to the rarity of its storms: annual maxima, fits, limits, depth-duration-frequency. The record is
 * the invented one of thirty years; annual maxima that are already known come as a table with the column {@code year} and
 * a column {@code d} with minutes for each duration.
 */
final class LongRecordCalculations {
    private static final List<Duration> DURATIONS = List.of(10, 20, 30, 60, 120, 360, 720, 1440).stream()
            .map(Duration::ofMinutes)
            .toList();

    private LongRecordCalculations() {}

    /** Made when first asked for, and then kept. */
    private static final class Held {
        static final RegularSeries RECORD = InventedRecord.tenMinutes();
        static final AnnualMaxima RAW = AnnualMaxima.from(RECORD, DURATIONS, YearRule.calendar());
        static final AnnualMaxima MAXIMA = RAW.withClockCorrection();
        static final Map<List<Object>, Bootstrap.Interval> LIMITS = KeptAnswers.map();
        static final DurationPeaks PEAKS =
                DurationPeaks.from(RECORD, DURATIONS, 3, Duration.ofHours(6)).withClockCorrection();
        static final ScaledDdf SCALED = ScaledDdf.of(MAXIMA, DistributionFamily.GEV, FitMethod.L_MOMENTS);
        static final List<RainfallEvent> LARGEST_FIRST =
                EventSeparation.of(Duration.ofHours(6)).withPeakDurations(DURATIONS).events(RECORD).stream()
                        .sorted(Comparator.comparingDouble(RainfallEvent::depthMm)
                                .reversed())
                        .toList();
    }

    static List<Calculation> all() {
        return List.of(
                of("long-record.annual-maximum", "mm", "year minutes", LongRecordCalculations::annualMaximum),
                of(
                        "long-record.excluded-coverage",
                        "1",
                        "position",
                        in -> Held.RAW
                                .excludedYears()
                                .get(in.integer("position"))
                                .coverage()),
                of("long-record.events", "1", "", in -> Held.LARGEST_FIRST.size()),
                of(
                        "long-record.fit.parameter",
                        "of the variate",
                        "minutes family method parameter",
                        in -> FrequencyCalculations.named(fit(in).distribution().parameters(), in.text("parameter"))),
                of(
                        "long-record.fit.quantile",
                        "mm",
                        "minutes family method years",
                        in -> fit(in).returnLevel(in.number("years"))),
                of(
                        "long-record.limit.lower",
                        "mm",
                        "minutes years",
                        in -> limits(in).lower()),
                of(
                        "long-record.limit.upper",
                        "mm",
                        "minutes years",
                        in -> limits(in).upper()),
                of(
                        "long-record.limit.error",
                        "mm",
                        "minutes years",
                        in -> limits(in).standardError()),
                of("long-record.scaled-ddf.theta", "h", "", in -> Held.SCALED.thetaHours()),
                of("long-record.scaled-ddf.eta", "1", "", in -> Held.SCALED.eta()),
                of(
                        "long-record.scaled-ddf.depth",
                        "mm",
                        "minutes years",
                        in -> Held.SCALED.depthMm(minutes(in), in.number("years"))),
                of(
                        "long-record.peaks.threshold",
                        "mm",
                        "minutes",
                        in -> peaks(in).threshold()),
                of("long-record.peaks.count", "1", "minutes", in -> peaks(in).peaks().length),
                of(
                        "long-record.peaks.quantile",
                        "mm",
                        "minutes years",
                        in -> peaks(in).fit(FitMethod.L_MOMENTS).returnLevel(in.number("years"))),
                of(
                        "long-record.event.depth",
                        "mm",
                        "rank minutes",
                        in -> rarity(in).peak().depthMm()),
                of(
                        "long-record.event.return-period",
                        "years",
                        "rank minutes",
                        in -> rarity(in).returnPeriod().years()),
                of(
                        "maxima.scaled-ddf.theta",
                        "h",
                        "maxima family method",
                        in -> scaled(in).thetaHours()),
                of(
                        "maxima.scaled-ddf.eta",
                        "1",
                        "maxima family method",
                        in -> scaled(in).eta()),
                of(
                        "maxima.scaled-ddf.worst-mean",
                        "%",
                        "maxima family method",
                        in -> scaled(in).worstMeanPercent()),
                of(
                        "maxima.scaled-ddf.depth",
                        "mm",
                        "maxima family method minutes years",
                        in -> scaled(in).depthMm(minutes(in), in.number("years"))),
                of(
                        "maxima.table.depth",
                        "mm",
                        "maxima family method minutes years",
                        in -> known(in.text("maxima"))
                                .table(family(in), method(in), 2, 5, 10, 20, 50, 100)
                                .depthMm(minutes(in), in.number("years"))));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("rainfall", name, unit, inputs, body);
    }

    private static Duration minutes(Inputs in) {
        return Duration.ofMinutes(in.integer("minutes"));
    }

    private static DistributionFamily family(Inputs in) {
        return DistributionFamily.named(in.text("family"));
    }

    private static FitMethod method(Inputs in) {
        return FitMethod.valueOf(FrequencyCalculations.constant(in.text("method")));
    }

    private static double annualMaximum(Inputs in) {
        int at = Held.RAW.years().indexOf(in.integer("year"));
        if (at < 0) {
            throw new IllegalArgumentException("year must be one of " + Held.RAW.years());
        }
        return Held.RAW.depthsMm(minutes(in))[at];
    }

    private static Fit fit(Inputs in) {
        return Held.MAXIMA.fit(minutes(in), family(in), method(in));
    }

    private static Bootstrap.Interval limits(Inputs in) {
        return Held.LIMITS.computeIfAbsent(List.of(minutes(in), in.number("years")), asked -> {
            Fit fit = Held.MAXIMA.fit(minutes(in), DistributionFamily.GEV, FitMethod.L_MOMENTS);
            return Bootstrap.of(5000, 1).returnLevel(fit, Held.MAXIMA.depthsMm(minutes(in)), in.number("years"));
        });
    }

    private static PeaksOverThreshold peaks(Inputs in) {
        return Held.PEAKS.peaks(minutes(in));
    }

    private static EventRarity.OverDuration rarity(Inputs in) {
        RainfallEvent event = Held.LARGEST_FIRST.get(in.integer("rank") - 1);
        return EventRarity.of(Held.SCALED.withGreatestYears(10_000), event).durations().stream()
                .filter(over -> over.duration().equals(minutes(in)))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the event has no such duration"));
    }

    private static ScaledDdf scaled(Inputs in) {
        return ScaledDdf.of(known(in.text("maxima")), family(in), method(in));
    }

    /** A year a line, a duration a column. */
    static AnnualMaxima known(String table) {
        List<String> lines = table.lines().toList();
        String[] head = lines.get(0).split(",");
        List<String[]> rows = lines.subList(1, lines.size()).stream()
                .map(line -> line.split(","))
                .toList();
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        for (int j = 1; j < head.length; j++) {
            int column = j;
            depths.put(
                    Duration.ofMinutes(Integer.parseInt(head[j].substring(1))),
                    rows.stream()
                            .mapToDouble(row -> Double.parseDouble(row[column]))
                            .toArray());
        }
        return AnnualMaxima.of(rows.stream().map(row -> Integer.valueOf(row[0])).toList(), depths, Duration.ZERO);
    }
}
