package dev.runnel.verification.calculation;

import static dev.runnel.verification.calculation.RainInputs.START;
import static dev.runnel.verification.calculation.RainInputs.bucket;
import static dev.runnel.verification.calculation.RainInputs.minutes;
import static dev.runnel.verification.calculation.RainInputs.network;
import static dev.runnel.verification.calculation.RainInputs.rain;
import static dev.runnel.verification.calculation.RainInputs.rainfall;
import static dev.runnel.verification.calculation.RainInputs.tips;

import dev.runnel.rainfall.event.AntecedentIndex;
import dev.runnel.rainfall.event.DryGaps;
import dev.runnel.rainfall.event.EventDetector;
import dev.runnel.rainfall.event.EventRecord;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.IntensityListing;
import dev.runnel.rainfall.event.RainAutocorrelation;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.event.StepSeparation;
import dev.runnel.rainfall.event.StormAssessment;
import dev.runnel.rainfall.event.StormCriteria;
import dev.runnel.rainfall.event.StormProfile;
import dev.runnel.rainfall.event.TipCount;
import dev.runnel.rainfall.event.TipEventDetector;
import dev.runnel.rainfall.event.TipSeparation;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What is calculated of storms and what was before them. */
final class RainEventCalculations {
    private static final String STEPS = "depths step_minutes inter_event_minutes minimum_mm? wet_above_mm? number";

    /** What the events of a record depend on, without which of them is asked for. */
    private static final List<String> RECORD =
            List.of("depths", "step_minutes", "inter_event_minutes", "minimum_mm", "wet_above_mm", "window_minutes");

    private static final LastAnswer<List<RainfallEvent>> LAST_ARRIVED = new LastAnswer<>();

    private RainEventCalculations() {}

    static List<Calculation> all() {
        return List.of(
                rainfall("event.steps.depth", "mm", STEPS, in -> event(in).depthMm()),
                rainfall(
                        "event.steps.mean-intensity",
                        "mm/h",
                        STEPS,
                        in -> event(in).meanIntensityMmPerHour().orElseThrow()),
                rainfall(
                        "event.steps.dry-hours",
                        "h",
                        STEPS,
                        in -> event(in).antecedentDryTime().toNanos() / 3.6e12),
                rainfall("event.steps.missing", "steps", STEPS, in -> event(in).missingSteps()),
                rainfall(
                        "event.steps.peak-intensity",
                        "mm/h",
                        STEPS + " window_minutes",
                        in -> event(in).peak(minutes(in, "window_minutes")).intensityMmPerHour()),
                rainfall("event.steps.dropped", "mm", STEPS, in -> separated(in).droppedMm()),
                rainfall("event.steps.stray", "mm", STEPS, in -> separated(in).strayMm()),
                rainfall(
                        "event.listing.heaviest",
                        "mm/h",
                        "depths step_minutes window_minutes",
                        in -> IntensityListing.of(rain(in), List.of(minutes(in, "window_minutes")))
                                .rows()
                                .get(0)
                                .heaviestMmPerHour()),
                rainfall(
                        "event.dry-gaps.variation",
                        "1",
                        "depths step_minutes candidate",
                        in -> DryGaps.of(rain(in))
                                .candidates(DryGaps.Convention.GAPS)
                                .get(in.integer("candidate"))
                                .coefficientOfVariation()),
                rainfall(
                        "event.autocorrelation-limit",
                        "1",
                        "depths lag",
                        in -> RainAutocorrelation.of(
                                        RegularSeries.of(START, Duration.ofHours(1), in.sample("depths")),
                                        in.integer("lag"))
                                .limit(in.integer("lag"))),
                rainfall(
                        "storm.profile.share",
                        "1",
                        "depths step_minutes fraction",
                        in -> StormProfile.of(rain(in)).depthShare(in.number("fraction"))),
                rainfall(
                        "storm.profile.centroid",
                        "min",
                        "depths step_minutes",
                        in -> StormProfile.of(rain(in)).timeToCentroid().toNanos() / 60e9),
                rainfall(
                        "storm.criteria.verdict",
                        "1 met, 0 not, -1 unknown",
                        "gauges step_minutes depth_mm intensity over_minutes spread concentration_minutes",
                        RainEventCalculations::verdict),
                rainfall(
                        "storm.criteria.named",
                        "1 met, 0 not, -1 unknown",
                        "gauges step_minutes criteria",
                        in -> verdict(in, named(in))),
                rainfall(
                        "antecedent-index.before",
                        "mm",
                        "daily recession days day",
                        in -> AntecedentIndex.of(in.number("recession"), in.integer("days"))
                                .before(RegularSeries.of(START, Duration.ofDays(1), in.sample("daily")))
                                .value(in.integer("day"))),
                rainfall("event.arriving.depth", "mm", STEPS, in -> arriving(in).depthMm()),
                rainfall(
                        "event.arriving.peak-intensity",
                        "mm/h",
                        STEPS + " window_minutes",
                        in -> arriving(in).peak(minutes(in, "window_minutes")).intensityMmPerHour()),
                rainfall(
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
        return LAST_ARRIVED.of(in, RECORD, () -> arrived(in)).get(in.integer("number") - 1);
    }

    private static List<RainfallEvent> arrived(Inputs in) {
        StepSeparation rule = separation(in).ofSteps(minutes(in, "step_minutes"));
        EventDetector machine = rule.start();
        List<RainfallEvent> events = new ArrayList<>();
        RegularSeries rain = rain(in);
        for (int i = 0; i < rain.size(); i++) {
            events.addAll(machine.next(Reading.of(rain.time(i), rain.value(i))));
            machine = rule.start(rule.parseState(machine.state().toText()));
        }
        events.addAll(machine.finish());
        return List.copyOf(events);
    }

    private static EventRecord separated(Inputs in) {
        return separation(in).separate(rain(in));
    }

    private static RainfallEvent event(Inputs in) {
        return separated(in).events().get(in.integer("number") - 1);
    }

    private static StormCriteria named(Inputs in) {
        return switch (in.text("criteria")) {
            case "calibration-2020" -> StormCriteria.calibration2020();
            case "short-term-survey" -> StormCriteria.shortTermSurvey();
            default ->
                throw new IllegalArgumentException(
                        "criteria must be calibration-2020 or short-term-survey, was " + in.text("criteria"));
        };
    }

    private static double verdict(Inputs in) {
        StormCriteria criteria = StormCriteria.ofDepthAndIntensity(
                        "table", in.number("depth_mm"), in.number("intensity"), minutes(in, "over_minutes"))
                .withMaximumSpread(in.number("spread"))
                .withConcentrationTime(minutes(in, "concentration_minutes"));
        return verdict(in, criteria);
    }

    private static double verdict(Inputs in, StormCriteria criteria) {
        Map<String, RegularSeries> gauges = network(in, minutes(in, "step_minutes"));
        Interval storm = gauges.values().iterator().next().interval();
        StormAssessment.Verdict verdict = criteria.assess(storm, gauges).verdict();
        return switch (verdict) {
            case MET -> 1;
            case NOT_MET -> 0;
            case UNKNOWN -> -1;
        };
    }
}
