package dev.runnel.examples.review;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.balance.VolumeRatios;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the sites say of each other: gauges that should agree, volumes that should not shrink downstream. */
final class BetweenSitesText {
    /** Totals of two gauges of one survey agree within 20 %: from memory, as it is used in the trade. */
    private static final double GAUGE_TOLERANCE = 0.20;

    /** Chosen here. */
    private static final double VOLUME_TOLERANCE = 0.15;

    /** Chosen here: rain of which a gauge nearby must have seen something, mm. */
    private static final double CANNOT_BE_MISSED_MM = 5;

    private static final int MOST_NAMED = 8;

    /**
     * A sentence.
     *
     * @param label what it is about
     * @param text the sentence
     */
    record Said(String label, String text) {}

    private BetweenSitesText() {}

    static void put(Page page, List<SiteResult> sites) {
        page.gap().heading("BETWEEN THE SITES", "");
        for (Said said : said(sites)) {
            page.section(said.label()).say(said.text());
        }
    }

    static List<Said> said(List<SiteResult> sites) {
        List<Said> said = new ArrayList<>();
        Map<String, SiteResult> byId = new HashMap<>();
        sites.forEach(site -> byId.put(site.id(), site));
        for (SiteResult below : sites) {
            below.upstream()
                    .ifPresent(id -> said.add(new Said(
                            "volumes",
                            byId.containsKey(id)
                                    ? volumes(byId.get(id), below)
                                    : below.name() + ": the site upstream, " + id + ", is not in this review")));
        }
        List<SiteResult> gauged =
                sites.stream().filter(site -> site.storms().isPresent()).toList();
        if (gauged.size() < 2) {
            said.add(new Said("gauges", "fewer than two: nothing to compare"));
        }
        if (gauged.size() == 2) {
            said.add(new Said("gauges", pair(gauged.get(0), gauged.get(1))));
        }
        if (gauged.size() > 2) {
            gauged.forEach(site -> said.add(new Said("gauges", againstOthers(site, gauged))));
        }
        return said;
    }

    /** Volumes of a site and of the one upstream of it, on days that both cover and none calls doubtful. */
    private static String volumes(SiteResult above, SiteResult below) {
        VolumeRatios ratios = VolumeRatios.of(above.volumes(), below.volumes());
        int doubtful = above.doubtful() + below.doubtful();
        String left = doubtful == 0 ? "" : "; " + Show.count(doubtful, "doubtful day") + " left out";
        if (ratios.ratios().isEmpty()) {
            return "no day with flow at both " + above.name() + " and " + below.name() + left;
        }
        List<String> odd = ratios.fartherThan(VOLUME_TOLERANCE).entrySet().stream()
                .map(day -> below.dates().day(day.getKey()) + Page.BOUND + Text.fixed(day.getValue(), 2))
                .toList();
        return "on " + Show.count(ratios.ratios().size(), "day") + " complete at both: " + above.name() + " "
                + Show.volume(ratios.first()) + ", " + below.name() + " downstream " + Show.volume(ratios.second())
                + "; usual ratio " + Text.fixed(ratios.usual(), 2)
                + (odd.isEmpty()
                        ? ", no day farther than " + Show.percent(VOLUME_TOLERANCE) + " from it"
                        : "; farther than " + Show.percent(VOLUME_TOLERANCE) + " from it: " + named(odd))
                + left;
    }

    /** Two gauges alone: which of them is wrong nobody can say. */
    private static String pair(SiteResult first, SiteResult other) {
        List<String> unequal = new ArrayList<>();
        int compared = 0;
        for (SiteResult.Storm storm : first.storms().orElseThrow()) {
            if (isWithin(other.record(), storm.time())) {
                double there = meanwhile(other, storm.time());
                compared++;
                if (Math.abs(there / storm.depthMm() - 1) > GAUGE_TOLERANCE) {
                    unequal.add(first.dates().time(storm.time().start()) + Page.BOUND + "("
                            + Show.rain(storm.depthMm()) + Page.BOUND + "and" + Page.BOUND + Show.rain(there)
                            + Page.BOUND + "mm)");
                }
            }
        }
        double firstMm = total(first, other.record());
        double otherMm = total(other, first.record());
        return "in the storms of their common time " + first.name() + " " + Show.rain(firstMm) + Page.BOUND + "mm, "
                + other.name() + " " + Show.rain(otherMm) + Page.BOUND + "mm (" + Text.fixed(otherMm / firstMm, 2)
                + "); of " + Show.count(compared, "storm") + " "
                + (unequal.isEmpty() ? "none differs" : unequal.size() + (unequal.size() == 1 ? " differs" : " differ"))
                + " by more than " + Show.percent(GAUGE_TOLERANCE)
                + (unequal.isEmpty() ? "" : ": " + named(unequal) + " - look at both gauges");
    }

    /** Each gauge against the median of the others that recorded at the time: one bad gauge accuses no other. */
    private static String againstOthers(SiteResult site, List<SiteResult> gauged) {
        double here = 0;
        double there = 0;
        int compared = 0;
        List<String> missed = new ArrayList<>();
        for (SiteResult.Storm storm : storms(gauged)) {
            if (!isWithin(site.record(), storm.time())) {
                continue;
            }
            double[] others = gauged.stream()
                    .filter(other -> !other.id().equals(site.id()) && isWithin(other.record(), storm.time()))
                    .mapToDouble(other -> meanwhile(other, storm.time()))
                    .toArray();
            if (others.length < 2) {
                continue;
            }
            double usual = Statistics.of(others).median();
            double own = meanwhile(site, storm.time());
            compared++;
            here += own;
            there += usual;
            if (own == 0 && usual >= CANNOT_BE_MISSED_MM) {
                missed.add(site.dates().time(storm.time().start()));
            }
        }
        if (compared == 0) {
            return site.name() + ": no storm at the same time as two other gauges";
        }
        double ratio = here / there;
        return site.name() + ": " + Text.fixed(ratio, 2) + " of the median of the others over "
                + Show.count(compared, "storm")
                + (Math.abs(ratio - 1) > GAUGE_TOLERANCE
                        ? ", farther than " + Show.percent(GAUGE_TOLERANCE) + ": look at this gauge"
                        : "")
                + (missed.isEmpty()
                        ? ""
                        : "; nothing while the others had " + Show.rain(CANNOT_BE_MISSED_MM) + " mm or more: "
                                + named(missed) + " - was it dead? its dry days are then not dry");
    }

    /** The storms of all gauges, those that overlap joined. */
    private static List<SiteResult.Storm> storms(List<SiteResult> gauged) {
        List<Interval> all = gauged.stream()
                .flatMap(site -> site.storms().orElseThrow().stream())
                .map(SiteResult.Storm::time)
                .sorted((a, b) -> a.start().compareTo(b.start()))
                .toList();
        List<SiteResult.Storm> joined = new ArrayList<>();
        Optional<Interval> open = Optional.empty();
        for (Interval next : all) {
            if (open.isPresent() && !next.start().isAfter(open.get().end())) {
                Interval before = open.get();
                open = Optional.of(
                        Interval.of(before.start(), next.end().isAfter(before.end()) ? next.end() : before.end()));
            } else {
                open.ifPresent(time -> joined.add(new SiteResult.Storm(time, 0)));
                open = Optional.of(next);
            }
        }
        open.ifPresent(time -> joined.add(new SiteResult.Storm(time, 0)));
        return joined;
    }

    private static boolean isWithin(Interval record, Interval storm) {
        return !storm.start().isBefore(record.start()) && !storm.end().isAfter(record.end());
    }

    /** Depth of the storms that a gauge had at some time. */
    private static double meanwhile(SiteResult site, Interval time) {
        return site.storms().orElseThrow().stream()
                .filter(storm -> storm.time().overlaps(time))
                .mapToDouble(SiteResult.Storm::depthMm)
                .sum();
    }

    private static double total(SiteResult site, Interval common) {
        return site.storms().orElseThrow().stream()
                .filter(storm -> isWithin(common, storm.time()))
                .mapToDouble(SiteResult.Storm::depthMm)
                .sum();
    }

    private static String named(List<String> all) {
        return all.size() <= MOST_NAMED
                ? String.join(", ", all)
                : String.join(", ", all.subList(0, MOST_NAMED)) + " and " + (all.size() - MOST_NAMED) + " more";
    }
}
