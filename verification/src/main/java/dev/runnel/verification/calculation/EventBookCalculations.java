package dev.runnel.verification.calculation;

import static dev.runnel.verification.calculation.RainInputs.START;
import static dev.runnel.verification.calculation.RainInputs.bucket;
import static dev.runnel.verification.calculation.RainInputs.minutes;
import static dev.runnel.verification.calculation.RainInputs.rain;
import static dev.runnel.verification.calculation.RainInputs.rainfall;
import static dev.runnel.verification.calculation.RainInputs.tips;

import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.event.TipCount;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** All events of a record, see {@link Books}. */
final class EventBookCalculations {
    private static final String STEPS =
            "way depths step_minutes inter_event_minutes minimum_mm wet_above_mm windows_minutes";
    private static final String TIPS = "way tip_seconds record_seconds tip_mm inter_event_minutes windows_minutes";

    private static final LastAnswer<List<RainfallEvent>> OF_STEPS = new LastAnswer<>();
    private static final LastAnswer<List<RainfallEvent>> OF_TIPS = new LastAnswer<>();

    private EventBookCalculations() {}

    static List<Calculation> all() {
        List<Calculation> all = new ArrayList<>();
        all.add(of("count", "events", e -> 1));
        all.add(of("depth", "mm", RainfallEvent::depthMm));
        all.add(of("start", "min", e -> minute(e.start())));
        all.add(of("end", "min", e -> minute(e.end())));
        all.add(of("dry", "min", e -> e.antecedentDryTime().toNanos() / 60e9));
        all.add(of("missing", "steps", RainfallEvent::missingSteps));
        all.add(of("missing-after", "steps", RainfallEvent::missingStepsAfter));
        all.add(of("missing-before", "steps", e -> e.antecedent().missingSteps()));
        all.add(of("open", "1", e -> (e.isOpenAtStart() ? 1 : 0) + (e.isOpenAtEnd() ? 2 : 0)));
        all.add(of("peaks", "mm", e -> Books.sum(e.peaks(), peak -> peak.depthMm())));
        all.add(of("peak-starts", "min", e -> Books.sum(e.peaks(), peak -> minute(peak.start()))));
        all.add(ofTips("count", "events", e -> 1));
        all.add(ofTips("depth", "mm", RainfallEvent::depthMm));
        all.add(ofTips("start", "min", e -> minute(e.start())));
        all.add(ofTips("end", "min", e -> minute(e.end())));
        all.add(ofTips("dry", "min", e -> e.antecedentDryTime().toNanos() / 60e9));
        all.add(ofTips("open", "1", e -> (e.isOpenAtStart() ? 1 : 0) + (e.isOpenAtEnd() ? 2 : 0)));
        all.add(ofTips("peaks", "mm", e -> Books.sum(e.peaks(), peak -> peak.depthMm())));
        all.add(ofTips("peak-starts", "min", e -> Books.sum(e.peaks(), peak -> minute(peak.start()))));
        return all;
    }

    private static Calculation of(String name, String unit, ToDoubleFunction<RainfallEvent> measure) {
        return rainfall(
                "event.book." + name,
                unit,
                STEPS,
                in -> Books.sum(
                        OF_STEPS.of(
                                in,
                                List.of(
                                        "way",
                                        "depths",
                                        "step_minutes",
                                        "inter_event_minutes",
                                        "minimum_mm",
                                        "wet_above_mm",
                                        "windows_minutes"),
                                () -> events(in)),
                        measure));
    }

    private static Calculation ofTips(String name, String unit, ToDoubleFunction<RainfallEvent> measure) {
        return rainfall(
                "event.tip-book." + name,
                unit,
                TIPS,
                in -> Books.sum(
                        OF_TIPS.of(
                                in,
                                List.of(
                                        "way",
                                        "tip_seconds",
                                        "record_seconds",
                                        "tip_mm",
                                        "inter_event_minutes",
                                        "windows_minutes"),
                                () -> eventsOfTips(in)),
                        measure));
    }

    private static double minute(Instant time) {
        return Duration.between(START, time).toNanos() / 60e9;
    }

    private static EventSeparation separation(Inputs in) {
        return EventSeparation.of(minutes(in, "inter_event_minutes"))
                .withPeakDurations(Arrays.stream(in.sample("windows_minutes"))
                        .mapToObj(minutes -> Duration.ofNanos(Math.round(minutes * 60e9)))
                        .toList());
    }

    private static List<RainfallEvent> events(Inputs in) {
        EventSeparation separation =
                separation(in).withMinimumDepth(in.number("minimum_mm")).withWetAbove(in.number("wet_above_mm"));
        RegularSeries rain = rain(in);
        if (in.text("way").equals("whole")) {
            return separation.events(rain);
        }
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < rain.size(); i++) {
            readings.add(Reading.of(rain.time(i), rain.value(i)));
        }
        return Books.answers(
                separation.ofSteps(minutes(in, "step_minutes")),
                readings,
                in.text("way").equals("cut"));
    }

    private static List<RainfallEvent> eventsOfTips(Inputs in) {
        EventSeparation separation = separation(in);
        Instant end = START.plusNanos(Math.round(in.number("record_seconds") * 1e9));
        if (in.text("way").equals("whole")) {
            return separation.events(tips(in), Interval.of(START, end), bucket(in));
        }
        List<TipCount> counts = new ArrayList<>();
        counts.add(TipCount.none(START));
        Instant last = START;
        for (Instant tip : tips(in).toInstants()) {
            // Half way between tips a logger says that there was none.
            Instant half = last.plus(Duration.between(last, tip).dividedBy(2));
            if (half.isAfter(last)) {
                counts.add(TipCount.none(half));
            }
            counts.add(TipCount.tip(tip));
            last = tip;
        }
        counts.add(TipCount.none(end));
        return Books.answers(
                separation.ofTips(bucket(in)), counts, in.text("way").equals("cut"));
    }
}
