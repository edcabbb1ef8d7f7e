package dev.runnel.examples.review;

import dev.runnel.base.Text;
import dev.runnel.rainfall.event.RainfallEvent;
import java.util.ArrayList;
import java.util.List;

/** What the sites say of each other: gauges that should agree, volumes that should not shrink downstream. */
final class BetweenSitesText {
    /** Totals of two gauges of one survey agree within 20 %: from memory, as it is used in the trade. */
    private static final double GAUGE_TOLERANCE = 0.20;

    private BetweenSitesText() {}

    static void put(Page page, List<SiteReview> reviews) {
        page.gap().heading("BETWEEN THE SITES", "");
        gauges(
                page,
                reviews.stream().filter(review -> review.rain().isPresent()).toList());
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
                unequal.add(Show.time(storm.event().start(), first.site().zone()) + " "
                        + Show.rain(storm.event().depthMm()) + " and " + Show.rain(there) + Page.BOUND + "mm");
            }
        }
        page.say(first.site().name() + " " + Show.rain(firstMm) + Page.BOUND + "mm, "
                + other.site().name() + " "
                + Show.rain(otherMm) + Page.BOUND + "mm (" + Text.fixed(otherMm / firstMm, 2) + "); of "
                + Show.count(compared, "storm") + " "
                + (unequal.isEmpty() ? "none differs" : unequal.size() + " differ")
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
        return review.rain().map(rain -> rain.summary().depthMm()).orElse(Double.NaN);
    }

    private static List<RainFindings.Storm> storms(SiteReview review) {
        return review.rain().map(RainFindings::storms).orElse(List.of());
    }
}
