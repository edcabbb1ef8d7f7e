package dev.runnel.examples.review;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.balance.DailyTotal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What the sites say of each other: gauges that should agree, volumes that should not shrink downstream. */
final class BetweenSitesText {
    /** Totals of two gauges of one survey agree within 20 %: from memory, as it is used in the trade. */
    private static final double GAUGE_TOLERANCE = 0.20;

    /** Chosen here. */
    private static final double VOLUME_TOLERANCE = 0.15;

    private BetweenSitesText() {}

    static void put(Page page, List<SiteReview> reviews) {
        page.gap().heading("BETWEEN THE SITES", "");
        volumes(page, reviews);
        gauges(
                page,
                reviews.stream().filter(review -> review.rain().isPresent()).toList());
    }

    /** Volumes of a site and of the one upstream of it, on days that both cover. */
    private static void volumes(Page page, List<SiteReview> reviews) {
        for (SiteReview below : reviews) {
            for (SiteReview above : reviews) {
                if (below.site().upstream().equals(Optional.of(above.site().id()))) {
                    page.section("volumes");
                    volumes(page, above, below);
                }
            }
            below.site()
                    .upstream()
                    .filter(id -> reviews.stream()
                            .noneMatch(other -> other.site().id().equals(id)))
                    .ifPresent(id -> page.section("volumes")
                            .say(below.site().name() + ": the site upstream, " + id + ", is not in this review"));
        }
    }

    private static void volumes(Page page, SiteReview above, SiteReview below) {
        Map<LocalDate, Double> ratios = new TreeMap<>();
        double volumeAbove = 0;
        double volumeBelow = 0;
        for (DailyTotal day : below.flow().volumes()) {
            Optional<DailyTotal> same = above.flow().volumes().stream()
                    .filter(other -> other.date().equals(day.date()) && other.isComplete() && day.isComplete())
                    .findFirst();
            if (same.isPresent() && same.get().measured() > 0) {
                volumeAbove += same.get().measured();
                volumeBelow += day.measured();
                ratios.put(day.date(), day.measured() / same.get().measured());
            }
        }
        if (ratios.isEmpty()) {
            page.say("no day with flow at both " + above.site().name() + " and "
                    + below.site().name());
            return;
        }
        double usual = Statistics.of(ratios.values().stream()
                        .mapToDouble(Double::doubleValue)
                        .toArray())
                .median();
        List<String> odd = ratios.entrySet().stream()
                .filter(day -> Math.abs(day.getValue() / usual - 1) > VOLUME_TOLERANCE)
                .map(day -> below.data().dates().day(day.getKey()) + Page.BOUND + Text.fixed(day.getValue(), 2))
                .toList();
        page.say("on " + Show.count(ratios.size(), "day") + " complete at both: "
                + above.site().name() + " "
                + Show.volume(volumeAbove) + ", " + below.site().name() + " downstream " + Show.volume(volumeBelow)
                + "; usual ratio " + Text.fixed(usual, 2)
                + (odd.isEmpty()
                        ? ", no day farther than " + Show.percent(VOLUME_TOLERANCE) + " from it"
                        : "; farther than " + Show.percent(VOLUME_TOLERANCE) + " from it: " + String.join(", ", odd)));
    }

    private static void gauges(Page page, List<SiteReview> gauged) {
        page.section("gauges");
        if (gauged.size() < 2) {
            page.say("fewer than two: nothing to compare");
            return;
        }
        SiteReview first = gauged.get(0);
        for (SiteReview other : gauged.subList(1, gauged.size())) {
            gauges(page, first, other);
        }
    }

    private static void gauges(Page page, SiteReview first, SiteReview other) {
        double firstMm = depth(first);
        double otherMm = depth(other);
        List<String> unequal = new ArrayList<>();
        int compared = 0;
        for (RainFindings.Storm storm : storms(first)) {
            double there = depthMeanwhile(other, storm.event());
            double ratio = there / storm.event().depthMm();
            compared++;
            if (Math.abs(ratio - 1) > GAUGE_TOLERANCE) {
                unequal.add(first.data().dates().time(storm.event().start()) + Page.BOUND + "("
                        + Show.rain(storm.event().depthMm()) + Page.BOUND + "and" + Page.BOUND + Show.rain(there)
                        + Page.BOUND + "mm)");
            }
        }
        page.say(first.site().name() + " " + Show.rain(firstMm) + Page.BOUND + "mm, "
                + other.site().name() + " "
                + Show.rain(otherMm) + Page.BOUND + "mm (" + Text.fixed(otherMm / firstMm, 2) + "); of "
                + Show.count(compared, "storm") + " "
                + (unequal.isEmpty() ? "none differs" : unequal.size() + (unequal.size() == 1 ? " differs" : " differ"))
                + " by more than " + Show.percent(GAUGE_TOLERANCE)
                + (unequal.isEmpty()
                        ? ""
                        : ": " + String.join("; ", unequal) + " - look at the gauge that caught less"));
    }

    /** Depth of the storms that the other gauge had at the time of one here. */
    private static double depthMeanwhile(SiteReview other, RainfallEvent here) {
        return storms(other).stream()
                .map(RainFindings.Storm::event)
                .filter(event -> event.interval().overlaps(here.interval()))
                .mapToDouble(RainfallEvent::depthMm)
                .sum();
    }

    private static double depth(SiteReview review) {
        return review.rain().map(rain -> rain.depthMm()).orElse(Double.NaN);
    }

    private static List<RainFindings.Storm> storms(SiteReview review) {
        return review.rain().map(RainFindings::storms).orElse(List.of());
    }
}
