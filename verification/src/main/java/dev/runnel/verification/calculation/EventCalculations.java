package dev.runnel.verification.calculation;

import dev.runnel.rainfall.event.DryDayRule;
import dev.runnel.rainfall.event.DryDays;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.RainAutocorrelation;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.event.SlidingMaximum;
import dev.runnel.rainfall.event.StormProfile;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;

/** Events of a record of tips, given as minutes from its start, measures of rain in steps, and dry days of a record of daily depths. */
final class EventCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final String TIPS = "tip_minutes tip_mm inter_event_minutes minimum_mm?";

    private EventCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of(
                        "rainfall",
                        "event.count",
                        "events",
                        TIPS,
                        in -> events(in).size()),
                Calculation.of(
                        "rainfall",
                        "event.depth",
                        "mm",
                        TIPS + " number",
                        in -> event(in).depthMm()),
                Calculation.of(
                        "rainfall",
                        "event.start",
                        "min",
                        TIPS + " number",
                        in -> minutes(event(in).start())),
                Calculation.of(
                        "rainfall",
                        "event.duration",
                        "min",
                        TIPS + " number",
                        in -> event(in).duration().toNanos() / 60e9),
                Calculation.of(
                        "rainfall",
                        "event.mean-intensity",
                        "mm/h",
                        TIPS + " number",
                        in -> event(in).meanIntensityMmPerHour().orElseThrow()),
                Calculation.of(
                        "rainfall",
                        "event.peak-depth",
                        "mm",
                        "depths step_minutes window_minutes",
                        in -> SlidingMaximum.of(duration(in.number("window_minutes")))
                                .peaks(rain(in, duration(in.number("step_minutes"))))
                                .get(0)
                                .depthMm()),
                Calculation.of(
                        "rainfall",
                        "event.autocorrelation",
                        "1",
                        "depths lag",
                        in -> RainAutocorrelation.of(rain(in, Duration.ofHours(1)), in.integer("lag"))
                                .coefficient(in.integer("lag"))),
                Calculation.of(
                        "rainfall",
                        "storm.quartile",
                        "1 to 4",
                        "depths",
                        in -> StormProfile.of(rain(in, Duration.ofMinutes(5))).quartile()),
                Calculation.of(
                        "rainfall",
                        "dry-day.seven-after-seven",
                        "1 or 0",
                        "daily_mm day",
                        in -> isDry(in, DryDayRule.sevenDaysAfterSeven()) ? 1 : 0),
                Calculation.of(
                        "rainfall",
                        "dry-day.two-after-two",
                        "1 or 0",
                        "daily_mm day",
                        in -> isDry(in, DryDayRule.twoMillimetresAndTwoDays()) ? 1 : 0));
    }

    private static RainfallEvent event(Inputs in) {
        return events(in).get(in.integer("number") - 1);
    }

    private static List<RainfallEvent> events(Inputs in) {
        double[] minutes = in.sample("tip_minutes");
        Tips tips = Tips.of(Arrays.stream(minutes)
                .mapToObj(minute -> START.plus(duration(minute)))
                .toList());
        Duration record = duration(minutes[minutes.length - 1]).plusDays(30);
        return EventSeparation.of(duration(in.number("inter_event_minutes")))
                .withMinimumDepth(in.number("minimum_mm", 0))
                .events(tips, Interval.of(START, START.plus(record)), TippingBucket.ofTip(in.number("tip_mm")));
    }

    private static RegularSeries rain(Inputs in, Duration step) {
        return RegularSeries.of(START, step, in.sample("depths"));
    }

    private static boolean isDry(Inputs in, DryDayRule rule) {
        RegularSeries rain = RegularSeries.of(START, Duration.ofDays(1), in.sample("daily_mm"));
        LocalDate day = LocalDate.ofInstant(START, ZoneOffset.UTC).plusDays(in.integer("day"));
        return DryDays.of(rule, rain, ZoneOffset.UTC).dates().contains(day);
    }

    private static Duration duration(double minutes) {
        return Duration.ofNanos(Math.round(minutes * 60e9));
    }

    private static double minutes(Instant time) {
        return Duration.between(START, time).toNanos() / 60e9;
    }
}
