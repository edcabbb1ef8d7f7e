package dev.runnel.verification.calculation;

import static dev.runnel.verification.calculation.RainInputs.START;
import static dev.runnel.verification.calculation.RainInputs.bucket;
import static dev.runnel.verification.calculation.RainInputs.minutes;
import static dev.runnel.verification.calculation.RainInputs.rain;
import static dev.runnel.verification.calculation.RainInputs.rainfall;
import static dev.runnel.verification.calculation.RainInputs.seconds;
import static dev.runnel.verification.calculation.RainInputs.tips;

import dev.runnel.rainfall.ddf.FormulaDdf;
import dev.runnel.rainfall.ddf.GrowthFactors;
import dev.runnel.rainfall.ddf.IntensityFormula;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import dev.runnel.rainfall.design.DryWeatherDesign;
import dev.runnel.rainfall.event.DailyRain;
import dev.runnel.rainfall.event.DryGaps;
import dev.runnel.rainfall.event.DrySpells;
import dev.runnel.rainfall.event.EventDetector;
import dev.runnel.rainfall.event.EventRecord;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.IntensityListing;
import dev.runnel.rainfall.event.RainDay;
import dev.runnel.rainfall.event.RainSummary;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.event.SlidingMaximum;
import dev.runnel.rainfall.event.StepSeparation;
import dev.runnel.rainfall.event.StormProfile;
import dev.runnel.rainfall.event.TipCount;
import dev.runnel.rainfall.gauge.CalibrationCurve;
import dev.runnel.rainfall.gauge.DoubleMass;
import dev.runnel.rainfall.gauge.RainUnits;
import dev.runnel.rainfall.gauge.StepRecord;
import dev.runnel.rainfall.gauge.TipRecord;
import dev.runnel.rainfall.gauge.TipSpreading;
import dev.runnel.rainfall.response.Recession;
import dev.runnel.rainfall.response.ResponseLag;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Counts and corners of rain that a single answer does not show: what is set aside, what is refused, the last of a list. */
final class RainCornerCalculations {
    private static final String SPELLS = "daily most_mm least_days";
    private static final String LAG = "rain flow longest";
    private static final String RECORD =
            "tip_seconds tip_mm lost_seconds? cap_seconds record_seconds step_seconds outages";
    private static final String STEPS = "depths step_seconds new_seconds";
    private static final String BARE = "tip_seconds tip_mm lost_seconds? cap_seconds step_seconds spreading";
    private static final String FORMULAE = "basis years a b n shortest longest";

    private RainCornerCalculations() {}

    static List<Calculation> all() {
        return List.of(
                rainfall(
                        "event.listing.book",
                        "mm/h",
                        "depths step_minutes windows_minutes",
                        in -> Books.sum(listing(in), IntensityListing.Row::heaviestMmPerHour)),
                rainfall(
                        "event.peak-at-least",
                        "1 or 0",
                        "depths step_minutes window_minutes",
                        in -> SlidingMaximum.of(minutes(in, "window_minutes"))
                                        .peaks(rain(in))
                                        .get(0)
                                        .isAtLeast()
                                ? 1
                                : 0),
                rainfall("dry-spells.book", "days", SPELLS, in -> Books.sum(spells(in), DrySpells.Spell::days)),
                rainfall(
                        "dry-spells.at-least",
                        "spells",
                        SPELLS,
                        in -> Books.sum(spells(in), each -> each.isAtLeast() ? 1 : 0)),
                rainfall("response.lag-pairs", "steps", LAG, in -> lag(in).pairs()),
                rainfall("response.lag-at-limit", "1 or 0", LAG, in -> lag(in).atLimit() ? 1 : 0),
                rainfall(
                        "gauge.record.aside",
                        "tips",
                        RECORD,
                        in -> tipRecord(in).aside()),
                rainfall(
                        "gauge.record.aside-depth",
                        "mm",
                        RECORD,
                        in -> tipRecord(in).asideMm()),
                rainfall(
                        "gauge.record.missing",
                        "steps",
                        RECORD,
                        in -> tipRecord(in).missing()),
                rainfall(
                        "gauge.record.in-missing",
                        "mm",
                        RECORD,
                        in -> tipRecord(in).depthInMissingMm()),
                rainfall(
                        "gauge.record.book",
                        "mm",
                        RECORD,
                        in -> known(tipRecord(in).depth())),
                rainfall(
                        "rain-units.in-steps.aside",
                        "steps",
                        STEPS,
                        in -> inSteps(in).aside()),
                rainfall(
                        "rain-units.in-steps.aside-depth",
                        "mm",
                        STEPS,
                        in -> inSteps(in).asideMm()),
                rainfall(
                        "rain-units.in-steps.missing",
                        "steps",
                        STEPS,
                        in -> inSteps(in).missing()),
                rainfall(
                        "rain-units.in-steps.book",
                        "mm",
                        STEPS,
                        in -> known(inSteps(in).depth())),
                rainfall(
                        "storm.profile.quarters",
                        "1",
                        "depths step_minutes",
                        in -> Books.sum(
                                Arrays.stream(StormProfile.of(rain(in)).quarterShares())
                                        .boxed()
                                        .toList(),
                                share -> share)),
                rainfall(
                        "rain-summary.wettest",
                        "mm",
                        "daily row",
                        in -> summary(in).wettestMm()),
                rainfall(
                        "response.recession-left-out",
                        "steps",
                        "flow",
                        in -> recession(in).leftOut()),
                rainfall(
                        "response.recession-steps",
                        "steps",
                        "flow",
                        in -> recession(in).steps()),
                rainfall(
                        "gauge.curve.plain-factor",
                        "1",
                        "form a b c lowest highest recorded",
                        in -> curve(in).factor(in.number("recorded"), 0.2)),
                rainfall(
                        "event.tip-groups.depth",
                        "mm",
                        "tip_seconds counts tip_mm lost_seconds inter_event_minutes",
                        in -> Books.sum(groups(in), RainfallEvent::depthMm)),
                rainfall("gauge.bare-record.book", "mm", BARE, in -> known(bare(in))),
                rainfall(
                        "gauge.bare-record.start",
                        "s",
                        BARE,
                        in -> Duration.between(START, bare(in).start()).toNanos() / 1e9),
                rainfall("gauge.bare-record.size", "steps", BARE, in -> bare(in).size()),
                rainfall(
                        "dry-weather.of-heads",
                        "m3/d",
                        "heads",
                        in -> DryWeatherDesign.ofPopulation(in.number("heads")).dryWeatherM3PerDay()),
                rainfall(
                        "double-mass.chance",
                        "1",
                        "gauge reference least shuffles",
                        in -> DoubleMass.of(in.sample("gauge"), in.sample("reference"))
                                .chanceOfBreak(in.integer("least"), in.integer("shuffles"), 1)),
                rainfall(
                        "event.state-kept",
                        "steps",
                        "depths step_minutes inter_event_minutes wet_above_mm put",
                        in -> goneOn(in).missingSteps()),
                rainfall(
                        "event.tips.stray",
                        "mm",
                        "tip_seconds tip_mm record_seconds inter_event_minutes",
                        in -> separated(in).strayMm()),
                rainfall(
                        "event.tips.dropped",
                        "mm",
                        "tip_seconds tip_mm record_seconds inter_event_minutes minimum_mm",
                        in -> separated(in).droppedMm()),
                rainfall(
                        "dry-gaps.exponential",
                        "h",
                        "gaps_hours convention",
                        in -> DryGaps.ofHours(in.sample("gaps_hours"))
                                        .exponential(DryGaps.Convention.valueOf(
                                                in.text("convention").toUpperCase(Locale.ROOT)))
                                        .orElseThrow()
                                        .minimum()
                                        .toNanos()
                                / 3.6e12),
                rainfall(
                        "gauge.calibration.worst",
                        "%",
                        "form funnel_cm2 volumes_ml tips seconds tip_mm?",
                        in -> GaugeCalculations.fit(in).worstPercent()),
                rainfall(
                        "ddf.of-formulae.depth",
                        "mm",
                        FORMULAE + " minutes asked_years",
                        in -> formulae(in).depthMm(minutes(in, "minutes"), in.number("asked_years"))),
                rainfall(
                        "ddf.growth-factors.factor",
                        "1",
                        "text m5 asked_years",
                        in -> GrowthFactors.parse(in.text("text"), "table")
                                .fromM5(in.number("m5"))
                                .factor(in.number("asked_years"))));
    }

    private static RegularSeries bare(Inputs in) {
        Duration cap = seconds(in, "cap_seconds");
        return bucket(in)
                .depth(
                        tips(in),
                        seconds(in, "step_seconds"),
                        in.text("spreading").equals("smooth") ? TipSpreading.smooth(cap) : TipSpreading.interval(cap));
    }

    private static RainSummary.Row summary(Inputs in) {
        RegularSeries daily = RegularSeries.of(START, Duration.ofDays(1), in.sample("daily"));
        return RainSummary.monthly(DailyRain.of(daily, RainDay.midnight(ZoneOffset.UTC)))
                .rows()
                .get(in.integer("row"));
    }

    private static Recession recession(Inputs in) {
        return Recession.of(RegularSeries.of(START, Duration.ofMinutes(10), in.sample("flow")));
    }

    private static CalibrationCurve curve(Inputs in) {
        double a = in.number("a");
        double b = in.number("b");
        double lowest = in.number("lowest");
        double highest = in.number("highest");
        return switch (in.text("form")) {
            case "linear" -> CalibrationCurve.linear(a, b, lowest, highest);
            case "quadratic" -> CalibrationCurve.quadratic(a, b, in.number("c"), lowest, highest);
            default -> CalibrationCurve.power(a, b, lowest, highest);
        };
    }

    private static List<RainfallEvent> groups(Inputs in) {
        double[] counts = in.sample("counts");
        List<TipCount> told = new ArrayList<>();
        for (Instant time : tips(in).toInstants()) {
            told.add(new TipCount(time, (int) counts[told.size()]));
        }
        return Books.answers(
                EventSeparation.of(minutes(in, "inter_event_minutes")).ofTips(bucket(in)), told, true);
    }

    /** A machine stopped after the depths, whose state is changed by pairs of key=value before it goes on. */
    private static EventDetector goneOn(Inputs in) {
        StepSeparation rule = EventSeparation.of(minutes(in, "inter_event_minutes"))
                .withWetAbove(in.number("wet_above_mm"))
                .withoutPeaks()
                .ofSteps(minutes(in, "step_minutes"));
        EventDetector machine = rule.start();
        RegularSeries rain = rain(in);
        for (int i = 0; i < rain.size(); i++) {
            List<RainfallEvent> unused = machine.next(Reading.of(rain.time(i), rain.value(i)));
        }
        String state = machine.state().toText();
        for (String pair : in.text("put").split(" ")) {
            String key = pair.substring(0, pair.indexOf('=') + 1);
            state = state.replaceFirst("(?<= )" + key + "\\S*", pair);
        }
        return rule.start(rule.parseState(state));
    }

    private static EventRecord separated(Inputs in) {
        return EventSeparation.of(minutes(in, "inter_event_minutes"))
                .withMinimumDepth(in.number("minimum_mm", 0))
                .separate(tips(in), Interval.of(START, seconds(in, "record_seconds")), bucket(in), List.of());
    }

    private static double known(RegularSeries rain) {
        List<Double> depths = Arrays.stream(rain.toValues()).boxed().toList();
        return Books.sum(depths, depth -> Double.isNaN(depth) ? 0 : depth);
    }

    private static List<IntensityListing.Row> listing(Inputs in) {
        List<Duration> windows = Arrays.stream(in.sample("windows_minutes"))
                .mapToObj(minutes -> Duration.ofNanos(Math.round(minutes * 60e9)))
                .toList();
        return IntensityListing.of(rain(in), windows).rows();
    }

    private static List<DrySpells.Spell> spells(Inputs in) {
        RegularSeries daily = RegularSeries.of(START, Duration.ofDays(1), in.sample("daily"));
        return DrySpells.of(
                DailyRain.of(daily, RainDay.midnight(ZoneOffset.UTC)), in.number("most_mm"), in.integer("least_days"));
    }

    private static ResponseLag lag(Inputs in) {
        Duration step = Duration.ofMinutes(10);
        return ResponseLag.of(
                RegularSeries.of(START, step, in.sample("rain")),
                RegularSeries.of(START, step, in.sample("flow")),
                Duration.ofMinutes(in.integer("longest")));
    }

    private static TipRecord tipRecord(Inputs in) {
        double[] ends = in.sample("outages");
        List<Interval> outages = new ArrayList<>();
        for (int i = 0; i + 1 < ends.length; i += 2) {
            outages.add(Interval.of(
                    START.plusMillis(Math.round(ends[i] * 1000)), START.plusMillis(Math.round(ends[i + 1] * 1000))));
        }
        return bucket(in)
                .record(
                        tips(in),
                        Interval.of(START, seconds(in, "record_seconds")),
                        seconds(in, "step_seconds"),
                        TipSpreading.interval(seconds(in, "cap_seconds")),
                        outages);
    }

    private static StepRecord inSteps(Inputs in) {
        return RainUnits.inSteps(
                RegularSeries.of(START, seconds(in, "step_seconds"), in.sample("depths")), seconds(in, "new_seconds"));
    }

    private static FormulaDdf formulae(Inputs in) {
        double[] years = in.sample("years");
        Map<Double, IntensityFormula> byYears = new LinkedHashMap<>();
        for (int i = 0; i < years.length; i++) {
            byYears.put(
                    years[i],
                    IntensityFormula.sherman(
                            in.sample("a")[i],
                            in.sample("b")[i],
                            in.sample("n")[i],
                            minutes(in, "shortest"),
                            minutes(in, "longest")));
        }
        ReturnPeriodBasis basis = in.text("basis").equals("annual")
                ? ReturnPeriodBasis.ANNUAL_MAXIMUM
                : ReturnPeriodBasis.PEAKS_OVER_THRESHOLD;
        return FormulaDdf.of(basis, byYears);
    }
}
