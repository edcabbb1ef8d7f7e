package dev.runnel.examples.review;

import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.rainfall.ddf.DdfBand;
import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.EventRarity;
import dev.runnel.rainfall.ddf.ReturnPeriod;
import dev.runnel.rainfall.event.RainfallEvent;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Rain and storms. */
final class RainText {
    /** More storms than that make no page: the deepest are shown. */
    private static final int MOST = 15;

    private final Page page;
    private final Site site;
    private final Optional<DdfTable> ddf;
    private final Optional<DdfBand> band;
    private final Dates dates;

    private RainText(Page page, Site site, Optional<DdfTable> ddf, Optional<DdfBand> band, Dates dates) {
        this.page = page;
        this.site = site;
        this.ddf = ddf;
        this.band = band;
        this.dates = dates;
    }

    static void put(Page page, SiteReview review) {
        SiteData data = review.data();
        review.rain().ifPresent(rain -> {
            new RainText(page, data.site(), data.ddf(), data.band(), data.dates()).put(rain);
            review.doubts()
                    .ofGauge()
                    .forEach(finding -> page.say("finding " + finding.number()
                            + " puts the rain in doubt from " + data.dates().time(finding.since())
                            + finding.closed()
                                    .map(closed -> " to " + data.dates().time(closed))
                                    .orElse(" on")
                            + ": depths, storms and return periods of that time may be too "
                            + (finding.name() == FindingName.GAUGE_CATCHES_LESS ? "low" : "high")));
        });
    }

    /** Of a gauge without a monitor. */
    static void put(Page page, GaugeReview review) {
        new RainText(page, review.site(), review.ddf(), review.band(), review.dates()).put(review.rain());
    }

    private void put(RainFindings rain) {
        page.section("rain").say(rain.account() + "; " + storms(rain));
        if (rain.storms().isEmpty()) {
            return;
        }
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("begins", "hours", "mm", "dry before", "5 min", "15 min", "1 h", "6 h", "return period"));
        List<RainFindings.Storm> shown = deepest(rain.storms());
        shown.forEach(storm -> rows.add(row(storm)));
        page.section("storms").table("lrrrrrrrl", rows);
        if (shown.stream().anyMatch(storm -> !storm.event().isComplete())) {
            page.say("* the record does not hold all of it");
        }
        if (shown.size() < rain.storms().size()) {
            page.say("the " + MOST + " deepest are shown, events.csv holds all");
        }
        ddf.ifPresentOrElse(
                table -> {
                    shown.forEach(this::byDuration);
                    page.say("return periods: " + table.basis().toText() + "; the table reaches from " + reach(table)
                            + "; < and > are beyond it");
                    band.ifPresent(band -> page.say("in brackets: limits of "
                            + Math.round(100 * band.confidence())
                            + " % confidence, in the first table over all durations at once"));
                },
                () -> page.say("no depth-duration-frequency table: no return periods"));
    }

    private String storms(RainFindings rain) {
        Site.RainRules rules = site.rain();
        String text = Show.count(rain.storms().size(), "storm") + " of " + Show.rain(rules.minimumDepthMm())
                + " mm or more, " + Show.duration(rules.minimumInterEvent()) + " apart";
        return rain.events().droppedEvents() == 0
                ? text
                : text + "; " + rain.events().droppedEvents() + " lesser with "
                        + Show.rain(rain.events().droppedMm()) + " mm";
    }

    private static List<RainFindings.Storm> deepest(List<RainFindings.Storm> storms) {
        return storms.stream()
                .sorted(Comparator.comparingDouble(
                                (RainFindings.Storm storm) -> storm.event().depthMm())
                        .reversed())
                .limit(MOST)
                .sorted(Comparator.comparing(storm -> storm.event().start()))
                .toList();
    }

    private List<String> row(RainFindings.Storm storm) {
        RainfallEvent event = storm.event();
        boolean isLeast = event.antecedent().isAtLeast();
        Optional<EventRarity.OverDuration> governing = storm.rarity().flatMap(EventRarity::governing);
        return List.of(
                dates.time(event.start()),
                Show.hoursValue(event.duration()),
                Show.rain(event.depthMm()),
                (isLeast ? "> " : "") + Show.spell(event.antecedentDryTime()),
                peak(event, Duration.ofMinutes(5)),
                peak(event, Duration.ofMinutes(15)),
                peak(event, Duration.ofHours(1)),
                peak(event, Duration.ofHours(6)),
                governing
                                .map(over -> over.returnPeriod().isBelow()
                                        ? years(over)
                                        : years(over) + Page.BOUND + "over" + Page.BOUND
                                                + Show.duration(over.duration()))
                                .orElse("-")
                        + storm.rarity()
                                .flatMap(EventRarity::limits)
                                .map(RainText::limits)
                                .orElse("")
                        + (event.isComplete() ? "" : " *"));
    }

    private static String peak(RainfallEvent event, Duration duration) {
        return RainFindings.peak(event, duration)
                .map(peak -> Show.rain(peak.depthMm()))
                .orElse("-");
    }

    /** The return periods of a storm over the durations of which the table can tell more than that they are short. */
    private void byDuration(RainFindings.Storm storm) {
        List<String> parts = new ArrayList<>();
        storm.rarity().stream()
                .flatMap(rarity -> rarity.durations().stream())
                .filter(over -> !over.returnPeriod().isBelow())
                .forEach(over -> parts.add(years(over)
                        + over.limits().map(RainText::limits).orElse("") + Page.BOUND + "over" + Page.BOUND
                        + Show.duration(over.duration()) + " ("
                        + Show.rain(over.peak().depthMm()) + Page.BOUND + "mm)"));
        if (!parts.isEmpty()) {
            page.say(dates.time(storm.event().start()) + ": " + String.join(", ", parts));
        }
    }

    /** For example {@code (6 y to 31 y)}. */
    private static String limits(DdfBand.Rarity limits) {
        return Page.BOUND + "(" + years(limits.lower()) + Page.BOUND + "to" + Page.BOUND + years(limits.upper()) + ")";
    }

    /** As {@link #years(ReturnPeriod)}, and {@code at least 12 y} if a part of the storm was not recorded. */
    private static String years(EventRarity.OverDuration over) {
        String years = years(over.returnPeriod());
        if (!over.isAtLeast() || over.returnPeriod().isAbove()) {
            return years;
        }
        return over.returnPeriod().isBelow() ? years + " or rarer" : "at least" + Page.BOUND + years;
    }

    /** For example {@code 12 y}, {@code < 2 y} or {@code > 100 y}. */
    static String years(ReturnPeriod period) {
        String years = period.years() < 10
                ? dev.runnel.internal.Text.significant(period.years(), 2)
                : "" + Math.round(period.years());
        return (period.isBelow() ? "<" + Page.BOUND : period.isAbove() ? ">" + Page.BOUND : "") + years + Page.BOUND
                + "y";
    }

    private static String reach(DdfTable table) {
        return Show.duration(table.shortestDuration()) + " to " + Show.duration(table.longestDuration()) + " and "
                + Math.round(table.smallestYears()) + " to " + Math.round(table.greatestYears()) + " years";
    }
}
