package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.balance.DailyTotal;
import dev.runnel.timeseries.csv.CsvWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The survey on one page for other programs: a row a site, plain numbers, blank where there is no figure. */
final class SurveySummary {
    /** Name of the file. */
    static final String NAME = "survey.csv";

    private static final List<String> COLUMNS = List.of(
            "site",
            "name",
            "state",
            "points",
            "record_start_utc",
            "record_end_utc",
            "usable_share",
            "dry_weather_flow_m3_per_s",
            "dry_weather_level_m",
            "all_dry_days_flow_m3_per_s",
            "all_dry_days_level_m",
            "doubtful_dry_weather_share",
            "suspect_dry_weather_share",
            "dry_weather_states",
            "highest_level_m",
            "highest_above_soffit_m",
            "highest_doubtful_level_m",
            "highest_level_in_a_row_m",
            "volume_m3",
            "doubtful_volume_share",
            "surcharges",
            "doubtful_surcharge_share",
            "spills",
            "doubtful_spill_share",
            "spill_h",
            "rain_mm",
            "storms",
            "dry_days",
            "depth_shift_m",
            "depth_shift_from_utc");

    private SurveySummary() {}

    static void write(Path folder, List<SiteResult> results) {
        CsvWriter.standard()
                .withDecimals(5)
                .writeTable(
                        folder.resolve(NAME),
                        COLUMNS,
                        results.stream().map(SiteResult::summary).toList());
    }

    /** The row of a site. */
    static List<Object> of(SiteReview review, String state, int points) {
        Interval record = review.data().record();
        List<Object> row = new ArrayList<>(List.of(
                review.site().id(),
                review.site().name(),
                state,
                points,
                record.start(),
                record.end(),
                SiteFigures.usableShare(review)));
        DryWeather dry = review.dryWeather();
        Object mean = dry.figure().<Object>map(profile -> profile.mean()).orElse("");
        row.add(dry.isFlow() ? mean : "");
        row.add(dry.isFlow() ? "" : mean);
        Object all = dry.together().<Object>map(DryWeather.Together::mean).orElse(mean);
        row.add(dry.isFlow() ? all : "");
        row.add(dry.isFlow() ? "" : all);
        row.add(dry.doubtfulShare());
        row.add(dry.suspectShare());
        row.add(StatesText.cell(dry.states()));
        LevelPeaks peaks = review.peaks();
        row.add(number(peaks.sound()));
        row.add(number(
                peaks.sound().isPresent()
                        ? OptionalDouble.of(peaks.sound().getAsDouble()
                                - review.site().monitor().soffit())
                        : OptionalDouble.empty()));
        row.add(number(peaks.doubted()));
        row.add(Double.isNaN(peaks.inARow()) ? "" : peaks.inARow());
        volume(row, review);
        row.add(review.flow().surcharges().size());
        row.add(LevelPeaks.doubtfulShare(review, review.flow().surcharges()));
        double doubtful = SiteFigures.doubtfulSpills(review);
        Optional<FlowFindings.Spills> counted = review.flow().spills().filter(spills -> doubtful <= Doubts.MOST);
        row.add(counted.<Object>map(spills -> spills.tally().count()).orElse(""));
        row.add(review.flow().spills().<Object>map(spills -> doubtful).orElse(""));
        row.add(counted.<Object>map(spills -> spills.tally().duration().toSeconds() / 3600.0)
                .orElse(""));
        row.add(review.rain().<Object>map(RainFindings::depthMm).orElse(""));
        row.add(review.rain().<Object>map(rain -> rain.storms().size()).orElse(""));
        row.add(review.rain().<Object>map(rain -> rain.days().dates().size()).orElse(""));
        Optional<UntoldShift> shift = UntoldShift.of(review);
        row.add(shift.<Object>map(found -> found.shift().metres()).orElse(""));
        row.add(shift.<Object>map(found -> found.shift().from()).orElse(""));
        return List.copyOf(row);
    }

    private static Object number(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : "";
    }

    /** The row of a gauge alone: what it has, and nothing in every other column. */
    static List<Object> ofGauge(GaugeReview review, String state) {
        RainFindings rain = review.rain();
        Map<String, Object> known = Map.of(
                "site", review.site().id(),
                "name", review.site().name(),
                "state", state,
                "points", review.points().size(),
                "record_start_utc", review.record().start(),
                "record_end_utc", review.record().end(),
                "rain_mm", rain.depthMm(),
                "storms", rain.storms().size(),
                "dry_days", rain.days().dates().size());
        return COLUMNS.stream().map(column -> known.getOrDefault(column, "")).toList();
    }

    /** As measured, unless most of it rests on doubtful readings, and how much of it does. */
    private static void volume(List<Object> row, SiteReview review) {
        if (review.data().velocity().isEmpty()) {
            row.addAll(List.of("", ""));
            return;
        }
        double share = review.doubts().shareOfFlow(review.flow().record().flow());
        double all = review.flow().volumes().stream()
                .mapToDouble(DailyTotal::measured)
                .sum();
        row.add(share > Doubts.MOST ? "" : all);
        row.add(share);
    }
}
