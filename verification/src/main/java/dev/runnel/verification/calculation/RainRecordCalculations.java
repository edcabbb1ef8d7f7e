package dev.runnel.verification.calculation;

import dev.runnel.rainfall.event.AntecedentIndex;
import dev.runnel.rainfall.event.DailyRain;
import dev.runnel.rainfall.event.DryGaps;
import dev.runnel.rainfall.event.DrySpells;
import dev.runnel.rainfall.event.EventDetector;
import dev.runnel.rainfall.event.EventRecord;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.IntensityListing;
import dev.runnel.rainfall.event.RainAutocorrelation;
import dev.runnel.rainfall.event.RainDay;
import dev.runnel.rainfall.event.RainSummary;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.event.SnowRecord;
import dev.runnel.rainfall.event.SnowRule;
import dev.runnel.rainfall.event.StepSeparation;
import dev.runnel.rainfall.event.StormAssessment;
import dev.runnel.rainfall.event.StormCriteria;
import dev.runnel.rainfall.event.StormProfile;
import dev.runnel.rainfall.event.TipCount;
import dev.runnel.rainfall.event.TipEventDetector;
import dev.runnel.rainfall.event.TipSeparation;
import dev.runnel.rainfall.gauge.DoubleMass;
import dev.runnel.rainfall.gauge.LostTime;
import dev.runnel.rainfall.gauge.Neighbours;
import dev.runnel.rainfall.gauge.RainUnits;
import dev.runnel.rainfall.gauge.SteppedGauge;
import dev.runnel.rainfall.gauge.StorageComparison;
import dev.runnel.rainfall.gauge.StorageGauge;
import dev.runnel.rainfall.gauge.TipChecks;
import dev.runnel.rainfall.gauge.TipFlag;
import dev.runnel.rainfall.gauge.TipResolution;
import dev.runnel.rainfall.gauge.TipSpreading;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.rainfall.gauge.VolumetricCalibration;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.Month;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** Whole records of rain: tips, steps, several gauges. A missing value of a sample is written {@code NaN}. */
final class RainRecordCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final String TIPS = "tip_seconds tip_mm lost_seconds? spreading cap_seconds? record_seconds"
            + " step_seconds outage_from? outage_to? step";
    private static final String STEPS = "depths step_minutes inter_event_minutes minimum_mm? wet_above_mm? number";
    private static final String NETWORK = "gauges wet_mm gauge";
    private static final String STORAGE = "depths reading_hours stored_mm allowance resolution_mm";
    private static final String SNOW = "depths celsius step";

    private RainRecordCalculations() {}

    static List<Calculation> all() {
        List<Calculation> all = new ArrayList<>(gauges());
        all.addAll(units());
        all.addAll(events());
        all.addAll(days());
        all.addAll(others());
        return all;
    }

    private static List<Calculation> gauges() {
        return List.of(
                of("gauge.tips.step-depth", "mm", TIPS, in -> laidOut(in).value(in.integer("step"))),
                of(
                        "gauge.tips.added",
                        "mm",
                        "tip_seconds tip_mm lost_seconds?",
                        in -> bucket(in).summary(tips(in)).addedMm()),
                of(
                        "gauge.counts.step-depth",
                        "mm",
                        "counts tip_mm lost_seconds? step_seconds step",
                        in -> bucket(in)
                                .depthOfCounts(
                                        RegularSeries.of(START, seconds(in, "step_seconds"), in.sample("counts")))
                                .value(in.integer("step"))),
                of(
                        "gauge.tips.of-counts",
                        "tips",
                        "counts",
                        in -> Tips.ofCounts(series(in.sample("counts"))).size()),
                of(
                        "gauge.tips.of-depths",
                        "tips",
                        "depths tip_mm",
                        in -> Tips.ofDepths(series(in.sample("depths")), bucket(in))
                                .size()),
                of(
                        "gauge.checks.flagged",
                        "tips",
                        "tip_seconds tip_mm clock_seconds flag",
                        in -> TipChecks.of(bucket(in))
                                .withClock(seconds(in, "clock_seconds"))
                                .review(tips(in))
                                .count(TipFlag.valueOf(in.text("flag").toUpperCase(Locale.ROOT)))),
                of("gauge.neighbours.ratio", "1", NETWORK, in -> finding(in).ratio()),
                of(
                        "gauge.neighbours.rank-correlation",
                        "1",
                        NETWORK,
                        in -> finding(in).rankCorrelation()),
                of(
                        "gauge.neighbours.dry-alone",
                        "periods",
                        NETWORK,
                        in -> finding(in).dryAlone()),
                of(
                        "gauge.neighbours.wet-alone",
                        "periods",
                        NETWORK,
                        in -> finding(in).wetAlone()),
                of("gauge.double-mass.ratio", "1", "gauge_mm reference_mm", in -> mass(in).ratio()),
                of(
                        "gauge.double-mass.break",
                        "periods",
                        "gauge_mm reference_mm least",
                        in -> mass(in).bestBreak(in.integer("least")).periodsBefore()),
                of(
                        "gauge.double-mass.factor",
                        "1",
                        "gauge_mm reference_mm least",
                        in -> mass(in).bestBreak(in.integer("least")).factor()),
                of(
                        "gauge.storage.ratio",
                        "1",
                        STORAGE,
                        in -> storage(in).ratio().orElseThrow()),
                of(
                        "gauge.storage.count",
                        "readings",
                        STORAGE + " verdict",
                        in -> storage(in)
                                .count(StorageComparison.Verdict.valueOf(
                                        in.text("verdict").toUpperCase(Locale.ROOT)))));
    }

    private static List<Calculation> others() {
        return List.of(
                of(
                        "gauge.tips.step-depth-without-outage",
                        "mm",
                        TIPS,
                        in -> bucket(in)
                                .depth(
                                        tips(in),
                                        Interval.of(START, seconds(in, "record_seconds")),
                                        seconds(in, "step_seconds"),
                                        spreading(in))
                                .value(in.integer("step"))),
                of(
                        "gauge.neighbours.mass-ratio",
                        "1",
                        NETWORK,
                        in -> Neighbours.of(network(in, Duration.ofDays(1)))
                                .withWetLimit(in.number("wet_mm"))
                                .against("gauge " + in.integer("gauge"))
                                .ratio()),
                of(
                        "gauge.storage.row-ratio",
                        "1",
                        STORAGE + " row",
                        in -> storage(in).rows().get(in.integer("row")).ratio().orElseThrow()),
                of("gauge.calibration.static-tip", "mm", "funnel_cm2 volumes_ml tips", in -> {
                    VolumetricCalibration test = VolumetricCalibration.ofFunnel(in.number("funnel_cm2"));
                    double[] tips = in.sample("tips");
                    for (int i = 0; i < tips.length; i++) {
                        test = test.withRun(in.sample("volumes_ml")[i], (int) tips[i], 60 * (i + 1));
                    }
                    return test.fitStatic().tipMm();
                }),
                of("event.arriving.depth", "mm", STEPS, in -> arriving(in).depthMm()),
                of(
                        "event.arriving.peak-intensity",
                        "mm/h",
                        STEPS + " window_minutes",
                        in -> arriving(in).peak(minutes(in, "window_minutes")).intensityMmPerHour()),
                of(
                        "event.arriving-tips.depth",
                        "mm",
                        "tip_seconds tip_mm lost_seconds? inter_event_minutes number",
                        in -> {
                            TipSeparation rule = EventSeparation.of(minutes(in, "inter_event_minutes"))
                                    .ofTips(bucket(in));
                            TipEventDetector machine = rule.start();
                            List<RainfallEvent> events = new ArrayList<>();
                            for (Instant tip : tips(in).toInstants()) {
                                events.addAll(machine.next(TipCount.tip(tip)));
                                machine = rule.start(
                                        rule.parseState(machine.state().toText()));
                            }
                            events.addAll(machine.finish());
                            return events.get(in.integer("number") - 1).depthMm();
                        }));
    }

    private static EventSeparation separation(Inputs in) {
        EventSeparation rule = EventSeparation.of(minutes(in, "inter_event_minutes"))
                .withMinimumDepth(in.number("minimum_mm", 0))
                .withWetAbove(in.number("wet_above_mm", 0));
        return in.has("window_minutes") ? rule.withPeakDurations(minutes(in, "window_minutes")) : rule;
    }

    /** The same as {@link #event}, reading by reading, with a restart from text after each. */
    private static RainfallEvent arriving(Inputs in) {
        StepSeparation rule = separation(in).ofSteps(minutes(in, "step_minutes"));
        EventDetector machine = rule.start();
        List<RainfallEvent> events = new ArrayList<>();
        RegularSeries rain = rain(in);
        for (int i = 0; i < rain.size(); i++) {
            events.addAll(machine.next(Reading.of(rain.time(i), rain.value(i))));
            machine = rule.start(rule.parseState(machine.state().toText()));
        }
        events.addAll(machine.finish());
        return events.get(in.integer("number") - 1);
    }

    private static List<Calculation> units() {
        return List.of(
                of(
                        "rain-units.intensity",
                        "mm/h",
                        "depth step_seconds",
                        in -> RainUnits.intensity(
                                        RegularSeries.of(START, seconds(in, "step_seconds"), in.number("depth")))
                                .value(0)),
                of(
                        "rain-units.depth",
                        "mm",
                        "intensity step_seconds",
                        in -> RainUnits.depth(
                                        RegularSeries.of(START, seconds(in, "step_seconds"), in.number("intensity")))
                                .value(0)),
                of(
                        "rain-units.in-steps",
                        "mm",
                        "depths step_seconds new_seconds step",
                        in -> RainUnits.inSteps(
                                        RegularSeries.of(START, seconds(in, "step_seconds"), in.sample("depths")),
                                        seconds(in, "new_seconds"))
                                .depth()
                                .value(in.integer("step"))),
                of(
                        "gauge.stepped.depth",
                        "mm",
                        "minutes values kind step_minutes stamp step",
                        in -> stepped(in).value(in.integer("step"))),
                of(
                        "gauge.resolution.step",
                        "mm/h",
                        "tip_mm window_seconds",
                        in -> TipResolution.of(bucket(in)).stepMmPerHour(seconds(in, "window_seconds"))),
                of(
                        "gauge.resolution.uncertainty",
                        "mm/h",
                        "tip_mm window_seconds",
                        in -> TipResolution.of(bucket(in)).standardUncertaintyMmPerHour(seconds(in, "window_seconds"))),
                of(
                        "gauge.resolution.window",
                        "s",
                        "tip_mm intensity share",
                        in -> TipResolution.of(bucket(in))
                                        .windowFor(in.number("intensity"), in.number("share"))
                                        .toNanos()
                                / 1e9),
                of(
                        "gauge.resolution.least",
                        "mm",
                        "tip_mm tips",
                        in -> TipResolution.of(bucket(in)).leastMm(in.integer("tips"))),
                of(
                        "gauge.resolution.most",
                        "mm",
                        "tip_mm tips",
                        in -> TipResolution.of(bucket(in)).mostMm(in.integer("tips"))),
                of(
                        "gauge.resolution.depth-uncertainty",
                        "mm",
                        "tip_mm",
                        in -> TipResolution.of(bucket(in)).standardUncertaintyMm()));
    }

    private static List<Calculation> events() {
        return List.of(
                of("event.steps.depth", "mm", STEPS, in -> event(in).depthMm()),
                of(
                        "event.steps.mean-intensity",
                        "mm/h",
                        STEPS,
                        in -> event(in).meanIntensityMmPerHour().orElseThrow()),
                of(
                        "event.steps.dry-hours",
                        "h",
                        STEPS,
                        in -> event(in).antecedentDryTime().toNanos() / 3.6e12),
                of("event.steps.missing", "steps", STEPS, in -> event(in).missingSteps()),
                of(
                        "event.steps.peak-intensity",
                        "mm/h",
                        STEPS + " window_minutes",
                        in -> event(in).peak(minutes(in, "window_minutes")).intensityMmPerHour()),
                of("event.steps.dropped", "mm", STEPS, in -> separated(in).droppedMm()),
                of("event.steps.stray", "mm", STEPS, in -> separated(in).strayMm()),
                of(
                        "event.listing.heaviest",
                        "mm/h",
                        "depths step_minutes window_minutes",
                        in -> IntensityListing.of(rain(in), List.of(minutes(in, "window_minutes")))
                                .rows()
                                .get(0)
                                .heaviestMmPerHour()),
                of(
                        "event.dry-gaps.variation",
                        "1",
                        "depths step_minutes candidate",
                        in -> DryGaps.of(rain(in))
                                .candidates(DryGaps.Convention.GAPS)
                                .get(in.integer("candidate"))
                                .coefficientOfVariation()),
                of(
                        "event.autocorrelation-limit",
                        "1",
                        "depths lag",
                        in -> RainAutocorrelation.of(
                                        RegularSeries.of(START, Duration.ofHours(1), in.sample("depths")),
                                        in.integer("lag"))
                                .limit(in.integer("lag"))),
                of(
                        "storm.profile.share",
                        "1",
                        "depths step_minutes fraction",
                        in -> StormProfile.of(rain(in)).depthShare(in.number("fraction"))),
                of(
                        "storm.profile.centroid",
                        "min",
                        "depths step_minutes",
                        in -> StormProfile.of(rain(in)).timeToCentroid().toNanos() / 60e9),
                of(
                        "storm.criteria.verdict",
                        "1 met, 0 not, -1 unknown",
                        "gauges step_minutes depth_mm intensity over_minutes spread concentration_minutes",
                        RainRecordCalculations::verdict),
                of(
                        "antecedent-index.before",
                        "mm",
                        "daily recession days day",
                        in -> AntecedentIndex.of(in.number("recession"), in.integer("days"))
                                .before(RegularSeries.of(START, Duration.ofDays(1), in.sample("daily")))
                                .value(in.integer("day"))));
    }

    private static List<Calculation> days() {
        return List.of(
                of(
                        "rain-day.depth",
                        "mm",
                        "depths step_minutes offset_hours day_start day",
                        in -> daily(in).days().get(in.integer("day")).depthMm()),
                of(
                        "dry-spells.days",
                        "days",
                        "daily most_mm least_days spell",
                        in -> DrySpells.of(ofDays(in), in.number("most_mm"), in.integer("least_days"))
                                .get(in.integer("spell"))
                                .days()),
                of(
                        "rain-summary.depth",
                        "mm",
                        "daily period row",
                        in -> summary(in).depthMm()),
                of(
                        "rain-summary.wet-days",
                        "days",
                        "daily period row",
                        in -> summary(in).wetDays()),
                of(
                        "rain-summary.percent-of-normal",
                        "%",
                        "daily period row normals",
                        in -> summary(in).percentOfNormal().orElseThrow()),
                of("snow.rain", "mm", SNOW, in -> snow(in).rain().value(in.integer("step"))),
                of("snow.melt", "mm", SNOW, in -> snow(in).melt().value(in.integer("step"))),
                of("snow.lying", "mm", SNOW, in -> snow(in).lying().value(in.integer("step"))));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("rainfall", name, unit, inputs, body);
    }

    private static Duration seconds(Inputs in, String name) {
        return Duration.ofNanos(Math.round(in.number(name) * 1e9));
    }

    private static Duration minutes(Inputs in, String name) {
        return Duration.ofNanos(Math.round(in.number(name) * 60e9));
    }

    private static Series series(double[] values) {
        return RegularSeries.of(START, Duration.ofMinutes(1), values).toSeries();
    }

    private static RegularSeries rain(Inputs in) {
        return RegularSeries.of(START, minutes(in, "step_minutes"), in.sample("depths"));
    }

    private static TippingBucket bucket(Inputs in) {
        TippingBucket bucket = TippingBucket.ofTip(in.number("tip_mm"));
        return in.has("lost_seconds") && in.number("lost_seconds") > 0
                ? bucket.withCalibration(LostTime.ofSeconds(in.number("lost_seconds")))
                : bucket;
    }

    private static Tips tips(Inputs in) {
        return Tips.of(Arrays.stream(in.sample("tip_seconds"))
                .mapToObj(second -> START.plusNanos(Math.round(second * 1e9)))
                .toList());
    }

    private static TipSpreading spreading(Inputs in) {
        Duration cap = in.has("cap_seconds") ? seconds(in, "cap_seconds") : Duration.ofHours(1);
        return switch (in.text("spreading")) {
            case "count" -> TipSpreading.COUNT;
            case "interval" -> TipSpreading.interval(cap);
            case "smooth" -> TipSpreading.smooth(cap);
            default -> throw new IllegalArgumentException("spreading must be count, interval or smooth");
        };
    }

    private static RegularSeries laidOut(Inputs in) {
        Interval record = Interval.of(START, seconds(in, "record_seconds"));
        List<Interval> outages = in.has("outage_from") && in.number("outage_to") > 0
                ? List.of(Interval.of(START.plus(seconds(in, "outage_from")), START.plus(seconds(in, "outage_to"))))
                : List.of();
        return bucket(in)
                .record(tips(in), record, seconds(in, "step_seconds"), spreading(in), outages)
                .depth();
    }

    /** Gauges as {@code 1 2 3; 4 5 6}, named gauge 1, gauge 2 ... */
    private static Map<String, RegularSeries> network(Inputs in, Duration step) {
        Map<String, RegularSeries> gauges = new LinkedHashMap<>();
        for (String gauge : in.text("gauges").split(";")) {
            double[] depths = Arrays.stream(gauge.strip().split(" "))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            gauges.put("gauge " + (gauges.size() + 1), RegularSeries.of(START, step, depths));
        }
        return gauges;
    }

    private static Neighbours.Finding finding(Inputs in) {
        return Neighbours.of(network(in, Duration.ofDays(1)))
                .withWetLimit(in.number("wet_mm"))
                .findings()
                .get(in.integer("gauge") - 1);
    }

    private static DoubleMass mass(Inputs in) {
        return DoubleMass.of(in.sample("gauge_mm"), in.sample("reference_mm"));
    }

    private static StorageComparison storage(Inputs in) {
        StorageGauge gauge = StorageGauge.installed(START);
        double[] hours = in.sample("reading_hours");
        double[] stored = in.sample("stored_mm");
        for (int i = 0; i < hours.length; i++) {
            gauge = gauge.withReading(START.plusSeconds(Math.round(hours[i] * 3600)), stored[i]);
        }
        return gauge.compareByAllowanceAndResolution(
                RegularSeries.of(START, Duration.ofHours(1), in.sample("depths")),
                in.number("allowance"),
                in.number("resolution_mm"));
    }

    private static RegularSeries stepped(Inputs in) {
        double[] minutes = in.sample("minutes");
        double[] values = in.sample("values");
        SeriesBuilder readings = Series.builder();
        for (int i = 0; i < minutes.length; i++) {
            readings.add(START.plusSeconds(Math.round(minutes[i] * 60)), values[i]);
        }
        Duration step = minutes(in, "step_minutes");
        SteppedGauge gauge =
                in.text("kind").equals("intensity") ? SteppedGauge.ofIntensity(step) : SteppedGauge.ofDepth(step);
        return (in.text("stamp").equals("end") ? gauge.withStampAtEnd() : gauge)
                .withDryWithoutReading()
                .record(readings.build())
                .depth();
    }

    private static EventRecord separated(Inputs in) {
        return separation(in).separate(rain(in));
    }

    private static RainfallEvent event(Inputs in) {
        return separated(in).events().get(in.integer("number") - 1);
    }

    private static double verdict(Inputs in) {
        Map<String, RegularSeries> gauges = network(in, minutes(in, "step_minutes"));
        StormCriteria criteria = StormCriteria.ofDepthAndIntensity(
                        "table", in.number("depth_mm"), in.number("intensity"), minutes(in, "over_minutes"))
                .withMaximumSpread(in.number("spread"))
                .withConcentrationTime(minutes(in, "concentration_minutes"));
        Interval storm = gauges.values().iterator().next().interval();
        StormAssessment.Verdict verdict = criteria.assess(storm, gauges).verdict();
        return switch (verdict) {
            case MET -> 1;
            case NOT_MET -> 0;
            case UNKNOWN -> -1;
        };
    }

    private static DailyRain daily(Inputs in) {
        Instant start = START.plusSeconds(Math.round(in.number("offset_hours") * 3600));
        return DailyRain.of(
                RegularSeries.of(start, minutes(in, "step_minutes"), in.sample("depths")),
                RainDay.startingAt(LocalTime.of(in.integer("day_start"), 0), ZoneOffset.UTC));
    }

    private static DailyRain ofDays(Inputs in) {
        return DailyRain.of(
                RegularSeries.of(START, Duration.ofDays(1), in.sample("daily")), RainDay.midnight(ZoneOffset.UTC));
    }

    private static RainSummary.Row summary(Inputs in) {
        Map<Month, Double> normals = new EnumMap<>(Month.class);
        if (in.has("normals")) {
            double[] values = in.sample("normals");
            for (int i = 0; i < values.length; i++) {
                normals.put(Month.of(i + 1), values[i]);
            }
        }
        DailyRain days = ofDays(in);
        RainSummary summary = in.text("period").equals("season")
                ? RainSummary.seasonal(days, normals)
                : RainSummary.monthly(days, normals);
        return summary.rows().get(in.integer("row"));
    }

    private static SnowRecord snow(Inputs in) {
        double[] celsius = in.sample("celsius");
        return SnowRule.standard()
                .mark(
                        RegularSeries.of(START, Duration.ofHours(6), in.sample("depths")),
                        RegularSeries.of(START, Duration.ofHours(6), celsius).toSeries());
    }
}
