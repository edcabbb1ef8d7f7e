package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.evidence.DailyEvidence;
import dev.runnel.hydraulics.evidence.DepthClass;
import dev.runnel.hydraulics.evidence.DepthVelocityRelation;
import dev.runnel.hydraulics.evidence.DriftEvidence;
import dev.runnel.hydraulics.evidence.DriftRule;
import dev.runnel.hydraulics.evidence.Drifts;
import dev.runnel.hydraulics.evidence.Estimate;
import dev.runnel.hydraulics.evidence.MedianAndSpread;
import dev.runnel.hydraulics.evidence.Onset;
import dev.runnel.hydraulics.evidence.RoughnessEstimate;
import dev.runnel.hydraulics.evidence.SoffitProjection;
import dev.runnel.hydraulics.evidence.Trend;
import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.hydraulics.watch.SiteRecord;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** What depth and velocity say together: against the law, day by day, and as a drift; and the record that a watch reads. */
final class EvidenceCalculations {
    /** What a table is told of a date, a count or a figure that there is none of. */
    private static final double NONE = -9999;

    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final LocalDate FIRST_DAY = LocalDate.of(2001, 1, 1);
    private static final String SITE = "diameter offset bed factor n gradient";
    private static final String PAIRS = "depths velocities lowest? highest? " + SITE;
    private static final String CLASSES = "width class " + PAIRS;
    private static final String DAY = "times depths velocities zone day " + SITE;
    private static final String DRIFT = "dates coverages levels velocities ratios flows unchanged from to"
            + " significance? change? coverage? least_days? " + SITE;
    private static final String RECORD =
            "times depths velocity_times velocities rain_from? rain_step? rains? slice_from? slice_to?";

    private EvidenceCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of(
                        "hydraulics",
                        "evidence.estimate.holds",
                        "1",
                        "value lower upper figure",
                        in -> new Estimate(in.number("value"), in.number("lower"), in.number("upper"))
                                        .holds(in.number("figure"))
                                ? 1
                                : 0),
                relation("evidence.relation.size", "1", DepthVelocityRelation::size),
                relation("evidence.relation.left-out", "1", DepthVelocityRelation::leftOut),
                ratio("evidence.relation.ratio", MedianAndSpread::median),
                ratio("evidence.relation.ratio.lower", MedianAndSpread::lower),
                ratio("evidence.relation.ratio.upper", MedianAndSpread::upper),
                ratio("evidence.relation.ratio.count", MedianAndSpread::count),
                manning("evidence.relation.manning", MedianAndSpread::median),
                manning("evidence.relation.manning.lower", MedianAndSpread::lower),
                manning("evidence.relation.manning.upper", MedianAndSpread::upper),
                sand("evidence.relation.sand", "m", RoughnessEstimate::median),
                sand("evidence.relation.sand.lower", "m", each -> each.spread().lower()),
                sand("evidence.relation.sand.upper", "m", each -> each.spread().upper()),
                sand("evidence.relation.sand.too-fast", "1", RoughnessEstimate::tooFast),
                sand("evidence.relation.sand.too-slow", "1", RoughnessEstimate::tooSlow),
                of(
                        "evidence.class.number",
                        "1",
                        "width " + PAIRS,
                        in -> relation(in).classes(in.number("width")).size()),
                ofClass("evidence.class.from", "m", DepthClass::from),
                ofClass("evidence.class.to", "m", DepthClass::to),
                ofClass("evidence.class.level", "m", DepthClass::medianLevel),
                ofClass(
                        "evidence.class.velocity",
                        "m/s",
                        each -> each.velocity().median()),
                ofClass(
                        "evidence.class.velocity.lower",
                        "m/s",
                        each -> each.velocity().lower()),
                ofClass(
                        "evidence.class.velocity.upper",
                        "m/s",
                        each -> each.velocity().upper()),
                ofClass("evidence.class.readings", "1", each -> each.velocity().count()),
                ofClass("evidence.class.law", "m/s", DepthClass::lawVelocity),
                ofClass("evidence.class.ratio", "1", DepthClass::ratio),
                ofDay("evidence.day.readings", "1", DailyEvidence::readings),
                ofDay("evidence.day.coverage", "1", DailyEvidence::coverage),
                ofDay("evidence.day.level", "m", DailyEvidence::medianLevel),
                ofDay("evidence.day.velocity", "m/s", DailyEvidence::medianVelocity),
                ofDay("evidence.day.ratio", "1", DailyEvidence::medianRatio),
                ofDay("evidence.day.flow", "m3/s", DailyEvidence::meanFlow),
                ofDay("evidence.day.unchanged", "1", DailyEvidence::unchangedVelocityShare),
                drift("evidence.drift.pattern", each -> each.pattern().ordinal()),
                drift("evidence.drift.days", DriftEvidence::days),
                drift("evidence.drift.left-out", DriftEvidence::daysLeftOut),
                drift("evidence.drift.frozen", each -> each.frozenDays().size()),
                onset("evidence.drift.onset", Onset::date),
                onset("evidence.drift.onset.earliest", Onset::earliest),
                onset("evidence.drift.onset.latest", Onset::latest),
                soffit("evidence.drift.soffit", SoffitProjection::date),
                soffit("evidence.drift.soffit.earliest", SoffitProjection::earliest),
                soffit("evidence.drift.soffit.latest", SoffitProjection::latest),
                trend("evidence.trend.slope", Trend::slope),
                trend("evidence.trend.lower", Trend::lowerSlope),
                trend("evidence.trend.upper", Trend::upperSlope),
                trend("evidence.trend.p-value", Trend::pValue),
                trend("evidence.trend.change", Trend::relativeChange),
                of("site-record.size", "1", RECORD, in -> record(in).size()),
                of("site-record.velocities-alone", "1", RECORD, in -> record(in).velocitiesAlone()),
                of(
                        "site-record.step",
                        "s",
                        RECORD,
                        in -> record(in).medianStep().toSeconds()),
                reading(
                        "site-record.time",
                        "s",
                        each -> Duration.between(START, each.time()).toSeconds()),
                reading("site-record.depth", "m", SiteReading::depth),
                reading("site-record.velocity", "m/s", SiteReading::velocity),
                reading("site-record.rain", "mm", SiteReading::rain));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static Calculation relation(String name, String unit, ToDoubleFunction<DepthVelocityRelation> question) {
        return of(name, unit, PAIRS, in -> question.applyAsDouble(relation(in)));
    }

    private static Calculation ratio(String name, ToDoubleFunction<MedianAndSpread> question) {
        return relation(name, "1", each -> question.applyAsDouble(each.ratio().orElseThrow()));
    }

    private static Calculation manning(String name, ToDoubleFunction<MedianAndSpread> question) {
        return relation(
                name,
                "s/m^(1/3)",
                each -> question.applyAsDouble(each.manning().orElseThrow().spread()));
    }

    private static Calculation sand(String name, String unit, ToDoubleFunction<RoughnessEstimate> question) {
        return of(
                name,
                unit,
                "viscosity " + PAIRS,
                in -> question.applyAsDouble(relation(in)
                        .sandRoughness(ColebrookWhite.ofRoughness(0.001).withViscosity(in.number("viscosity")))
                        .orElseThrow()));
    }

    private static Calculation ofClass(String name, String unit, ToDoubleFunction<DepthClass> question) {
        return of(
                name,
                unit,
                CLASSES,
                in -> question.applyAsDouble(
                        relation(in).classes(in.number("width")).get(in.integer("class"))));
    }

    private static Calculation ofDay(String name, String unit, ToDoubleFunction<DailyEvidence> question) {
        return of(name, unit, DAY, in -> {
            LocalDate date = FIRST_DAY.plusDays(in.integer("day"));
            FlowRecord record =
                    MonitoredSite.of(in).flow(series(in, "times", "depths"), series(in, "times", "velocities"));
            return question.applyAsDouble(DailyEvidence.of(record, Set.of(date), ZoneId.of(in.text("zone")))
                    .get(0));
        });
    }

    private static Calculation drift(String name, ToDoubleFunction<DriftEvidence> question) {
        return of(name, "1", DRIFT, in -> question.applyAsDouble(drift(in)));
    }

    private static Calculation onset(String name, Function<Onset, LocalDate> question) {
        return drift(
                name,
                each -> each.onset().map(found -> day(question.apply(found))).orElse(NONE));
    }

    private static Calculation soffit(String name, Function<SoffitProjection, LocalDate> question) {
        return drift(
                name,
                each -> each.projection()
                        .map(found -> day(question.apply(found)))
                        .orElse(NONE));
    }

    private static Calculation trend(String name, ToDoubleFunction<Trend> question) {
        return of(
                name,
                "as the figure, a day",
                "figure " + DRIFT,
                in -> question.applyAsDouble(trend(drift(in).drifts().orElseThrow(), in.text("figure"))));
    }

    private static Trend trend(Drifts drifts, String figure) {
        return switch (figure) {
            case "level" -> drifts.level();
            case "velocity" -> drifts.velocity();
            case "flow" -> drifts.flow();
            case "ratio" -> drifts.ratio();
            default ->
                throw new IllegalArgumentException("figure must be level, velocity, flow or ratio, was " + figure);
        };
    }

    private static Calculation reading(String name, String unit, ToDoubleFunction<SiteReading> question) {
        return of(name, unit, "which " + RECORD, in -> {
            double found = question.applyAsDouble(record(in).get(in.integer("which")));
            return Double.isNaN(found) ? NONE : found;
        });
    }

    private static double day(LocalDate date) {
        return date.toEpochDay() - FIRST_DAY.toEpochDay();
    }

    private static DepthVelocityRelation relation(Inputs in) {
        Series depths = minutely(in.sample("depths"));
        Series velocities = minutely(in.sample("velocities"));
        DepthVelocityRelation relation =
                DepthVelocityRelation.of(MonitoredSite.of(in).flow(depths, velocities));
        return in.has("lowest") ? relation.betweenLevels(in.number("lowest"), in.number("highest")) : relation;
    }

    private static Series minutely(double[] values) {
        return RegularSeries.of(START, Duration.ofMinutes(1), values).toSeries();
    }

    private static DriftEvidence drift(Inputs in) {
        double[] dates = in.sample("dates");
        double[] coverages = in.sample("coverages");
        double[] levels = in.sample("levels");
        double[] velocities = in.sample("velocities");
        double[] ratios = in.sample("ratios");
        double[] flows = in.sample("flows");
        double[] unchanged = in.sample("unchanged");
        List<DailyEvidence> days = new ArrayList<>();
        for (int i = 0; i < dates.length; i++) {
            days.add(new DailyEvidence(
                    FIRST_DAY.plusDays((long) dates[i]),
                    720,
                    coverages[i],
                    levels[i],
                    velocities[i],
                    ratios[i],
                    flows[i],
                    unchanged[i]));
        }
        DriftRule rule = DriftRule.of(MonitoredSite.of(in));
        rule = in.has("significance") ? rule.withSignificance(in.number("significance")) : rule;
        rule = in.has("change") ? rule.withMinimumChange(in.number("change")) : rule;
        rule = in.has("coverage") ? rule.withMinimumCoverage(in.number("coverage")) : rule;
        rule = in.has("least_days") ? rule.withMinimumDays(in.integer("least_days")) : rule;
        return rule.evidence(days, FIRST_DAY.plusDays(in.integer("from")), FIRST_DAY.plusDays(in.integer("to")));
    }

    private static SiteRecord record(Inputs in) {
        SiteRecord record = SiteRecord.of(series(in, "times", "depths"), series(in, "velocity_times", "velocities"));
        if (in.has("rains")) {
            record = record.withRain(RegularSeries.of(
                    START.plusSeconds(in.integer("rain_from")),
                    Duration.ofSeconds(in.integer("rain_step")),
                    in.sample("rains")));
        }
        return in.has("slice_from")
                ? record.slice(Interval.of(
                        START.plusSeconds(in.integer("slice_from")), START.plusSeconds(in.integer("slice_to"))))
                : record;
    }

    private static Series series(Inputs in, String times, String values) {
        double[] seconds = in.sample(times);
        double[] figures = in.sample(values);
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < seconds.length; i++) {
            builder.add(START.plusSeconds((long) seconds[i]), figures[i]);
        }
        return builder.build();
    }
}
