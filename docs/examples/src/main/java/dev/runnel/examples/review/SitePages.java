package dev.runnel.examples.review;

import dev.runnel.examples.pages.CalendarFigure;
import dev.runnel.examples.pages.DayFigure;
import dev.runnel.examples.pages.LevelVelocityFigure;
import dev.runnel.examples.pages.RecordRows;
import dev.runnel.examples.pages.SectionFigure;
import dev.runnel.examples.pages.SitePage;
import dev.runnel.examples.pages.StormFigure;
import dev.runnel.examples.pages.StripFigure;
import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.SiteBaseline;
import dev.runnel.hydraulics.watch.UsualVelocity;
import dev.runnel.internal.SeriesArrays;
import dev.runnel.rainfall.ddf.EventRarity;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.baseline.DayClass;
import dev.runnel.timeseries.baseline.DiurnalProfile;
import dev.runnel.timeseries.baseline.ProfileSlot;
import dev.runnel.timeseries.correction.Correction;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/** The review of a site as a page: nothing is computed here, only put where it is seen. */
final class SitePages {
    private static final double MM = 1000;
    private static final double LITRES = 1000;

    /** Name of a row of the record. */
    private static final String RAIN = "Rain, mm";

    private final SiteReview review;
    private final Attention attention;

    private SitePages(SiteReview review, Attention attention) {
        this.review = review;
        this.attention = attention;
    }

    static SitePage of(SiteReview review, Attention attention, String words) {
        return new SitePages(review, attention).page(words);
    }

    private SitePage page(String words) {
        SitePage page =
                SitePage.of(review.site().name(), subtitle()).amongOthers().withText(words);
        List<Finding> findings = review.watched().findings();
        for (String point : attention.points()) {
            page = page.withPoint(new SitePage.Point(point, number(point, findings)));
        }
        for (SitePage.Figure figure : SiteFigures.of(review)) {
            page = page.withFigure(figure);
        }
        for (String missing :
                review.watched().baseline().map(SiteBaseline::notTested).orElse(List.of())) {
            page = page.withNotTested(missing);
        }
        page = page.withRecord(record());
        for (SitePage.Panel panel : panels()) {
            page = page.withPanel(panel);
        }
        return page;
    }

    /** Points that tell of a finding begin with its number. */
    private static int number(String point, List<Finding> findings) {
        return findings.stream()
                .map(Finding::number)
                .filter(number -> point.startsWith("Finding " + number + ":"))
                .findFirst()
                .orElse(0);
    }

    private String subtitle() {
        Interval record = review.data().record();
        return Show.timeWithYear(record.start(), review.site().zone()) + " to "
                + Show.timeWithYear(record.end(), review.site().zone()) + ", every "
                + Show.duration(review.data().depth().interval()) + ", times in "
                + review.site().zone() + "; "
                + review.site().shape()
                + (review.site().note().isEmpty() ? "" : "; " + review.site().note());
    }

    private RecordRows record() {
        FlowRecord flow = review.flow().record();
        RecordRows rows = RecordRows.in(review.site().zone());
        if (review.rain().isPresent()) {
            rows = rows.withAmounts(RAIN, review.rain().get().rain(), 0.01);
        }
        rows = rows.withReadings("Level, mm", flow.level(), MM, 1);
        if (review.data().velocity().isPresent()) {
            rows = rows.withReadings("Velocity, m/s", flow.velocity(), 1, 0.001)
                    .withReadings("Flow, l/s", flow.flow(), LITRES, 0.1);
        }
        for (RecordRows.Mark mark : marks()) {
            rows = rows.withMark(mark);
        }
        return rows;
    }

    /** A bed or a roughness changes the flow, not the level. */
    private String row(Correction correction) {
        boolean isOfFlow =
                correction.kind() == Correction.Kind.SEDIMENT || correction.kind() == Correction.Kind.ROUGHNESS;
        if (isOfFlow && review.data().velocity().isPresent()) {
            return "Flow, l/s";
        }
        return correction.series().equals("depth") ? "Level, mm" : "Velocity, m/s";
    }

    /** What a finding says of the gauge says nothing of the sewer. */
    private String row(Finding finding) {
        return switch (finding.name()) {
            case CLOCK_OF_GAUGE, SILENT_GAUGE, GAUGE_CATCHES_LESS, GAUGE_WRITES_MORE -> RAIN;
            default -> "";
        };
    }

    private List<RecordRows.Mark> marks() {
        List<RecordRows.Mark> marks = new ArrayList<>();
        Instant end = review.data().record().end();
        review.data()
                .depth()
                .gaps()
                .forEach(gap -> marks.add(RecordRows.Mark.of(RecordRows.Kind.GAP, gap, "no depth readings")));
        review.watched()
                .baseline()
                .ifPresent(baseline -> marks.add(RecordRows.Mark.of(
                        RecordRows.Kind.BASELINE, baseline.interval(), "what is usual was learned here")));
        for (Finding finding : review.watched().findings()) {
            boolean isDoubtful = review.doubts().isFlowDoubtful(finding);
            for (Interval stood : finding.intervals(end)) {
                marks.add(new RecordRows.Mark(
                        RecordRows.Kind.FINDING,
                        stood.start(),
                        stood.end(),
                        row(finding),
                        finding.number(),
                        finding.detail()));
                if (isDoubtful) {
                    marks.add(new RecordRows.Mark(
                            RecordRows.Kind.LEFT_OUT, stood.start(), stood.end(), "Flow, l/s", 0, "doubtful flow"));
                }
            }
        }
        review.visits()
                .visits()
                .forEach(visit -> marks.add(new RecordRows.Mark(
                        RecordRows.Kind.VISIT,
                        visit.time(),
                        visit.time(),
                        "",
                        0,
                        "visit: "
                                + BooksText.words(
                                        visit, review.visits(), review.data().dates()))));
        SiteBooks books = review.data().books();
        for (int correction : books.numbersIn(review.data().record())) {
            Correction each = books.corrections().list().get(correction - 1);
            marks.add(new RecordRows.Mark(
                    RecordRows.Kind.CORRECTION,
                    each.interval().start(),
                    each.interval().end(),
                    row(each),
                    0,
                    (each.kind().isSetting() ? "set by date: " : "corrected: ")
                            + BooksText.words(each, review.data().dates())));
        }
        for (AlarmEvent alarm : review.flow().alarms()) {
            marks.add(new RecordRows.Mark(
                    RecordRows.Kind.ALARM, alarm.onset(), alarm.returned().orElse(end), "", 0, "depth alarm"));
        }
        for (SurchargePeriod period : review.flow().surcharges()) {
            marks.add(RecordRows.Mark.of(RecordRows.Kind.SURCHARGE, period.interval(), "above the soffit"));
        }
        review.flow()
                .spills()
                .ifPresent(spills -> spills.periods()
                        .forEach(period -> marks.add(
                                RecordRows.Mark.of(RecordRows.Kind.SPILL, period.interval(), "above the crest"))));
        return marks;
    }

    private List<SitePage.Panel> panels() {
        List<SitePage.Panel> panels = new ArrayList<>();
        if (review.data().velocity().isPresent()) {
            panels.add(levelAndVelocity());
        }
        dryDay().ifPresent(panels::add);
        storms().ifPresent(panels::add);
        response().ifPresent(panels::add);
        panels.add(new SitePage.Panel(
                "Days of good data",
                CalendarFigure.of(goodDays(), "Usable share of each day"),
                "Pale: usable readings for 99 % of the day or more. Else filled from below by that share; cross: none."
                        + (hasDoubts() ? " Readings that a finding puts in doubt count as read." : ""),
                "quality-checks",
                false));
        panels.add(pipe());
        review.flow()
                .spills()
                .ifPresent(spills -> panels.add(new SitePage.Panel(
                        "Water above the overflow's crest",
                        StripFigure.of(
                                review.data().record(),
                                spills.periods().stream()
                                        .map(SurchargePeriod::interval)
                                        .toList(),
                                review.data().depth().gaps(),
                                review.site().zone(),
                                "Water above the crest"),
                        Show.count(spills.tally().count(), "spill") + " by blocks of 12 and 24 h, "
                                + Show.duration(spills.tally().duration())
                                + " together. Red: above the crest. Grey: no readings.",
                        "spill-count",
                        true)));
        return panels;
    }

    /** The pipe with the water that half of the readings are below. */
    private SitePage.Panel pipe() {
        PipeMonitor monitor = review.site().monitor();
        double depth = review.peaks().median() - monitor.bedAboveInvert();
        return new SitePage.Panel(
                "The pipe",
                SectionFigure.of(
                        monitor.conduit().section(), depth > 0 ? OptionalDouble.of(depth) : OptionalDouble.empty()),
                depth > 0
                        ? "Filled to the median depth of the record"
                                + (review.peaks().isPart() ? ", doubtful depths left out." : ".")
                        : "",
                "sections",
                false);
    }

    private SitePage.Panel levelAndVelocity() {
        FlowRecord flow = review.flow().record();
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        LevelVelocityFigure figure = LevelVelocityFigure.of(
                        review.site().monitor().withoutSediment().conduit(),
                        keeper.times(flow.level()),
                        keeper.usableValues(flow.level()),
                        keeper.usableValues(flow.velocity()))
                .withFindings(review.watched().findings().stream()
                        .flatMap(finding ->
                                finding.intervals(review.data().record().end()).stream())
                        .toList());
        Optional<UsualVelocity> usual = review.watched().baseline().flatMap(SiteBaseline::usualVelocity);
        if (usual.isPresent()) {
            double factor = review.site().monitor().velocityFactor();
            figure = figure.withUsual(depth ->
                    depth >= usual.get().lowestLevel() && depth <= usual.get().highestLevel()
                            ? usual.get().velocity(depth) * factor
                            : Double.NaN);
        }
        return new SitePage.Panel(
                "Level and velocity",
                figure.toSvg(),
                "Dashed: the law of the pipe. Line: the usual relation of the site. Thin: equal flow. Grey: seen all along;"
                        + " colours: from the first fifth of the record (faint) to the last (strong). Ringed: findings.",
                "depth-velocity-evidence",
                false);
    }

    private Optional<SitePage.Panel> dryDay() {
        DryWeather dry = review.dryWeather();
        List<DayFigure.Line> lines = new ArrayList<>(lines(dry.usual(), ""));
        dry.others()
                .forEach(spell -> lines.addAll(
                        lines(spell, "finding " + spell.finding().orElseThrow().number() + ", ")));
        return lines.isEmpty()
                ? Optional.empty()
                : Optional.of(new SitePage.Panel(
                        "Dry-weather day",
                        DayFigure.of(dry.isFlow() ? "l/s" : "mm", lines),
                        "Median; band: 80 of 100 days. Days of a finding by themselves; doubtful days are left out"
                                + dry.suspect() + FlowText.mark(review) + ".",
                        "dry-weather-profile",
                        false));
    }

    private static List<DayFigure.Line> lines(DryWeather.Spell spell, String name) {
        List<DayFigure.Line> lines = new ArrayList<>();
        for (DayClass dayClass : spell.classes()) {
            DiurnalProfile profile = spell.profile().orElseThrow();
            List<ProfileSlot> slots = profile.slots(dayClass);
            double[][] band = new double[3][slots.size()];
            List<LocalTime> starts = new ArrayList<>();
            for (int i = 0; i < slots.size(); i++) {
                Instant time = spell.instant(dayClass, slots.get(i));
                starts.add(slots.get(i).start());
                band[0][i] = profile.quantile(time, 0.1) * LITRES;
                band[1][i] = slots.get(i).median() * LITRES;
                band[2][i] = profile.quantile(time, 0.9) * LITRES;
            }
            lines.add(new DayFigure.Line(
                    name + dayClass.toText() + ", " + Show.count(profile.days(dayClass), "day"),
                    starts,
                    band[0],
                    band[1],
                    band[2]));
        }
        return lines;
    }

    private Optional<SitePage.Panel> storms() {
        return review.rain().filter(rain -> !rain.storms().isEmpty()).map(rain -> {
            List<RainfallEvent> all =
                    rain.storms().stream().map(RainFindings.Storm::event).toList();
            Optional<RainFindings.Storm> rarest = rain.storms().stream()
                    .filter(storm ->
                            storm.rarity().flatMap(EventRarity::governing).isPresent())
                    .max(Comparator.comparingDouble(storm -> storm.rarity()
                            .flatMap(EventRarity::governing)
                            .orElseThrow()
                            .returnPeriod()
                            .years()));
            return new SitePage.Panel(
                    "Storms against the depth-duration table",
                    StormFigure.of(
                            all,
                            rarest.map(storm -> List.of(storm.event())).orElse(List.of()),
                            review.data().ddf(),
                            review.data().band()),
                    (review.data().ddf().isPresent() ? "Thin lines: return periods of the table. " : "")
                            + (review.data().band().isPresent() ? "Shaded: limits of 2, 10 and 100 years. " : "")
                            + rarest.map(this::rarest).orElse("Each line is a storm."),
                    "storm-measures",
                    false);
        });
    }

    private String rarest(RainFindings.Storm storm) {
        EventRarity.OverDuration over =
                storm.rarity().flatMap(EventRarity::governing).orElseThrow();
        return "Marked: the rarest storm, "
                + review.data().dates().time(storm.event().start()) + ", "
                + RainText.years(over.returnPeriod()) + " over " + Show.duration(over.duration())
                + storm.rarity()
                        .flatMap(EventRarity::limits)
                        .map(limits -> ", limits " + limits.limitsText())
                        .orElse(", no limits known")
                + ".";
    }

    private Optional<SitePage.Panel> response() {
        return StormAnswers.of(review)
                .map(answers -> new SitePage.Panel(
                        "Rain and response, storm by storm",
                        answers.drawing(),
                        answers.caption(),
                        "rainfall-response",
                        false));
    }

    private boolean hasDoubts() {
        return review.watched().findings().stream()
                .anyMatch(finding -> review.doubts().isFlowDoubtful(finding)
                        || review.doubts().isDepthDoubtful(finding));
    }

    /** The share of each day of the record for which usable readings speak. */
    private SortedMap<LocalDate, Double> goodDays() {
        ZoneId zone = review.site().zone();
        SortedMap<LocalDate, Double> shares = new TreeMap<>();
        Interval record = review.data().record();
        LocalDate.ofInstant(record.start(), zone)
                .datesUntil(
                        LocalDate.ofInstant(record.end().minusNanos(1), zone).plusDays(1))
                .forEach(day -> shares.put(day, 0.0));
        review.flow().days().forEach(day -> shares.put(day.date(), day.share()));
        return shares;
    }
}
