package dev.runnel.examples.review;

import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.EventRarity;
import dev.runnel.rainfall.event.DryDayRule;
import dev.runnel.rainfall.event.DryDays;
import dev.runnel.rainfall.event.EventRecord;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.gauge.TipSpreading;
import dev.runnel.rainfall.gauge.TipSummary;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.balance.DailyTotal;
import dev.runnel.timeseries.balance.DailyTotals;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What the gauge saw while the logger was at work.
 *
 * @param record time of the logger's record, to which the rain is cut
 * @param summary counts and depth of the tips in it
 * @param tipsOutside tips before or after it
 * @param rain rain in steps of a minute, mm
 * @param events the storms and what was left out of them
 * @param storms each storm with its rarity, if there is a table
 * @param days dry, wet and unknown days
 * @param daily rain of each local day, mm
 */
record RainFindings(
        Interval record,
        TipSummary summary,
        int tipsOutside,
        RegularSeries rain,
        EventRecord events,
        List<Storm> storms,
        DryDays days,
        List<DailyTotal> daily) {
    /** Durations over which peaks are measured. */
    static final List<Duration> DURATIONS = List.of(
            Duration.ofMinutes(5),
            Duration.ofMinutes(15),
            Duration.ofMinutes(30),
            Duration.ofHours(1),
            Duration.ofHours(3),
            Duration.ofHours(6),
            Duration.ofHours(24));

    /** Longest time over which a tip is spread: longer would let storms begin well before their first tip. */
    static final Duration TIP_CAP = Duration.ofMinutes(15);

    private static final Duration STEP = Duration.ofMinutes(1);

    /**
     * A storm.
     *
     * @param event its measures
     * @param rarity how rare it was, if there is a depth-duration-frequency table
     */
    record Storm(RainfallEvent event, Optional<EventRarity> rarity) {}

    static RainFindings of(Site site, Tips tips, Interval record, Optional<DdfTable> table) {
        Site.RainRules rules = site.rain();
        Tips inside = tips.slice(record);
        RegularSeries rain = rules.bucket().depth(inside, record, STEP, TipSpreading.interval(TIP_CAP));
        EventRecord events = EventSeparation.of(rules.minimumInterEvent())
                .withMinimumDepth(rules.minimumDepthMm())
                .withPeakDurations(DURATIONS)
                .separate(rain);
        List<Storm> storms = events.events().stream()
                .map(event -> new Storm(event, table.map(relation -> relation.rarity(event))))
                .toList();
        DryDayRule rule =
                DryDayRule.of(rules.dryDayLimitMm()).withDaysBefore(rules.daysAfterRain(), rules.dryDayLimitMm());
        return new RainFindings(
                record,
                rules.bucket().summary(inside),
                tips.size() - inside.size(),
                rain,
                events,
                storms,
                DryDays.of(rule, rain, site.zone()),
                DailyTotals.in(site.zone()).totals(rain.map(mm -> mm / STEP.toSeconds())));
    }

    /** Returns what the rain makes of a day. */
    String kind(LocalDate date) {
        return days.dates().contains(date) ? "dry" : days.wet().contains(date) ? "wet" : "not known";
    }
}
