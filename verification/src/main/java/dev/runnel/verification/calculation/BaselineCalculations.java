package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.watch.BaselineRule;
import dev.runnel.hydraulics.watch.ChangeShape;
import dev.runnel.hydraulics.watch.DoubtfulReadings;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.hydraulics.watch.FindingStretch;
import dev.runnel.hydraulics.watch.MarkedFigure;
import dev.runnel.hydraulics.watch.ReadingUse;
import dev.runnel.hydraulics.watch.SiteBaseline;
import dev.runnel.hydraulics.watch.SiteRecord;
import dev.runnel.hydraulics.watch.StretchFlow;
import dev.runnel.hydraulics.watch.UsualVelocity;
import dev.runnel.hydraulics.watch.WatchReport;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.nio.DoubleBuffer;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** The velocity that is usual at a depth, learned from hours; and figures that leave out what findings put in doubt. */
final class BaselineCalculations {
    /** What a table is told of a figure that there is none of. */
    private static final double NONE = -9999;

    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final LocalDate FIRST_DAY = LocalDate.of(2001, 1, 1);
    private static final PipeMonitor MONITOR =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(0.6), Gradient.of(0.005), Manning.of(0.013)));
    private static final Map<List<DoubleBuffer>, SiteBaseline> LEARNED = KeptAnswers.map();
    private static final String HOURS = "depths velocities";
    private static final String DOUBT = "flows names begins ends";
    private static final String FIGURE = "use first last " + DOUBT;
    private static final String STRETCH = "which dry_days " + DOUBT;

    private BaselineCalculations() {}

    static List<Calculation> all() {
        return List.of(
                law("baseline.law.exponent", "1", UsualVelocity::exponent),
                law("baseline.law.scatter", "1", UsualVelocity::scatter),
                law("baseline.law.lowest", "m", UsualVelocity::lowestLevel),
                law("baseline.law.highest", "m", UsualVelocity::highestLevel),
                law("baseline.law.classes", "1", usual -> usual.classLevels().length),
                of(
                        "baseline.law.velocity",
                        "m/s",
                        "level " + HOURS,
                        in -> usual(in).velocity(in.number("level"))),
                of(
                        "baseline.law.class.level",
                        "m",
                        "class " + HOURS,
                        in -> usual(in).classLevels()[in.integer("class")]),
                of(
                        "baseline.law.class.scatter",
                        "1",
                        "class " + HOURS,
                        in -> usual(in).classScatters()[in.integer("class")]),
                of("baseline.hours", "1", HOURS, in -> learned(in).hours()),
                of("baseline.dry-hours", "1", HOURS, in -> learned(in).dryHours()),
                of("figure.mean", "m3/s", FIGURE, in -> known(figure(in).asRead())),
                of("figure.doubtful", "1", FIGURE, in -> figure(in).doubtfulShare()),
                of("figure.missing", "1", FIGURE, in -> figure(in).missingShare()),
                of("figure.withheld", "1", FIGURE, in -> figure(in).isWithheld() ? 1 : 0),
                of("figure.findings", "1", FIGURE, in -> figure(in).findings().size()),
                stretch("stretch.from", "h", each -> hours(each.stretch().start())),
                stretch("stretch.days", "1", StretchFlow::days),
                stretch("stretch.left-out", "1", StretchFlow::daysLeftOut),
                stretch("stretch.flow", "m3/s", each -> known(each.flow().asRead())),
                stretch("stretch.doubtful", "1", each -> each.flow().doubtfulShare()),
                stretch("stretch.missing", "1", each -> each.flow().missingShare()),
                stretch("stretch.suspect", "1", each -> each.flow().suspectShare()),
                stretch("stretch.withheld", "1", each -> each.flow().isWithheld() ? 1 : 0));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static Calculation law(String name, String unit, ToDoubleFunction<UsualVelocity> question) {
        return of(name, unit, HOURS, in -> question.applyAsDouble(usual(in)));
    }

    private static Calculation stretch(String name, String unit, ToDoubleFunction<StretchFlow> question) {
        return of(name, unit, STRETCH, in -> {
            Set<LocalDate> dry = Arrays.stream(in.sample("dry_days"))
                    .mapToObj(each -> FIRST_DAY.plusDays((long) each))
                    .collect(Collectors.toSet());
            return question.applyAsDouble(
                    StretchFlow.of(flow(in), dry, ZoneOffset.UTC, doubt(in)).get(in.integer("which")));
        });
    }

    private static double known(double value) {
        return Double.isNaN(value) ? NONE : value;
    }

    private static double hours(Instant time) {
        return Duration.between(START, time).toMinutes() / 60.0;
    }

    private static Instant at(double hours) {
        return START.plus(Duration.ofMinutes(Math.round(60 * hours)));
    }

    private static Series hourly(double[] values) {
        return RegularSeries.of(START, Duration.ofHours(1), values).toSeries();
    }

    private static UsualVelocity usual(Inputs in) {
        return learned(in).usualVelocity().orElseThrow();
    }

    private static SiteBaseline learned(Inputs in) {
        return learned(in.sample("depths"), in.sample("velocities"));
    }

    /** Learns from hours without rain, a reading each; once, however many figures a table asks of them. */
    private static SiteBaseline learned(double[] depths, double[] velocities) {
        return LEARNED.computeIfAbsent(
                List.of(DoubleBuffer.wrap(depths), DoubleBuffer.wrap(velocities)), key -> learn(depths, velocities));
    }

    private static SiteBaseline learn(double[] depths, double[] velocities) {
        SiteRecord record = SiteRecord.of(hourly(depths), hourly(velocities))
                .withRain(RegularSeries.of(
                        START.minus(Duration.ofHours(1)), Duration.ofHours(1), new double[depths.length + 1]));
        return BaselineRule.of(MONITOR)
                .withInterval(Interval.of(START, START.plus(Duration.ofHours(depths.length))))
                .learn(record)
                .baseline()
                .orElseThrow();
    }

    private static Series flow(Inputs in) {
        return hourly(in.sample("flows"));
    }

    private static MarkedFigure figure(Inputs in) {
        return MarkedFigure.mean(
                flow(in),
                ReadingUse.valueOf(in.text("use")),
                Interval.of(at(in.number("first")), at(in.number("last"))),
                doubt(in));
    }

    /** Findings as they are stated, each with its stretches: what is named + is another one of the finding before it. */
    private static DoubtfulReadings doubt(Inputs in) {
        String[] names = in.text("names").split(" ");
        double[] begins = in.sample("begins");
        double[] ends = in.sample("ends");
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < names.length; i++) {
            String name = names[i];
            List<FindingStretch> stretches = new ArrayList<>();
            stretches.add(stretch(begins[i], ends[i]));
            while (i + 1 < names.length && names[i + 1].equals("+")) {
                i++;
                stretches.add(stretch(begins[i], ends[i]));
            }
            Instant begin = stretches.get(0).from();
            findings.add(new Finding(
                    findings.size() + 1,
                    Arrays.stream(name.split("/")).map(FindingName::valueOf).toList(),
                    Direction.UP,
                    ChangeShape.STEP,
                    Interval.of(begin, begin),
                    begin,
                    stretches,
                    0,
                    Optional.empty(),
                    List.of(),
                    Optional.empty(),
                    Optional.empty(),
                    "stated"));
        }
        Instant end = at(in.sample("flows").length);
        return DoubtfulReadings.of(new WatchReport(anySite(), findings, List.of()), end);
    }

    /** One that is open ends at the end of the record. */
    private static FindingStretch stretch(double begin, double end) {
        return new FindingStretch(at(begin), end == NONE ? Optional.empty() : Optional.of(at(end)));
    }

    /** A report has a baseline; what findings put in doubt has nothing to do with it. */
    private static SiteBaseline anySite() {
        double[] depths = new double[144];
        double[] velocities = new double[144];
        for (int i = 0; i < depths.length; i++) {
            depths[i] = 0.12 + 0.03 * Math.sin(2 * Math.PI * i / 24) + 0.001 * Math.sin(1.7 * i);
            velocities[i] = 0.7 * Math.sqrt(depths[i] / 0.12) + 0.01 * Math.sin(2.9 * i);
        }
        return learned(depths, velocities);
    }
}
