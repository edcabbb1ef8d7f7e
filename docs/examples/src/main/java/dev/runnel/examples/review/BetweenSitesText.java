package dev.runnel.examples.review;

import dev.runnel.internal.Nearest;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.gauge.GaugeClocks;
import dev.runnel.rainfall.gauge.GaugeGroups;
import dev.runnel.rainfall.gauge.Neighbours;
import dev.runnel.rainfall.gauge.ShiftedStorms;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.balance.VolumeRatios;
import java.time.Duration;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** What the sites say of each other: gauges that should agree, volumes that should not shrink downstream. */
final class BetweenSitesText {
    /** Totals of two gauges of one survey agree within 20 %: from memory, as it is used in the trade. */
    private static final double GAUGE_TOLERANCE = 0.20;

    /** So many gauges that agree with the others have a line each. */
    private static final int FEW_GAUGES = 3;

    /** Chosen here. */
    private static final double VOLUME_TOLERANCE = 0.15;

    /** Chosen here: rain of which a gauge nearby must have seen something, mm. */
    private static final double CANNOT_BE_MISSED_MM = 5;

    /** From this shift on storms hint at a clock: less than half an hour, more than moving storms mostly make (chosen here). */
    private static final Duration CLOCK_TOLERANCE = Duration.ofMinutes(25);

    /** Gauges with longer steps tell of no clock. */
    private static final Duration LONGEST_STEP = Duration.ofHours(1);

    private static final int MOST_NAMED = 8;

    /**
     * A sentence.
     *
     * @param label what it is about
     * @param text the sentence
     */
    record Said(String label, String text) {}

    /**
     * What is known between the sites, found once for the page of text and for that of the survey.
     *
     * @param said the sentences; none of a single site
     * @param groups gauges of one rain, two or more in each
     */
    record Between(List<Said> said, List<Group> groups) {}

    /**
     * Gauges of one rain.
     *
     * @param gauged their sites
     * @param neighbours the gauges in the storms of any of them
     */
    record Group(List<SiteResult> gauged, Neighbours neighbours) {
        static Group of(List<SiteResult> gauged) {
            return new Group(
                    gauged, Neighbours.inPeriods(rain(gauged), storms(gauged)).settingAside(GAUGE_TOLERANCE));
        }
    }

    private BetweenSitesText() {}

    static Between of(List<SiteResult> sites) {
        List<SiteResult> gauged =
                sites.stream().filter(site -> site.gauge().isPresent()).toList();
        if (gauged.size() < 2) {
            List<Said> said = sites.size() < 2 ? List.of() : said(sites, alone());
            return new Between(said, List.of());
        }
        GaugeGroups found = GaugeGroups.of(rain(gauged));
        List<List<SiteResult>> groups = found.groups().stream()
                .map(names -> gauged.stream()
                        .filter(site -> names.contains(site.id()))
                        .toList())
                .toList();
        List<Group> compared =
                groups.stream().filter(group -> group.size() > 1).map(Group::of).toList();
        List<SiteResult> apart = groups.stream()
                .filter(group -> group.size() == 1)
                .flatMap(List::stream)
                .toList();
        return new Between(said(sites, ofGauges(compared, apart, found)), compared);
    }

    static void put(Page page, Between between) {
        page.gap().heading("BETWEEN THE SITES", "");
        for (Said said : between.said()) {
            page.section(said.label()).say(said.text());
        }
    }

    private static List<Said> alone() {
        return List.of(new Said("gauges", "fewer than two: nothing to compare"));
    }

    private static List<Said> said(List<SiteResult> sites, List<Said> ofGauges) {
        List<Said> said = new ArrayList<>();
        Map<String, SiteResult> byId = new HashMap<>();
        sites.forEach(site -> byId.put(site.id(), site));
        for (SiteResult below : sites) {
            below.upstream().ifPresent(id -> said.add(new Said("volumes", upstream(id, below, byId))));
        }
        said.addAll(ofGauges);
        return said;
    }

    private static List<Said> ofGauges(List<Group> groups, List<SiteResult> apart, GaugeGroups found) {
        List<Said> said = new ArrayList<>();
        if (groups.size() > 1) {
            said.add(new Said(
                    "gauges",
                    "these have each a rain of their own: "
                            + groups.stream()
                                    .map(group -> names(group.gauged()))
                                    .collect(Collectors.joining("; "))));
        }
        for (Group group : groups) {
            List<SiteResult> gauged = group.gauged();
            if (gauged.size() == 2) {
                said.add(new Said("gauges", pair(gauged.get(0), gauged.get(1), group.neighbours())));
            } else {
                said.addAll(againstOthers(gauged, group.neighbours()));
            }
        }
        if (!apart.isEmpty()) {
            said.add(new Said("gauges", apart(apart, found, groups.isEmpty())));
        }
        groups.forEach(group -> said.addAll(clocks(group.gauged())));
        return said;
    }

    private static String names(List<SiteResult> gauged) {
        return gauged.stream().map(SiteResult::name).collect(Collectors.joining(", "));
    }

    /** Gauges whose rain is that of no other. */
    private static String apart(List<SiteResult> apart, GaugeGroups found, boolean isNoneCompared) {
        double greatest = apart.stream()
                .map(site -> found.greatestCorrelation(site.id()))
                .flatMapToDouble(OptionalDouble::stream)
                .max()
                .orElseThrow();
        String correlation = " (rank correlation of the depths of wet days " + Text.fixed(greatest, 2);
        if (isNoneCompared && apart.size() == 2) {
            return apart.get(0).name() + " and " + apart.get(1).name() + " have not the same rain" + correlation
                    + "): not compared";
        }
        return isNoneCompared
                ? "no two of the " + apart.size() + " have the same rain" + correlation
                        + " at most): none is set against another"
                : named(apart.stream().map(SiteResult::name).toList()) + ": rain that is not that of any other"
                        + correlation
                        + " at most), set against none: another place, a clock a day off or a gauge at fault";
    }

    private static String upstream(String id, SiteResult below, Map<String, SiteResult> byId) {
        SiteResult above = byId.get(id);
        if (above == null) {
            return below.name() + ": the site upstream, " + id + ", is not in this review"
                    + Nearest.hint(id, byId.keySet());
        }
        List<String> way = loop(below, byId);
        return way.isEmpty()
                ? volumes(above, below)
                : below.name() + ": it lies upstream of itself, by \"upstream = ...\" in the " + SiteFile.NAME + " of "
                        + String.join(", ", way) + "; no volumes are compared";
    }

    /** The sites from one up to itself; none if it is not among those upstream of it. */
    private static List<String> loop(SiteResult site, Map<String, SiteResult> byId) {
        List<String> way = new ArrayList<>();
        Optional<SiteResult> at = Optional.of(site);
        while (at.isPresent() && !way.contains(at.get().id())) {
            way.add(at.get().id());
            at = at.get().upstream().map(byId::get);
        }
        return at.filter(found -> found.id().equals(site.id())).isPresent() ? way : List.of();
    }

    private static Map<String, RegularSeries> rain(List<SiteResult> gauged) {
        Map<String, RegularSeries> rain = new HashMap<>();
        gauged.forEach(site -> rain.put(site.id(), site.gauge().orElseThrow().rain()));
        return rain;
    }

    private static List<Interval> storms(List<SiteResult> gauged) {
        return Interval.joined(gauged.stream()
                .flatMap(site -> site.gauge().orElseThrow().storms().stream())
                .toList());
    }

    /** Gauges that show a row of storms later or earlier than the others. */
    private static List<Said> clocks(List<SiteResult> gauged) {
        List<SiteResult> telling = gauged.stream()
                .filter(site -> site.gauge().orElseThrow().rain().step().compareTo(LONGEST_STEP) <= 0)
                .toList();
        if (telling.size() < 2) {
            return List.of();
        }
        GaugeClocks clocks = GaugeClocks.of(rain(telling), storms(telling)).settingAside(CLOCK_TOLERANCE);
        return telling.stream()
                .flatMap(site -> clocks.shiftedStorms(site.id(), CLOCK_TOLERANCE).stream()
                        .map(found -> new Said("clocks", clock(site, found, telling.size()))))
                .toList();
    }

    private static String clock(SiteResult site, ShiftedStorms found, int gauges) {
        return site.name() + ": its rain is stamped about "
                + Text.duration(found.shift().abs())
                + (found.shift().isNegative() ? " earlier" : " later") + " than that of the "
                + (gauges == 2 ? "other" : "others") + " in " + found.shifted() + " of "
                + Show.count(found.shifted() + found.others(), "storm") + " from "
                + site.dates().time(found.interval().start())
                + (found.after() == 0
                        ? " to the last"
                        : " to " + site.dates().time(found.interval().end()) + ", in "
                                + Show.count(found.after(), "storm") + " after it no longer")
                + "; before it " + Show.count(found.before(), "storm") + " - look at "
                + (gauges == 2 ? "both clocks" : "its clock");
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
    private static String pair(SiteResult first, SiteResult other, Neighbours neighbours) {
        List<Neighbours.Compared> compared = neighbours.compared(first.id());
        double firstMm = 0;
        double otherMm = 0;
        List<String> unequal = new ArrayList<>();
        for (Neighbours.Compared storm : compared) {
            firstMm += storm.depthMm();
            otherMm += storm.othersMm();
            if (Math.abs(storm.othersMm() - storm.depthMm()) > GAUGE_TOLERANCE * storm.depthMm()) {
                unequal.add(first.dates().time(storm.period().start()) + Page.BOUND + "(" + Show.rain(storm.depthMm())
                        + Page.BOUND + "and" + Page.BOUND + Show.rain(storm.othersMm()) + Page.BOUND + "mm)");
            }
        }
        if (compared.isEmpty()) {
            return "no storm that both " + first.name() + " and " + other.name() + " recorded";
        }
        return "in the storms of their common time " + first.name() + " " + Show.rain(firstMm) + Page.BOUND + "mm, "
                + other.name() + " " + Show.rain(otherMm) + Page.BOUND + "mm"
                + (firstMm > 0 ? " (" + Text.fixed(otherMm / firstMm, 2) + ")" : "") + "; of "
                + Show.count(compared.size(), "storm") + " "
                + (unequal.isEmpty() ? "none differs" : unequal.size() + (unequal.size() == 1 ? " differs" : " differ"))
                + " by more than " + Show.percent(GAUGE_TOLERANCE)
                + (unequal.isEmpty() ? "" : ": " + named(unequal) + " - look at both gauges");
    }

    /** One line for each gauge; where many agree with the others, one for all of those. */
    private static List<Said> againstOthers(List<SiteResult> gauged, Neighbours neighbours) {
        List<SiteResult> agreeing =
                gauged.stream().filter(site -> agrees(site, neighbours)).toList();
        boolean together = agreeing.size() > FEW_GAUGES;
        List<Said> said = new ArrayList<>();
        gauged.stream()
                .filter(site -> !together || !agreeing.contains(site))
                .forEach(site -> said.add(new Said("gauges", againstOthers(site, neighbours))));
        if (together) {
            DoubleSummaryStatistics ratios = agreeing.stream()
                    .mapToDouble(
                            site -> neighbours.finding(site.id()).orElseThrow().ratio())
                    .summaryStatistics();
            said.add(new Said(
                    "gauges",
                    (said.isEmpty() ? "all " : "the other ") + agreeing.size() + ": " + Text.fixed(ratios.getMin(), 2)
                            + " to " + Text.fixed(ratios.getMax(), 2)
                            + " of the median of the others, none silent while these had "
                            + Show.rain(CANNOT_BE_MISSED_MM) + " mm or more"));
        }
        return said;
    }

    private static boolean agrees(SiteResult site, Neighbours neighbours) {
        return neighbours
                        .finding(site.id())
                        .filter(found -> Math.abs(found.ratio() - 1) <= GAUGE_TOLERANCE)
                        .isPresent()
                && missed(site, neighbours).isEmpty();
    }

    /** Storms that a gauge cannot have missed, and has. */
    private static List<String> missed(SiteResult site, Neighbours neighbours) {
        return neighbours.compared(site.id()).stream()
                .filter(storm -> storm.depthMm() == 0 && storm.othersMm() >= CANNOT_BE_MISSED_MM)
                .map(storm -> site.dates().time(storm.period().start()))
                .toList();
    }

    /** A gauge against the median of the others that recorded at the time. */
    private static String againstOthers(SiteResult site, Neighbours neighbours) {
        Optional<Neighbours.Finding> found = neighbours.finding(site.id());
        if (found.isEmpty()) {
            return site.name() + ": fewer than two storms at the same time as the others";
        }
        double ratio = found.get().ratio();
        List<String> missed = missed(site, neighbours);
        return site.name() + ": " + Text.fixed(ratio, 2) + " of the median of the others over "
                + Show.count(found.get().periods(), "storm")
                + (Math.abs(ratio - 1) > GAUGE_TOLERANCE
                        ? ", farther than " + Show.percent(GAUGE_TOLERANCE) + ": look at this gauge"
                        : "")
                + (missed.isEmpty()
                        ? ""
                        : "; nothing while the others had " + Show.rain(CANNOT_BE_MISSED_MM) + " mm or more: "
                                + named(missed) + " - was it dead? its dry days are then not dry");
    }

    private static String named(List<String> all) {
        return all.size() <= MOST_NAMED
                ? String.join(", ", all)
                : String.join(", ", all.subList(0, MOST_NAMED)) + " and " + (all.size() - MOST_NAMED) + " more";
    }
}
