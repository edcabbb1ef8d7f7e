package dev.runnel.examples.review;

import dev.runnel.hydraulics.evidence.DailyEvidence;
import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.monitoring.SpillVolume;
import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.rainfall.response.ResponseDoubt;
import dev.runnel.rainfall.response.StormResponse;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.balance.DailyTotal;
import dev.runnel.timeseries.balance.OverflowReturn;
import dev.runnel.timeseries.baseline.DayClass;
import dev.runnel.timeseries.baseline.DiurnalProfile;
import dev.runnel.timeseries.baseline.ProfileSlot;
import dev.runnel.timeseries.csv.CsvWriter;
import dev.runnel.timeseries.quality.QualityFlags;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** The results of one site as CSV: units in the headers, instants in UTC. A file without content is not written. */
final class SiteFiles {
    /** All files that may be written. */
    static final List<String> NAMES = List.of(
            "flow.csv",
            "daily.csv",
            "dry-weather.csv",
            "findings.csv",
            "events.csv",
            "rarity.csv",
            "alarms.csv",
            "surcharge.csv",
            "spills.csv",
            "annual-return.csv",
            "responses.csv",
            "flags.csv",
            "settings.csv",
            "altered.csv",
            "visits.csv",
            "proposals.csv",
            "rejected.csv");

    private static final CsvWriter TABLE = CsvWriter.standard().withDecimals(4);

    private final Path folder;
    private final SiteReview review;

    SiteFiles(Path folder, SiteReview review) {
        this.folder = folder;
        this.review = review;
    }

    void write() {
        flow();
        RainFiles rain = new RainFiles(folder);
        review.rain().ifPresent(rain::write);
        daily();
        dryWeather();
        findings();
        alarms();
        surcharges();
        spills();
        responses();
        flags();
        BooksFiles.write(folder, review);
        rain.rejected(review.data().reports());
    }

    private void flow() {
        FlowRecord record = review.flow().record();
        Map<String, Series> columns = new LinkedHashMap<>();
        columns.put("level_m", record.level());
        if (review.data().velocity().isPresent()) {
            columns.put("velocity_m_per_s", record.velocity());
            columns.put("flow_m3_per_s", record.flow());
        }
        CsvWriter.standard()
                .withDecimals(5)
                .withQuality()
                .withComments(
                        review.site().name() + ": level above the invert, mean velocity, flow; time in UTC",
                        "quality: poor (for one, unusual by a test) stays in use",
                        "quality: suspect (for one, failed a test) is left out of the review")
                .write(folder.resolve("flow.csv"), columns);
    }

    /** Writes a table that has rows. */
    private void table(CsvWriter writer, String file, List<String> header, List<? extends List<?>> rows) {
        if (!rows.isEmpty()) {
            writer.writeTable(folder.resolve(file), header, rows);
        }
    }

    private void daily() {
        Map<LocalDate, DailyEvidence> evidence = new HashMap<>();
        review.dryDays().forEach(day -> evidence.put(day.date(), day));
        Map<LocalDate, Double> rain = new HashMap<>();
        review.rain().ifPresent(found -> found.daily().days().forEach(day -> rain.put(day.date(), day.depthMm())));
        Optional<UntoldShift> shift = UntoldShift.of(review);
        List<List<?>> rows = new ArrayList<>();
        for (DailyTotal day : review.flow().volumes()) {
            double doubtful = review.doubts().shareOfFlow(review.flow().record().flow(), day.date());
            Optional<DailyEvidence> seen = Optional.ofNullable(evidence.get(day.date()));
            rows.add(List.of(
                    day.date(),
                    review.rain().map(found -> found.kind(day.date())).orElse(""),
                    Optional.<Object>ofNullable(rain.get(day.date())).orElse(""),
                    doubtful > Doubts.MOST ? "" : day.measured(),
                    doubtful,
                    day.coverage(),
                    day.isComplete() ? "yes" : "no",
                    seen.<Object>map(DailyEvidence::medianLevel).orElse(""),
                    seen.<Object>map(DailyEvidence::medianVelocity).orElse(""),
                    seen.<Object>map(DailyEvidence::medianRatio).orElse(""),
                    seen.<Object>map(DailyEvidence::unchangedVelocityShare).orElse(""),
                    review.doubts()
                            .doubtOf(day.date())
                            .<Object>map(Finding::number)
                            .orElse(""),
                    shift.filter(found -> found.isOf(day.date(), review.site().zone()))
                            .<Object>map(found -> found.shift().metres())
                            .orElse("")));
        }
        table(
                TABLE.withComments(
                        "local days in " + review.site().zone()
                                + "; volume as measured over the covered part of the day"
                                + SiteFigures.singleDay(review.flow().sampling())
                                        .map(text -> "; flow in strokes: that of a single day " + text)
                                        .orElse(""),
                        "medians on dry days: level above the invert, mean velocity, that over the velocity of the law"),
                "daily.csv",
                List.of(
                        "local_date",
                        "day_is",
                        "rain_mm",
                        "volume_m3",
                        "doubtful_volume_share",
                        "coverage",
                        "complete",
                        "median_level_m",
                        "median_velocity_m_per_s",
                        "median_velocity_over_law",
                        "unchanged_velocity_share",
                        "doubtful_by_finding",
                        "depth_shift_m"),
                rows);
    }

    private void dryWeather() {
        DryWeather dry = review.dryWeather();
        List<DryWeather.Spell> spells = new ArrayList<>(List.of(dry.usual()));
        spells.addAll(dry.others());
        List<List<?>> rows = new ArrayList<>();
        for (DryWeather.Spell spell : spells) {
            Object finding = spell.finding().<Object>map(Finding::number).orElse("");
            spell.profile()
                    .ifPresent(profile -> spell.classes()
                            .forEach(dayClass -> profile.slots(dayClass)
                                    .forEach(slot -> rows.add(slot(spell, profile, dayClass, slot, finding)))));
        }
        String unit = dry.isFlow() ? "flow_m3_per_s" : "level_m";
        table(
                CsvWriter.standard()
                        .withDecimals(6)
                        .withComments(
                                "local time in " + review.site().zone(),
                                "finding: blank for usual days, else the days of a finding by themselves"
                                        + dry.suspect()),
                "dry-weather.csv",
                List.of(
                        "day_class",
                        "local_time",
                        "days",
                        "mean_" + unit,
                        "quantile_10_" + unit,
                        "median_" + unit,
                        "quantile_90_" + unit,
                        "finding"),
                rows);
    }

    private static List<Object> slot(
            DryWeather.Spell spell, DiurnalProfile profile, DayClass dayClass, ProfileSlot slot, Object finding) {
        Instant time = spell.instant(dayClass, slot);
        return List.of(
                dayClass.toText(),
                slot.start(),
                slot.days(),
                slot.mean(),
                profile.quantile(time, 0.1),
                slot.median(),
                profile.quantile(time, 0.9),
                finding);
    }

    /** The times in which a finding stood, as ISO 8601 intervals; of an open one nothing stands behind the stroke. */
    private static String stretches(Finding finding) {
        return finding.stretches().stream()
                .map(stretch -> WholeMinutes.of(stretch.from()) + "/"
                        + stretch.to()
                                .map(WholeMinutes::of)
                                .map(Instant::toString)
                                .orElse(""))
                .collect(Collectors.joining(" "));
    }

    /** What the watch found, and how the findings came about. */
    private void findings() {
        List<List<?>> rows = new ArrayList<>();
        for (Finding finding : review.watched().findings()) {
            rows.add(List.of(
                    finding.number(),
                    finding.names().stream().map(FindingName::words).collect(Collectors.joining("; or ")),
                    finding.direction().toString(),
                    finding.shape().toString(),
                    WholeMinutes.of(finding.since()),
                    WholeMinutes.of(finding.sinceRange().start()),
                    WholeMinutes.of(finding.sinceRange().end()),
                    finding.found(),
                    finding.closed().<Object>map(WholeMinutes::of).orElse(""),
                    finding.returns(),
                    hours(finding.stood(review.data().record().end())),
                    stretches(finding),
                    finding.recurrence().<Object>map(SiteFiles::hours).orElse(""),
                    review.doubts().isFlowDoubtful(finding) ? "yes" : "no",
                    finding.detail()));
        }
        table(
                TABLE,
                "findings.csv",
                List.of(
                        "finding",
                        "consistent_with",
                        "direction",
                        "shape",
                        "since_utc",
                        "since_earliest_utc",
                        "since_latest_utc",
                        "found_utc",
                        "closed_utc",
                        "returns",
                        "stood_h",
                        "stretches_utc",
                        "recurs_every_h",
                        "flow_doubtful",
                        "detail"),
                rows);
    }

    private void alarms() {
        table(
                TABLE,
                "alarms.csv",
                List.of(
                        "onset_utc",
                        "activation_utc",
                        "cleared_utc",
                        "returned_utc",
                        "peak_level_m",
                        "peak_utc",
                        "unobserved_h",
                        "peak_doubted_by_finding"),
                review.flow().alarms().stream().map(this::alarm).toList());
    }

    /** The number of the finding that puts a depth in doubt, blank if none does. */
    private Object doubtOf(Instant time) {
        return review.doubts().doubtOf(false, time).<Object>map(Finding::number).orElse("");
    }

    private List<Object> alarm(AlarmEvent alarm) {
        return List.of(
                alarm.onset(),
                alarm.activation(),
                alarm.cleared().<Object>map(time -> time).orElse(""),
                alarm.returned().<Object>map(time -> time).orElse(""),
                alarm.peak(),
                alarm.peakTime(),
                hours(alarm.unobserved()),
                doubtOf(alarm.peakTime()));
    }

    private void surcharges() {
        table(
                TABLE,
                "surcharge.csv",
                List.of(
                        "start_utc",
                        "end_utc",
                        "duration_h",
                        "peak_above_soffit_m",
                        "peak_utc",
                        "complete",
                        "peak_doubted_by_finding"),
                review.flow().surcharges().stream().map(this::surcharge).toList());
    }

    /** The spills with what went over, and the lines of the annual return. */
    private void spills() {
        review.spillReturn().ifPresent(found -> {
            table(
                    TABLE.withComments(
                            "certain: no where the level stood above the crest by no more than twice its uncertainty, a test calls "
                                    + "every reading of it unusual, none could judge its only one, or a "
                                    + "finding puts the depth in doubt"),
                    "spills.csv",
                    List.of(
                            "start_utc",
                            "end_utc",
                            "duration_h",
                            "peak_above_crest_m",
                            "peak_utc",
                            "complete",
                            "certain",
                            "volume_m3",
                            "volume_below_lowest_head_m3",
                            "volume_level_lower_m3",
                            "volume_level_higher_m3",
                            "coverage"),
                    found.spills().stream().map(SiteFiles::spill).toList());
            OverflowReturn.write(folder.resolve("annual-return.csv"), found.returns());
        });
    }

    private static List<Object> spill(SpillReturn.Spill spill) {
        List<Object> row = new ArrayList<>(period(spill.period()));
        row.add(spill.discharge().isCertain() ? "yes" : "no");
        row.add(known(spill.volume(), SpillVolume::volume));
        row.add(known(spill.volume(), SpillVolume::below));
        row.add(known(spill.lowered(), SpillVolume::volume));
        row.add(known(spill.raised(), SpillVolume::volume));
        row.add(known(spill.volume(), SpillVolume::coverage));
        return row;
    }

    private static Object known(Optional<SpillVolume> spill, ToDoubleFunction<SpillVolume> value) {
        double found = spill.map(value::applyAsDouble).orElse(Double.NaN);
        return Double.isNaN(found) ? "" : found;
    }

    /** The response to each storm; what rests on doubtful readings for the most part is withheld. */
    private void responses() {
        review.responses().ifPresent(found -> {
            List<List<?>> rows = new ArrayList<>();
            for (int i = 0; i < found.responses().all().size(); i++) {
                rows.add(response(found, i));
            }
            table(
                    TABLE.withComments("volume, peak: flow above the usual dry weather flow"),
                    "responses.csv",
                    List.of(
                            "storm_start_utc",
                            "storm_end_utc",
                            "depth_mm",
                            "volume_m3",
                            "percent_of_rain",
                            "peak_m3_per_s",
                            "lag_to_peak_h",
                            "lag_to_centre_h",
                            "recession_h",
                            "back_utc",
                            "doubtful_share",
                            "doubts"),
                    rows);
        });
    }

    private static List<Object> response(ResponseFindings found, int index) {
        StormResponse each = found.responses().all().get(index);
        ResponseTrust trust = found.trust().get(index);
        boolean isTold = !trust.isWithheld();
        boolean isLagTold = isTold && !trust.isClockOff();
        List<String> doubts = new ArrayList<>(
                each.doubts().stream().map(ResponseDoubt::toString).toList());
        if (trust.isClockOff()) {
            doubts.add("a finding tells of another clock");
        }
        if (trust.isRainOff()) {
            doubts.add("a finding puts the rain in doubt");
        }
        return List.of(
                each.storm().start(),
                each.storm().end(),
                each.depthMm(),
                isTold ? each.runoff().flowM3() : trust.isUnseen() ? "" : "withheld",
                isTold
                                && !trust.isRainOff()
                                && found.hasArea()
                                && each.runoff().percent().isPresent()
                        ? each.runoff().percent().getAsDouble()
                        : "",
                isTold && each.peakM3PerS().isPresent() ? each.peakM3PerS().getAsDouble() : "",
                isLagTold ? each.lagToPeak().<Object>map(SiteFiles::hours).orElse("") : "",
                isLagTold ? each.lagToCentre().<Object>map(SiteFiles::hours).orElse("") : "",
                isTold
                        ? each.recession()
                                .<Object>map(fall -> hours(fall.constant()))
                                .orElse("")
                        : "",
                isTold ? each.back().back().<Object>map(time -> time).orElse("") : "",
                trust.doubtful(),
                String.join("; ", doubts));
    }

    private List<Object> surcharge(SurchargePeriod period) {
        List<Object> row = new ArrayList<>(period(period));
        row.add(doubtOf(period.peakTime()));
        return row;
    }

    private static List<Object> period(SurchargePeriod period) {
        return List.of(
                period.interval().start(),
                period.interval().end(),
                hours(period.duration()),
                period.peakAbove(),
                period.peakTime(),
                period.isComplete() ? "yes" : "no");
    }

    /** Every reading that a test found unusual or failed. */
    private void flags() {
        List<List<?>> rows = new ArrayList<>();
        List<CheckedReadings> all = new ArrayList<>();
        all.add(review.data().depth());
        review.data().velocity().ifPresent(all::add);
        for (CheckedReadings readings : all) {
            for (QualityFlags test : readings.quality().flags()) {
                test.raised()
                        .forEach(flag -> rows.add(List.of(
                                flag.time(),
                                readings.lines().column().what(),
                                test.check(),
                                flag.verdict().toText(),
                                flag.reason())));
            }
        }
        table(
                TABLE.withComments("verdict: unusual stays in use (quality poor), fail is left out (quality suspect)"),
                "flags.csv",
                List.of("time_utc", "quantity", "test", "verdict", "reason"),
                rows);
    }

    private static double hours(Duration duration) {
        return duration.toSeconds() / 3600.0;
    }
}
