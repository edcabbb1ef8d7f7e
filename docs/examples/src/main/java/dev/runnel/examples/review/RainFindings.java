package dev.runnel.examples.review;

import dev.runnel.rainfall.ddf.DdfBand;
import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.EventRarity;
import dev.runnel.rainfall.event.DailyRain;
import dev.runnel.rainfall.event.DryDayRule;
import dev.runnel.rainfall.event.DryDays;
import dev.runnel.rainfall.event.EventRecord;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.RainDay;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.gauge.ImpossibleRain;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What the gauge saw while the logger was at work.
 *
 * @param account how much it was and what was left out, for people
 * @param rain rain in equal steps, mm
 * @param depthMm depth of all the rain, mm
 * @param silent times in which the gauge may have been dead, and the rain is not known
 * @param impossible what fell nowhere on earth and was set aside, of rain by the step
 * @param events the storms and what was left out of them
 * @param storms each storm with its rarity, if there is a table
 * @param days dry, wet and unknown days
 * @param daily rain of each local day, mm
 */
record RainFindings(
        String account,
        RegularSeries rain,
        double depthMm,
        List<Interval> silent,
        Optional<ImpossibleRain> impossible,
        EventRecord events,
        List<Storm> storms,
        DryDays days,
        DailyRain daily) {
    /** Durations over which peaks are measured, as far as the steps of the rain allow. */
    static final List<Duration> DURATIONS = List.of(
            Duration.ofMinutes(5),
            Duration.ofMinutes(15),
            Duration.ofMinutes(30),
            Duration.ofHours(1),
            Duration.ofHours(3),
            Duration.ofHours(6),
            Duration.ofHours(24));

    /**
     * A storm.
     *
     * @param event its measures
     * @param rarity how rare it was, if there is a depth-duration-frequency table
     */
    record Storm(RainfallEvent event, Optional<EventRarity> rarity) {}

    static RainFindings of(Site site, RainSource.Rain source, Optional<DdfTable> table, Optional<DdfBand> band) {
        Site.RainRules rules = site.rain();
        RegularSeries rain = source.depth();
        long step = rain.step().toNanos();
        EventRecord events = EventSeparation.of(rules.minimumInterEvent())
                .withMinimumDepth(rules.minimumDepthMm())
                .withPeakDurations(DURATIONS.stream()
                        .filter(duration -> duration.toNanos() % step == 0)
                        .toList())
                .separate(rain);
        List<Storm> storms = events.events().stream()
                .map(event -> new Storm(
                        event,
                        band.map(limits -> EventRarity.of(limits, event))
                                .or(() -> table.map(relation -> relation.rarity(event)))))
                .toList();
        DryDayRule rule =
                DryDayRule.of(rules.dryDayLimitMm()).withDaysBefore(rules.daysAfterRain(), rules.dryDayLimitMm());
        return new RainFindings(
                source.account(),
                rain,
                rain.sum(),
                source.silent(),
                source.impossible(),
                events,
                storms,
                DryDays.of(rule, rain, site.zone()),
                DailyRain.of(rain, RainDay.midnight(site.zone())));
    }

    /** Returns the peak over a duration; empty if the steps are longer. */
    static Optional<PeakDepth> peak(RainfallEvent event, Duration duration) {
        return event.peaks().stream()
                .filter(peak -> peak.duration().equals(duration))
                .findFirst();
    }

    /** Returns what the rain makes of a day. */
    String kind(LocalDate date) {
        return days.dates().contains(date) ? "dry" : days.notDry().contains(date) ? "wet" : "not known";
    }
}
